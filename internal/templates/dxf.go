package templates

import (
	"bufio"
	"bytes"
	"io"
	"strconv"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// dxfMarker is a comment near the beginning of every DXF file that this package writes.
const dxfMarker = "templates by eighthturn"

// dxfGap is left free between pieces.
const dxfGap = measure.Inch / 2

// Layers of a DXF file, with their colours by number (1 red, 5 blue, 7 black or white).
const (
	cutLayer   = "CUT"
	sewLayer   = "SEW"
	grainLayer = "GRAIN"
	nameLayer  = "NAME"
)

// DXF writes templates as a drawing in the oldest form of DXF that is in common use
// (Release 12, AC1009), which every program reads: each piece's cut outline a closed
// polyline on the layer CUT, its seam line on SEW, its grain on GRAIN, its letter on NAME. A
// unit is an inch, or a millimetre where the layout is in centimetres; y goes upwards.
func DXF(w io.Writer, top *quilt.Top, list []Template) error {
	d := &dxf{w: bufio.NewWriter(w), unit: measure.Inch, code: 1}
	if top.Units == measure.Centimetres {
		d.unit, d.code = measure.Millimetre, 4
	}
	d.head()
	at := measure.Point{}
	for i := range list {
		t := &list[i]
		_, high := bounds(t.Cut)
		at.Y = high.Y // the lower edges of all pieces stand on one line
		d.piece(t, at, top.Seam > 0)
		at.X += high.X + dxfGap
	}
	d.pair(0, "ENDSEC")
	d.pair(0, "EOF")
	return d.w.Flush()
}

// dxf writes pairs of a group code and a value (Autodesk's DXF reference: group codes).
type dxf struct {
	w    *bufio.Writer // it remembers errors
	unit measure.NM
	code int // of the unit: 1 inches, 4 millimetres
}

func (d *dxf) pair(code int, value string) {
	_, _ = d.w.WriteString(strconv.Itoa(code) + "\r\n" + value + "\r\n")
}

func (d *dxf) number(code, value int) { d.pair(code, strconv.Itoa(value)) }

func (d *dxf) length(code int, nm measure.NM) {
	d.pair(code, strconv.FormatFloat(float64(nm)/float64(d.unit), 'f', 6, 64))
}

func (d *dxf) head() {
	d.pair(999, dxfMarker)
	d.section("HEADER")
	d.pair(9, "$ACADVER")
	d.pair(1, "AC1009")
	d.pair(9, "$INSUNITS")
	d.number(70, d.code)
	d.pair(0, "ENDSEC")
	d.section("TABLES")
	d.pair(0, "TABLE")
	d.pair(2, "LAYER")
	layers := []struct {
		name   string
		colour int
	}{{cutLayer, 7}, {sewLayer, 5}, {grainLayer, 5}, {nameLayer, 1}}
	d.number(70, len(layers))
	for _, l := range layers {
		d.pair(0, "LAYER")
		d.pair(2, l.name)
		d.number(70, 0)
		d.number(62, l.colour)
		d.pair(6, "CONTINUOUS")
	}
	d.pair(0, "ENDTAB")
	d.pair(0, "ENDSEC")
	d.section("ENTITIES")
}

func (d *dxf) section(name string) {
	d.pair(0, "SECTION")
	d.pair(2, name)
}

// piece writes a template with the lower left corner of its cut outline's bounds at (at.X, 0).
func (d *dxf) piece(t *Template, at measure.Point, sewn bool) {
	place := func(p measure.Point) measure.Point { return measure.Point{X: at.X + p.X, Y: at.Y - p.Y} }
	d.outline(cutLayer, t.Cut, place)
	if sewn {
		d.outline(sewLayer, t.Finished, place)
	}
	from, to := place(t.Grain[0]), place(t.Grain[1])
	d.entity("LINE", grainLayer, from)
	d.length(11, to.X)
	d.length(21, to.Y)
	named, room := t.nameplace()
	d.entity("TEXT", nameLayer, place(named))
	d.length(40, max(1, measure.NM(room/2)))
	d.pair(1, t.Name())
}

// entity begins an entity at a place.
func (d *dxf) entity(kind, layer string, at measure.Point) {
	d.pair(0, kind)
	d.pair(8, layer)
	d.length(10, at.X)
	d.length(20, at.Y)
}

func (d *dxf) outline(layer string, points []measure.Point, place func(measure.Point) measure.Point) {
	d.entity("POLYLINE", layer, measure.Point{})
	d.length(30, 0)
	d.number(66, 1)
	d.number(70, 1)
	for _, p := range points {
		d.entity("VERTEX", layer, place(p))
	}
	d.pair(0, "SEQEND")
	d.pair(8, layer)
}

// IsOurs says whether a file begins as the DXF and SVG files of this package do.
func IsOurs(head []byte) bool {
	return bytes.HasPrefix(head, []byte("999\r\n"+dxfMarker)) || bytes.Contains(head, []byte(marker))
}
