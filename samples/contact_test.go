package samples_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/inconsolata"
	"golang.org/x/image/math/fixed"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/render/pixels"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
)

// Sizes of the sheet in pixels: each sample has a cell with its two pictures and two lines
// of text.
const (
	sheetColumns = 2
	cellWidth    = 600
	cellHeight   = 470
	cellGap      = 14 // between the pictures of a pair
	textHeight   = 56
	sheetMargin  = 30
)

// The contact sheet shows every sample in colour and in value, as they are now.
func TestContactSheet(t *testing.T) {
	sheet := contactSheet(t, samples.All())
	var file bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&file, sheet); err != nil {
		t.Fatal(err)
	}
	golden.Compare(t, "contact.png", file.Bytes(), func(kept []byte) error { return samePixels(kept, sheet) })
}

// A sheet on which one fabric of one sample has another colour is another one.
func TestContactSheetCatches(t *testing.T) {
	list := samples.All()[:1]
	honest := contactSheet(t, list)
	var file bytes.Buffer
	if err := png.Encode(&file, honest); err != nil {
		t.Fatal(err)
	}
	if err := samePixels(file.Bytes(), honest); err != nil {
		t.Fatal(err)
	}
	honest.Set(sheetMargin+100, sheetMargin+200, color.RGBA{1, 2, 3, 255})
	if samePixels(file.Bytes(), honest) == nil || samePixels(file.Bytes(), image.NewRGBA(image.Rect(0, 0, 9, 9))) == nil {
		t.Error("another sheet passes")
	}
}

// samePixels says whether a file shows a picture, pixel by pixel.
func samePixels(file []byte, want image.Image) error {
	got, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		return err
	}
	if got.Bounds() != want.Bounds() {
		return fmt.Errorf("it has %v pixels, expected %v", got.Bounds().Size(), want.Bounds().Size())
	}
	off := 0
	for y := range want.Bounds().Dy() {
		for x := range want.Bounds().Dx() {
			if color.RGBAModel.Convert(got.At(x, y)) != color.RGBAModel.Convert(want.At(x, y)) {
				off++
			}
		}
	}
	if off > 0 {
		return fmt.Errorf("%d of its pixels are other ones", off)
	}
	return nil
}

func contactSheet(t *testing.T, list []samples.Sample) *image.RGBA {
	rows := (len(list) + sheetColumns - 1) / sheetColumns
	sheet := image.NewRGBA(image.Rect(0, 0, 2*sheetMargin+sheetColumns*cellWidth, 2*sheetMargin+rows*cellHeight))
	draw.Draw(sheet, sheet.Rect, image.White, image.Point{}, draw.Src)
	for i, s := range list {
		cell(t, sheet, image.Pt(sheetMargin+i%sheetColumns*cellWidth, sheetMargin+i/sheetColumns*cellHeight), s)
	}
	return sheet
}

// cell draws one sample's part of the sheet.
func cell(t *testing.T, sheet *image.RGBA, at image.Point, s samples.Sample) {
	design, _, _ := layout.Read(s.Text)
	if design == nil {
		t.Fatalf("%s.quilt has no design", s.Name)
	}
	top := quilt.Lay(design)
	size, stacked := fitted(float64(top.Outer.Width()), float64(top.Outer.Height()))
	corner := at.Add(image.Pt(0, textHeight))
	for _, colour := range []func(int) palettes.Colour{
		func(f int) palettes.Colour { return top.Fabrics[f].Colour },
		func(f int) palettes.Colour { return top.Fabrics[f].Colour.Grey() },
	} {
		picture := pixels.Paint(top, size, colour)
		draw.Draw(sheet, picture.Rect.Add(corner), picture, image.Point{}, draw.Over)
		if stacked {
			corner.Y += size.Height + cellGap
		} else {
			corner.X += size.Width + cellGap
		}
	}
	label(sheet, inconsolata.Bold8x16, at.Add(image.Pt(0, 20)), color.Gray{0x22}, s.Name)
	label(sheet, inconsolata.Regular8x16, at.Add(image.Pt(0, 42)), color.Gray{0x55}, fmt.Sprintf("%s, %s by %s",
		design.Title, rounded(top.Outer.Width(), design.Units), rounded(top.Outer.Height(), design.Units)))
}

func label(sheet draw.Image, face font.Face, at image.Point, ink color.Color, text string) {
	d := font.Drawer{Dst: sheet, Src: image.NewUniform(ink), Face: face, Dot: fixed.P(at.X, at.Y)}
	d.DrawString(text)
}

// fitted is the size at which two pictures of a shape fill a cell best, side by side or
// one above the other.
func fitted(width, height float64) (size pixels.Size, stacked bool) {
	room := [2]float64{cellWidth - 2*cellGap, cellHeight - textHeight - 2*cellGap}
	beside := min((room[0]-cellGap)/2/width, room[1]/height)
	above := min(room[0]/width, (room[1]-cellGap)/2/height)
	scale := max(beside, above)
	return pixels.Size{Width: int(math.Round(width * scale)), Height: int(math.Round(height * scale))}, above > beside
}

// rounded is a length to the nearest half unit.
func rounded(nm measure.NM, units measure.System) string {
	return measure.Text(measure.Nearest(nm, units.Unit()/2), units)
}
