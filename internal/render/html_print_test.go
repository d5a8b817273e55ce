package render

import (
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/document"
)

// TestPrintedPagesAreFilled: what makes a browser that prints the page leave one nearly empty is not there: a break where a chapter begins on
// a new page anyhow, and a copyright notice beneath the back cover that has it.
func TestPrintedPagesAreFilled(t *testing.T) {
	for name, change := range map[string]func(*document.Document) string{
		"as it is": func(*document.Document) string { return "" },
		"no back":  func(d *document.Document) string { d.Sections[1].Back = false; return "<footer>" },
		"a break": func(d *document.Document) string {
			d.Sections[0] = document.Section{Alone: true, Blocks: []document.Block{document.PageBreak{}, document.Paragraph{Text: document.Plain("x")}}}
			return ""
		},
		"a break within": func(d *document.Document) string {
			d.Sections[0] = document.Section{Alone: true, Blocks: []document.Block{document.Paragraph{Text: document.Plain("x")}, document.PageBreak{}}}
			return `class="break"`
		},
		"a break elsewhere": func(d *document.Document) string {
			d.Sections[0] = document.Section{Blocks: []document.Block{document.PageBreak{}}}
			return `class="break"`
		},
	} {
		d := fronted()
		want := change(&d)
		page, err := HTML(d)
		if err != nil {
			t.Fatal(err)
		}
		if got := regexp.MustCompile(`<footer>|class="break"`).FindString(string(page)); got != want {
			t.Errorf("%s: %q, expected %q", name, got, want)
		}
		if strings.HasPrefix(name, "a break") && name != "a break elsewhere" && !strings.Contains(string(page), "<p>x</p>") {
			t.Errorf("%s: what stands behind it is lost", name)
		}
	}
}

// heldTogether is what the page holds together for print, tags left out.
func heldTogether(t *testing.T, blocks ...document.Block) []string {
	t.Helper()
	page, err := HTML(document.Document{Title: "t", Sections: []document.Section{{Title: "Chapter", Blocks: blocks}}})
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, m := range regexp.MustCompile(`(?s)<div class="together">\n(.*?)(?:</div>\n)+`).FindAllStringSubmatch(string(page), -1) {
		list = append(list, strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(m[1], " ")), " "))
	}
	return list
}

// TestHeadingsStayWithTheirText: headings are held together with what is short behind them, and nothing else is.
func TestHeadingsStayWithTheirText(t *testing.T) {
	says := func(text string) document.Block { return document.Paragraph{Text: document.Plain(text)} }
	head := document.Heading{Text: "Section"}
	long := document.List{Items: make([]document.Item, shortRows+1)}
	for i := range long.Items {
		long.Items[i].Text = document.Plain("item")
	}
	short := document.List{Items: long.Items[:2]}
	for want, blocks := range map[string][]document.Block{
		"Chapter a":                       {says("a"), says("b")},
		"Chapter a, Section b":            {says("a"), head, says("b"), says("c")},
		"Chapter Section a":               {head, says("a"), says("b")},
		"Chapter a b":                     {document.Together{Blocks: []document.Block{says("a"), says("b")}}, says("c")},
		"Chapter Section item item":       {head, short, says("b")},
		"":                                {head, long, says("b")},
		"Chapter a, Section Section b":    {says("a"), long, head, head, says("b")},
		"Chapter item item, Section b":    {short, says("a"), head, says("b")},
		"Chapter a, Section b, Section c": {says("a"), head, says("b"), head, says("c"), head},
	} {
		if got := strings.Join(heldTogether(t, blocks...), ", "); got != want {
			t.Errorf("%q is held together, expected %q", got, want)
		}
	}
}
