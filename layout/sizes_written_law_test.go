package layout_test

import (
	"reflect"
	"regexp"
	"testing"

	"eighthturn/internal/plan/fit"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// sideOfSize is the side that a size of invented layouts gives.
var sideOfSize = regexp.MustCompile(`(?m)^size other .*side \d+( 1/2|\.5)?( in)?`)

// TestInventedSizesAreWrittenOut: an invented layout in a size lays what it lays where it is written out in that size.
func TestInventedSizesAreWrittenOut(t *testing.T) {
	tried, cut := 0, 0
	for seed := uint64(1); seed < uint64(judges.Of(50, 500)); seed++ {
		text := invent.WithSize(seed, invent.Layout(seed), "other")
		if at := sideOfSize.FindStringIndex(text); at != nil && seed%2 == 0 {
			text = text[:at[1]] + " cut" + text[at[1]:]
			cut++
		}
		if text == "" {
			continue
		}
		d, _, _ := layout.Read(text)
		if d == nil { // what is cut is too little
			continue
		}
		if d.InSize("other").Columns*d.InSize("other").Rows > 150 {
			continue
		}
		written := fit.WrittenOut(text, "other", nil)
		alone, _, list := layout.Read(written)
		if alone == nil {
			t.Errorf("seed %d: %v\n%s\n%s", seed, list, text, written)
			continue
		}
		tried++
		if !reflect.DeepEqual(drawings(quilt.Lay(d.InSize("other"))), drawings(quilt.Lay(alone))) {
			t.Errorf("seed %d: written out it is another quilt:\n%s\n%s", seed, text, written)
		}
	}
	if tried < judges.Of(12, 120) || cut < judges.Of(1, 5) {
		t.Errorf("only %d layouts, %d with a side that is cut", tried, cut)
	}
}
