package orient

import (
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
)

// mixed is a grid of kinds and holes thrown together, of which some blocks are turned by hand.
func mixed(rng *rand.Rand, kinds []*blocks.Kind, most int) Grid {
	g := field(1+rng.IntN(most), 1+rng.IntN(most), nil)
	g.Start = Start(rng.IntN(3))
	for i := range g.Cells {
		switch c := &g.Cells[i]; rng.IntN(12) {
		case 0:
		case 1:
			c.Kind, c.Forced, c.Towards = kinds[rng.IntN(len(kinds))], true, blocks.Corner(rng.IntN(4))
		default:
			c.Kind = kinds[rng.IntN(len(kinds))]
		}
	}
	return g
}

// pieced are the kinds that have pieces.
func pieced() (kinds []*blocks.Kind) {
	for _, k := range blocks.Kinds() {
		if len(k.Pieces) > 0 {
			kinds = append(kinds, k)
		}
	}
	return kinds
}

// around are the cells round a corner of a grid and the corner that each turns to it, read from the grid anew; nil where one is missing.
func around(g Grid, at Corner) map[int]blocks.Corner {
	if at.X < 1 || at.Y < 1 || at.X >= g.Columns || at.Y >= g.Rows {
		return nil
	}
	upper := (at.Y-1)*g.Columns + at.X - 1
	round := map[int]blocks.Corner{upper: blocks.SE, upper + 1: blocks.SW, upper + g.Columns: blocks.NE, upper + g.Columns + 1: blocks.NW}
	for i := range round {
		if g.Cells[i].Kind == nil {
			return nil
		}
	}
	return round
}

// shares says whether a block, turned so, gives what a web or a star at one of its corners needs of it: two tips, or a kite.
func shares(k *blocks.Kind, turns uint8, c blocks.Corner, star bool) bool {
	tips, kites := blocks.Tips(k.Turned(int(turns)), c)
	return star && kites == 1 || !star && tips == 2
}

// closes says whether the others round a corner all give their share to it.
func closes(g Grid, laid Orientation, at Corner, but int, star bool) bool {
	round := around(g, at)
	for i, c := range round {
		if i != but && !shares(g.Cells[i].Kind, laid.Turns[i], c, star) {
			return false
		}
	}
	return round != nil
}

// ofCell is where corner c of a cell lies in the grid.
func ofCell(g Grid, i int, c blocks.Corner) Corner {
	at := Corner{i % g.Columns, i / g.Columns}
	switch c {
	case blocks.NE:
		at.X++
	case blocks.SE:
		at.X++
		at.Y++
	case blocks.SW:
		at.Y++
	}
	return at
}

// TestOpenAreTold: blocks that float are told of as open just where they point at a centre inside the quilt to which another block does
// not give its share, and as unclosable where they could not point inside it.
func TestOpenAreTold(t *testing.T) {
	rng := rand.New(rand.NewPCG(17, 19))
	kinds, told := pieced(), 0
	for n := range 3000 {
		g := mixed(rng, kinds, 6)
		laid := Lay(g)
		for i, c := range g.Cells {
			if c.Kind == nil || !c.Kind.Turning.Towards() {
				if slices.Contains(laid.Open, i) || slices.Contains(laid.Unclosable, i) {
					t.Fatalf("grid %d: cell %d does not float", n, i)
				}
				continue
			}
			corner := blocks.Corner((int(c.Kind.Points) + int(laid.Turns[i])) % 4)
			star := c.Kind.Turning.OnStar()
			here, there := ofCell(g, i, corner), ofCell(g, i, corner^2)
			open := around(g, here) != nil && !closes(g, laid, here, -1, star)
			if open != slices.Contains(laid.Open, i) {
				t.Fatalf("grid %d: cell %d is open: %v, told %v", n, i, open, laid.Open)
			}
			if open {
				told++
			}
			nowhere := !c.Forced && around(g, here) == nil && around(g, there) == nil
			if nowhere != slices.Contains(laid.Unclosable, i) {
				t.Fatalf("grid %d: cell %d cannot close: %v, told %v", n, i, nowhere, laid.Unclosable)
			}
			if !c.Forced && around(g, here) == nil && around(g, there) != nil {
				t.Fatalf("grid %d: cell %d points out of the quilt", n, i)
			}
			if open && !c.Forced && closes(g, laid, there, i, star) {
				t.Fatalf("grid %d: cell %d is open, and would close the other way", n, i)
			}
		}
	}
	if told < 1000 {
		t.Errorf("only %d open blocks were met", told)
	}
}

// closed counts the webs and stars inside a grid that have all their shares.
func closed(g Grid, laid Orientation) int {
	n := 0
	for y := range g.Rows {
		for x := range g.Columns {
			at := Corner{x, y}
			if closes(g, laid, at, -1, (x+y)%2 == 0 == laid.StarFirst) {
				n++
			}
		}
	}
	return n
}

// TestMostAreClosed: no way to turn the blocks that have a choice closes more webs and stars than the one taken, tried one and all.
func TestMostAreClosed(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 29))
	web, floats := turning(t, blocks.OnWebCentres), turning(t, blocks.ToWebCentre)
	star, floating := turning(t, blocks.OnStarCentres), turning(t, blocks.ToStarCentre)
	tops := [][]*blocks.Kind{
		append(slices.Repeat([]*blocks.Kind{web, web, floats}, 6), pieced()...),
		append(slices.Repeat([]*blocks.Kind{star, star, floating}, 6), pieced()...),
		append(slices.Repeat([]*blocks.Kind{web, star, floats, floating}, 4), pieced()...),
	}
	matters := 0
	for n := range 1500 {
		g := mixed(rng, tops[n%3], 5)
		var free []int
		for i, c := range g.Cells {
			if c.Kind != nil && c.Kind.Turning.Towards() && !c.Forced {
				free = append(free, i)
			}
		}
		if len(free) == 0 || len(free) > 7 {
			continue
		}
		laid := Lay(g)
		got, least, best := closed(g, laid), len(g.Cells), 0
		other := laid
		for way := range 1 << len(free) {
			other.Turns = slices.Clone(laid.Turns)
			for j, i := range free {
				other.Turns[i] = (laid.Turns[i] + uint8(way>>j&1*2)) % 4
			}
			now := closed(g, other)
			least, best = min(least, now), max(best, now)
		}
		if got < best {
			t.Errorf("grid %d, %d by %d: %d are closed, and %d could be", n, g.Columns, g.Rows, got, best)
		}
		if best > least {
			matters++
		}
	}
	if matters < 100 {
		t.Errorf("how blocks are turned mattered in %d grids only", matters)
	}
}

// TestApartAreTold: neighbours are told of as apart just where each has a division on their common side that the other has not, as read
// from the outlines of their pieces.
func TestApartAreTold(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 37))
	told := 0
	for n := range 3000 {
		g := mixed(rng, pieced(), 5)
		laid := Lay(g)
		var want [][2]int
		for i := range g.Cells {
			for _, down := range []bool{false, true} {
				j := i + 1
				if down {
					j = i + g.Columns
				}
				if j >= len(g.Cells) || !down && i%g.Columns == g.Columns-1 || g.Cells[i].Kind == nil || g.Cells[j].Kind == nil {
					continue
				}
				if a, b := divisions(g, laid, i, down, blocks.Full), divisions(g, laid, j, down, blocks.Zero); !holds(a, b) && !holds(b, a) {
					want = append(want, [2]int{i, j})
				}
			}
		}
		if !slices.Equal(laid.Apart, want) {
			t.Fatalf("grid %d, %d by %d: apart are %v, want %v", n, g.Columns, g.Rows, laid.Apart, want)
		}
		told += len(want)
	}
	if told < 300 {
		t.Errorf("only %d neighbours were apart", told)
	}
}

// divisions are where the corners of a block's pieces divide its side at a coordinate, of those that run across or down the quilt.
func divisions(g Grid, laid Orientation, i int, down bool, at blocks.Coord) map[blocks.Coord]bool {
	on := map[blocks.Coord]bool{}
	for _, p := range g.Cells[i].Kind.Turned(int(laid.Turns[i])) {
		for _, q := range p.Outline {
			if down && q.Y == at {
				on[q.X] = true
			}
			if !down && q.X == at {
				on[q.Y] = true
			}
		}
	}
	delete(on, blocks.Zero)
	delete(on, blocks.Full)
	return on
}

// holds says whether all of b's divisions are among a's.
func holds(a, b map[blocks.Coord]bool) bool {
	for at := range b {
		if !a[at] {
			return false
		}
	}
	return true
}

// TestForcedTurns: a block that the layout turns points where it says; one that half a turn leaves as it is points to the upper of its
// two corners.
func TestForcedTurns(t *testing.T) {
	upper := map[blocks.Corner]blocks.Corner{blocks.NW: blocks.NW, blocks.NE: blocks.NE, blocks.SE: blocks.NW, blocks.SW: blocks.NE}
	for _, k := range pieced() {
		for towards, both := range upper {
			g := field(1, 1, k)
			g.Cells[0] = Cell{k, true, towards}
			want := towards
			if k.Turning.InLattice() && !k.Turning.Towards() {
				want = both
			}
			if got := blocks.Corner((int(k.Points) + int(Lay(g).Turns[0])) % 4); got != want {
				t.Errorf("%s turned to corner %d points to %d, want %d", k.Name, towards, got, want)
			}
		}
	}
}
