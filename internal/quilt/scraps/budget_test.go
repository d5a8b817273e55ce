package scraps

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// uneasy is places of two pools in rows, with fabrics barred here and there, so that what is dealt first is not even.
func uneasy(count int, lines int32) []Place {
	rng, places := rand.New(rand.NewPCG(9, 27)), make([]Place, count)
	pools := [][]int{{0, 1, 2, 3, 4}, {3, 4, 5, 6, 7, 8}}
	for i := range places {
		p := &places[i]
		p.Pool = i / 7 % 2
		p.Choices = pools[p.Pool]
		if i > count/2 {
			p.Barred = []int{p.Choices[rng.IntN(2)], p.Choices[2]}
		}
		if lines > 0 {
			p.Lines = Lines{1 + int32(i)/9, lines, 0, 20 + int32(i)%5}
		}
		if i%4 > 0 {
			p.Neighbours = append(p.Neighbours, int32(i-1))
			places[i-1].Neighbours = append(places[i-1].Neighbours, int32(i))
		}
	}
	return places
}

// dealtFirst is a deal that is not evened out yet.
func dealtFirst(places []Place) *solver {
	t := newSolver(places, 0)
	t.assign()
	return t
}

// alikeNow is how many pairs of neighbors have one fabric.
func (t *solver) alikeNow() (n int) {
	for i := range t.places {
		n += t.alike(int32(i), t.fabric[i])
	}
	return n / 2
}

// TestEveningOutStops: however little evening out may cost, it is given up soon after that is spent; what stands then is as even as before or
// more so, with no more neighbors alike, and with the steps of the whole it is as even as can be.
func TestEveningOutStops(t *testing.T) {
	places := uneasy(240, 0)
	whole := dealtFirst(places)
	whole.balance()
	spent := maxEvenSteps - whole.even
	first := dealtFirst(places)
	before, alike := first.squares(), first.alikeNow()
	if whole.squares() >= before || spent < 500 {
		t.Fatalf("evening out takes %d steps and comes from %d to %d", spent, before, whole.squares())
	}
	bettered := 0
	for budget := 0; budget <= spent; budget += 1 + spent/15 {
		s := dealtFirst(places)
		s.even = budget
		s.balance()
		if s.squares() > before || s.alikeNow() > alike || s.even < -20_000 { // what one detour takes
			t.Errorf("with %d steps squares are %d, before %d, %d neighbors alike, before %d, and %d steps are left", budget, s.squares(), before, s.alikeNow(), alike, s.even)
		}
		if s.squares() < before {
			bettered++
		}
	}
	if bettered < 5 {
		t.Errorf("only %d budgets bettered anything", bettered)
	}
}

// TestTooManyLines: a top with more lines and fabrics than are counted is dealt as one without lines; one with just as many is spread.
func TestTooManyLines(t *testing.T) {
	const fabrics = 9
	if newCrowds(maxCrowds/fabrics, fabrics) != nil || newCrowds(maxCrowds/fabrics-1, fabrics) == nil || newCrowds(maxCrowds/8-1, 8) == nil || newCrowds(maxCrowds/8, 8) != nil {
		t.Error("another number of counts is kept")
	}
	without := Deal(nil, uneasy(60, 0), 3)
	if many := Deal(nil, uneasy(60, maxCrowds), 3); !slices.Equal(many.Fabrics, without.Fabrics) {
		t.Errorf("of too many lines are dealt %v, without lines %v", many.Fabrics, without.Fabrics)
	}
	if few := Deal(nil, uneasy(60, 7), 3); slices.Equal(few.Fabrics, without.Fabrics) {
		t.Error("lines change nothing")
	}
	webs := func(line int32) *StripSet {
		s := &StripSet{Pools: [][]int{{0, 1, 2, 3, 4}}, Strips: []int{0, 0, 0}, PerSet: 20, Most: 20, Sets: 6}
		for i := range int32(12) {
			w := Web{Wedges: [2]int{8, 0}}
			if line > 0 {
				w.Lines = Lines{1 + i/4, 10 + i%4, line}
			}
			s.Webs = append(s.Webs, w)
		}
		return s
	}
	many, none := DealSets(nil, webs(maxCrowds), 0), DealSets(nil, webs(0), 0)
	if !slices.EqualFunc(many.Sets, none.Sets, slices.Equal[[]int]) || !slices.EqualFunc(many.From, none.From, slices.Equal[[]Part]) {
		t.Errorf("sets of webs in too many lines are dealt %v, without lines %v", many.From, none.From)
	}
}

// TestSpreadingStops: places along lines trade until their steps are spent, and each trade but those of a shaken pool leaves them less crowded.
func TestSpreadingStops(t *testing.T) {
	places := make([]Place, 60)
	for i := range places {
		places[i] = Place{Choices: []int{0, 1, 2}, Line: 1 + i/20}
	}
	before := newSolver(places, 1)
	for i := range places {
		before.put(int32(i), i/7%3)
	}
	for _, left := range []int{0, 1, 50, 500, 5000} {
		s := newSolver(places, 1)
		for i := range places {
			s.put(int32(i), i/7%3)
		}
		sp := s.inLines(left)
		for sp.sweep() {
		}
		if use := useOfFabrics(s.fabric); !slices.Equal(use, useOfFabrics(before.fabric)) || sp.left < -4*(20+3)-2*20 { // what one comparison and one trade take
			t.Errorf("with %d steps fabrics are used %v times, and %d steps are left", left, use, sp.left)
		}
		if changed := !slices.Equal(s.fabric, before.fabric); changed != (left > 0) {
			t.Errorf("with %d steps something changed: %v", left, changed)
		}
	}
}

func useOfFabrics(fabrics []int) []int {
	use := make([]int, 9)
	for _, f := range fabrics {
		use[f]++
	}
	return use
}

// TestShiftsOneByOne: from the first way to shift the stacks on each comes the next one, so that all ways come, each once and in order: the
// first stack stays, and no two are shifted alike. They are counted by trying all numbers.
func TestShiftsOneByOne(t *testing.T) {
	for strips := 1; strips <= 4; strips++ {
		for fabrics := strips; fabrics <= 5; fabrics++ {
			var want [][]int
			shifts := make([]int, strips)
			var from func(at int)
			from = func(at int) {
				if at == strips {
					want = append(want, slices.Clone(shifts))
					return
				}
				for n := range fabrics {
					if !slices.Contains(shifts[:at], n) {
						shifts[at] = n
						from(at + 1)
					}
				}
			}
			from(1)
			var got [][]int
			for s := first(strips); s != nil; s = next(s, fabrics) {
				got = append(got, s)
			}
			if !slices.EqualFunc(got, want, slices.Equal[[]int]) {
				t.Errorf("%d strips of %d fabrics are shifted %v, expected %v", strips, fabrics, got, want)
			}
		}
	}
}

// TestAWindowIsGivenUp: a window of places takes no more work than one may, whatever is left for all of them.
func TestAWindowIsGivenUp(t *testing.T) {
	places := make([]Place, 40)
	for i := range places {
		places[i].Choices = []int{0, 1, 2, 3, 4, 5}
		places[i].Barred = []int{4, 5} // which therefore cannot be used as often as the others
		if i%20 == 0 {
			places[i].Barred = []int{5}
		}
	}
	deal := dealtFirst(places)
	deal.balance()
	w := window{solver: deal, pools: deal.pools(), left: windowWork}
	most := 0
	for p := range int32(len(places)) {
		was := slices.Clone(deal.fabric)
		if w.left = windowWork; w.around(p) {
			continue
		}
		most = max(most, windowWork-w.left)
		if !slices.Equal(was, deal.fabric) {
			t.Fatal("a window that is given up has changed something")
		}
	}
	if most < oneWindowWork || most > oneWindowWork+100 {
		t.Errorf("a window takes %d at the most, expected %d and what looking through it takes", most, oneWindowWork)
	}
}
