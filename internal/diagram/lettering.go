package diagram

import (
	"fmt"
	"unicode"

	"github.com/rivo/uniseg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Heights of the letters of the Go fonts as parts of their size, rather too great than too
// small: of a capital, of what stands highest and of what hangs lowest.
const (
	capital = 0.73
	highest = 0.95
	lowest  = 0.24
)

// wideSign is the width of a sign that the Go fonts lack, a column of a terminal each, as
// part of its size.
const wideSign = 0.55

// How much wider than the Go fonts a face is that programs have in their place: regular, bold, and the signs of arithmetic. Of the usual
// faces DejaVu Sans and Verdana are the widest, from memory; a judge measures the words of all samples in the face that is here.
const (
	wider     = 1.2
	widerBold = 1.25
	widerSign = 1.45
)

// Lettering measures words as the Go fonts set them. It is not to be used by two at a time.
type Lettering struct {
	faces   [2]*sfnt.Font // regular, bold
	buffer  sfnt.Buffer
	known   map[letter]float64
	anyFace bool // the room for words in whatever face
}

type letter struct {
	rune
	bold bool
}

// NewLettering reads the fonts.
func NewLettering() *Lettering {
	l := &Lettering{known: map[letter]float64{}}
	for i, file := range [][]byte{goregular.TTF, gobold.TTF} {
		face, err := sfnt.Parse(file)
		if err != nil {
			panic(fmt.Sprintf("a font within the program cannot be read: %v", err))
		}
		l.faces[i] = face
	}
	return l
}

// Width is how wide a text stands in letters of a size, in the size's unit. Signs that the
// fonts lack are counted by the columns of a terminal, generously.
func (l *Lettering) Width(text string, size float64, bold bool) float64 {
	sum := 0.0
	for _, r := range text {
		sum += l.advance(letter{r, bold}) * l.spare(r, bold)
	}
	return sum * size
}

// spare is by how much a letter may be wider.
func (l *Lettering) spare(r rune, bold bool) float64 {
	switch {
	case !l.anyFace:
		return 1
	case unicode.Is(unicode.Sm, r):
		return widerSign
	case bold:
		return widerBold
	}
	return wider
}

// Has says whether the fonts have a sign.
func (l *Lettering) Has(r rune, bold bool) bool {
	index, err := l.face(bold).GlyphIndex(&l.buffer, r)
	return err == nil && index != 0
}

func (l *Lettering) face(bold bool) *sfnt.Font {
	if bold {
		return l.faces[1]
	}
	return l.faces[0]
}

// advance is the width of a letter of size 1.
func (l *Lettering) advance(a letter) float64 {
	if w, ok := l.known[a]; ok {
		return w
	}
	w := l.asked(a)
	l.known[a] = w
	return w
}

// unit is the size at which the fonts are asked, large enough for a ten-thousandth.
const unit = 1 << 11

func (l *Lettering) asked(a letter) float64 {
	face := l.face(a.bold)
	index, err := face.GlyphIndex(&l.buffer, a.rune)
	if err == nil && index != 0 {
		if wide, err := face.GlyphAdvance(&l.buffer, index, fixed.I(unit), font.HintingNone); err == nil {
			return float64(wide) / (64 * unit)
		}
	}
	return wideSign * float64(max(1, uniseg.StringWidth(string(a.rune))))
}
