package diagram

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Measures of what stands at the ends of lines, in points.
const (
	arrowLong = 7.0
	arrowWide = 2.6 // to each side
	dotRadius = 2.0
	barLong   = 4.0 // to each side
)

// reach is how far an ending reaches from the line's end, in points.
func (e Ending) reach() float64 {
	switch e {
	case Arrow:
		return arrowWide + rim
	case Dot:
		return dotRadius + rim
	case Bar:
		return barLong + rim
	}
	return 0
}

func (s *Sheet) places(points []measure.Point) []measure.Vec {
	list := make([]measure.Vec, len(points))
	for i, p := range points {
		list[i] = s.At(p)
	}
	return list
}

func (s *Sheet) shape(lit []int, shape Shape) {
	s.Items = append(s.Items, Item{Lit: lit, Shape: &shape})
}

// area draws a filled outline; of fewer than three corners there is nothing to fill.
func (s *Sheet) area(a *Area, lit []int) {
	outline := s.places(a.Outline)
	if len(outline) == 0 {
		return
	}
	fill, pen := a.Fill, a.Edge.Pen()
	if a.Hatch {
		fill = mixed(a.Fill, page(), 0.55)
	}
	if !a.Clear && a.Edge == Thin {
		pen = pen.onCloth(fill)
	}
	if !a.Hatch {
		s.shape(lit, Shape{Points: outline, Closed: true, Filled: !a.Clear, Fill: fill, Pen: pen, Cloth: s.cloth(a)})
		return
	}
	s.shape(lit, Shape{Points: outline, Closed: true, Filled: !a.Clear, Fill: fill})
	s.hatch(outline, Pen{Width: 0.5, Colour: hatchColour(fill)}, lit)
	if pen.Width > 0 {
		s.shape(lit, Shape{Points: outline, Closed: true, Pen: pen})
	}
}

// hatchColour is a line that is seen on a fill.
func hatchColour(fill palettes.Colour) palettes.Colour {
	return mixed(fill, palettes.Colour{}, 0.5)
}

// Distance between hatch lines in points, and the most lines of an outline.
const (
	hatchStep  = 4.0
	hatchLines = 600
)

// hatch draws slanting lines within an outline. They lie on one grid for the whole sheet,
// so that neighbours' lines run on.
func (s *Sheet) hatch(outline []measure.Vec, pen Pen, lit []int) {
	if len(outline) < 3 {
		return
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range outline {
		low, high = min(low, p.X+p.Y), max(high, p.X+p.Y)
	}
	step := hatchStep * math.Sqrt2
	for (high-low)/step > hatchLines {
		step *= 2
	}
	var ends []float64
	for n := math.Ceil(low / step); n*step <= high; n++ {
		ends = hatchEnds(ends[:0], outline, n*step)
		for i := 0; i < len(ends); i += 2 {
			if ends[i+1]-ends[i] > 0.05 {
				s.shape(lit, Shape{Points: []measure.Vec{{X: ends[i], Y: n*step - ends[i]}, {X: ends[i+1], Y: n*step - ends[i+1]}}, Pen: pen})
			}
		}
	}
}

// hatchEnds appends where the line x + y = sum crosses an outline, by x.
func hatchEnds(ends []float64, outline []measure.Vec, sum float64) []float64 {
	p := outline[len(outline)-1]
	for _, q := range outline {
		a, b := p.X+p.Y, q.X+q.Y
		if (a <= sum) != (b <= sum) {
			ends = append(ends, p.X+float64((q.X-p.X)*(sum-a)/(b-a)))
		}
		p = q
	}
	slices.Sort(ends)
	return ends
}

// line draws a line and its endings, on a rim where it must be seen on any fabric.
func (s *Sheet) line(l *Line, lit []int) {
	points, pen := s.places(l.Points), l.Stroke.Pen()
	if len(points) == 0 || pen.Width == 0 {
		return
	}
	heads := [2]ending{headOf(points, l.Start, pen), headOf(reversed(points), l.End, pen)}
	stem := slices.Clone(points)
	stem[0] = heads[0].stem()
	stem[len(stem)-1] = heads[1].stem()
	if l.Stroke.rimmed() {
		s.shape(lit, Shape{Points: stem, Pen: Pen{Width: pen.Width + 2*rim, Colour: page()}})
		s.headRim(lit, heads[0])
		s.headRim(lit, heads[1])
	}
	s.shape(lit, Shape{Points: stem, Pen: pen})
	s.ending(lit, heads[0])
	s.ending(lit, heads[1])
}

func reversed(points []measure.Vec) []measure.Vec {
	list := slices.Clone(points)
	slices.Reverse(list)
	return list
}

// ending is what stands at one end of a line.
type ending struct {
	kind Ending
	at   measure.Vec
	into measure.Vec // along the line, away from its end, of length 1
	size float64     // 1, or less at the end of a line that is too short for it
	pen  Pen
}

// headOf is what stands at the first of a line's points. An arrow takes no more than half
// of the line's first stretch.
func headOf(points []measure.Vec, kind Ending, pen Pen) ending {
	e := ending{kind: kind, at: points[0], into: measure.Vec{X: 1, Y: 0}, pen: pen}
	if kind != Arrow {
		e.size = 1
	}
	for _, p := range points[1:] {
		x, y := p.X-points[0].X, p.Y-points[0].Y
		if long := math.Hypot(x, y); long > 1e-6 {
			e.into, e.size = measure.Vec{X: x / long, Y: y / long}, 1
			if kind == Arrow {
				e.size = min(1, long/2/arrowLong)
			}
			break
		}
	}
	return e
}

// stem is where the line itself ends: within an arrow's head, so that the tip stays sharp.
func (e ending) stem() measure.Vec {
	if e.kind != Arrow {
		return e.at
	}
	return e.along(0.8*arrowLong, 0)
}

// along is a place on the line and aside of it.
func (e ending) along(by, aside float64) measure.Vec {
	by, aside = by*e.size, aside*e.size
	return measure.Vec{X: e.at.X + e.into.X*by - e.into.Y*aside, Y: e.at.Y + e.into.Y*by + e.into.X*aside}
}

// headRim draws the rim of what stands at one end of a line.
func (s *Sheet) headRim(lit []int, e ending) {
	switch e.kind {
	case Arrow:
		s.shape(lit, Shape{Points: e.head(), Closed: true, Filled: true, Fill: page(), Pen: Pen{Width: 2 * rim, Colour: page()}})
	case Dot:
		s.shape(lit, Shape{Points: []measure.Vec{e.at}, Round: true, Radius: dotRadius + rim, Filled: true, Fill: page()})
	}
}

// head is the outline of an arrow's head.
func (e ending) head() []measure.Vec {
	return []measure.Vec{e.at, e.along(arrowLong, arrowWide), e.along(arrowLong, -arrowWide)}
}

func (s *Sheet) ending(lit []int, e ending) {
	solid := Pen{Width: e.pen.Width, Colour: e.pen.Colour}
	var shape Shape
	switch e.kind {
	case Arrow:
		shape = Shape{Points: e.head(), Closed: true, Filled: true, Fill: e.pen.Colour}
	case Dot:
		shape = Shape{Points: []measure.Vec{e.at}, Round: true, Radius: dotRadius, Filled: true, Fill: e.pen.Colour}
	case Bar:
		shape = Shape{Points: []measure.Vec{e.along(0, barLong), e.along(0, -barLong)}, Pen: solid}
	default:
		return
	}
	s.shape(lit, shape)
}

// cloth is what an area shows of its cloth on the sheet, nil for nothing.
func (s *Sheet) cloth(a *Area) *Cloth {
	if a.Print == nil {
		return nil
	}
	size := func(p measure.Point) measure.Vec {
		return measure.Vec{X: float64(p.X) * s.Scale, Y: float64(p.Y) * s.Scale}
	}
	return &Cloth{Print: a.Print, At: s.At(a.Repeat), Size: size(measure.Point{X: a.Print.Across, Y: a.Print.Down}), Margin: size(a.Print.Margin), Turn: a.Turn}
}
