package picture

import (
	"image"
	"math"
	"testing"

	"eighthturn/palettes"
	"eighthturn/svgout"
)

// at is a pixel's color.
func at(m image.Image, x, y int) palettes.Colour {
	r, g, b, _ := m.At(x, y).RGBA()
	return palettes.Colour{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}
}

// TestPrintsByValue: by value every pixel of a quilt with a print is the gray that is as light as that pixel in color, since light is
// mixed in linear light in both; without its print it is not.
func TestPrintsByValue(t *testing.T) {
	top := printedTop(t, gardens)
	draw := func(o svgout.Options) image.Image {
		o.SeamLines = svgout.SeamsLeftOut
		return decoded(t, pngOf(t, scened(t, top, o), Frame{Pixels: 300}))
	}
	off := func(m, in image.Image) (worst, mean float64) {
		b := in.Bounds()
		for i := range b.Dx() * b.Dy() {
			x, y := i%b.Dx(), i/b.Dx()
			gray := at(m, x, y)
			off := math.Abs(gray.Lightness() - at(in, x, y).Lightness())
			if gray.R != gray.G || gray.G != gray.B {
				off = 100
			}
			worst, mean = max(worst, off), mean+off/float64(b.Dx()*b.Dy())
		}
		return worst, mean
	}
	color := draw(svgout.Options{Prints: true})
	if worst, mean := off(draw(svgout.Options{View: svgout.Value, Prints: true}), color); worst > 1.5 || mean > 0.3 {
		t.Errorf("L* is off by %.2f at the worst, %.2f in the mean", worst, mean)
	}
	if _, mean := off(draw(svgout.Options{View: svgout.Value}), color); mean < 5 {
		t.Errorf("without its print L* is off by %.2f alone", mean)
	}
}
