package pdf

import (
	"bytes"
	"eighthturn/internal/credits"
	"io"

	"github.com/carlos7ags/folio/core"
)

// End writes the file.
func (f *File) End(w io.Writer) error {
	f.endPage()
	if f.err != nil {
		return f.Err()
	}
	for i, used := range f.fonts {
		if f.used[i] {
			add := func(object core.PdfObject) *core.PdfIndirectReference {
				if stream, ok := object.(*core.PdfStream); ok {
					stream.SetCompressLevel(packedLevel)
				}
				return f.objects.add(exactWidths(object, used.Face()))
			}
			f.resources.fonts.Set(fontNames()[i], f.objects.add(used.BuildObjects(add)))
		}
	}
	pages := core.NewPdfArray()
	for _, page := range f.pages {
		pages.Add(page)
	}
	f.objects.list[pagesNumber-1] = dictionary("Type", name("Pages"), "Count", core.NewPdfInteger(len(f.pages)), "Kids", pages)
	f.objects.list[resourcesNumber-1] = f.resources.object()
	f.objects.list[infoNumber-1] = f.info()
	f.objects.list[catalogNumber-1] = f.catalog()
	return wrapped(f.objects.write(w, f.Marker))
}

// catalog says where all else is; the text's language; and that viewers print the file as large as it is and show its
// title (ISO 32000-1, 12.2).
func (f *File) catalog() *core.PdfDictionary {
	c := dictionary("Type", name("Catalog"), "Pages", at(pagesNumber),
		"ViewerPreferences", dictionary("PrintScaling", name("None"), "DisplayDocTitle", core.NewPdfBoolean(true)))
	f.lead()
	if len(f.layers) > 0 {
		c.Set("OCProperties", f.layersOf())
	}
	c.Set("OutputIntents", f.intent())
	if f.whole != nil {
		c.Set("StructTreeRoot", f.structure())
		c.Set("MarkInfo", dictionary("Marked", core.NewPdfBoolean(true)))
	}
	if f.Language != "" {
		c.Set("Lang", core.NewPdfTextString(f.Language))
	}
	if said := (credits.Credits{Title: f.Title, Author: f.Author, Copyright: f.Copyright}); said.Said() {
		xmp := core.NewPdfStream(said.Packet()) // not packed, so that any program finds it (ISO 32000-1, 14.3.2)
		xmp.Dict.Set("Type", name("Metadata"))
		xmp.Dict.Set("Subtype", name("XML"))
		c.Set("Metadata", f.objects.add(xmp))
	}
	if len(f.bookmarks) > 0 {
		c.Set("Outlines", outline(f.bookmarks, &f.objects))
		c.Set("PageMode", name("UseOutlines"))
	}
	return c
}

// info is what the file says of itself, without a clock.
func (f *File) info() *core.PdfDictionary {
	d := dictionary()
	for _, entry := range [][2]string{
		{"Title", f.Title}, {"Author", f.Author}, {"Subject", f.Subject}, {"Keywords", f.Keywords}, {"Creator", credits.Tool},
	} {
		if entry[1] != "" {
			d.Set(entry[0], core.NewPdfTextString(entry[1]))
		}
	}
	return d
}

// bookmark is an entry of the outline that viewers show.
type bookmark struct {
	text  string
	level int
	page  *core.PdfIndirectReference
	y     float64 // from the page's lower edge
}

// entry is a bookmark as an object, with those within it.
type entry struct {
	dictionary *core.PdfDictionary
	at         *core.PdfIndirectReference
	last       *entry // within it
	count      int    // within it, at any level
}

// outline adds the outline, all of it open (ISO 32000-1, 12.3.3).
func outline(list []bookmark, o *objects) *core.PdfIndirectReference {
	root := &entry{dictionary: dictionary("Type", name("Outlines"))}
	root.at = o.add(root.dictionary)
	open := []*entry{root}
	for _, b := range list {
		open = open[:min(b.level+1, len(open))]
		within := open[len(open)-1]
		e := &entry{dictionary: dictionary("Title", core.NewPdfTextString(b.text), "Parent", within.at,
			"Dest", core.NewPdfArray(b.page, name("XYZ"), core.NewPdfInteger(0), core.NewPdfReal(b.y), core.NewPdfNull()))}
		e.at = o.add(e.dictionary)
		if before := within.last; before != nil {
			e.dictionary.Set("Prev", before.at)
			before.dictionary.Set("Next", e.at)
		} else {
			within.dictionary.Set("First", e.at)
		}
		within.dictionary.Set("Last", e.at)
		within.last = e
		for _, outer := range open {
			outer.count++
			outer.dictionary.Set("Count", core.NewPdfInteger(outer.count))
		}
		open = append(open, e)
	}
	return root.at
}

// Marked says whether a file begins as a PDF with a marker.
func Marked(head []byte, marker string) bool {
	return bytes.HasPrefix(head, []byte("%PDF-")) && bytes.Contains(head[:min(len(head), 64)], []byte("%"+marker+"\n"))
}
