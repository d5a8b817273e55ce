package render

import (
	"slices"

	"eighthturn/internal/document"
)

// ruledLine is how far lines to write on are apart, as a multiple of the size of type.
const ruledLine = 2.4

// ruled is lines to write on, at least three, as far down as the page goes.
func (b *builder) ruled(c column) {
	apart := b.body * ruledLine
	b.space(b.body)
	at := len(b.list)
	b.add(slice{height: 3 * apart, marks: linesToWrite(c, apart, 3*apart)})
	b.list[at].fill = func(height float64) []mark { return linesToWrite(c, apart, height) }
}

// linesToWrite are level lines across a column, one under the other.
func linesToWrite(c column, apart, height float64) []mark {
	var list []mark
	for y := apart; y <= height; y += apart {
		list = append(list, rule(c.x, y-0.5, c.w, 0.6, hair()))
	}
	return list
}

// fours fills a document that is folded up to whole sheets of four pages, with pages to write on before its back cover. They go on
// under the name of its chapter to write on, where it has one.
func (b *builder) fours(pages []page, d document.Document) []page {
	at := len(pages)
	for back(d) && at > 0 && pages[at-1].part == pages[len(pages)-1].part { // it may go over several
		at--
	}
	rest := append([]page(nil), pages[at:]...)
	pages = pages[:at:at]
	for (len(pages)+len(rest))%4 != 0 {
		height := b.bottom - b.top
		part := slices.IndexFunc(d.Sections, toWriteOn)
		if part < 0 && at > 0 {
			part = pages[at-1].part
		}
		pages = append(pages, page{part: part, placed: []placed{{slice{height: height, newPage: true, marks: linesToWrite(column{0, b.text()}, b.body*ruledLine, height)}, b.top}}})
	}
	return append(pages, rest...)
}

// withoutRuled is a document without the chapters that are nothing but lines to write on, for what is no paper.
func withoutRuled(d document.Document) document.Document {
	d.Sections = slices.DeleteFunc(slices.Clone(d.Sections), toWriteOn)
	return d
}

// toWriteOn says whether a chapter is nothing but lines to write on.
func toWriteOn(s document.Section) bool {
	return len(s.Blocks) > 0 && !slices.ContainsFunc(s.Blocks, func(b document.Block) bool {
		_, ruled := b.(document.Ruled)
		return !ruled
	})
}
