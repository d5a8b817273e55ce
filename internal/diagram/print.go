package diagram

import (
	"bytes"
	"image"
	"image/png"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// printMargin is how many pixels of the repeats beside it a print's picture has on each side.
const printMargin = 1

// NewPrint is a picture of one repeat, mixed with so many parts of white in a hundred, which fills areas.
func NewPrint(picture *image.RGBA, across, down measure.NM, white int) *Print {
	var file bytes.Buffer
	_ = png.Encode(&file, palettes.Margined(palettes.Paler(picture, white), printMargin)) // a picture can be encoded, and memory takes it
	b := picture.Bounds()
	return &Print{File: file.Bytes(), Across: across, Down: down,
		Margin: measure.Point{X: printMargin * across / measure.NM(b.Dx()), Y: printMargin * down / measure.NM(b.Dy())}}
}
