package report

import (
	"fmt"
	"strings"
	"testing"
)

// TestSashesOfRowsAreCounted: the sashes that the text puts into all rows are as many as the top has that are as high as a block;
// a top without sashes has none in its rows.
func TestSashesOfRowsAreCounted(t *testing.T) {
	const rings = "side 6\nfabric a #112233\nfabric b #eeeeee\nblock R ring wedges a corners b\ngrid\n R R R\n R R R\n"
	for sash, ends := range map[string]bool{"": false, "sash 1 a\n": false, "sash 1 a posts b\n": false, "sash 1 a around\n": true, "sash 1 a posts b around\n": true} {
		s := sewerOf(t, rings+sash)
		high := 0
		for i := range s.top.Patches {
			p := &s.top.Patches[i]
			tall := p.Outline[0].Y - p.Outline[2].Y
			if p.Cell < 0 && p.Border < 0 && max(tall, -tall) == s.top.SideFinished {
				high++
			}
		}
		said := s.linesText()
		if want := fmt.Sprintf("(%d sashes in each row)", high/2); strings.Contains(said, want) != (high > 0) || strings.Contains(said, "sash") != (high > 0) {
			t.Errorf("%q: %d sashes stand between blocks, and it says %s", sash, high, said)
		}
		if strings.Contains(said, "at both ends") != ends {
			t.Errorf("%q: %s", sash, said)
		}
	}
}
