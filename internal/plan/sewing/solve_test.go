package sewing

import (
	"math/rand/v2"
	"testing"

	"eighthturn/internal/blocks"
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
		for _, c := range r.components() {
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

// TestLargeGraph: a grid of 60 by 60 with odd cycles all over is answered, with a bound that
// does not lie above what was reached.
func TestLargeGraph(t *testing.T) {
	const side = 60
	v := rand.New(rand.NewPCG(7, 8))
	r := &constraintGraph{choices: side * side, max: 10, wants: make([]float64, side*side)}
	for i := range int32(side * side) {
		if i%side < side-1 {
			r.constraints = append(r.constraints, constraint{i, i + 1, v.IntN(5) == 0})
		}
		if i < side*(side-1) {
			r.constraints = append(r.constraints, constraint{i, i + side, v.IntN(5) == 0})
		}
	}
	s := r.solve()
	checkAnswer(t, r, s)
	if s.least > len(s.broken) || s.least < len(s.broken)/4 {
		t.Errorf("%d undone, known to be at least %d", len(s.broken), s.least)
	}
	t.Logf("%d of %d undone, at least %d", len(s.broken), len(r.constraints), s.least)
}
