package diagram

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
)

// hatched are the lines that hatch draws in an outline.
func hatched(outline []measure.Vec) (lines [][]measure.Vec) {
	var s Sheet
	s.hatch(outline, Pen{Width: 0.5}, nil)
	for _, i := range s.Items {
		lines = append(lines, i.Shape.Points)
	}
	return lines
}

// TestHatchLinesOfFrames: in a frame hatch lines slant at 45 degrees, 4 points apart (5.66 across), each from where it comes into the frame to where it
// leaves it, but for stretches under a twentieth of a point; they run on from frame to frame, whatever corner lies on one.
func TestHatchLinesOfFrames(t *testing.T) {
	step := 4 * math.Sqrt2
	for _, f := range [][4]float64{{0, 0, 30, 20}, {3, 7, 30, 20}, {50, 1, 9, 80}, {0, 0, 2 * step, 3 * step}, {step, 0, step, step}, {2, 3, 1, 0.5}, {step / 2, step / 2, 20, 20},
		{0, 0, step, 0.06}, {0, 0, step, 0.04}, {1, 1, 2*step - 2 + 0.03, 3*step + 0.03}, {1, 1, 2*step - 2 + 0.02, 3*step + 0.02}, {0.02, 0.02, 20, 20}, {-12, -9, 30, 20}} {
		x, y, w, h := f[0], f[1], f[2], f[3]
		var want [][]measure.Vec
		for n := -20.0; n < 40; n++ {
			from, to := max(x, n*step-y-h), min(x+w, n*step-y)
			if to-from > 0.05 {
				want = append(want, []measure.Vec{at(from, n*step-from), at(to, n*step-to)})
			}
		}
		got := hatched(frameOf(x, y, w, h))
		if len(got) != len(want) {
			t.Errorf("%v: %d lines, expected %d", f, len(got), len(want))
			continue
		}
		for i := range got {
			if !together(got[i], want[i]) {
				t.Errorf("%v, line %d: %v, expected %v", f, i, got[i], want[i])
			}
		}
	}
}

// TestHatchLinesOfOtherOutlines: a triangle, a bent outline and one of two prongs are hatched where a place lies in them, and nowhere else, as seen from the middle between
// many places of a line; of two corners nothing is.
func TestHatchLinesOfOtherOutlines(t *testing.T) {
	if got := hatched([]measure.Vec{at(0, 0), at(99, 99)}); len(got) != 0 {
		t.Errorf("%d lines between two corners", len(got))
	}
	step := 4 * math.Sqrt2
	for _, outline := range [][]measure.Vec{
		{at(0, 0), at(60, 5), at(10, 50)}, {at(step, 0), at(4*step, 0), at(2*step, 3*step)},
		{at(0, 0), at(60, 0), at(60, 20), at(20, 20), at(20, 60), at(0, 60)}, {at(0, 0), at(80, 0), at(80, 60), at(60, 15), at(40, 60), at(20, 15), at(0, 60)},
	} {
		drawn, n := map[int]float64{}, 0
		for _, l := range hatched(outline) {
			n = int(math.Round((l[0].X + l[0].Y) / step))
			drawn[n] += l[1].X - l[0].X
			if !within(outline, at((l[0].X+l[1].X)/2, (l[0].Y+l[1].Y)/2)) || math.Abs(l[0].X+l[0].Y-float64(n)*step)+math.Abs(l[1].X+l[1].Y-float64(n)*step) > 1e-9 {
				t.Errorf("%v: the line %v", outline, l)
			}
		}
		for n := -2; n < 40; n++ {
			seen, fine := 0.0, 0.01
			for x := -20 + fine/2; x < 100; x += fine {
				if within(outline, at(x, float64(n)*step-x)) {
					seen += fine
				}
			}
			if math.Abs(seen-drawn[n]) > 6*fine {
				t.Errorf("%v, line %d: %.2f long, %.2f seen", outline, n, drawn[n], seen)
			}
		}
	}
}

// TestHatchLinesAreNotTooMany: where an outline would take more than 600 lines they stand twice as far apart, and again.
func TestHatchLinesAreNotTooMany(t *testing.T) {
	step := 4 * math.Sqrt2
	for _, c := range []struct {
		sum   float64 // of width and height, in steps
		want  int
		apart float64
	}{{599.5, 599, 1}, {600, 599, 1}, {600.5, 300, 2}, {1200.5, 300, 4}} {
		got := hatched(frameOf(0, 0, c.sum*step/2, c.sum*step/2))
		if len(got) != c.want || !near(got[1][0].X+got[1][0].Y-got[0][0].X-got[0][0].Y, c.apart*step) {
			t.Errorf("%g steps: %d lines, %v", c.sum, len(got), got[:2])
		}
	}
}

// TestHeadsOfLines: an arrow lies along the first stretch that has a length and takes no more than half of it; dots and bars are as large at
// whatever line.
func TestHeadsOfLines(t *testing.T) {
	for _, c := range []struct {
		points []measure.Vec
		into   measure.Vec
		size   float64
	}{
		{[]measure.Vec{at(1, 2)}, at(1, 0), 0}, {[]measure.Vec{at(1, 2), at(1, 2)}, at(1, 0), 0}, {[]measure.Vec{at(1, 2), at(4, 6)}, at(0.6, 0.8), 5.0 / 14},
		{[]measure.Vec{at(1, 2), at(1, 2), at(1, -98), at(5, 5)}, at(0, -1), 1}, {[]measure.Vec{at(0, 0), at(-14, 0)}, at(-1, 0), 1}, {[]measure.Vec{at(0, 0), at(-13, 0)}, at(-1, 0), 13.0 / 14},
	} {
		for _, kind := range []Ending{Plain, Arrow, Dot, Bar} {
			e, size := headOf(c.points, kind, Pen{}), 1.0
			if kind == Arrow {
				size = c.size
			}
			if e.at != c.points[0] || !near(e.into.X, c.into.X) || !near(e.into.Y, c.into.Y) || !near(e.size, size) {
				t.Errorf("%v, ending %d: %+v", c.points, kind, e)
			}
		}
	}
}
