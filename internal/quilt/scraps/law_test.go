package scraps_test

import (
	"fmt"
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/quilt/scraps"
	"eighthturn/internal/quilttest/judges"
)

// patches is some places of one or two pools that touch as pieces of a quilt do: each lies
// beside a few others, most of them near. Some fabrics are barred at some places.
func patches(seed uint64) []scraps.Place {
	rng := rand.New(rand.NewPCG(seed, 79))
	places := make([]scraps.Place, 1+rng.IntN(12))
	pools := make([][]int, 1+rng.IntN(2))
	for i := range pools {
		pools[i] = rng.Perm(7)[:1+rng.IntN(5)]
	}
	for i := range places {
		p := &places[i]
		p.Pool = rng.IntN(len(pools))
		p.Choices = pools[p.Pool]
		if rng.IntN(6) == 0 {
			p.Barred = rng.Perm(8)[:1+rng.IntN(3)]
		}
		for range rng.IntN(4) {
			if n := i - 1 - min(rng.IntN(5), rng.IntN(5)); n >= 0 && !slices.Contains(p.Neighbours, int32(n)) {
				p.Neighbours = append(p.Neighbours, int32(n))
				places[n].Neighbours = append(places[n].Neighbours, int32(i))
			}
		}
	}
	return places
}

// alike is the pairs of neighbours with one fabric.
func alike(places []scraps.Place, fabrics []int) [][2]int {
	var pairs [][2]int
	for i, p := range places {
		for _, n := range p.Neighbours {
			if int(n) < i && fabrics[n] == fabrics[i] {
				pairs = append(pairs, [2]int{int(n), i})
			}
		}
	}
	return pairs
}

// check holds the laws of a single deal: every fabric is one of the place's, none that is
// barred unless all are, and no neighbours are alike unless there is no better deal; and
// Proven says only what the search through all deals says too.
func check(places []scraps.Place, d scraps.Assignment, best verdict) error {
	if len(d.Fabrics) != len(places) {
		return fmt.Errorf("%d fabrics for %d places", len(d.Fabrics), len(places))
	}
	for i, f := range d.Fabrics {
		if f < 0 || domain(places[i])&(1<<f) == 0 {
			return fmt.Errorf("place %d has fabric %d, of %v without %v", i, f, places[i].Choices, places[i].Barred)
		}
	}
	pairs := alike(places, d.Fabrics)
	switch {
	case best == some && len(pairs) > 0:
		return fmt.Errorf("places %v are alike, and need not be", pairs)
	case best == none && len(pairs) == 0:
		return fmt.Errorf("the search through all deals missed this one")
	case best == some && !d.Proven:
		return fmt.Errorf("neighbours differ, and yet the search was given up")
	}
	return nil
}

// TestLaws holds the laws of a deal on invented places.
func TestLaws(t *testing.T) {
	counts := map[verdict]int{}
	for seed := range uint64(20_000) {
		places := patches(seed)
		best := exists(places, nil, 1<<40)
		counts[best]++
		if err := check(places, scraps.Deal(nil, places, int(seed%5)), best); err != nil {
			t.Fatalf("seed %d: %v in %+v", seed, err, places)
		}
	}
	if counts[some] < 3000 || counts[none] < 3000 {
		t.Errorf("%d places have a deal without neighbours alike, %d have none", counts[some], counts[none])
	}
}

// TestLawsNotice: deals that were spoilt break the laws.
func TestLawsNotice(t *testing.T) {
	places := []scraps.Place{
		{Choices: []int{0, 1, 2}, Barred: []int{2}, Neighbours: []int32{1}}, {Choices: []int{0, 1, 2}, Neighbours: []int32{0}},
	}
	for what, d := range map[string]scraps.Assignment{
		"too few":         {Fabrics: []int{0}, Proven: true},
		"none":            {Fabrics: []int{0, -1}, Proven: true},
		"not its own":     {Fabrics: []int{0, 3}, Proven: true},
		"barred":          {Fabrics: []int{2, 0}, Proven: true},
		"alike":           {Fabrics: []int{1, 1}, Proven: true},
		"given up, found": {Fabrics: []int{0, 1}},
	} {
		if check(places, d, exists(places, nil, 1000)) == nil {
			t.Errorf("%s: the spoilt deal passes", what)
		}
	}
	one := []scraps.Place{{Choices: []int{0}, Neighbours: []int32{1}}, {Choices: []int{0}, Neighbours: []int32{0}}}
	if exists(one, nil, 1000) != none || fewestAlike(one) != 1 {
		t.Error("one fabric is enough for two neighbours")
	}
	if exists(places, nil, 1) != unknown {
		t.Error("a search that was cut short says something")
	}
}

// TestProven: where the search went to its end, Proven is said, and the search through all
// deals agrees; a group of places too large for that is not called proven.
func TestProven(t *testing.T) {
	for seed := range uint64(5000) {
		places := patches(seed)
		if d := scraps.Deal(nil, places, 0); !d.Proven {
			t.Fatalf("seed %d: a dozen places were too many", seed)
		}
	}
	if d := scraps.Deal(nil, pigeons(11), 0); d.Proven || len(alike(pigeons(11), d.Fabrics)) == 0 {
		t.Error("eleven places that all touch cannot be dealt ten fabrics; to prove it takes longer than the search may")
	}
	if d := scraps.Deal(nil, pigeons(6), 0); !d.Proven || len(alike(pigeons(6), d.Fabrics)) != 1 {
		t.Error("six places that all touch are dealt five fabrics, with one pair alike")
	}
}

// TestLargeGroup: a group of more places than the search may take back is dealt like any
// other; only going back counts.
func TestLargeGroup(t *testing.T) {
	places := make([]scraps.Place, scraps.MaxSteps+1000)
	choices := []int{0, 1, 2}
	for i := range places {
		places[i].Choices = choices
		if i > 0 {
			places[i].Neighbours = append(places[i].Neighbours, int32(i-1))
			places[i-1].Neighbours = append(places[i-1].Neighbours, int32(i))
		}
	}
	if d := scraps.Deal(nil, places, 0); !d.Proven || len(alike(places, d.Fabrics)) > 0 {
		t.Errorf("%d neighbours are alike in a long row, proven: %v", len(alike(places, d.Fabrics)), d.Proven)
	}
}

// pigeons is so many places that all touch, with one fabric less.
func pigeons(n int) []scraps.Place {
	places := make([]scraps.Place, n)
	for i := range places {
		for f := range n - 1 {
			places[i].Choices = append(places[i].Choices, f)
		}
		for other := range n {
			if other != i {
				places[i].Neighbours = append(places[i].Neighbours, int32(other))
			}
		}
	}
	return places
}

// uneven is how much further apart the fabric of a pool that is used most and the one used
// least lie than in the most even of all deals that cost the other pools nothing.
func uneven(places []scraps.Place, fabrics []int, pool int) int {
	others := map[int]limit{}
	for _, p := range places {
		if p.Pool != pool {
			others[p.Pool] = useOf(places, fabrics, p.Pool)
		}
	}
	use := useOf(places, fabrics, pool)
	return use.most - use.least - minSpread(places, pool, others)
}

// TestEven: every pool is dealt as evenly as it can be.
func TestEven(t *testing.T) {
	tried := 0
	for seed := range uint64(judges.Of(250, 500)) {
		places := patches(seed)
		if exists(places, nil, 1<<40) != some {
			continue
		}
		d := scraps.Deal(nil, places, 0)
		for pool := range 2 {
			if len(fabricsOf(places, pool)) == 0 {
				continue
			}
			tried++
			if off := uneven(places, d.Fabrics, pool); off != 0 {
				t.Errorf("seed %d: pool %d is dealt %v, %d further apart than need be", seed, pool, d.Fabrics, off)
			}
		}
	}
	if tried < judges.Of(150, 300) {
		t.Errorf("only %d pools were dealt", tried)
	}
}

// TestEvenByWindows: in these quilts no chains of two fabrics bring the numbers closer, since most of a chain may not have the
// other fabric; in the last one what helps the second pool costs the first. All are dealt as evenly as can be.
func TestEvenByWindows(t *testing.T) {
	for _, seed := range []uint64{2686, 6236, 13522} {
		places := patches(seed)
		d := scraps.Deal(nil, places, 0)
		if len(alike(places, d.Fabrics)) > 0 {
			t.Errorf("seed %d: neighbors are alike", seed)
		}
		for pool := range 2 {
			if off := uneven(places, d.Fabrics, pool); off != 0 {
				t.Errorf("seed %d: pool %d is dealt %v, %d further apart than need be", seed, pool, d.Fabrics, off)
			}
		}
	}
}

// TestEvenNotices: a deal that leans on one fabric is found out.
func TestEvenNotices(t *testing.T) {
	places := make([]scraps.Place, 9)
	for i := range places {
		places[i].Choices = []int{0, 1, 2}
	}
	if off := uneven(places, []int{0, 1, 2, 0, 1, 2, 0, 1, 2}, 0); off != 0 {
		t.Errorf("an even deal is %d off", off)
	}
	if off := uneven(places, []int{0, 1, 2, 0, 1, 2, 0, 1, 1}, 0); off != 2 {
		t.Errorf("a deal of three, four and two is %d off", off)
	}
}

// TestFewAlike: where some neighbours must be alike, few more are than in the best of all
// deals, and in most deals none.
func TestFewAlike(t *testing.T) {
	tried, best := 0, 0
	for seed := range uint64(3000) {
		places := patches(seed)
		if exists(places, nil, 1<<40) != none {
			continue
		}
		more := len(alike(places, scraps.Deal(nil, places, 0).Fabrics)) - fewestAlike(places)
		if tried++; more == 0 {
			best++
		}
		if more > 3 {
			t.Errorf("seed %d: %d more neighbours are alike than need be", seed, more)
		}
	}
	if best < tried*9/10 {
		t.Errorf("%d of %d deals have as few neighbours alike as can be", best, tried)
	}
}

// TestAnotherDeal: another number gives another deal where there is a choice.
func TestAnotherDeal(t *testing.T) {
	choices := 0
	for seed := range uint64(400) {
		places := patches(seed)
		choice := false
		for _, p := range places {
			choice = choice || len(p.Neighbours) == 0 && bits.OnesCount64(domain(p)) > 1 && spare(places, p.Pool)
		}
		seen := map[string]bool{}
		for number := range 40 {
			seen[fmt.Sprint(scraps.Deal(nil, places, number))] = true
		}
		if choice && len(seen) < 2 {
			t.Errorf("seed %d: forty numbers give one deal of %+v", seed, places)
		}
		choices += len(seen) / 2
		if exists(places, nil, 1<<40) == some && onlyOne(places) && len(seen) > 1 {
			t.Errorf("seed %d: there is one deal, but %d were given", seed, len(seen))
		}
	}
	if choices < 400 {
		t.Errorf("four hundred quilts have %d pairs of different deals", choices)
	}
}

// spare says whether a pool has one place more than comes out even, so that one of its
// fabrics may be any.
func spare(places []scraps.Place, pool int) bool {
	count := 0
	for _, p := range places {
		if p.Pool == pool && (len(p.Neighbours) > 0 || bits.OnesCount64(domain(p)) != len(p.Choices)) {
			return false
		}
		if p.Pool == pool {
			count++
		}
	}
	return count%len(fabricsOf(places, pool)) > 0
}

// onlyOne says whether every place has but one fabric to choose.
func onlyOne(places []scraps.Place) bool {
	return !slices.ContainsFunc(places, func(p scraps.Place) bool { return bits.OnesCount64(domain(p)) > 1 })
}

// TestSameDeal: the same places and number give the same deal every time.
func TestSameDeal(t *testing.T) {
	for seed := range uint64(30) {
		places := patches(seed)
		first := fmt.Sprint(scraps.Deal(nil, places, 7))
		for range 100 {
			if again := fmt.Sprint(scraps.Deal(nil, places, 7)); again != first {
				t.Fatalf("seed %d: %s, then %s", seed, first, again)
			}
		}
	}
}

// TestPlacesAreLeft: a deal changes nothing of what it is given.
func TestPlacesAreLeft(t *testing.T) {
	for seed := range uint64(300) {
		places := patches(seed)
		scraps.Deal(nil, places, 1)
		if fmt.Sprint(places) != fmt.Sprint(patches(seed)) {
			t.Fatalf("seed %d: the places were changed", seed)
		}
	}
}
