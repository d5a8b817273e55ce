package svgout

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// document is the one place that writes SVG. The library does the frame, the groups and
// the text of the legend; what stands in great numbers, paths and letters, is appended as
// bytes, since its calls cost many times what the bytes do. Text from a layout goes only
// through escapers, colours only as rewritten hex numbers, ids only as made here.
type document struct {
	picture
	canvas *svg.SVG
	out    *sink
}

// sink gathers bytes, hands them on in large pieces, and remembers the first error, since
// the library drops them.
type sink struct {
	to    io.Writer
	bytes []byte // what was not handed on yet; whoever appends calls spill from time to time
	err   error
}

const sinkBytes = 1 << 16

func (s *sink) Write(p []byte) (int, error) {
	s.bytes = append(s.bytes, p...)
	s.spill()
	return len(p), nil
}

// spill hands the bytes on when there are many.
func (s *sink) spill() {
	if len(s.bytes) >= sinkBytes {
		s.flush()
	}
}

func (s *sink) flush() {
	if s.err == nil {
		_, s.err = s.to.Write(s.bytes)
	}
	s.bytes = s.bytes[:0]
}

func newDocument(w io.Writer, t *quilt.Top, o Options) *document {
	return newDocumentWith(w, t, o, nil)
}

// newDocumentWith is a document whose legend names other values than those of the colours.
func newDocumentWith(w io.Writer, t *quilt.Top, o Options, values func(fabric int) float64) *document {
	out := &sink{to: w, bytes: make([]byte, 0, sinkBytes+sinkBytes/8)}
	canvas := svg.New(out)
	canvas.Decimals = 4
	return &document{picture: newPicture(t, o, values), canvas: canvas, out: out}
}

// begin opens the document: its size, its title and what it shows.
func (d *document) begin() { d.beginWith(d.describe()) }

// beginWith opens the document with words of its own for what the picture shows.
func (d *document) beginWith(description string) {
	width, height := d.Outer.Width()+d.legend.addsAcross, d.Outer.Height()+d.legend.addsDown
	unit, name := measure.Inch, "in"
	if d.Units == measure.Centimetres {
		unit, name = measure.Millimetre, "mm"
	}
	size := func(nm measure.NM) float64 { return float64(nm) / float64(unit) }
	d.canvas.Startunit(size(width), size(height), name,
		fmt.Sprintf(`viewBox="0 0 %s %s"`, appendNumber(nil, width), appendNumber(nil, height)),
		`xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"`)
	fmt.Fprintln(d.out, Marker)
	title := d.Title
	if title == "" {
		title = "Quilt top"
	}
	d.canvas.Title(title)
	d.canvas.Desc(description)
}

// describeAs says in words how large the top is and how it is drawn.
func (d *document) describeAs(drawn string) string {
	return fmt.Sprintf("A quilt top of %d by %d blocks, %s by %s finished, drawn %s.", d.Columns, d.Rows,
		measure.Text(d.Outer.Width(), d.Units), measure.Text(d.Outer.Height(), d.Units), drawn)
}

// describe says in words what the picture shows.
func (d *document) describe() string {
	text := d.describeAs("in " + Views()[d.View])
	if fabrics := len(d.shown()); fabrics == 1 {
		text += " It shows one fabric."
	} else {
		text += fmt.Sprintf(" It shows %d fabrics.", fabrics)
	}
	return text
}

// layer opens a group that vector editors show as a layer.
func (d *document) layer(id, label, attributes string) {
	list := []string{`id="` + d.Prefix + id + `"`, `inkscape:groupmode="layer"`, `inkscape:label="` + escaped(label) + `"`}
	if attributes != "" {
		list = append(list, attributes)
	}
	d.canvas.Group(list...)
}

func (d *document) close() { d.canvas.Gend() }

// path draws one path of n parts; part appends the data of part i.
func (d *document) path(attributes string, n int, part func(b []byte, i int) []byte) {
	out := d.out
	out.bytes = append(append(append(out.bytes, "<path "...), attributes...), ` d="`...)
	for i := range n {
		out.bytes = part(out.bytes, i)
		out.spill()
	}
	out.bytes = append(out.bytes, "\"/>\n"...)
}

// onePath draws a path of one part.
func (d *document) onePath(attributes string, part func(b []byte) []byte) {
	d.path(attributes, 1, func(b []byte, _ int) []byte { return part(b) })
}

// end closes the document and says whether all of it was written.
func (d *document) end() error {
	d.canvas.End()
	d.out.flush()
	return d.out.err
}

// escaped is text for an element or an attribute; what XML cannot hold becomes U+FFFD.
func escaped(text string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(text)) // writing to memory cannot fail
	return b.String()
}
