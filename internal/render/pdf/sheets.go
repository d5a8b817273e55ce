package pdf

import (
	"bytes"

	"github.com/carlos7ags/folio/core"

	"eighthturn/internal/measure"
)

// sheet is a side of a sheet of paper, on which one page stands or several.
type sheet struct {
	*core.PdfDictionary
	reference *core.PdfIndirectReference
	height    float64
	key       int // in the table of owners
}

// Sheets adds sides of sheets of a size, to be drawn on in any order.
func (f *File) Sheets(n int, width, height float64) {
	for range n {
		page := dictionary("Type", name("Page"), "Parent", at(pagesNumber), "Resources", at(resourcesNumber), "MediaBox", numbers(0, 0, width, height))
		s := sheet{page, f.objects.add(page), height, len(f.owners)}
		f.pages = append(f.pages, s.reference)
		if f.whole != nil {
			f.owners = append(f.owners, owners{})
			page.Set("StructParents", core.NewPdfInteger(s.key))
			page.Set("Tabs", name("S"))
		}
		f.sheets = append(f.sheets, s)
	}
}

// On begins a page of a size on a sheet, with its upper left corner so far from the sheet's.
func (f *File) On(number int, corner measure.Vec, width, height float64) {
	f.endPage()
	s := f.sheets[number]
	f.page, f.onPage, f.pageKey = s.PdfDictionary, s.reference, s.key
	f.width, f.height, f.face = width, height, Face{}
	f.shift = measure.Vec{X: corner.X, Y: s.height - corner.Y - height}
	f.packed = &bytes.Buffer{}
	f.packer.Reset(f.packed)
	if f.shift != (measure.Vec{}) {
		f.Operator("q")
		f.Numbers(1, 0, 0, 1, f.shift.X, f.shift.Y)
		f.Operator("cm")
	}
}

// box is a rectangle of the page in its sheet's own frame: left, lower, right and upper edge.
func (f *File) box(at measure.Vec, width, height float64) []float64 {
	x, y := at.X+f.shift.X, f.height-at.Y-height+f.shift.Y
	return []float64{x, y, x + width, y + height}
}

// Trim says that the page is cut off so far within its edges (ISO 32000-1, 14.11.2).
func (f *File) Trim(by float64) {
	f.page.Set("TrimBox", numbers(by, by, f.width-by, f.height-by))
}

// Marks says that the page is cut off at its own edges, with so much beyond them printed, and draws marks to cut by in the room
// around (ISO 32000-1, 14.11.2).
func (f *File) Marks(bleed, length float64) {
	f.page.Set("TrimBox", numbers(f.box(measure.Vec{}, f.width, f.height)...))
	f.page.Set("BleedBox", numbers(f.box(measure.Vec{X: -bleed, Y: -bleed}, f.width+2*bleed, f.height+2*bleed)...))
	f.Within(nil)
	f.Operator("q 0 G 0.25 w")
	for _, x := range []float64{-bleed, f.width + bleed} {
		for _, y := range []float64{-bleed, f.height + bleed} {
			edge, out := measure.Vec{X: max(0, min(f.width, x)), Y: max(0, min(f.height, y))}, measure.Vec{X: length, Y: length}
			if x < 0 {
				out.X = -length
			}
			if y < 0 {
				out.Y = -length
			}
			f.Outline([]measure.Vec{{X: x, Y: edge.Y}, {X: x + out.X, Y: edge.Y}}, false)
			f.Outline([]measure.Vec{{X: edge.X, Y: y}, {X: edge.X, Y: y + out.Y}}, false)
		}
	}
	f.Operator("S Q")
}
