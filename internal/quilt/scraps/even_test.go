package scraps_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/quilt/scraps"
)

// lopsided is a dozen places of one pool, half of which may not have one of two fabrics, so that what is dealt first comes
// out uneven more often than in quilts at large.
func lopsided(seed uint64) []scraps.Place {
	rng := rand.New(rand.NewPCG(seed, 5))
	choices := []int{0, 1, 2, 3}[:3+rng.IntN(2)]
	places := make([]scraps.Place, 9+rng.IntN(4))
	for i := range places {
		p := &places[i]
		p.Choices = choices
		if rng.IntN(2) == 0 {
			p.Barred = []int{rng.IntN(2)}
		}
		for range 1 + rng.IntN(2) {
			if n := i - 1 - rng.IntN(4); n >= 0 && !slices.Contains(p.Neighbours, int32(n)) {
				beside(places, i, n)
			}
		}
	}
	return places
}

// beside makes two places neighbours.
func beside(places []scraps.Place, i, n int) {
	places[i].Neighbours = append(places[i].Neighbours, int32(n))
	places[n].Neighbours = append(places[n].Neighbours, int32(i))
}

// TestEvenByDetours: lopsided quilts are dealt as evenly as can be. Where no two fabrics come closer by changing places,
// that takes a detour, or a window: without both thirteen of these quilts stay uneven.
func TestEvenByDetours(t *testing.T) {
	tried := 0
	for seed := range uint64(200) {
		places := lopsided(seed)
		if exists(places, nil, 1<<40) != some {
			continue
		}
		tried++
		if off := uneven(places, scraps.Deal(nil, places, 0).Fabrics, 0); off != 0 {
			t.Errorf("seed %d is dealt %d further apart than need be", seed, off)
		}
	}
	if tried < 100 {
		t.Errorf("only %d quilts were dealt", tried)
	}
}

// TestEvenAcrossGroups: these quilts are dealt evenly only if a window holds places of two groups that do not touch, so that the one
// makes up for the other.
func TestEvenAcrossGroups(t *testing.T) {
	for _, seed := range []uint64{7148, 12724, 19055} {
		places := lopsided(seed)
		if off := uneven(places, scraps.Deal(nil, places, 0).Fabrics, 0); off != 0 {
			t.Errorf("seed %d is dealt %d further apart than need be", seed, off)
		}
	}
}

// TestEvenWithoutDetours: a top with more places than detours are made for is dealt evenly too, by fabrics that change
// places in pairs alone: threes of places in which two fabrics are barred here and there.
func TestEvenWithoutDetours(t *testing.T) {
	for fabrics := 3; fabrics <= 5; fabrics++ {
		rng := rand.New(rand.NewPCG(1, 5))
		places := make([]scraps.Place, 60_000)
		choices := []int{0, 1, 2, 3, 4}[:fabrics]
		for i := range places {
			places[i].Choices = choices
			if i > len(places)/2 {
				places[i].Barred = []int{rng.IntN(2)}
			}
			if i%3 > 0 {
				beside(places, i, i-1)
			}
		}
		if use := useOf(places, scraps.Deal(nil, places, 0).Fabrics, 0); use.most-use.least > 1 {
			t.Errorf("of %d fabrics the one used most is used %d times, the one used least %d", fabrics, use.most, use.least)
		}
	}
}
