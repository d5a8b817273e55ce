package scraps_test

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/quilt/scraps"
	"eighthturn/internal/quilttest/judges"
)

// rowsOf is every way to fill the strips of a set from one pool with no fabric twice; of two that are the same set turned end for
// end only one, if turned sets count as one.
func rowsOf(fabrics, strips int, turns bool) (list [][]int) {
	var from func(row []int)
	from = func(row []int) {
		if len(row) == strips {
			turned := slices.Clone(row)
			slices.Reverse(turned)
			if !turns || slices.Compare(row, turned) <= 0 {
				list = append(list, slices.Clone(row))
			}
			return
		}
		for f := range fabrics {
			if !slices.Contains(row, f) {
				from(append(row, f))
			}
		}
	}
	from(nil)
	return list
}

// TestAsManySetsAsThereAre looks through all sets that a small pool makes: as many as are asked for are dealt, or as many as there
// are.
func TestAsManySetsAsThereAre(t *testing.T) {
	for fabrics := 1; fabrics <= judges.Of(5, 6); fabrics++ {
		for strips := 1; strips <= min(fabrics, 3); strips++ {
			for _, turns := range []bool{false, true} {
				there := len(rowsOf(fabrics, strips, turns && strips > 1))
				for asked := 1; asked <= there+2; asked++ {
					s := scraps.StripSet{Strips: make([]int, strips), Pools: [][]int{count(fabrics)}, Turns: turns, Webs: whole(2*there + 4), PerSet: 19, Most: 500, Sets: asked}
					d := scraps.DealSets(nil, &s, 0)
					if want := min(asked, there); len(d.Sets) != want {
						t.Errorf("%d fabrics in %d places, turned %v: %d of %d sets are dealt, there are %d", fabrics, strips, turns, len(d.Sets), asked, there)
					}
					if err := checkDealt(&s, &d); err != nil {
						t.Errorf("%d fabrics in %d places, turned %v, %d sets: %v", fabrics, strips, turns, asked, err)
					}
					if off := spreadOf(d.Sets, fabrics); off > 1 {
						t.Errorf("%d fabrics in %d places, turned %v, %d sets %v: a fabric is used %d times more often than another", fabrics, strips, turns, asked, d.Sets, off)
					}
				}
			}
		}
	}
}

// TestAsManySetsOfTwoPools: two pools make every set that there is, if so many are asked for, whichever of them is written first.
func TestAsManySetsOfTwoPools(t *testing.T) {
	for a := 1; a <= 3; a++ {
		for b := a; b <= 5; b++ {
			for strips := 1; strips <= min(2, b); strips++ {
				pools := [][]int{count(a), nil}
				for i := range b {
					pools[1] = append(pools[1], a+i)
				}
				there := a * len(rowsOf(b, strips, false))
				for first := range 2 {
					s := scraps.StripSet{Pools: [][]int{pools[first], pools[1-first]}, Webs: whole(2 * there), PerSet: 19, Most: 500, Sets: there}
					for range strips {
						s.Strips = append(s.Strips, 1-first)
					}
					s.Strips = append(s.Strips, first)
					d := scraps.DealSets(nil, &s, 0)
					if len(d.Sets) != there {
						t.Errorf("%d fabrics in one place and %d in %d make %d sets, %d are dealt where pool %d comes first", a, b, strips, there, len(d.Sets), first)
					}
					if err := checkDealt(&s, &d); err != nil {
						t.Errorf("%d fabrics in one place and %d in %d: %v", a, b, strips, err)
					}
				}
			}
		}
	}
}

// spreadOf is how many times more often the fabric used most is used than the one used least.
func spreadOf(sets [][]int, fabrics int) int {
	used := make([]int, fabrics)
	for _, set := range sets {
		for _, f := range set {
			used[f]++
		}
	}
	return slices.Max(used) - slices.Min(used)
}

// bestAllotment looks through all ways to give webs one set each, or several to as few as can be, and says how few webs must be
// mixed, and how few neighbors must then share a set where none is mixed.
func bestAllotment(s *scraps.StripSet, sets, sewn int) (mixed, beside int) {
	mixed, beside = len(s.Webs)+1, 0
	of, loads := make([]int, len(s.Webs)), make([][2]int, sets)
	var from func(w, open, free int)
	from = func(w, open, free int) {
		if free > mixed {
			return
		}
		if w == len(s.Webs) {
			if free > 0 && !restFits(s, sewn, of, loads) {
				return
			}
			if n := sharing(s, of); free < mixed || n < beside {
				mixed, beside = free, n
			}
			return
		}
		for n := range min(open+1, sets) { // sets are alike as far as room goes
			more := [2]int{loads[n][0] + s.Webs[w].Wedges[0], loads[n][1] + s.Webs[w].Wedges[1]}
			if gives(s, sewn, more) {
				kept := loads[n]
				loads[n], of[w] = more, n
				from(w+1, max(open, n+1), free)
				loads[n] = kept
			}
		}
		of[w] = -1
		from(w+1, open, free+1)
	}
	from(0, 0, 0)
	return mixed, beside
}

// sharing is how many neighbors are cut from one set.
func sharing(s *scraps.StripSet, of []int) int {
	n := 0
	for w := range s.Webs {
		for _, near := range s.Webs[w].Beside {
			if int(near.Web) < w && of[w] >= 0 && of[w] == of[near.Web] {
				n++
			}
		}
	}
	return n
}

// restFits says whether what sets have left is enough for the wedges of the webs that have none.
func restFits(s *scraps.StripSet, sewn int, of []int, loads [][2]int) bool {
	var wanted [2]int
	for w, set := range of {
		if set < 0 {
			wanted[0] += s.Webs[w].Wedges[0]
			wanted[1] += s.Webs[w].Wedges[1]
		}
	}
	reach := map[int]int{0: 0} // upright wedges that are left, and the most reversed ones beside them
	for _, load := range loads {
		next := map[int]int{}
		for upright, reversed := range reach {
			for more := 0; gives(s, sewn, [2]int{load[0] + more, load[1]}); more++ {
				other := 0
				for gives(s, sewn, [2]int{load[0] + more, load[1] + other + 1}) {
					other++
				}
				next[upright+more] = max(next[upright+more], reversed+other)
			}
		}
		reach = next
	}
	for upright, reversed := range reach {
		if upright >= wanted[0] && reversed >= wanted[1] {
			return true
		}
	}
	return false
}

// TestAllotmentIsBest judges thousands of small strip sets by a search through all allotments: but for
// one in a thousand no fewer webs can be mixed, no fewer sets keep all webs whole, and no fewer neighbors share a set.
func TestAllotmentIsBest(t *testing.T) {
	tried, counts := 0, map[string]int{}
	for seed := uint64(0); tried < judges.Of(600, 4000); seed++ {
		s := dealable(seed)
		s.Webs = s.Webs[:min(len(s.Webs), 6)]
		for w := range s.Webs {
			s.Webs[w].Beside = slices.DeleteFunc(s.Webs[w].Beside, func(n scraps.Near) bool { return int(n.Web) >= len(s.Webs) })
		}
		tried++
		d := scraps.DealSets(nil, &s, 0)
		mixed, beside := bestAllotment(&s, len(d.Sets), d.Sewn)
		if d.Mixed != mixed {
			counts[fmt.Sprint("mixed, sets asked for: ", s.Sets > 0)]++
			t.Logf("seed %d: %d webs are mixed, %d must be: %+v %+v", seed, d.Mixed, mixed, s, d)
		} else if d.Mixed == 0 && d.Beside != beside {
			counts["beside"]++
			t.Logf("seed %d: %d neighbors share a set, %d must: %+v %+v", seed, d.Beside, beside, s, d)
		}
		for fewer := 1; fewer < len(d.Sets) && s.Sets == 0 && d.Sewn == 1; fewer++ {
			if m, b := bestAllotment(&s, fewer, 1); m == 0 && b <= d.Beside {
				counts["sets"]++
				t.Logf("seed %d: %d sets are dealt, %d would do: %+v", seed, len(d.Sets), fewer, s)
			}
		}
	}
	off := 0
	for what, n := range counts {
		t.Logf("%s: %d of %d are not the best", what, n, tried)
		off += n
	}
	if off*1000 > tried {
		t.Errorf("%d of %d strip sets are not dealt in the best way", off, tried)
	}
}
