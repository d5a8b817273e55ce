package repeats

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// TestWholeRepeats: lengths are rounded up to whole repeats as they are counted off one by one; where nothing repeats they stay as they are.
// What is cut several times over begins on a whole repeat each time.
func TestWholeRepeats(t *testing.T) {
	for length := range measure.NM(40) {
		for repeat := range measure.NM(12) {
			count, end := 0, length // of repeats that hold the length
			if repeat > 0 {
				for end = 0; end < length; end += repeat {
					count++
				}
			} else {
				count = int(length)
			}
			buy := end
			if repeat > 0 && length > 0 {
				buy += repeat
			}
			if got := Whole(length, repeat); got != count || upTo(length, repeat) != end || ToBuy(length, repeat) != buy {
				t.Fatalf("%d by %d: %d repeats, %d long, buy %d", length, repeat, got, upTo(length, repeat), ToBuy(length, repeat))
			}
			for times := range 4 {
				want := length
				for range times - 1 {
					want += end
				}
				if got := (&Fitting{LengthCut: length, Times: times}).TotalCut(repeat); got != want {
					t.Fatalf("%d by %d, %d times, take %d, not %d", length, repeat, times, got, want)
				}
			}
			for from := range measure.NM(30) { // places of the print from another on
				want := from
				for repeat > 0 && (want-length)%repeat != 0 {
					want++
				}
				if got := after(length, from, repeat); got != want {
					t.Fatalf("the place %d of each %d from %d on is %d, not %d", length, repeat, from, got, want)
				}
			}
		}
	}
	if mod(-1, 5) != 4 || mod(-5, 5) != 0 || mod(7, 0) != 0 {
		t.Error("places before the beginning of the print are elsewhere in the repeat")
	}
}

// extent is how wide a convex outline is at its widest: of two chains of sides from its highest to its lowest place, at each corner's level.
func extent(outline []measure.Point) float64 {
	most := 0.0
	for _, at := range outline {
		var xs []float64
		for i, p := range outline {
			q := outline[(i+1)%len(outline)]
			if p.Y == at.Y {
				xs = append(xs, float64(p.X))
			}
			if (p.Y < at.Y) != (q.Y < at.Y) && p.Y != q.Y {
				xs = append(xs, float64(p.X*(q.Y-at.Y)+q.X*(at.Y-p.Y))/float64(q.Y-p.Y))
			}
		}
		most = max(most, slices.Max(xs)-slices.Min(xs))
	}
	return most
}

// TestWidestAndHighest of outlines by their corners' levels, and their bounds, wherever they lie.
func TestWidestAndHighest(t *testing.T) {
	r := rand.New(rand.NewPCG(42, 1))
	for range 300 {
		outline := invented(r)
		for i := range outline {
			outline[i] = measure.Point{X: outline[i].X/inch(0.01) - 300, Y: outline[i].Y/inch(0.01) + measure.NM(r.IntN(9)) - 200}
		}
		turned := slices.Clone(outline)
		low, high := outline[0], outline[0]
		for i, p := range outline {
			turned[i] = measure.Point{X: p.Y, Y: p.X}
			low, high = measure.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, measure.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
		}
		if got := widest(outline); math.Abs(float64(got)-extent(outline)) > 0.51 {
			t.Fatalf("%v is %d wide, not %g", outline, got, extent(outline))
		}
		if got := highest(outline); math.Abs(float64(got)-extent(turned)) > 0.51 {
			t.Fatalf("%v is %d high, not %g", outline, got, extent(turned))
		}
		if l, h := bounds(outline); l != low || h != high {
			t.Fatalf("%v lies within %v and %v", outline, l, h)
		}
	}
}

// TestOutlinesOverlap by more than two nanometers, whichever way they lie to each other; what only touches, or has a corner twice, does not.
func TestOutlinesOverlap(t *testing.T) {
	square := func(x, y, side measure.NM) []measure.Point {
		return []measure.Point{{X: x, Y: y}, {X: x + side, Y: y}, {X: x + side, Y: y + side}, {X: x, Y: y + side}}
	}
	diamond := func(x, y, half measure.NM) []measure.Point {
		return []measure.Point{{X: x, Y: y - half}, {X: x + half, Y: y}, {X: x, Y: y + half}, {X: x - half, Y: y}}
	}
	one := square(1000, 2000, 500)
	for _, c := range []struct {
		other    []measure.Point
		overlaps bool
	}{
		{square(1500, 2000, 500), false}, {square(1498, 2000, 500), false}, {square(1497, 2000, 500), true}, {square(503, 2000, 500), true}, {square(502, 2000, 500), false},
		{square(1000, 2498, 500), false}, {square(1000, 2497, 500), true}, {square(1000, 1502, 500), false}, {square(1000, 1503, 500), true},
		{square(1497, 2497, 500), true}, {square(1497, 2498, 500), false}, {square(1100, 2100, 10), true},
		{diamond(1600, 2600, 200), false}, {diamond(1600, 2600, 210), true}, {diamond(900, 1900, 200), false}, {diamond(900, 1900, 210), true},
		{append(square(1497, 2000, 500), measure.Point{X: 1497, Y: 2500}), true}, {append(square(1500, 2000, 500), measure.Point{X: 1500, Y: 2500}), false},
	} {
		if overlap(one, c.other) != c.overlaps || overlap(c.other, one) != c.overlaps {
			t.Errorf("that %v overlaps is %v one way, %v the other", c.other, overlap(one, c.other), overlap(c.other, one))
		}
	}
}

// TestBehindEachOther: what is put behind another fitting is moved as a whole, to the first place of the print that is free; the length is that
// from the first strip to the last.
func TestBehindEachOther(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 49))
	strip := func(at, high measure.NM) Strip {
		return Strip{Min: measure.Point{X: 1, Y: at}, Max: measure.Point{X: 9, Y: at + high}, Pieces: []Placed{{2, measure.Point{X: 3, Y: at - 1}}, {1, measure.Point{X: 5, Y: at}}}}
	}
	for range 500 {
		along := measure.NM(r.IntN(9))
		f := &Fitting{}
		var want []Strip
		end, begins := measure.NM(0), measure.NM(0)
		for n := range 1 + r.IntN(3) {
			at, g := measure.NM(r.IntN(6)), &Fitting{}
			from := at
			for range 1 + r.IntN(3) {
				high := measure.NM(1 + r.IntN(5))
				g.Strips, at = append(g.Strips, strip(at, high)), at+high
			}
			g.LengthCut = at - from
			by := measure.NM(0)
			if n == 0 {
				begins = from
			} else if along == 0 {
				by = end - from
			} else {
				for by = -100 * along; from+by < end; by += along {
				}
			}
			for _, s := range g.Strips {
				want = append(want, strip(s.Min.Y+by, s.Max.Y-s.Min.Y))
			}
			end = at + by
			f.add(g, along)
		}
		if !reflect.DeepEqual(f.Strips, want) || f.LengthCut != end-begins {
			t.Fatalf("after each %d: %v, %d long, not %v, %d long", along, f.Strips, f.LengthCut, want, end-begins)
		}
	}
}

// TestLanes: pieces in strips along the selvages. Each sort of piece has a length of its own behind the one before, from its place of the print on;
// its strips lie side by side as often as the print has its place across, each as long as its share of the pieces. More than 100 of a strip are
// cut several times over, the same each time.
func TestLanes(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 99))
	large, over := 0, 0
	for range 600 {
		c := Cloth{Print: Print{measure.NM(r.IntN(14)), measure.NM(r.IntN(14))}, UsableWidth: measure.NM(20 + r.IntN(20)), Lengthwise: true, Mark: measure.NM(r.IntN(4))}
		var pieces []Piece
		for range 1 + r.IntN(3) {
			x, y, w, h := measure.NM(r.IntN(30)), measure.NM(r.IntN(30)), measure.NM(3+r.IntN(12)), measure.NM(3+r.IntN(12))
			if r.IntN(3) == 0 {
				w = max(w, c.UsableWidth-x)
			}
			pieces = append(pieces, Piece{[]measure.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}, r.IntN(9) * (1 + 40*r.IntN(3)*r.IntN(2))})
		}
		f := Fit(c, pieces, 0)
		want := lanesPlainly(c, pieces)
		large, over = large+len(want.TooLarge), over+map[bool]int{true: 1}[want.Times > 1]
		if !reflect.DeepEqual(f, want) {
			t.Fatalf("%+v, %v:\n%+v\n%+v", c, pieces, f, want)
		}
	}
	if large < 10 || over < 50 {
		t.Errorf("%d pieces are too large, %d fittings are cut several times over", large, over)
	}
}

// lanesPlainly is what TestLanes says, of rectangles.
func lanesPlainly(c Cloth, pieces []Piece) *Fitting {
	f := &Fitting{Times: 1}
	rounded := func(v, step measure.NM) measure.NM {
		for step > 0 && v%step != 0 {
			v++
		}
		return v
	}
	starts := func(p Piece) (list []measure.NM) { // where its strips begin, across
		w := rounded(p.Outline[1].X-p.Outline[0].X, c.Mark)
		first := measure.NM(0)
		if c.Across > 0 {
			first = p.Outline[0].X % c.Across
		}
		for x := first; x+w <= c.UsableWidth; x += rounded(w, c.Across) {
			list = append(list, x)
		}
		return list
	}
	most := 0
	for i, p := range pieces {
		if n := len(starts(p)); n == 0 && p.Wanted > 0 {
			f.TooLarge = append(f.TooLarge, i)
		} else if p.Wanted > 0 {
			most = max(most, (p.Wanted+n-1)/n)
		}
	}
	for f.Times*100 < most {
		f.Times++
	}
	begin, end := measure.NM(-1), measure.NM(0)
	for i, p := range pieces {
		at := starts(p)
		if p.Wanted == 0 || len(at) == 0 {
			continue
		}
		wanted := (p.Wanted + f.Times - 1) / f.Times
		each := (wanted + len(at) - 1) / len(at)
		low, high := p.Outline[0], p.Outline[2]
		y := measure.NM(0)
		if begin >= 0 {
			y = end
		}
		for c.Along > 0 && (y-low.Y)%c.Along != 0 {
			y++
		}
		if begin < 0 {
			begin = y
		}
		end = y + high.Y - low.Y + measure.NM(each-1)*rounded(high.Y-low.Y, c.Along)
		for _, x := range at {
			s := Strip{Min: measure.Point{X: x, Y: y}, Max: measure.Point{X: x + rounded(high.X-low.X, c.Mark), Y: end}}
			for k := 0; k < each && wanted > 0; k++ {
				s.Pieces = append(s.Pieces, Placed{i, measure.Point{X: x - low.X, Y: y + measure.NM(k)*rounded(high.Y-low.Y, c.Along) - low.Y}})
				wanted--
			}
			if len(s.Pieces) > 0 {
				f.Strips = append(f.Strips, s)
			}
		}
	}
	f.LengthCut = end - max(begin, 0)
	return f
}

// TestStripsOnTheMarks: strips across the cloth are as wide as their pieces reach, up to the next mark of the ruler.
func TestStripsOnTheMarks(t *testing.T) {
	c := Cloth{Print: Print{inch(4), inch(6)}, UsableWidth: inch(40), Mark: inch(1. / 8)}
	for _, high := range []float64{2, 2.01, 2.125, 2.13} {
		f := Fit(c, []Piece{{shaped(1, 1, 3, 1, 3, 1+high, 1, 1+high), 30}}, 1000)
		for i, s := range f.Strips {
			if got, want := s.Max.Y-s.Min.Y, inch(math.Ceil(high*8)/8); got != want {
				t.Errorf("strip %d for what is %g in high is %.3f in wide, not %.3f", i, high, inches(got), inches(want))
			}
		}
	}
}

// TestNothingToFit: of no pieces, or none that the cloth holds, nothing is cut, in no steps.
func TestNothingToFit(t *testing.T) {
	c := Cloth{Print: Print{inch(4), inch(6)}, UsableWidth: inch(4)}
	long := Piece{shaped(0, 0, 4.1, 0, 4.1, 1, 0, 1), 3}
	for _, pieces := range [][]Piece{nil, {{long.Outline, 0}}, {long}} {
		want := &Fitting{Times: 1}
		if len(pieces) > 0 && pieces[0].Wanted > 0 {
			want.TooLarge = []int{0}
		}
		if got := Fit(c, pieces, 5); !reflect.DeepEqual(got, want) {
			t.Errorf("%v: %+v", pieces, got)
		}
	}
}

// TestStepsThatAreEnough: a fitting in just the steps that it takes is the same, and has not ended early; with one less it says that there may be
// a better one. Of more than six sorts that holds for half of the steps.
func TestStepsThatAreEnough(t *testing.T) {
	r := rand.New(rand.NewPCG(77, 7))
	for n := range 24 {
		c := Cloth{Print: Print{inch(float64(2 + r.IntN(6))), inch(float64(2 + r.IntN(6)))}, UsableWidth: inch(12)}
		pieces := make([]Piece, 1+n%3)
		share := 1
		if n%8 == 7 {
			c.Across, pieces, share = inch(7), make([]Piece, mostTogether+1), 2
		}
		for i := range pieces {
			pieces[i] = Piece{invented(r), 1 + r.IntN(2)}
		}
		f := Fit(c, pieces, 4_000_000)
		if f.Ended || f.Steps < 2 {
			t.Fatalf("case %d takes %d steps", n, f.Steps)
		}
		if g := Fit(c, pieces, share*f.Steps); !reflect.DeepEqual(f, g) {
			t.Errorf("case %d: in %d steps it is %+v, not %+v", n, f.Steps, g, f)
		}
		if g := Fit(c, pieces, share*(f.Steps-1)); !g.Ended {
			t.Errorf("case %d: in %d steps less than it takes, %d, it says that nothing is better", n, share, f.Steps)
		}
	}
}

// TestManySortsInFewSteps: of more than six sorts half of the steps go to all together. Where they are not enough, the rest goes to six at a time in
// the order of the print, each share by their number; behind each other they are taken where they are shorter, and it is said that there may be
// a better way.
func TestManySortsInFewSteps(t *testing.T) {
	r := rand.New(rand.NewPCG(55, 5))
	taken := 0
	for n := range 30 {
		c := Cloth{Print: Print{inch(7), inch(float64(3 + r.IntN(6)))}, UsableWidth: inch(15)}
		pieces := make([]Piece, mostTogether+1+r.IntN(8))
		for i := range pieces {
			pieces[i] = Piece{invented(r), 1 + r.IntN(4)}
		}
		steps := []int{0, 150, 1500}[n%3]
		f := Fit(c, pieces, steps)
		g := &fitting{cloth: c, pieces: pieces, Fitting: &Fitting{Times: 1}}
		g.prepare()
		g.scale()
		order := slices.Clone(g.sorts)
		slices.SortStableFunc(order, func(a, b sort) int { return int(a.phase - b.phase) })
		whole := g.part(g.sorts, steps/2)
		if whole.left >= 0 {
			continue
		}
		left := steps - (steps/2 - whole.left)
		want := whole.Fitting
		behind := &Fitting{}
		for len(order) > 0 {
			some := min(6, len(order))
			share := left * some / len(order)
			part := g.part(order[:some], max(0, share))
			behind.add(part.Fitting, c.Along)
			left, order = left-(share-part.left), order[some:]
		}
		if behind.LengthCut < want.LengthCut {
			want, taken = behind, taken+1
		}
		if !reflect.DeepEqual(f.Strips, want.Strips) || f.LengthCut != want.LengthCut || !f.Ended || f.Steps != max(steps-left, steps+1) {
			t.Errorf("case %d: %.2f in, ended %v after %d steps, not %.2f in after %d", n, inches(f.LengthCut), f.Ended, f.Steps, inches(want.LengthCut), max(steps-left, steps+1))
		}
	}
	if taken < 3 {
		t.Errorf("%d times groups are shorter", taken)
	}
}

// TestStripsThatMayFollow: after a strip there may come any that gives something that is wanted, at its next place of the print, but for those before
// which another would fit whole; the first may be any.
func TestStripsThatMayFollow(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 3))
	kept, dropped := 0, 0
	for range 60 {
		c, pieces := smallCase(r)
		f := &fitting{cloth: c, pieces: pieces, left: 10_000, Fitting: &Fitting{Times: 1}}
		f.prepare()
		f.rows()
		if len(f.sorts) < 2 {
			continue
		}
		n := &node{pattern: -1}
		for i := range f.sorts {
			n.wanted, n.missing = append(n.wanted, f.sorts[i].wanted), n.missing+f.sorts[i].wanted
		}
		for n.missing > 0 {
			got := f.next(n)
			var want []node
			first := measure.NM(math.MaxInt64)
			for i, p := range f.patterns {
				m := node{pattern: i, wanted: slices.Clone(n.wanted), begin: n.begin, from: n, at: p.phase}
				for s, count := range p.counts {
					m.wanted[s] = max(0, m.wanted[s]-count)
					m.missing += m.wanted[s]
				}
				for n.pattern >= 0 && m.at < n.end {
					m.at += c.Along
				}
				if n.pattern < 0 {
					m.begin = p.phase
				}
				if m.end = m.at + p.height; m.missing < n.missing {
					want, first = append(want, m), min(first, m.end)
				}
			}
			if n.pattern >= 0 {
				all := len(want)
				want = slices.DeleteFunc(want, func(m node) bool { return m.at >= first })
				kept, dropped = kept+len(want), dropped+all-len(want)
			}
			if len(got) != len(want) {
				t.Fatalf("%v, %v: %d strips may follow, not %d", c, pieces, len(got), len(want))
			}
			for i, m := range got {
				if one := *m; one.least < one.end-one.begin || one.least%c.Along != 0 {
					t.Fatalf("at %d to %d at least %d is taken", one.begin, one.end, one.least)
				} else if one.least = 0; !reflect.DeepEqual(one, want[i]) {
					t.Fatalf("%+v may follow, not %+v", one, want[i])
				}
			}
			n = got[r.IntN(len(got))]
		}
	}
	if kept < 50 || dropped < 20 {
		t.Errorf("%d strips may follow, %d are left out", kept, dropped)
	}
}

// TestHundredOfAStrip: a strip along the selvages has up to 100 pieces, and one of more is cut several times over.
func TestHundredOfAStrip(t *testing.T) {
	c := Cloth{Print: Print{2, 0}, UsableWidth: 4, Lengthwise: true}
	for wanted, times := range map[int]int{1: 1, 200: 1, 201: 2, 400: 2, 401: 3} {
		f := Fit(c, []Piece{{[]measure.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 3}, {X: 0, Y: 3}}, wanted}}, 0)
		if f.Times != times {
			t.Errorf("%d pieces in two strips are cut %d times over, not %d", wanted, f.Times, times)
		}
	}
}
