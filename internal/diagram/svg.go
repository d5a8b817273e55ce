package diagram

import (
	"bytes"
	"io"
	"strconv"
	"strings"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/measure"
)

// SVG writes a figure as an SVG picture whose width and height are given in inches or
// millimetres; a user unit is a point. The same figure and options give the same bytes. The
// error is that of w.
func SVG(w io.Writer, f *Figure, o Options) error {
	o.AnyFace = !o.Inline
	return Place(f, o).SVG(w, o)
}

// Ground is the white ground of a figure that is a file of its own, so that it is read on a dark page too; it follows the title and
// the description. Within a page a figure has the page's ground.
const Ground = `<rect width="100%" height="100%" fill="#ffffff"/>` + "\n"

// SVG writes the sheet; of the options it reads Units, Inline and AnyFace.
func (s *Sheet) SVG(w io.Writer, o Options) error {
	var file bytes.Buffer
	d := drawing{canvas: svg.New(&file), pressed: !o.AnyFace}
	d.canvas.Decimals = 4
	d.begin(s, o.Units)
	if !o.Inline {
		file.WriteString(Ground)
	}
	d.cloths(s, &file)
	for i := range s.Items {
		d.item(&s.Items[i])
	}
	d.canvas.End()
	text := file.Bytes()
	if o.Inline {
		text = text[bytes.Index(text, []byte("<svg")):]
	}
	_, err := w.Write(text)
	return err
}

// drawing is the one place that writes a figure's SVG. Text goes only through escapers,
// colours only as hex numbers made here.
type drawing struct {
	canvas  *svg.SVG
	pressed bool // words are pressed together to what they measure
	prints  []clothPattern
}

// lettering is the faces asked for; words were measured in the first. Within a page wider ones are pressed together by textLength, which
// programs that open files mostly pass over: there they have room.
const lettering = `font-family="Go, Helvetica, Arial, sans-serif"`

func (d *drawing) begin(s *Sheet, units measure.System) {
	unit, name := 1.0/pointsPerInch, "in"
	if units == measure.Centimetres {
		unit, name = 25.4/pointsPerInch, "mm"
	}
	d.canvas.Startunit(s.Width*unit, s.Height*unit, name,
		`viewBox="0 0 `+number(s.Width)+" "+number(s.Height)+`"`, `role="img"`, lettering)
	d.canvas.Title(plain(s.Title))
	if s.Description != "" {
		d.canvas.Desc(plain(s.Description))
	}
}

// number writes points with four decimals at the most.
func number(v float64) string {
	text := strconv.FormatFloat(v, 'f', 4, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" || text == "" {
		return "0"
	}
	return text
}

func (d *drawing) item(i *Item) {
	attributes := []string{}
	if len(i.Lit) > 0 {
		attributes = append(attributes, `data-lit="`+numbers(i.Lit)+`"`)
	}
	switch {
	case i.Label != nil:
		d.label(i.Label, attributes)
	case i.Shape.Round:
		at := i.Shape.Points[0]
		d.canvas.Circle(at.X, at.Y, i.Shape.Radius, append(attributes, i.Shape.paint()...)...)
	default:
		d.canvas.Path(pathData(i.Shape), append(attributes, d.paint(i.Shape)...)...)
	}
}

func numbers(list []int) string {
	var words []string
	for _, n := range list {
		words = append(words, strconv.Itoa(n))
	}
	return strings.Join(words, " ")
}

func pathData(s *Shape) string {
	var b strings.Builder
	command := "M"
	for _, p := range s.Points {
		b.WriteString(command + number(p.X) + " " + number(p.Y))
		command = "L"
	}
	if s.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

// paint are the attributes of a shape's fill and line.
func (s *Shape) paint() []string {
	fill := `fill="none"`
	if s.Filled {
		fill = `fill="` + s.Fill.Hex() + `"`
	}
	if s.Pen.Width <= 0 {
		return []string{fill}
	}
	list := []string{fill, `stroke="` + s.Pen.Colour.Hex() + `"`, `stroke-width="` + number(s.Pen.Width) + `"`, `stroke-linejoin="round"`}
	if len(s.Pen.Dashes) > 0 {
		var dashes []string
		for _, dash := range s.Pen.Dashes {
			dashes = append(dashes, number(dash))
		}
		list = append(list, `stroke-dasharray="`+strings.Join(dashes, " ")+`"`)
	}
	return list
}

// label draws words, on a rim where they have one.
func (d *drawing) label(l *Label, attributes []string) {
	attributes = append(attributes, `font-size="`+number(l.Size)+`"`, `xml:space="preserve"`)
	if d.pressed {
		attributes = append(attributes, `textLength="`+number(l.Width)+`"`, `lengthAdjust="spacingAndGlyphs"`)
	}
	at := l.At
	switch along := ([]measure.Vec{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}})[l.Quarters]; l.Anchor {
	case Middle:
		at = measure.Vec{X: at.X + l.Width/2*along.X, Y: at.Y + l.Width/2*along.Y}
		attributes = append(attributes, `text-anchor="middle"`)
	case End:
		at = measure.Vec{X: at.X + l.Width*along.X, Y: at.Y + l.Width*along.Y}
		attributes = append(attributes, `text-anchor="end"`)
	}
	if l.Bold {
		attributes = append(attributes, `font-weight="bold"`)
	}
	if l.Quarters != 0 {
		attributes = append(attributes, `transform="rotate(`+strconv.Itoa(90*l.Quarters)+" "+number(at.X)+" "+number(at.Y)+`)"`)
	}
	if l.Halo {
		under := append([]string{`aria-hidden="true"`, `fill="none"`, `stroke="` + l.Rim.Hex() + `"`, `stroke-width="` + number(2*rim) + `"`, `stroke-linejoin="round"`}, attributes...)
		d.canvas.Text(at.X, at.Y, l.Text, under...)
	}
	d.canvas.Text(at.X, at.Y, l.Text, append(attributes, `fill="`+l.Colour.Hex()+`"`)...)
}
