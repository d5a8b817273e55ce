package booklet

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/report"
	"slices"
	"strings"
)

// beginPart is what to know first. It comes last, since it explains the abbreviations that the other parts use.
func (b *patternBuilder) beginPart(rest []document.Section) {
	b.part("Before you begin", true)
	b.addNotes("")
	d := report.Beginning(b.plans)
	facts, _ := d.Section(report.BeginFacts)
	tools, _ := d.Section(report.BeginTools)
	b.add(facts.Blocks...)
	b.cautions(report.PatternCautions())
	b.titled(tools)
	scant, _ := d.Section(report.BeginScant)
	b.titled(scant)
	said := b.saidIn(rest)
	b.titled(report.Terms(said))
	b.titled(report.Abbreviations(b.plans, said))
}

// titled adds a section under its title.
func (b *patternBuilder) titled(s document.Section) {
	b.add(heading(1, s.Title))
	b.add(s.Blocks...)
}

// saidIn is all that the parts so far and those to come say.
func (b *patternBuilder) saidIn(rest []document.Section) string {
	d := document.Document{Cover: b.front, Sections: append(slices.Clone(b.parts), rest...)}
	return strings.Join(textsOf(d), "\n")
}

// cautions are the usual ones where blades and irons are used, in the one box of a pattern.
func (b *patternBuilder) cautions(list []string) {
	var items []document.Item
	for _, c := range list {
		items = append(items, item(document.Plain(c)))
	}
	b.add(document.Box{Caution: true, Blocks: []document.Block{document.List{Items: items}}})
}

// textsOf is every text that a document prints, the words within its pictures too.
func textsOf(d document.Document) []string {
	var list []string
	say := func(text string) string {
		list = append(list, text)
		return text
	}
	if d.Cover != nil {
		say(d.Cover.Subtitle)
		for _, t := range d.Cover.Lines {
			say(t.String())
		}
	}
	mapped(d, say)
	for _, p := range d.Sections {
		for _, m := range marksOf(p.Blocks) {
			if m.Words != nil {
				say(m.Words.Text)
			}
		}
	}
	return list
}

// marksOf is what stands in all pictures among blocks.
func marksOf(list []document.Block) []diagram.Mark {
	var marks []diagram.Mark
	for _, b := range list {
		switch v := b.(type) {
		case document.Figure:
			marks = append(marks, v.Of.Marks...)
		case document.Picture:
			marks = append(marks, v.Of.Marks...)
		case document.Gallery:
			for _, p := range v.Pictures {
				marks = append(marks, marksOf([]document.Block{p})...)
			}
		case document.Box:
			marks = append(marks, marksOf(v.Blocks)...)
		case document.Together:
			marks = append(marks, marksOf(v.Blocks)...)
		case document.List:
			for _, it := range v.Items {
				marks = append(marks, marksOf(it.Blocks)...)
			}
		}
	}
	return marks
}
