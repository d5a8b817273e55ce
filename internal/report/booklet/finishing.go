package booklet

import (
	"slices"

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
	var whole []document.Block // what has no title stays with what follows
	for _, block := range s.Blocks {
		inner, ok := block.(document.Section)
		switch {
		case !ok:
			b.add(printed([]document.Block{block})...)
		case inner.Title == "":
			whole = append(whole, finished(inner)...)
		default:
			b.keep(slices.Concat(whole, []document.Block{heading(1, inner.Title)}, finished(inner))...)
			whole = nil
		}
	}
	b.add(whole...)
}

// finished is what a section says, its figures with captions and references.
func finished(s document.Section) []document.Block {
	var list []document.Block
	for _, block := range printed(s.Blocks) {
		if f, ok := block.(document.Figure); ok {
			f.Caption = caption(s.ID, sentence(f.Of.Title))
			list = append(list, paragraph(report.See([]string{see(s.ID)})))
			block = f
		}
		list = append(list, block)
	}
	return list
}
