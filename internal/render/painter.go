package render

import (
	"bytes"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/render/pdf"
)

// painter writes marks on the pages of a PDF.
type painter struct {
	*pdf.File
	setter
}

// paint writes the pages.
func paint(d document.Document, pages []sheetOfPaper, b *builder, o Options) ([]byte, error) {
	l, whole := b.look, b.element
	file, err := pdf.New(pdf.Properties{Title: line(d.Title), Author: line(d.Author), Copyright: line(d.Copyright), Subject: line(d.Subject), Keywords: line(d.Keywords), Language: languageOf(d), Marker: o.Marker})
	if err != nil {
		return nil, err
	}
	p := &painter{File: file}
	p.letters = diagram.NewLettering()
	p.Whole(whole)
	p.sheets(len(pages), l, o)
	for i, page := range pages {
		o.Sign.Look()
		p.begin([2]int{i, len(pages)}, l, o)
		for _, m := range page {
			if _, seen := m.mark.(outline); !seen {
				p.Within(elementOf(m.mark))
			}
			m.paint(p, m.x, m.y)
		}
		if err := p.Err(); err != nil {
			return nil, err
		}
	}
	var out bytes.Buffer
	err = p.End(&out)
	return out.Bytes(), err
}

func (t text) paint(p *painter, x, y float64) {
	p.write(t.piece, x+t.x, y+t.base)
	if t.to != "" && t.of != nil {
		p.link(t, x, y)
	}
}

// write sets a piece of text with its left end on the line at a place.
func (p *painter) write(t piece, x, y float64) {
	if t.shown == "" {
		return
	}
	p.Set(t.face())
	if t.more {
		t.shown += " "
	}
	if t.meant != "" {
		if t.more {
			t.meant += " "
		}
		p.Instead(t.meant) // searching and copying find the sign that the fonts lack
		defer p.Done()
	}
	_, right, lower := t.set()
	p.Text(t.shown, measure.Vec{X: x + right, Y: y + lower})
}

// face is how text of a style is set.
func (st style) face() pdf.Face {
	size, _, _ := st.set()
	return pdf.Face{Size: size, Bold: st.bold, Colour: st.ink}
}

func (b panel) paint(p *painter, x, y float64) {
	p.Operator("q")
	if b.fill != nil {
		p.Colour(*b.fill, "rg")
	}
	if b.line > 0 {
		p.Pen(diagram.Pen{Width: b.line, Colour: b.ink}, false, false)
	}
	p.Rectangle(measure.Vec{X: x + b.x, Y: y + b.y}, b.w, b.h)
	op := pdf.Painting(b.fill != nil, b.line > 0)
	if op == "" {
		op = "n"
	}
	p.Operator(op + " Q")
}

// outline is a bookmark in its place.
type outline struct{ bookmark }

func (o outline) extent() rect { return rect{} }

func (o outline) paint(p *painter, _, y float64) { p.Bookmark(o.text, o.level, y) }
