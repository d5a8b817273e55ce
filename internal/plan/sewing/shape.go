package sewing

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

type (
	point   = measure.Point
	outline = []measure.Point // clockwise on screen, the first corner not repeated
)

// near is how far a point may lie from a straight line and still count as on it: what two
// roundings can make.
const near = float64(2 * measure.Tolerance)

// minus is p as seen from q.
func minus(p, q point) point { return point{X: p.X - q.X, Y: p.Y - q.Y} }

func length(p point) float64 { return math.Hypot(float64(p.X), float64(p.Y)) }

// cross is above 0 where b lies clockwise of a on screen.
func cross(a, b point) float64 {
	return float64(float64(a.X)*float64(b.Y)) - float64(float64(a.Y)*float64(b.X))
}

func dot(a, b point) float64 {
	return float64(float64(a.X)*float64(b.X)) + float64(float64(a.Y)*float64(b.Y))
}

// onStretch says whether p lies on the way from a to b, and how far along, in nanometres.
func onStretch(a, b, p point) (float64, bool) {
	way := minus(b, a)
	l := length(way)
	if math.Abs(cross(way, minus(p, a))) > near*l {
		return 0, false
	}
	at := dot(way, minus(p, a)) / l
	return at, at >= -near && at <= l+near
}

// turned is a point of a square of a side after so many quarter turns clockwise.
func turned(p point, side measure.NM, quarters int) point {
	for range quarters & 3 {
		p.X, p.Y = side-p.Y, p.X
	}
	return p
}

// angleAt is the angle inside an outline at its corner number i, degrees; no unit is hollow.
func angleAt(o outline, i int) float64 {
	before, after := minus(o[(i+len(o)-1)%len(o)], o[i]), minus(o[(i+1)%len(o)], o[i])
	return math.Atan2(cross(after, before), dot(after, before)) * 180 / math.Pi
}

// squareAt says whether the corner number i of an outline is square.
func squareAt(o outline, i int) bool { return math.Abs(angleAt(o, i)-90) < 0.01 }

// cornerAt is the number of the corner of an outline at p, -1 if it has none there.
func cornerAt(o outline, p point) int {
	return slices.IndexFunc(o, func(q point) bool { return length(minus(p, q)) <= near })
}

// stretch is a directed stretch of an outline.
type stretch struct{ from, to point }

// united is the outline of pieces that lie side by side, and touch in nothing but whole
// sides or parts of sides. Corners where two sides make one straight line are left out.
func united(pieces []outline) outline {
	var sides []stretch
	for _, o := range pieces {
		for i := range o {
			sides = append(sides, divided(stretch{o[i], o[(i+1)%len(o)]}, pieces)...)
		}
	}
	return straightened(chained(uncovered(sides)))
}

// divided is a side cut at every corner that lies on it.
func divided(s stretch, pieces []outline) []stretch {
	type cut struct {
		at float64
		p  point
	}
	cuts := []cut{{p: s.from}}
	l := length(minus(s.to, s.from))
	for _, o := range pieces {
		for _, p := range o {
			if at, on := onStretch(s.from, s.to, p); on && at > near && at < l-near {
				cuts = append(cuts, cut{at, p})
			}
		}
	}
	slices.SortFunc(cuts, func(a, b cut) int { return cmp.Compare(a.at, b.at) })
	var list []stretch
	for i, c := range cuts {
		next := s.to
		if i+1 < len(cuts) {
			next = cuts[i+1].p
		}
		if length(minus(next, c.p)) > near {
			list = append(list, stretch{c.p, next})
		}
	}
	return list
}

// uncovered is the stretches that no other runs along the opposite way.
func uncovered(sides []stretch) []stretch {
	return slices.DeleteFunc(slices.Clone(sides), func(s stretch) bool {
		return slices.ContainsFunc(sides, func(t stretch) bool {
			return length(minus(s.from, t.to)) <= near && length(minus(s.to, t.from)) <= near
		})
	})
}

// chained is the outline that stretches make, each going on where another ends.
func chained(sides []stretch) outline {
	var o outline
	at := sides[0]
	for range sides {
		o = append(o, at.from)
		i := slices.IndexFunc(sides, func(s stretch) bool { return length(minus(s.from, at.to)) <= near })
		if at = sides[i]; at == sides[0] {
			break
		}
	}
	return o
}

// straightened leaves out the corners that are none.
func straightened(o outline) outline {
	var list outline
	for i := range o {
		if _, on := onStretch(o[(i+len(o)-1)%len(o)], o[(i+1)%len(o)], o[i]); !on {
			list = append(list, o[i])
		}
	}
	return list
}

// shared is the stretch that a side of one piece and a side of another have in common, from
// its beginning to its end as the first goes.
func shared(a, b outline) stretch {
	for i := range a {
		from, to := a[i], a[(i+1)%len(a)]
		for j := range b {
			if s, ok := common(stretch{from, to}, stretch{b[(j+1)%len(b)], b[j]}); ok {
				return s
			}
		}
	}
	return stretch{}
}

// common is what two stretches that run the same way along one line have in common.
func common(s, t stretch) (stretch, bool) {
	way := minus(s.to, s.from)
	l := length(way)
	if math.Abs(cross(way, minus(t.from, s.from))) > near*l || math.Abs(cross(way, minus(t.to, s.from))) > near*l {
		return stretch{}, false
	}
	from, to := s.from, s.to
	if dot(way, minus(t.from, from)) > 0 {
		from = t.from
	}
	if dot(way, minus(t.to, to)) < 0 {
		to = t.to
	}
	return stretch{from, to}, dot(way, minus(to, from)) > near*l
}
