package render

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/layout"

	"github.com/rivo/uniseg"
)

// Text writes a document for a terminal, in lines of at most 80 columns. Pictures are left out; what a document says it says
// in words. Control characters of the document are made visible.
func Text(d document.Document) string {
	w := &terminal{}
	w.b.WriteString(Wrapped(layout.Visible(d.Title), ""))
	for _, s := range d.Sections {
		w.section(s)
	}
	return w.b.String()
}

// terminal writes blocks, each line behind an indent.
type terminal struct {
	b      strings.Builder
	indent string
}

// section writes a section under its title; one without a title is as if its blocks stood there.
func (w *terminal) section(s document.Section) {
	if s.Title == "" {
		w.within("", s.Blocks)
		return
	}
	w.b.WriteString("\n" + Wrapped(layout.Visible(s.Title), w.indent))
	w.within("  ", s.Blocks)
}

// within writes blocks further in.
func (w *terminal) within(by string, list []document.Block) {
	before := w.indent
	w.indent += by
	for _, b := range list {
		w.block(b)
	}
	w.indent = before
}

func (w *terminal) block(b document.Block) {
	switch v := b.(type) {
	case document.Section:
		w.section(v)
	case document.Heading:
		w.b.WriteString("\n" + Wrapped(layout.Visible(v.Text), w.indent))
	case document.Paragraph:
		w.text(v.Text)
	case document.List:
		w.list(v)
	case document.Source:
		for _, line := range v.Lines {
			w.b.WriteString(strings.TrimRight(w.indent+"  "+layout.Visible(line), " ") + "\n")
		}
	case document.Table:
		w.table(v)
	case document.Box:
		w.b.WriteByte('\n')
		w.text(document.Plain(v.Head()))
		w.within("  ", v.Blocks)
	case document.Together:
		w.within("", v.Blocks)
	}
}

func (w *terminal) text(t document.Text) {
	if len(t) > 0 {
		w.b.WriteString(Wrapped(layout.Visible(t.String()), w.indent))
	}
}

func (w *terminal) list(l document.List) {
	for i, item := range l.Items {
		sign := "- "
		switch l.Marker {
		case document.Numbered:
			sign = fmt.Sprintf("%d. ", max(l.First, 1)+i)
		case document.Tick:
			sign = "[ ] "
		}
		further := w.indent + strings.Repeat(" ", len(sign))
		w.b.WriteString(w.indent + sign + strings.TrimPrefix(Wrapped(layout.Visible(item.Text.String()), further), further))
		w.within(further[len(w.indent):], item.Blocks)
	}
}

// table writes rows in columns under their heads; rows of a single cell, and what stands under a row, run on.
func (w *terminal) table(t document.Table) {
	w.text(t.Caption)
	lines := w.lines(tableCells(t), !t.Columns[len(t.Columns)-1].Kind.Right())
	if heads(t) {
		w.b.WriteString(lines[0])
		lines = lines[1:]
	}
	for _, r := range t.Rows {
		if across(r, len(t.Columns)) {
			w.text(r.Cells[0].Text)
		} else {
			w.b.WriteString(lines[0])
			lines = lines[1:]
		}
		for _, under := range r.Under {
			w.b.WriteString(Wrapped(layout.Visible(under.String()), w.indent+"  "))
		}
	}
	w.text(t.More)
}

// lines are rows in columns, each with its end. Where they are too wide for a terminal and the last column holds words, what
// does not fit beside the others goes on beneath, in the last column.
func (w *terminal) lines(rows [][]string, last bool) []string {
	if len(rows) == 0 {
		return nil
	}
	const usual, narrow = "   ", "  "
	all := strings.SplitAfter(alignedBy(rows, w.indent, usual), "\n")
	column := len(w.indent) // where the last one begins
	for i := range len(rows[0]) - 1 {
		wide := 0
		for _, row := range rows {
			wide = max(wide, Columns(row[i]))
		}
		column += wide + len(usual)
	}
	if !last || column > terminalWidth*3/4 {
		if slices.ContainsFunc(all, tooWide) {
			return w.divided(rows, narrow)
		}
		return all
	}
	for i, row := range rows {
		if !tooWide(all[i]) {
			continue
		}
		text := row[len(row)-1]
		head := strings.TrimSuffix(strings.TrimSuffix(all[i], "\n"), text)
		all[i] = head + strings.TrimLeft(Wrapped(text, strings.Repeat(" ", column)), " ")
	}
	return all
}

// leastDivided is how many columns of words are left at the least of a column that is divided.
const leastDivided = 12

// divided are rows in columns, each with its ends. Where they are too wide, the widest columns of words are made narrower, and what
// does not fit there goes on beneath.
func (w *terminal) divided(rows [][]string, gap string) []string {
	widths := make([]int, len(rows[0]))
	words := slices.Repeat([]bool{true}, len(widths))
	total := len(w.indent) - len(gap)
	for i := range widths {
		for _, row := range rows {
			widths[i] = max(widths[i], Columns(row[i]))
			words[i] = words[i] && !strings.HasPrefix(row[i], " ")
		}
		total += len(gap) + widths[i]
	}
	for total > widestRow {
		widest := -1
		for i := range widths {
			if words[i] && widths[i] > leastDivided && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		less := min(total-widestRow, widths[widest]-leastDivided)
		widths[widest], total = widths[widest]-less, total-less
	}
	var parts [][]string
	ends := make([]int, len(rows))
	for n, row := range rows {
		first := len(parts)
		for i, cell := range row {
			list := []string{cell}
			if words[i] {
				list = strings.Split(strings.TrimSuffix(wrappedTo(widths[i], numberUnit().ReplaceAllString(cell, "$1\u00a0$2"), ""), "\n"), "\n")
			}
			for k, part := range list {
				if first+k == len(parts) {
					parts = append(parts, make([]string, len(row)))
				}
				parts[first+k][i] = part
			}
		}
		ends[n] = len(parts)
	}
	lines := strings.SplitAfter(alignedBy(parts, w.indent, gap), "\n")
	all, from := make([]string, len(rows)), 0
	for n, end := range ends {
		all[n], from = strings.Join(lines[from:end], ""), end
	}
	return all
}

// tooWide says whether a line is wider than a terminal.
func tooWide(line string) bool {
	return uniseg.StringWidth(strings.TrimSuffix(line, "\n")) > terminalWidth
}

func heads(t document.Table) bool {
	for _, c := range t.Columns {
		if c.Title != "" {
			return true
		}
	}
	return false
}

// tableCells are a table's heads and rows as Aligned takes them; rows of a single cell are left out.
func tableCells(t document.Table) [][]string {
	var rows [][]string
	row := func(of func(int) string) {
		list := make([]string, len(t.Columns))
		for i, c := range t.Columns {
			list[i] = of(i)
			if c.Kind.Right() {
				list[i] = " " + list[i]
			}
		}
		rows = append(rows, list)
	}
	if heads(t) {
		row(func(i int) string { return t.Columns[i].Title })
	}
	for _, r := range t.Rows {
		if !across(r, len(t.Columns)) {
			row(func(i int) string {
				if i >= len(r.Cells) {
					return ""
				}
				return strings.ReplaceAll(r.Cells[i].Text.String(), "\n", " ")
			})
		}
	}
	return rows
}
