package cutting

import (
	"testing"

	"eighthturn/internal/measure"
)

// TestLimitText: what shops sell by is rounded to the nearest tenth, and said as about so much where that is not all of it.
func TestLimitText(t *testing.T) {
	for _, c := range []struct {
		nm    measure.NM
		units measure.System
		want  string
	}{
		{1000 * measure.Inch, measure.Inches, "1000 in (27.78 yd)"}, {MaxExtra, measure.Inches, "100 in (2.78 yd)"}, {500 * measure.Yard, measure.Inches, "18000 in (500 yd)"},
		{9 * measure.Yard / 2, measure.Inches, "162 in (4 1/2 yd)"}, {MaxStep, measure.Inches, "2 in"}, {MaxExtra, measure.Centimetres, "254 cm (2.54 m)"}, {3 * measure.Metre, measure.Centimetres, "300 cm (3 m)"},
	} {
		if got := limitText(c.nm, c.units); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
