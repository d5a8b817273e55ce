package svgout

import (
	"slices"

	"eighthturn/patchwork"
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
				return u.appendFace(b, d.faces[f][i])
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
	seams   [][]int32 // by the fabric that lies under them; strip seams count on from the others
	corners []corner  // of all faces
	first   []int32   // the first corner of each face, and the end
	inset   inset
}

// corner is a face's corner and that of its inset.
type corner struct{ at, inset spot }

func newUnderlay(p *picture) *underlay {
	u := &underlay{picture: p, first: make([]int32, 1, len(p.Faces)+1)}
	u.seams = sorted(len(p.Fabrics)+1, len(p.Seams)+len(p.StripSeams), func(i int) int {
		s := u.seam(int32(i))
		a, b := p.Faces[s.A].Fabric, p.Faces[s.B].Fabric
		if a == b {
			return len(p.Fabrics) // nothing can show there beside the fabric itself
		}
		return max(a, b)
	})
	corners := 0
	for i := range p.Faces {
		corners += len(p.Faces[i].Outline)
	}
	u.corners = make([]corner, 0, corners)
	for i := range p.Faces {
		outline := p.Faces[i].Outline
		u.inset.of(outline)
		for n := range outline {
			u.corners = append(u.corners, corner{spotOf(outline[n]), spotAt(u.inset.inwards(&u.inset.sides[n], 0))})
		}
		u.first = append(u.first, int32(len(u.corners)))
	}
	return u
}

func (u *underlay) seam(i int32) *patchwork.Seam {
	if n := int(i) - len(u.Seams); n >= 0 {
		return &u.StripSeams[n]
	}
	return &u.Seams[i]
}

// append writes the shape under a seam: up one side of it and down the other.
func (u *underlay) append(b []byte, s *patchwork.Seam) []byte {
	from, to := spotOf(s.From), spotOf(s.To)
	if from == to {
		return b
	}
	a0, a1, ok := u.side(s.A, from, to)
	if !ok {
		a0, a1 = u.stretch(s.A, s.From, s.To)
	}
	b1, b0, ok := u.side(s.B, to, from)
	if !ok {
		b1, b0 = u.stretch(s.B, s.To, s.From)
	}
	return appendSpots(b, from, b0, b1, to, a1, a0)
}

// appendFace writes a face's outline.
func (u *underlay) appendFace(b []byte, face int32) []byte {
	command := byte('M')
	for _, c := range u.corners[u.first[face]:u.first[face+1]] {
		b = appendSpot(append(b, command), c.at)
		command = 'L'
	}
	return append(b, 'Z')
}

// side is the inset's side for a face's side from one corner clockwise to the next.
func (u *underlay) side(face int32, from, to spot) (spot, spot, bool) {
	corners := u.corners[u.first[face]:u.first[face+1]]
	last := &corners[len(corners)-1]
	for i := range corners {
		c := &corners[i]
		if c.at == to && last.at == from {
			return last.inset, c.inset, true
		}
		last = c
	}
	return spot{}, spot{}, false
}

// stretch is the stretch of the inset for one of a face's side.
func (u *underlay) stretch(face int32, from, to patchwork.Point) (spot, spot) {
	u.inset.of(u.Faces[face].Outline)
	way := patchwork.Point{X: to.X - from.X, Y: to.Y - from.Y}
	return u.inset.opposite(from, way), u.inset.opposite(to, way)
}
