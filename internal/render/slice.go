package render

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/render/pdf"
	"eighthturn/palettes"
)

// tie is how strongly a slice is held to the one above it.
type tie uint8

const (
	free  tie = iota // a page may end between them
	kept             // wanted together: a page ends there only where both would not fit on one
	bound            // never alone: a heading and its text, the first two lines of a paragraph
)

// slice is a strip of the document across the page, no higher than a page. A page is filled
// with slices from the top down.
type slice struct {
	above   float64 // space above, but at the head of a page
	height  float64
	tie     tie
	newPage bool                        // on a new page in any case
	opens   bool                        // a chapter, on a new page where the one before is half full
	marks   []mark                      // from the left edge of the text and the slice's own top
	cells   [][]mark                    // of a row of a table, by column: the row's lines are read cell by cell
	row     int                         // which row, from 1; 0 for none
	frames  []*frame                    // that it lies in, the outermost first
	heads   []slice                     // of its table, to be printed again where a page begins with it
	again   bool                        // a head that is printed again
	fill    func(height float64) []mark // the slice's marks where it is to fill the page; nil for what does not
	flex    *flex                       // nil for what has one size
	mark    *bookmark
	order   int // of the slice in the document
	part    int // the index of the document's part, -1 before the first
}

// flex is an illustration that may be made smaller to fit on a page.
type flex struct {
	least float64                     // height of the slice at the smallest size
	words float64                     // of the height, what words take that do not get smaller
	at    func(height float64) []mark // the slice's marks at a height
}

// bookmark is an entry of the outline that viewers show.
type bookmark struct {
	text  string
	level int // 0 for a part
}

// rect is a rectangle in points.
type rect struct{ x, y, w, h float64 }

// mark is one thing that is painted.
type mark interface {
	paint(p *painter, x, y float64)
	extent() rect // from the same place as x and y
}

// text is a piece of text with the left end of the line on which its letters stand.
type text struct {
	x, base float64
	piece
	of *pdf.Element // nil for what is not read
}

// Heights of the Go fonts' letters above and below the line as parts of their size.
const (
	ascent  = 0.95
	descent = 0.24
)

func (t text) extent() rect {
	size, _, lower := t.set()
	return rect{t.x, t.base + lower - ascent*size, t.width, (ascent + descent) * size}
}

// panel is a filled or framed rectangle.
type panel struct {
	rect
	fill *palettes.Colour // nil for none
	line float64          // width of its outline, 0 for none
	ink  palettes.Colour  // of the outline
}

func (b panel) extent() rect {
	return rect{b.x - b.line/2, b.y - b.line/2, b.w + b.line, b.h + b.line}
}

// art is an illustration with its left edge.
type art struct {
	x float64
	*sheet
	of   *pdf.Element // nil for what is not read
	name string       // such as "Figure 8"; "" for none
}

func (a art) extent() rect { return rect{a.x, 0, a.width(), a.height()} }

// frame is what is drawn round slices, on each page that they come to.
type frame struct {
	x, w float64
	fill palettes.Colour
	line float64
	ink  palettes.Colour
	bar  float64 // width of a heavy bar at the left
}

// rule is a thin level line.
func rule(x, y, w, thick float64, ink palettes.Colour) panel {
	return panel{rect: rect{x, y - thick/2, w, thick}, fill: &ink}
}

// Colours of the page. Grey stands off from white by a contrast ratio of more than 7; it and hairlines are printed with black alone.
func ink() palettes.Colour    { return diagram.Black() }
func grey() palettes.Colour   { return palettes.Colour{R: 0x54, G: 0x54, B: 0x54} }
func accent() palettes.Colour { return palettes.Colour{R: 0x1f, G: 0x3a, B: 0x5f} }
func hair() palettes.Colour   { return palettes.Colour{R: 0xc8, G: 0xc8, B: 0xc8} }
