package sewing

import (
	"cmp"
	"slices"
)

// LandmarkSort says by what one sees how a block is turned.
type LandmarkSort uint8

const (
	NoLandmark LandmarkSort = iota // the block looks the same in every turn
	AtCorner                       // by pieces at one or two of its corners
	AtSide                         // by pieces along one or two of its sides
	ByPicture                      // by nothing that is told in short: by its picture
)

// Landmark is what tells the turns of a block of one variant apart: pieces that lie at some of its corners, or sides, and at
// no others.
type Landmark struct {
	Sort   LandmarkSort
	Pieces []int // of the kind, at the first of the places
	At     []int // where they lie in the unturned block: corners clockwise from the upper left, sides from the top
}

// Landmark is how one sees the turn of a block of a variant.
func (p *Plan) Landmark(b *Block, c *FabricVariant) Landmark {
	if b.Column || len(c.Cloths) < 2 || p.looksAlike(c, 1) {
		return Landmark{}
	}
	half := p.looksAlike(c, 2)
	for i, spots := range [2][4]spot{p.cornerSpots(b, c), p.sideSpots(b, c)} {
		sort := [2]LandmarkSort{AtCorner, AtSide}[i]
		if at := unlike(spots); at >= 0 {
			return Landmark{sort, spots[at].pieces, []int{at}}
		}
		if at := neighbours(spots); at >= 0 {
			return Landmark{sort, spots[at].pieces, []int{at, at + 1}}
		}
		if half && !spots[0].like(&spots[1]) {
			first := 0
			if len(spots[1].pieces) < len(spots[0].pieces) {
				first = 1
			}
			return Landmark{sort, spots[first].pieces, []int{first, first + 2}}
		}
	}
	return Landmark{Sort: ByPicture}
}

// spot is what lies at a corner or along a side of a block.
type spot struct {
	pieces []int
	looks  []look // of the pieces, in order
}

// look is by what pieces are told apart: their cloth, and their shape.
type look struct{ cloth, shape int }

func (s *spot) like(other *spot) bool { return slices.Equal(s.looks, other.looks) }

// unlike is which of four spots is unlike the others, the plainest of them; -1 for none.
func unlike(spots [4]spot) int {
	best := -1
	for i := range spots {
		same := 0
		for n := range spots {
			if spots[n].like(&spots[i]) {
				same++
			}
		}
		if same == 1 && (best < 0 || len(spots[i].pieces) < len(spots[best].pieces)) {
			best = i
		}
	}
	return best
}

// neighbours is the first of two spots that follow each other clockwise, are alike and unlike the other two; -1 where there
// are none. No spot is unlike all others.
func neighbours(spots [4]spot) int {
	for i := range spots {
		s, next, last := &spots[i], &spots[(i+1)&3], &spots[(i+3)&3]
		if s.like(next) && !s.like(last) {
			return i
		}
	}
	return -1
}

// cornerSpots is what lies at the corners of a block, clockwise from the upper left.
func (p *Plan) cornerSpots(b *Block, c *FabricVariant) [4]spot {
	side := b.Finished.Across
	corners := [4]point{{}, {X: side}, {X: side, Y: side}, {Y: side}}
	return p.spots(c, func(n int, o outline) bool { return slices.Contains(o, corners[n]) })
}

// sideSpots is what lies along the sides of a block, clockwise from the top.
func (p *Plan) sideSpots(b *Block, c *FabricVariant) [4]spot {
	side := b.Finished.Across
	return p.spots(c, func(n int, o outline) bool {
		on := 0
		for _, q := range o {
			if [4]bool{q.Y == 0, q.X == side, q.Y == side, q.X == 0}[n] {
				on++
			}
		}
		return on > 1
	})
}

// spots is the pieces at four places.
func (p *Plan) spots(c *FabricVariant, lies func(n int, o outline) bool) (list [4]spot) {
	kind := p.kinds[p.cells[c.Cells[0].Cell].block]
	for n := range list {
		s := &list[n]
		for i, o := range kind.pieces {
			if lies(n, o) {
				s.pieces = append(s.pieces, i)
				s.looks = append(s.looks, look{c.Cloths[i], int(kind.kind.Pieces[i].Shape)})
			}
		}
		slices.SortFunc(s.looks, func(a, b look) int { return cmp.Or(cmp.Compare(a.cloth, b.cloth), cmp.Compare(a.shape, b.shape)) })
	}
	return list
}

// looksAlike says whether a block of a variant looks the same after so many quarter turns.
func (p *Plan) looksAlike(c *FabricVariant, quarters int) bool {
	to := p.kinds[p.cells[c.Cells[0].Cell].block].symmetric[quarters]
	if to == nil {
		return false
	}
	for i, n := range to {
		if c.Cloths[i] != c.Cloths[n] {
			return false
		}
	}
	return true
}
