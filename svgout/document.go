package svgout

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"io"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/measure"
)

// document is the one place that writes a scene as SVG. The library does the frame, the groups
// and the text of the legend; what stands in great numbers, paths and letters, is appended as
// bytes, since its calls cost many times what the bytes do. Text from a layout goes only
// through escapers, colours only as rewritten hex numbers, ids only as made here.
type document struct {
	*Scene
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

// SVG writes the scene as an SVG picture; the error is the first of w. The same scene gives
// the same bytes.
func (s *Scene) SVG(w io.Writer) error {
	out := &sink{to: w, bytes: make([]byte, 0, sinkBytes+sinkBytes/8)}
	d := &document{Scene: s, canvas: svg.New(out), out: out}
	d.canvas.Decimals = 4
	d.begin()
	d.prints()
	d.palette()
	for i := range s.Layers {
		d.layer(&s.Layers[i])
	}
	d.canvas.End()
	out.flush()
	return out.err
}

// begin opens the document: its size, its title and what it shows.
func (d *document) begin() {
	unit, name := measure.Inch, "in"
	if d.Top.Units == measure.Centimetres {
		unit, name = measure.Millimetre, "mm"
	}
	size := func(nm measure.NM) float64 { return float64(nm) / float64(unit) }
	list := []string{fmt.Sprintf(`viewBox="0 0 %s %s"`, appendNumber(nil, d.Width), appendNumber(nil, d.Height)),
		`xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"`}
	if d.OnePaint {
		list = append(list, `xmlns:sodipodi="http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd"`)
	}
	d.canvas.Startunit(size(d.Width), size(d.Height), name, list...)
	fmt.Fprintln(d.out, Marker)
	d.canvas.Title(d.Title)
	d.canvas.Desc(d.Description)
	if d.Credits.Said() { // SVG 1.1, chapter 21
		fmt.Fprintln(d.out, "<metadata>"+d.Credits.RDF()+"</metadata>")
	}
}

// layer draws a layer as a group that vector editors show as one.
func (d *document) layer(l *Layer) {
	if l.ID == "" {
		d.items(l)
		return
	}
	list := []string{d.id(l.ID), `inkscape:groupmode="layer"`, `inkscape:label="` + escaped(l.Name) + `"`}
	if l.Part == Beneath && d.OnePaint { // locked: it is worked with through the paints alone
		list = append(list, `sodipodi:insensitive="true"`)
	}
	d.canvas.Group(append(list, d.paint(l.Style)...)...)
	d.items(l)
	d.canvas.Gend()
}

func (d *document) items(l *Layer) {
	for i := range l.Items {
		item := &l.Items[i]
		switch {
		case item.Each != nil:
			d.each(item, d.facesShown(l, item))
		case item.Outlines != nil && d.facesShown(l, item) != nil:
			d.facePaths(item)
		case item.Outlines != nil:
			d.path(item)
		case item.Texts != nil:
			d.texts(item)
		case item.Picture != nil:
			d.pixels(item.Picture)
		case item.Box != nil:
			d.canvas.Rect(item.Box.X, item.Box.Y, item.Box.Width, item.Box.Height, d.paint(item.Style)...)
		case item.Text != nil:
			d.text(item)
		}
	}
}

func (d *document) id(id string) string { return `id="` + d.prefix + id + `"` }

// paint is the attributes of a style.
func (d *document) paint(s Style) []string {
	var list []string
	add := func(there bool, name, value string) {
		if there {
			list = append(list, name+`="`+value+`"`)
		}
	}
	if s.Fill.Kind != Unsaid {
		add(true, "fill", d.fill(s.Fill))
	}
	if s.Line != nil {
		add(true, "stroke", s.Line.Hex())
	}
	add(s.Opacity != 0, "stroke-opacity", fmt.Sprint(s.Opacity))
	add(s.Width != 0, "stroke-width", rounded(s.Width))
	add(s.Dash != 0, "stroke-dasharray", rounded(s.Dash))
	add(s.Joins, "stroke-linejoin", "round")
	add(s.Caps, "stroke-linecap", "round")
	add(s.Words, "font-family", "Helvetica, Arial, sans-serif")
	add(s.Middle, "text-anchor", "middle")
	return list
}

// fill is what a fill is called.
func (d *document) fill(f Fill) string {
	if d.Print(f) != nil {
		return "url(#" + d.printID(f.Fabric) + ")"
	}
	if c, ok := d.Colour(f); ok {
		if d.OnePaint && f.Kind != Flat {
			return "url(#" + d.paintID(f.Fabric) + ") " + c.Hex() // the color where a program knows no gradients
		}
		return c.Hex()
	}
	return "none"
}

// path draws all outlines of an item as one path.
func (d *document) path(item *Item) {
	out := d.out
	out.bytes = append(out.bytes, "<path"...)
	if item.ID != "" {
		out.bytes = append(append(out.bytes, ' '), d.id(item.ID)...)
	}
	for _, attribute := range d.paint(item.Style) {
		out.bytes = append(append(out.bytes, ' '), attribute...)
	}
	out.bytes = append(out.bytes, ` d="`...)
	for outline := range item.Outlines {
		out.bytes = appendLine(out.bytes, outline, item.Open)
		out.spill()
	}
	out.bytes = append(out.bytes, "\"/>\n"...)
}

// facePaths draws the faces of an item as paths in a group, each with its own place of the cloth.
func (d *document) facePaths(item *Item) {
	n := 0
	list := d.paint(item.Style)
	if item.ID != "" {
		list = append([]string{d.id(item.ID)}, list...)
	}
	d.canvas.Group(list...)
	for outline := range item.Outlines {
		b := append(d.appendFacePaint(append(d.out.bytes, "<path"...), item.Faces, n), ` d="`...)
		d.out.bytes = append(appendLine(b, outline, item.Open), "\"/>\n"...)
		d.out.spill()
		n++
	}
	d.canvas.Gend()
}

// each draws every outline as a path of its own, with its id and a title, in a group where the item has an id. Shown are the faces of
// which each shows its own place of a print, nil for none.
func (d *document) each(item *Item, shown []int32) {
	out, n := d.out, 0
	if item.ID != "" {
		d.canvas.Group(append([]string{d.id(item.ID)}, d.paint(item.Style)...)...)
		defer d.canvas.Gend()
	}
	for outline := range item.Outlines {
		b := append(append(out.bytes, `<path id="`...), d.prefix...)
		b = d.appendFacePaint(append(item.Each.ID(b, n), '"'), shown, n)
		b = append(b, ` d="`...)
		b = append(appendLine(b, outline, item.Open), `"><title>`...)
		out.bytes = append(item.Each.Title(b, n), "</title></path>\n"...)
		out.spill()
		n++
	}
}

func (d *document) text(item *Item) {
	t := item.Text
	list := d.paint(item.Style)
	if t.Bold {
		list = append(list, `font-weight="bold"`)
	}
	d.canvas.Text(t.X, t.Y, t.Text, append(list, `font-size="`+rounded(t.Size)+`"`)...)
}

// texts draws letters in great numbers; their places have two decimals at the most.
func (d *document) texts(item *Item) {
	out := d.out
	steps := func(units float64) int32 { return int32(units*100 + 0.5) }
	known := map[string]string{} // few letters stand in many places
	for t := range item.Texts {
		b := appendHundredths(append(out.bytes, `<text x="`...), steps(t.X))
		b = appendHundredths(append(b, `" y="`...), steps(t.Y))
		b = appendHundredths(append(b, `" font-size="`...), steps(t.Size))
		text, ok := known[t.Text]
		if !ok {
			text = escaped(t.Text)
			known[t.Text] = text
		}
		out.bytes = append(append(append(b, `">`...), text...), "</text>\n"...)
		out.spill()
	}
}

// pixels draws a PNG file over the whole top.
func (d *document) pixels(png []byte) {
	fmt.Fprintf(d.out, `<image x="0" y="0" width="%s" height="%s" preserveAspectRatio="none" style="image-rendering:pixelated" xlink:href="`,
		appendNumber(nil, d.Top.Outer.Width()), appendNumber(nil, d.Top.Outer.Height()))
	d.data(png)
	fmt.Fprintln(d.out, `"/>`)
}

// data writes a PNG or a JPEG file as an address that holds it.
func (d *document) data(file []byte) {
	_, _ = io.WriteString(d.out, "data:image/"+kindOf(file)+";base64,") // the sink keeps the error
	encoder := base64.NewEncoder(base64.StdEncoding, d.out)
	_, _ = encoder.Write(file)
	_ = encoder.Close()
}

// escaped is text for an element or an attribute; what XML cannot hold becomes U+FFFD.
func escaped(text string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(text)) // writing to memory cannot fail
	return b.String()
}
