package contrast

import (
	"math"
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// TestPiecesHaveTheirOwnLight: a piece is as light as the part of the print that it shows, not as the print is in the mean; a seam on it is
// judged by that, and another color for the print is all there is once that is tried. Half of black and half of white is the lightness of
// half of the light, 76 (CIE 15:2004).
func TestPiecesHaveTheirOwnLight(t *testing.T) {
	top := lay.Top(t, "side 3\nfabric deck stripes black 5 white 5\nfabric gray #777777\nmotif night deck across 2 1/2 down 0\nmotif day deck across 7 1/2 down 0\nmotif both deck across 5 down 0\n"+
		"block N plain piece night\nblock D plain piece day\nblock B plain piece both\nblock G plain piece gray\ngrid\n  N G D\n  G B G\n")
	s := newStudy(nil, top, Options{Prints: photographed(top)})
	want := []float64{0, 50, 100, 50, 76, 50}
	for i, w := range want {
		if got := s.light(int32(i)); math.Abs(got-w) > 1.5 {
			t.Errorf("face %d has L* %.1f, not %.0f", i, got, w)
		}
	}
	if mean := s.lightness[0]; math.Abs(mean-76) > 0.5 {
		t.Errorf("the print has L* %.1f in the mean", mean)
	}
	steps := map[int]bool{}
	for i := range s.seams {
		steps[int(math.Round(s.seams[i].step/10))] = true
	}
	if !steps[-5] || !steps[5] {
		t.Errorf("seams do not go by the pieces' own lights: %v", steps)
	}
	tried := s.recoloured(Tried(top, []Try{{Fabric: 0, Colour: top.Fabrics[1].Colour}}))
	for i := range want {
		if got := tried.light(int32(i)); math.Abs(got-50) > 0.5 {
			t.Errorf("in gray face %d has L* %.1f", i, got)
		}
	}
}
