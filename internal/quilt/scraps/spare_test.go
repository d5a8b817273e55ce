package scraps

import (
	"slices"
	"testing"
)

// besideAll is webs that all lie beside each other, each of 8 wedges.
func besideAll(webs, perSet, most int) *StripSet {
	s := &StripSet{Strips: []int{0, 0}, Pools: [][]int{{0, 1, 2, 3, 4}}, Alike: true, PerSet: perSet, Most: most}
	for w := range webs {
		web := Web{Wedges: [2]int{8, 0}}
		for v := range webs {
			if v != w {
				web.Beside = append(web.Beside, Near{Web: int32(v), Mine: -1, Theirs: -1})
			}
		}
		s.Webs = append(s.Webs, web)
	}
	return s
}

// TestSpareSets: where webs that lie beside each other share a set, up to three sets more than the fewest are dealt, as long as each leaves
// fewer of them and no more are allowed. Of webs that all lie beside each other the pairs in one set are counted: n in a set are n(n-1)/2.
func TestSpareSets(t *testing.T) {
	for _, c := range []struct{ webs, perSet, most, sets, beside int }{
		{3, 16, 9, 3, 0}, // two fit into a set: 2 sets would do
		{3, 16, 3, 3, 0},
		{3, 16, 2, 2, 1},
		{6, 16, 9, 6, 0}, // 3 would do, and three more
		{6, 16, 5, 5, 1},
		{7, 24, 9, 6, 1}, // 3 would do
		{8, 24, 9, 6, 2},
		{8, 24, 4, 4, 4},
	} {
		d := DealSets(nil, besideAll(c.webs, c.perSet, c.most), 0)
		if len(d.Sets) != c.sets || d.Beside != c.beside || d.Mixed != 0 {
			t.Errorf("%d webs, %d wedges to a set and %d sets at the most: %d sets, %d neighbors in one, %d mixed; expected %d and %d", c.webs, c.perSet, c.most, len(d.Sets), d.Beside, d.Mixed, c.sets, c.beside)
		}
	}
}

// TestFewWebsAreLookedThrough: of 40 webs all ways into the sets are looked through, of 41 each goes into the first that has room. Of 10
// wedges to a set, webs of 4, 4, 3, 3, 3 and 3 take three sets where each goes into the first with room, and two as 4, 3 and 3; beside them are
// webs that fill a set each.
func TestFewWebsAreLookedThrough(t *testing.T) {
	for webs, want := range map[int]int{40: 40 - 6 + 2, 41: 41 - 6 + 3} {
		s := &StripSet{Strips: []int{0}, Pools: [][]int{{0, 1}}, Alike: true, PerSet: 10, Most: 100}
		for _, wedges := range []int{4, 4, 3, 3, 3, 3} {
			s.Webs = append(s.Webs, Web{Wedges: [2]int{wedges, 0}})
		}
		for len(s.Webs) < webs {
			s.Webs = append(s.Webs, Web{Wedges: [2]int{10, 0}})
		}
		of, sets := s.pack(nil, 1)
		loads := make([]int, sets)
		for w, set := range of {
			loads[set] += s.Webs[w].Wedges[0]
		}
		if sets != want || slices.Max(loads) > 10 || slices.Min(loads) == 0 {
			t.Errorf("%d webs take %d sets with %v wedges, expected %d", webs, sets, loads, want)
		}
		if found := s.apart(nil, 1, sets, 0); (found != nil) != (webs == 40) {
			t.Errorf("%d webs are kept apart: %v", webs, found)
		}
	}
}

// TestWhatNoSetHasLeft: wedges that no set has left for come from the first one, sewn once more. Two sets of 19 give 10 wedges of one order
// and 9 of the other each: 18 of the one that take 10 and 8 leave 9 and 10 of the other, one fewer than is wanted.
func TestWhatNoSetHasLeft(t *testing.T) {
	s := &StripSet{Strips: []int{0}, Pools: [][]int{{0, 1}}, PerSet: 19, Webs: []Web{{Wedges: [2]int{18, 0}}, {Wedges: [2]int{0, 20}}}}
	a := newAllotment(nil, s, [][]int{{0}, {1}}, 1)
	a.finish()
	want := [][]Part{{{0, [2]int{10, 0}}, {1, [2]int{8, 0}}}, {{1, [2]int{0, 10}}, {0, [2]int{0, 10}}}}
	if got := a.parts(); !slices.EqualFunc(got, want, slices.Equal[[]Part]) || a.most() != 2 || a.mixed != 2 {
		t.Errorf("webs come from %v, sets are sewn %d times, %d webs are mixed; expected %v", got, a.most(), a.mixed, want)
	}
}

// TestWindowsAreBetter: what a window deals anew is used more evenly, with no more neighbors alike, and another one begins with how even the
// deal is then; what it does not better stays.
func TestWindowsAreBetter(t *testing.T) {
	bettered := 0
	for _, count := range []int{30, 61, 120} {
		s := dealtFirst(uneasy(count, 0))
		w := window{solver: s, pools: s.pools()}
		for p := range int32(count) {
			w.left = windowWork
			was, squares, alike := slices.Clone(s.fabric), w.solver.squares(), s.alikeNow()
			found := w.around(p)
			switch {
			case found && (w.solver.squares() >= squares || s.alikeNow() > alike):
				t.Errorf("of %d places the window around %d comes from %d to %d, and from %d alike to %d", count, p, squares, w.solver.squares(), alike, s.alikeNow())
			case !found && !slices.Equal(was, s.fabric):
				t.Errorf("of %d places the window around %d changes what it does not better", count, p)
			case found:
				bettered++
			}
		}
	}
	if bettered < 5 {
		t.Errorf("only %d windows bettered anything", bettered)
	}
}
