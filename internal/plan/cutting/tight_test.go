package cutting

import (
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// Squares that use strips to within 3 in or less are tight; one more strip, partly used, is not.
func TestTight(t *testing.T) {
	for _, c := range []struct {
		side    string
		squares string
		want    bool
	}{
		{"4 1/2", "across 8 down 1", true},   // 8 of 5 in a strip of 40
		{"4 1/2", "across 9 down 1", false},  // and one in a second
		{"4 3/4", "across 7 down 1", false},  // 40 - 7 of 5 1/4 = 3 1/4
		{"4 13/16", "across 7 down 1", true}, // 40 - 37 3/16 = 2 13/16
		{"4 1/2", "across 16 down 1", true},  // two whole strips
		{"4 1/2", "across 15 down 1", false}, // 5 in left of the second
	} {
		p := Build(nil, lay.Top(t, "side "+c.side+"\nfabric a #111\nblock A plain piece a\ngrid\n A\nrepeat "+c.squares+"\n"), Options{})
		if p.Fabrics[0].Tight != c.want {
			t.Errorf("%s, %s: tight %v, ends %v", c.side, c.squares, p.Fabrics[0].Tight, p.Fabrics[0].Strips)
		}
	}
}
