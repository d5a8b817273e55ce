package cutting

import (
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilttest/lay"
)

// TestScantChains: four pieces of 59 1/2 in are six strips of 40 in to the last thread, each pair three of them less two seams of
// 1/2 in, or two of one and a half. Of pieces an inch shorter there is a step to spare.
func TestScantChains(t *testing.T) {
	plain, role := kindWith(t, blocks.Square, true)
	for _, c := range []struct {
		side  string
		scant bool
	}{{"5 9/10", true}, {"5 8/10", false}} {
		top := lay.Top(t, "side "+c.side+"\nfabric a #111\nfabric b #888\nblock A "+plain+" "+role+"\ngrid\n A\nrepeat across 10 down 10\nborder 3 b corners a\n")
		f := &Build(nil, top, Options{LeastCloth: true}).Fabrics[1]
		if len(f.Chains) == 0 || f.StripCount != 6 {
			t.Fatalf("%d strips, %v", f.StripCount, f.Chains)
		}
		scant := false
		for i := range f.Chains {
			chain := &f.Chains[i]
			scant = scant || chain.Scant
		}
		if scant != c.scant {
			t.Errorf("side %s: %v", c.side, f.Chains)
		}
	}
}
