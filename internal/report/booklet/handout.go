package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/report"
)

// Handout is the paper for a class: what to bring, what is provided, the class schedule. Where the plan is for several
// quilts, each is a kit.
func Handout(r Reports, o Options) document.Document {
	b := newBook(r, o)
	class := report.Class(b.plans)
	for i, s := range class.Sections {
		b.part(s.Title, i == 0)
		if i == 0 {
			b.addNotes("")
		}
		b.bind(s)
		if i == 0 {
			b.cautions(report.PatternCautions())
		}
	}
	b.day()
	b.titled(report.Abbreviations(b.plans, b.saidIn(nil)))
	d := b.document(b.parts)
	d.Cover.Subtitle = "Class handout"
	d.Subject = "A class handout: what to bring, what is provided, the class schedule."
	return d
}

// kits says whether kits are provided.
func (b *patternBuilder) kits() bool { return b.Cuts.Copies > 1 }
