// Package orient turns a grid of block kinds into one in which every block knows its turn:
// it numbers the grid's corners, says which are web centres and which star centres, and
// turns the blocks to them.
package orient

import (
	"slices"

	"eighthturn/internal/blocks"
)

// Cell is one place of the grid.
type Cell struct {
	Kind    *blocks.Kind // nil where there is nothing
	Forced  bool         // turned by the layout itself
	Towards blocks.Corner
}

// Start is which centre stands at the grid's upper left corner.
type Start uint8

const (
	// ByKinds starts with a web centre, or with a star centre where every block made of
	// two halves is one that shows stars.
	ByKinds Start = iota
	WithWeb
	WithStar
)

// Grid is the blocks as the quilt shows them, row by row.
type Grid struct {
	Columns, Rows int
	Cells         []Cell
	Start         Start
}

// Corner is a corner of the grid, counted from the upper left one; X goes across.
type Corner struct{ X, Y int }

// Centre is an inner corner with what its four blocks put on it.
type Centre struct {
	Corner
	Tips, Kites int // wedge tips (eight close a web), square kite corners (four close a star)
}

// Orientation is a grid with every block turned.
type Orientation struct {
	Turns       []uint8 // quarter turns clockwise, a cell each
	StarFirst   bool    // a star centre stands at the upper left corner
	Webs, Stars []Centre
	Unclosable  []int    // cells that point at a centre on the edge of the quilt, since they have no other
	Open        []int    // cells that point at a centre inside the quilt which their neighbours do not close
	Apart       [][2]int // neighbours whose division points on their common side differ
}

// orienter is the work on one grid.
type orienter struct {
	Grid
	Orientation
	turned map[turnedKind]*turnedPieces
	inner  []bool // of the grid's corners, row by row: there is a block on each of its four sides
}

type turnedKind struct {
	kind  *blocks.Kind
	turns uint8
}

// turnedPieces are the pieces of a turned kind, and what it puts on each of its corners.
type turnedPieces struct {
	number      int // in the order in which they were turned
	pieces      []blocks.Piece
	tips, kites [4]int
}

// Lay turns every block of the grid.
func Lay(g Grid) Orientation {
	l := &orienter{Grid: g, turned: map[turnedKind]*turnedPieces{}}
	l.Turns = make([]uint8, len(g.Cells))
	l.StarFirst = g.Start == WithStar || g.Start == ByKinds && onlyStars(g.Cells)
	l.findInner()
	sure := l.turnTheSure()
	l.turnTheRest(sure)
	laid := l.laid()
	l.countCentres(laid)
	l.findOpen()
	l.findApart(laid)
	return l.Orientation
}

// onlyStars says whether there are blocks made of two halves, and all of them show stars.
func onlyStars(cells []Cell) bool {
	found := false
	for _, c := range cells {
		if c.Kind == nil || !c.Kind.Turning.InLattice() {
			continue
		}
		if !c.Kind.Turning.OnStar() {
			return false
		}
		found = true
	}
	return found
}

func (l *orienter) at(i int) (x, y int) { return i % l.Columns, i / l.Columns }

// corner is the grid corner at corner c of cell i.
func (l *orienter) corner(i int, c blocks.Corner) Corner {
	x, y := l.at(i)
	if c == blocks.NE || c == blocks.SE {
		x++
	}
	if c == blocks.SE || c == blocks.SW {
		y++
	}
	return Corner{x, y}
}

// cells are the four cells round a corner, clockwise from the upper left one; -1 where the
// grid has none or there is nothing.
func (l *orienter) cells(at Corner) [4]int {
	var round [4]int
	for n, d := range [4][2]int{{-1, -1}, {0, -1}, {0, 0}, {-1, 0}} {
		x, y := at.X+d[0], at.Y+d[1]
		round[n] = -1
		if x >= 0 && x < l.Columns && y >= 0 && y < l.Rows && l.Cells[y*l.Columns+x].Kind != nil {
			round[n] = y*l.Columns + x
		}
	}
	return round
}

func (l *orienter) inside(at Corner) bool { return l.inner[at.Y*(l.Columns+1)+at.X] }

// findInner finds the corners inside the quilt.
func (l *orienter) findInner() {
	l.inner = make([]bool, (l.Columns+1)*(l.Rows+1))
	for y := 1; y < l.Rows; y++ {
		for x := 1; x < l.Columns; x++ {
			round := l.cells(Corner{x, y})
			l.inner[y*(l.Columns+1)+x] = !slices.Contains(round[:], -1)
		}
	}
}

func (l *orienter) isStar(at Corner) bool { return (at.X+at.Y)&1 == 1 != l.StarFirst }

// candidates are the two corners of cell i that its kind may point at: upper first, then
// left.
func (l *orienter) candidates(i int) [2]blocks.Corner {
	if l.isStar(l.corner(i, blocks.NW)) == l.Cells[i].Kind.Turning.OnStar() {
		return [2]blocks.Corner{blocks.NW, blocks.SE}
	}
	return [2]blocks.Corner{blocks.NE, blocks.SW}
}

func (l *orienter) point(i int, c blocks.Corner) {
	l.Turns[i] = uint8(l.Cells[i].Kind.Points.TurnTo(c))
}

// turnTheSure turns the blocks that have no choice and says which corner each of them
// points at for certain; the rest wait.
func (l *orienter) turnTheSure() []bool {
	sure := make([]bool, len(l.Cells))
	for i, c := range l.Cells {
		if c.Kind == nil || !c.Kind.Turning.InLattice() {
			if c.Forced {
				l.point(i, c.Towards)
			}
			sure[i] = true
			continue
		}
		pair := l.candidates(i)
		first, second := l.inside(l.corner(i, pair[0])), l.inside(l.corner(i, pair[1]))
		switch {
		case c.Forced:
			l.point(i, upperOf(c))
			sure[i] = true
		case !c.Kind.Turning.Towards() || first && !second:
			l.point(i, pair[0])
			sure[i] = true
		case second && !first:
			l.point(i, pair[1])
			sure[i] = true
		}
		if c.Kind.Turning.Towards() && !c.Forced && !first && !second {
			l.Unclosable = append(l.Unclosable, i)
		}
	}
	return sure
}

// upperOf is the corner that a forced block points at; where either of two will do, the
// upper one, so that its pieces are dealt alike however it was written.
func upperOf(c Cell) blocks.Corner {
	if c.Kind.Turning.Towards() || c.Towards == blocks.NW || c.Towards == blocks.NE {
		return c.Towards
	}
	return c.Towards ^ 2
}

// certain counts the neighbours of cell i round its corner c that surely put points there.
func (l *orienter) certain(i int, c blocks.Corner, sure []bool) int {
	at, n := l.corner(i, c), 0
	for place, j := range l.cells(at) {
		if j >= 0 && sure[j] && gives(l.pieces(j), facing(place), l.isStar(at)) {
			n++
		}
	}
	return n
}

// facing is the corner that the cell at a place round a grid corner turns to that corner.
func facing(place int) blocks.Corner { return blocks.Corner(place+2) & 3 }

func (l *orienter) pieces(i int) []blocks.Piece { return l.pointing(i).pieces }

// pointing is a cell's kind as it is turned.
func (l *orienter) pointing(i int) *turnedPieces {
	return l.turn(turnedKind{l.Cells[i].Kind, l.Turns[i]})
}

func (l *orienter) turn(key turnedKind) *turnedPieces {
	t, ok := l.turned[key]
	if !ok {
		t = &turnedPieces{number: len(l.turned), pieces: key.kind.Turned(int(key.turns))}
		for c := range t.tips {
			t.tips[c], t.kites[c] = blocks.Tips(t.pieces, blocks.Corner(c))
		}
		l.turned[key] = t
	}
	return t
}

// laid are all cells as they are turned in the end, nil where there is nothing.
func (l *orienter) laid() []*turnedPieces {
	list := make([]*turnedPieces, len(l.Cells))
	for i, c := range l.Cells {
		if c.Kind != nil {
			list[i] = l.pointing(i)
		}
	}
	return list
}

// countCentres counts what meets at every corner inside the quilt.
func (l *orienter) countCentres(laid []*turnedPieces) {
	for y := 1; y < l.Rows; y++ {
		for x := 1; x < l.Columns; x++ {
			at := Corner{x, y}
			if !l.inside(at) {
				continue
			}
			c := Centre{Corner: at}
			for place, i := range l.cells(at) {
				c.Tips += laid[i].tips[facing(place)]
				c.Kites += laid[i].kites[facing(place)]
			}
			if l.isStar(at) {
				l.Stars = append(l.Stars, c)
			} else {
				l.Webs = append(l.Webs, c)
			}
		}
	}
}
