package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/report"
)

// seamLine is how broad the seams of a block are drawn, in points.
const seamLine = 0.6

// blockWidth is how wide the picture of a block is printed.
const blockWidth = 5 * measure.Inch / 2

// columnHeight is about how high the picture of a column is printed.
const columnHeight = 7 * measure.Inch / 2

// blockFigure is a finished block in its first colouring, as it lies before it is turned.
func (b *patternBuilder) blockFigure(n int) document.Picture {
	k := &b.Sewing.Blocks[n]
	d := document.Drawing{Max: measure.Point{X: b.Top.SideFinished, Y: b.Top.SideFinished}}
	turned := ""
	if report.HasArrow(k) && b.labelled() {
		if turned = see(layoutKey); len(b.layoutParts()) > 1 {
			turned = report.TheLayout
		}
	}
	b.blockLayers(&d, &k.Variants[0].Cells[0])
	width := blockWidth
	if d.Max.Y > d.Max.X { // a column
		width = columnHeight / (d.Max.Y / d.Max.X)
	}
	return document.Picture{Of: d, Width: width, Caption: caption(blockKey(n), report.BlockShown(k, turned)), Alternative: report.BlockInWords(k)}
}

// blockLayers draws the patches of a block, turned back.
func (b *patternBuilder) blockLayers(d *document.Drawing, at *sewing.Placed) {
	corner := b.Top.CellRect(at.Cell).Min
	side := b.Top.SideFinished
	for cell, n := at.Cell, 0; n < at.Cells; cell, n = cell+b.Top.Columns, n+1 {
		c := &b.Top.Cells[cell]
		for _, p := range b.Top.Patches[c.First : c.First+c.Count] {
			for _, face := range b.Top.Faces[p.First : p.First+p.Count] {
				fabric := &b.Top.Fabrics[face.Fabric]
				var outline []measure.Point
				for _, q := range face.Outline {
					point := turnedBack(measure.Point{X: q.X - corner.X, Y: q.Y - corner.Y}, side, at.Turns)
					d.Max.Y = max(d.Max.Y, point.Y)
					outline = append(outline, point)
				}
				d.Layers = append(d.Layers, document.Layer{Name: fabric.Name, Paths: [][]measure.Point{outline}, Fill: &fabric.Colour, Line: seamLine, Ink: ink()})
			}
		}
	}
}

// turnedBack is a point of a square after so many quarter turns anticlockwise.
func turnedBack(p measure.Point, side measure.NM, quarters int) measure.Point {
	for range quarters {
		p = measure.Point{X: p.Y, Y: side - p.X}
	}
	return p
}
