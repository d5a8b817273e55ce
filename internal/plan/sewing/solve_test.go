package sewing

import (
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/stop"
)

// randomConstraints is choices with constraints between them: a grid's, or any.
func randomConstraints(v *rand.Rand, choices, constraints int) *constraintGraph {
	r := &constraintGraph{choices: choices, max: 1000, wants: make([]float64, choices)}
	for range constraints {
		a, b := int32(v.IntN(choices)), int32(v.IntN(choices))
		if v.IntN(3) > 0 {
			b = (a + 1 + int32(v.IntN(3))) % int32(choices)
		}
		r.constraints = append(r.constraints, constraint{a, b, v.IntN(4) == 0})
	}
	for i := range r.wants {
		r.wants[i] = v.Float64() - 0.5
	}
	return r
}

// minBroken tries every way.
func minBroken(r *constraintGraph) int {
	best := len(r.constraints)
	ways := make([]bool, r.choices)
	for i := range 1 << r.choices {
		for n := range ways {
			ways[n] = i>>n&1 == 1
		}
		count := 0
		for n := range r.constraints {
			if !r.constraints[n].kept(ways) {
				count++
			}
		}
		best = min(best, count)
	}
	return best
}

// TestKindsFit: no kind has more pieces than a block's cloths are counted for.
func TestKindsFit(t *testing.T) {
	for _, k := range blocks.Kinds() {
		if len(k.Pieces) > maxPieces {
			t.Errorf("%s has %d pieces", k.Name, len(k.Pieces))
		}
	}
}

// TestSolveIsBest: what is left broken is the least that can be, and that is known.
func TestSolveIsBest(t *testing.T) {
	v := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		choices := 2 + v.IntN(11)
		r := randomConstraints(v, choices, 1+v.IntN(3*choices))
		s := r.solve()
		want := minBroken(r)
		if len(s.broken) != want || s.least != want {
			t.Fatalf("%d undone, known to be at least %d, but %d is the least\n%v", len(s.broken), s.least, want, r.constraints)
		}
		checkAnswer(t, r, s)
	}
}

// checkAnswer: what is said to be broken is what is broken, and nothing else.
func checkAnswer(t *testing.T, r *constraintGraph, s *assignment) {
	t.Helper()
	undone := map[int32]bool{}
	for i := range r.constraints {
		if !r.constraints[i].kept(s.ways) {
			undone[int32(i)] = true
		}
	}
	if !slices.IsSorted(s.broken) || len(s.oddCycles) != len(s.broken) {
		t.Fatalf("what is undone is out of order: %v, or %d are shown", s.broken, len(s.oddCycles))
	}
	if len(undone) != len(s.broken) {
		t.Fatalf("%d undone, %d said", len(undone), len(s.broken))
	}
	for _, n := range s.broken {
		if !undone[n] {
			t.Fatalf("constraint %d is said to be undone", n)
		}
	}
}

// TestDisjointNeverSaysTooMuch: cycles that share nothing never prove more than there is, also
// where the ways are not the best.
func TestDisjointNeverSaysTooMuch(t *testing.T) {
	v := rand.New(rand.NewPCG(3, 4))
	for range 400 {
		choices := 2 + v.IntN(10)
		r := randomConstraints(v, choices, 1+v.IntN(3*choices))
		r.index()
		ways := make([]bool, choices)
		for i := range ways {
			ways[i] = v.IntN(2) == 0
		}
		var broken []int32
		for i := range r.constraints {
			if !r.constraints[i].kept(ways) {
				broken = append(broken, int32(i))
			}
		}
		if found, least := r.disjoint(broken, ways), minBroken(r); found > least {
			t.Fatalf("%d cycles are said to share nothing, but %d undone is enough\n%v", found, least, r.constraints)
		}
	}
}

// TestExact: taking choices out one by one finds the least on its own, whatever ways it
// starts from.
func TestExact(t *testing.T) {
	v := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		choices := 2 + v.IntN(10)
		r := randomConstraints(v, choices, 1+v.IntN(3*choices))
		r.index()
		r.left = maxSolveSteps
		ways := make([]bool, choices)
		count := 0
		for _, c := range r.components(make([]bool, choices)) {
			if !r.exact(c, ways) {
				t.Fatal("small tables grew too large")
			}
			count += len(r.broken(c, ways))
		}
		if want := minBroken(r); count != want {
			t.Fatalf("%d undone, but %d is the least\n%v", count, want, r.constraints)
		}
	}
}

// complete is so many choices each of which has a constraint with each other, from a first one on.
func complete(first, choices int32) (list []constraint) {
	for b := range choices {
		for a := range b {
			list = append(list, constraint{first + a, first + b, a+b == 1})
		}
	}
	return list
}

// chain is so many choices in a row, each alike with the next, and the last unlike the first.
func chain(choices int32) (list []constraint) {
	for n := range choices - 1 {
		list = append(list, constraint{n, n + 1, false})
	}
	return append(list, constraint{choices - 1, 0, true})
}

// graphOf is a graph of constraints that may take so many steps.
func graphOf(constraints []constraint, left int) *constraintGraph {
	r := &constraintGraph{constraints: constraints, left: left, max: 10}
	for _, c := range constraints {
		r.choices = max(r.choices, int(c.a)+1, int(c.b)+1)
	}
	r.wants = make([]float64, r.choices)
	r.index()
	return r
}

// all is every choice of a graph.
func (r *constraintGraph) all() (c component) {
	for n := range int32(r.choices) {
		c.choices = append(c.choices, n)
	}
	return c
}

// TestLimitsOfExact: the search is made up to its limits and not beyond them, and changes nothing where it is given up. A table
// over all other choices of n that all hang together has 2^(n-1) entries, and all tables of them have 2^n - 1. So 16 times 14 choices and
// four more take 2^18 - 1 entries, one more takes the last, and the next is too many.
func TestLimitsOfExact(t *testing.T) {
	var full []constraint
	for n := range int32(16) {
		full = append(full, complete(14*n, 14)...)
	}
	full = append(full, complete(224, 4)...)
	for name, c := range map[string]struct {
		constraints []constraint
		choices     int // 0 for those that have constraints
		left        int
		found       bool
	}{
		"1000 choices":       {chain(1000), 0, maxSolveSteps, true},
		"1001 choices":       {chain(1001), 0, maxSolveSteps, false},
		"13 neighbors":       {complete(0, 14), 0, maxSolveSteps, true},
		"14 neighbors":       {complete(0, 15), 0, maxSolveSteps, false},
		"one step left":      {chain(5), 0, 1, true},
		"no step left":       {chain(5), 0, 0, false},
		"all entries":        {full, 229, maxSolveSteps, true},
		"an entry too many":  {full, 230, maxSolveSteps, false},
		"nothing to look at": {chain(3), 4, maxSolveSteps, true},
	} {
		r := graphOf(c.constraints, c.left)
		r.choices = max(r.choices, c.choices)
		r.index()
		ways := make([]bool, r.choices)
		for n := range ways {
			ways[n] = n%3 == 1
		}
		before := slices.Clone(ways)
		if found := r.exact(r.all(), ways); found != c.found || !found && !slices.Equal(ways, before) {
			t.Errorf("%s: the best is found: %v, other ways: %v", name, found, !slices.Equal(ways, before))
		}
	}
}

// TestStepsOfExact: taking a choice out of n that are left takes 8 n steps and one for each entry of its table, whose size is 2 to the number
// of its neighbors; those with the fewest go first. Counted by hand.
func TestStepsOfExact(t *testing.T) {
	star := func(middle int32) (list []constraint) {
		for n := range int32(5) {
			if n != middle {
				list = append(list, constraint{middle, n, true})
			}
		}
		return list
	}
	for name, c := range map[string]struct {
		constraints []constraint
		entries     int
		choices     int
	}{
		"three in a row":               {[]constraint{{0, 1, false}, {1, 2, false}}, 2 + 2 + 1, 3},
		"five round a ring":            {chain(5), 4 + 4 + 4 + 2 + 1, 5},
		"a star, its middle first":     {star(0), 2 + 2 + 2 + 2 + 1, 5},
		"a star, its middle last":      {star(4), 2 + 2 + 2 + 2 + 1, 5},
		"a star, its middle among all": {star(2), 2 + 2 + 2 + 2 + 1, 5},
		"all of four":                  {complete(0, 4), 8 + 4 + 2 + 1, 4},
	} {
		r := graphOf(c.constraints, maxSolveSteps)
		r.exact(r.all(), make([]bool, r.choices))
		if got, want := maxSolveSteps-r.left, c.entries+8*c.choices*(c.choices+1)/2; got != want {
			t.Errorf("%s: %d steps, not %d", name, got, want)
		}
	}
}

// TestExactPart: where only some choices may change, the others stay, and no ways of those leave less broken.
func TestExactPart(t *testing.T) {
	v := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		choices := 3 + v.IntN(7)
		r := randomConstraints(v, choices, 1+v.IntN(3*choices))
		r.index()
		r.left = maxSolveSteps
		ways := make([]bool, choices)
		var part component
		for n := range ways {
			ways[n] = v.IntN(2) == 0
			if v.IntN(2) == 0 {
				part.choices = append(part.choices, int32(n))
			}
		}
		before := slices.Clone(ways)
		if !r.exact(part, ways) {
			t.Fatal("small tables grew too large")
		}
		for n := range ways {
			if ways[n] != before[n] && !slices.Contains(part.choices, int32(n)) {
				t.Fatalf("choice %d was to stay", n)
			}
		}
		least := len(r.constraints)
		for i := range 1 << len(part.choices) {
			for k, n := range part.choices {
				before[n] = i>>k&1 == 1
			}
			least = min(least, r.countBroken(before))
		}
		if got := r.countBroken(ways); got != least {
			t.Fatalf("%d undone, but %d is the least\n%v, %v", got, least, r.constraints, part)
		}
	}
}

// countBroken is how many constraints are not kept.
func (r *constraintGraph) countBroken(ways []bool) (count int) {
	for i := range r.constraints {
		if !r.constraints[i].kept(ways) {
			count++
		}
	}
	return count
}

// TestEqualWays: of ways that are equally good all choices go the first way, whichever choice comes first.
func TestEqualWays(t *testing.T) {
	for _, constraints := range [][]constraint{{{0, 1, false}, {1, 2, false}}, {{2, 1, false}, {1, 0, false}}, complete(0, 4)[1:]} {
		r := graphOf(constraints, maxSolveSteps)
		ways := slices.Repeat([]bool{true}, r.choices)
		if r.exact(r.all(), ways); slices.Contains(ways, true) {
			t.Errorf("%v: %v", constraints, ways)
		}
	}
	ways := make([]bool, 3) // of three that are all to differ, the first is the one that does
	if r := graphOf([]constraint{{0, 1, true}, {1, 2, true}, {0, 2, true}}, maxSolveSteps); !r.exact(r.all(), ways) || !slices.Equal(ways, []bool{true, false, false}) {
		t.Errorf("of three that are all to differ: %v", ways)
	}
}

// TestStepsOfSolve: three choices round a ring of which one pair is unlike. Two descents look at three choices each, from the ways that
// follow and from all alike; the search for a cycle looks at three, at four steps each, once to count and once to show it; and each constraint
// is a step. The first ways stay, since all alike leave as much broken. Counted by hand.
func TestStepsOfSolve(t *testing.T) {
	var s *assignment
	var r *constraintGraph
	steps := stop.Count(func(sign *stop.Sign) {
		r = graphOf(chain(3), 0)
		r.sign = sign
		s = r.solve()
	})
	if steps != 3+2*3+2*4*3 || r.left != maxSolveSteps-2*3-2*4*3 {
		t.Errorf("%d steps, %d are left", steps, r.left)
	}
	if !slices.Equal(s.broken, []int32{1}) || s.least != 1 || !slices.Equal(s.ways, []bool{false, false, true}) || !slices.EqualFunc(s.oddCycles, [][]int32{{1, 0, 2}}, slices.Equal) {
		t.Errorf("%+v", s)
	}
}

// TestDescent turns choices round, one after the other, that leave less broken so, all of them once more as long as one was and a step is left:
// the middle of a star that is unlike all others, but not one that is unlike itself. A pass over five choices takes five steps.
func TestDescent(t *testing.T) {
	star := []constraint{{0, 1, true}, {2, 0, true}, {0, 3, true}, {4, 0, true}, {1, 1, true}}
	for left, want := range map[int]struct {
		left int
		ways []bool
	}{0: {0, []bool{false, false, false, false, false}}, 1: {-4, []bool{true, false, false, false, false}}, 100: {90, []bool{true, false, false, false, false}}} {
		r, ways := graphOf(star, left), make([]bool, 5)
		if r.descend(r.all(), ways); r.left != want.left || !slices.Equal(ways, want.ways) {
			t.Errorf("%d steps: %v, %d are left", left, ways, r.left)
		}
	}
}

// TestOddCycles: of two rings with an odd number of changes, and a choice that is to differ from itself, each is a cycle of its own, and as
// many are shown as are asked for, those of the first constraints.
func TestOddCycles(t *testing.T) {
	constraints := append(chain(4), constraint{4, 4, true}, constraint{5, 6, true}, constraint{6, 7, false}, constraint{7, 5, false})
	for most := range 5 {
		r := graphOf(constraints, 0)
		r.max = most
		s := r.solve()
		checkAnswer(t, r, s)
		if s.least != 3 || len(s.broken) != 3 {
			t.Fatalf("%d undone, known to be at least %d", len(s.broken), s.least)
		}
		for i, cycle := range s.oddCycles {
			if (cycle != nil) != (i < most) || cycle != nil && (cycle[0] != s.broken[i] || len(cycle) != []int{4, 1, 3}[i]) {
				t.Errorf("%d asked for: of constraint %d %v", most, s.broken[i], cycle)
			}
		}
	}
}

// TestCustom: a component is turned round where custom wants that, and stays where it does not or is of two minds.
func TestCustom(t *testing.T) {
	for _, c := range []struct {
		wants []float64
		ways  []bool
	}{
		{[]float64{1, 1, -3}, []bool{true, true, false}},
		{[]float64{1, 1, 1, 0.5}, []bool{true, true, false, true}},
		{[]float64{1, 1, 2}, []bool{false, false, true}},
		{[]float64{1, 1, 2.5}, []bool{false, false, true}},
		{[]float64{-1, 0, -1.5, -2}, []bool{true, true, false, false}},
	} {
		r := graphOf([]constraint{{0, 1, false}, {1, 2, true}}, 0)
		r.choices, r.wants = len(c.wants), c.wants
		if s := r.solve(); !slices.Equal(s.ways, c.ways) {
			t.Errorf("custom wants %v: %v, not %v", c.wants, s.ways, c.ways)
		}
	}
}

// TestSearchIsShort: the search for a cycle finds the shortest way along kept constraints that are not used, looks at 4000 choices and
// no more, and not at all without a step left.
func TestSearchIsShort(t *testing.T) {
	for _, c := range []struct {
		choices, length, left int
		used                  bool
		found                 int
	}{
		{10, 10, 1, false, 9}, {10, 10, 0, false, -1}, {10, 10, 1, true, -1}, {4000, 4000, 1, false, 3999}, {4001, 4001, 1, false, -1},
	} {
		constraints := chain(int32(c.choices))
		r := graphOf(constraints[:c.choices-1], c.left)
		used := map[int32]bool{5: c.used}
		look := &search{r: r, ways: make([]bool, r.choices), from: map[int32]int32{}}
		way := look.way(0, int32(c.choices-1), used)
		if way == nil && c.found >= 0 || way != nil && len(way) != c.found {
			t.Errorf("%+v: a way of %d", c, len(way))
		}
		for i, n := range way {
			if int(n) != i {
				t.Fatalf("%+v: constraint %d comes as number %d", c, n, i)
			}
		}
		if way := look.way(3, 3, nil); (way == nil) != (r.left <= 0) || len(way) > 0 {
			t.Errorf("from a choice to itself: %v", way)
		}
	}
}

// TestWindows: where a graph is too large for the search as a whole, no part round a constraint that is left broken can be bettered, and a
// part is the choices nearest to one.
func TestWindows(t *testing.T) {
	const side = 16
	r := grid(side, 4, rand.New(rand.NewPCG(11, 12)))
	s := r.solve()
	checkAnswer(t, r, s)
	if r.left = maxSolveSteps; r.exact(r.all(), slices.Clone(s.ways)) {
		t.Fatal("the graph is not too large")
	}
	for _, n := range s.broken {
		r.left = maxSolveSteps
		part, ways := r.window(r.constraints[n].a), slices.Clone(s.ways)
		if !r.exact(part, ways) {
			continue
		}
		if got := r.countBroken(ways); got < len(s.broken) {
			t.Fatalf("%d undone, but round constraint %d it can be %d", len(s.broken), n, got)
		}
	}
	part := r.window(0).choices
	for i, n := range part {
		far := n%side + n/side
		if slices.Contains(part[:i], n) || i > 0 && far < part[i-1]%side+part[i-1]/side || far > 13 {
			t.Fatalf("choice %d comes as number %d", n, i)
		}
	}
	if len(part) < windowChoices || len(part) > windowChoices+1 {
		t.Errorf("%d choices in a part", len(part))
	}
}

// grid is choices in a square, each with a constraint to the next and the one below, one of so many unlike.
func grid(side int32, unlike int, v *rand.Rand) *constraintGraph {
	var list []constraint
	for i := range side * side {
		if i%side < side-1 {
			list = append(list, constraint{i, i + 1, v.IntN(unlike) == 0})
		}
		if i < side*(side-1) {
			list = append(list, constraint{i, i + side, v.IntN(unlike) == 0})
		}
	}
	return graphOf(list, 0)
}

// TestLargeGraph: a grid of 60 by 60 with odd cycles all over is answered, with a bound that
// does not lie above what was reached.
func TestLargeGraph(t *testing.T) {
	r := grid(60, 5, rand.New(rand.NewPCG(7, 8)))
	s := r.solve()
	checkAnswer(t, r, s)
	if r.left = maxSolveSteps; s.least > len(s.broken) || s.least < len(s.broken)/4 || s.least < r.disjoint(s.broken, s.ways) {
		t.Errorf("%d undone, known to be at least %d", len(s.broken), s.least)
	}
	t.Logf("%d of %d undone, at least %d", len(s.broken), len(r.constraints), s.least)
}
