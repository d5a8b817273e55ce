package pdf

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"

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

// Set makes a face the page's, until another is.
func (f *File) Set(face Face) {
	if face == f.face {
		return
	}
	f.flush()
	name := ""
	if face.Bold {
		name = "B"
	}
	f.engine.SetFont(fontName, name, face.Size)
	f.engine.SetTextColor(int(face.Colour.R), int(face.Colour.G), int(face.Colour.B))
	f.face = face
}

// Text writes words in the page's face; their line of letters begins at a place. Signs that
// the fonts lack must not be among them.
func (f *File) Text(text string, at measure.Vec) {
	f.flush()
	f.engine.Text(at.X, at.Y, text)
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

// Instead opens a span that stands for another text when the page is searched or copied; Done
// ends it (ISO 32000-1, 14.9.4).
func (f *File) Instead(meant string) {
	f.Operator("/Span <</ActualText " + textString(meant) + ">> BDC")
}

// Done ends a span.
func (f *File) Done() { f.Operator("EMC") }

// Bookmark is an entry of the outline that viewers show, for a place on the page; 0 is the
// outermost level. Signs beyond those of two bytes become marks.
func (f *File) Bookmark(text string, level int, y float64) {
	if f.face == (Face{}) {
		f.Set(Face{Size: 10}) // so that the library takes the title for Unicode
	}
	f.engine.Bookmark(strings.Map(func(r rune) rune {
		if r > 0xFFFF {
			return Stand
		}
		return r
	}, text), level, y)
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

// textString is a text as a PDF holds it, in UTF-16 (ISO 32000-1, 7.9.2.2).
func textString(text string) string {
	out := []byte("<FEFF")
	for _, unit := range utf16.Encode([]rune(text)) {
		out = fmt.Appendf(out, "%04X", unit)
	}
	return string(append(out, '>'))
}
