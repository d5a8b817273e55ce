package scraps_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/quilt/scraps"
)

// count is numbers from 0.
func count(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

// whole are so many webs of eight wedges, every other one of reversed wedges.
func whole(n int) []scraps.Web {
	webs := make([]scraps.Web, n)
	for i := range webs {
		webs[i].Wedges[i%2] = 8
	}
	return webs
}

// TestSixFabricsInThreePlaces: dealt by moving a stack on by one, six fabrics make six sets: each is used three times, once in
// each place: three columns of a cyclic Latin square (Colbourn and Dinitz, Handbook of Combinatorial Designs, III.1; from memory).
// Stacks are dealt so by common practice.
func TestSixFabricsInThreePlaces(t *testing.T) {
	s := scraps.StripSet{Strips: []int{0, 0, 0}, Pools: [][]int{count(6)}, Turns: true, Webs: whole(12), PerSet: 19, Most: 500}
	d := scraps.DealSets(nil, &s, 0)
	want := [][]int{{0, 1, 2}, {1, 2, 3}, {2, 3, 4}, {3, 4, 5}, {4, 5, 0}, {5, 0, 1}}
	if !slices.EqualFunc(d.Sets, want, slices.Equal) {
		t.Errorf("six fabrics in three places are dealt %v, want %v", d.Sets, want)
	}
	if d.Mixed+d.Beside > 0 || d.Sewn != 1 {
		t.Errorf("twelve webs from six sets: %d mixed, sewn %d times", d.Mixed, d.Sewn)
	}
}

// TestNineteenWedges: a set of 19 wedges gives 10 one way round and 9 the other, either kind first. So two sets are needed for
// three webs of eight where one lies the other way round, and three where all lie alike.
func TestNineteenWedges(t *testing.T) {
	for _, c := range []struct {
		ways [][2]int
		want int
	}{
		{[][2]int{{8, 0}, {0, 8}}, 1}, {[][2]int{{8, 0}, {2, 0}, {0, 8}}, 1}, {[][2]int{{8, 0}, {0, 2}, {0, 8}}, 1},
		{[][2]int{{8, 0}, {2, 0}, {0, 2}, {0, 8}}, 2}, {[][2]int{{8, 0}, {0, 8}, {8, 0}}, 2}, {[][2]int{{8, 0}, {8, 0}, {8, 0}}, 3},
		{[][2]int{{8, 0}, {4, 0}}, 2}, {[][2]int{{4, 4}, {4, 4}, {2, 1}}, 1}, {[][2]int{{4, 4}, {4, 4}, {2, 2}}, 2},
	} {
		s := scraps.StripSet{Strips: []int{0, 0}, Pools: [][]int{count(9)}, PerSet: 19, Most: 500}
		for _, way := range c.ways {
			s.Webs = append(s.Webs, scraps.Web{Wedges: way})
		}
		if d := scraps.DealSets(nil, &s, 0); len(d.Sets) != c.want || d.Mixed > 0 {
			t.Errorf("webs of %v wedges come from %d sets, %d mixed; want %d", c.ways, len(d.Sets), d.Mixed, c.want)
		}
	}
}

// dealable is a strip set of one or two pools, with some webs beside each other.
func dealable(seed uint64) scraps.StripSet {
	rng := rand.New(rand.NewPCG(seed, 41))
	s := scraps.StripSet{PerSet: 6 + rng.IntN(15), Most: 1 + rng.IntN(40)}
	fabric := 0
	for range 1 + rng.IntN(2) {
		strips := 1 + rng.IntN(3)
		for range strips {
			s.Strips = append(s.Strips, len(s.Pools))
		}
		pool := make([]int, strips+rng.IntN(5))
		for i := range pool {
			pool[i] = fabric
			fabric++
		}
		s.Pools = append(s.Pools, pool)
	}
	if rng.IntN(3) == 0 {
		s.Strips = slices.Insert(s.Strips, rng.IntN(len(s.Strips)+1), -1)
	}
	rng.Shuffle(len(s.Strips), func(i, j int) { s.Strips[i], s.Strips[j] = s.Strips[j], s.Strips[i] })
	s.Turns, s.Alike = true, len(s.Strips) == 1
	for i := range s.Strips {
		s.Turns = s.Turns && s.Strips[i] == s.Strips[len(s.Strips)-1-i]
	}
	s.Webs = make([]scraps.Web, 1+rng.IntN(12))
	for i := range s.Webs {
		size := []int{8, 8, 4, 2, 1 + rng.IntN(8)}[rng.IntN(5)]
		s.Webs[i].Wedges = [3][2]int{{size, 0}, {0, size}, {size - size/2, size / 2}}[rng.IntN(3)]
		s.Webs[i].Lines = scraps.Lines{int32(1 + i/4), int32(10 + i%4), int32(30 + i%4 - i/4), int32(50 + i%4 + i/4)}
		for range rng.IntN(3) {
			if n := i - 1 - rng.IntN(4); n >= 0 && !slices.Contains(s.Webs[i].Beside, scraps.Near{Web: int32(n), Mine: -1, Theirs: -1}) {
				s.Webs[i].Beside = append(s.Webs[i].Beside, scraps.Near{Web: int32(n), Mine: -1, Theirs: -1})
				s.Webs[n].Beside = append(s.Webs[n].Beside, scraps.Near{Web: int32(i), Mine: -1, Theirs: -1})
			}
		}
	}
	if rng.IntN(2) == 0 {
		s.Sets = 1 + rng.IntN(8)
	}
	return s
}

// gives says whether some sewn sets, of which every one gives wedges by turns, are enough; written with no formula of the package.
func gives(s *scraps.StripSet, sewn int, wedges [2]int) bool {
	if s.Alike {
		return sewn*s.PerSet >= wedges[0]+wedges[1]
	}
	for first := range sewn + 1 { // so many begin with a wedge that is not reversed
		upright := first*((s.PerSet+1)/2) + (sewn-first)*(s.PerSet/2)
		if upright >= wedges[0] && sewn*s.PerSet-upright >= wedges[1] {
			return true
		}
	}
	return false
}

// checkDealt holds the laws of a strip set that is dealt by set.
func checkDealt(s *scraps.StripSet, d *scraps.Dealt) error {
	if err := checkSets(s, d.Sets); err != nil {
		return err
	}
	loads, mixed, beside := make([][2]int, len(d.Sets)), 0, 0
	for w, parts := range d.From {
		var sum [2]int
		for _, p := range parts {
			for way := range sum {
				sum[way] += p.Wedges[way]
				loads[p.Set][way] += p.Wedges[way]
			}
		}
		if sum != s.Webs[w].Wedges {
			return fmt.Errorf("web %d of %v wedges gets %v", w, s.Webs[w].Wedges, sum)
		}
		if len(parts) > 1 {
			mixed++
		}
		for _, n := range s.Webs[w].Beside {
			if int(n.Web) < w && n.Mine < 0 && slices.ContainsFunc(parts, func(p scraps.Part) bool {
				return slices.ContainsFunc(d.From[n.Web], func(q scraps.Part) bool { return p.Set == q.Set })
			}) {
				beside++
			}
		}
	}
	for n, load := range loads {
		if s.PerSet > 0 && !gives(s, d.Sewn, load) {
			return fmt.Errorf("set %d, sewn %d times, has to give %v", n, d.Sewn, load)
		}
	}
	if mixed != d.Mixed || beside > d.Beside || d.Mixed == 0 && beside != d.Beside {
		return fmt.Errorf("%d webs are mixed and %d pairs share a set; %d and %d are said", mixed, beside, d.Mixed, d.Beside)
	}
	return nil
}

// checkSets: no set holds a fabric twice, no two are alike, and of the fabrics of a pool each is as often in a place as any other,
// or once more.
func checkSets(s *scraps.StripSet, sets [][]int) error {
	seen := map[string]bool{}
	used := make([]map[int]int, len(s.Strips))
	for i := range used {
		used[i] = map[int]int{}
	}
	for _, set := range sets {
		for i, f := range set {
			used[i][f]++
			switch {
			case s.Strips[i] < 0 != (f < 0), f >= 0 && !slices.Contains(s.Pools[s.Strips[i]], f):
				return fmt.Errorf("strip %d of %v is none of its pool", i, set)
			case f >= 0 && slices.Contains(set[:i], f):
				return fmt.Errorf("%v holds a fabric twice", set)
			}
		}
		turned := slices.Clone(set)
		slices.Reverse(turned)
		if seen[fmt.Sprint(set)] || s.Turns && seen[fmt.Sprint(turned)] {
			return fmt.Errorf("two sets are %v", set)
		}
		seen[fmt.Sprint(set)] = true
	}
	for i, pool := range s.Strips {
		if pool < 0 {
			continue
		}
		least, most := len(sets), 0
		for _, f := range s.Pools[pool] {
			least, most = min(least, used[i][f]), max(most, used[i][f])
		}
		if most-least > 1 {
			return fmt.Errorf("in place %d one fabric is %d times and another %d times", i, most, least)
		}
	}
	return nil
}

// TestDealtLaws holds the laws on invented strip sets.
func TestDealtLaws(t *testing.T) {
	mixed, beside := 0, 0
	for seed := range uint64(4000) {
		s := dealable(seed)
		d := scraps.DealSets(nil, &s, int(seed%3))
		if err := checkDealt(&s, &d); err != nil {
			t.Fatalf("seed %d: %v in %+v: %+v", seed, err, s, d)
		}
		if d.Mixed > 0 {
			mixed++
		}
		if d.Beside > 0 {
			beside++
		}
	}
	if mixed < 30 || beside < 100 {
		t.Errorf("only %d are mixed and %d have neighbors alike", mixed, beside)
	}
}

// TestDealtLawsNotice: deals that were spoilt break the laws.
func TestDealtLawsNotice(t *testing.T) {
	s := scraps.StripSet{Strips: []int{0, 0, -1}, Pools: [][]int{count(4)}, Webs: whole(8), PerSet: 19, Most: 500}
	for what, spoil := range map[string]func(d *scraps.Dealt){
		"a fabric twice": func(d *scraps.Dealt) { d.Sets[0][1] = d.Sets[0][0] },
		"two sets alike": func(d *scraps.Dealt) { d.Sets[0] = d.Sets[1] },
		"a place uneven": func(d *scraps.Dealt) {
			d.Sets[0], d.Sets[1], d.Sets[2] = []int{0, 1, -1}, []int{0, 2, -1}, []int{0, 3, -1}
		},
		"not of the pool":      func(d *scraps.Dealt) { d.Sets[0][0] = 4 },
		"a strip of its own":   func(d *scraps.Dealt) { d.Sets[0][2] = 3 },
		"a wedge short":        func(d *scraps.Dealt) { d.From[0][0].Wedges[0]-- },
		"a set asked too much": func(d *scraps.Dealt) { d.From[2][0].Set = d.From[0][0].Set },
		"mixed unsaid":         func(d *scraps.Dealt) { d.From[0] = []scraps.Part{{0, [2]int{4, 0}}, {1, [2]int{4, 0}}} },
		"neighbors unsaid":     func(d *scraps.Dealt) { d.Beside++ },
	} {
		d := scraps.DealSets(nil, &s, 0)
		if err := checkDealt(&s, &d); err != nil {
			t.Fatal(err)
		}
		if spoil(&d); checkDealt(&s, &d) == nil {
			t.Errorf("%s: the spoilt deal passes", what)
		}
	}
}
