// Package render writes a document out: as terminal text, Markdown with its pictures, one HTML page, CSV and PDF; and a plan as
// JSON. It adds no words of its own, and the same document gives the same bytes.
package render

import (
	"eighthturn/internal/document"
	"eighthturn/internal/render/pdf"
	"fmt"
	"slices"
	"strings"
)

// Printed is a document on paper.
type Printed struct {
	File     []byte // the PDF
	Pages    int
	Warnings []Warning
}

// PDF prints a document. The same document and options give the same bytes. The error says
// what cannot be printed at all: a page without room, a figure of true size that is larger than
// the page.
func PDF(d document.Document, o Options) (Printed, error) {
	d = d.Print()
	if err := check(d); err != nil {
		return Printed{}, err
	}
	if err := o.check(); err != nil {
		return Printed{}, err
	}
	b := newBuilder(o.look())
	b.sign = o.Sign
	pages, err := b.pages(d, o)
	if err != nil {
		return Printed{}, err
	}
	decorated := b.decorated(d, pages)
	warnings := append(b.warnings, b.missingSigns()...)
	warnings = append(warnings, overflows(decorated, b.look)...)
	warnings = append(warnings, shortPages(pages, b.look)...)
	file, err := paint(d, decorated, b, o)
	return Printed{file, len(pages), warnings}, err
}

// OnePage says whether blocks fit on a page by themselves, as a back cover does.
func OnePage(list []document.Block, o Options) bool {
	d := document.Document{Sections: []document.Section{{Back: true, Blocks: list}}}.Print()
	b := newBuilder(o.look())
	built := b.document(d)
	return b.err == nil && !slices.ContainsFunc(b.warnings, func(w Warning) bool { return w.Kind == StackedTable }) && len(paginate(built, b.look)) == 1
}

// pages builds a document and puts it on pages.
func (b *builder) pages(d document.Document, o Options) ([]page, error) {
	list := b.document(d)
	if b.err != nil {
		return nil, b.err
	}
	pages := paginate(list, b.look)
	if o.paper().Fold {
		pages = b.fours(pages, d)
	}
	if len(pages) > b.most {
		return nil, &TooLong{b.most}
	}
	return pages, nil
}

// maxPages is the most pages of a document.
const maxPages = 3000

// TooLong is a document that does not fit on as many pages as one may have.
type TooLong struct{ Most int }

func (t *TooLong) Error() string { return fmt.Sprintf("this comes to more than %d pages", t.Most) }

// missingSigns warns of the signs that the fonts lack.
func (b *builder) missingSigns() []Warning {
	if len(b.missing) == 0 {
		return nil
	}
	slices.Sort(b.missing)
	return []Warning{{Kind: MissingSign, Message: LackingSigns(b.missing) + "; the HTML page shows them, and searching the PDF finds them"}}
}

// LackingSigns says which signs the fonts lack and what stands in their place.
func LackingSigns(signs []rune) string {
	var list []string
	for _, r := range signs[:min(len(signs), 12)] {
		list = append(list, fmt.Sprintf("%c (U+%04X)", r, r))
	}
	if more := len(signs) - len(list); more > 0 {
		list = append(list, fmt.Sprintf("%d more", more))
	}
	return fmt.Sprintf("the printed letters lack %s, and %c stands in their place", strings.Join(list, ", "), pdf.Stand)
}

// overflows are the pages on which something reaches beyond the margins.
func overflows(pages []sheetOfPaper, l look) []Warning {
	const slack = 0.05
	var list []Warning
	for i, p := range pages {
		for _, m := range p {
			r := m.extent()
			r.x, r.y = r.x+m.x, r.y+m.y
			if r.x < l.margin-slack || r.y < l.margin-slack || r.x+r.w > l.wide-l.margin+slack || r.y+r.h > l.high-l.margin+slack {
				list = append(list, Warning{Overflow, i + 1, fmt.Sprintf("%s reaches beyond the margins", named(m.mark))})
				break
			}
		}
	}
	return list
}

func named(m mark) string {
	switch v := m.(type) {
	case text:
		return "the text " + quoted(v.shown)
	case art:
		return "the illustration " + quoted(v.shape.alternative)
	}
	return "a frame or rule"
}

// spot is a mark in its place on the page.
type spot struct {
	mark
	x, y float64
}

// sheetOfPaper is all that is on a page, in the order in which it is painted.
type sheetOfPaper []spot
