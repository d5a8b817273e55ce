package booklet

import (
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/palettes"
)

// layoutKey is the key of the layout diagram.
const layoutKey = "layout"

// maxLabelled is how many cells across or down still have room for their labels.
const maxLabelled = 20

// layoutPart is where each block goes.
func (b *patternBuilder) layoutPart() {
	b.part("Layout", true)
	b.addNotes("grid")
	t := b.Top
	text := "The quilt is " + b.across() + ". " + see(layoutKey) + " shows where each one goes. "
	if b.labelled() {
		text += "The letters name the " + plural(b.noun()) + b.numbered() + ". "
		if b.arrows() {
			text += "Each arrow points to the block's top edge as pictured above: rotate each block to match. "
		}
	} else {
		text += "There are too many " + plural(b.noun()) + " to label each one in the picture, so the numbers at the edges count every tenth row and column: follow the colors. "
	}
	if len(t.Cells) > 1 {
		text += "Lay out all " + plural(b.noun()) + " before you sew them together, and view them from a distance."
	}
	b.add(para("%s", text))
	b.add(b.blockTable())
	b.add(document.Picture{Of: b.layoutDrawing(), Caption: caption(layoutKey, b.layoutCaption()), Alternative: b.layoutInWords(), Width: b.wholeWidth(), Least: minOf(b.Top.Outer.Width(), b.Top.Outer.Height())})
}

// arrows says whether any block of the layout has an arrow.
func (b *patternBuilder) arrows() bool {
	return slices.ContainsFunc(b.Sewing.Blocks, func(k sewing.Block) bool { return hasArrow(&k) })
}

// numbered says that a label has the number of the colouring behind it, if any has.
func (b *patternBuilder) numbered() string {
	if slices.ContainsFunc(b.Sewing.Blocks, func(k sewing.Block) bool { return hasNumber(&k) }) {
		return ", the numbers after them the fabric placements"
	}
	return ""
}

// hasNumber says whether the layout tells the colourings of a block.
func hasNumber(k *sewing.Block) bool {
	return len(k.Variants) > 1 && len(k.Variants) <= maxColourings
}

// hasArrow says whether it matters how a block is turned.
func hasArrow(k *sewing.Block) bool { return len(k.Steps) > 0 && !k.Column }

func (b *patternBuilder) labelled() bool {
	return b.Top.Columns <= maxLabelled && b.Top.Rows <= maxLabelled
}

func (b *patternBuilder) blockTable() document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Block"}, {Title: "Number", Kind: document.Counts}, {Title: "Finished"}, {Title: "Picture"}}}
	for i := range b.Sewing.Blocks {
		k := &b.Sewing.Blocks[i]
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(k.Label)}, cell(count(k.Count, blockNoun(k))), cell(b.unitSize(k.Finished)), cell(see(blockKey(i)))}})
	}
	return t
}

// pale is a colour on which letters are read.
func pale(c palettes.Colour) palettes.Colour {
	mix := func(v uint8) uint8 { return uint8((int(v) + 2*255) / 3) }
	return palettes.Colour{R: mix(c.R), G: mix(c.G), B: mix(c.B)}
}

// layoutDrawing is the top in pale colours with labels.
func (b *patternBuilder) layoutDrawing() document.Drawing {
	d := b.picture(pale)
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
	if hasNumber(k) {
		text = k.VariantName(c.Number)
	}
	words := diagram.Words{Text: text, At: middle, Points: 9, Bold: true, Room: side * 6 / 10, Colour: ink(), Halo: true}
	marks := []diagram.Mark{{Words: &words}}
	if !hasArrow(k) {
		return marks
	}
	way := [4]measure.Point{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}}[at.Turns&3]
	from, to := side*28/100, side*46/100
	line := diagram.Line{Stroke: diagram.Thin, End: diagram.Arrow, Points: []measure.Point{
		{X: middle.X + way.X*from, Y: middle.Y + way.Y*from}, {X: middle.X + way.X*to, Y: middle.Y + way.Y*to},
	}}
	return append(marks, diagram.Mark{Line: &line})
}

// layoutInWords is the layout for someone who cannot see it: row by row where there are few.
func (b *patternBuilder) layoutInWords() string {
	t := b.Top
	text := b.described("The layout")
	if !b.labelled() {
		return text
	}
	ways := [4]string{"up", "right", "down", "left"}
	names := make([]string, len(t.Cells))
	for i := range b.Sewing.Blocks {
		for _, c := range b.Sewing.Blocks[i].Variants {
			for _, at := range c.Cells {
				names[at.Cell] = b.Sewing.Blocks[i].Label
				if hasArrow(&b.Sewing.Blocks[i]) {
					names[at.Cell] += " " + ways[at.Turns&3]
				}
			}
		}
	}
	if b.noun() == "column" {
		return text + " From left to right: " + strings.Join(slices.DeleteFunc(names, func(n string) bool { return n == "" }), ", ") + "."
	}
	for row := range t.Rows {
		var list []string
		for column := range t.Columns {
			if name := names[row*t.Columns+column]; name != "" {
				list = append(list, name)
			}
		}
		text += " Row " + numeral(row+1) + ": " + strings.Join(list, ", ") + "."
	}
	return text
}

func box(low, high measure.Point) []measure.Point {
	return []measure.Point{low, {X: high.X, Y: low.Y}, high, {X: low.X, Y: high.Y}}
}
