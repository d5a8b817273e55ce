package preview

import (
	"fmt"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/layout"
)

// documentTab turns a document into what the page shows in a tab. What a section, row, item or paragraph is about is highlighted
// when it is pointed at; a figure is drawn when the row is chosen that it belongs to.
func documentTab(name string, d document.Document) reportTab {
	t := &tabWriter{reportTab: reportTab{Name: name}}
	for i, s := range d.Sections {
		if text, ok := introduction(s); ok && i == 0 {
			t.Intro = layout.Visible(text)
			continue
		}
		t.section = tabSection{Title: s.Title, Why: s.Depth == document.Why}
		t.blocks(s.Blocks)
		t.end()
	}
	return t.reportTab
}

// introduction is what a first section without a title says, if it is one paragraph.
func introduction(s document.Section) (string, bool) {
	if s.Title != "" || len(s.Blocks) != 1 {
		return "", false
	}
	p, ok := s.Blocks[0].(document.Paragraph)
	return p.Text.String(), ok
}

// tabWriter gathers the rows of a document.
type tabWriter struct {
	reportTab
	section tabSection
}

// end closes a section.
func (t *tabWriter) end() {
	t.add(t.section)
	t.section = tabSection{}
}

func (t *tabWriter) blocks(list []document.Block) {
	for _, b := range list {
		t.block(b)
	}
}

func (t *tabWriter) block(b document.Block) {
	switch v := b.(type) {
	case document.Section:
		if v.Title != "" {
			t.put(tabRow{Head: true, Cells: []string{v.Title}, Swatches: hexes(v.Swatches), Tone: toneOf(v.Tone)}, v.About)
		}
		t.blocks(v.Blocks)
	case document.Heading:
		t.put(tabRow{Head: true, Cells: []string{v.Text}}, document.About{})
	case document.Paragraph:
		t.put(tabRow{Cells: []string{v.Text.String()}, Tone: toneOf(v.Tone)}, v.About)
	case document.List:
		t.list(v)
	case document.Source:
		for _, line := range v.Lines {
			t.put(tabRow{Cells: []string{line}}, document.About{})
		}
	case document.Table:
		t.table(v)
	case document.Figure:
		t.figure(v)
	case document.Box:
		t.put(tabRow{Head: true, Cells: []string{v.Head()}}, document.About{})
		t.blocks(v.Blocks)
	case document.Together:
		t.blocks(v.Blocks)
	}
}

// list is a row an item, what belongs to an item after it.
func (t *tabWriter) list(l document.List) {
	for i, item := range l.Items {
		text := item.Text.String()
		if l.Marker == document.Numbered {
			text = fmt.Sprintf("%d. %s", max(l.First, 1)+i, text)
		}
		w := tabRow{Cells: []string{text}, Head: allBold(item.Text), Tone: toneOf(item.Tone)}
		rest := t.under(&w, item.Blocks)
		t.put(w, item.About)
		t.blocks(rest)
	}
}

// under puts paragraphs beneath a row and a figure beside it, and gives the blocks that are rows of their own.
func (t *tabWriter) under(w *tabRow, list []document.Block) (rest []document.Block) {
	for _, b := range list {
		switch v := b.(type) {
		case document.Figure:
			w.Diagram = t.drawing(v)
		case document.Paragraph:
			w.Under = append(w.Under, v.Text.String())
		case document.Together:
			rest = append(rest, t.under(w, v.Blocks)...)
		default:
			rest = append(rest, b)
		}
	}
	return rest
}

// allBold says whether a text is all in bold type: it then names what stands beneath it.
func allBold(text document.Text) bool {
	for _, r := range text {
		if !r.Bold {
			return false
		}
	}
	return len(text) > 0
}

// table is its rows. A section has the heads of its first table; another begins a section of its own, as deep.
func (t *tabWriter) table(v document.Table) {
	if t.section.Heads != nil {
		why := t.section.Why
		t.end()
		t.section.Why = why
	}
	if len(v.Caption) > 0 {
		t.put(tabRow{Head: true, Cells: []string{v.Caption.String()}}, document.About{})
	}
	for _, c := range v.Columns {
		if !c.Aside {
			t.section.Heads = append(t.section.Heads, tabColumn{Head: c.Title, Number: c.Kind.Right()})
		}
	}
	for _, r := range v.Rows {
		w := tabRow{Tone: toneOf(r.Tone)}
		for i, c := range r.Cells {
			w.Swatches = append(w.Swatches, hexes(c.Swatches)...)
			text := c.Text.String()
			switch {
			case !v.Columns[i].Aside:
				w.Cells = append(w.Cells, text)
			case text != "":
				w.Under = append(w.Under, v.Columns[i].Title+": "+text)
			}
		}
		for _, under := range r.Under {
			w.Under = append(w.Under, under.String())
		}
		if r.Figure != nil {
			w.Diagram = t.drawing(*r.Figure)
		}
		t.put(w, r.About)
	}
	t.section.More = v.More.String()
}

// figure belongs to the row before it, or is a row of its own.
func (t *tabWriter) figure(f document.Figure) {
	if n := len(t.section.Rows); n > 0 && t.section.Rows[n-1].Diagram == nil {
		t.section.Rows[n-1].Diagram = t.drawing(f)
		return
	}
	t.put(tabRow{Cells: []string{f.Caption.String()}, Diagram: t.drawing(f)}, f.About)
}

func (t *tabWriter) drawing(f document.Figure) *int {
	if f.Marks != nil {
		t.patchesAt = func(marks []int) []int {
			var list []int
			for _, n := range marks {
				list = append(list, f.Marks[n]...)
			}
			return list
		}
	}
	return t.diagram(func() *diagram.Figure { return f.Diagram() })
}

// put adds a row that is about something.
func (t *tabWriter) put(w tabRow, about document.About) {
	w.Patches, w.Faces, w.Seams = about.Patches, about.Faces, about.Seams
	t.Placed = t.Placed || about.Place != nil
	t.section.Rows = append(t.section.Rows, w)
}

// toneOf is how the page marks a tone.
func toneOf(t document.Tone) tone {
	switch t {
	case document.Wrong:
		return wrong
	case document.Doubtful:
		return doubtful
	}
	return ""
}

func hexes(list []document.Swatch) []string {
	var colors []string
	for _, s := range list {
		colors = append(colors, strings.ToLower(s.Colour.Hex()))
	}
	return colors
}
