package pdf

import (
	"slices"

	"github.com/carlos7ags/folio/core"

	"eighthturn/internal/measure"
)

// Element is a part of what a file says, such as a heading, a cell or a figure, in the order in which it is read (ISO 32000-1,
// 14.7 and 14.8).
type Element struct {
	Kind        string // of the standard's structure types
	Alternative string // of a figure, for someone who cannot see it
	Scope       string // of the head of a table: Row or Column
	Span        int    // of a cell: how many columns it goes across, 0 for 1
	Numbering   string // of a list: what stands before its items, of the standard's names

	// Later is for a link within text: it is added to what it is in when it is first drawn.
	Later *Element

	parts []part
	box   []float64 // of a figure on one page: left, lower, right and upper edge
	page  *core.PdfIndirectReference
}

// part is what an element holds: an element, a stretch of a page's contents, or an annotation.
type part struct {
	*Element
	page   *core.PdfIndirectReference
	number int // of the stretch on its page
	link   *core.PdfIndirectReference
}

// owners are the elements of a page's stretches in their order, or the one of a link.
type owners struct {
	list []*Element
	link *Element
}

// Add puts an element into another, behind what is there.
func (e *Element) Add(kind string) *Element {
	within := &Element{Kind: kind}
	e.parts = append(e.parts, part{Element: within})
	return within
}

// Whole says what a file's structure begins with; without it the file has none.
func (f *File) Whole(e *Element) { f.whole = e }

// Within says what element is drawn from here on, until the next call; nil is for what is not read: rules, page numbers,
// running heads.
func (f *File) Within(e *Element) {
	if f.whole == nil || f.inside && f.element == e {
		return
	}
	f.outside()
	if e == nil {
		f.inside = true
		f.Operator("/Artifact BMC")
		return
	}
	f.stretch(e, e.Kind, "")
}

// Inside is the element that is drawn, nil for none.
func (f *File) Inside() *Element { return f.element }

// stretch begins a stretch of an element on the page, with its properties.
func (f *File) stretch(e *Element, kind, more string) {
	f.inside, f.element = true, e
	if e.Later != nil {
		e.Later.parts = append(e.Later.parts, part{Element: e})
		e.Later = nil
	}
	owners := &f.owners[f.pageKey].list
	f.bytes = append(append(append(f.bytes, '/'), kind...), " <</MCID "...)
	f.Numbers(float64(len(*owners)))
	f.Operator(more + ">> BDC")
	e.parts = append(e.parts, part{page: f.onPage, number: len(*owners)})
	*owners = append(*owners, e)
}

// outside ends what is drawn of an element.
func (f *File) outside() {
	if f.inside {
		f.Operator("EMC")
	}
	f.inside, f.element = false, nil
}

// Frame says where on the page an element is, such as a figure.
func (f *File) Frame(e *Element, at measure.Vec, width, height float64) {
	page := f.onPage
	if e.page != nil && e.page != page { // on several pages: nowhere in particular
		e.box = nil
		return
	}
	box := f.box(at, width, height)
	if e.page != nil {
		box = []float64{min(box[0], e.box[0]), min(box[1], e.box[1]), max(box[2], e.box[2]), max(box[3], e.box[3])}
	}
	e.page, e.box = page, box
}

// structure adds the tree of elements, and the table of whose each stretch of a page is (14.7.4.4).
func (f *File) structure() *core.PdfIndirectReference {
	root := dictionary("Type", name("StructTreeRoot"))
	at := f.objects.add(root)
	f.references = map[*Element]*core.PdfIndirectReference{}
	root.Set("K", f.elements(f.whole, at))
	nums := core.NewPdfArray()
	for key, of := range f.owners {
		nums.Add(core.NewPdfInteger(key))
		if of.link != nil {
			nums.Add(f.references[of.link])
			continue
		}
		list := core.NewPdfArray()
		for _, e := range of.list {
			list.Add(f.references[e])
		}
		nums.Add(f.objects.add(list))
	}
	root.Set("ParentTree", f.objects.add(dictionary("Nums", nums)))
	root.Set("ParentTreeNextKey", core.NewPdfInteger(len(f.owners)))
	return at
}

// empty says whether nothing of an element is on any page. Cells without words keep their columns in step.
func (e *Element) empty() bool {
	if e.Kind == "TD" || e.Kind == "TH" {
		return false
	}
	return !slices.ContainsFunc(e.parts, func(p part) bool { return p.Element == nil || !p.Element.empty() })
}

// elements adds an element and those in it.
func (f *File) elements(e *Element, within *core.PdfIndirectReference) *core.PdfIndirectReference {
	d := dictionary("S", name(e.Kind), "P", within)
	at := f.objects.add(d)
	f.references[e] = at
	var page *core.PdfIndirectReference
	kids := core.NewPdfArray()
	for _, p := range e.parts {
		switch {
		case p.Element != nil:
			if !p.Element.empty() {
				kids.Add(f.elements(p.Element, at))
			}
			continue
		case page == nil:
			page = p.page
			d.Set("Pg", page)
		}
		switch {
		case p.link != nil:
			kids.Add(dictionary("Type", name("OBJR"), "Obj", p.link, "Pg", p.page))
		case p.page != page:
			kids.Add(dictionary("Type", name("MCR"), "Pg", p.page, "MCID", core.NewPdfInteger(p.number)))
		default:
			kids.Add(core.NewPdfInteger(p.number))
		}
	}
	if kids.Len() == 1 {
		d.Set("K", kids.At(0))
	} else if kids.Len() > 1 {
		d.Set("K", kids)
	}
	if e.Alternative != "" {
		d.Set("Alt", core.NewPdfTextString(e.Alternative))
	}
	if a := e.attributes(); a != nil {
		d.Set("A", a)
	}
	return at
}

// attributes are what an element says of itself beside its kind (14.8.5), nil for nothing.
func (e *Element) attributes() *core.PdfDictionary {
	switch {
	case e.Kind == "Figure" && e.box != nil:
		return dictionary("O", name("Layout"), "BBox", numbers(e.box...), "Placement", name("Block"))
	case e.Numbering != "":
		return dictionary("O", name("List"), "ListNumbering", name(e.Numbering))
	case e.Scope != "" || e.Span > 1:
		d := dictionary("O", name("Table"))
		if e.Scope != "" {
			d.Set("Scope", name(e.Scope))
		}
		if e.Span > 1 {
			d.Set("ColSpan", core.NewPdfInteger(e.Span))
		}
		return d
	}
	return nil
}
