package render

import (
	"crypto/sha256"
	"fmt"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/render/pdf"
)

// paint draws an illustration: the layers within their frame, then the figure's own sheet.
func (a art) paint(p *painter, x, y float64) {
	origin := measure.Vec{X: x + a.x, Y: y}
	if a.name != "" {
		p.Place(a.name, origin.Y)
	}
	if a.of != nil {
		p.Frame(a.of, origin, a.width(), a.height())
	}
	p.layers(a.sheet, origin)
	for i := range a.Items {
		item := &a.Items[i]
		if item.Label != nil {
			p.label(item.Label, a.sheet, origin)
			continue
		}
		p.outlines(item.Shape, a.sheet, origin)
	}
}

// on is where a point of the sheet lies on the page.
func (s *sheet) on(origin, at measure.Vec) measure.Vec {
	return measure.Vec{X: origin.X + at.X*s.zoom, Y: origin.Y + at.Y*s.zoom}
}

// layers draws the outlines of a picture, cut off at its frame.
func (p *painter) layers(s *sheet, origin measure.Vec) {
	if len(s.shape.layers) == 0 && s.shape.ground == nil {
		return
	}
	low, high := s.on(origin, s.At(s.shape.figure.Min)), s.on(origin, s.At(s.shape.figure.Max))
	p.Operator("q")
	p.Rectangle(low, high.X-low.X, high.Y-low.Y)
	p.Operator("W n 1 j")
	if file := s.shape.ground; file != nil { // one that is shown again is kept once
		p.Image(fmt.Sprintf("%x", sha256.Sum256(file)), file, low, high.X-low.X, high.Y-low.Y)
	}
	for i := range s.shape.layers {
		p.layer(&s.shape.layers[i], s, origin)
	}
	p.Operator("Q")
}

func (p *painter) layer(l *document.Layer, s *sheet, origin measure.Vec) {
	op := operator(l)
	if op == "" {
		return
	}
	if l.Fill != nil {
		p.Colour(*l.Fill, "rg")
	}
	if l.Line > 0 {
		p.Colour(l.Ink, "RG")
		p.Numbers(l.Line)
		p.Operator("w")
	}
	var room []measure.Vec
	for _, path := range l.Paths {
		room = room[:0]
		for _, point := range path {
			room = append(room, s.on(origin, s.At(point)))
		}
		p.Outline(room, !l.Open)
	}
	p.Operator(op)
}

// operator paints the layer's paths, "" where there is nothing to see.
func operator(l *document.Layer) string {
	for _, path := range l.Paths {
		if len(path) > 0 {
			return pdf.Painting(l.Fill != nil && !l.Open, l.Line > 0)
		}
	}
	return ""
}

// outlines draws a shape of a figure's sheet.
func (p *painter) outlines(s *diagram.Shape, on *sheet, origin measure.Vec) {
	if s.Cloth != nil && s.Filled {
		p.cloth(s, on, origin)
		clear := *s
		clear.Filled, clear.Cloth = false, nil
		s = &clear
	}
	op := pdf.Painting(s.Filled, s.Pen.Width > 0)
	if op == "" || len(s.Points) == 0 {
		return
	}
	p.Operator("q")
	if s.Filled {
		p.Colour(s.Fill, "rg")
	}
	if s.Pen.Width > 0 {
		p.Pen(zoomed(s.Pen, on.zoom), true, false)
	}
	points := make([]measure.Vec, len(s.Points))
	for i, point := range s.Points {
		points[i] = on.on(origin, point)
	}
	if s.Round {
		p.Circle(points[0], s.Radius*on.zoom)
	} else {
		p.Outline(points, s.Closed)
	}
	p.Operator(op + " Q")
}

// cloth fills a shape with its cloth, repeat after repeat, cut off at its outline (ISO 32000-1, 8.5.4).
func (p *painter) cloth(s *diagram.Shape, on *sheet, origin measure.Vec) {
	c := s.Cloth
	points := make([]measure.Vec, len(s.Points))
	for i, q := range s.Points {
		points[i] = on.on(origin, q)
	}
	p.Operator("q")
	p.Outline(points, true)
	p.Operator("W n")
	name := fmt.Sprintf("%x", sha256.Sum256(c.File))
	at := func(x, y float64) measure.Vec { return on.on(origin, c.OnSheet(measure.Vec{X: x, Y: y})) }
	for _, r := range c.Repeats(s.Points) {
		left, top := r.X-c.Margin.X, r.Y-c.Margin.Y
		p.ImageTurned(name, c.File, at(left, top), at(r.X+c.Size.X+c.Margin.X, top), at(left, r.Y+c.Size.Y+c.Margin.Y))
	}
	p.Operator("Q")
}

// zoomed is a pen for a sheet that is enlarged.
func zoomed(pen diagram.Pen, zoom float64) diagram.Pen {
	list := make([]float64, len(pen.Dashes))
	for i, dash := range pen.Dashes {
		list[i] = dash * zoom
	}
	return diagram.Pen{Width: pen.Width * zoom, Dashes: list, Colour: pen.Colour}
}

// label writes words of a figure, turned by quarters, on a rim of the page's colour where
// they have one. The rim says nothing when the page is searched.
func (p *painter) label(l *diagram.Label, on *sheet, origin measure.Vec) {
	t := p.piece(l.Text, typed(l.Size*on.zoom, l.Bold, l.Colour))
	p.Set(t.face()) // outside, since what follows is undone
	at := p.Turn(on.on(origin, l.At), l.Quarters)
	if l.Halo {
		p.rim(t, at, diagram.Pen{Width: rimWidth * on.zoom, Colour: l.Rim})
	}
	t.more = true
	p.write(t, at.X, at.Y)
	p.Operator("Q")
}

// rimWidth is how wide the rim's line is, half of it outside the letters, in points.
const rimWidth = 2.2

func (p *painter) rim(t piece, at measure.Vec, pen diagram.Pen) {
	of := p.Inside()
	p.Within(nil)
	p.Operator("q 1 Tr")
	p.Pen(pen, true, false)
	p.Instead("")
	t.meant = ""
	p.write(t, at.X, at.Y)
	p.Done()
	p.Operator("Q")
	p.Within(of)
}
