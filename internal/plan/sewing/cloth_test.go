package sewing_test

import (
	"eighthturn/internal/quilttest/lay"
	"math"
	"reflect"
	"slices"
	"testing"

	"eighthturn/internal/plan/sewing"
)

// TestReversedWedges: a wedge whose tip lies on the other edge of its strip set is a cloth of its own, and nothing else is.
func TestReversedWedges(t *testing.T) {
	p := planOf(lay.Top(t, "strip 4\nfabric a #112233\nfabric b #eeeeee\nstrip-set shore a 1 3/4 b rest\nblock W web wedges reversed shore kites b\nwebs shore / reversed shore\ngrid\n W W\n W W\n"), sewing.Options{})
	want := []sewing.Cloth{{Name: "shore", Reversed: true}, {Name: "shore"}, {Name: "b"}}
	for _, c := range want {
		if !slices.ContainsFunc(p.Cloths, func(d sewing.Cloth) bool { return reflect.DeepEqual(c, d) }) {
			t.Errorf("%v is not among %v", c, p.Cloths)
		}
	}
	if len(p.Cloths) != len(want) {
		t.Errorf("%v", p.Cloths)
	}
}

// TestJudgeForms: a rectangle's area is across by down, a triangle's half the square of its
// short sides, and every other unit is smaller than the rectangle into which it fits, as the
// library measures areas.
func TestJudgeForms(t *testing.T) {
	seen := map[sewing.Form]int{}
	for _, n := range everyPlan() {
		name, top, p := n.name, n.Top, n.plan
		for _, b := range p.Blocks {
			for _, s := range b.Steps {
				if b.Column || len(s.Joins) == 0 {
					continue
				}
				j := s.Joins[len(s.Joins)-1]
				_, g := unionOf(t, top, p.Patches(b.Variants[0].Cells[0].Cell, slices.Concat(j.A, j.B)))
				part := g.Area() / (inches(s.Finished.Across) * inches(s.Finished.Down))
				seen[s.Form]++
				right := map[sewing.Form]bool{sewing.Rectangle: math.Abs(part-1) < 1e-6, sewing.Triangle: math.Abs(part-0.5) < 1e-6 && s.Finished.Across == s.Finished.Down, sewing.Slanted: part < 0.999}
				if !right[s.Form] {
					t.Fatalf("%s: %s of %s is no %s: it fills %.6f of its size", name, s.Name, b.Kind, s.Form, part)
				}
			}
		}
	}
	if len(seen) != 3 {
		t.Errorf("not every form was seen: %v", seen)
	}
}
