package quilt

import (
	"cmp"
	"math/big"
	"math/bits"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// scale is the unit square at one size: a length for each coordinate.
type scale [blocks.Full + 1]measure.NM

// newGrade rounds the division points once: only the nearest whole number of nanometres to
// k times the side, and what is left of the side, are ever used, so that neighbours share
// their corners to the last digit whoever computes them. The side must be even.
func newScale(side measure.NM) scale {
	// round(side/sqrt 2) = floor(sqrt(2 side^2 / 4 ... )): the whole root of 2 side^2 is
	// twice the value, from which the nearest is found without a fraction.
	double := new(big.Int).Mul(big.NewInt(2*int64(side)), big.NewInt(int64(side)))
	k := measure.NM(double.Sqrt(double).Int64()+1) / 2
	return scale{0, side - k, side / 2, k, side}
}

func (g scale) point(p blocks.Point) measure.Point { return measure.Point{X: g[p.X], Y: g[p.Y]} }

// template is a kind in one turn at the size of the grid, in the block's own frame.
type template struct {
	kind   *blocks.Kind
	pieces []pieceTemplate
	seams  []templateSeam
	joined []Seam        // what they join where each piece is one face: between pieces, by index
	sides  [4][]sideSpan // top, right, bottom, left; each clockwise
}

type pieceTemplate struct {
	blocks.Piece
	outline []measure.Point
	number  int // among the pieces of its role
	of      int // how many those are
	banded  map[bandKey]*bands
}

// edge is one side of a piece: from corner number Edge to the next.
type edge struct{ piece, edge int }

// templateSeam is two edges of a block that lie on each other.
type templateSeam struct{ a, b edge }

// sideSpan is an edge that lies on the block's side.
type sideSpan struct{ edge }

func newTemplate(kind *blocks.Kind, turns int, g scale) *template {
	t := &template{kind: kind}
	for _, p := range kind.Turned(turns) {
		outline := make([]measure.Point, len(p.Outline))
		for i, at := range p.Outline {
			outline[i] = g.point(at)
		}
		t.pieces = append(t.pieces, pieceTemplate{Piece: p, outline: outline, banded: map[bandKey]*bands{}})
	}
	t.number()
	t.findSeams()
	t.join()
	t.findSides(g[blocks.Full])
	return t
}

// number counts the pieces of each role.
func (t *template) number() {
	count := make([]int, len(t.kind.Roles))
	for i := range t.pieces {
		p := &t.pieces[i]
		p.number = count[p.Role]
		count[p.Role]++
	}
	for i := range t.pieces {
		t.pieces[i].of = count[t.pieces[i].Role]
	}
}

func (t *template) ends(e edge) (from, to measure.Point) {
	outline := t.pieces[e.piece].outline
	return outline[e.edge], outline[(e.edge+1)%len(outline)]
}

// findSeams pairs the edges of different pieces that lie on each other.
func (t *template) findSeams() {
	for a := range t.pieces {
		for b := a + 1; b < len(t.pieces); b++ {
			for i := range t.pieces[a].outline {
				for j := range t.pieces[b].outline {
					t.pair(edge{a, i}, edge{b, j})
				}
			}
		}
	}
}

// join finds what the seams join.
func (t *template) join() {
	l := &builder{Top: &Top{}}
	for _, s := range t.seams {
		from, to := t.ends(s.a)
		otherFrom, otherTo := t.ends(s.b)
		l.join([]span{{int32(s.a.piece), from, to}}, []span{{int32(s.b.piece), otherFrom, otherTo}})
	}
	t.joined = l.Seams
}

// pair notes a seam if two edges lie on each other, running opposite ways.
func (t *template) pair(a, b edge) {
	a0, a1 := t.ends(a)
	b0, b1 := t.ends(b)
	if a0 == b1 && a1 == b0 {
		t.seams = append(t.seams, templateSeam{a, b})
		return
	}
	if offLine(a0, a1, b0) || offLine(a0, a1, b1) || along(a0, a1, b0) <= along(a0, a1, b1) {
		return
	}
	if min(along(a0, a1, b0), along(a0, a1, a1)) > max(along(a0, a1, b1), 0) {
		t.seams = append(t.seams, templateSeam{a, b})
	}
}

// offLine says whether p lies off the line from a to b, which runs along a side or a
// diagonal where that can be told exactly; other lines have no corner of a third piece.
func offLine(a, b, p measure.Point) bool {
	dx, dy := b.X-a.X, b.Y-a.Y
	switch {
	case dx == 0:
		return p.X != a.X
	case dy == 0:
		return p.Y != a.Y
	case dx == dy:
		return p.X-a.X != p.Y-a.Y
	case dx == -dy:
		return p.X-a.X != a.Y-p.Y
	}
	return true
}

// along is how far p, a place on the line through a and b, lies along the way from a towards b, counted in both directions of the grid
// together.
func along(a, b, p measure.Point) measure.NM {
	d := p.X - a.X
	if b.X < a.X {
		d = -d
	}
	e := p.Y - a.Y
	if b.Y < a.Y {
		e = -e
	}
	return d + e
}

// findSides finds the edges on each side of the block and puts them in order.
func (t *template) findSides(side measure.NM) {
	corners := [4]measure.Point{{X: 0, Y: 0}, {X: side, Y: 0}, {X: side, Y: side}, {X: 0, Y: side}}
	for n := range 4 {
		from, to := corners[n], corners[(n+1)%4]
		for p := range t.pieces {
			for e := range t.pieces[p].outline {
				a, b := t.ends(edge{p, e})
				if !offLine(from, to, a) && !offLine(from, to, b) {
					t.sides[n] = append(t.sides[n], sideSpan{edge{p, e}})
				}
			}
		}
		slices.SortFunc(t.sides[n], func(x, y sideSpan) int {
			a, _ := t.ends(x.edge)
			b, _ := t.ends(y.edge)
			return cmp.Compare(along(from, to, a), along(from, to, b))
		})
	}
}

// bandKey is a strip set in one of its two ways.
type bandKey struct {
	set    int
	turned bool
}

// bands is a wedge cut from a strip set, in the block's frame.
type bands struct {
	set      int16 // of the top's cloth, -1 until it is asked for
	fabrics  []int // from the wide end to the tip; -1 for a pool
	pools    []int // -1 for a fabric
	outlines [][]measure.Point
	legs     [2][]measure.Point // where the bands end on the wedge's two legs, from the tip to the wide end
}

// bandsOf is the bands of a wedge, made once for each way it is filled.
func (p *pieceTemplate) bandsOf(d *layout.Design, f *layout.Fill, h blocks.WedgeHeight) *bands {
	key := bandKey{f.Set, f.Reversed}
	if b, ok := p.banded[key]; ok {
		return b
	}
	set := d.StripSets[f.Set].Bands
	height := h.Finished(d.SideFinished)
	b := &bands{set: -1}
	fromTip := height
	var cuts []measure.NM // distances from the tip, the wide end's first
	for i := range set {
		band := set[i]
		if f.Reversed {
			band = set[len(set)-1-i]
		}
		b.fabrics, b.pools = append(b.fabrics, band.Fabric), append(b.pools, band.Pool)
		fromTip -= band.Cut[h] - 2*d.Seam
		cuts = append(cuts, fromTip)
	}
	b.lay(p.outline, cuts[:len(cuts)-1], height)
	p.banded[key] = b
	return b
}

// lay finds the outlines of bands that end at the given distances from a wedge's tip.
func (b *bands) lay(wedge []measure.Point, cuts []measure.NM, height measure.NM) {
	tip := wedge[0]
	right, left := wedge[1], wedge[2]
	for _, c := range cuts {
		onRight, onLeft := towards(tip, wedge[1], c, height), towards(tip, wedge[2], c, height)
		b.outlines = append(b.outlines, []measure.Point{onRight, right, left, onLeft})
		b.legs[0] = append(b.legs[0], onRight)
		b.legs[1] = append(b.legs[1], onLeft)
		right, left = onRight, onLeft
	}
	b.outlines = append(b.outlines, []measure.Point{tip, right, left})
	slices.Reverse(b.legs[0])
	slices.Reverse(b.legs[1])
}

// towards is the point part/whole of the way from a to b.
func towards(a, b measure.Point, part, whole measure.NM) measure.Point {
	return measure.Point{X: a.X + scaled(b.X-a.X, part, whole), Y: a.Y + scaled(b.Y-a.Y, part, whole)}
}

// scaled is n*part/whole, the nearest, halves away from zero; part and whole are positive.
func scaled(n, part, whole measure.NM) measure.NM {
	if n < 0 {
		return -scaled(-n, part, whole)
	}
	hi, lo := bits.Mul64(uint64(n), uint64(part))
	lo, carry := bits.Add64(lo, uint64(whole)/2, 0)
	quotient, _ := bits.Div64(hi+carry, lo, uint64(whole))
	return measure.NM(quotient)
}
