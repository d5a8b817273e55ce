package pdf

import (
	"github.com/carlos7ags/folio/core"

	"eighthturn/internal/measure"
)

// link is what leads to a place, of an element.
type link struct {
	*core.PdfDictionary
	to string
}

// Place names a place on the page for links to lead to; of like names the first counts.
func (f *File) Place(label string, y float64) {
	if f.places[label] == nil {
		f.places[label] = f.destination(y)
	}
}

// destination shows the page from a height on (ISO 32000-1, 12.3.2.2).
func (f *File) destination(y float64) *core.PdfArray {
	return core.NewPdfArray(f.onPage, name("XYZ"), core.NewPdfNull(), core.NewPdfReal(f.height-y+f.shift.Y), core.NewPdfNull())
}

// Link makes a rectangle of the page lead to a place, which may be named later, as part of an element (12.5.6.5 and 14.8.4.4.2).
func (f *File) Link(e *Element, to string, at measure.Vec, size measure.Vec) {
	page := f.onPage
	d := dictionary("Type", name("Annot"), "Subtype", name("Link"), "Rect", numbers(f.box(at, size.X, size.Y)...),
		"Border", core.NewPdfArray(core.NewPdfInteger(0), core.NewPdfInteger(0), core.NewPdfInteger(0)), "F", core.NewPdfInteger(4),
		"Contents", core.NewPdfTextString(to))
	own := f.objects.add(d)
	if e != nil && f.whole != nil {
		d.Set("StructParent", core.NewPdfInteger(len(f.owners)))
		f.owners = append(f.owners, owners{link: e})
		e.parts = append(e.parts, part{page: page, link: own})
	}
	f.links = append(f.links, link{d, to})
	list, _ := f.page.Get("Annots").(*core.PdfArray)
	if list == nil {
		list = core.NewPdfArray()
		f.page.Set("Annots", list)
	}
	list.Add(own)
}

// lead gives links their places.
func (f *File) lead() {
	for _, l := range f.links {
		if place := f.places[l.to]; place != nil {
			l.Set("Dest", place)
		}
	}
}
