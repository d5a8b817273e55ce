package lsp

import (
	"math"

	"eighthturn/palettes"
)

// colors are the colors of fabrics and colorways, where they are written.
func (d *document) colors(*placed) any {
	list := []colorInformation{}
	for _, c := range d.written().Tree.Colors() {
		list = append(list, colorInformation{d.span(c.At), color{float64(c.Colour.R) / 255, float64(c.Colour.G) / 255, float64(c.Colour.B) / 255, 1}})
	}
	return list
}

// presentations is a color as it is written.
func (d *document) presentations(p *placed) any {
	channel := func(v float64) uint8 {
		if !(v > 0) {
			return 0
		}
		return uint8(math.Round(min(v, 1) * 255))
	}
	hex := palettes.Colour{R: channel(p.Color.Red), G: channel(p.Color.Green), B: channel(p.Color.Blue)}.Hex()
	return []colorPresentation{{hex, textEdit{d.text.span(d.text.offset(p.Range.Start), max(d.text.offset(p.Range.Start), d.text.offset(p.Range.End))), hex}}}
}
