package pdf

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/carlos7ags/folio/core"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Face is how words are set.
type Face struct {
	Size   float64 // points
	Bold   bool
	Colour palettes.Colour
}

// Set makes a face that of the text from here on.
func (f *File) Set(face Face) { f.face = face }

// Text writes words in the face that is set; their line of letters begins at a place. Signs that
// the fonts lack must not be among them.
func (f *File) Text(text string, at measure.Vec) {
	i := 0
	if f.face.Bold {
		i = 1
	}
	f.used[i] = true
	f.bytes = append(append(append(f.bytes, '/'), fontNames()[i]...), ' ')
	f.Numbers(f.face.Size)
	f.Operator("Tf q") // the face outlasts the words: it is part of what a span around them stands for
	f.Colour(f.face.Colour, "rg")
	f.Operator("BT")
	f.At(at.X, at.Y)
	f.Operator("Td")
	f.bytes = fmt.Appendf(f.bytes, "<%X> ", f.fonts[i].EncodeString(text))
	f.Operator("Tj ET Q")
}

// Turn turns the page by quarters clockwise about a place, until the operator Q; words that are
// to begin there are then written at the place that it returns.
func (f *File) Turn(at measure.Vec, quarters int) measure.Vec {
	q := (quarters%4 + 4) % 4
	cos, sin := [4]float64{1, 0, -1, 0}[q], [4]float64{0, -1, 0, 1}[q]
	f.Operator("q")
	f.Numbers(cos, sin, -sin, cos)
	f.At(at.X, at.Y)
	f.Operator("cm")
	return measure.Vec{Y: f.height}
}

// Instead opens a span that stands for another text when the page is searched, copied or read out; Done ends it (ISO 32000-1,
// 14.9.4). In an element it is a stretch of its own, since readers lose count where stretches lie in each other.
func (f *File) Instead(meant string) {
	f.around = f.element
	text := "/ActualText <" + fmt.Sprintf("%X", core.EncodeTextStringUTF16BE(meant)) + ">"
	if f.around == nil {
		f.Operator("/Span <<" + text + ">> BDC")
		return
	}
	f.outside()
	f.stretch(f.around, "Span", text)
}

// Done ends a span.
func (f *File) Done() {
	if f.around == nil {
		f.Operator("EMC")
		return
	}
	f.outside()
	f.Within(f.around)
}

// Bookmark is an entry of the outline that viewers show, for a place on the page; 0 is the
// outermost level.
func (f *File) Bookmark(text string, level int, y float64) {
	f.bookmarks = append(f.bookmarks, bookmark{text, level, f.onPage, f.height - y + f.shift.Y})
}

// Stand is what a page shows for a sign that the fonts lack.
const Stand = '\uFFFD'

// Has says whether a sign can be printed: the fonts have it, and a font of two bytes can name it.
func Has(letters *diagram.Lettering, r rune, bold bool) bool {
	return r >= ' ' && r <= '~' || r <= 0xFFFF && letters.Has(r, bold)
}

// Unseen says whether a sign shows nothing by itself: joiners, marks of direction, a soft hyphen.
func Unseen(r rune) bool {
	return unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r)
}

// Shown is a text as it is printed, with a mark for each sign that the fonts lack; lacks is
// told of those.
func Shown(letters *diagram.Lettering, text string, bold bool, lacks func(rune)) string {
	return strings.Map(func(r rune) rune {
		switch {
		case Unseen(r):
			return -1
		case Has(letters, r, bold):
			return r
		}
		lacks(r)
		return Stand
	}, text)
}
