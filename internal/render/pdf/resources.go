package pdf

import (
	"strconv"

	"github.com/carlos7ags/folio/core"
	"github.com/carlos7ags/folio/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// goFonts are the Go fonts, regular and bold.
func goFonts() (list [2]*font.EmbeddedFont, err error) {
	for i, file := range [][]byte{goregular.TTF, gobold.TTF} {
		face, err := font.ParseTTF(file)
		if err != nil {
			return list, err
		}
		list[i] = font.NewEmbeddedFont(embedded{face, withoutHints(file)})
	}
	return list, nil
}

// fontNames are what pages call the fonts.
func fontNames() [2]string { return [2]string{"Regular", "Bold"} }

// resources are what pages name; all pages share them.
type resources struct{ fonts, pictures, states, layers *core.PdfDictionary }

func newResources() resources {
	return resources{dictionary(), dictionary(), dictionary(), dictionary()}
}

// opacity is the name of a state with an opacity (ISO 32000-1, 8.4.5).
func (r resources) opacity(part float64) string {
	label := "Opacity" + strconv.FormatFloat(part, 'f', -1, 64)
	r.states.Set(label, dictionary("CA", core.NewPdfReal(part), "ca", core.NewPdfReal(part)))
	return "/" + label
}

// picture is the name of a picture.
func (r resources) picture(at *core.PdfIndirectReference) string {
	label := "Picture" + strconv.Itoa(at.Num())
	r.pictures.Set(label, at)
	return "/" + label
}

// object is the resources as pages refer to them.
func (r resources) object() *core.PdfDictionary {
	return dictionary("Font", r.fonts, "XObject", r.pictures, "ExtGState", r.states, "Properties", r.layers)
}

// exactWidths gives letters their exact widths, in thousandths of their size, where an object is a list of those: the library
// cuts them off to whole ones, and a long line would end short.
func exactWidths(object core.PdfObject, face font.Face) core.PdfObject {
	d, _ := object.(*core.PdfDictionary)
	if d == nil {
		return object
	}
	list, _ := d.Get("W").(*core.PdfArray) // letters and lists of one width each, in turn
	for i := 0; list != nil && i < list.Len(); i += 2 {
		letter, _ := list.At(i).(*core.PdfNumber)
		list.Set(i+1, numbers(float64(face.GlyphAdvance(uint16(letter.IntValue())))*1000/float64(face.UnitsPerEm())))
	}
	return object
}
