package booklet

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
)

// beginPart is what to know first. It comes last, since it explains the abbreviations that the other parts use.
func (b *patternBuilder) beginPart(rest []document.Section) {
	b.part("Before you begin", true)
	b.addNotes("")
	b.add(document.List{Items: b.facts()})
	b.cautions()
	b.tools()
	said := b.saidIn(rest)
	b.add(heading(1, "Terms"), document.List{Items: glossary(said)})
	b.abbreviations(said)
}

// facts are what the whole pattern rests on.
func (b *patternBuilder) facts() []document.Item {
	t := b.Top
	items := []document.Item{
		item(lead("Read all instructions", "before cutting, and sew one test block first.")),
		item(lead("Finished size:", "%s.", b.size(t.Outer.Width(), t.Outer.Height()))),
		item(lead("Seam allowance:", "use %s unless otherwise noted; it is included in all cut sizes.", b.length(t.Seam))),
	}
	if w, same := b.usableWidth(); same {
		items = append(items, item(lead("Usable width:", "%s for every fabric, selvages removed.", b.length(w))))
	} else {
		items = append(items, item(lead("Usable width:", "it differs; see the fabric table.")))
	}
	if t.CutFacts.StripGiven {
		return items
	}
	return append(items, item(lead("Blocks:", "%s finished. The strip widths for wedges are worked out from this size, so cut them exactly.", b.size(t.SideFinished, t.SideFinished))))
}

// usableWidth is that of the fabrics, and whether all have the same.
func (b *patternBuilder) usableWidth() (w measure.NM, same bool) {
	for i, f := range b.Cuts.Fabrics {
		if i > 0 && f.UsableWidth != w {
			return 0, false
		}
		w = f.UsableWidth
	}
	return w, true
}

// cautions are the usual ones where blades and irons are used.
func (b *patternBuilder) cautions() {
	var items []document.Item
	for _, c := range report.Cautions() {
		items = append(items, item(document.Plain(sentence(c))))
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
