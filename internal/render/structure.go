package render

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/render/pdf"
)

// deepest is the last level of headings that a PDF has (ISO 32000-1, 14.8.4.3.2).
const deepest = 6

// within builds what lies in an element of a kind.
func (b *builder) within(kind string, build func()) *pdf.Element {
	outer := b.element
	b.element = outer.Add(kind)
	own := b.element
	build()
	b.element = outer
	return own
}

// headingKind is the kind of a heading: the title's is the first, chapters' the second, and none is left out on the way down
// (ISO 14289-1, 7.4.2).
func (b *builder) headingKind(level int) string {
	if b.part >= 0 {
		level++
	}
	b.headed = min(level+1, b.headed+1, deepest)
	return fmt.Sprintf("H%d", b.headed)
}

// owned are marks whose words and pictures are of an element, but for those that are of one already.
func owned(marks []mark, e *pdf.Element) []mark {
	for i, m := range marks {
		switch v := m.(type) {
		case text:
			if v.of == nil {
				v.of = e
				if v.to != "" {
					v.of = &pdf.Element{Kind: "Link", Later: e}
				}
			}
			marks[i] = v
		case art:
			if v.of == nil {
				v.of = e
			}
			marks[i] = v
		}
	}
	return marks
}

// elementOf is whose a mark is: nil for rules and frames.
func elementOf(m mark) *pdf.Element {
	switch v := m.(type) {
	case text:
		return v.of
	case art:
		return v.of
	}
	return nil
}

// unread are marks that are not read: heads that are printed again.
func unread(marks []mark) []mark {
	list := make([]mark, len(marks))
	for i, m := range marks {
		if v, is := m.(text); is {
			v.of = nil
			m = v
		}
		list[i] = m
	}
	return list
}

// numbering is how the items of a list are told apart (ISO 32000-1, 14.8.5.5).
func numbering(m document.Marker) string {
	switch m {
	case document.Numbered:
		return "Decimal"
	case document.Tick:
		return "Square"
	}
	return "Disc"
}

// figureElement is an illustration's place in the structure.
func figureElement(within *pdf.Element, alternative string) *pdf.Element {
	e := within.Add("Figure")
	e.Alternative = alternative
	return e
}
