package blocks

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
)

// inches reads a mixed number of inches.
func inches(t *testing.T, text string) measure.NM {
	t.Helper()
	r, err := measure.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	return r.In(measure.Inches).NM()
}

// TestJudgeSides holds finished sides against figures from outside and from a second
// derivation, with seams of a quarter inch.
func TestJudgeSides(t *testing.T) {
	const q = measure.Inch / 4
	for _, c := range []struct {
		strip  string
		height WedgeHeight
		want   float64 // inches
		source string
	}{
		{"4", ToMiddle, 7, "common practice, no source"},
		{"3 1/2", ToMiddle, 6, "common practice, no source"},
		{"6", ToMiddle, 11, "a maker's figure, http://edutach.blogspot.com/2015/03/i-didnt-think-this-through.html"},
		{"4", AlongDiagonal, 5.3576, "derived: s k cos 22.5 = 3 1/2"},
		{"5.0730", AlongDiagonal, 7, "derived: s k cos 22.5 = 4.5730"},
	} {
		side := c.height.Side(measure.Of(inches(t, c.strip) - 2*q))
		if got := float64(side) / float64(measure.Inch); math.Abs(got-c.want) > 1e-4 {
			t.Errorf("strips of %s in finish %.4f, want %.4f (%s)", c.strip, got, c.want, c.source)
		}
	}
}

// TestJudgeNearSides: sides for which a ring strip and a web strip, both on the usual lines
// of a ruler, come out nearly alike. The errors are worked out by hand from the side's
// formula (w - 2q) / (k cos 22.5): 4 1/4 / 0.6532815 = 6.5056, and so on.
func TestJudgeNearSides(t *testing.T) {
	const q = measure.Inch / 4
	for _, c := range []struct {
		side, ring, web string
		off             float64 // of the web's side, inches
	}{
		{"6 1/2", "3 3/4", "4 3/4", 0.006}, {"9", "5", "6 3/8", -0.007}, {"12 1/4", "6 5/8", "8 1/2", -0.004}, {"13", "7", "9", 0.011},
	} {
		side := inches(t, c.side)
		if got := ToMiddle.Side(measure.Of(inches(t, c.ring) - 2*q)); got != side {
			t.Errorf("ring strips of %s finish %d nm, want %s in", c.ring, got, c.side)
		}
		web := AlongDiagonal.Side(measure.Of(inches(t, c.web) - 2*q))
		if got := float64(web-side) / float64(measure.Inch); math.Abs(got-c.off) > 5e-4 {
			t.Errorf("web strips of %s are %.4f in off %s, want %.3f", c.web, got, c.side, c.off)
		}
	}
}
