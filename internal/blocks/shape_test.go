package blocks

import (
	"fmt"
	"testing"
)

// nearTips says which angle of some shapes is neither surely a tip nor surely none.
func nearTips(shapes []*Description) error {
	for _, d := range shapes {
		for _, angles := range d.Angles {
			for _, a := range angles {
				if a > Tip()-1 && a < Tip()+15 {
					return fmt.Errorf("a corner of %g degrees of a %s is nearly a tip", a, d.Name)
				}
			}
		}
	}
	return nil
}

// TestTips: the tips of pieces are the trade's 45 degrees, and no corner is so near that rounding would tell.
func TestTips(t *testing.T) {
	if Tip() != 46 {
		t.Errorf("corners up to %g degrees are tips", Tip())
	}
	if err := nearTips(descriptions()); err != nil {
		t.Error(err)
	}
	if nearTips([]*Description{{Name: "slice", Angles: [][]float64{{50, 65, 65}}}}) == nil {
		t.Error("a corner of 50 degrees is not noticed")
	}
}
