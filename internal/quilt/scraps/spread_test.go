package scraps_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/quilt/scraps"
)

// column is places in a line, each beside the next.
func column(count, fabrics, pools int) []scraps.Place {
	places := make([]scraps.Place, count)
	for i := range places {
		p := &places[i]
		p.Line, p.Pool = 1, i%pools
		for f := range fabrics {
			p.Choices = append(p.Choices, f)
		}
		if i > 0 {
			p.Neighbours = append(p.Neighbours, int32(i-1))
		}
		if i+1 < count {
			p.Neighbours = append(p.Neighbours, int32(i+1))
		}
	}
	return places
}

// crowding is the more, the nearer the pieces of each fabric lie to each other in their lines; written without the package.
func crowding(places []scraps.Place, fabrics []int) float64 {
	sum := 0.0
	lines := map[int][]int{}
	for i, p := range places {
		if p.Line > 0 {
			for far, f := range lines[p.Line] {
				if d := len(lines[p.Line]) - far; f == fabrics[i] {
					sum += 1 / float64(d*d)
				}
			}
			lines[p.Line] = append(lines[p.Line], fabrics[i])
		}
	}
	return sum
}

// alikeIn is how many neighbours are alike.
func alikeIn(places []scraps.Place, fabrics []int) int {
	n := 0
	for i, p := range places {
		for _, other := range p.Neighbours {
			if int(other) < i && fabrics[other] == fabrics[i] {
				n++
			}
		}
	}
	return n
}

// leastCrowding is that of the best of all deals of one column that use each fabric as often and leave no more alike.
func leastCrowding(places []scraps.Place, dealt []int) float64 {
	best, most := crowding(places, dealt), alikeIn(places, dealt)
	var left []int
	for _, f := range dealt {
		for len(left) <= f {
			left = append(left, 0)
		}
		left[f]++
	}
	fabrics := make([]int, len(dealt))
	var from func(at int)
	from = func(at int) {
		if at == len(dealt) {
			if alikeIn(places, fabrics) <= most {
				best = min(best, crowding(places, fabrics))
			}
			return
		}
		for f := range left {
			if left[f] > 0 {
				left[f]--
				fabrics[at] = f
				from(at + 1)
				left[f]++
			}
		}
	}
	from(0)
	return best
}

// TestSpreadIsBest tries all deals of short columns: none with the same numbers of each fabric lets them lie further apart by
// more than a trace, and nearly all are the best.
func TestSpreadIsBest(t *testing.T) {
	tried, best := 0, 0
	for count := 3; count <= 9; count++ {
		for fabrics := 2; fabrics <= 4; fabrics++ {
			for number := range 6 {
				places := column(count, fabrics, 1)
				dealt := scraps.Deal(nil, places, number).Fabrics
				got, want := crowding(places, dealt), leastCrowding(places, dealt)
				tried++
				if got <= want+1e-5 {
					best++
				}
				if got > 1.25*want+1e-5 {
					t.Errorf("%d places of %d fabrics, deal %d: %v crowds %.3f, the best %.3f", count, fabrics, number, dealt, got, want)
				}
			}
		}
	}
	if best < tried*9/10 {
		t.Errorf("%d of %d columns are dealt as far apart as can be", best, tried)
	}
}

// ableToSpread is two places that would lie better if their fabrics were changed about, "" where there are none.
func ableToSpread(places []scraps.Place, fabrics []int) string {
	now, alike := crowding(places, fabrics), alikeIn(places, fabrics)
	changed := slices.Clone(fabrics)
	for p := range places {
		for q := range p {
			if places[p].Pool != places[q].Pool || places[p].Line == 0 || places[q].Line == 0 || !slices.Contains(places[p].Choices, fabrics[q]) || !slices.Contains(places[q].Choices, fabrics[p]) {
				continue
			}
			changed[p], changed[q] = fabrics[q], fabrics[p]
			if crowding(places, changed) < now-1e-4 && alikeIn(places, changed) <= alike {
				return fmt.Sprintf("places %d and %d", q, p)
			}
			changed[p], changed[q] = fabrics[p], fabrics[q]
		}
	}
	return ""
}

// columns are columns side by side that lean, so that pieces touch one or two of the next column.
func columns(seed uint64) []scraps.Place {
	rng := rand.New(rand.NewPCG(seed, 7))
	across, down, fabrics := 1+rng.IntN(4), 4+rng.IntN(12), 3+rng.IntN(4)
	var places []scraps.Place
	for line := range across {
		first := len(places)
		for _, p := range column(down, fabrics, 1+rng.IntN(2)) {
			p.Line = line + 1
			for i := range p.Neighbours {
				p.Neighbours[i] += int32(first)
			}
			places = append(places, p)
		}
		for i := first; line > 0 && i < len(places); i++ {
			for _, other := range []int{i - down, i - down - 1} {
				if other >= first-down && other < first {
					places[i].Neighbours = append(places[i].Neighbours, int32(other))
					places[other].Neighbours = append(places[other].Neighbours, int32(i))
				}
			}
		}
	}
	return places
}

// TestSpread: in columns of all sorts no two pieces of a pool would lie better in each other's place; the numbers of each
// fabric are as even as those of the same places without lines.
func TestSpread(t *testing.T) {
	for seed := range uint64(60) {
		places := columns(seed)
		dealt := scraps.Deal(nil, places, int(seed)).Fabrics
		if pair := ableToSpread(places, dealt); pair != "" {
			t.Errorf("seed %d: %s of %v would lie better changed about", seed, pair, dealt)
		}
		loose := slices.Clone(places)
		for i := range loose {
			loose[i].Line = 0
		}
		without := scraps.Deal(nil, loose, int(seed)).Fabrics
		for pool := range 2 {
			if len(fabricsOf(places, pool)) > 0 && useOf(places, dealt, pool) != useOf(places, without, pool) {
				t.Errorf("seed %d: spreading changed the numbers of pool %d", seed, pool)
			}
		}
		if alikeIn(places, dealt) > alikeIn(places, without) {
			t.Errorf("seed %d: spreading made neighbours alike", seed)
		}
	}
}

// TestSpreadNotices: pieces of one fabric at one end of a column are found out.
func TestSpreadNotices(t *testing.T) {
	places := column(9, 3, 1)
	if ableToSpread(places, []int{0, 1, 2, 0, 1, 2, 0, 1, 2}) != "" {
		t.Error("fabrics by turns are found to be crowded")
	}
	if ableToSpread(places, []int{0, 1, 0, 1, 0, 2, 1, 2, 2}) == "" {
		t.Error("a fabric at one end of its column is not found")
	}
}
