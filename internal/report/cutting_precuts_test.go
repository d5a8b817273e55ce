package report

import (
	"strings"
	"testing"

	"eighthturn/internal/plan/cutting"
)

// TestYardageIsExplained: where a border keeps a fabric from the table of precuts, a sentence says so; without borders none does.
func TestYardageIsExplained(t *testing.T) {
	const web = "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock W web wedges a kites b\ngrid\n W W W W W W\nrepeat down 6\n"
	for text, want := range map[string]bool{web: false, web + "border 2 a\n": true} {
		c := cutsOf(t, text, cutting.Options{})
		said := strings.Contains(c.onlyYardage(), "Buy yardage of a:")
		if said != want || len(c.precuts().Blocks) == 0 {
			t.Errorf("%q: yardage is explained: %v", text, said)
		}
	}
}
