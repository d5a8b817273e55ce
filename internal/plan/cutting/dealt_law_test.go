package cutting

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// dealtText is a field of webs from strip sets that are dealt by set, so many of them.
const dealtText = "strip 4\nfabric l #fff\nfabric a #111\nfabric b #222\nfabric c #333\nfabric d #444\nfabric e #555\nfabric f #666\nscraps s a b c d e f by set\n" +
	"strip-set t s 1 3/4 s 1 1/2 s 1 3/4 sets %d\nwebs t / reversed t\nblock W web kites l\ngrid\n W\nrepeat across 6 down 6\n"

// dealtRings is rings of which each is a web of its own.
const dealtRings = "side 8\nfabric l #fff\nfabric a #111\nfabric b #222\nfabric c #333\nfabric d #444\nscraps r b c d by set\nstrip-set u r 2 l rest\n" +
	"block X ring wedges u corners l\ngrid\n X X X X\n X . X X\n"

// TestDealtInPlans: a plan takes over how strip sets were dealt, but for sets that no web is cut from: their numbers, fabrics and webs, with
// the blocks by row and column; and the strip set that it sews for each is of those fabrics and gives those wedges.
func TestDealtInPlans(t *testing.T) {
	mixed, single := 0, 0
	for _, text := range []string{fmt.Sprintf(dealtText, 8), fmt.Sprintf(dealtText, 100), fmt.Sprintf(dealtText, 9) + "sash 2 l\n", dealtRings} {
		top := lay.Top(t, text)
		p := Build(nil, top, Options{Copies: 2})
		if len(p.Faults) > 0 || len(p.Dealt) != len(top.Dealt) || len(p.Dealt) == 0 {
			t.Fatalf("%v, %d strip sets are dealt, %d in the plan", p.Faults, len(top.Dealt), len(p.Dealt))
		}
		for i, d := range top.Dealt {
			made, next := &p.Dealt[i], 0
			if made.Name != top.CutFacts.Sets[d.Set].Name || made.Mixed != d.Mixed || made.Whole != d.Whole || made.Neighbors != d.Beside {
				t.Errorf("%s: %d webs are mixed, %d neighbors alike, %d sets for whole webs; the top says %+v", made.Name, made.Mixed, made.Neighbors, made.Whole, d)
			}
			for _, s := range d.Sets {
				if len(s.Webs) == 0 {
					continue
				}
				got := &made.Sets[next]
				if next++; got.Set != next-1 { // in the order in which they are sewn, before all others
					t.Errorf("set %d is number %d of the plan's", s.Number, got.Set)
				}
				var wedges [2]int
				for n, w := range s.Webs {
					web := &got.Webs[n]
					var cells []Cell
					for _, cell := range w.Cells {
						cells = append(cells, Cell{1 + cell/top.Columns, 1 + cell%top.Columns})
					}
					if !slices.Equal(web.Blocks, cells) || web.Wedges != w.Wedges || web.Mixed != w.Mixed || !slices.Equal(web.Patches, w.Patches) {
						t.Errorf("set %d: a web is %+v, the top has %+v", s.Number, *web, w)
					}
					wedges[0], wedges[1] = wedges[0]+p.Copies*w.Wedges[0], wedges[1]+p.Copies*w.Wedges[1]
					if w.Mixed {
						mixed++
					}
				}
				if len(s.Webs) == 1 {
					single++
				}
				set := &p.Sets[got.Set]
				for n, f := range s.Fabrics {
					if p.Fabrics[got.Fabrics[n]].Index != f || set.Bands[n].Fabric != got.Fabrics[n] {
						t.Errorf("set %d: strip %d is of %s and sewn of %s, dealt was %s", s.Number, n, p.Fabrics[got.Fabrics[n]].Name, p.Fabrics[set.Bands[n].Fabric].Name, top.Fabrics[f].Name)
					}
				}
				if set.Wanted != wedges || got.Number != s.Number || p.setNumbers[got.Set] != s.Number || len(got.Webs) != len(s.Webs) {
					t.Errorf("set %d, %d in the plan: wedges wanted %v, dealt %v", s.Number, got.Number, set.Wanted, wedges)
				}
			}
			if next != len(made.Sets) {
				t.Errorf("%s: %d sets are in the plan, %d have webs", made.Name, len(made.Sets), next)
			}
		}
	}
	if mixed == 0 || single == 0 {
		t.Errorf("%d webs are mixed, %d sets make a single web", mixed, single)
	}
}
