package render

import (
	"html"
	"strconv"
	"unicode/utf8"
)

// table writes a table that scrolls by itself where the window is narrow.
func (w *web) table(t Table) {
	name := t.Caption.line()
	if name == "" {
		name = "Table"
	}
	w.put("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"", html.EscapeString(name), "\"><table>\n")
	if len(t.Caption.runs()) > 0 {
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

func (w *web) heads(t Table) {
	any := false
	for _, c := range t.Columns {
		any = any || line(c.Title) != ""
	}
	if !any {
		return
	}
	w.put("<thead>\n<tr>")
	for _, c := range t.Columns {
		w.put("<th scope=\"col\"", c.Align.class(), ">", html.EscapeString(line(c.Title)), "</th>")
	}
	w.put("</tr>\n</thead>\n")
}

func (w *web) row(t Table, r Row) {
	if r.across(len(t.Columns)) {
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
		w.put(open, c.Align.class(), ">")
		if i < len(r.Cells) {
			w.cell(r.Cells[i])
		}
		w.put(end)
	}
	w.put("</tr>\n")
}

// short is the most letters that stay on one line beside a swatch.
const short = 24

func (w *web) cell(c Cell) {
	s := c.Swatch
	if s == nil {
		w.text(c.Text)
		return
	}
	class := "swatched"
	if utf8.RuneCountInString(c.Text.line()) <= short {
		class += " short"
	}
	w.put("<span class=\"", class, "\"><span class=\"swatch\" style=\"background:", s.Colour.Hex(), ";color:", onCloth(s.Colour).Hex(), "\">",
		html.EscapeString(line(s.Letter)), "</span> <span>")
	w.text(c.Text)
	w.put("</span></span>")
}

func (a Align) class() string {
	switch a {
	case Right:
		return " class=\"right\""
	case Centre:
		return " class=\"centre\""
	}
	return ""
}
