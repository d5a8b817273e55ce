package contrast

import (
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// TestPrintsAskForPrints: for a print another print is asked for, a quieter one where it is busy, and no plain fabric is
// offered in its place.
func TestPrintsAskForPrints(t *testing.T) {
	top := lay.Top(t, judgedText(t, "n02"))
	for _, c := range []struct {
		spread  float64
		quieter bool
	}{{1, false}, {12, true}} {
		busy := Print{Spread: c.spread, Darkest: 35, Lightest: 55}
		r := Study(top, Options{Prints: []Print{busy, busy}})
		if len(r.Changes) == 0 {
			t.Fatal("nothing is offered")
		}
		for _, change := range r.Changes {
			for _, s := range change.Steps {
				if !s.Print || s.Other != nil || s.Quieter != c.quieter {
					t.Errorf("spread %g: %+v", c.spread, s)
				}
			}
		}
	}
}
