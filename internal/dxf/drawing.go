// Package dxf writes drawings for other programs in the oldest form of DXF that is in common use (Release 12, AC1009), which every
// program reads: layers, closed outlines, lines, circles and lines of text.
//
// Places are in nanometres, y downwards, as elsewhere; in the file y goes upwards, and the drawing begins at 0, 0.
package dxf

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
)

// Layer is a layer with its color by number (1 red, 3 green, 4 cyan, 5 blue, 6 magenta, 7 black or white).
type Layer struct {
	Name   string
	Colour int
}

// Drawing is what is drawn. The zero value is an empty one in inches.
type Drawing struct {
	Comment string         // near the beginning of the file
	Units   measure.System // a unit of the file is an inch, or a millimetre
	Layers  []Layer

	entities []entity
	low      measure.Point
	high     measure.Point
}

// entity is one thing that is drawn.
type entity struct {
	kind   string
	layer  string
	points []measure.Point
	size   measure.NM // of a circle its radius, of text its height
	text   string
}

// add adds an entity, which reaches so far about its places.
func (d *Drawing) add(e entity, reach measure.NM) {
	for i, p := range e.points {
		low, high := measure.Point{X: p.X - reach, Y: p.Y - reach}, measure.Point{X: p.X + reach, Y: p.Y + reach}
		if i == 0 && len(d.entities) == 0 {
			d.low, d.high = low, high
		}
		d.low = measure.Point{X: min(d.low.X, low.X), Y: min(d.low.Y, low.Y)}
		d.high = measure.Point{X: max(d.high.X, high.X), Y: max(d.high.Y, high.Y)}
	}
	d.entities = append(d.entities, e)
}

// Outline draws a closed outline, the first corner not repeated.
func (d *Drawing) Outline(layer string, corners []measure.Point) {
	d.add(entity{kind: "POLYLINE", layer: layer, points: corners}, 0)
}

// Line draws a straight line.
func (d *Drawing) Line(layer string, from, to measure.Point) {
	d.add(entity{kind: "LINE", layer: layer, points: []measure.Point{from, to}}, 0)
}

// Circle draws a circle.
func (d *Drawing) Circle(layer string, middle measure.Point, radius measure.NM) {
	d.add(entity{kind: "CIRCLE", layer: layer, points: []measure.Point{middle}, size: radius}, radius)
}

// Text writes a line of text with its middle at a place. Its capitals are as high as is said, above 0, and no letter is wider.
func (d *Drawing) Text(layer string, middle measure.Point, height measure.NM, text string) {
	d.add(entity{kind: "TEXT", layer: layer, points: []measure.Point{middle}, size: max(1, height), text: text}, height/2)
}

// Write writes the drawing. The header says the unit, and how far the drawing reaches: $EXTMIN and $EXTMAX, and as limits for the
// page too, those a millimeter or two farther, in whole ones: LibreCAD's pages are that, it makes the drawing as much
// smaller or larger as they are, and lines on the edge of a page are lost.
func (d *Drawing) Write(w io.Writer) error {
	f := &file{w: bufio.NewWriter(w), unit: measure.Inch, low: d.low, high: d.high}
	code := 1
	if d.Units == measure.Centimetres {
		f.unit, code = measure.Millimetre, 4
	}
	f.head(d, code)
	for i := range d.entities {
		f.entity(&d.entities[i])
	}
	f.pair(0, "ENDSEC")
	f.pair(0, "EOF")
	return f.w.Flush()
}

// file writes pairs of a group code and a value (Autodesk's DXF reference: group codes).
type file struct {
	w         *bufio.Writer // it remembers errors
	unit      measure.NM
	low, high measure.Point
}

func (f *file) pair(code int, value string) {
	_, _ = f.w.WriteString(strconv.Itoa(code) + "\r\n" + value + "\r\n")
}

func (f *file) number(code, value int) { f.pair(code, strconv.Itoa(value)) }

func (f *file) length(code int, nm measure.NM) {
	f.pair(code, strconv.FormatFloat(float64(nm)/float64(f.unit), 'f', 6, 64))
}

// place writes a place with its codes for x and y.
func (f *file) place(code int, p measure.Point) {
	f.length(code, p.X-f.low.X)
	f.length(code+10, f.high.Y-p.Y)
}

func (f *file) section(name string) {
	f.pair(0, "SECTION")
	f.pair(2, name)
}

func (f *file) head(d *Drawing, unit int) {
	f.pair(999, d.Comment)
	f.section("HEADER")
	f.pair(9, "$ACADVER")
	f.pair(1, "AC1009")
	f.pair(9, "$INSUNITS")
	f.number(70, unit)
	lowest, highest := measure.Point{X: f.low.X, Y: f.high.Y}, measure.Point{X: f.high.X, Y: f.low.Y}
	room := func(nm measure.NM) measure.NM { return measure.RoundUp(nm+measure.Millimetre, measure.Millimetre) }
	page := measure.Point{X: f.low.X + room(f.high.X-f.low.X), Y: f.high.Y - room(f.high.Y-f.low.Y)}
	for _, v := range []struct {
		name string
		at   measure.Point
	}{{"$EXTMIN", lowest}, {"$EXTMAX", highest}, {"$LIMMIN", lowest}, {"$LIMMAX", highest}, {"$PLIMMIN", lowest}, {"$PLIMMAX", page}} {
		f.pair(9, v.name)
		f.place(10, v.at)
		if strings.HasPrefix(v.name, "$EXT") {
			f.length(30, 0)
		}
	}
	f.pair(0, "ENDSEC")
	f.section("TABLES")
	f.pair(0, "TABLE")
	f.pair(2, "LAYER")
	f.number(70, len(d.Layers))
	for _, l := range d.Layers {
		f.pair(0, "LAYER")
		f.pair(2, l.Name)
		f.number(70, 0)
		f.number(62, l.Colour)
		f.pair(6, "CONTINUOUS")
	}
	f.pair(0, "ENDTAB")
	f.pair(0, "ENDSEC")
	f.section("ENTITIES")
}

func (f *file) entity(e *entity) {
	f.pair(0, e.kind)
	f.pair(8, e.layer)
	switch e.kind {
	case "POLYLINE":
		f.length(10, 0)
		f.length(20, 0)
		f.length(30, 0)
		f.number(66, 1)
		f.number(70, 1)
		for _, p := range e.points {
			f.pair(0, "VERTEX")
			f.pair(8, e.layer)
			f.place(10, p)
		}
		f.pair(0, "SEQEND")
		f.pair(8, e.layer)
	case "LINE":
		f.place(10, e.points[0])
		f.place(11, e.points[1])
	case "CIRCLE":
		f.place(10, e.points[0])
		f.length(40, e.size)
	case "TEXT":
		f.place(10, e.points[0])
		f.length(40, e.size)
		f.pair(1, plain(e.text))
		f.number(72, 1) // its middle, across and up, is at the second place
		f.number(73, 2)
		f.place(11, e.points[0])
	}
}

// plain is text in ASCII, other letters by their numbers in Unicode.
func plain(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r >= ' ' && r < 0x7f:
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			b.WriteByte(' ')
		case r > 0xffff:
			b.WriteByte('?')
		default:
			fmt.Fprintf(&b, `\U+%04X`, r)
		}
	}
	return b.String()
}
