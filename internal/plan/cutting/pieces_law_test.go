package cutting

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// The law of cutting maps: the pieces that a stretch of strip is cut into lie in it beside each other, each as it is cut, and where the
// strip is cut without waste they cover it.

// doubled is twice the area of an outline, above 0 where it goes clockwise on screen.
func doubled(o []measure.Point) (sum measure.NM) {
	const unit = 1000 // nanometres, so that squares of yards are counted
	for i, a := range o {
		b := o[(i+1)%len(o)]
		sum += a.X/unit*(b.Y/unit) - b.X/unit*(a.Y/unit)
	}
	return sum
}

// shapeOf is the sides of an outline and the turns between them, begun so that it is the same however the outline is turned.
func shapeOf(o []measure.Point) string {
	var sides [][2]int
	for i, a := range o {
		b, c := o[(i+1)%len(o)], o[(i+2)%len(o)]
		in, out := measure.Vec{X: float64(b.X - a.X), Y: float64(b.Y - a.Y)}, measure.Vec{X: float64(c.X - b.X), Y: float64(c.Y - b.Y)}
		turn := math.Atan2(in.Cross(out), in.Dot(out)) * 180 / math.Pi
		sides = append(sides, [2]int{int(math.Round(in.Length() / 1e5)), int(math.Round(turn * 10))})
	}
	best := ""
	for range sides {
		sides = append(sides[1:], sides[0])
		if text := fmt.Sprint(sides); best == "" || text < best {
			best = text
		}
	}
	return best
}

// inside says whether a point lies within an outline and not on its edge.
func inside(o []measure.Point, p measure.Vec) bool {
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if float64(b.X-a.X)*(p.Y-float64(a.Y))-float64(b.Y-a.Y)*(p.X-float64(a.X)) <= 1 {
			return false
		}
	}
	return true
}

func middleOf(o []measure.Point) (m measure.Vec) {
	for _, p := range o {
		m = m.Plus(measure.Vec{X: float64(p.X), Y: float64(p.Y)}.Times(1 / float64(len(o))))
	}
	return m
}

// illMapped says how the outlines of a stretch's pieces are not its pieces.
func illMapped(p *Plan, c *Cut) error {
	list, per, covered := p.PieceOutlines(c), 1, measure.NM(0)
	var piece *Piece
	if c.Use == ForPieces {
		piece = &p.Lines[c.Lines[0]].Piece
		per = map[Method]int{OnceOnDiagonal: 2, TwiceOnDiagonal: 4, EndPairs: 2}[piece.Method]
		per = max(per, 1)
	}
	if len(list) != c.Units*per {
		return fmt.Errorf("%d pieces are drawn of %d cut-offs", len(list), c.Units)
	}
	for n, o := range list {
		if doubled(o) <= 0 {
			return fmt.Errorf("piece %d goes round the wrong way", n)
		}
		covered += doubled(o)
		for _, q := range o {
			if q.X < 0 || q.X > c.Length()+measure.NM(c.Units) || q.Y < 0 || q.Y > measure.NM(c.Rows)*c.AcrossCut {
				return fmt.Errorf("piece %d leaves its stretch: %v", n, o)
			}
		}
		if piece != nil && piece.Method != Joined && piece.Method != Lengthwise && shapeOf(o) != shapeOf(piece.PieceOutline()) &&
			!(piece.Method == Whole && shapeOf(o) == shapeOf(rectangle(0, 0, c.AlongCut, c.AcrossCut))) { // a border's strip is cut longer
			return fmt.Errorf("piece %d is %v, cut is %v", n, shapeOf(o), shapeOf(piece.PieceOutline()))
		}
		for k := max(0, n-8); k < n; k++ {
			if m := middleOf(o); inside(list[k], m) || inside(o, middleOf(list[k])) {
				return fmt.Errorf("pieces %d and %d overlap", k, n)
			}
		}
	}
	whole := measure.NM(c.Units) * doubled(rectangle(0, 0, c.AlongCut, c.AcrossCut))
	if c.Nests { // but for the slants at either end
		whole = measure.NM(c.Units) * doubled(piece.PieceOutline())
	}
	if off := float64(covered)/float64(whole) - 1; off > 1e-3 || off < -1e-3 {
		return fmt.Errorf("pieces cover %d of %d", covered, whole)
	}
	return nil
}

func TestCuttingMaps(t *testing.T) {
	seen := map[string]int{}
	for _, n := range everyTop(30) {
		for _, o := range n.variants[:2] {
			p := planned(n.Top, o)
			if len(p.Faults) > 0 {
				continue
			}
			for i := range p.Fabrics {
				for _, s := range p.Fabrics[i].Strips {
					for k := range s.Cuts {
						c := &s.Cuts[k]
						if err := illMapped(p, c); err != nil {
							t.Fatalf("%s, %s, %+v: %v", n.name, p.Fabrics[i].Name, c, err)
						}
						if c.Use == ForPieces {
							seen[p.Lines[c.Lines[0]].Piece.Method.String()] += boolInt(c.Rows == 1)
							seen["in rows"] += boolInt(c.Rows > 1)
						}
					}
				}
			}
		}
	}
	for _, want := range []string{"whole", "once-on-diagonal", "twice-on-diagonal", "nested", "end-pairs", "in rows"} {
		if seen[want] < 5 {
			t.Errorf("%s: only %d stretches", want, seen[want])
		}
	}
}

// TestCuttingMapsByHand: where the corners lie, worked out by hand: from the upper left corner of the stretch, the slanted cut of a pair of
// end pieces with the wide end of the left ones below, wedges with their wide end below and above by turns.
func TestCuttingMapsByHand(t *testing.T) {
	at := func(xy ...measure.NM) (o []measure.Point) {
		for i := 0; i < len(xy); i += 2 {
			o = append(o, measure.Point{X: xy[i], Y: xy[i+1]})
		}
		return o
	}
	size := func(m Method, hand Hand, across, along, wide, narrow measure.NM) Piece {
		return Piece{Hand: hand, CutSize: blocks.CutSize{Method: m, AcrossCut: across, AlongCut: along, WideCut: wide, NarrowCut: narrow}}
	}
	for _, c := range []struct {
		name  string
		piece Piece
		cut   Cut
		want  [][]measure.Point
		one   []measure.Point
	}{
		{"squares in two rows", size(Whole, Either, 4, 4, 0, 0), Cut{Units: 3, Rows: 2, AcrossCut: 4, AlongCut: 4},
			[][]measure.Point{at(0, 0, 4, 0, 4, 4, 0, 4), at(0, 4, 4, 4, 4, 8, 0, 8), at(4, 0, 8, 0, 8, 4, 4, 4)}, at(0, 0, 4, 0, 4, 4, 0, 4)},
		{"rectangles", size(Whole, Either, 2, 6, 0, 0), Cut{Units: 2, Rows: 1, AcrossCut: 2, AlongCut: 6},
			[][]measure.Point{at(0, 0, 6, 0, 6, 2, 0, 2), at(6, 0, 12, 0, 12, 2, 6, 2)}, at(0, 0, 6, 0, 6, 2, 0, 2)},
		{"halves", size(OnceOnDiagonal, Either, 4, 4, 0, 0), Cut{Units: 2, Rows: 1, AcrossCut: 4, AlongCut: 4},
			[][]measure.Point{at(0, 0, 4, 0, 0, 4), at(4, 0, 4, 4, 0, 4), at(4, 0, 8, 0, 4, 4), at(8, 0, 8, 4, 4, 4)}, at(0, 0, 4, 0, 0, 4)},
		{"quarters", size(TwiceOnDiagonal, Either, 4, 4, 0, 0), Cut{Units: 2, Rows: 2, AcrossCut: 4, AlongCut: 4},
			[][]measure.Point{at(0, 0, 4, 0, 2, 2), at(4, 0, 4, 4, 2, 2), at(4, 4, 0, 4, 2, 2), at(0, 4, 0, 0, 2, 2),
				at(0, 4, 4, 4, 2, 6), at(4, 4, 4, 8, 2, 6), at(4, 8, 0, 8, 2, 6), at(0, 8, 0, 4, 2, 6)}, at(0, 0, 4, 0, 2, 2)},
		{"left end pieces", size(EndPairs, Left, 6, 14, 9, 5), Cut{Units: 1, Rows: 1, AcrossCut: 6, AlongCut: 14},
			[][]measure.Point{at(0, 0, 5, 0, 9, 6, 0, 6), at(5, 0, 14, 0, 14, 6, 9, 6)}, at(0, 0, 5, 0, 9, 6, 0, 6)},
		{"right end pieces", size(EndPairs, Right, 6, 14, 9, 5), Cut{Units: 1, Rows: 1, AcrossCut: 6, AlongCut: 14},
			[][]measure.Point{at(0, 0, 9, 0, 5, 6, 0, 6), at(9, 0, 14, 0, 14, 6, 5, 6)}, at(0, 0, 9, 0, 5, 6, 0, 6)},
		{"wedges", size(Nested, Either, 6, 10, 10, 4), Cut{Units: 4, Rows: 1, AcrossCut: 6, AlongCut: 31, Nests: true},
			[][]measure.Point{at(3, 0, 7, 0, 10, 6, 0, 6), at(7, 0, 17, 0, 14, 6, 10, 6), at(17, 0, 21, 0, 24, 6, 14, 6), at(21, 0, 31, 0, 28, 6, 24, 6)}, at(3, 0, 7, 0, 10, 6, 0, 6)},
	} {
		p := &Plan{Lines: []Line{{Piece: c.piece}}}
		c.cut.Lines = []int{0}
		if got := p.PieceOutlines(&c.cut); fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if got := c.piece.PieceOutline(); !slices.Equal(got, c.one) {
			t.Errorf("%s: one is %v, want %v", c.name, got, c.one)
		}
		if c.piece.Method == Nested && fmt.Sprint(c.piece.Row(4)) != fmt.Sprint(c.want) {
			t.Errorf("a row of %s is %v", c.name, c.piece.Row(4))
		}
		other := c.cut // strips that nothing of one line is cut from are drawn as lengths
		other.Use = ForJoining
		if got, want := p.PieceOutlines(&other)[0], rectangle(0, 0, c.cut.AlongCut, c.cut.AcrossCut); !slices.Equal(got, want) {
			t.Errorf("%s, to be joined: %v", c.name, got)
		}
		if other = c.cut; c.piece.Method != Whole { // nor what supplies several
			other.Lines = []int{0, 0}
			if got, want := p.PieceOutlines(&other)[0], rectangle(0, 0, c.cut.AlongCut, c.cut.AcrossCut); !slices.Equal(got, want) {
				t.Errorf("%s, of two lines: %v", c.name, got)
			}
		}
	}
}

// TestRawOutlines: cut outlines worked out by hand: a side moved out by its own allowance, a corner in the middle of a straight side, and
// a tip cut off square a quarter of an inch beyond its finished corner.
func TestRawOutlines(t *testing.T) {
	near := func(name string, got []measure.Vec, want ...float64) {
		t.Helper()
		for i := range max(len(got), len(want)/2) {
			if 2*len(got) != len(want) || math.Abs(got[i].X-want[2*i]) > 1e-6 || math.Abs(got[i].Y-want[2*i+1]) > 1e-6 {
				t.Errorf("%s: %v, want %v", name, got, want)
				return
			}
		}
	}
	square := []measure.Vec{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}
	near("a square, each side by its own", RawOutline(square, Allowances{Sides: func(i int) float64 { return float64(i + 1) }}), -4, -1, 12, -1, 12, 13, -4, 13)
	straight := []measure.Vec{{}, {X: 4}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}
	near("a corner in a straight side", RawOutline(straight, Allowances{Sides: func(int) float64 { return 2 }}), -2, -2, 4, -2, 12, -2, 12, 12, -2, 12)
	// A right angle's sharp corner lies sqrt 2 allowances out; flat at 1 it is cut where the way is 1 along the diagonal.
	flat := func(i int) bool { return i == 2 }
	d := 2 * (math.Sqrt2 - 0.5) * math.Sqrt2 // from the sharp corner along a side, where 1 of 2 sqrt 2 is kept
	near("a blunt corner", RawOutline(square, Allowances{Sides: func(int) float64 { return 2 }, Blunt: flat, Flat: 1}), -2, -2, 12, -2, 12, 12-d, 12-d, 12, -2, 12)
	d = (math.Sqrt2*2 - (math.Sqrt2*2 - 0.5)) * math.Sqrt2
	near("a corner blunt by a hair", RawOutline(square, Allowances{Sides: func(int) float64 { return 2 }, Blunt: flat, Flat: 2*math.Sqrt2 - 0.5}), -2, -2, 12, -2, 12, 12-d, 12-d, 12, -2, 12)
	near("one that does not reach so far", RawOutline(square, Allowances{Sides: func(int) float64 { return 2 }, Blunt: flat, Flat: 2 * math.Sqrt2}), -2, -2, 12, -2, 12, 12, -2, 12)
	near("a template's square", TemplateOutline(square, 1), -1, -1, 11, -1, 11, 11, -1, 11)
	// A wedge's tip of 45 degrees: two corners, a seam allowance beyond the finished one, tan 22.5 of it to either side less what the sides lie out.
	wedge := []measure.Vec{{}, {X: 10 * math.Tan(math.Pi/8), Y: 10}, {X: -10 * math.Tan(math.Pi/8), Y: 10}}
	half := 1/math.Cos(math.Pi/8) - math.Tan(math.Pi/8)
	low := 10*math.Tan(math.Pi/8) + 1/math.Cos(math.Pi/8) + math.Tan(math.Pi/8)
	near("a template's wedge", TemplateOutline(wedge, 1), -half, -1, half, -1, low, 11, -low, 11)
}
