package render

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/palettes"
)

// swatchWidth is the room that swatches take before their text, 0 for none.
func (b *builder) swatchWidth(list []document.Swatch, size float64) float64 {
	var width float64
	for i := range list {
		_, w := b.swatchLetter(&list[i], size)
		width += w + size*0.55
	}
	return width
}

// swatches are squares with letters at the head of a row's first line.
func (b *builder) swatches(list []document.Swatch, x, size float64) []mark {
	var marks []mark
	for i := range list {
		marks = append(marks, b.swatch(&list[i], x, size)...)
		x += b.swatchWidth(list[i:i+1], size)
	}
	return marks
}

// swatchLetter is a swatch's letter, small enough for its square, and the square's width.
func (b *builder) swatchLetter(s *document.Swatch, size float64) (piece, float64) {
	side := size * 1.32
	st := typed(size*0.82, true, onCloth(s.Colour))
	if b.large {
		st.size = size
	}
	letter := b.piece(line(s.Letter), st)
	return letter, max(side, letter.width+size*0.4)
}

// swatch is a square with a letter at the head of a row's first line.
func (b *builder) swatch(s *document.Swatch, x, size float64) []mark {
	letter, w := b.swatchLetter(s, size)
	h := size * 1.32
	y := (size*leading - h) / 2
	square := panel{rect: rect{x + 0.3, y + 0.3, w - 0.6, h - 0.6}, fill: &s.Colour, line: 0.6, ink: grey()}
	if line(s.Letter) == "" {
		return []mark{square}
	}
	letter.more = true
	return []mark{square, text{x: x + (w-letter.width)/2, base: y + h/2 + letter.size*0.36, piece: letter}}
}

// onCloth is the colour of letters on a colour: dark or light, whichever is read more easily.
func onCloth(c palettes.Colour) palettes.Colour {
	white := palettes.Colour{R: 255, G: 255, B: 255}
	if palettes.ContrastRatio(c, white) > palettes.ContrastRatio(c, ink()) {
		return white
	}
	return ink()
}

// counted is a number with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
