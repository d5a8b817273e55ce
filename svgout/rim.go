package svgout

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// rims goes through the stretches of faces' sides that no seam lies on: the edge of the top and of places with nothing in them.
func (u *underlay) rims(f func(face int32, from, to measure.Point)) {
	without := make([]float64, len(u.Faces)) // length of a face's sides that lies on no seam
	for i := range u.Faces {
		eachSide(u.Faces[i].Outline, func(from, to measure.Point) { without[i] += distance(from, to) })
	}
	u.seams(func(s *quilt.Seam) {
		long := distance(s.From, s.To)
		without[s.A] -= long
		without[s.B] -= long
	})
	const some = 100 // nanometres; sides that are there are longer
	taken := map[int32][]stretch{}
	u.seams(func(s *quilt.Seam) {
		if without[s.A] > some {
			taken[s.A] = append(taken[s.A], stretch{from: s.From, to: s.To})
		}
		if without[s.B] > some {
			taken[s.B] = append(taken[s.B], stretch{from: s.To, to: s.From})
		}
	})
	for i := range u.Faces {
		if without[i] > some {
			eachSide(u.Faces[i].Outline, func(from, to measure.Point) {
				uncovered(from, to, taken[int32(i)], func(from, to measure.Point) { f(int32(i), from, to) })
			})
		}
	}
}

// uncovered goes through what is left of a side between the stretches that lie on it.
func uncovered(from, to measure.Point, taken []stretch, f func(from, to measure.Point)) {
	var on []stretch
	for _, s := range taken {
		if between(from, s.from, to) && between(from, s.to, to) {
			on = append(on, s)
		}
	}
	slices.SortFunc(on, func(a, b stretch) int {
		return int(math.Copysign(1, distance(from, a.from)-distance(from, b.from)))
	})
	for _, s := range on {
		if s.from != from {
			f(from, s.from)
		}
		from = s.to
	}
	if from != to {
		f(from, to)
	}
}

// between says whether b lies on the way from a to c, ends and the rounding of slanted sides included.
func between(a, b, c measure.Point) bool { return b == a || b == c || straightOn(a, b, c) }

// seams goes through all seams.
func (u *underlay) seams(f func(s *quilt.Seam)) {
	for i := range u.Seams {
		f(&u.Seams[i])
	}
	for i := range u.StripSeams {
		f(&u.StripSeams[i])
	}
}

func eachSide(outline []measure.Point, f func(from, to measure.Point)) {
	last := outline[len(outline)-1]
	for _, p := range outline {
		f(last, p)
		last = p
	}
}

// distance is in nanometres.
func distance(a, b measure.Point) float64 {
	x, y := float64(b.X-a.X), float64(b.Y-a.Y)
	return math.Sqrt(float64(x*x) + float64(y*y))
}
