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
	last, said := len(b.parts)-1, b.saidIn(nil)
	day := b.parts[last]
	b.parts = b.parts[:last]
	b.titled(report.Abbreviations(b.plans, said)) // before the schedule, which is a page of its own
	b.parts = append(b.parts, day)
	d := numbered(b.document(b.parts))
	d.Cover.Subtitle = "Class handout"
	d.Subject = "A class handout: what to bring, what is provided, the class schedule."
	return d
}

// kits says whether kits are provided.
func (b *patternBuilder) kits() bool { return b.Cuts.Copies > 1 }
