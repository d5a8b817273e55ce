package supplies

import (
	"fmt"

	"eighthturn/internal/measure"
)

// Limits of what may be asked for, checked before anything is made.
const (
	maxTop    = 10_000 * measure.Inch // a finished side
	maxCloth  = 400 * measure.Inch    // a usable width
	MaxExtra  = 100 * measure.Inch    // an overhang, an allowance, a cut width, a drop
	maxSeam   = 2 * measure.Inch      // an allowance at a seam
	minStrip  = measure.Inch / 4      // a binding's cut width
	maxPanels = 1000                  // of a backing
	maxStrips = 100_000               // of a binding
)

// bound is a length with what it may be.
type bound struct {
	what        string
	nm          measure.NM
	least, most measure.NM
}

// within is an error for the first length that is not within its bounds.
func within(s measure.System, list ...bound) error {
	for _, b := range list {
		switch {
		case b.nm < b.least && b.least == 0:
			return fmt.Errorf("%s is %s, but must not be below 0", b.what, measure.Text(b.nm, s))
		case b.nm < b.least && b.least == 1:
			return fmt.Errorf("%s is %s, but must be above 0", b.what, measure.Text(b.nm, s))
		case b.nm < b.least:
			return fmt.Errorf("%s is %s, but must be %s or more", b.what, measure.Text(b.nm, s), measure.Text(b.least, s))
		case b.nm > b.most:
			return fmt.Errorf("%s is %s, but must be %s or less", b.what, measure.Text(b.nm, s), measure.Text(b.most, s))
		}
	}
	return nil
}

// usual is a length, or where it is 0 the usual one of the system.
func usual(nm measure.NM, s measure.System, inches, metric measure.NM) measure.NM {
	switch {
	case nm != 0:
		return nm
	case s == measure.Centimetres:
		return metric
	}
	return inches
}

// usualWidth is the usable width of cloth, or where it is 0 the usual one: 40 inches, which leaves room for selvages and
// shrinking, or 100 cm. Common practice, no source.
func usualWidth(nm measure.NM, s measure.System) measure.NM {
	return usual(nm, s, 40*measure.Inch, measure.Metre)
}

// perPiece is how many pieces of cloth give a length when each join loses some of it; n, n - 1 joins. The width of the
// cloth is above the loss.
func perPiece(need, width, loss measure.NM) int {
	if need <= width {
		return 1
	}
	step := width - loss
	return 1 + int((need-width+step-1)/step)
}

// joined is what so many pieces come to, with the joins between them.
func joined(pieces int, width, loss measure.NM) measure.NM {
	return measure.NM(pieces)*width - measure.NM(max(pieces-1, 0))*loss
}
