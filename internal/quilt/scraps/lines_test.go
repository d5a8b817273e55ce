package scraps_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/quilt/scraps"
	"eighthturn/internal/quilttest/judges"
)

// grid is blocks in rows and columns, each beside those to its sides, with some pieces of one pool each.
func grid(across, down, pieces, fabrics int) []scraps.Place {
	var places []scraps.Place
	for i := range across * down * pieces {
		x, y := i/pieces%across, i/pieces/across
		p := scraps.Place{Choices: count(fabrics), Lines: scraps.Lines{int32(1 + y), int32(101 + x), int32(300 + x - y), int32(401 + x + y)}}
		places = append(places, p)
		switch {
		case i%pieces > 0:
			beside(places, i, i-1)
		default:
			if x > 0 {
				beside(places, i, i-pieces)
			}
			if y > 0 {
				beside(places, i, i-pieces*across)
			}
		}
	}
	return places
}

// crowdedness is the sum of the squares of how often each fabric of a pool is in each row, column and diagonal; written without the
// package.
func crowdedness(places []scraps.Place, fabrics []int) int {
	type line struct {
		pool, fabric int
		number       int32
	}
	counts, sum := map[line]int{}, 0
	for i, p := range places {
		for _, n := range p.Lines {
			if n > 0 {
				counts[line{p.Pool, fabrics[i], n}]++
			}
		}
	}
	for _, n := range counts {
		sum += n * n
	}
	return sum
}

// leastCrowded is that of the best of all deals of one pool that use each fabric as often and leave no more alike.
func leastCrowded(places []scraps.Place, dealt []int) int {
	best, most := crowdedness(places, dealt), alikeIn(places, dealt)
	left := useOfAll(dealt)
	fabrics, counts := make([]int, len(dealt)), map[[2]int32]int{}
	var from func(at, sum, alike int)
	from = func(at, sum, alike int) {
		switch {
		case alike > most || sum >= best:
			return
		case at == len(dealt):
			best = sum
			return
		}
		for f := range left {
			if left[f] == 0 {
				continue
			}
			more, beside := sum, alike
			for _, n := range places[at].Lines {
				more += 2*counts[[2]int32{n, int32(f)}] + 1
				counts[[2]int32{n, int32(f)}]++
			}
			for _, n := range places[at].Neighbours {
				if int(n) < at && fabrics[n] == f {
					beside++
				}
			}
			left[f]--
			fabrics[at] = f
			from(at+1, more, beside)
			left[f]++
			for _, n := range places[at].Lines {
				counts[[2]int32{n, int32(f)}]--
			}
		}
	}
	from(0, 0, 0)
	return best
}

// useOfAll is how often each fabric is used.
func useOfAll(dealt []int) []int {
	left := make([]int, slices.Max(dealt)+1)
	for _, f := range dealt {
		left[f]++
	}
	return left
}

// TestLinesAreBest tries all deals of small grids: with the same numbers of each fabric and no more neighbors alike hardly any is
// less crowded in its rows, columns and diagonals, and none by much.
func TestLinesAreBest(t *testing.T) {
	tried, best := 0, 0
	for _, size := range [][2]int{{3, 3}, {3, 4}, {4, 3}, {5, 3}}[:judges.Of(2, 4)] {
		for fabrics := 2; fabrics <= judges.Of(3, 4); fabrics++ {
			for number := range judges.Of(3, 5) {
				places := grid(size[0], size[1], 1, fabrics)
				dealt := scraps.Deal(nil, places, number).Fabrics
				got, want := crowdedness(places, dealt), leastCrowded(places, dealt)
				tried++
				if got == want {
					best++
				}
				if got*20 > want*21 {
					t.Errorf("%d by %d blocks of %d fabrics, deal %d: %v crowds %d, the best %d", size[0], size[1], fabrics, number, dealt, got, want)
				}
			}
		}
	}
	t.Logf("%d of %d grids are dealt as little crowded as can be", best, tried)
	if best < tried*95/100 {
		t.Errorf("%d of %d grids are dealt as little crowded as can be", best, tried)
	}
}

// laidOut is a grid with two pools, in which some fabrics are barred.
func laidOut(seed uint64) []scraps.Place {
	rng := rand.New(rand.NewPCG(seed, 11))
	places := grid(2+rng.IntN(5), 2+rng.IntN(5), 1+rng.IntN(3), 3+rng.IntN(5))
	second := count(2 + rng.IntN(3))
	for i := range places {
		if rng.IntN(3) == 0 {
			places[i].Pool, places[i].Choices = 1, second
		}
		if rng.IntN(8) == 0 {
			places[i].Barred = []int{rng.IntN(3)}
		}
	}
	return places
}

// ableToTrade is two places of a pool that would be less crowded if their fabrics were changed about, "" where there are none.
func ableToTrade(places []scraps.Place, fabrics []int) string {
	now, alike, changed := crowdedness(places, fabrics), alikeIn(places, fabrics), slices.Clone(fabrics)
	for p := range places {
		for q := range p {
			if places[p].Pool != places[q].Pool || fabrics[p] == fabrics[q] || domain(places[p])&(1<<fabrics[q]) == 0 || domain(places[q])&(1<<fabrics[p]) == 0 {
				continue
			}
			changed[p], changed[q] = fabrics[q], fabrics[p]
			if crowdedness(places, changed) < now && alikeIn(places, changed) <= alike {
				return fmt.Sprintf("places %d and %d", q, p)
			}
			changed[p], changed[q] = fabrics[p], fabrics[q]
		}
	}
	return ""
}

// TestLinesLaws: spreading along lines changes neither how often a fabric is used nor how many neighbors are alike, and nothing is left
// that a trade of two places would better.
func TestLinesLaws(t *testing.T) {
	better := 0
	for seed := range uint64(judges.Of(60, 200)) {
		places := laidOut(seed)
		dealt := scraps.Deal(nil, places, int(seed)).Fabrics
		loose := slices.Clone(places)
		for i := range loose {
			loose[i].Lines = scraps.Lines{}
		}
		without := scraps.Deal(nil, loose, int(seed)).Fabrics
		for pool := range 2 {
			if len(fabricsOf(places, pool)) > 0 && useOf(places, dealt, pool) != useOf(places, without, pool) {
				t.Errorf("seed %d: spreading changed the numbers of pool %d", seed, pool)
			}
		}
		for i, f := range dealt {
			if domain(places[i])&(1<<f) == 0 {
				t.Errorf("seed %d: place %d has a fabric that it may not have", seed, i)
			}
		}
		if alikeIn(places, dealt) > alikeIn(places, without) {
			t.Errorf("seed %d: spreading made neighbors alike", seed)
		}
		if pair := ableToTrade(places, dealt); pair != "" && len(places) <= 60 {
			t.Errorf("seed %d: %s of %v would be less crowded changed about", seed, pair, dealt)
		}
		switch now, before := crowdedness(places, dealt), crowdedness(places, without); {
		case now < before:
			better++
		case now > before:
			t.Errorf("seed %d: spreading crowds the lines more", seed)
		}
	}
	if better < judges.Of(40, 130) {
		t.Errorf("only %d grids were bettered", better)
	}
}

// TestLinesNotice: stripes of one fabric are found out, and a Latin square is not.
func TestLinesNotice(t *testing.T) {
	places := grid(5, 5, 1, 5)
	var latin, stripes []int
	for i := range places {
		latin, stripes = append(latin, (i%5+2*(i/5))%5), append(stripes, (i/5+i%5)%5)
	}
	if pair := ableToTrade(places, latin); pair != "" {
		t.Errorf("a square with every fabric once in each row and column is crowded: %s", pair)
	}
	if crowdedness(places, stripes) <= crowdedness(places, latin) || ableToTrade(places, stripes) == "" {
		t.Error("stripes along a diagonal are not found")
	}
}

// TestKingInLines: of 24 by 24 blocks dealt 40 fabrics none has one fabric twice in a row, a column or a diagonal, which is the best
// that can be: a line of 24 holds each of 40 once at the most.
func TestKingInLines(t *testing.T) {
	places := grid(24, 24, 1, 40)
	if got := crowdedness(places, scraps.Deal(nil, places, 0).Fabrics); got != 4*len(places) {
		t.Errorf("the lines crowd %d, want %d: each fabric once in each", got, 4*len(places))
	}
}
