package svgout

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// beneath draws what lies under the seams: the whole top in one colour, the shapes along
// the seams between two fabrics, and, where patches are drawn one by one, all of each
// fabric in one path, in which there are no seams.
//
// Programs that smooth edges cover the pixels of a seam twice in part, and the ground shows
// through by what is left. Here, under every seam of two fabrics, lies the colour of the one
// that is painted first, so that what shows is a mixture of just these two. This is the one
// place that sees to it, for all pictures that are drawn outline by outline, SVG and PDF: a
// broad line along each seam in its place would reach past the ends of seams into a third
// fabric, and has a width that is wrong at some zoom; a shape from end to end within the two
// faces is right at all of them. A PNG is made by package pixels from all faces at once, where
// what covers a pixel adds up to the whole of it; it needs nothing beneath and leaves it out.
func (p *picture) beneath(shown []int) {
	l := Layer{ID: "beneath", Name: "beneath the seams", Part: Beneath}
	add := func(fabric int, outlines Outlines) {
		l.Items = append(l.Items, Item{Style: Style{Fill: Fill{Kind: FabricColour, Fabric: fabric}}, Outlines: outlines})
	}
	add(p.mostOf(shown), p.extent)
	u := newUnderlay(p)
	for _, f := range shown {
		if len(u.seams[f]) > 0 {
			add(f, u.shapes(u.seams[f]))
		}
	}
	if !p.ByFabric {
		for _, f := range slices.Backward(shown) {
			add(f, p.coarse(p.faces[f]))
		}
	}
	p.layer(l)
}

// mostOf is the fabric with the most faces.
func (p *picture) mostOf(shown []int) int {
	best := shown[0]
	for _, f := range shown {
		if len(p.faces[f]) > len(p.faces[best]) {
			best = f
		}
	}
	return best
}

// full says whether something is everywhere inside the outer rectangle.
func (p *picture) full() bool {
	for i := range p.Cells {
		if p.Empty(i) {
			return false
		}
	}
	return true
}

// extent is the outlines of everything that is there: the whole top at once, or piece by
// piece where places with nothing in them would be covered.
func (p *picture) extent(yield func([]measure.Point) bool) {
	if p.full() {
		yield(cornersOf(p.Outer))
		return
	}
	for i := range p.Cells {
		if !p.Empty(i) && !yield(cornersOf(p.CellRect(i))) {
			return
		}
	}
	for i := range p.Patches {
		if p.Patches[i].Cell < 0 && !yield(p.Patches[i].Outline) {
			return
		}
	}
}

// underlay is what lies under the seams of two fabrics: for each one a shape from end to
// end that reaches into both faces as far as they have room for it beside their other seams.
type underlay struct {
	*picture
	seams [][]int32 // by the fabric that lies under them; strip seams count on from the others
}

// insets are those of the faces looked at last; seams that follow one another often share theirs.
type insets [16]struct {
	inset
	face int32 // counted from 1
}

func newUnderlay(p *picture) *underlay {
	u := &underlay{picture: p}
	u.seams = sorted(len(p.Fabrics), len(p.Seams)+len(p.StripSeams), func(i int) int {
		s := u.seam(int32(i))
		a, b := p.Faces[s.A].Fabric, p.Faces[s.B].Fabric
		if a == b {
			return -1 // nothing can show there beside the fabric itself
		}
		return max(a, b)
	})
	return u
}

func (u *underlay) seam(i int32) *quilt.Seam {
	if n := int(i) - len(u.Seams); n >= 0 {
		return &u.StripSeams[n]
	}
	return &u.Seams[i]
}

// shapes are the shapes under seams.
func (u *underlay) shapes(seams []int32) Outlines {
	return func(yield func([]measure.Point) bool) {
		known := &insets{}
		var room [6]measure.Point
		for _, i := range seams {
			if shape := u.shape(room[:0], u.seam(i), known); len(shape) > 0 && !yield(shape) {
				return
			}
		}
	}
}

// shape is the shape under a seam: up one side of it and down the other, from corner to corner
// of a grid of a hundredth of a user unit, since it need not be exact. There is none for a seam
// that is shorter than that.
func (u *underlay) shape(room []measure.Point, s *quilt.Seam, known *insets) []measure.Point {
	from, to := coarsely(s.From), coarsely(s.To)
	if from == to {
		return nil
	}
	a0, a1 := u.insetOf(s.A, known).stretch(s.From, s.To)
	b1, b0 := u.insetOf(s.B, known).stretch(s.To, s.From)
	for _, p := range [6]measure.Point{from, b0, b1, to, a1, a0} {
		if n := len(room); n == 0 || p != room[n-1] {
			room = append(room, p)
		}
	}
	return room
}

func (u *underlay) insetOf(face int32, known *insets) *inset {
	r := &known[face%int32(len(known))]
	if r.face != face+1 {
		r.of(u.Faces[face].Outline)
		r.face = face + 1
	}
	return &r.inset
}

// coarse are the outlines of faces on the grid of what need not be exact.
func (p *picture) coarse(faces []int32) Outlines {
	return func(yield func([]measure.Point) bool) {
		var room []measure.Point
		for _, i := range faces {
			room = room[:0]
			for _, q := range p.Faces[i].Outline {
				room = append(room, coarsely(q))
			}
			if !yield(room) {
				return
			}
		}
	}
}
