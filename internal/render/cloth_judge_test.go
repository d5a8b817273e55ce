//go:build judges

package render

import (
	"image"
	"image/color"
	"math"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// fourColors are four colors, no two of them gray, and what of a repeat each fills.
func fourColors(across, down float64) color.RGBA {
	left, upper := across-math.Floor(across) < 0.5, down-math.Floor(down) < 0.5
	switch {
	case left && upper:
		return color.RGBA{200, 30, 30, 255}
	case upper:
		return color.RGBA{30, 160, 30, 255}
	case left:
		return color.RGBA{30, 30, 200, 255}
	}
	return color.RGBA{220, 200, 40, 255}
}

// clothOff is which part of a page's square, painted with a cloth, has other colors than a cloth has that is turned by so many degrees.
func clothOff(page raster, a *diagram.Area, degrees float64, dpi int) float64 {
	low := image.Pt(page.wide, page.high)
	for y := range page.high {
		for x := range page.wide {
			if c := page.at(x, y); max(c.R, c.G, c.B)-min(c.R, c.G, c.B) > 100 {
				low = image.Pt(min(low.X, x), min(low.Y, y))
			}
		}
	}
	c := diagram.Cloth{At: measure.Vec{X: float64(a.Repeat.X), Y: float64(a.Repeat.Y)}, Turn: degrees}
	off, n, pixel := 0.0, 0.0, float64(measure.Inch)/float64(dpi)
	for y := 2; y < 3*dpi-2; y++ {
		for x := 2; x < 3*dpi-2; x++ {
			on := c.OnCloth(measure.Vec{X: (float64(x) + 0.5) * pixel, Y: (float64(y) + 0.5) * pixel})
			want, got := fourColors(on.X/float64(a.Print.Across), on.Y/float64(a.Print.Down)), page.at(low.X+x, low.Y+y)
			if n++; math.Abs(float64(want.R)-float64(got.R))+math.Abs(float64(want.G)-float64(got.G))+math.Abs(float64(want.B)-float64(got.B)) > 40 {
				off++
			}
		}
	}
	return off / n
}

// TestTurnedCloth: as another program draws a PDF, an area shows its cloth turned about the beginning of a repeat, repeat after repeat without a
// gap: but for the edges of colors every pixel has the color of its place, and a turn by 2 degrees is noticed.
func TestTurnedCloth(t *testing.T) {
	const dpi, side = 100, 3 * measure.Inch
	picture := image.NewRGBA(image.Rect(0, 0, 120, 90))
	for y := range 90 {
		for x := range 120 {
			picture.SetRGBA(x, y, fourColors(float64(x)/120, float64(y)/90))
		}
	}
	for _, turn := range []float64{0, 30, 90, 217} {
		a := diagram.Area{Outline: []measure.Point{{}, {X: side}, {X: side, Y: side}, {Y: side}}, Turn: turn,
			Print: diagram.NewPrint(picture, measure.Inch, 3*measure.Inch/4, 0), Repeat: measure.Point{X: measure.Inch / 3, Y: -measure.Inch / 5}}
		figure := diagram.Figure{Title: "cloth", Description: "A square of cloth.", TrueSize: true, Max: a.Outline[2], Marks: []diagram.Mark{{Area: &a}}}
		printed, err := PDF(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{document.Figure{Of: figure}}}}}, Options{Paper: HalfLetter()})
		if err != nil {
			t.Fatal(err)
		}
		page := rasters(t, written(t, printed.File), dpi)[0]
		right, aside := clothOff(page, &a, turn, dpi), clothOff(page, &a, turn+2, dpi)
		if right > 0.05 || aside < 3*right {
			t.Errorf("turned by %v degrees: %.3f of the square has other colors, %.3f of one turned by 2 degrees more", turn, right, aside)
		}
	}
}
