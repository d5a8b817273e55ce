package blocks

import (
	"math"
	"testing"
)

// surd is a + b sqrt 2 in whole numbers: coordinates of the unit square, doubled, are such
// numbers, and so are areas, eightfold, without any rounding.
type surd struct{ a, b int }

func (s surd) minus(t surd) surd { return surd{s.a - t.a, s.b - t.b} }
func (s surd) plus(t surd) surd  { return surd{s.a + t.a, s.b + t.b} }
func (s surd) times(t surd) surd { return surd{s.a*t.a + 2*s.b*t.b, s.a*t.b + s.b*t.a} }

func (s surd) float() float64 { return float64(s.a) + float64(s.b)*math.Sqrt2 }

// doubled is twice a coordinate: k = sqrt 2 / 2.
func doubled(c Coord) surd {
	return [...]surd{Zero: {0, 0}, Short: {2, -1}, Mid: {1, 0}, Long: {0, 1}, Full: {2, 0}}[c]
}

// cross is four times the cross product of the ways from p to q and from p to r.
func cross(p, q, r Point) surd {
	ax, ay := doubled(q.X).minus(doubled(p.X)), doubled(q.Y).minus(doubled(p.Y))
	bx, by := doubled(r.X).minus(doubled(p.X)), doubled(r.Y).minus(doubled(p.Y))
	return ax.times(by).minus(ay.times(bx))
}

// area is eight times the area of an outline, exactly.
func area(outline []Point) surd {
	sum := surd{}
	for i := 1; i+1 < len(outline); i++ {
		sum = sum.plus(cross(outline[0], outline[i], outline[i+1]))
	}
	return sum
}

// TestPiecesFillTheSquare: in each turn the pieces' areas come to the square's, exactly, and
// every piece is convex and goes clockwise. (That none overlap is a law of the laid top.)
func TestPiecesFillTheSquare(t *testing.T) {
	for _, k := range Kinds() {
		for turns := range 4 {
			pieces := k.Turned(turns)
			if len(pieces) == 0 {
				continue // a kind whose pieces follow from its place in the grid
			}
			if sum := areaOf(pieces); sum != (surd{8, 0}) {
				t.Errorf("%s turned %d times: the pieces cover %v eighths of the square", k.Name, turns, sum)
			}
			for i, p := range pieces {
				for j := range p.Outline {
					n := len(p.Outline)
					if c := cross(p.Outline[j], p.Outline[(j+1)%n], p.Outline[(j+2)%n]); c.float() <= 0 {
						t.Errorf("%s turned %d times: piece %d turns the wrong way at corner %d", k.Name, turns, i, (j+1)%n)
					}
				}
			}
		}
	}
}

func areaOf(pieces []Piece) surd {
	sum := surd{}
	for _, p := range pieces {
		sum = sum.plus(area(p.Outline))
	}
	return sum
}

// TestFillNotices: a corner at the next division point, a piece less and a piece twice are
// all caught.
func TestFillNotices(t *testing.T) {
	for _, spoil := range []func(p []Piece) []Piece{
		func(p []Piece) []Piece { p[0].Outline[1].X--; return p },
		func(p []Piece) []Piece { return p[1:] },
		func(p []Piece) []Piece { return append(p, p[0]) },
	} {
		for _, k := range Kinds() {
			if pieces := k.Turned(0); len(pieces) > 1 && areaOf(spoil(pieces)) == (surd{8, 0}) {
				t.Errorf("%s: the spoilt pieces still fill the square", k.Name)
			}
		}
	}
}

// TestAreas holds the areas of pieces in a square of side 1 against the geometry of the
// half: a wedge has legs of k and an angle of 45 degrees, hence k k sin 45 / 2 = 0.176777; a
// half is 1/2; the kite is what two wedges leave of it.
func TestAreas(t *testing.T) {
	want := map[Shape]float64{Wedge: 0.176777, Kite: 0.146447, Background: 0.5 - 0.176777, HalfSquare: 0.5, Square: 1}
	seen := map[Shape]bool{}
	for _, k := range Kinds() {
		for _, p := range k.Pieces {
			w, ok := want[p.Shape]
			if !ok || p.Shape == Wedge && k.Height != AlongDiagonal {
				continue
			}
			seen[p.Shape] = true
			if got := area(p.Outline).float() / 8; math.Abs(got-w) > 5e-7 {
				t.Errorf("%s of a %s covers %.6f of the square, want %.6f", p.Shape, k.Name, got, w)
			}
		}
	}
	if len(seen) != len(want) {
		t.Errorf("only %d of %d shapes were seen", len(seen), len(want))
	}
}

// TestWedgeHeights measures each kind's wedges on the unit square, from the tip to the
// middle of the base, and holds them against the height that the kind promises.
func TestWedgeHeights(t *testing.T) {
	const side = 1_000_000_000
	for _, k := range Kinds() {
		for i, p := range k.Pieces {
			if p.Shape != Wedge {
				continue
			}
			at := func(c Coord) float64 { return doubled(c).float() / 2 * side }
			tip, a, b := p.Outline[0], p.Outline[1], p.Outline[2]
			height := math.Hypot((at(a.X)+at(b.X))/2-at(tip.X), (at(a.Y)+at(b.Y))/2-at(tip.Y))
			if got := float64(k.Height.Finished(side)); math.Abs(got-height) > 1 {
				t.Errorf("%s: wedge %d is %.1f high, the kind says %.0f", k.Name, i, height, got)
			}
			if base := math.Hypot(at(a.X)-at(b.X), at(a.Y)-at(b.Y)); math.Abs(base-2*math.Tan(math.Pi/8)*height) > 1 {
				t.Errorf("%s: wedge %d is %.1f wide and %.1f high, not an eighth of a turn", k.Name, i, base, height)
			}
		}
	}
}
