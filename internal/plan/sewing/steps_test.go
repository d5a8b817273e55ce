package sewing_test

import (
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/stop"
)

// TestSteps counts the steps of small plans, by hand: long work can be ended at each, and budgets are counted in them.
func TestSteps(t *testing.T) {
	for name, c := range map[string]struct {
		grid           string
		pieces, places int // a piece is a step as it is sorted and as its points are looked for, a place of the grid one for each side
		parts          int // of rows, a step each
		ends           int // of seams between blocks: a step each for all that end in the same point
		touching       int // parts of two rows, or seams of two blocks, gone through side by side, and places where rows are still to be joined
		arms           int // seams that end on a line between blocks, and those that are such a line or begin the part before it
		joints         int
	}{
		"one block":              {" P\n", 1, 1, 1, 0, 0, 0, 0},
		"two side by side":       {" P P\n", 2, 2, 2, 1 + 1, 0, 1, 0},
		"two by two":             {" P P\n P P\n", 4, 4, 4, 1 + 2*2 + 1 + 1 + 1, 3 + 3 + 2, 2 + 2, 1},
		"one above two":          {" P .\n P P\n", 3, 4, 3, 2*2 + 1 + 1, 2 + 2 + 1, 1 + 1, 0},
		"two halves":             {" H H\n", 4, 2, 2, 1 + 1, 1, 2 + 1, 0},
		"halves that meet":       {" H H:ne\n", 4, 2, 2, 1 + 1, 1, 2 + 1, 1},
		"halves above a plain":   {" H\n P\n", 3, 2, 2, 1 + 1, 1 + 1 + 1, 1, 0},
		"two above three":        {" P . P\n P P P\n", 5, 6, 5, 2*2 + 2*2 + 4, 4 + 4 + 2 + 1, 2 + 1 + 2, 0},
		"rows that do not touch": {" P .\n . P\n", 2, 4, 2, 0, 1 + 1, 0, 0},
	} {
		top := lay.Top(t, "side 6\nfabric a #112233\nfabric b #eeeeee\nblock P plain piece a\nblock H halves pieces a b\ngrid\n"+c.grid)
		cuts := cutting.Pieces(top, cutting.Options{})
		want := 2*c.pieces + 4*c.places + c.parts + c.ends + c.touching + c.arms + c.joints
		if got := stop.Count(func(sign *stop.Sign) { sewing.Build(sign, top, cuts, sewing.Options{}) }); got != want {
			t.Errorf("%s: %d steps, not %d", name, got, want)
		}
	}
}

// TestShownCycles: unless more are asked for, fifty joints that cannot nest are shown with the cycle that proves it.
func TestShownCycles(t *testing.T) {
	top := lay.Top(t, mixedText(45, 3, 3)+"repeat across 8 down 8\n")
	for most, want := range map[int]int{0: 50, 49: 49, 51: 51} {
		p := planOf(top, sewing.Options{MaxOddCycles: most})
		shown := 0
		for _, c := range p.Pressing.Cannot {
			shown += map[bool]int{true: 1}[c.OddCycle != nil]
		}
		if shown != want || len(p.Pressing.Cannot) <= 51 {
			t.Errorf("%d asked for: of %d joints %d are shown with a cycle", most, len(p.Pressing.Cannot), shown)
		}
	}
}

// TestEdgesAsCut: edges lie on the cloth as the pieces are cut; where long edges are cut straight, the edges of blocks are on the bias.
func TestEdgesAsCut(t *testing.T) {
	text := "side 7\nfabric a #112233\nfabric b #eeeeee\nblock H halves pieces a b\nblock A web wedges a kites b\nblock R ring wedges a corners b\nblock F floating wedges a background b\ngrid\n H A R\n F H A\n"
	top := lay.Top(t, text)
	bias := map[string]bool{}
	for name, o := range cutWays() {
		cuts := cutting.Pieces(top, o)
		p := sewing.Build(nil, top, cuts, sewing.Options{})
		errs := []error{checkGrain(top, p, cuts)}
		for i := range p.Blocks {
			errs = append(errs, checkEnds(p, i, cuts), checkUnits(p, i, cuts))
			for _, e := range p.Blocks[i].Edges {
				bias[name] = bias[name] || e.Bias > 0
			}
		}
		for _, err := range errs {
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		if bias[name] != (name == "long edges straight") {
			t.Errorf("%s: edges on the bias: %v", name, bias[name])
		}
	}
}

// TestCustomsOfPressing: seams that are free are pressed to the darker side, and to what is sewn on where the other is darker by no more than 1
// L* (CIE 1976): #808080 has 53.59, #828282 54.37 and #838383 54.76.
func TestCustomsOfPressing(t *testing.T) {
	for colors, want := range map[[2]string]int{
		{"#808080", "#808080"}: 0, {"#808080", "#828282"}: 0, {"#808080", "#838383"}: 1, {"#838383", "#808080"}: 0, {"#eeeeee", "#112233"}: 0, {"#112233", "#eeeeee"}: 1,
	} {
		p := planOf(lay.Top(t, "side 6\nfabric a "+colors[0]+"\nfabric b "+colors[1]+"\nblock H halves pieces a b\ngrid\n H\n"), sewing.Options{})
		if way := p.Way(0, 0); way != want {
			t.Errorf("%v: pressed by way %d", colors, way)
		}
	}
}
