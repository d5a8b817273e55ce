package pixels

import (
	"math"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// TestSquintShowsThePartsThatPiecesShow: a quilt whose pieces are all cut from the white stripe of a cloth is white to half-shut eyes, and
// black if they are cut from the black one; the cloth in the mean is neither.
func TestSquintShowsThePartsThatPiecesShow(t *testing.T) {
	const text = "side 3\nfabric deck stripes black 5 white 5\nmotif day deck across 7 1/2 down 0\nblock D plain piece day\ngrid\n D D D\n D D .\n"
	for across, want := range map[string]float64{"7 1/2": 100, "2 1/2": 0} {
		top := lay.Top(t, strings.Replace(text, "7 1/2", across, 1))
		squint, err := Squinting(top, sized(t, top, 90), Squint{})
		if err != nil {
			t.Fatal(err)
		}
		if len(squint.Steps) != 1 || math.Abs(squint.Steps[0].Lightness-want) > 0.5 {
			t.Errorf("cut at %s: %+v", across, squint.Steps)
		}
		if p := squint.Picture; p.ColorIndexAt(0, 59) == 0 || p.ColorIndexAt(89, 59) != 0 {
			t.Errorf("cut at %s: the empty place is not see-through, or a piece is", across)
		}
	}
}

// TestLightOfAPrintOfOneColor: a print that is one color all over is as light as that color, at every size; nothing leaks at seams.
func TestLightOfAPrintOfOneColor(t *testing.T) {
	red := palettes.Colour{R: 181, G: 83, B: 42}
	top := lay.Top(t, strings.Replace(webs(3, 2), "fabric rust #b5532a", "fabric rust stripes #b5532a 1 #b5532a 2", 1))
	for f := range top.Fabrics {
		top.Fabrics[f].Colour = red
	}
	for _, side := range []int{1, 33, 250} {
		for i, y := range luminance(top, sized(t, top, side), nil).Luminance {
			if math.Abs(float64(y)-red.Luminance()) > 1e-4 {
				t.Fatalf("%d a side: pixel %d is %.5f, not %.5f", side, i, y, red.Luminance())
			}
		}
	}
}
