package templates

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/samples"
)

// uncounted says which patches no template, or more than one, stands for.
func uncounted(top *quilt.Top, list []Template) string {
	pieces, counted := 0, 0
	for i := range top.Patches {
		p := &top.Patches[i]
		if p.Shape == blocks.Strip {
			continue
		}
		pieces++
		same := 0
		for n := range list {
			if _, ok := congruent(floats(p.Outline), points(list[n].Finished)); ok && list[n].Shape == p.Shape && alike(list[n].Print, top, i) {
				same++
			}
		}
		if same != 1 {
			return fmt.Sprintf("patch %d, a %s, is like %d templates", i, p.Shape, same)
		}
	}
	for i := range list {
		counted += list[i].Count
	}
	if counted != pieces {
		return fmt.Sprintf("%d pieces are counted, there are %d", counted, pieces)
	}
	return ""
}

// alike says whether a template shows the place of a print that a patch is cut from, or none where it is cut from none.
func alike(p *Print, top *quilt.Top, patch int) bool {
	c := top.CutOfPatch(patch)
	if c == nil || c.Motif == "" && !c.Alike {
		return p == nil
	}
	return p != nil && top.Cuts[p.Place] == *c
}

// TestEveryPieceHasItsTemplate, one and only one, and all are counted.
func TestEveryPieceHasItsTemplate(t *testing.T) {
	for name, top := range tops(t) {
		if wrong := uncounted(top, usual(top)); wrong != "" {
			t.Errorf("%s: %s", name, wrong)
		}
	}
	for n, top := range inventedTops(t, 60) {
		if wrong := uncounted(top, usual(top)); wrong != "" {
			t.Errorf("layout %d: %s", n, wrong)
		}
	}
}

func TestMissingTemplateIsNoticed(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	list := usual(top)
	if uncounted(top, list[1:]) == "" || uncounted(top, append(list, list[0])) == "" {
		t.Error("a template too few or too many was not noticed")
	}
	list[0].Count--
	if uncounted(top, list) == "" {
		t.Error("a piece that is not counted was not noticed")
	}
}

// TestCountsAreThoseOfTheCuttingPlan: as many pieces of each shape, hand and cloth as the
// plan has, which counts them in another way.
func TestCountsAreThoseOfTheCuttingPlan(t *testing.T) {
	for name, top := range tops(t) {
		want, got := map[string]int{}, map[string]int{}
		plan := cutting.Build(nil, top, cutting.Options{})
		for i := range plan.Lines {
			l := &plan.Lines[i]
			if l.Piece.Shape == blocks.Strip {
				continue
			}
			cloth := "a set"
			if l.Fabric >= 0 {
				cloth = plan.Fabrics[l.Fabric].Name
			}
			want[fmt.Sprint(l.Piece.Shape, cloth, "left")] += l.Left
			want[fmt.Sprint(l.Piece.Shape, cloth, "right")] += l.Right
			want[fmt.Sprint(l.Piece.Shape, cloth)] += l.Pieces - l.Left - l.Right
		}
		for _, p := range usual(top) {
			for _, c := range p.Cloths {
				cloth := "a set"
				if c.Fabric >= 0 {
					cloth = top.Fabrics[c.Fabric].Name
				}
				got[fmt.Sprint(p.Shape, cloth)+p.Hand] += c.Count
			}
		}
		for what, n := range want {
			if got[what] != n {
				t.Errorf("%s: %d of %q, the cutting plan has %d", name, got[what], what, n)
			}
		}
	}
}
