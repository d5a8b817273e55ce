package blocks

import (
	"cmp"
	"slices"
)

// Coord is a coordinate on the unit square. Every corner of every kind has one of five,
// with k = 1/sqrt 2, so that pieces of neighbours meet in the very same points.
type Coord uint8

const (
	Zero  Coord = iota // 0
	Short              // 1 - k
	Mid                // 1/2
	Long               // k
	Full               // 1
)

// Point is a point of the unit square, y downwards.
type Point struct{ X, Y Coord }

// Turned is the point after so many quarter turns clockwise of its square.
func (p Point) Turned(quarters int) Point {
	for range quarters & 3 {
		p.X, p.Y = Full-p.Y, p.X
	}
	return p
}

// Piece is one patch of a block. Its outline goes clockwise on screen, the first corner
// not repeated, and begins with the corner that the piece points with: the tip of a wedge,
// the square corner of a kite, background piece or triangle.
type Piece struct {
	Shape   Shape
	Role    int // index into the kind's roles
	Outline []Point
}

// Corner is a corner of a square cell, clockwise from the upper left.
type Corner uint8

const (
	NW Corner = iota
	NE
	SE
	SW
)

// CornerNames are how a layout writes the corners, in their order.
func CornerNames() []string { return []string{"nw", "ne", "se", "sw"} }

// String is the corner's name in a layout.
func (c Corner) String() string { return CornerNames()[c&3] }

// Point is the corner's place on the unit square.
func (c Corner) Point() Point { return Point{}.Turned(int(c)) }

// TurnTo is the number of quarter turns clockwise that take corner c to corner d.
func (c Corner) TurnTo(d Corner) int { return int(d-c) & 3 }

// Turned is the kind's pieces after so many quarter turns clockwise. Pieces of a role that
// is dealt in shares keep the order that the language promises: what stands higher on
// screen first, round one point clockwise.
func (k *Kind) Turned(quarters int) []Piece {
	pieces := make([]Piece, len(k.Pieces))
	for i, p := range k.Pieces {
		pieces[i] = Piece{p.Shape, p.Role, make([]Point, len(p.Outline))}
		for j, at := range p.Outline {
			pieces[i].Outline[j] = at.Turned(quarters)
		}
	}
	slices.SortStableFunc(pieces, func(a, b Piece) int {
		if a.Role != b.Role || k.Roles[a.Role].Dealing != InShares {
			return cmp.Compare(a.Role, b.Role)
		}
		return cmp.Or(cmp.Compare(a.Outline[0].Y, b.Outline[0].Y), cmp.Compare(a.Outline[0].X, b.Outline[0].X))
	})
	return pieces
}

// Value is which of a role's values goes to its piece number n of pieces.
func (r *Role) Value(n, pieces, values int) int {
	if r.Dealing == InTurn {
		return n % values
	}
	return n * values / pieces
}

// Tips counts the wedge tips and the square kite corners that pieces put on a corner.
func Tips(pieces []Piece, c Corner) (wedges, kites int) {
	for _, p := range pieces {
		if p.Outline[0] != c.Point() {
			continue
		}
		switch p.Shape.Description().Gathers {
		case WebCentre:
			wedges++
		case StarCentre:
			kites++
		}
	}
	return wedges, kites
}
