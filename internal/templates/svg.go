package templates

import (
	"io"
	"slices"
	"strconv"
	"strings"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// marker stands near the beginning of every SVG template.
const marker = "<!-- template by eighthturn -->"

// svgMargin is left free round an SVG template, in nanometres.
const svgMargin = measure.Inch / 8

// Inks of the layers of an SVG template: one each, so that a machine can be told by color what to cut and what to draw.
const (
	cutInk   = "#000000"
	sewInk   = "#0000ff"
	grainInk = "#008000"
	printInk = "#808080"
	markInk  = "#c000c0"
	labelInk = "#d00000"
)

// onWhite has browsers show a template on white, on dark pages too: no shape, since a machine would cut out its edge (CSS Backgrounds 3,
// section 2.11.1, the background of the root element).
const onWhite = `style="background:#ffffff"`

// LayersNote explains the layers of an SVG template.
const LayersNote = "Cut the black lines only. The other layers are for a pen, or to be hidden: seam line blue, matching dots purple, grain green, labels red."

// SVG writes the template at true size in layers, for a machine that cuts or draws: the cut line in black, and in other colors what
// may be drawn, the seam line, the dots at its corners, the grain, and its name with how many are cut. The width and height are given
// in inches or millimetres; a user unit is a 96th of an inch, for programs which take no notice of them.
func (t *Template) SVG(w io.Writer, top *quilt.Top) error {
	_, high := bounds(t.Cut)
	s := newSheet(w, high.Add(measure.Point{X: 2 * svgMargin, Y: 2 * svgMargin}), top.Units)
	s.canvas.Title(t.Name() + ", " + t.Piece() + ". Cut " + t.cloths(top))
	piece := laidPiece{t, measure.Point{X: svgMargin, Y: svgMargin}, false, false}
	cloths := NewCloths(top)
	cloths.white = layersWhite
	if a := cloths.area(t); a != nil {
		s.canvas.Desc(LayersNote + " " + ClothNote)
		s.cloth(piece, a)
	} else {
		s.canvas.Desc(LayersNote)
	}
	s.draw([]laidPiece{piece})
	s.canvas.End()
	return s.out.err
}

// Letters of labels: their size by the height that capitals may have, and how far their middle is above the line, by their size.
const (
	letterSize = 1.3
	middleUp   = 0.36
)

// laidPiece is a template with the upper left corner of its cut outline's bounds at a place, as it is or half turned.
type laidPiece struct {
	*Template
	at     measure.Point
	turned bool
	onMat  bool // among others, where the mat says how many are cut
}

// point is where a point of the template lies.
func (p laidPiece) point(q measure.Point) measure.Point {
	if p.turned {
		_, high := bounds(p.Cut)
		q = measure.Point{X: high.X - q.X, Y: high.Y - q.Y}
	}
	return q.Add(p.at)
}

func (p laidPiece) points(list []measure.Point) []measure.Point {
	moved := make([]measure.Point, len(list))
	for i, q := range list {
		moved[i] = p.point(q)
	}
	return moved
}

// svgSheet is an SVG file of templates.
type svgSheet struct {
	out    *remembering
	canvas *svg.SVG
}

func newSheet(w io.Writer, size measure.Point, units measure.System) *svgSheet {
	s := &svgSheet{out: &remembering{w: w}}
	s.canvas = svg.New(s.out)
	s.canvas.Decimals = 4
	unit, name := measure.Inch, "in"
	if units == measure.Centimetres {
		unit, name = measure.Millimetre, "mm"
	}
	s.canvas.Startunit(float64(size.X)/float64(unit), float64(size.Y)/float64(unit), name,
		`viewBox="0 0 `+userUnit(size.X)+" "+userUnit(size.Y)+`" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" `+onWhite)
	_, _ = io.WriteString(s.out, marker+"\n")
	return s
}

// draw draws pieces layer by layer.
func (s *svgSheet) draw(list []laidPiece) {
	s.layer("cut", cutInk, list, func(p laidPiece) { s.path(p.points(p.Cut), true) })
	s.layer("sew", sewInk, list, func(p laidPiece) { s.path(p.points(p.Finished), true) })
	s.layer("marks", markInk, list, func(p laidPiece) {
		for _, q := range p.points(p.Finished) {
			s.canvas.Circle(float64(q.X)*96/float64(measure.Inch), float64(q.Y)*96/float64(measure.Inch), float64(dotRadius)*96/float64(measure.Inch))
		}
	})
	s.layer("grain", grainInk, list, func(p laidPiece) { s.path(p.points(p.Grain[:]), false) })
	if slices.ContainsFunc(list, func(p laidPiece) bool { return p.Print != nil }) {
		s.layer("print", printInk, list, func(p laidPiece) {
			for _, l := range p.printLines() {
				s.path(p.points(l[:]), false)
			}
		})
	}
	s.canvas.Group(`id="labels"`, layerName("labels"), `fill="`+labelInk+`"`, `text-anchor="middle"`, `font-family="sans-serif"`)
	for _, p := range list {
		for _, l := range p.labels() {
			at, size := l.middle, float64(l.height)*96/float64(measure.Inch)*letterSize
			s.canvas.Text(float64(at.X)*96/float64(measure.Inch), float64(at.Y)*96/float64(measure.Inch)+size*middleUp, l.text, `font-size="`+strconv.FormatFloat(size, 'f', 2, 64)+`"`)
		}
	}
	s.canvas.Gend()
}

// layer is a group that drawing programs show as a layer.
func (s *svgSheet) layer(name, ink string, list []laidPiece, draw func(laidPiece)) {
	s.canvas.Group(`id="`+name+`"`, layerName(name), `fill="none"`, `stroke="`+ink+`"`, `stroke-width="0.5"`, `stroke-linejoin="round"`)
	for _, p := range list {
		draw(p)
	}
	s.canvas.Gend()
}

func layerName(name string) string {
	return `inkscape:groupmode="layer" inkscape:label="` + name + `"`
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

// userUnit writes a length in 96ths of an inch.
func userUnit(nm measure.NM) string {
	text := strconv.FormatFloat(float64(nm)*96/float64(measure.Inch), 'f', 4, 64)
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

func (s *svgSheet) path(points []measure.Point, closed bool) {
	var b strings.Builder
	command := "M"
	for _, p := range points {
		b.WriteString(command + userUnit(p.X) + " " + userUnit(p.Y))
		command = "L"
	}
	if closed {
		b.WriteString("Z")
	}
	s.canvas.Path(b.String())
}

// FileName is a name for the template's own file, without an ending.
func (t *Template) FileName() string {
	return strings.ToLower(strings.ReplaceAll(t.Name()+" "+t.Piece(), " ", "-"))
}

// cloths says how many to cut of what.
func (t *Template) cloths(top *quilt.Top) string {
	var list []string
	for _, c := range t.Cloths {
		what := ""
		if c.Fabric >= 0 {
			what = top.Fabrics[c.Fabric].Name
		} else {
			what = "strip set " + top.CutFacts.Sets[c.Set].Name
		}
		list = append(list, strconv.Itoa(c.Count)+" "+what)
	}
	return strings.Join(list, ", ")
}
