package booklet

import (
	"regexp"
	"slices"
	"strings"

	"eighthturn/cutting"
	"eighthturn/figure"
	"eighthturn/measure"
	"eighthturn/pages"
)

// beginPart is what to know first. It comes last, since it explains the abbreviations that the other parts use.
func (b *book) beginPart(rest []pages.Part) {
	b.part("Before you begin", true)
	b.addNotes("")
	b.add(pages.List{Items: b.facts()})
	b.cautions()
	b.add(heading(1, "Words"), pages.List{Items: b.glossary()})
	b.abbreviations(rest)
}

// facts are what the whole pattern rests on.
func (b *book) facts() []pages.Item {
	t := b.Top
	items := []pages.Item{
		item(lead("Read it all", "before you cut, and sew one test block first.")),
		item(lead("Finished size:", "%s.", b.nearSize(t.Outer.Width(), t.Outer.Height()))),
		item(lead("Seam allowance:", "%s throughout, but where another one is named. It is in all cut sizes.", b.length(t.Seam))),
	}
	if w, same := b.usableWidth(); same {
		items = append(items, item(lead("Usable width:", "%s of every fabric, between the selvages.", b.length(w))))
	} else {
		items = append(items, item(lead("Usable width:", "it differs; the table of fabrics names it for each one.")))
	}
	if t.Cloth.StripGiven {
		return items
	}
	return append(items, item(lead("Blocks:", "%s finished. The strips that wedges are cut from follow from that, so keep to the exact widths.", b.nearSize(t.SideFinished, t.SideFinished))))
}

// usableWidth is that of the fabrics, and whether all have the same.
func (b *book) usableWidth() (w measure.NM, same bool) {
	for i, f := range b.Cuts.Fabrics {
		if i > 0 && f.UsableWidth != w {
			return 0, false
		}
		w = f.UsableWidth
	}
	return w, true
}

// cautions are the usual ones where blades and irons are used.
func (b *book) cautions() {
	var items []pages.Item
	for _, c := range cutting.Cautions() {
		items = append(items, item(pages.Plain(sentence(c))))
	}
	b.add(pages.Box{Caution: true, Blocks: []pages.Block{pages.List{Items: items}}})
}

// glossary explains the words of the trade that the pattern uses.
func (b *book) glossary() []pages.Item {
	items := []pages.Item{
		item(lead("Finished", "is the size from seam to seam, once everything is sewn.")),
		item(lead("Unfinished", "is the size of a sewn unit with the seam allowances that are still open.")),
		item(lead("Cut", "is the size as it lies on the cutting mat.")),
		item(lead("Usable width", "is what is left of the cloth's width without its selvages, the firm woven edges.")),
	}
	if len(b.Cuts.Sets) > 0 {
		items = append(items, item(lead("Strip set", "is strips of several fabrics sewn together along their long edges before pieces are cut from them.")))
	}
	return append(items, item(lead("On the bias", "means at a slant to the threads of the cloth. Such edges stretch, so press them, do not push.")))
}

// abbreviation is a short form with what it stands for.
type abbreviation struct {
	short, long string
	used        *regexp.Regexp
}

// shortForms are all short forms that a pattern may use.
func shortForms() []abbreviation {
	unit := func(short, long string) abbreviation {
		return abbreviation{short, long, regexp.MustCompile(`[0-9] ` + short + `\b`)}
	}
	return []abbreviation{
		unit("in", "inch or inches"), unit("yd", "yard or yards, of 36 inches each"), unit("mm", "millimetre or millimetres"),
		unit("cm", "centimetre or centimetres"), unit("m", "metre or metres, of 100 centimetres each"),
	}
}

// abbreviations explains those that the pattern uses, and no others.
func (b *book) abbreviations(rest []pages.Part) {
	var all strings.Builder
	d := pages.Document{Cover: b.cover(), Parts: append(slices.Clone(b.parts), rest...)}
	for _, text := range textsOf(d) {
		all.WriteString(text)
		all.WriteString("\n")
	}
	t := pages.Table{Named: true, Columns: []pages.Column{{Title: "Short"}, {Title: "What it stands for"}}}
	for _, a := range shortForms() {
		if a.used.MatchString(all.String()) {
			t.Rows = append(t.Rows, pages.Row{Cells: []pages.Cell{{Text: pages.Bold(a.short)}, cell(a.long)}})
		}
	}
	t.Rows = append(t.Rows, pages.Row{Cells: []pages.Cell{{Text: pages.Bold(b.lettersUsed())}, cell("the fabrics, as the table of fabrics names them")}})
	b.keep(heading(1, "Abbreviations"), t)
}

// lettersUsed is the letters of the fabrics, the first and the last.
func (b *book) lettersUsed() string {
	if n := len(b.letters); n > 1 {
		return b.letters[0] + " to " + b.letters[n-1]
	}
	return b.letters[0]
}

// textsOf is every text that a document prints, the words within its pictures too.
func textsOf(d pages.Document) []string {
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
	for _, p := range d.Parts {
		for _, m := range marksOf(p.Blocks) {
			if m.Words != nil {
				say(m.Words.Text)
			}
		}
	}
	return list
}

// marksOf is what stands in all pictures among blocks.
func marksOf(list []pages.Block) []figure.Mark {
	var marks []figure.Mark
	for _, b := range list {
		switch v := b.(type) {
		case pages.Figure:
			marks = append(marks, v.Of.Marks...)
		case pages.Picture:
			marks = append(marks, v.Of.Marks...)
		case pages.Gallery:
			for _, p := range v.Pictures {
				marks = append(marks, marksOf([]pages.Block{p})...)
			}
		case pages.Box:
			marks = append(marks, marksOf(v.Blocks)...)
		case pages.Together:
			marks = append(marks, marksOf(v.Blocks)...)
		case pages.List:
			for _, it := range v.Items {
				marks = append(marks, marksOf(it.Blocks)...)
			}
		}
	}
	return marks
}
