package booklet

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
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
	shown := para("%s", b.grid().LayoutShown(see(layoutKey)))
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
	b.add(shown, document.Picture{Of: b.layoutDrawing(), Caption: caption(layoutKey, b.grid().LayoutCaption()), Alternative: b.grid().LayoutInWords(), Width: b.wholeWidth(), Least: b.leastLayout()})
}

// leastLayout is the narrowest that a layout may be: so that a label fits into each block, where the page is as wide as that.
func (b *patternBuilder) leastLayout() measure.NM {
	least := minOf(b.Top.Outer.Width(), b.Top.Outer.Height())
	if !b.labelled() {
		return least
	}
	block := measure.Inch * 22 / 72 // a label of two or three letters
	if b.Large {
		block *= 2
	}
	wide := b.Top.Outer.Width() / 1000 * (block / 1000) / (b.Top.SideFinished / 1_000_000)
	return min(max(least, wide), b.wholeWidth()*3/4)
}

// pale is a colour on which letters are read.
func pale(c palettes.Colour) palettes.Colour {
	mix := func(v uint8) uint8 { return uint8((int(v) + 2*255) / 3) }
	return palettes.Colour{R: mix(c.R), G: mix(c.G), B: mix(c.B)}
}

// layoutDrawing is the top in pale colours with labels.
func (b *patternBuilder) layoutDrawing() document.Drawing {
	d := b.picture(pale, svgout.SeamsLeftOut)
	t := b.Top
	b.cellOutlines(&d)
	if b.labelled() {
		for i := range b.Sewing.Blocks {
			k := &b.Sewing.Blocks[i]
			for _, c := range k.Variants {
				for _, at := range c.Cells {
					d.Marks = append(d.Marks, b.cellMarks(k, &c, &at)...)
				}
			}
		}
	}
	every := b.every()
	edge := t.StepFinished * 6 / 10
	if every > 1 {
		edge = max(edge, (t.Outer.Width()+t.Outer.Height())/50)
	}
	for n := every; n <= t.Columns; n += every {
		d.Marks = append(d.Marks, axis(numeral(n), measure.Point{X: t.CellRect(n-1).Min.X + t.SideFinished/2, Y: d.Min.Y - edge/2}, edge))
	}
	for n := every; n <= t.Rows && b.noun() == "block"; n += every {
		d.Marks = append(d.Marks, axis(numeral(n), measure.Point{X: d.Min.X - edge/2, Y: t.CellRect((n-1)*t.Columns).Min.Y + t.SideFinished/2}, edge))
	}
	d.Min.X -= edge
	d.Min.Y -= edge
	return d
}

// every is which rows and columns are numbered.
func (b *patternBuilder) every() int {
	if b.labelled() {
		return 1
	}
	return 10
}

func axis(text string, at measure.Point, room measure.NM) diagram.Mark {
	return diagram.Mark{Words: &diagram.Words{Text: text, At: at, Points: 8, Bold: true, Room: room, Colour: ink()}}
}

func ink() palettes.Colour { return palettes.Colour{R: 0x22, G: 0x22, B: 0x22} }

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

// cellMarks is a block's label and the arrow to its upper side.
func (b *patternBuilder) cellMarks(k *sewing.Block, c *sewing.FabricVariant, at *sewing.Placed) []diagram.Mark {
	r := b.Top.CellRect(at.Cell)
	side := b.Top.SideFinished
	middle := measure.Point{X: r.Min.X + side/2, Y: r.Min.Y + side/2}
	text := k.Label
	if report.HasNumber(k) {
		text = k.VariantName(c.Number)
	}
	words := diagram.Words{Text: text, At: middle, Points: 9, Bold: true, Room: side * 6 / 10, Colour: ink(), Halo: true}
	marks := []diagram.Mark{{Words: &words}}
	if !report.HasArrow(k) {
		return marks
	}
	way := [4]measure.Point{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}}[at.Turns&3]
	from, to := side*28/100, side*46/100
	line := diagram.Line{Stroke: diagram.Thin, End: diagram.Arrow, Points: []measure.Point{
		{X: middle.X + way.X*from, Y: middle.Y + way.Y*from}, {X: middle.X + way.X*to, Y: middle.Y + way.Y*to},
	}}
	return append(marks, diagram.Mark{Line: &line})
}

func box(low, high measure.Point) []measure.Point {
	return []measure.Point{low, {X: high.X, Y: low.Y}, high, {X: low.X, Y: high.Y}}
}
