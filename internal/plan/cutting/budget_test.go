package cutting

import (
	"cmp"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// bordered is a small quilt with so many borders of different widths, with corners, from so many fabrics in turn.
func bordered(t *testing.T, borders, fabrics int) *quilt.Top {
	t.Helper()
	var b strings.Builder
	b.WriteString("side 2\n")
	for i := range fabrics {
		fmt.Fprintf(&b, "fabric f%d #%02x6080\n", i, 40+i*180/fabrics)
	}
	b.WriteString("block P plain piece f0\ngrid\n P P\n P P\n")
	for i := range borders {
		fmt.Fprintf(&b, "border %.2f f%d corners f%d\n", 0.30+0.01*float64(i), i%fabrics, (i+1)%fabrics)
	}
	design, _, faults := layout.Read(b.String())
	if design == nil {
		t.Fatal(faults)
	}
	return quilt.Lay(design)
}

// stepsOf is how many steps a plan took in all.
func stepsOf(p *Plan) int {
	steps := 0
	for i := range p.Fabrics {
		steps += p.Fabrics[i].budget.used()
	}
	return steps
}

// Whatever a layout asks for, a plan takes no more steps than its budget and a little for what was begun; what it gives
// then is a whole plan, and says that the search ended.
func TestStepsOfGrowingFamilies(t *testing.T) {
	ended := 0
	for _, fabrics := range []int{4, 1, 16}[:judges.Of(1, 3)] {
		for _, borders := range []int{10, 40, 180} {
			top := bordered(t, borders, fabrics)
			p := Build(nil, top, Options{})
			steps, whole := stepsOf(p), true
			for i := range p.Fabrics {
				f := &p.Fabrics[i]
				whole = whole && !f.SearchEnded
				if f.budget.left < 0 && !f.SearchEnded || f.LengthBound <= 0 || f.StripBound <= 0 {
					t.Errorf("%d borders of %d fabrics: %s ended %v, bounds %d and %d", borders, fabrics, f.Name, f.SearchEnded, f.LengthBound, f.StripBound)
				}
			}
			if !whole {
				ended++
			}
			if most := maxPlanSteps + maxPlanSteps/20; steps > most || whole && steps > maxPlanSteps {
				t.Errorf("%d borders of %d fabrics: %d steps, at the most %d are wanted", borders, fabrics, steps, most)
			}
			if err := cmp.Or(wrongSums(p), unsupplied(top, p), ungiven(p)); err != nil {
				t.Errorf("%d borders of %d fabrics: %v", borders, fabrics, err)
			}
			t.Logf("%3d borders of %2d fabrics: %9d steps, ended %v", borders, fabrics, steps, !whole)
		}
	}
	if ended == 0 {
		t.Error("no search ended before all was tried")
	}
}

// A plan that all but the first rule had no steps for takes no less cloth than one with all steps, and holds all items.
func TestSpentBudgetPacksAll(t *testing.T) {
	for _, n := range sampleTops() {
		p := planned(n.Top, Options{})
		for i := range p.Fabrics {
			f := &p.Fabrics[i]
			if f.laid == nil || len(f.laid.items) == 0 {
				continue
			}
			poor := f.laid.packing
			poor.budget = &budget{left: -1}
			s, rich := poor.pack(), f.laid.packing
			rich.budget = nil
			cut := make([]int, len(poor.items))
			for _, pattern := range s.patterns {
				for k, count := range pattern.counts {
					cut[k] += count * pattern.times
				}
			}
			for k := range cut {
				if cut[k] != poor.items[k].count {
					t.Errorf("%s, %s: %d of an item, want %d", n.name, f.Name, cut[k], poor.items[k].count)
				}
			}
			if best := rich.pack(); s.better(best) {
				t.Errorf("%s, %s: the spent budget is better", n.name, f.Name)
			}
			if cloth, strips := poor.sharpBound(); cloth > s.cloth || strips > s.strips {
				t.Errorf("%s, %s: bounds %d and %d above the plan", n.name, f.Name, cloth, strips)
			}
		}
	}
}

// TestPurse: steps are shared evenly among those who are still to come, and what one leaves goes to them.
func TestPurse(t *testing.T) {
	for sharers := range 6 {
		for _, uses := range []int{0, 7, 100, 10_000} {
			p, left := purse{left: 1000, sharers: sharers}, 1000
			for to := sharers; to > 0; to-- {
				b := p.share()
				if want := max(0, left) / to; b.given != want || b.left != want {
					t.Errorf("%d sharers: of %d steps the next of %d gets %d", sharers, left, to, b.given)
				}
				if enough := b.spend(uses); enough != (uses <= b.given) || b.used() != uses || b.spent() == enough {
					t.Errorf("of %d steps %d are spent: %v, %d used, all spent %v", b.given, uses, enough, b.used(), b.spent())
				}
				p.back(b)
				left -= uses
			}
		}
	}
	if p := (purse{left: 1000}); p.share().given != 1000 {
		t.Error("where nobody shares, steps are missing")
	}
	if b := (*budget)(nil); !b.spend(1_000_000) || b.spent() {
		t.Error("what is without end is spent")
	}
}
