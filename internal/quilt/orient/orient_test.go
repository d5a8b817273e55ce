package orient

import (
	"math/rand/v2"
	"testing"

	"eighthturn/internal/blocks"
)

// turning is the first kind that turns so.
func turning(t *testing.T, how blocks.Turning) *blocks.Kind {
	t.Helper()
	for _, k := range blocks.Kinds() {
		if k.Turning == how && (how != blocks.Fixed || len(k.Pieces) > 0) {
			return k
		}
	}
	t.Fatalf("no kind turns so: %d", how)
	return nil
}

// ofHeight is the first kind with wedges of that height.
func ofHeight(t *testing.T, h blocks.WedgeHeight) *blocks.Kind {
	t.Helper()
	for _, k := range blocks.Kinds() {
		if k.Height == h && len(k.Pieces) > 0 {
			return k
		}
	}
	t.Fatalf("no kind has wedges of height %d", h)
	return nil
}

// field is a grid of one kind.
func field(columns, rows int, k *blocks.Kind) Grid {
	g := Grid{Columns: columns, Rows: rows, Cells: make([]Cell, columns*rows)}
	for i := range g.Cells {
		g.Cells[i].Kind = k
	}
	return g
}

// frame is a grid with one kind all round and another within.
func frame(columns, rows int, around, within *blocks.Kind) Grid {
	g := field(columns, rows, within)
	for i := range g.Cells {
		if x, y := i%columns, i/columns; x == 0 || y == 0 || x == columns-1 || y == rows-1 {
			g.Cells[i].Kind = around
		}
	}
	return g
}

// each calls f with every number of columns and rows from 2 to 9.
func each(f func(columns, rows int)) {
	for columns := 2; columns <= 9; columns++ {
		for rows := 2; rows <= 9; rows++ {
			f(columns, rows)
		}
	}
}

// TestFrameCloses: a frame of floats keeps all its webs where both counts are even, and
// cannot close those of exactly two corner cells otherwise. The same holds for stars that
// float, round star centres.
func TestFrameCloses(t *testing.T) {
	for _, pair := range [][2]blocks.Turning{{blocks.ToWebCentre, blocks.OnWebCentres}, {blocks.ToStarCentre, blocks.OnStarCentres}} {
		around, within := turning(t, pair[0]), turning(t, pair[1])
		each(func(columns, rows int) {
			laid := Lay(frame(columns, rows, around, within))
			want := 2
			if columns%2 == 0 && rows%2 == 0 {
				want = 0
			}
			if len(laid.Unclosable) != want {
				t.Errorf("a frame of %s blocks, %d by %d, cannot close %v, want %d cells", around.Name, columns, rows, laid.Unclosable, want)
			}
			for _, i := range laid.Unclosable {
				if x, y := i%columns, i/columns; x > 0 && x < columns-1 || y > 0 && y < rows-1 {
					t.Errorf("a frame of %s blocks, %d by %d, cannot close cell %d, which is no corner", around.Name, columns, rows, i)
				}
			}
			if len(laid.Apart) > 0 {
				t.Errorf("a frame of %s blocks, %d by %d, has seams that miss each other: %v", around.Name, columns, rows, laid.Apart)
			}
		})
	}
}

// TestPlainCloses: a plain block in place of a float that cannot close leaves nothing to
// close.
func TestPlainCloses(t *testing.T) {
	floats, webs, plain := turning(t, blocks.ToWebCentre), turning(t, blocks.OnWebCentres), ofHeight(t, blocks.NoWedges)
	each(func(columns, rows int) {
		g := frame(columns, rows, floats, webs)
		for _, i := range Lay(g).Unclosable {
			g.Cells[i].Kind = plain
		}
		if left := Lay(g).Unclosable; len(left) > 0 {
			t.Errorf("%d by %d: with plain blocks %v still cannot close", columns, rows, left)
		}
	})
}

// TestFieldTurnsItself: in a plain field of webs or of stars every web centre has eight tips
// and every star centre four kites, and each inner corner is one of the two, set like a
// draughtboard.
func TestFieldTurnsItself(t *testing.T) {
	for _, how := range []blocks.Turning{blocks.OnWebCentres, blocks.OnStarCentres} {
		k := turning(t, how)
		each(func(columns, rows int) {
			laid := Lay(field(columns, rows, k))
			if n := len(laid.Webs) + len(laid.Stars); n != (columns-1)*(rows-1) {
				t.Errorf("%d by %d blocks have %d centres", columns, rows, n)
			}
			for _, c := range laid.Webs {
				if c.Tips != 8 || c.Kites != 0 || (c.X+c.Y)%2 == 0 == laid.StarFirst {
					t.Errorf("%d by %d: the web centre %v is not one", columns, rows, c)
				}
			}
			for _, c := range laid.Stars {
				if c.Kites != 4 || c.Tips != 0 || (c.X+c.Y)%2 == 0 != laid.StarFirst {
					t.Errorf("%d by %d: the star centre %v is not one", columns, rows, c)
				}
			}
			if len(laid.Apart)+len(laid.Unclosable) > 0 {
				t.Errorf("%d by %d: %v apart, %v unclosable", columns, rows, laid.Apart, laid.Unclosable)
			}
		})
	}
}

// TestTwoByTwoStars: four star blocks show one whole star in their middle.
func TestTwoByTwoStars(t *testing.T) {
	for _, how := range []blocks.Turning{blocks.OnStarCentres, blocks.ToStarCentre} {
		laid := Lay(field(2, 2, turning(t, how)))
		if len(laid.Stars) != 1 || laid.Stars[0].Kites != 4 || laid.Stars[0].Corner != (Corner{1, 1}) {
			t.Errorf("two by two %s blocks have the stars %v", turning(t, how).Name, laid.Stars)
		}
	}
	if laid := Lay(field(2, 2, turning(t, blocks.OnWebCentres))); len(laid.Webs) != 1 || laid.Webs[0].Tips != 8 {
		t.Errorf("two by two web blocks have the webs %v", laid.Webs)
	}
}

// TestFloatingStarsClose: on a grid of four by four, floating stars all over close four
// stars.
func TestFloatingStarsClose(t *testing.T) {
	laid := Lay(field(4, 4, turning(t, blocks.ToStarCentre)))
	whole := map[Corner]bool{}
	for _, c := range laid.Stars {
		if c.Kites == 4 {
			whole[c.Corner] = true
		}
	}
	if len(whole) != 4 || !whole[Corner{1, 1}] || !whole[Corner{3, 1}] || !whole[Corner{1, 3}] || !whole[Corner{3, 3}] {
		t.Errorf("whole stars stand at %v", whole)
	}
}

// TestForcedApart: neighbours forced onto different lattices are listed, and only they.
func TestForcedApart(t *testing.T) {
	k := turning(t, blocks.OnWebCentres)
	g := field(3, 1, k)
	g.Cells[1].Forced, g.Cells[1].Towards = true, blocks.NW // as the first: both begin with a web
	laid := Lay(g)
	if len(laid.Apart) != 2 || laid.Apart[0] != [2]int{0, 1} || laid.Apart[1] != [2]int{1, 2} {
		t.Errorf("apart are %v, want 0 and 1, 1 and 2", laid.Apart)
	}
	down := field(1, 2, k)
	down.Cells[1].Forced, down.Cells[1].Towards = true, blocks.SE // the other end of the same diagonal
	if laid = Lay(down); len(laid.Apart) != 1 || laid.Apart[0] != [2]int{0, 1} {
		t.Errorf("apart down the quilt are %v, want 0 and 1", laid.Apart)
	}
	down.Cells[1].Towards = blocks.SW // where it would turn by itself
	if laid = Lay(down); len(laid.Apart) != 0 {
		t.Errorf("a block forced where it belongs is apart: %v", laid.Apart)
	}
}

// TestRingsMeet: rings meet rings at both points; beside a web, one of a ring's points meets
// the web's and the other runs into a wedge, which is not apart; nor are plain blocks.
func TestRingsMeet(t *testing.T) {
	ring, web, plain := ofHeight(t, blocks.ToMiddle), turning(t, blocks.OnWebCentres), ofHeight(t, blocks.NoWedges)
	for _, vertical := range []bool{true, false} {
		ofRing, ofWeb := sideOf(ring.Turned(0), vertical, blocks.Full), sideOf(web.Turned(0), vertical, blocks.Zero)
		if !ofRing[blocks.Short] || !ofRing[blocks.Long] || ofRing != sideOf(ring.Turned(0), vertical, blocks.Zero) {
			t.Errorf("a ring divides its sides at %v", ofRing)
		}
		if ofWeb[blocks.Short] == ofWeb[blocks.Long] {
			t.Errorf("a web divides its side at %v", ofWeb)
		}
	}
	rng := rand.New(rand.NewPCG(5, 7))
	for range 200 {
		g := field(1+rng.IntN(6), 1+rng.IntN(6), ring)
		for i := range g.Cells {
			g.Cells[i].Kind = []*blocks.Kind{ring, web, plain, nil}[rng.IntN(4)]
		}
		if laid := Lay(g); len(laid.Apart) > 0 {
			t.Errorf("%d by %d: rings, webs and plain blocks are apart at %v", g.Columns, g.Rows, laid.Apart)
		}
	}
}

// TestNothingApart: where nothing is forced, no neighbours of any kinds miss each other,
// and kinds that must stand on a lattice stand on the one.
func TestNothingApart(t *testing.T) {
	var kinds []*blocks.Kind
	for _, k := range blocks.Kinds() {
		if len(k.Pieces) > 0 {
			kinds = append(kinds, k)
		}
	}
	rng := rand.New(rand.NewPCG(11, 13))
	for n := range 500 {
		g := field(1+rng.IntN(8), 1+rng.IntN(8), nil)
		g.Start = Start(n % 3)
		for i := range g.Cells {
			if g.Cells[i].Kind = kinds[rng.IntN(len(kinds))]; rng.IntN(9) == 0 {
				g.Cells[i].Kind = nil
			}
		}
		laid := Lay(g)
		if len(laid.Apart) > 0 {
			t.Fatalf("grid %d: apart at %v", n, laid.Apart)
		}
		if g.Start != ByKinds && laid.StarFirst != (g.Start == WithStar) {
			t.Fatalf("grid %d: the start that was asked for is not kept", n)
		}
		onLattice(t, g, laid)
	}
}

// onLattice sees that every block made of two halves points at a centre of its sort.
func onLattice(t *testing.T, g Grid, laid Orientation) {
	t.Helper()
	for i, c := range g.Cells {
		if c.Kind == nil || !c.Kind.Turning.InLattice() {
			continue
		}
		corner := blocks.Corner((int(c.Kind.Points) + int(laid.Turns[i])) % 4)
		l := orienter{Grid: g}
		at := l.corner(i, corner)
		if star := (at.X+at.Y)%2 == 0 == laid.StarFirst; star != c.Kind.Turning.OnStar() {
			t.Fatalf("cell %d, %s, points at the corner %v", i, c.Kind.Name, at)
		}
	}
}

// TestFloatChooses: a float between two web centres inside the quilt keeps its wedges at the
// one with more webs round it, then the upper one.
func TestFloatChooses(t *testing.T) {
	floats, webs, plain := turning(t, blocks.ToWebCentre), turning(t, blocks.OnWebCentres), ofHeight(t, blocks.NoWedges)
	// The middle cell of three by three has the web centres 1,1 and 2,2.
	g := field(3, 3, plain)
	g.Cells[4].Kind = floats
	if laid := Lay(g); laid.Turns[4] != 0 {
		t.Errorf("with nothing to choose by it turns %d times, not to the upper centre", laid.Turns[4])
	}
	g.Cells[8].Kind = webs
	if laid := Lay(g); laid.Turns[4] != 2 {
		t.Errorf("with a web below it turns %d times, not to the lower centre", laid.Turns[4])
	}
	g.Cells[0].Kind, g.Cells[1].Kind = webs, webs
	if laid := Lay(g); laid.Turns[4] != 0 {
		t.Errorf("with two webs above and one below it turns %d times", laid.Turns[4])
	}
	g.Cells[4].Forced, g.Cells[4].Towards = true, blocks.SE
	if laid := Lay(g); laid.Turns[4] != 2 {
		t.Errorf("forced to the lower centre it turns %d times", laid.Turns[4])
	}
}

// TestStart: the lattice starts with a star where every block made of halves shows stars.
func TestStart(t *testing.T) {
	web, star, ring := turning(t, blocks.OnWebCentres), turning(t, blocks.OnStarCentres), ofHeight(t, blocks.ToMiddle)
	for _, c := range []struct {
		cells []*blocks.Kind
		want  bool
	}{
		{[]*blocks.Kind{star, star}, true}, {[]*blocks.Kind{star, ring}, true}, {[]*blocks.Kind{star, nil}, true},
		{[]*blocks.Kind{star, web}, false}, {[]*blocks.Kind{ring, ring}, false}, {[]*blocks.Kind{web, web}, false},
	} {
		g := Grid{Columns: 2, Rows: 1, Cells: []Cell{{Kind: c.cells[0]}, {Kind: c.cells[1]}}}
		if laid := Lay(g); laid.StarFirst != c.want {
			t.Errorf("%v: a star first is %v", c.cells, laid.StarFirst)
		}
	}
}

// TestCentresCounted holds the centres' counts against the pieces, one by one, in mixed
// grids with holes: only corners with four blocks are centres.
func TestCentresCounted(t *testing.T) {
	floats, webs, ring := turning(t, blocks.ToWebCentre), turning(t, blocks.OnWebCentres), ofHeight(t, blocks.ToMiddle)
	// Worked out by hand: web webs all round 1,1 but for a ring at the lower right, which
	// has no tip there: 3 x 2 tips. At 2,1, a star centre, the upper blocks are webs with a
	// kite each; the ring and the float have none.
	g := field(3, 2, webs)
	g.Cells[4].Kind = ring
	g.Cells[5].Kind = floats
	laid := Lay(g)
	if len(laid.Webs) != 1 || laid.Webs[0] != (Centre{Corner{1, 1}, 6, 0}) {
		t.Errorf("web centres: %v", laid.Webs)
	}
	if len(laid.Stars) != 1 || laid.Stars[0] != (Centre{Corner{2, 1}, 0, 2}) {
		t.Errorf("star centres: %v", laid.Stars)
	}
	g.Cells[0].Kind = nil
	if laid = Lay(g); len(laid.Webs) != 0 || len(laid.Stars) != 1 {
		t.Errorf("with a hole: webs %v, stars %v", laid.Webs, laid.Stars)
	}
}
