package report

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// bindingFigures are the diagonal join of two strips and the mitered corner, as the steps of the binding say them; in the
// binding's own fabric on the border's. Common practice, no source.
func (f *finishing) bindingFigures(diagonal bool) document.Figure {
	d := &bindingDrawing{Figure: &diagram.Figure{Title: "Binding: the mitered corner", Description: "The binding at a corner: sewn up to one seam allowance from the edge, folded up at 45 degrees, and folded down even with the next edge."}}
	d.cloth, d.quilt = f.top.Fabrics[f.top.CutFacts.Binding.Fabric].Colour, palettes.Colour{R: 0xe9, G: 0xe4, B: 0xda}
	if diagonal {
		d.Title = "Binding: the diagonal join and the mitered corner"
		d.Description = "Two strips crossed at a right angle, right sides together, sewn from corner to corner, the seam trimmed and pressed open. " + d.Description
		d.crossed()
		d.joined()
	}
	d.stopped()
	d.foldedUp()
	d.foldedDown()
	d.Max = measure.Point{X: bindingSide, Y: bindingSide}
	return document.Figure{Of: *d.Figure}
}

// bindingSide is the side of a panel, in units of the figure.
const bindingSide = 1000 * measure.Millimetre

// bindingDrawing is the figure in the making.
type bindingDrawing struct {
	*diagram.Figure
	cloth, quilt palettes.Colour
}

// panel begins a panel; its marks follow.
func (d *bindingDrawing) panel(caption string, marks ...diagram.Mark) {
	d.Panels = append(d.Panels, diagram.Panel{Caption: caption, First: len(d.Marks), Count: len(marks), Max: measure.Point{X: bindingSide, Y: bindingSide}})
	d.Marks = append(d.Marks, marks...)
}

// place is a place in a panel, in hundredths of its side.
func place(x, y int) measure.Point {
	return measure.Point{X: bindingSide * measure.NM(x) / 100, Y: bindingSide * measure.NM(y) / 100}
}

// outline is places in a panel, by pairs of hundredths.
func outline(xy ...int) []measure.Point {
	var list []measure.Point
	for i := 0; i+1 < len(xy); i += 2 {
		list = append(list, place(xy[i], xy[i+1]))
	}
	return list
}

func (d *bindingDrawing) piece(fill palettes.Colour, wrong bool, xy ...int) diagram.Mark {
	return diagram.Mark{Area: &diagram.Area{Outline: outline(xy...), Fill: fill, Hatch: wrong, Edge: diagram.Thin}}
}

func along(stroke diagram.Stroke, end diagram.Ending, xy ...int) diagram.Mark {
	return diagram.Mark{Line: &diagram.Line{Points: outline(xy...), Stroke: stroke, End: end}}
}

func (d *bindingDrawing) crossed() {
	d.panel("Cross the ends at a right angle, right sides together; sew corner to corner; trim",
		d.piece(d.cloth, false, 0, 30, 70, 30, 70, 60, 0, 60),
		d.piece(d.cloth, true, 40, 30, 70, 30, 70, 100, 40, 100),
		along(diagram.Sew, diagram.Plain, 38, 28, 72, 62),
		along(diagram.Trim, diagram.Plain, 48, 26, 74, 52))
}

func (d *bindingDrawing) joined() {
	d.panel("Press the seam open",
		d.piece(d.cloth, false, 0, 35, 35, 35, 65, 65, 0, 65),
		d.piece(d.cloth, false, 35, 35, 100, 35, 100, 65, 65, 65))
}

// top is the quilt with its corner at the upper right.
func (d *bindingDrawing) top() diagram.Mark {
	return d.piece(d.quilt, false, 0, 30, 75, 30, 75, 100, 0, 100)
}

func (d *bindingDrawing) stopped() {
	d.panel("At a corner: stop one seam allowance from the edge",
		d.top(), d.piece(d.cloth, true, 0, 30, 100, 30, 100, 55, 0, 55),
		along(diagram.Sew, diagram.Dot, 0, 39, 66, 39))
}

func (d *bindingDrawing) foldedUp() {
	d.panel("Fold the binding up at 45 degrees",
		d.top(), d.piece(d.cloth, true, 0, 30, 75, 30, 50, 55, 0, 55),
		d.piece(d.cloth, false, 50, 0, 75, 0, 75, 30, 50, 55),
		along(diagram.Sew, diagram.Dot, 0, 39, 66, 39),
		along(diagram.Fold, diagram.Plain, 50, 55, 75, 30))
}

func (d *bindingDrawing) foldedDown() {
	d.panel("Fold it down even with the next edge; sew from the edge",
		d.top(), d.piece(d.cloth, true, 0, 30, 75, 30, 50, 55, 0, 55),
		d.piece(d.cloth, true, 50, 30, 75, 30, 75, 100, 50, 100),
		along(diagram.Sew, diagram.Plain, 66, 30, 66, 100),
		along(diagram.Fold, diagram.Plain, 50, 30, 75, 30))
}
