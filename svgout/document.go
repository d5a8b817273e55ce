package svgout

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/measure"
	"eighthturn/patchwork"
)

// document is the one place that writes SVG. The library does the frame, the groups and
// the text; what stands in great numbers, the patches, is appended as bytes, since its
// calls cost many times what the bytes do. Text from a layout goes only through escapers,
// colours only as rewritten hex numbers, ids only as made here.
type document struct {
	picture
	canvas  *svg.SVG
	out     *keeper
	scratch []byte
}

// keeper is a writer that remembers the first error, since the library drops them.
type keeper struct {
	*bufio.Writer
	err error
}

func (k *keeper) Write(p []byte) (int, error) {
	n, err := k.Writer.Write(p)
	if k.err == nil {
		k.err = err
	}
	return n, err
}

func newDocument(w io.Writer, t *patchwork.Top, o Options) *document {
	out := &keeper{Writer: bufio.NewWriterSize(w, 1<<16)}
	canvas := svg.New(out)
	canvas.Decimals = 4
	return &document{picture: newPicture(t, o), canvas: canvas, out: out}
}

// begin opens the document: its size, its title and what it shows.
func (d *document) begin() {
	width, height := d.Outer.Width(), d.Outer.Height()
	if d.Legend {
		height += inches(d.legendHeight())
	}
	unit, name := measure.Inch, "in"
	if d.Units == measure.Centimetres {
		unit, name = measure.Millimetre, "mm"
	}
	size := func(nm measure.NM) float64 { return float64(nm) / float64(unit) }
	d.canvas.Startunit(size(width), size(height), name,
		fmt.Sprintf(`viewBox="0 0 %s %s"`, d.number(width), d.number(height)),
		`xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"`)
	fmt.Fprintln(d.out, Marker)
	title := d.Title
	if title == "" {
		title = "Quilt top"
	}
	d.canvas.Title(title)
	d.canvas.Desc(d.describe())
}

// inches is a length in user units as nanometres.
func inches(units float64) measure.NM {
	return measure.NM(units * float64(measure.Inch) / PixelsPerInch)
}

func (d *document) number(nm measure.NM) string { return string(appendNumber(nil, nm)) }

// describe says in words what the picture shows.
func (d *document) describe() string {
	text := fmt.Sprintf("A quilt top of %d by %d blocks, %s by %s finished, drawn in %s.", d.Columns, d.Rows,
		measure.Text(d.Outer.Width(), d.Units), measure.Text(d.Outer.Height(), d.Units), Views()[d.View])
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

// path draws path data with attributes.
func (d *document) path(data []byte, attributes string) { d.canvas.Path(string(data), attributes) }

// end closes the document and says whether all of it was written.
func (d *document) end() error {
	d.canvas.End()
	if err := d.out.Flush(); d.out.err == nil {
		d.out.err = err
	}
	return d.out.err
}

func escaped(text string) string {
	var b bytesWriter
	_ = xml.EscapeText(&b, []byte(text)) // writing to memory cannot fail
	return string(b)
}

type bytesWriter []byte

func (b *bytesWriter) Write(p []byte) (int, error) {
	*b = append(*b, p...)
	return len(p), nil
}

// patches draws every face of a fabric as a path of its own, with its id and a title.
func (d *document) patches(f int) {
	name := escaped(d.Fabrics[f].Name)
	for _, i := range d.faces[f] {
		face := &d.Faces[i]
		b := append(d.scratch[:0], `<path id="`...)
		b = d.appendID(b, int(i))
		b = append(b, `" d="`...)
		b = appendOutline(b, face.Outline)
		b = append(b, `"><title>`...)
		b = append(b, name...)
		b = d.appendTitle(b, int(i))
		b = append(b, "</title></path>\n"...)
		_, _ = d.out.Write(b) // the writer keeps the error
		d.scratch = b
	}
}

// appendID writes a face's id: row, column and number in the block, or border and number,
// and the band; it stays the same when other rows are changed.
func (d *document) appendID(b []byte, face int) []byte {
	n := d.Faces[face].Patch
	p := &d.Patches[n]
	b = append(b, d.Prefix...)
	if p.Cell >= 0 {
		b = append(b, 'r')
		b = strconv.AppendInt(b, int64(p.Cell/d.Columns+1), 10)
		b = append(b, 'c')
		b = strconv.AppendInt(b, int64(p.Cell%d.Columns+1), 10)
		b = append(b, 'p')
		b = strconv.AppendInt(b, int64(n-d.Cells[p.Cell].First+1), 10)
	} else {
		b = append(b, "border"...)
		b = strconv.AppendInt(b, int64(p.Border+1), 10)
		b = append(b, 'p')
		b = strconv.AppendInt(b, int64(n&3+1), 10)
	}
	if p.Count > 1 {
		b = append(b, 'b')
		b = strconv.AppendInt(b, int64(face-p.First+1), 10)
	}
	return b
}

// appendTitle writes the rest of a face's title behind the name of its fabric.
func (d *document) appendTitle(b []byte, face int) []byte {
	p := &d.Patches[d.Faces[face].Patch]
	if p.Count > 1 {
		b = append(b, ", strip "...)
		b = strconv.AppendInt(b, int64(face-p.First+1), 10)
		b = append(b, " of "...)
		b = strconv.AppendInt(b, int64(p.Count), 10)
	}
	b = append(b, ", "...)
	if p.Cell < 0 {
		b = append(b, "border "...)
		return strconv.AppendInt(b, int64(p.Border+1), 10)
	}
	b = append(b, d.Roles[p.Role].Name...)
	b = append(b, ", row "...)
	b = strconv.AppendInt(b, int64(p.Cell/d.Columns+1), 10)
	b = append(b, ", column "...)
	return strconv.AppendInt(b, int64(p.Cell%d.Columns+1), 10)
}

// text writes text with its start at a place in user units.
func (d *document) text(x, y float64, text, attributes string) {
	d.canvas.Text(x, y, text, attributes)
}

func centreOf(outline []patchwork.Point) (x, y float64) {
	p := middle(outline)
	return pixels(p.X), pixels(p.Y)
}
