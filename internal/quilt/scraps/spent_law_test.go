package scraps

import (
	"reflect"
	"slices"
	"testing"
)

// spending is work that a budget bounds: what is left of it afterwards, below nothing where the work was given up, and what it came to.
type spending func(budget int) (left int, result any)

// checkSpent holds the law of budgets: whoever has as many steps as the whole work takes, or more, does all of it, and has left what it did
// not take; whoever has fewer is given up when those are spent and not before. A deal would otherwise change where nothing of the layout did.
func checkSpent(t *testing.T, name string, least int, work spending) {
	t.Helper()
	const ample = 1 << 30
	left, whole := work(ample)
	takes := ample - left
	if takes < least {
		t.Errorf("%s takes %d steps, expected %d or more", name, takes, least)
	}
	stop := max(1, takes/40)
	var budgets []int
	for b := 0; b < takes; b += stop {
		budgets = append(budgets, b)
	}
	for b := range min(40, takes) {
		budgets = append(budgets, b, takes-1-b)
	}
	for _, b := range append(budgets, takes, takes+1, takes+2, takes+stop) {
		left, result := work(b)
		switch {
		case b < takes && left >= 0:
			t.Errorf("%s takes %d steps: with %d it is given up while %d are left", name, takes, b, left)
		case b >= takes && (left != b-takes || !reflect.DeepEqual(result, whole)):
			t.Errorf("%s takes %d steps: with %d there are %d left, and it comes to %v, expected %v", name, takes, b, left, result, whole)
		}
	}
}

// TestSpentBeforeGivenUp holds the law of budgets for all that is bounded by one.
func TestSpentBeforeGivenUp(t *testing.T) {
	full := make([]Place, 7) // which all touch, with six fabrics
	for i := range full {
		full[i].Choices = []int{0, 1, 2, 3, 4, 5}
		for n := range full {
			if n != i {
				full[i].Neighbours = append(full[i].Neighbours, int32(n))
			}
		}
	}
	checkSpent(t, "the search", 1000, func(budget int) (int, any) {
		s := newSolver(full, 1)
		s.left = budget
		return s.left, s.assign()
	})
	for _, count := range []int{33, 150} {
		places := uneasy(count, 0)
		checkSpent(t, "evening out", 0, func(budget int) (int, any) {
			s := dealtFirst(places)
			s.even = budget
			s.balance()
			return s.even, s.fabric
		})
	}
	few := make([]Place, 9) // in a row, two of which may have one fabric alone
	for i := range few {
		few[i].Choices = []int{0, 1, 2}
		if i%5 == 0 {
			few[i].Barred = []int{1, 2}
		}
		for _, n := range []int{i - 1, i + 1} {
			if n >= 0 && n < len(few) {
				few[i].Neighbours = append(few[i].Neighbours, int32(n))
			}
		}
	}
	for chains := 1; chains <= 2; chains++ {
		detours := func(left, even int) *detour {
			s := dealtFirst(few)
			s.even = even
			d := &detour{s, s.pools(), 0, left} // which none is as even as
			d.found(chains)
			return d
		}
		const ample = 1 << 30
		checkSpent(t, "looking for detours", 9, func(budget int) (int, any) { d := detours(budget, ample); return d.left, d.fabric })
		checkSpent(t, "what detours cost", 100, func(budget int) (int, any) { d := detours(ample, budget); return d.even, d.fabric })
	}
}

// TestWindowsSpent holds the same for windows of places.
func TestWindowsSpent(t *testing.T) {
	for _, count := range []int{30, 61, 120} {
		places := uneasy(count, 0)
		for p := int32(0); int(p) < count; p += 7 {
			checkSpent(t, "a window", 1, func(budget int) (int, any) {
				s := dealtFirst(places)
				w := window{solver: s, pools: s.pools(), places: (&window{solver: s}).touching(p), left: budget, last: -1 << 40, before: s.squares()}
				for _, q := range w.places {
					w.alike += s.alike(q, s.fabric[q])
					w.take(q)
				}
				w.squares = s.squares()
				w.deal(0)
				return w.left, s.fabric
			})
		}
	}
}

// TestLinesSpent holds the same for lines: trades that better them, some places dealt anew, and a line of columns.
func TestLinesSpent(t *testing.T) {
	places := uneasy(90, 14)
	lines := func(budget int, work func(*lineSpread)) (int, any) {
		t := dealtFirst(places)
		s := lineSpread{solver: t, crowds: newCrowds(40, len(t.marked)), with: make([][]int32, len(t.marked)), at: make([]int32, len(places)), sums: make([]int32, len(t.marked)), left: budget}
		s.begin(t.pools()[0].places)
		work(&s)
		return s.left, t.fabric
	}
	checkSpent(t, "trading along lines", 100, func(budget int) (int, any) { return lines(budget, func(s *lineSpread) { s.settleLines() }) })
	for p := range int32(3) {
		left := func(budget int) (int, any) {
			return lines(budget, func(s *lineSpread) { s.dealAnew(p, 3) })
		}
		if whole, _ := left(1 << 30); 1<<30-whole < maxRedealSteps {
			checkSpent(t, "a few places dealt anew", 20, left)
		}
	}
	long := make([]Place, 40)
	for i := range long {
		long[i] = Place{Choices: []int{0, 1, 2}, Line: 1 + i/20}
	}
	checkSpent(t, "spreading columns", 500, func(budget int) (int, any) {
		s := newSolver(long, 1)
		for i := range long {
			s.put(int32(i), i/7%3)
		}
		sp := s.inLines(budget)
		for sp.sweep() {
		}
		return sp.left, s.fabric
	})
}

// TestSetsSpent holds the same for webs that change their sets about, and for webs that are packed.
func TestSetsSpent(t *testing.T) {
	s := besideAll(8, 16, 8)
	for w := range s.Webs {
		s.Webs[w].Beside = slices.DeleteFunc(s.Webs[w].Beside, func(n Near) bool { return (int(n.Web)+w)%3 > 0 })
		s.Webs[w].Next = []int32{int32((w + 1) % 8), int32((w + 7) % 8)}
		s.Webs[w].Lines = Lines{1 + int32(w)/4, 5 + int32(w)%4}
	}
	checkSpent(t, "bettering sets", 50, func(budget int) (int, any) {
		a := newAllotment(nil, s, [][]int{{0, 1}, {1, 2}, {2, 3}, {3, 4}}, 1)
		a.left = budget
		for w := range s.Webs {
			a.put(w, w/2)
		}
		a.improve()
		return a.left, a.of
	})
	for _, sets := range []int{4, 5} {
		for pairs := range 3 {
			checkSpent(t, "packing webs", 12, func(budget int) (int, any) {
				p := packing{StripSet: s, sewn: 1, order: s.largestFirst(), of: make([]int, len(s.Webs)), loads: make([][2]int, sets), left: budget, apart: true, pairs: pairs}
				for w := range p.of {
					p.of[w] = -1
				}
				found := p.fits(0, 0)
				return p.left, []any{found, slices.Clone(p.of)}
			})
		}
	}
}

// TestLinesAreGivenBack: once the work on a pool is done nothing of it is left in what the next one begins with.
func TestLinesAreGivenBack(t *testing.T) {
	places := uneasy(160, 14)
	s := lineSpread{solver: dealtFirst(places), crowds: newCrowds(40, 9), with: make([][]int32, 9), at: make([]int32, len(places)), sums: make([]int32, 9), left: 50_000}
	for _, pool := range s.pools() {
		traded := false
		s.each(pool, func() { traded = s.settleLines() })
		if used := slices.IndexFunc(s.with, func(list []int32) bool { return len(list) > 0 }); used >= 0 || !traded {
			t.Errorf("pool %d: fabric %d still has places %v, traded: %v", pool.number, used, s.with[used], traded)
		}
		if slices.ContainsFunc(s.crowds.counts, func(n int32) bool { return n != 0 }) {
			t.Errorf("pool %d is still counted in its lines", pool.number)
		}
	}
}
