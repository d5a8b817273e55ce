package sewing

import (
	"math/rand/v2"
	"testing"

	"eighthturn/internal/blocks"
)

// randomRiddle is choices with asks between them: a grid's, or any.
func randomRiddle(v *rand.Rand, choices, asks int) *riddle {
	r := &riddle{choices: choices, most: 1000, wants: make([]float64, choices)}
	for range asks {
		a, b := int32(v.IntN(choices)), int32(v.IntN(choices))
		if v.IntN(3) > 0 {
			b = (a + 1 + int32(v.IntN(3))) % int32(choices)
		}
		r.asks = append(r.asks, asked{a, b, v.IntN(4) == 0})
	}
	for i := range r.wants {
		r.wants[i] = v.Float64() - 0.5
	}
	return r
}

// leastUndone tries every way.
func leastUndone(r *riddle) int {
	best := len(r.asks)
	ways := make([]bool, r.choices)
	for i := range 1 << r.choices {
		for n := range ways {
			ways[n] = i>>n&1 == 1
		}
		count := 0
		for n := range r.asks {
			if !r.asks[n].done(ways) {
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
		if len(k.Pieces) > mostPieces {
			t.Errorf("%s has %d pieces", k.Name, len(k.Pieces))
		}
	}
}

// TestSolveIsBest: what is left undone is the least that can be, and that is known.
func TestSolveIsBest(t *testing.T) {
	v := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		choices := 2 + v.IntN(11)
		r := randomRiddle(v, choices, 1+v.IntN(3*choices))
		s := r.solve()
		want := leastUndone(r)
		if len(s.broken) != want || s.least != want {
			t.Fatalf("%d undone, known to be at least %d, but %d is the least\n%v", len(s.broken), s.least, want, r.asks)
		}
		checkAnswer(t, r, s)
	}
}

// checkAnswer: what is said to be undone is what is undone, and nothing else.
func checkAnswer(t *testing.T, r *riddle, s *answer) {
	t.Helper()
	undone := map[int32]bool{}
	for i := range r.asks {
		if !r.asks[i].done(s.ways) {
			undone[int32(i)] = true
		}
	}
	if len(undone) != len(s.broken) {
		t.Fatalf("%d undone, %d said", len(undone), len(s.broken))
	}
	for _, n := range s.broken {
		if !undone[n] {
			t.Fatalf("ask %d is said to be undone", n)
		}
	}
}

// TestDisjointNeverSaysTooMuch: rings that share nothing never prove more than there is, also
// where the ways are not the best.
func TestDisjointNeverSaysTooMuch(t *testing.T) {
	v := rand.New(rand.NewPCG(3, 4))
	for range 400 {
		choices := 2 + v.IntN(10)
		r := randomRiddle(v, choices, 1+v.IntN(3*choices))
		r.index()
		ways := make([]bool, choices)
		for i := range ways {
			ways[i] = v.IntN(2) == 0
		}
		var broken []int32
		for i := range r.asks {
			if !r.asks[i].done(ways) {
				broken = append(broken, int32(i))
			}
		}
		if found, least := r.disjoint(broken, ways), leastUndone(r); found > least {
			t.Fatalf("%d rings are said to share nothing, but %d undone is enough\n%v", found, least, r.asks)
		}
	}
}

// TestExact: taking choices out one by one finds the least on its own, whatever ways it
// starts from.
func TestExact(t *testing.T) {
	v := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		choices := 2 + v.IntN(10)
		r := randomRiddle(v, choices, 1+v.IntN(3*choices))
		r.index()
		ways := make([]bool, choices)
		count := 0
		for _, c := range r.components() {
			if !r.exact(c, ways) {
				t.Fatal("small tables grew too large")
			}
			count += len(r.broken(c, ways))
		}
		if want := leastUndone(r); count != want {
			t.Fatalf("%d undone, but %d is the least\n%v", count, want, r.asks)
		}
	}
}

// TestLargeRiddle: a grid of 60 by 60 with odd rings all over is answered, with a bound that
// does not lie above what was reached.
func TestLargeRiddle(t *testing.T) {
	const side = 60
	v := rand.New(rand.NewPCG(7, 8))
	r := &riddle{choices: side * side, most: 10, wants: make([]float64, side*side)}
	for i := range int32(side * side) {
		if i%side < side-1 {
			r.asks = append(r.asks, asked{i, i + 1, v.IntN(5) == 0})
		}
		if i < side*(side-1) {
			r.asks = append(r.asks, asked{i, i + side, v.IntN(5) == 0})
		}
	}
	s := r.solve()
	checkAnswer(t, r, s)
	if s.least > len(s.broken) || s.least < len(s.broken)/4 {
		t.Errorf("%d undone, known to be at least %d", len(s.broken), s.least)
	}
	t.Logf("%d of %d undone, at least %d", len(s.broken), len(r.asks), s.least)
}
