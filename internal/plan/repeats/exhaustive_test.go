package repeats

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// inch is a length in inches.
func inch(in float64) measure.NM { return measure.NM(math.Round(in * float64(measure.Inch))) }

// shaped is an outline by its corners in inches, in turn across and along.
func shaped(corners ...float64) []measure.Point {
	var list []measure.Point
	for i := 0; i+1 < len(corners); i += 2 {
		list = append(list, measure.Point{X: inch(corners[i]), Y: inch(corners[i+1])})
	}
	return list
}

// invented is a small piece of some shape somewhere on a print.
func invented(r *rand.Rand) []measure.Point {
	w, h := float64(1+r.IntN(5)), float64(1+r.IntN(4))
	x, y := float64(r.IntN(9))/2, float64(r.IntN(9))/2
	switch r.IntN(4) {
	case 0:
		return shaped(x+w/2-.2, y, x+w/2+.2, y, x+w, y+h, x, y+h)
	case 1:
		return shaped(x, y, x+w, y+h, x, y+h)
	case 2:
		return shaped(x+w/2, y, x+w, y+h/3, x+w/2, y+h, x, y+h/3)
	}
	return shaped(x, y, x+w, y, x+w, y+h, x, y+h)
}

// smallCase is cloth and pieces that can be tried out in full.
func smallCase(r *rand.Rand) (Cloth, []Piece) {
	c := Cloth{Print: Print{Across: inch(float64(2 + r.IntN(6))), Along: inch(float64(2 + r.IntN(6)))}, UsableWidth: inch(float64(5 + r.IntN(8)))}
	pieces := make([]Piece, 1+r.IntN(3))
	for i := range pieces {
		pieces[i] = Piece{invented(r), 1 + r.IntN(4)}
		if len(pieces) == 3 {
			pieces[i].Wanted = 1 + r.IntN(2)
		}
	}
	return c, pieces
}

// shared is the area, in square inches, that two convex outlines share: one is clipped by the sides of the other.
func shared(a, b []measure.Point) float64 {
	at := func(list []measure.Point) (v [][2]float64) {
		for _, p := range list {
			v = append(v, [2]float64{float64(p.X) / float64(measure.Inch), float64(p.Y) / float64(measure.Inch)})
		}
		return v
	}
	left, by := at(a), at(b)
	for i, p := range by {
		q := by[(i+1)%len(by)]
		within := func(c [2]float64) float64 { return (q[0]-p[0])*(c[1]-p[1]) - (q[1]-p[1])*(c[0]-p[0]) }
		var kept [][2]float64
		for k, c := range left {
			d := left[(k+1)%len(left)]
			u, v := within(c), within(d)
			if u >= 0 {
				kept = append(kept, c)
			}
			if (u > 0) != (v > 0) && u != v {
				t := u / (u - v)
				kept = append(kept, [2]float64{c[0] + t*(d[0]-c[0]), c[1] + t*(d[1]-c[1])})
			}
		}
		left = kept
	}
	area := 0.0
	for i, c := range left {
		d := left[(i+1)%len(left)]
		area += c[0]*d[1] - c[1]*d[0]
	}
	return math.Abs(area) / 2
}

// exhaustive tries all: every set of pieces that may begin a strip, every choice of its places, every order of strips.
type exhaustive struct {
	cloth  Cloth
	pieces []Piece
	rows   []tried
	best   measure.NM
	ends   map[string]measure.NM // where strips ended at the earliest that began at a place and left so much wanted
}

// tried is what a strip may give.
type tried struct {
	phase, height measure.NM
	counts        []int
}

// lift is how far a piece is moved along so that it begins in the first repeat.
func (e *exhaustive) lift(i int) (low, high measure.Point, phase measure.NM) {
	low, high = e.pieces[i].Outline[0], e.pieces[i].Outline[0]
	for _, p := range e.pieces[i].Outline {
		low.X, low.Y, high.X, high.Y = min(low.X, p.X), min(low.Y, p.Y), max(high.X, p.X), max(high.Y, p.Y)
	}
	phase = low.Y
	for phase >= e.cloth.Along {
		phase -= e.cloth.Along
	}
	return low, high, phase
}

// strips collects what strips can give that the pieces of a set share, the first of which begins it.
func (e *exhaustive) strips(first int, set []int) {
	_, _, begin := e.lift(first)
	row := tried{phase: begin}
	var outlines [][]measure.Point
	var of []int
	for _, i := range set {
		low, high, phase := e.lift(i)
		down := phase - begin
		if down < 0 {
			down += e.cloth.Along
		}
		row.height = max(row.height, down+high.Y-low.Y)
		x := low.X
		for x >= e.cloth.Across {
			x -= e.cloth.Across
		}
		for ; x+high.X-low.X <= e.cloth.UsableWidth; x += e.cloth.Across {
			outlines, of = append(outlines, moved(e.pieces[i].Outline, measure.Point{X: x - low.X, Y: down - low.Y})), append(of, i)
		}
	}
	over := make([][]bool, len(outlines))
	for a := range outlines {
		for b := range a {
			over[a] = append(over[a], shared(outlines[a], outlines[b]) >= 1e-6)
		}
	}
	for mask := range 1 << len(outlines) {
		counts, ok := make([]int, len(e.pieces)), true
		for a := range outlines {
			if mask>>a&1 == 0 {
				continue
			}
			counts[of[a]]++
			for b := range a {
				ok = ok && (mask>>b&1 == 0 || !over[a][b])
			}
		}
		if ok && mask > 0 && !slices.ContainsFunc(e.rows, func(t tried) bool {
			return t.phase == row.phase && t.height <= row.height && slices.Equal(t.counts, counts)
		}) {
			row.counts = counts
			e.rows = append(e.rows, row)
		}
	}
}

// after goes on with what is wanted behind a place of the cloth that began at another.
func (e *exhaustive) after(begin, end measure.NM, wanted []int) {
	if e.best > 0 && end-begin >= e.best && end > 0 {
		return
	}
	if !slices.ContainsFunc(wanted, func(w int) bool { return w > 0 }) {
		e.best = end - begin
		return
	}
	key := fmt.Sprint(begin, wanted)
	if at, ok := e.ends[key]; ok && at <= end && end > 0 { // whatever follows may follow there as well
		return
	}
	if e.ends == nil {
		e.ends = map[string]measure.NM{}
	}
	e.ends[key] = end
	for _, r := range e.rows {
		left, gives := slices.Clone(wanted), false
		for i := range left {
			gives = gives || left[i] > 0 && r.counts[i] > 0
			left[i] = max(0, left[i]-r.counts[i])
		}
		if !gives {
			continue
		}
		at := r.phase
		for at < end {
			at += e.cloth.Along
		}
		from := begin
		if end == 0 {
			from = at
		}
		e.after(from, at+r.height, left)
	}
}

// TestAgainstAllThereIs: small fittings take no more repeats than the best of all that can be cut by the same rule, and no less.
func TestAgainstAllThereIs(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	several, tried := 0, 0
	for n := range 2000 {
		cloth, pieces := smallCase(r)
		e := &exhaustive{cloth: cloth, pieces: pieces}
		wanted := make([]int, len(pieces))
		f := Fit(cloth, pieces, 1_000_000)
		spots := 0
		for i := range pieces {
			spots += int(cloth.UsableWidth/cloth.Across) + 1
			if !slices.Contains(f.TooLarge, i) {
				wanted[i] = pieces[i].Wanted
			}
		}
		if spots > 10 {
			continue
		}
		for set := 1; set < 1<<len(pieces); set++ {
			var list []int
			for i := range pieces {
				if set>>i&1 == 1 {
					list = append(list, i)
				}
			}
			for _, first := range list {
				e.strips(first, list)
			}
		}
		e.after(0, 0, wanted)
		tried++
		if len(pieces) > 1 {
			several++
		}
		if Whole(f.LengthCut, cloth.Along) != Whole(e.best, cloth.Along) || f.LengthCut < e.best {
			t.Fatalf("case %d: %v, %v: takes %.3f in, %.3f would do", n, cloth, pieces, inches(f.LengthCut), inches(e.best))
		}
	}
	if tried < 1500 || several < 900 {
		t.Errorf("only %d cases, %d of them of several pieces", tried, several)
	}
	t.Logf("%d cases, %d of several pieces", tried, several)
}

// TestManyAgainstAllThereIs: one piece each of seven sorts takes no more repeats than the best of all that can be cut, and no less; in
// fewer steps it takes no less, and in all no more than in groups one behind the other.
func TestManyAgainstAllThereIs(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	inFewSteps, inGroups := 0, 0
	for n := range 4 {
		cloth := Cloth{Print: Print{Across: inch(9), Along: inch(float64(3 + r.IntN(4)))}, UsableWidth: inch(9)}
		pieces := make([]Piece, mostTogether+1)
		for i := range pieces {
			x, y := float64(r.IntN(5)), float64(r.IntN(6))/2
			pieces[i] = Piece{shaped(x, y, x+2, y, x+3, y+2, x, y+2), 1}
		}
		f := Fit(cloth, pieces, 1_000_000)
		e := &exhaustive{cloth: cloth, pieces: pieces, best: f.LengthCut + 1}
		wanted := make([]int, len(pieces))
		for set := 1; set < 1<<len(pieces); set++ {
			var list []int
			for i := range pieces {
				wanted[i] = 1
				if set>>i&1 == 1 {
					list = append(list, i)
				}
			}
			for _, first := range list {
				e.strips(first, list)
			}
		}
		e.rows = slices.DeleteFunc(e.rows, func(a tried) bool {
			return slices.ContainsFunc(e.rows, func(b tried) bool {
				return a.phase == b.phase && b.height <= a.height && beats(b.counts, a.counts)
			})
		})
		e.after(0, 0, wanted)
		if f.Ended || Whole(f.LengthCut, cloth.Along) != Whole(e.best, cloth.Along) || f.LengthCut < e.best {
			t.Errorf("case %d: takes %.3f in, %.3f would do", n, inches(f.LengthCut), inches(e.best))
		}
		groups := &Fitting{}
		for _, some := range [][]Piece{pieces[:mostTogether], pieces[mostTogether:]} {
			groups.add(Fit(cloth, some, 1_000_000), cloth.Along)
		}
		for _, steps := range []int{0, 100, 2000} {
			less := Fit(cloth, pieces, steps)
			if less.LengthCut < e.best {
				t.Errorf("case %d: takes %.3f in after %d steps", n, inches(less.LengthCut), steps)
			}
			if steps == 2000 {
				inFewSteps, inGroups = inFewSteps+Whole(less.LengthCut, cloth.Along), inGroups+Whole(groups.LengthCut, cloth.Along)
			}
		}
		t.Logf("case %d: %.2f in, best %.2f, in groups %.2f", n, inches(f.LengthCut), inches(e.best), inches(groups.LengthCut))
	}
	if inFewSteps > inGroups {
		t.Errorf("%d repeats in few steps, %d in groups", inFewSteps, inGroups)
	}
}

func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }
