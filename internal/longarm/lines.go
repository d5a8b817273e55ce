// Package longarm turns a top into the lines that a quilting machine follows: its outline, its borders, its blocks and its seams, as
// layers that are written as DXF and as SVG, at true size.
package longarm

import (
	"bytes"
	"io"
	"strconv"
	"strings"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/dxf"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Layer is the lines of one sort, each from one end to the other, in nanometres, finished, y downwards.
type Layer struct {
	Name  string // "outline", "borders", "blocks" or "seams"
	Ink   string // of SVG, as #rrggbb
	Lines [][2]measure.Point

	colour int // of DXF, by number
}

// Layers are a top's lines, each once: the outline; seams of borders with what they lie beside; seams between blocks; and all others,
// those between the strips of one piece among them.
func Layers(top *quilt.Top) []Layer {
	list := []Layer{{Name: "outline", Ink: "#000000", colour: 7}, {Name: "borders", Ink: "#c000c0", colour: 6}, {Name: "blocks", Ink: "#d00000", colour: 1}, {Name: "seams", Ink: "#0000ff", colour: 5}}
	o := top.Outer
	corners := []measure.Point{o.Min, {X: o.Max.X, Y: o.Min.Y}, o.Max, {X: o.Min.X, Y: o.Max.Y}}
	for i, p := range corners {
		list[0].Lines = append(list[0].Lines, [2]measure.Point{p, corners[(i+1)%4]})
	}
	for i := range top.Seams {
		s := &top.Seams[i]
		a, b := &top.Patches[top.Faces[s.A].Patch], &top.Patches[top.Faces[s.B].Patch]
		at := 3
		switch {
		case a.Border != b.Border || a.Border >= 0:
			at = 1
		case a.Cell != b.Cell || a.Cell < 0:
			at = 2
		}
		list[at].Lines = append(list[at].Lines, [2]measure.Point{s.From, s.To})
	}
	for i := range top.StripSeams {
		list[3].Lines = append(list[3].Lines, [2]measure.Point{top.StripSeams[i].From, top.StripSeams[i].To})
	}
	return list
}

// Marker stands near the beginning of every file of this package.
const Marker = "quilting lines by eighthturn"

// IsOurs says whether a file begins as those of this package do.
func IsOurs(head []byte) bool { return bytes.Contains(head, []byte(Marker)) }

// DXF writes the layers as a drawing; the outline is one closed line.
func DXF(w io.Writer, top *quilt.Top) error {
	d := &dxf.Drawing{Comment: Marker, Units: top.Units}
	for _, l := range Layers(top) {
		name := strings.ToUpper(l.Name)
		d.Layers = append(d.Layers, dxf.Layer{Name: name, Colour: l.colour})
		if l.Name == "outline" {
			d.Outline(name, ends(l.Lines))
			continue
		}
		for _, line := range l.Lines {
			d.Line(name, line[0], line[1])
		}
	}
	return d.Write(w)
}

// ends are where each of some lines begins.
func ends(lines [][2]measure.Point) []measure.Point {
	list := make([]measure.Point, len(lines))
	for i, l := range lines {
		list[i] = l[0]
	}
	return list
}

// SVG writes the layers as paths, in inches or millimetres; a user unit is a 96th of an inch.
func SVG(w io.Writer, top *quilt.Top) error {
	out := &remembering{w: w}
	canvas := svg.New(out)
	canvas.Decimals = 4
	unit, name := measure.Inch, "in"
	if top.Units == measure.Centimetres {
		unit, name = measure.Millimetre, "mm"
	}
	width, height := top.Outer.Width(), top.Outer.Height()
	canvas.Startunit(float64(width)/float64(unit), float64(height)/float64(unit), name,
		`viewBox="0 0 `+userUnit(width)+" "+userUnit(height)+`" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" style="background:#ffffff"`) // no shape, which would be stitched
	_, _ = io.WriteString(out, "<!-- "+Marker+" -->\n")
	canvas.Title(top.Title)
	for _, l := range Layers(top) {
		canvas.Group(`id="`+l.Name+`"`, `inkscape:groupmode="layer" inkscape:label="`+l.Name+`"`, `fill="none"`, `stroke="`+l.Ink+`"`, `stroke-width="2"`, `stroke-linecap="round"`)
		if len(l.Lines) > 0 {
			canvas.Path(pathData(top, l))
		}
		canvas.Gend()
	}
	canvas.End()
	return out.err
}

func pathData(top *quilt.Top, l Layer) string {
	var b strings.Builder
	place := func(command string, p measure.Point) {
		b.WriteString(command + userUnit(p.X-top.Outer.Min.X) + " " + userUnit(p.Y-top.Outer.Min.Y))
	}
	if l.Name == "outline" {
		for i, line := range l.Lines {
			place(map[bool]string{true: "M", false: "L"}[i == 0], line[0])
		}
		return b.String() + "Z"
	}
	for _, line := range l.Lines {
		place("M", line[0])
		place("L", line[1])
	}
	return b.String()
}

// userUnit writes a length in 96ths of an inch.
func userUnit(nm measure.NM) string {
	text := strconv.FormatFloat(float64(nm)*96/float64(measure.Inch), 'f', 4, 64)
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

// remembering keeps the first error of a writer, since the library drops them.
type remembering struct {
	w   io.Writer
	err error
}

func (r *remembering) Write(b []byte) (int, error) {
	if r.err == nil {
		_, r.err = r.w.Write(b)
	}
	return len(b), nil
}
