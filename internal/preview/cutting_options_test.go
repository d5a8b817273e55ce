package preview

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
)

// TestPageTakesCuttingOptions: the tabs, the pattern and what is said of a patch follow the options for cutting.
func TestPageTakesCuttingOptions(t *testing.T) {
	top := lay.Top(t, "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock A web wedges a kites b\ngrid\n A A\n A A\nborder 2 a\nbinding 2 1/2 a\n")
	coarse := cutting.Options{LeastCloth: true, NoSquareUp: true, Spare: 7 * measure.Inch}
	coarse.Steps.Trimmed = measure.Inch
	for name, want := range map[string]bool{"usual": false, "with options": true} {
		var cut func(*quilt.Top) cutting.Options
		if want {
			cut = func(*quilt.Top) cutting.Options { return coarse }
		}
		numbers := newNumbering(1)
		numbers.cutting = cut
		s := newStudy(newPicture(top, layout.NewSource(""), numbers), &studies{cutting: cut})
		if got := strings.Contains(fmt.Sprint(tabSources()[1].make(s.plans)), "7 in as insurance"); got != want {
			t.Errorf("%s: the tab has the spare length: %v", name, got)
		}
		hover := ""
		for _, raw := range numbers.templates {
			hover += string(raw)
		}
		if got := strings.Contains(hover, "squares of 4 in"); got != want {
			t.Errorf("%s: the patch says its square: %v", name, got)
		}
		if d, err := s.plans.printed(); err != nil || strings.Contains(fmt.Sprintf("%+v", d), "7 in as insurance") != want {
			t.Errorf("%s: the pattern: %v", name, err)
		}
		s.end()
	}
}
