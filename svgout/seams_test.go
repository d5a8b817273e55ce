package svgout

import (
	"math"
	"slices"
	"testing"

	"eighthturn/palettes"
)

// leastSeamContrast is the ratio of luminance by WCAG 2.1 (relative luminance, contrast ratio) that a seam has
// to the fabric that it lies on, at the least: it is to be seen beside its fabric, and not louder than the fabrics
// beside each other. No source names a ratio for such lines; 1.8 is our own measure.
const leastSeamContrast = 1.8

// faint are the colours on which an ink for seams is seen too little.
func faint(ink func(palettes.Colour) palettes.Colour) []palettes.Colour {
	var list []palettes.Colour
	for r := 0; r < 256; r += 15 {
		for g := 0; g < 256; g += 15 {
			for b := 0; b < 256; b += 15 {
				c := palettes.Colour{R: uint8(r), G: uint8(g), B: uint8(b)}
				if palettes.ContrastRatio(ink(c), c) < leastSeamContrast {
					list = append(list, c)
				}
			}
		}
	}
	return list
}

// TestSeamsAreSeen: on a fabric of any colour its seams are seen; one ink for all, dark or light, would not do.
func TestSeamsAreSeen(t *testing.T) {
	if list := faint(SeamInk); len(list) > 0 {
		t.Errorf("seams are too faint on %d colors, such as %s", len(list), list[0].Hex())
	}
	for _, one := range []palettes.Colour{*black(), *white(), {R: 0x80, G: 0x80, B: 0x80}} {
		if len(faint(func(palettes.Colour) palettes.Colour { return one })) == 0 {
			t.Errorf("%s on any color passes", one.Hex())
		}
	}
}

// TestSeamsByView: seams are drawn in the colour view, not where they are left out, and in the view of values where they
// are asked for. TestTrailsCoverTheSeams says that these are all of them.
func TestSeamsByView(t *testing.T) {
	for name, text := range layouts() {
		top := lay(t, text)
		for _, c := range []struct {
			Options
			want bool
		}{{Options{}, true}, {Options{SeamLines: SeamsLeftOut}, false}, {Options{View: Value}, false}, {Options{View: Value, SeamLines: SeamsDrawn}, true}} {
			scene, err := NewScene(top, c.Options)
			if err != nil {
				t.Fatal(err)
			}
			if got := slices.ContainsFunc(scene.Layers, func(l Layer) bool { return l.ID == "seams" && len(l.Items) > 0 }); got != c.want {
				t.Errorf("%s, view %d: seams are drawn: %v, expected %v", name, c.View, got, c.want)
			}
		}
	}
}

// TestSeamInkIsAMixture: the ink of seams is 0.45 of white on dark fabrics, of black on others, the rest the fabric's own, to the nearest level.
func TestSeamInkIsAMixture(t *testing.T) {
	for v := range 256 {
		c := palettes.Colour{R: uint8(v), G: uint8(v), B: uint8(v)}
		to := 0.0
		if c.Lightness() < 42 {
			to = 255
		}
		want := uint8(math.Round(0.55*float64(v) + 0.45*to))
		if got := SeamInk(c); got != (palettes.Colour{R: want, G: want, B: want}) {
			t.Errorf("on %s seams are %s, expected %d levels", c.Hex(), got.Hex(), want)
		}
	}
}
