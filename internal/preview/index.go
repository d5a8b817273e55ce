package preview

import (
	"fmt"
	"html"
	"net/http"
	"strings"
)

// serveIndex answers with the page.
func (s *site) serveIndex(w http.ResponseWriter, _ *http.Request) {
	respond(w, []byte(s.filledIn(string(asset("index.html")))))
}

// filledIn is the page with the layout's name, what is known of it now, the tabs, and the newest message, so that the first picture waits
// for no other answer. Whatever comes from the layout is escaped for text and for attributes alike; JSON as it is sent holds no "<".
func (s *site) filledIn(page string) string {
	n := s.state.current()
	name, title := s.state.file, s.state.file
	if n.picture != nil && n.picture.top.Title != "" {
		title = n.picture.top.Title
		name = title + " · " + s.state.file
	}
	return strings.NewReplacer(
		"{{name}}", html.EscapeString(name), "{{title}}", html.EscapeString(title),
		"{{unscripted}}", unscripted(n), "{{switcher}}", switcher(s.beside), "{{photo}}", "", "{{tabs}}", tabButtons(tabSources()),
		"{{first}}", string(s.state.answer(0)),
	).Replace(page)
}

// switcher is the menu of the other layouts, where there may be some; the page fills it when it is opened.
func switcher(beside bool) string {
	if !beside {
		return ""
	}
	return `<div class="menu" id="switcher"><button class="opener" aria-expanded="false" aria-controls="layouts" aria-label="Other layouts" title="The other layouts of the folder">` +
		`<svg class="icon" aria-hidden="true"><use href="#icon-down"/></svg></button><div class="items" id="layouts"></div></div>`
}

// unscripted is what stands in place of the picture that scripts draw: what is wrong, and the last picture.
func unscripted(n *snapshot) string {
	var b strings.Builder
	if n.problem != "" {
		b.WriteString("<p>" + html.EscapeString(n.problem) + "</p>\n")
	}
	for _, f := range n.faults {
		b.WriteString("<pre>" + html.EscapeString(f.Text) + "</pre>\n")
	}
	if n.picture != nil {
		b.WriteString(`<img src="picture.svg?view=colour" alt="` + html.EscapeString(n.picture.top.Title) + `">`)
	}
	return b.String()
}

// tabButtons are the buttons that choose a report.
func tabButtons(tabs []tabSource) string {
	var b strings.Builder
	for i, t := range tabs {
		data := ""
		if t.HasMarks {
			data = " data-marks"
		}
		if t.Own {
			data = " data-own"
		}
		fmt.Fprintf(&b, `<button role="tab" id="tab-%d" aria-controls="report-body" aria-selected="false" tabindex="-1"%s>%s</button>`,
			i, data, html.EscapeString(t.Name))
	}
	return b.String()
}
