package render

import (
	"bytes"
	"crypto/sha256"
	"fmt"

	"codeberg.org/go-pdf/fpdf"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/palettes"
)

// paint draws an illustration: the layers within their frame, then the figure's own sheet.
func (a art) paint(p *painter, x, y float64) {
	origin := diagram.XY{X: x + a.x, Y: y + a.y}
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
func (s *sheet) on(origin, at diagram.XY) diagram.XY {
	return diagram.XY{X: origin.X + at.X*s.zoom, Y: origin.Y + at.Y*s.zoom}
}

// layers draws the outlines of a picture, cut off at its frame.
func (p *painter) layers(s *sheet, origin diagram.XY) {
	if len(s.shape.layers) == 0 && s.shape.ground == nil {
		return
	}
	low, high := s.on(origin, s.At(s.shape.figure.Min)), s.on(origin, s.At(s.shape.figure.Max))
	p.op("q")
	p.at(low.X, high.Y)
	p.numbers(high.X-low.X, high.Y-low.Y)
	p.op("re W n 1 j")
	if s.shape.ground != nil {
		p.ground(s.shape.ground, low, high)
	}
	for i := range s.shape.layers {
		p.layer(&s.shape.layers[i], s, origin)
	}
	p.op("Q")
}

// ground stretches a PNG file over a rectangle; one that is shown again is kept in the PDF once.
func (p *painter) ground(file []byte, low, high diagram.XY) {
	p.flush()
	name := fmt.Sprintf("%x", sha256.Sum256(file))
	options := fpdf.ImageOptions{ImageType: "PNG"}
	p.RegisterImageOptionsReader(name, options, bytes.NewReader(file))
	p.ImageOptions(name, low.X, low.Y, high.X-low.X, high.Y-low.Y, false, options, 0, "")
}

func (p *painter) layer(l *document.Layer, s *sheet, origin diagram.XY) {
	op := operator(l)
	if op == "" {
		return
	}
	if l.Fill != nil {
		p.colour(*l.Fill, "rg")
	}
	if l.Line > 0 {
		p.colour(l.Ink, "RG")
		p.numbers(l.Line)
		p.op("w")
	}
	for _, path := range l.Paths {
		next := "m "
		for _, point := range path {
			at := s.on(origin, s.At(point))
			p.at(at.X, at.Y)
			p.raw = append(p.raw, next...)
			next = "l "
		}
		if !l.Open && len(path) > 0 {
			p.raw = append(p.raw, "h\n"...)
		}
	}
	p.op(op)
}

// operator paints the layer's paths, "" where there is nothing to see.
func operator(l *document.Layer) string {
	points := 0
	for _, path := range l.Paths {
		points += len(path)
	}
	fill, line := l.Fill != nil && !l.Open, l.Line > 0
	switch {
	case points == 0:
		return ""
	case fill && line:
		return "B"
	case fill:
		return "f"
	case line:
		return "S"
	}
	return ""
}

// outlines draws a shape of a figure's sheet.
func (p *painter) outlines(s *diagram.Shape, on *sheet, origin diagram.XY) {
	op := map[[2]bool]string{{true, true}: "B", {true, false}: "f", {false, true}: "S"}[[2]bool{s.Filled, s.Pen.Width > 0}]
	if op == "" || len(s.Points) == 0 {
		return
	}
	p.op("q")
	if s.Filled {
		p.colour(s.Fill, "rg")
	}
	if s.Pen.Width > 0 {
		p.pen(s.Pen, on.zoom)
	}
	if s.Round {
		p.circle(on.on(origin, s.Points[0]), s.Radius*on.zoom)
	} else {
		p.path(s, on, origin)
	}
	p.op(op + " Q")
}

func (p *painter) pen(pen diagram.Pen, zoom float64) {
	p.colour(pen.Colour, "RG")
	p.numbers(pen.Width * zoom)
	p.op("w 1 j")
	p.raw = append(p.raw, '[')
	for _, dash := range pen.Dashes {
		p.numbers(dash * zoom)
	}
	p.op("] 0 d")
}

func (p *painter) path(s *diagram.Shape, on *sheet, origin diagram.XY) {
	for i, point := range s.Points {
		at := on.on(origin, point)
		p.at(at.X, at.Y)
		if i == 0 {
			p.op("m")
		} else {
			p.op("l")
		}
	}
	if s.Closed {
		p.op("h")
	}
}

// arc is how far the handles of a quarter circle reach as part of its radius.
const arc = 0.5522847

func (p *painter) circle(c diagram.XY, r float64) {
	p.at(c.X+r, c.Y)
	p.op("m")
	for _, q := range [][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		x, y := q[0]*r, q[1]*r
		nx, ny := -y, x
		p.at(c.X+x+nx*arc, c.Y+y+ny*arc)
		p.at(c.X+nx+x*arc, c.Y+ny+y*arc)
		p.at(c.X+nx, c.Y+ny)
		p.op("c")
	}
	p.op("h")
}

// label writes words of a figure, turned by quarters, on a rim of the page's colour where
// they have one. The rim says nothing when the page is searched.
func (p *painter) label(l *diagram.Label, on *sheet, origin diagram.XY) {
	t := p.piece(l.Text, typed(l.Size*on.zoom, l.Bold, l.Colour))
	at := on.on(origin, l.At)
	cos, sin := [4]float64{1, 0, -1, 0}[l.Quarters&3], [4]float64{0, -1, 0, 1}[l.Quarters&3]
	p.face(t.style) // outside, since what follows is undone
	p.op("q")
	p.numbers(cos, sin, -sin, cos)
	p.at(at.X, at.Y)
	p.op("cm")
	if l.Halo {
		p.rim(t, on.zoom)
	}
	p.write(t, 0, p.height)
	p.op("Q")
}

// rimWidth is how wide the rim's line is, half of it outside the letters, in points.
const rimWidth = 2.2

func (p *painter) rim(t piece, zoom float64) {
	p.op("q 1 Tr 1 j [] 0 d")
	p.colour(palettes.Colour{R: 255, G: 255, B: 255}, "RG")
	p.numbers(rimWidth * zoom)
	p.op("w /Span <</ActualText <FEFF>>> BDC")
	t.meant = ""
	p.write(t, 0, p.height)
	p.op("EMC Q")
}
