package palettes

import (
	"image"
	"image/color"
	"testing"
)

// TestSmallPictures: a coarser picture is the means of its squares, those at its edges too; a paler one is mixed with white; a margin is what
// the next repeats begin with.
func TestSmallPictures(t *testing.T) {
	p := image.NewRGBA(image.Rect(0, 0, 5, 3))
	for y := range 3 {
		for x := range 5 {
			p.SetRGBA(x, y, color.RGBA{uint8(10 * x), uint8(100 * y), 7, 255})
		}
	}
	small := Coarser(p, 3)
	if small.Rect != image.Rect(0, 0, 3, 2) || small.RGBAAt(0, 0) != (color.RGBA{5, 50, 7, 255}) || small.RGBAAt(2, 1) != (color.RGBA{40, 200, 7, 255}) {
		t.Errorf("%v, %v, %v", small.Rect, small.RGBAAt(0, 0), small.RGBAAt(2, 1))
	}
	if same := Coarser(p, 5); same.Rect != p.Rect || same.RGBAAt(3, 2) != p.RGBAAt(3, 2) {
		t.Errorf("%v", same.Rect)
	}
	if pale := Paler(p, 40); pale.RGBAAt(2, 1) != (color.RGBA{114, 162, 106, 255}) {
		t.Errorf("%v", pale.RGBAAt(2, 1))
	}
	part := p.SubImage(image.Rect(1, 1, 3, 3)).(*image.RGBA) // its rows lie apart
	if pale := Paler(part, 40); pale.Rect != part.Rect || pale.RGBAAt(2, 1) != (color.RGBA{114, 162, 106, 255}) || pale.RGBAAt(1, 2) != (color.RGBA{108, 222, 106, 255}) {
		t.Errorf("%v", pale)
	}
	wide := Margined(p, 1)
	if wide.Rect != image.Rect(0, 0, 7, 5) || wide.RGBAAt(0, 0) != p.RGBAAt(4, 2) || wide.RGBAAt(6, 4) != p.RGBAAt(0, 0) || wide.RGBAAt(1, 1) != p.RGBAAt(0, 0) {
		t.Errorf("%v", wide)
	}
}
