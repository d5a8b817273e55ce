package paper

import (
	"fmt"
	"io"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// MostPage is the greatest side of a page in a PDF: 14,400 points (ISO 32000-1, annex C).
const MostPage = 200 * measure.Inch

// pointsPerInch is the unit of a page.
const pointsPerInch = 72

// TooLong says that a page would be larger than a PDF's may be.
type TooLong struct {
	Width, Height measure.NM
	Longest       measure.NM // the longest side of the picture that can be had with what is round it; 0 for none
	Units         measure.System
}

func (e *TooLong) Error() string {
	return fmt.Sprintf("the page would be %s by %s, and a PDF's is %s long at the most",
		measure.Text(e.Width, e.Units), measure.Text(e.Height, e.Units), measure.Text(MostPage, e.Units))
}

// PDF writes the picture as a PDF of one page, as lines and words and not as pixels. The
// page is as large as the picture and what is round it. A page that is too large is refused,
// by a *TooLong, before anything is drawn.
func (p *Picture) PDF(w io.Writer, f Frame) error {
	d, err := p.drawing()
	if err != nil {
		return err
	}
	s := p.sidesOf(d)
	scale := pointsPerInch / float64(unitsPerInch) // points a user unit
	if f.Longest > 0 {
		scale *= inches(f.Longest) / s.longest()
	}
	round := inches(f.Margin+f.Bleed) * pointsPerInch
	width, height := s.across.whole*scale+2*round, s.down.whole*scale+2*round
	if e := beyondPage(width, height, &f); e != nil {
		e.Units = p.Top.Units
		return e
	}
	file, err := newPDF(d.title, pictureMarker)
	if err != nil {
		return err
	}
	page := pdfPicture{file, xy{round, round}, scale, s, f.Margin, inches(f.Bleed) * pointsPerInch, p.Top.Fabrics}
	file.page(width, height)
	if f.Bleed > 0 {
		cut := page.bleed
		file.document.SetPageBox("trim", cut, cut, width-2*cut, height-2*cut)
	}
	if !f.Clear {
		ground := f.background()
		file.paths([]path{{[]xy{{0, 0}, {width, 0}, {width, height}, {0, height}}, true}}, paint{fill: &ground, opacity: 1})
	}
	for i := range d.marks {
		if err := page.mark(&d.marks[i]); err != nil {
			return err
		}
	}
	return file.end(w)
}

// beyondPage says that a page would be too large, its sides in points; nil if it is not.
func beyondPage(width, height float64, f *Frame) *TooLong {
	if max(width, height) <= inches(MostPage)*pointsPerInch {
		return nil
	}
	nm := func(points float64) measure.NM {
		return measure.NM(math.Round(min(points, 1e9) / pointsPerInch * float64(measure.Inch)))
	}
	return &TooLong{Width: nm(width), Height: nm(height), Longest: max(0, MostPage-2*(f.Margin+f.Bleed))}
}

// pdfPicture puts a picture on a page.
type pdfPicture struct {
	*pdfFile
	origin  xy
	scale   float64 // points a user unit
	sides   sides
	margin  measure.NM
	bleed   float64 // points
	fabrics []quilt.Fabric
}

func (p *pdfPicture) at(q xy) xy {
	return xy{p.origin.x + float64(q.x*p.scale), p.origin.y + float64(q.y*p.scale)}
}

func (p *pdfPicture) mark(m *mark) error {
	switch {
	case m.print > 0:
		if err := p.printed(m); err != nil {
			return err
		}
		if m.line != nil {
			p.paths(p.placed(m), paint{nil, m.line, m.width * p.scale, p.scaled(m.dashes), m.round, m.opacity})
		}
	case m.image != nil:
		corner, opposite := p.at(m.paths[0].points[0]), p.at(m.paths[0].points[2])
		p.image("picture", m.image, corner, opposite.x-corner.x, opposite.y-corner.y)
	case m.words != nil:
		p.label(m)
	default:
		p.paths(p.placed(m), paint{m.fill, m.line, m.width * p.scale, p.scaled(m.dashes), m.round, m.opacity})
	}
	return nil
}

func (p *pdfPicture) scaled(dashes []float64) []float64 {
	var list []float64
	for _, d := range dashes {
		list = append(list, d*p.scale)
	}
	return list
}

func (p *pdfPicture) label(m *mark) {
	if m.fill == nil {
		return
	}
	s := setting{size: m.words.size * p.scale, bold: m.words.bold, colour: palettes.Colour(*m.fill)}
	at := p.at(m.words.at)
	if m.words.middle {
		p.document.SetFont(fontName, map[bool]string{true: "B"}[s.bold], s.size)
		at.x -= p.document.GetStringWidth(m.words.text) / 2
	}
	p.words(m.words.text, at, s)
}

// placed are a mark's paths on the page. Cloth at the edge of the quilt runs on into the
// bleed where no margin lies between.
func (p *pdfPicture) placed(m *mark) []path {
	list := make([]path, len(m.paths))
	for i, old := range m.paths {
		points := old.points
		if m.cloth && p.bleed > 0 && p.margin == 0 {
			points = p.ranOn(points)
		}
		list[i].closed = old.closed
		list[i].points = make([]xy, len(points))
		for n, q := range points {
			list[i].points[n] = p.at(q)
		}
	}
	return list
}

// ranOn is an outline whose edges on the quilt's edge are moved outwards by the bleed, with
// straight edges between their ends and where these were.
func (p *pdfPicture) ranOn(outline []xy) []xy {
	var list []xy
	before := outline[len(outline)-1]
	for i, q := range outline {
		after := outline[(i+1)%len(outline)]
		in, out := p.outward(before, q), p.outward(q, after)
		switch {
		case in == out:
			list = append(list, xy{q.x + in.x, q.y + in.y})
		case in == xy{}:
			list = append(list, q, xy{q.x + out.x, q.y + out.y})
		case out == xy{}:
			list = append(list, xy{q.x + in.x, q.y + in.y}, q)
		default:
			list = append(list, xy{q.x + in.x + out.x, q.y + in.y + out.y})
		}
		before = q
	}
	return list
}

// near is how close a user unit's places are to be one, since they are written with four
// decimals at the most.
const near = 0.02

// outward is the way out from the edge of the quilt on which two points lie, none where they
// do not lie on one.
func (p *pdfPicture) outward(a, b xy) xy {
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
