package laws

import (
	"fmt"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// near is how close two patches' corners and sides may come without being meant to meet.
const near = measure.Millimetre / 1000

// Corners: a corner of a patch that comes near another patch is one of its corners or lies
// on one of its sides.
func Corners(t *quilt.Top) error {
	reach := closeIn(t)
	boxes := make([]quilt.Rect, len(t.Patches))
	for i := range t.Patches {
		boxes[i] = boxOf(t.Patches[i].Outline, reach)
	}
	return newBuckets(boxes).pairs(func(i, j int) error {
		a, b := t.Patches[i].Outline, t.Patches[j].Outline
		for _, p := range a {
			if err := meets(p, b, float64(reach)); err != nil {
				return fmt.Errorf("patch %d and patch %d: %w", i, j, err)
			}
		}
		for _, p := range b {
			if err := meets(p, a, float64(reach)); err != nil {
				return fmt.Errorf("patch %d and patch %d: %w", j, i, err)
			}
		}
		return nil
	})
}

// closeIn is near, or less in a top with a patch that is not much wider than that.
func closeIn(t *quilt.Top) measure.NM {
	least := near
	for i := range t.Patches {
		r := boxOf(t.Patches[i].Outline, 0)
		least = min(least, r.Width()/4, r.Height()/4)
	}
	return least
}

// meets sees that p, if it lies near the outline, lies on it, and if it lies near a corner
// is that corner.
func meets(p measure.Point, o Outline, reach float64) error {
	for i, a := range o {
		if p == a {
			return nil
		}
		if d := length(minus(p, a)); d < reach {
			return fmt.Errorf("corner %v lies %.1f nm from the corner %v of the other", p, d, a)
		}
		b := o[(i+1)%len(o)]
		if d := distance(a, b, p); d < reach && p != b && !onSide(a, b, p) {
			return fmt.Errorf("corner %v lies %.1f nm off the side from %v to %v of the other", p, d, a, b)
		}
	}
	return nil
}
