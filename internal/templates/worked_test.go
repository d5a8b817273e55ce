package templates

import (
	"eighthturn/internal/quilttest/lay"
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// TestWorkedSizes: cut sizes worked out by hand from the angle alone, in inches: a wedge
// from strips of 4 has a base of 3.6478 and a tip of 0.3341; a tumbler from a strip of 7 1/2
// cut by line 10 of a wedge rule has sides of 8.6184 and 2.4052; a half-square triangle's
// cut legs are 0.8536 longer than the finished ones where its tips are sharp.
func TestWorkedSizes(t *testing.T) {
	const ring = "strip 4\nfabric a #fff\nfabric b #000\nblock R ring wedges a b corners a\ngrid\n R\n"
	const tumblers = "strip 7 1/2\nfabric a #fff\nfabric b #000\nblock T tumblers pieces a b line 10\ngrid\n T\n T\n T\n"
	for _, c := range []struct {
		text  string
		shape blocks.Shape
		sides []float64 // each must be there
	}{
		{ring, blocks.Wedge, []float64{3.6478, 0.3341}},
		{tumblers, blocks.Tumbler, []float64{8.6184, 2.4052}},
	} {
		for _, p := range usual(lay.Top(t, c.text)) {
			if p.Shape != c.shape {
				continue
			}
			for _, want := range c.sides {
				if !hasSide(p.Cut, want) {
					t.Errorf("%s: no cut side of %g in", c.shape, want)
				}
			}
			if c.shape == blocks.Wedge {
				if _, high := bounds(p.Cut); high.Y-4*measure.Inch > 2 || 4*measure.Inch-high.Y > 2 {
					t.Errorf("the wedge is %d nm high, the strip 4 in", high.Y)
				}
			}
		}
	}
}

func hasSide(outline []measure.Point, inchesLong float64) bool {
	list := points(outline)
	for i, p := range list {
		if math.Abs(distance(p, list[(i+1)%len(list)])/float64(measure.Inch)-inchesLong) < 6e-5 {
			return true
		}
	}
	return false
}
