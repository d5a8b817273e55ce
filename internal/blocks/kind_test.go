package blocks

import (
	"math"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// TestKinds: names are there once, roles have names, letters and words of their own, and
// every role of a kind with pieces has pieces, as many as its values go into.
func TestKinds(t *testing.T) {
	names := map[string]bool{}
	for _, k := range Kinds() {
		if k.Name == "" || k.Summary == "" || names[k.Name] || names[k.Summary] || len(k.Roles) == 0 {
			t.Errorf("%q has no name, summary or role of its own", k.Name)
		}
		names[k.Name], names[k.Summary] = true, true
		if found, ok := Find(Kinds(), k.Name); !ok || found.Name != k.Name {
			t.Errorf("%q is not found", k.Name)
		}
		letters := map[string]string{}
		for i, r := range k.Roles {
			if r.Name == "" || r.Letter == "" || r.Summary == "" || letters[r.Letter] != "" && letters[r.Letter] != r.Shown() || k.Role(r.Name) != i {
				t.Errorf("%s: role %d, %q, has no name, letter or summary of its own", k.Name, i, r.Name)
			}
			letters[r.Letter] = r.Shown()
			pieces := 0
			for _, p := range k.Pieces {
				if p.Role == i {
					pieces++
				}
			}
			if len(r.Counts) > 0 && (r.Counts[0] != 1 || !slices.IsSorted(r.Counts) || len(slices.Compact(slices.Clone(r.Counts))) != len(r.Counts)) {
				t.Errorf("%s: %s take %v values, want one and then more", k.Name, r.Name, r.Counts)
			}
			for _, n := range r.Counts {
				if pieces > 0 && pieces%n != 0 {
					t.Errorf("%s: %d values of %s do not go into %d pieces", k.Name, n, r.Name, pieces)
				}
				if n > 1 && r.Order == "" {
					t.Errorf("%s: nothing says how several %s are dealt", k.Name, r.Name)
				}
			}
		}
	}
	for _, k := range Kinds() {
		for i, r := range k.Roles {
			if k.Role("") != -1 || r.Former != "" && k.Role(r.Former) != i {
				t.Errorf("%s: the former name of role %d is not found, or none is", k.Name, i)
			}
		}
	}
	if _, ok := Find(Kinds(), "nothing"); ok || Kinds()[0].Role("nothing") != -1 {
		t.Error("what is not there is found")
	}
}

// TestTurned: turning keeps shapes and roles, four turns are none, and a piece begins with
// the corner that it points with.
func TestTurned(t *testing.T) {
	for _, k := range Kinds() {
		for turns := range 8 {
			pieces, again := k.Turned(turns), k.Turned(turns+4)
			if len(pieces) != len(k.Pieces) {
				t.Fatalf("%s has %d pieces, turned %d times %d", k.Name, len(k.Pieces), turns, len(pieces))
			}
			for i := range pieces {
				if !slices.Equal(pieces[i].Outline, again[i].Outline) {
					t.Errorf("%s: piece %d turned %d times differs from four turns more", k.Name, i, turns)
				}
				if !hasTurned(k.Pieces, pieces[i], turns) {
					t.Errorf("%s: piece %d turned %d times is none of its pieces, turned", k.Name, i, turns)
				}
			}
		}
	}
}

// hasTurned says whether the piece is one of the list after so many turns.
func hasTurned(list []Piece, piece Piece, turns int) bool {
	for _, p := range list {
		if p.Shape != piece.Shape || p.Role != piece.Role {
			continue
		}
		same := len(p.Outline) == len(piece.Outline)
		for i := range p.Outline {
			same = same && p.Outline[i].Turned(turns) == piece.Outline[i]
		}
		if same {
			return true
		}
	}
	return false
}

// TestDealtInOrder: pieces of a role that is dealt in shares come the upper first, then the
// left, whichever way the kind is turned, and round one point clockwise.
func TestDealtInOrder(t *testing.T) {
	for _, k := range Kinds() {
		for turns := range 4 {
			last := make([][]Point, len(k.Roles))
			for _, p := range k.Turned(turns) {
				if before := last[p.Role]; before != nil && k.Roles[p.Role].Dealing == InShares {
					first, was := p.Outline[0], before[0]
					anticlockwise := first == was && cross(first, before[1], p.Outline[1]).float() <= 0
					if first.Y < was.Y || first.Y == was.Y && first.X < was.X || anticlockwise {
						t.Errorf("%s turned %d times: a piece of %s at %v follows one at %v", k.Name, turns, k.Roles[p.Role].Name, p.Outline, before)
					}
				}
				last[p.Role] = p.Outline
			}
		}
	}
}

// TestTurnTo: the corner that a kind points with goes where it should.
func TestTurnTo(t *testing.T) {
	for from := NW; from <= SW; from++ {
		for to := NW; to <= SW; to++ {
			if got := from.Point().Turned(from.TurnTo(to)); got != to.Point() {
				t.Errorf("%s turned to %s lies at %v", from, to, got)
			}
		}
	}
	for i, want := range []string{"nw", "ne", "se", "sw"} {
		if c := Corner(i); c.String() != want || CornerNames()[i] != want {
			t.Errorf("corner %d is %s", i, c)
		}
	}
	if (Point{Full, Zero}).Turned(1) != (Point{Full, Full}) {
		t.Error("a quarter turn clockwise does not take the upper right corner to the lower right one")
	}
}

// TestPointing: what a kind points with is there: wedge tips at a corner that belongs on a
// web centre, a kite at one that belongs on a star centre.
func TestPointing(t *testing.T) {
	for _, k := range Kinds() {
		if !k.Turning.InLattice() {
			continue
		}
		wedges, kites := Tips(k.Pieces, k.Points)
		if k.Turning.OnStar() && kites != 1 || !k.Turning.OnStar() && wedges != 2 {
			t.Errorf("%s points with %d wedge tips and %d kites", k.Name, wedges, kites)
		}
		opposite, _ := Tips(k.Pieces, k.Points^2)
		if !k.Turning.Towards() && !k.Turning.OnStar() && opposite != 2 {
			t.Errorf("%s has %d wedge tips at its other end", k.Name, opposite)
		}
		same := true
		for _, p := range k.Turned(2) {
			same = same && hasTurned(k.Pieces, p, 0)
		}
		if k.Turning.Towards() == same {
			t.Errorf("%s looks the same after half a turn: %v", k.Name, same)
		}
	}
}

// TestDealtEvenly: every value of a role goes to as many pieces as every other.
func TestDealtEvenly(t *testing.T) {
	for _, dealing := range []Dealing{InShares, InTurn} {
		r := Role{Dealing: dealing}
		for _, values := range []int{1, 2, 4, 8} {
			got := make([]int, values)
			for n := range 8 {
				got[r.Value(n, 8, values)]++
			}
			for v, n := range got {
				if n != 8/values {
					t.Errorf("dealing %d: value %d of %d goes to %d of 8 pieces", dealing, v, values, n)
				}
			}
		}
	}
	shares, turns := Role{Dealing: InShares}, Role{Dealing: InTurn}
	if shares.Value(1, 4, 2) != 0 || shares.Value(2, 4, 2) != 1 || turns.Value(1, 4, 2) != 1 || turns.Value(2, 4, 2) != 0 {
		t.Error("shares and turns are mixed up")
	}
}

// TestSides: the side that a height gives is even, and gives that height back.
func TestSides(t *testing.T) {
	for h := NoWedges + 1; int(h) < Heights; h++ {
		for _, height := range []measure.NM{1, 2, 3, 999, measure.Inch, measure.Inch + 1, 60*measure.Inch + 7} {
			side := h.Side(measure.Of(height))
			if side%2 != 0 {
				t.Errorf("a height of %d nm gives the odd side %d", height, side)
			}
			if d := h.Finished(side) - height; d > 1 || d < -1 {
				t.Errorf("a height of %d nm gives the side %d, which gives %d", height, side, h.Finished(side))
			}
		}
	}
	if NoWedges.Finished(measure.Inch) != 0 {
		t.Error("a kind without wedges has a wedge height")
	}
	if got, want := alongDiagonal, math.Sqrt((2+math.Sqrt2)/8); math.Abs(got-want) > 1e-16 {
		t.Errorf("k cos 22.5 is %v, want %v", got, want)
	}
}
