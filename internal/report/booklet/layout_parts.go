package booklet

import (
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/svgout"
)

// Sizes on a page in usual print, points: of the numbers at the edges of a map with the space round them, and of a block at the
// least in which an arrow is seen.
const (
	axisRoom   = 20
	leastBlock = 22
)

// labelShare is how much of a block's side its label may take: clear of its arrow.
const labelShare = 0.56

// wholeGrid is all rows and columns.
func (b *patternBuilder) wholeGrid() report.Window {
	return report.Window{EndRow: b.Top.Rows, EndColumn: b.Top.Columns}
}

// layoutParts are the parts of the layout where it is divided; nil where it is shown whole.
func (b *patternBuilder) layoutParts() []report.Window {
	if !b.labelled() {
		return nil
	}
	return b.partsOf(b.mapRoom(), b.leastSide(), [2]measure.NM{b.Top.Outer.Width(), b.Top.Outer.Height()}, [2]measure.NM{b.Top.StepFinished, b.Top.StepFinished})
}

// partsOf is the grid in parts, row by row, each of which fits into a room with its blocks as large as that, in points; nil where
// the whole, of a width and height, does. A column and a row of the picture are so wide and high.
func (b *patternBuilder) partsOf(room measure.Vec, block float64, whole, step [2]measure.NM) []report.Window {
	scale := block / float64(b.Top.SideFinished)
	if float64(whole[0])*scale <= room.X && float64(whole[1])*scale <= room.Y {
		return nil
	}
	most := func(room float64, step measure.NM) int { return max(1, int(room/(float64(step)*scale)-cutOff)) }
	columns, rows := even(b.Top.Columns, most(room.X, step[0])), even(b.Top.Rows, most(room.Y, step[1]))
	var list []report.Window // one where the borders alone are too wide
	for r := range len(rows) - 1 {
		for c := range len(columns) - 1 {
			if w := (report.Window{FirstRow: rows[r], EndRow: rows[r+1], FirstColumn: columns[c], EndColumn: columns[c+1]}); b.some(w) {
				list = append(list, w)
			}
		}
	}
	return list
}

// some says whether a part has a block.
func (b *patternBuilder) some(w report.Window) bool {
	for row := w.FirstRow; row < w.EndRow; row++ {
		for column := w.FirstColumn; column < w.EndColumn; column++ {
			if !b.Top.Empty(row*b.Top.Columns + column) {
				return true
			}
		}
	}
	return false
}

// even parts a number into stretches of that many at the most, as even as they come: where each begins, and the end.
func even(n, most int) []int {
	parts := (n + most - 1) / most
	list := make([]int, parts+1)
	for i := range list {
		list[i] = i * n / parts
	}
	return list
}

// mapRoom is how much of a page a map can have beside its numbers, in points of usual print.
func (b *patternBuilder) mapRoom() measure.Vec {
	p, zoom := b.paper(), b.zoom()
	captions := 2.5 // lines
	if b.Large {
		captions = 3
	}
	height := float64(p.Height-2*p.Margin-measure.Inch) * diagram.TrueScale / zoom
	return measure.Vec{X: float64(b.wholeWidth())*diagram.TrueScale/zoom - axisRoom, Y: height - captions*12 - axisRoom}
}

// zoom is by how much the words of figures are larger than in usual print.
func (b *patternBuilder) zoom() float64 {
	return render.Options{Paper: b.paper(), Large: b.Large}.Zoom()
}

// leastSide is how large a block is at the least whose label can be read, in points of usual print.
func (b *patternBuilder) leastSide() float64 {
	letters, widest := diagram.NewLettering(), 0.0
	for i := range b.Sewing.Blocks {
		k := &b.Sewing.Blocks[i]
		for _, c := range k.Variants {
			widest = max(widest, letters.Width(b.cellName(k, c.Number), leastWords, true))
		}
	}
	const spare = 1.02 // for what is rounded
	return max(leastBlock, spare*widest/labelShare)
}

// leastWords is the size of the least words on a page in usual print, points.
const leastWords = 8

// leastOfPage is which part of the width that it has on a page of its own a picture of the layout has at the least.
const leastOfPage = 0.55

// leastWide is how wide a picture of a frame of the layout is at the least, so that labels can be read and it is not lost among
// text.
func (b *patternBuilder) leastWide(frame quilt.Rect) measure.NM {
	if !b.labelled() {
		return minOf(frame.Width(), frame.Height())
	}
	room := b.mapRoom()
	alone := min(room.X, room.Y*float64(frame.Width())/float64(frame.Height()))
	wide := max(float64(frame.Width())*b.leastSide()/float64(b.Top.SideFinished), leastOfPage*alone) + axisRoom
	return min(measure.NM(wide*b.zoom()/diagram.TrueScale), b.wholeWidth())
}

// cutOff is how much of the blocks beside a part is shown with it, as part of a block's step.
const cutOff = 0.3

// frame is what of the top is shown of a part: the part, and a little of what is beside it.
func (b *patternBuilder) frame(w report.Window) quilt.Rect {
	t := b.Top
	more := measure.NM(math.Round(float64(t.StepFinished) * cutOff / 2))
	first, last := t.CellRect(w.FirstRow*t.Columns+w.FirstColumn), t.CellRect((w.EndRow-1)*t.Columns+w.EndColumn-1)
	return quilt.Rect{
		Min: measure.Point{X: max(first.Min.X-more, t.Outer.Min.X), Y: max(first.Min.Y-more, t.Outer.Min.Y)},
		Max: measure.Point{X: min(last.Max.X+more, t.Outer.Max.X), Y: min(last.Max.Y+more, t.Outer.Max.Y)},
	}
}

// framed is what of a drawing of the top lies in a frame.
func framed(d document.Drawing, frame quilt.Rect) document.Drawing {
	d.Min, d.Max = frame.Min, frame.Max
	var layers []document.Layer
	for _, l := range d.Layers {
		var paths [][]measure.Point
		for _, path := range l.Paths {
			if meets(path, frame) {
				paths = append(paths, path)
			}
		}
		if l.Paths = paths; len(paths) > 0 {
			layers = append(layers, l)
		}
	}
	d.Layers = layers
	return d
}

// meets says whether the rectangle round an outline and another have something in common.
func meets(path []measure.Point, r quilt.Rect) bool {
	if len(path) == 0 {
		return false
	}
	low, high := path[0], path[0]
	for _, p := range path {
		low, high = measure.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, measure.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return high.X > r.Min.X && low.X < r.Max.X && high.Y > r.Min.Y && low.Y < r.Max.Y
}

// shownAt is the cell of a part in which a block has its label: its own, or of a column the first one in the part; false where the
// part has none of it.
func (b *patternBuilder) shownAt(at *sewing.Placed, w report.Window) (int, bool) {
	row, column := at.Cell/b.Top.Columns, at.Cell%b.Top.Columns
	if column < w.FirstColumn || column >= w.EndColumn || row >= w.EndRow || row+at.Cells <= w.FirstRow {
		return 0, false
	}
	return max(row, w.FirstRow)*b.Top.Columns + column, true
}

// dividedDrawing is the whole top in pale colours with its parts and their numbers.
func (b *patternBuilder) dividedDrawing(parts []report.Window) document.Drawing {
	d := b.picture(pale, svgout.SeamsLeftOut)
	line := document.Layer{Name: "parts", Line: partLine * b.zoom(), Ink: ink()}
	for i, w := range parts {
		first, last := b.Top.CellRect(w.FirstRow*b.Top.Columns+w.FirstColumn), b.Top.CellRect((w.EndRow-1)*b.Top.Columns+w.EndColumn-1)
		line.Paths = append(line.Paths, box(first.Min, last.Max))
		middle := measure.Point{X: (first.Min.X + last.Max.X) / 2, Y: (first.Min.Y + last.Max.Y) / 2}
		d.Marks = append(d.Marks, diagram.Mark{Words: &diagram.Words{Text: numeral(i + 1), At: middle, Points: leastWords, Bold: true, Colour: ink(), Halo: true}})
	}
	d.Layers = append(d.Layers, line)
	return d
}

// partLine is how broad the edges of parts are, points.
const partLine = 1.2
