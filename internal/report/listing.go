package report

import (
	"fmt"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Listing is the text for a shop that sells the pattern: what it is, how large the quilt becomes, what is bought for it, what one has to
// know, and its colorways. Pages are those of the printed pattern, 0 for a text without them.
func Listing(p *Plans, pages int) document.Document {
	t := p.Top
	d := document.Document{Title: listingTitle(t)}
	first := section("pattern", "Quilt pattern", document.Answer)
	if name := strings.TrimSpace(t.Credits.Designer); name != "" {
		first.Blocks = append(first.Blocks, paragraph(Designed(name)+"."))
	}
	if pages > 0 {
		first.Blocks = append(first.Blocks, document.Paragraph{Text: lead("Printed pattern:", "PDF, %s", measure.Count(pages, "page"))})
	}
	for _, line := range CoverLines(p) {
		first.Blocks = append(first.Blocks, document.Paragraph{Text: line})
	}
	if list := otherSizes(t); len(list) > 0 {
		first.Blocks = append(first.Blocks, paragraph("Also in:"), bullets(list...)[0])
	}
	d.Sections = append(d.Sections, first)
	for _, b := range BackCover(p, ShoppingTable, true).Blocks {
		if inner, ok := b.(document.Section); ok {
			if sizes := sizedCuts(p); len(sizes) > 1 && len(d.Sections) == 1 { // what to buy for each size
				inner.Blocks = shoppingBySize(p.SizeNames(), sizes)
			}
			inner.ID = strings.ToLower(strings.Fields(inner.Title)[0])
			d.Sections = append(d.Sections, inner)
		}
	}
	if s := Colorways(p); len(s.Blocks) > 0 {
		s.Depth = document.Answer
		d.Sections = append(d.Sections, s)
	}
	return d
}

// shoppingBySize is what to buy for each size.
func shoppingBySize(names []string, sizes []*cuts) (list []document.Block) {
	for first := 0; first < len(sizes); first += sizesBeside {
		end := min(first+sizesBeside, len(sizes))
		list = append(list, (&sizesTable{names: names[first:end], sizes: sizes[first:end]}).toBuy())
	}
	return list
}

// otherSizes are the other sizes of the layout, each with its name.
func otherSizes(t *quilt.Top) (list []string) {
	for i := range t.Sizes {
		if t.Sizes[i].Own {
			continue
		}
		size := t.Sizes[i].Top(nil)
		list = append(list, fmt.Sprintf("%s: %s", t.Sizes[i].Name, size.Units.Size(size.Outer.Width(), size.Outer.Height())))
	}
	return list
}

// listingTitle is what the quilt is called.
func listingTitle(t *quilt.Top) string {
	if t.Title == "" {
		return "Quilt pattern"
	}
	return t.Title
}
