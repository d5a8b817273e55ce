package diagram

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
)

// TestClothGoesThereAndBack: the place of a cloth that a place of the sheet shows is shown there, however the cloth is turned; a quarter turn
// clockwise takes its right to below.
func TestClothGoesThereAndBack(t *testing.T) {
	for _, turn := range []float64{0, 30, 90, -45, 200} {
		c := &Cloth{At: at(7, -3), Turn: turn}
		for _, v := range []measure.Vec{at(0, 0), at(5, 2), at(-4, 11)} {
			there := c.OnSheet(v)
			if back := c.OnCloth(there); math.Hypot(back.X-v.X, back.Y-v.Y) > 1e-9 || math.Abs(math.Hypot(there.X-7, there.Y+3)-math.Hypot(v.X, v.Y)) > 1e-9 {
				t.Errorf("turned by %g: %v goes to %v and back to %v", turn, v, there, back)
			}
		}
	}
	if got := (&Cloth{Turn: 90}).OnSheet(at(1, 0)); math.Abs(got.X) > 1e-9 || math.Abs(got.Y-1) > 1e-9 {
		t.Errorf("to the right goes to %v", got)
	}
}

// TestPanelsInRows: as many panels stand in a row as there is room for at 96 points and 14 between them, rows are filled alike, and there is one at the
// least.
func TestPanelsInRows(t *testing.T) {
	for _, c := range []struct {
		panels int
		width  float64
		want   int
	}{{3, 20, 1}, {3, 96, 1}, {3, 205.9, 1}, {3, 206, 2}, {5, 316, 3}, {4, 316, 2}, {7, 426, 4}, {8, 426, 4}, {9, 426, 3}, {1, 900, 1}, {2, 900, 2}} {
		f := &Figure{Panels: make([]Panel, c.panels)}
		if got := f.across(c.width); got != c.want {
			t.Errorf("%d panels in %g: %d, expected %d", c.panels, c.width, got, c.want)
		}
		if f.Across = 5; f.across(c.width) != 5 {
			t.Error("five were asked for")
		}
	}
}
