package booklet

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// layoutKey is the key of the layout diagram.
const layoutKey = "layout"

// layoutPart is where each block goes, as the sewing report says it, with a picture.
func (b *patternBuilder) layoutPart() {
	s := b.sewn(report.SewingLayout)
	b.part(s.Title, true)
	b.addNotes("grid")
	parts := b.layoutParts()
	var refs []string
	for i := range parts {
		if len(parts) > 1 {
			refs = append(refs, see(layoutPartKey(i)))
		}
	}
	shown := para("%s", b.grid().LayoutShown(see(layoutKey), refs))
	for _, block := range printed(s.Blocks) {
		t, ok := block.(document.Table)
		if !ok {
			b.add(block)
			continue
		}
		t.Columns = append(t.Columns, document.Column{Title: "Picture"})
		for i := range t.Rows {
			t.Rows[i].Cells = append(t.Rows[i].Cells, cell(see(blockKey(i))))
		}
		b.add(t)
	}
	b.add(shown)
	b.layoutPictures(parts)
}

// layoutPictures is the layout on one page, or the quilt divided into parts, part by part, where the labels would be too small.
func (b *patternBuilder) layoutPictures(parts []report.Window) {
	whole := document.Picture{Caption: caption(layoutKey, b.grid().LayoutCaption()), Alternative: b.grid().LayoutInWords(), Width: b.wholeWidth()}
	if len(parts) < 2 {
		frame := b.Top.Outer
		if len(parts) == 1 { // the borders alone are too wide
			frame = b.frame(parts[0])
		}
		whole.Of, whole.Least = b.layoutDrawing(b.wholeGrid(), frame), b.leastWide(frame)
		b.add(whole)
		return
	}
	whole.Of, whole.Width, whole.Least = b.dividedDrawing(parts), b.wholeWidth()*3/5, b.wholeWidth()*2/5
	if b.Large {
		whole.Width = b.wholeWidth()
	}
	whole.Caption = caption(layoutKey, report.DividedCaption)
	b.add(whole)
	for i, w := range parts {
		frame, name := b.frame(w), report.PartCaption(i+1, w)
		b.add(document.Picture{
			Of: b.layoutDrawing(w, frame), Caption: caption(layoutPartKey(i), name), Alternative: name, Width: b.wholeWidth(), Least: b.leastWide(frame),
		})
	}
}

func layoutPartKey(n int) string { return layoutKey + " part " + numeral(n) }

// pale is a colour on which letters are read.
func pale(c palettes.Colour) palettes.Colour {
	mix := func(v uint8) uint8 { return uint8((int(v) + 2*255) / 3) }
	return palettes.Colour{R: mix(c.R), G: mix(c.G), B: mix(c.B)}
}

// layoutDrawing is a part of the top in pale colours with labels, in its frame.
func (b *patternBuilder) layoutDrawing(w report.Window, frame quilt.Rect) document.Drawing {
	d := framed(b.picture(pale, svgout.SeamsLeftOut), frame)
	b.cellOutlines(&d)
	if b.labelled() {
		for i := range b.Sewing.Blocks {
			k := &b.Sewing.Blocks[i]
			for _, c := range k.Variants {
				for n := range c.Cells {
					if cell, ok := b.shownAt(&c.Cells[n], w); ok {
						d.Marks = append(d.Marks, b.cellMarks(k, b.cellName(k, c.Number), cell, c.Cells[n].Turns)...)
					}
				}
			}
		}
	}
	return b.axes(d, w)
}

// axisGap is how far from the frame the middle of the numbers above it stands, in points of usual print.
const axisGap = 7

// axes numbers the rows and columns of a drawing, beyond its frame.
func (b *patternBuilder) axes(d document.Drawing, w report.Window) document.Drawing {
	t, every := b.Top, b.every()
	room := b.mapRoom()
	gap := measure.NM(axisGap * max(float64(d.Max.X-d.Min.X)/room.X, float64(d.Max.Y-d.Min.Y)/room.Y))
	for n := w.FirstColumn + 1; n <= w.EndColumn; n++ {
		if n%every == 0 {
			d.Marks = append(d.Marks, axis(numeral(n), measure.Point{X: t.CellRect(n-1).Min.X + t.SideFinished/2, Y: d.Min.Y - gap}, diagram.Middle))
		}
	}
	for n := w.FirstRow + 1; n <= w.EndRow && b.noun() == "block"; n++ {
		if n%every == 0 {
			d.Marks = append(d.Marks, axis(numeral(n), measure.Point{X: d.Min.X - gap/2, Y: t.CellRect((n-1)*t.Columns).Min.Y + t.SideFinished/2}, diagram.End))
		}
	}
	return d
}

// every is which rows and columns are numbered.
func (b *patternBuilder) every() int {
	if b.labelled() {
		return 1
	}
	return report.Every(max(b.Top.Columns, b.Top.Rows))
}

// axis is a number of a row or column.
func axis(text string, at measure.Point, anchor diagram.Anchor) diagram.Mark {
	return diagram.Mark{Words: &diagram.Words{Text: text, At: at, Points: 8, Bold: true, Anchor: anchor, Colour: ink()}}
}

func ink() palettes.Colour { return diagram.Black() }

// cellOutlines draws the edges of the blocks, or of every ten by ten of them where there are many.
func (b *patternBuilder) cellOutlines(d *document.Drawing) {
	var paths [][]measure.Point
	every, runs := b.every(), b.runsOfCells()
	for row := 0; row < b.Top.Rows; row += every {
		for column := 0; column < b.Top.Columns; column += every {
			first := row*b.Top.Columns + column
			last := min(row+every, b.Top.Rows)*b.Top.Columns - b.Top.Columns + min(column+every, b.Top.Columns) - 1
			if every == 1 {
				last = runs[first]
			}
			if every > 1 || last >= 0 && !b.Top.Empty(first) {
				paths = append(paths, box(measure.Point(b.Top.CellRect(first).Min), measure.Point(b.Top.CellRect(last).Max)))
			}
		}
	}
	d.Layers = append(d.Layers, document.Layer{Name: "blocks", Paths: paths, Line: b.hairline(), Ink: ink()})
}

// cellName is what the layout calls a block in a cell.
func (b *patternBuilder) cellName(k *sewing.Block, variant int) string {
	if report.HasNumber(k) {
		return k.VariantName(variant)
	}
	return k.Label
}

// cellMarks is a block's label and the arrow to its upper side.
func (b *patternBuilder) cellMarks(k *sewing.Block, name string, cell, turns int) []diagram.Mark {
	r := b.Top.CellRect(cell)
	side := b.Top.SideFinished
	middle := measure.Point{X: r.Min.X + side/2, Y: r.Min.Y + side/2}
	words := diagram.Words{Text: name, At: middle, Points: 9, Bold: true, Room: measure.NM(labelShare * float64(side)), Colour: ink(), Halo: true}
	marks := []diagram.Mark{{Words: &words}}
	if !report.HasArrow(k) {
		return marks
	}
	way := [4]measure.Point{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}}[turns&3]
	from, to := side*30/100, side*47/100
	line := diagram.Line{Stroke: diagram.Thin, End: diagram.Arrow, Points: []measure.Point{
		{X: middle.X + way.X*from, Y: middle.Y + way.Y*from}, {X: middle.X + way.X*to, Y: middle.Y + way.Y*to},
	}}
	return append(marks, diagram.Mark{Line: &line})
}

func box(low, high measure.Point) []measure.Point {
	return []measure.Point{low, {X: high.X, Y: low.Y}, high, {X: low.X, Y: high.Y}}
}
