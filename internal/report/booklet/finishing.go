package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/report"
)

// finishingPart is backing, batting, quilting and binding, as the sewing report says it.
func (b *patternBuilder) finishingPart() {
	s := b.sewn(report.SewingFinishing)
	b.part(s.Title, false)
	b.addNotes("finishing")
	b.bind(s)
}

// bind adds what a section says, each section in it under its title and kept on one page where it fits on one.
func (b *patternBuilder) bind(s document.Section) {
	var whole []document.Block
	for _, block := range s.Blocks {
		inner, ok := block.(document.Section)
		if !ok {
			b.add(printed([]document.Block{block})...)
			continue
		}
		if inner.Title != "" {
			whole = append(whole, heading(1, inner.Title))
		}
		for _, inside := range printed(inner.Blocks) {
			if f, ok := inside.(document.Figure); ok {
				f.Caption = caption(inner.ID, sentence(f.Of.Title))
				whole = append(whole, paragraph(report.See([]string{see(inner.ID)})))
				inside = f
			}
			whole = append(whole, inside)
		}
		if inner.Title != "" { // what has no title stays with what follows
			b.keep(whole...)
			whole = nil
		}
	}
	b.add(whole...)
}
