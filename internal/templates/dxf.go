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
)

// dotRadius is that of a matching dot.
const dotRadius = measure.Inch / 32

// DXF writes templates as a drawing: of each piece the cut outline as a closed polyline on the layer CUT, its seam line on SEW, the dots
// where seams begin and end on MARKS, short lines inwards where seam lines meet the raw edge on NOTCHES, its grain on GRAIN, and
// within it its name and how many are cut on LABELS. A unit is an inch, or a millimetre where the layout is in centimetres.
func DXF(w io.Writer, top *quilt.Top, list []Template) error {
	d := &dxf.Drawing{Comment: dxfMarker, Units: top.Units, Layers: []dxf.Layer{{Name: cutLayer, Colour: 7}, {Name: sewLayer, Colour: 5},
		{Name: grainLayer, Colour: 3}, {Name: markLayer, Colour: 6}, {Name: notchLayer, Colour: 4}, {Name: labelLayer, Colour: 1}}}
	at := measure.Point{}
	for i := range list {
		t := &list[i]
		_, high := bounds(t.Cut)
		at.Y = -high.Y // the lower edges of all pieces stand on one line
		t.draw(d, at, top.Seam > 0)
		at.X += high.X + dxfGap
	}
	return d.Write(w)
}

// draw draws a template with the upper left corner of its cut outline's bounds at a place.
func (t *Template) draw(d *dxf.Drawing, at measure.Point, sewn bool) {
	d.Outline(cutLayer, shifted(t.Cut, at))
	if sewn {
		d.Outline(sewLayer, shifted(t.Finished, at))
		for _, p := range t.Finished {
			d.Circle(markLayer, p.Add(at), dotRadius)
		}
		for _, n := range t.notches() {
			d.Line(notchLayer, n[0].Add(at), n[1].Add(at))
		}
	}
	d.Line(grainLayer, t.Grain[0].Add(at), t.Grain[1].Add(at))
	for _, l := range t.labels() {
		d.Text(labelLayer, l.middle.Add(at), l.height, l.text)
	}
}

// shifted is an outline elsewhere.
func shifted(outline []measure.Point, by measure.Point) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = p.Add(by)
	}
	return list
}

// IsOurs says whether a file begins as the DXF and SVG files of this package do.
func IsOurs(head []byte) bool {
	return bytes.HasPrefix(head, []byte("999\r\n"+dxfMarker)) || bytes.Contains(head, []byte(marker))
}
