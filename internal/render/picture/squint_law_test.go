package picture

import (
	"image"
	"math"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// plainlyBlurred is the luminance of a picture under a Gaussian, added up pixel by pixel: along rows, then along columns. Beyond the
// edge is nothing: there it is the mean of what lies within.
func plainlyBlurred(m image.Image, sigma float64) []float64 {
	width, height := m.Bounds().Dx(), m.Bounds().Dy()
	light := make([]float64, width*height)
	for i := range light {
		r, g, b, _ := m.At(i%width, i/width).RGBA()
		light[i] = palettes.Colour{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}.Luminance()
	}
	reach := int(4*sigma) + 1
	along := func(step, length int, place func(i int) int) {
		out := make([]float64, len(light))
		for i := range out {
			sum, weights := 0.0, 0.0
			for k := max(-reach, -place(i)); k <= reach && place(i)+k < length; k++ {
				weight := math.Exp(-float64(k*k) / (2 * sigma * sigma))
				sum, weights = sum+weight*light[i+k*step], weights+weight
			}
			out[i] = sum / weights
		}
		light = out
	}
	along(1, width, func(i int) int { return i % width })
	along(width, height, func(i int) int { return i / width })
	return light
}

// offSquint is by how much the light of a plane is off, in the mean and at the worst, and how many pixels of a squint picture lie in
// another step than light that is not near a cut.
func offSquint(plane []float32, squint *pixels.Squinted, light []float64) (mean, worst float64, other int) {
	for i, y := range light {
		off := math.Abs(float64(plane[i]) - y)
		mean, worst = mean+off/float64(len(light)), max(worst, off)
		step, near := 0, false
		for n, s := range squint.Steps {
			if palettes.LightnessOf(y) >= s.From {
				step = n
			}
			near = near || math.Abs(palettes.LightnessOf(y)-s.From) < 1
		}
		if !near && int(squint.Picture.Pix[i]) != step+1 {
			other++
		}
	}
	return mean, worst, other
}

// TestSquintIsThePictureOfPrintsBlurred: what half-shut eyes see of a quilt of every sort of piece is its PNG with the prints, as each
// piece is cut, under a plain Gaussian; fabrics in the mean colors of their prints are noticed, and so are pieces cut from elsewhere.
func TestSquintIsThePictureOfPrintsBlurred(t *testing.T) {
	top := printedTop(t, gardens)
	const side = 400
	size, err := pixels.SizeOf(top, side)
	if err != nil {
		t.Fatal(err)
	}
	m := decoded(t, pngOf(t, scened(t, top, svgout.Options{Prints: true, SeamLines: svgout.SeamsLeftOut}), Frame{Pixels: side}))
	if m.Bounds().Dx() != size.Width || m.Bounds().Dy() != size.Height {
		t.Fatalf("the pictures measure %v and %v", m.Bounds(), size)
	}
	sigma := pixels.Squint{}.Sigma()
	inPixels := float64(sigma) * float64(size.Width) / float64(top.Outer.Width())
	light := plainlyBlurred(m, math.Sqrt(inPixels*inPixels-1.0/12)) // a pixel is a mean over a square itself
	off := func(top *quilt.Top, colour func(int) palettes.Colour) (mean, worst float64, other int) {
		squint, err := pixels.Squinting(top, size, pixels.Squint{})
		if err != nil {
			t.Fatal(err)
		}
		return offSquint(pixels.Blurred(top, size, sigma, colour).Luminance, squint, light)
	}
	mean, worst, other := off(top, nil)
	if t.Logf("sigma %.1f pixels: light off by %.4f in the mean, %.4f at the worst; %d pixels of another step", inPixels, mean, worst, other); mean > 0.002 || worst > 0.02 || other > 0 {
		t.Errorf("light is off by %.4f in the mean and %.4f at the worst, and %d pixels are of another step", mean, worst, other)
	}
	if mean, _, _ := off(top, func(f int) palettes.Colour { return top.Fabrics[f].Colour }); mean < 0.02 {
		t.Errorf("the prints' mean colors are off by %.4f alone", mean)
	}
	for i := range top.Cuts {
		top.Cuts[i].Place.X += top.Fabrics[0].Cloth.Across / 3
	}
	if mean, _, other := off(top, nil); mean < 0.01 || other < side {
		t.Errorf("pieces that are cut from elsewhere are off by %.4f, in %d pixels", mean, other)
	}
}
