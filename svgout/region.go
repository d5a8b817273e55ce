package svgout

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// underlay finds the regions that lie under the seams.
type underlay struct {
	*picture
	order []int       // fabrics, as they are painted; the first lies under all of the top
	turn  []int       // by fabric, its place in order
	edges [][]stretch // by fabric, in no order; none of the first
}

// stretch is a part of the edge of a fabric's region, clockwise, and the face beyond it under which
// the region goes on; -1 where there is none, or the other fabric is painted first.
type stretch struct {
	from, to measure.Point
	beyond   int32
}

// newUnderlay puts the fabrics in order: first the one with most stretches, which then need not be drawn, and then against the
// order of the layout.
func newUnderlay(p *picture, shown []int) *underlay {
	u := &underlay{picture: p, turn: make([]int, len(p.Fabrics))}
	count := make([]int, len(p.Fabrics))
	u.unlike(func(s *quilt.Seam, a, b int) { count[a]++; count[b]++ })
	first := shown[0]
	for _, f := range shown {
		if count[f] > count[first] {
			first = f
		}
	}
	u.order = append(u.order, first)
	for _, f := range slices.Backward(shown) {
		if f != first {
			u.turn[f] = len(u.order)
			u.order = append(u.order, f)
		}
	}
	u.gather(count)
	return u
}

// unlike goes through the seams of two fabrics.
func (u *underlay) unlike(f func(s *quilt.Seam, a, b int)) {
	u.seams(func(s *quilt.Seam) {
		if a, b := u.Faces[s.A].Fabric, u.Faces[s.B].Fabric; a != b {
			f(s, int(a), int(b))
		}
	})
}

// gather finds the edges of the regions; count is how many of them are seams.
func (u *underlay) gather(count []int) {
	u.edges = make([][]stretch, len(u.Fabrics))
	for _, f := range u.order[1:] {
		u.edges[f] = make([]stretch, 0, count[f])
	}
	add := func(f int, s stretch) {
		if u.turn[f] > 0 {
			u.edges[f] = append(u.edges[f], s)
		}
	}
	u.unlike(func(s *quilt.Seam, a, b int) {
		underB, underA := s.B, s.A
		if u.turn[a] > u.turn[b] {
			underB = -1
		} else {
			underA = -1
		}
		add(a, stretch{s.From, s.To, underB})
		add(b, stretch{s.To, s.From, underA})
	})
	u.rims(func(face int32, from, to measure.Point) { add(int(u.Faces[face].Fabric), stretch{from, to, -1}) })
}

// region is the outlines of a fabric's region: its stretches, joined end to end. Those of holes run the other way round, so that
// what they wind round is filled (SVG 1.1, section 11.3, the rule nonzero).
func (u *underlay) region(fabric int) Outlines {
	return func(yield func([]measure.Point) bool) {
		edges := u.edges[fabric]
		starts, known := newStarts(edges), &insets{}
		var room []measure.Point
		for i := range edges {
			if room = u.walk(room[:0], edges, starts, edges[i].from, known); len(room) > 2 && !yield(room) {
				return
			}
		}
	}
}

// walk goes along the stretches that were not gone along yet, from a place back to it. Corners lie on a grid of a
// hundredth of a user unit, since they need not be exact, and there is none where a straight edge goes on.
func (u *underlay) walk(room []measure.Point, edges []stretch, starts *starts, from measure.Point, known *insets) []measure.Point {
	var before *stretch // the one that came last, where it is straight
	for n := starts.take(edges, from); n >= 0; n = starts.take(edges, edges[n].to) {
		e := &edges[n]
		if before == nil || e.beyond >= 0 || !straightOn(before.from, e.from, e.to) {
			before = e
			room = append(room, coarsely(e.from))
		}
		if e.beyond < 0 {
			continue
		}
		before = nil
		b, a := u.insetOf(e.beyond, known).stretch(e.to, e.from)
		if room = append(room, a); b != a {
			room = append(room, b)
		}
	}
	return room
}

// straightOn says whether the way from a by b to c is straight, to the rounding of slanted sides.
func straightOn(a, b, c measure.Point) bool {
	const offNM = 2
	x, y, dx, dy := float64(b.X-a.X), float64(b.Y-a.Y), float64(c.X-b.X), float64(c.Y-b.Y)
	dot, cross := float64(x*dx)+float64(y*dy), float64(x*dy)-float64(y*dx)
	return dot > 0 && math.Abs(cross) <= offNM*math.Sqrt(dot)
}

// insets are those of the faces looked at last; seams that follow one another often share theirs.
type insets [16]struct {
	inset
	face int32 // counted from 1
}

func (u *underlay) insetOf(face int32, known *insets) *inset {
	r := &known[face%int32(len(known))]
	if r.face != face+1 {
		r.of(u.Faces[face].Outline)
		r.face = face + 1
	}
	return &r.inset
}

// starts finds stretches by where they start.
type starts struct {
	first []int32 // by slot, counted from 1
	next  []int32 // by stretch, the next in its slot, counted from 1
}

func newStarts(edges []stretch) *starts {
	size := 1
	for size < len(edges) {
		size *= 2
	}
	s := &starts{make([]int32, size), make([]int32, len(edges))}
	for i := len(edges) - 1; i >= 0; i-- {
		slot := s.slot(edges[i].from)
		s.next[i], *slot = *slot, int32(i+1)
	}
	return s
}

// slot is where stretches from a place are found.
func (s *starts) slot(p measure.Point) *int32 { return &s.first[slotOf(p, len(s.first))] }

// slotOf is one of so many slots, a power of two, for a place: large odd numbers spread places evenly.
func slotOf(p measure.Point, slots int) int {
	h := uint64(p.X)*0x9e3779b97f4a7c15 ^ uint64(p.Y)*0xc2b2ae3d27d4eb4f
	return int((h ^ h>>29) * 0xbf58476d1ce4e5b9 >> 32 & uint64(slots-1))
}

// take is a stretch that starts at a place and is taken no second time, -1 for none.
func (s *starts) take(edges []stretch, from measure.Point) int32 {
	for at := s.slot(from); *at > 0; at = &s.next[*at-1] {
		if n := *at - 1; edges[n].from == from {
			*at = s.next[n]
			return n
		}
	}
	return -1
}
