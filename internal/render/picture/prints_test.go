//go:build judges

package picture

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// waves is a photo of cloth whose colour changes slowly and unevenly, so that every place of it
// can be told.
func waves(t *testing.T) palettes.PhotoSample {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 240, 160))
	for y := range 160 {
		for x := range 240 {
			picture.SetRGBA(x, y, color.RGBA{uint8(40 + x/2), uint8(200 - y), uint8(60 + (x+y)/4), 255})
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, picture); err != nil {
		t.Fatal(err)
	}
	cloth, err := palettes.ReadSwatch(nil, file.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return cloth
}

// farthest is the greatest difference of a channel between two pictures at a grid of places
// that keep away from seams.
func farthest(a, b image.Image, places []image.Point) int {
	far := 0
	for _, at := range places {
		r, g, bl, _ := a.At(at.X, at.Y).RGBA()
		s, h, cl, _ := b.At(at.X, at.Y).RGBA()
		for _, pair := range [3][2]uint32{{r, s}, {g, h}, {bl, cl}} {
			far = max(far, int(math.Abs(float64(pair[0]>>8)-float64(pair[1]>>8))))
		}
	}
	return far
}

// TestPrintsAlike: the photo of a fabric lies in the same place and the same scale in the PNG, in
// the PDF as MuPDF draws it, and in the SVG as librsvg does; a photo of another scale is
// noticed.
func TestPrintsAlike(t *testing.T) {
	text := "side 6\nfabric sea swatch \"sea.png\" across 5\nfabric sand #e8d9b0\nblock P plain piece sea\nblock Q plain piece sand\ngrid\n  P Q P\n  Q P Q\n"
	cloth := waves(t)
	design, _, faults := layout.ReadWith(text, func(string) (palettes.PhotoSample, error) { return cloth, nil })
	if design == nil {
		t.Fatal(faults)
	}
	top := quilt.Lay(design)
	o := svgout.Options{Prints: true}
	p := scened(t, top, o)
	const pixels = 900 // 50 an inch
	draw := func() (fromPNG, fromPDF image.Image) {
		var file, page bytes.Buffer
		if err := PNG(&file, p, Frame{Pixels: pixels}); err != nil {
			t.Fatal(err)
		}
		if err := PDF(&page, p, Frame{}); err != nil {
			t.Fatal(err)
		}
		return decoded(t, file.Bytes()), pageAt(t, page.Bytes(), 1, 50)
	}
	fromPNG, fromPDF := draw()
	fromSVG := svgAt(t, top, o, image.Pt(pixels, 600))
	var places []image.Point
	for y := 8; y < 592; y += 9 {
		for x := 8; x < 892; x += 9 {
			if (x+8)%300 > 20 && (y+8)%300 > 20 {
				places = append(places, image.Pt(x, y))
			}
		}
	}
	const most = 8 // steps of 255: the programs smooth the pixels of a photo each in its own way
	if far := farthest(fromPNG, fromSVG, places); far > most {
		t.Errorf("the PNG is %d from the SVG", far)
	}
	if far := farthest(fromPDF, fromSVG, places); far > most {
		t.Errorf("the PDF is %d from the SVG", far)
	}
	top.Fabrics[0].Photo.Across = top.Fabrics[0].Photo.Across * 11 / 10
	fromPNG, fromPDF = draw()
	if farthest(fromPNG, fromSVG, places) <= most || farthest(fromPDF, fromSVG, places) <= most {
		t.Error("a photo of another scale is not noticed")
	}
}
