package samples_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"regexp"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/inconsolata"
	"golang.org/x/image/math/fixed"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/render/picture"
	"eighthturn/internal/render/pixels"
	"eighthturn/layout"
	"eighthturn/samples"
	"eighthturn/svgout"
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
	golden.Picture(t, "contact.png", contactSheet(t, samples.All()), golden.Slack{})
}

// A sheet on which one fabric of one sample is a little darker is another one.
func TestContactSheetCatches(t *testing.T) {
	list := samples.All()[:1]
	honest := contactSheet(t, list)
	spoilt := samples.Sample{Name: list[0].Name, Text: regexp.MustCompile(`(fabric +\S+ +#.....)[1-9a-f]`).ReplaceAllString(list[0].Text, "${1}0")}
	if golden.Alike(honest, contactSheet(t, list), golden.Slack{}) != nil || golden.Alike(honest, contactSheet(t, []samples.Sample{spoilt}), golden.Slack{}) == nil {
		t.Error("another sheet passes")
	}
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
	for _, view := range []svgout.View{svgout.Colour, svgout.Value} {
		shown := pictured(t, top, view, size)
		draw.Draw(sheet, image.Rectangle{Max: image.Pt(size.Width, size.Height)}.Add(corner), shown, image.Point{}, draw.Over)
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

// pictured is a view of a top as a picture of a size.
func pictured(t *testing.T, top *quilt.Top, view svgout.View, size pixels.Size) image.Image {
	scene, err := svgout.NewScene(top, svgout.Options{View: view, ByFabric: true, Prints: true})
	if err != nil {
		t.Fatal(err)
	}
	var file bytes.Buffer
	if err := picture.PNG(&file, scene, picture.Frame{Pixels: max(size.Width, size.Height), Clear: true}); err != nil {
		t.Fatal(err)
	}
	shown, err := png.Decode(&file)
	if err != nil {
		t.Fatal(err)
	}
	return shown
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
