package diagram

import (
	"fmt"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// LeastContrast is the ratio that words have to what lies beneath them, at the least (WCAG 2.1, success criterion 1.4.3).
const LeastContrast = 4.5

// Illegible says what of a sheet's words cannot be read where it is enlarged by a factor: letters under a size in points,
// words over one another, beyond the sheet, struck through by a line that is drawn over them or, without a rim, beneath
// them, or one beneath them along most of their length, or with too little contrast to what lies beneath.
func (s *Sheet) Illegible(zoom, least float64) []string {
	var wrong []string
	add := func(l *Label, format string, values ...any) {
		wrong = append(wrong, fmt.Sprintf("%q ", l.Text)+fmt.Sprintf(format, values...))
	}
	boxes := make([]box, len(s.Items))
	for i := range s.Items {
		l := s.Items[i].Label
		if l == nil {
			continue
		}
		boxes[i] = l.box()
		if l.Size*zoom < least-1e-6 {
			add(l, "is set in %.1f points", l.Size*zoom)
		}
		if b := boxes[i]; b.min.X < -1e-6 || b.min.Y < -1e-6 || b.max.X > s.Width+1e-6 || b.max.Y > s.Height+1e-6 {
			add(l, "is cut off")
		}
		for n := range i {
			if other := s.Items[n].Label; other != nil && boxes[n].over(boxes[i]) {
				add(l, "stands over %q", other.Text)
			}
		}
		if ratio := palettes.ContrastRatio(l.Colour, s.beneath(i)); ratio < LeastContrast {
			add(l, "has a contrast of %.1f", ratio)
		}
		if s.struck(i, boxes[i]) {
			add(l, "is struck through")
		}
	}
	return wrong
}

// box is what a label covers: the height of its capitals.
func (l *Label) box() box {
	high := capital * l.Size
	cos, sin := [4]float64{1, 0, -1, 0}[l.Quarters], [4]float64{0, 1, 0, -1}[l.Quarters]
	other := measure.Vec{X: l.At.X + l.Width*cos + high*sin, Y: l.At.Y + l.Width*sin - high*cos}
	return box{measure.Vec{X: min(l.At.X, other.X), Y: min(l.At.Y, other.Y)}, measure.Vec{X: max(l.At.X, other.X), Y: max(l.At.Y, other.Y)}}
}

// touching is how far words may reach into each other, in points.
const touching = 0.3

func (b box) over(c box) bool {
	return min(b.max.X, c.max.X)-max(b.min.X, c.min.X) > touching && min(b.max.Y, c.max.Y)-max(b.min.Y, c.min.Y) > touching
}

// beneath is the colour that lies under a label: its rim, or what is filled under its middle.
func (s *Sheet) beneath(label int) palettes.Colour {
	l := s.Items[label].Label
	if l.Halo {
		return l.Rim
	}
	b, under := l.box(), page()
	middle := measure.Vec{X: (b.min.X + b.max.X) / 2, Y: (b.min.Y + b.max.Y) / 2}
	for i := range label {
		if shape := s.Items[i].Shape; shape != nil && shape.Filled && within(shape.Points, middle) {
			under = shape.Fill
		}
	}
	return under
}

// within says whether a place lies in an outline.
func within(outline []measure.Vec, at measure.Vec) bool {
	in := false
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		if (p.Y > at.Y) != (q.Y > at.Y) && at.X < p.X+(q.X-p.X)*(at.Y-p.Y)/(q.Y-p.Y) {
			in = !in
		}
	}
	return in
}

// struck says whether a line runs through a label: one that is drawn over it, or beneath it where it has no rim, or beneath it
// along most of its length, which a rim does not hide.
func (s *Sheet) struck(label int, b box) bool {
	inner := box{measure.Vec{X: b.min.X + touching, Y: b.min.Y + touching}, measure.Vec{X: b.max.X - touching, Y: b.max.Y - touching}}
	for i := range s.Items {
		shape := s.Items[i].Shape
		over := i > label
		if shape == nil || !over && shape.Pen.Width <= 0 {
			continue
		}
		if over && shape.Filled && within(shape.Points, inner.min) { // it hides all of them, or its edges run through them
			return true
		}
		for n := range shape.Points {
			if n+1 == len(shape.Points) && !shape.Closed {
				break
			}
			p, q := shape.Points[n], shape.Points[(n+1)%len(shape.Points)]
			part := inner.crossed(p, q)
			if !over && s.Items[label].Label.Halo {
				part = max(0, part-struckShare*inner.long(p, q, s.Items[label].Label.Quarters))
			}
			if part > 0 && !s.covered(i, label, inner) {
				return true
			}
		}
	}
	return false
}

// covered says whether what is filled between a shape and a label hides the shape under all of the label.
func (s *Sheet) covered(shape, label int, b box) bool {
	for i := shape + 1; i < label; i++ {
		over := s.Items[i].Shape
		if over == nil || !over.Filled {
			continue
		}
		all := true
		for _, corner := range []measure.Vec{b.min, b.max, {X: b.min.X, Y: b.max.Y}, {X: b.max.X, Y: b.min.Y}} {
			all = all && within(over.Points, corner)
		}
		if all {
			return true
		}
	}
	return false
}

// struckShare is the part of a label's length along which a line may run beneath its rim.
const struckShare = 0.6

// long is which part of a stretch is as long as a box, along the words in it; infinite where it runs across them.
func (b box) long(p, q measure.Vec, quarters int) float64 {
	way, wide := math.Abs(q.X-p.X), b.max.X-b.min.X
	if quarters%2 == 1 {
		way, wide = math.Abs(q.Y-p.Y), b.max.Y-b.min.Y
	}
	return wide / way
}

// crossed is which part of a stretch runs through a box or along its edge, 0 for none.
func (b box) crossed(p, q measure.Vec) float64 {
	low, high := 0.0, 1.0
	for _, axis := range [2][4]float64{{p.X, q.X, b.min.X, b.max.X}, {p.Y, q.Y, b.min.Y, b.max.Y}} {
		from, way := axis[0], axis[1]-axis[0]
		if way == 0 { // beside the box, or between its sides all the way
			if from < axis[2] || from > axis[3] {
				return 0
			}
			continue
		}
		a, z := (axis[2]-from)/way, (axis[3]-from)/way
		low, high = max(low, min(a, z)), min(high, max(a, z))
	}
	return max(0, high-low)
}
