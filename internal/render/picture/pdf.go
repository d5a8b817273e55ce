package picture

import (
	"fmt"
	"io"
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/render/pdf"
	"eighthturn/svgout"
)

// MaxPage is the greatest side of a page in a PDF: 14,400 points (ISO 32000-1, annex C).
const MaxPage = 200 * measure.Inch

// pointsPerInch is the unit of a page.
const pointsPerInch = 72

// TooLong says that a page would be larger than a PDF's may be.
type TooLong struct {
	Width, Height measure.NM
	Longest       measure.NM // the longest side of the picture that can be had with what is round it; 0 for none
	Units         measure.System
}

func (e *TooLong) Error() string {
	return fmt.Sprintf("the page would be %s by %s, and a PDF's is at most %s long",
		e.Units.Nearest(e.Width), e.Units.Nearest(e.Height), e.Units.Nearest(MaxPage))
}

// PDF writes a scene as a PDF of one page, as lines and words and not as pixels. The page is
// as large as the picture and what is round it. A page that is too large is refused, by a
// *TooLong, before anything is drawn.
func PDF(w io.Writer, scene *svgout.Scene, f Frame) error {
	s := sidesOf(scene)
	scale := pointsPerInch / float64(unitsPerInch) // points a user unit
	if f.Longest > 0 {
		scale *= inches(f.Longest) / s.longest()
	}
	round := inches(f.Margin+f.Bleed) * pointsPerInch
	width, height := s.across.whole*scale+2*round, s.down.whole*scale+2*round
	if e := beyondPage(width, height, &f); e != nil {
		e.Units = scene.Top.Units
		return e
	}
	file, err := pdf.New(pdf.Properties{Title: scene.Title, Author: scene.Credits.Author, Copyright: scene.Credits.Copyright, Language: "en-US", Marker: marker})
	if err != nil {
		return err
	}
	p := &page{file, scene, xy{round, round}, scale, s, f.Margin, inches(f.Bleed) * pointsPerInch, diagram.NewLettering(), "", map[int]*laidPrint{}}
	whole := &pdf.Element{Kind: "Document"}
	figure := whole.Add("Figure")
	figure.Alternative = scene.Description
	p.Whole(whole)
	p.Page(width, height)
	p.Frame(figure, p.at(xy{}), s.across.whole*scale, s.down.whole*scale)
	if f.Bleed > 0 {
		p.Trim(p.bleed)
	}
	if !f.Clear {
		p.Within(nil)
		p.Colour(f.background(), "rg")
		p.Rectangle(measure.Vec{}, width, height)
		p.Operator("f")
	}
	if err := p.layers(figure); err != nil {
		return err
	}
	return p.End(w)
}

// layers draws all of the scene, as a figure of the page.
func (p *page) layers(figure *pdf.Element) error {
	for i := range p.scene.Layers {
		l := &p.scene.Layers[i]
		for n := range l.Items {
			p.Layer(p.layerOf(l, l.Styled(&l.Items[n])))
			p.Within(figure)
			if err := p.item(&l.Items[n], l.Styled(&l.Items[n]), l.Part); err != nil {
				return err
			}
		}
	}
	return nil
}

// layerOf is the layer that an item belongs to: its fabric's, what lies beneath the seams with it, or its own part of the picture.
func (p *page) layerOf(l *svgout.Layer, s svgout.Style) string {
	ofFabric := s.Fill.Kind == svgout.Fabric || s.Fill.Kind == svgout.FabricColour
	if l.Part != svgout.Over && ofFabric && s.Fill.Fabric < len(p.scene.Top.Fabrics) {
		return p.scene.Top.Fabrics[s.Fill.Fabric].Name
	}
	return l.Name
}

// beyondPage says that a page would be too large, its sides in points; nil if it is not.
func beyondPage(width, height float64, f *Frame) *TooLong {
	if max(width, height) <= inches(MaxPage)*pointsPerInch {
		return nil
	}
	nm := func(points float64) measure.NM {
		return measure.NM(math.Round(min(points, 1e9) / pointsPerInch * float64(measure.Inch)))
	}
	return &TooLong{Width: nm(width), Height: nm(height), Longest: max(0, MaxPage-2*(f.Margin+f.Bleed))}
}

// page puts a scene on a page.
type page struct {
	*pdf.File
	scene   *svgout.Scene
	origin  xy
	scale   float64 // points a user unit
	sides   sides
	margin  measure.NM
	bleed   float64 // points
	letters *diagram.Lettering
	prefix  string             // of the names of images
	prints  map[int]*laidPrint // by fabric
}

func (p *page) at(q xy) measure.Vec {
	return measure.Vec{X: p.origin.x + float64(q.x*p.scale), Y: p.origin.y + float64(q.y*p.scale)}
}

func (p *page) item(i *svgout.Item, s svgout.Style, part svgout.Part) error {
	switch {
	case i.Picture != nil:
		p.Image("picture"+p.prefix, i.Picture, p.at(xy{}), p.sides.across.quilt*p.scale, p.sides.down.quilt*p.scale)
	case i.Text != nil:
		p.label(i.Text, s)
	case i.Texts != nil:
		for t := range i.Texts {
			p.label(&t, s)
		}
	case i.Each != nil, i.Faces != nil && p.scene.Print(s.Fill) != nil:
		for n, one := range pathsOf(i) {
			if err := p.outlines([]path{one}, s, p.lying(i, n), part != svgout.Over); err != nil {
				return err
			}
		}
	default:
		return p.outlines(pathsOf(i), s, p.lying(i, 0), part != svgout.Over)
	}
	return nil
}

// lying is how cloth lies in an outline of an item: as that of a face where it is one.
func (p *page) lying(i *svgout.Item, outline int) lying {
	if i.Faces != nil && p.scene.Places != nil && p.scene.Paints[p.scene.Top.Faces[i.Faces[outline]].Fabric].Print != nil {
		return lyingAs(p.scene.Matrix(i.Faces[outline]))
	}
	return lying{across: xy{x: 1}, down: xy{y: 1}}
}

// outlines paints outlines: first what fills them, then their lines. Cloth at the edge of the
// quilt runs on into the bleed where no margin lies between.
func (p *page) outlines(list []path, s svgout.Style, as lying, cloth bool) error {
	if cloth && p.bleed > 0 && p.margin == 0 {
		for i := range list {
			list[i].points = p.ranOn(list[i].points)
		}
	}
	if p.scene.Print(s.Fill) != nil {
		if err := p.printed(list, s.Fill.Fabric, as); err != nil {
			return err
		}
	} else if c, ok := p.scene.Colour(s.Fill); ok {
		p.Operator("q")
		p.Colour(c, "rg")
		p.trace(list)
		p.Operator("f Q")
	}
	if s.Line != nil && s.Width > 0 {
		p.lines(list, s)
	}
	return nil
}

func (p *page) lines(list []path, s svgout.Style) {
	if s.Opacity < 1 {
		p.Opacity(s.Opacity)
		defer p.Opacity(1)
	}
	pen := diagram.Pen{Width: s.Width * p.scale, Colour: *s.Line}
	if s.Dash > 0 {
		pen.Dashes = []float64{s.Dash * p.scale}
	}
	p.Operator("q")
	p.Pen(pen, s.Joins || s.Caps, s.Caps)
	p.trace(list)
	p.Operator("S Q")
}

func (p *page) trace(list []path) {
	var room []measure.Vec
	for _, l := range list {
		room = room[:0]
		for _, q := range l.points {
			room = append(room, p.at(q))
		}
		p.Outline(room, l.closed)
	}
}

func (p *page) label(t *svgout.Text, s svgout.Style) {
	colour, ok := p.scene.Colour(s.Fill)
	if !ok {
		return
	}
	text := pdf.Shown(p.letters, t.Text, t.Bold, func(rune) {})
	at := p.at(xy{t.X, t.Y})
	if s.Middle {
		at.X -= p.letters.Width(text, t.Size*p.scale, t.Bold) / 2
	}
	p.Set(pdf.Face{Size: t.Size * p.scale, Bold: t.Bold, Colour: colour})
	p.Text(text, at)
}

// ranOn is an outline whose edges on the quilt's edge are moved outwards by the bleed, with
// straight edges between their ends and where these were.
func (p *page) ranOn(outline []xy) []xy {
	var list []xy
	before := outline[len(outline)-1]
	for i, q := range outline {
		after := outline[(i+1)%len(outline)]
		in, out := p.outward(before, q), p.outward(q, after)
		switch {
		case in == out:
			list = append(list, xy{q.x + in.x, q.y + in.y})
		case in == xy{}:
			aside := p.aside(q, out)
			list = append(list, q, xy{q.x + aside, q.y}, xy{q.x + aside + out.x, q.y + out.y})
		case out == xy{}:
			aside := p.aside(q, in)
			list = append(list, xy{q.x + aside + in.x, q.y + in.y}, xy{q.x + aside, q.y}, q)
		default:
			list = append(list, xy{q.x + in.x + out.x, q.y + in.y + out.y})
		}
		before = q
	}
	return list
}

// near is how close places are to be one, in user units: what lies beneath the seams is only
// exact to a hundredth.
const near = 0.02

// outward is the way out from the edge of the quilt on which two points lie, none where they
// do not lie on one.
func (p *page) outward(a, b xy) xy {
	by := p.bleed / p.scale
	on := func(u, v, edge float64) bool { return math.Abs(u-edge) < near && math.Abs(v-edge) < near }
	switch {
	case on(a.x, b.x, 0):
		return xy{-by, 0}
	case on(a.x, b.x, p.sides.across.quilt):
		return xy{by, 0}
	case on(a.y, b.y, 0):
		return xy{0, -by}
	case on(a.y, b.y, p.sides.down.quilt):
		return xy{0, by}
	}
	return xy{}
}

// aside is how far what goes out from the upper or lower edge goes aside at a corner of the quilt that pieces share.
func (p *page) aside(q, out xy) float64 {
	switch by := p.bleed / p.scale; {
	case out.y == 0:
	case math.Abs(q.x) < near:
		return -by
	case math.Abs(q.x-p.sides.across.quilt) < near:
		return by
	}
	return 0
}
