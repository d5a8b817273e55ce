package palettes

import (
	"image/color"
	"testing"
)

// TestNearestColourOfAProfile: what a profile makes of a color is rounded to the nearest byte, each part of it by itself.
func TestNearestColourOfAProfile(t *testing.T) {
	for _, c := range []struct {
		part [3]float32
		want color.RGBA
	}{{[3]float32{10.45, 20.45, 30.45}, color.RGBA{10, 20, 30, 255}}, {[3]float32{10.55, 20.55, 30.55}, color.RGBA{11, 21, 31, 255}}, {[3]float32{0, 254.6, 255}, color.RGBA{0, 255, 255, 255}}} {
		cube := &profileCube{}
		for i := range cube.corners {
			cube.corners[i] = c.part
		}
		for _, of := range []color.RGBA{{0, 0, 0, 255}, {37, 128, 254, 255}, {255, 255, 255, 255}} {
			if got := cube.at(of); got != c.want {
				t.Errorf("%v of %v is %v, expected %v", of, c.part, got, c.want)
			}
		}
	}
}
