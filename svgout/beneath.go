package svgout

import (
	"slices"

	"eighthturn/internal/quilt"
)

// beneath draws what lies under the seams: the whole top in one colour, the shapes along
// the seams between two fabrics, and, where patches are drawn one by one, all of each
// fabric in one path, in which there are no seams.
func (d *document) beneath(shown []int) {
	d.layer("beneath", "beneath the seams", "")
	d.onePath(`fill="`+d.fill(d.mostOf(shown))+`"`, d.appendExtent)
	u := newUnderlay(&d.picture)
	for _, f := range shown {
		if seams := u.seams[f]; len(seams) > 0 {
			d.path(`fill="`+d.fill(f)+`"`, len(seams), func(b []byte, i int) []byte {
				return u.append(b, u.seam(seams[i]))
			})
		}
	}
	if !d.ByFabric {
		for _, f := range slices.Backward(shown) {
			d.path(`fill="`+d.fill(f)+`"`, len(d.faces[f]), func(b []byte, i int) []byte {
				return u.appendCoarse(b, d.faces[f][i])
			})
		}
	}
	d.close()
}

// mostOf is the fabric with the most faces.
func (d *document) mostOf(shown []int) int {
	best := shown[0]
	for _, f := range shown {
		if len(d.faces[f]) > len(d.faces[best]) {
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

// appendExtent writes the outline of everything that is there: the whole top at once, or
// piece by piece where places with nothing in them would be covered.
func (d *document) appendExtent(b []byte) []byte {
	if d.full() {
		return appendRect(b, d.Outer)
	}
	for i := range d.Cells {
		if !d.Empty(i) {
			b = appendRect(b, d.CellRect(i))
		}
	}
	for i := range d.Patches {
		if d.Patches[i].Cell < 0 {
			b = appendOutline(b, d.Patches[i].Outline)
		}
	}
	return b
}

// underlay is what lies under the seams of two fabrics: for each one a shape from end to
// end that reaches into both faces as far as they have room for it beside their other seams.
type underlay struct {
	*picture
	seams  [][]int32 // by the fabric that lies under them; strip seams count on from the others
	recent [16]recent
}

// recent is the inset of a face; seams that follow one another often share theirs.
type recent struct {
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

// append writes the shape under a seam: up one side of it and down the other.
func (u *underlay) append(b []byte, s *quilt.Seam) []byte {
	from, to := spotOf(s.From), spotOf(s.To)
	if from == to {
		return b
	}
	a0, a1 := u.insetOf(s.A).stretch(s.From, s.To)
	b1, b0 := u.insetOf(s.B).stretch(s.To, s.From)
	return appendSpots(b, from, b0, b1, to, a1, a0)
}

func (u *underlay) insetOf(face int32) *inset {
	r := &u.recent[face%int32(len(u.recent))]
	if r.face != face+1 {
		r.of(u.Faces[face].Outline)
		r.face = face + 1
	}
	return &r.inset
}

// appendCoarse writes a face's outline as spots.
func (u *underlay) appendCoarse(b []byte, face int32) []byte {
	command := byte('M')
	for _, p := range u.Faces[face].Outline {
		b = appendSpot(append(b, command), spotOf(p))
		command = 'L'
	}
	return append(b, 'Z')
}
