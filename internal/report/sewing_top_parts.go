package report

import (
	"math"
	"strconv"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// RowsInParts are pictures of parts of the rows, or columns, as they are sewn, with the numbers of rows and columns at their edges.
func RowsInParts(p *Plans, parts []Window) []*diagram.Figure {
	s := newSewer(p)
	list := make([]*diagram.Figure, len(parts))
	for i, part := range parts {
		list[i] = s.drawLines(part)
	}
	return list
}

// RowsLabelShare is how much of a block's side its label may take in a picture of the rows.
const RowsLabelShare = 0.32

// RowsSize is the width and height of a picture of all rows, or columns, and how much of that a column and a row take.
func (g Grid) RowsSize() (whole, step [2]measure.NM) {
	t, apart := g.Top, g.Plan.SideFinished/rowsApart
	whole, step = [2]measure.NM{t.Field.Width(), t.Field.Height()}, [2]measure.NM{t.StepFinished, t.StepFinished}
	at, lines := 1, t.Rows
	if g.Plan.Assembly.ByColumns {
		at, lines = 0, t.Columns
	}
	if t.StepFinished > t.SideFinished { // sashes are lines of their own
		apart *= 2
	}
	step[at] += apart
	whole[at] += measure.NM(lines) * apart
	return whole, step
}

// rowsApart is by how much rows stand apart in their picture: so many of it are a block's side.
const rowsApart = 4

func (s *sewer) apart() measure.NM { return s.SideFinished / rowsApart }

func (s *sewer) wholeGrid() Window { return Window{EndRow: s.top.Rows, EndColumn: s.top.Columns} }

// keepPart leaves out the tiles beyond the part, and the lines without tiles.
func (d *topDrawing) keepPart() {
	r := d.region()
	var lines []sewing.Line
	for _, l := range d.lines {
		var tiles []sewing.Tile
		for _, t := range l.Tiles {
			if t.At.Min.X < r.Max.X && t.At.Max.X > r.Min.X && t.At.Min.Y < r.Max.Y && t.At.Max.Y > r.Min.Y {
				if len(tiles) == 0 {
					t.Seam = -1 // what it is sewn to lies beyond the part
				}
				tiles = append(tiles, t)
			}
		}
		if l.Tiles = tiles; len(tiles) > 0 {
			lines = append(lines, l)
		}
	}
	d.lines = lines
}

// region is the part on the top, with the sashes to the right of it and below, and at the top's edges those beside it.
func (d *topDrawing) region() quilt.Rect {
	t, w := d.top, d.part
	r := quilt.Rect{Min: t.CellRect(w.FirstRow*t.Columns + w.FirstColumn).Min, Max: t.Field.Max}
	if w.FirstColumn == 0 {
		r.Min.X = t.Field.Min.X
	}
	if w.FirstRow == 0 {
		r.Min.Y = t.Field.Min.Y
	}
	if w.EndColumn < t.Columns {
		r.Max.X = t.CellRect(w.EndColumn).Min.X
	}
	if w.EndRow < t.Rows {
		r.Max.Y = t.CellRect(w.EndRow * t.Columns).Min.Y
	}
	return r
}

// areaInPart draws as much of a sash as lies in the part: some run over the whole quilt.
func (d *topDrawing) areaInPart(t *sewing.Tile) {
	part, r := &d.plan.Assembly.Parts[t.Part], d.region()
	for i := range part.Patches {
		p := &d.top.Patches[part.First+i]
		for _, face := range d.top.Faces[p.First : p.First+p.Count] {
			o := vecsOf(face.Outline)
			o = measure.Clipped(o, measure.Vec{X: 1}, vecOf(r.Min).X)
			o = measure.Clipped(o, measure.Vec{X: -1}, -vecOf(r.Max).X)
			o = measure.Clipped(o, measure.Vec{Y: 1}, vecOf(r.Min).Y)
			o = measure.Clipped(o, measure.Vec{Y: -1}, -vecOf(r.Max).Y)
			d.area(o, d.top.Fabrics[face.Fabric].Colour, false, diagram.Thin)
		}
	}
}

// partLineNumber numbers a row at its left, or a column above it.
func (d *topDrawing) partLineNumber(c *sewing.Line) {
	side := float64(d.plan.SideFinished)
	for i := range c.Tiles {
		t := &c.Tiles[i]
		if d.plan.Assembly.Parts[t.Part].Cell < 0 {
			continue
		}
		first := vecOf(c.Tiles[0].At.Min)
		at, anchor := measure.Vec{X: first.X - 0.08*side, Y: vecOf(t.At.Min).Y + side/2}, diagram.End
		if d.plan.Assembly.ByColumns {
			at, anchor = measure.Vec{X: vecOf(t.At.Min).X + side/2, Y: first.Y - aboveColumn*side}, diagram.Middle
		}
		d.words(strconv.Itoa(c.Number), at, label{dimPoints, anchor, 0})
		return
	}
}

// aboveColumn is how far above a column the middle of its number is, as part of a block's side.
const aboveColumn = 0.3

// numberGap is how far above a part the middle of its numbers is: a part of a block's side, or of all the part's height where
// that is much, so that the numbers stand clear of it.
func (d *topDrawing) numberGap() float64 {
	const ofSide, ofHeight = 0.3, 0.035
	return max(ofSide*float64(d.plan.SideFinished), ofHeight*float64(d.Max.Y-d.Min.Y))
}

// columnNumbers numbers the columns above the first row, once the frame is known.
func (d *topDrawing) columnNumbers() {
	t, side := d.top, float64(d.plan.SideFinished)
	if d.plan.Assembly.ByColumns { // where columns of tumblers have no rows
		return
	}
	for n := d.part.FirstColumn; n < d.part.EndColumn; n++ {
		at := measure.Vec{X: vecOf(t.CellRect(n).Min).X + side/2, Y: float64(d.Min.Y) - d.numberGap()}
		d.words(strconv.Itoa(n+1), at, label{dimPoints, diagram.Middle, 0})
	}
}

// around makes the frame that of all outlines.
func (d *topDrawing) around() {
	low, high := measure.Point{X: math.MaxInt64, Y: math.MaxInt64}, measure.Point{X: math.MinInt64, Y: math.MinInt64}
	for _, m := range d.Marks {
		if m.Area == nil {
			continue
		}
		for _, p := range m.Area.Outline {
			low = measure.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
			high = measure.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
		}
	}
	d.Min, d.Max = low, high
}
