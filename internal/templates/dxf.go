package templates

import (
	"bytes"
	"io"

	"eighthturn/internal/dxf"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// dxfMarker is a comment near the beginning of every DXF file that this package writes.
const dxfMarker = "templates by eighthturn"

// dxfGap is left free between pieces.
const dxfGap = measure.Inch / 2

// Layers of a DXF file.
const (
	cutLayer   = "CUT"
	sewLayer   = "SEW"
	grainLayer = "GRAIN"
	markLayer  = "MARKS"
	notchLayer = "NOTCHES"
	labelLayer = "LABELS"
	matLayer   = "MATS"
	printLayer = "PRINT"
)

// dotRadius is that of a matching dot.
const dotRadius = measure.Inch / 32

// DXF writes templates as a drawing: of each piece the cut outline as a closed polyline on the layer CUT, its seam line on SEW, the dots
// where seams begin and end on MARKS, short lines inwards where seam lines meet the raw edge on NOTCHES, its grain on GRAIN, and
// within it its name and how many are cut on LABELS. A unit is an inch, or a millimetre where the layout is in centimetres.
func DXF(w io.Writer, top *quilt.Top, list []Template) error {
	d := newDrawing(top)
	at := measure.Point{}
	for i := range list {
		if list[i].Print != nil {
			d.Layers = append(d.Layers, dxf.Layer{Name: printLayer, Colour: 8})
			break
		}
	}
	for i := range list {
		t := &list[i]
		_, high := bounds(t.Cut)
		at.Y = -high.Y // the lower edges of all pieces stand on one line
		laidPiece{t, at, false, false}.draw(d)
		at.X += high.X + dxfGap
	}
	return d.Write(w)
}

// newDrawing is a drawing with the layers of pieces.
func newDrawing(top *quilt.Top) *dxf.Drawing {
	return &dxf.Drawing{Comment: dxfMarker, Units: top.Units, Layers: []dxf.Layer{{Name: cutLayer, Colour: 7}, {Name: sewLayer, Colour: 5},
		{Name: grainLayer, Colour: 3}, {Name: markLayer, Colour: 6}, {Name: notchLayer, Colour: 4}, {Name: labelLayer, Colour: 1}}}
}

// draw draws a piece.
func (p laidPiece) draw(d *dxf.Drawing) {
	d.Outline(cutLayer, p.points(p.Cut))
	d.Outline(sewLayer, p.points(p.Finished))
	for _, q := range p.points(p.Finished) {
		d.Circle(markLayer, q, dotRadius)
	}
	for _, n := range p.notches() {
		d.Line(notchLayer, p.point(n[0]), p.point(n[1]))
	}
	d.Line(grainLayer, p.point(p.Grain[0]), p.point(p.Grain[1]))
	for _, l := range p.printLines() {
		d.Line(printLayer, p.point(l[0]), p.point(l[1]))
	}
	for _, l := range p.labels() {
		d.Text(labelLayer, l.middle, l.height, l.text)
	}
}

// IsOurs says whether a file begins as the DXF and SVG files of this package do.
func IsOurs(head []byte) bool {
	return bytes.HasPrefix(head, []byte("999\r\n"+dxfMarker)) || bytes.Contains(head, []byte(marker))
}
