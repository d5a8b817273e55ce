package render

import (
	"eighthturn/internal/document"
	"html"
	"strconv"
	"unicode/utf8"
)

// table writes a table that scrolls by itself where the window is narrow.
func (w *web) table(t document.Table) {
	name := textLine(t.Caption)
	if name == "" {
		name = "Table"
	}
	w.put("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"", html.EscapeString(name), "\"><table>\n")
	if len(runs(t.Caption)) > 0 {
		w.put("<caption>")
		w.text(t.Caption)
		w.put("</caption>\n")
	}
	w.heads(t)
	w.put("<tbody>\n")
	for _, r := range t.Rows {
		w.row(t, r)
	}
	w.put("</tbody>\n</table></div>\n")
}

func (w *web) heads(t document.Table) {
	any := false
	for _, c := range t.Columns {
		any = any || line(c.Title) != ""
	}
	if !any {
		return
	}
	w.put("<thead>\n<tr>")
	for _, c := range t.Columns {
		w.put("<th scope=\"col\"", columnClass(c.Kind), ">", html.EscapeString(line(c.Title)), "</th>")
	}
	w.put("</tr>\n</thead>\n")
}

func (w *web) row(t document.Table, r document.Row) {
	if across(r, len(t.Columns)) {
		w.put("<tr class=\"group\"><th scope=\"colgroup\" colspan=\"", strconv.Itoa(len(t.Columns)), "\">")
		w.cell(r.Cells[0])
		w.put("</th></tr>\n")
		return
	}
	if r.Total {
		w.put("<tr class=\"total\">")
	} else {
		w.put("<tr>")
	}
	for i, c := range t.Columns {
		open, end := "<td", "</td>"
		if i == 0 && t.Named {
			open, end = "<th scope=\"row\"", "</th>"
		}
		w.put(open, columnClass(c.Kind), ">")
		if i < len(r.Cells) {
			w.cell(r.Cells[i])
		}
		w.put(end)
	}
	w.put("</tr>\n")
}

// short is the most letters that stay on one line beside a swatch.
const short = 12

func (w *web) cell(c document.Cell) {
	if len(c.Swatches) == 0 {
		w.text(c.Text)
		return
	}
	class := "swatched"
	if utf8.RuneCountInString(textLine(c.Text)) <= short {
		class += " short"
	}
	w.put("<span class=\"", class, "\">")
	for _, s := range c.Swatches {
		w.put("<span class=\"swatch\" style=\"background:", s.Colour.Hex(), ";color:", onCloth(s.Colour).Hex(), "\">",
			html.EscapeString(line(s.Letter)), "</span> ")
	}
	w.put("<span>")
	w.text(c.Text)
	w.put("</span></span>")
}

func columnClass(k document.Kind) string {
	if k.Right() {
		return " class=\"right\""
	}
	return ""
}
