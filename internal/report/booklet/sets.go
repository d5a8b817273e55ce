package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
)

// mostSets is how many strip sets are told one by one; more stand in a table.
const mostSets = 8

// setsPart is how strips are sewn together before wedges are cut from them.
func (b *book) setsPart() {
	if len(b.Cuts.Sets) == 0 {
		return
	}
	b.part("Strip sets", false)
	about := para("Sew the strips of a set together along their long edges, in the order of the table, with a seam allowance of %s. "+
		"Press all allowances of a set one way, and sew every other seam from the other end, so that the set stays straight. "+
		"Measure the set before you cut it: a set that is too narrow or too wide makes wedges that do not fit.", b.length(b.Cuts.Seam))
	if len(b.Cuts.Sets) > mostSets {
		b.add(about)
		b.manySets()
		return
	}
	for i := range b.Cuts.Sets {
		b.oneSet(i, about)
		about = document.Paragraph{}
	}
}

// oneSet is a strip set with its picture; what is about all sets stands before the first.
func (b *book) oneSet(n int, about document.Paragraph) {
	s := &b.Cuts.Sets[n]
	head := heading(1, capital(b.setName(n)))
	t := document.Table{Columns: []document.Column{{Title: "From the wide end"}, {Title: "Cut width", Kind: document.Counts}, {Title: "Finished width", Kind: document.Counts}}}
	for _, band := range s.Bands {
		f := &b.Cuts.Fabrics[band.Fabric]
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Swatches: b.swatch(f.Index), Text: document.Plain(f.Name)}, cell(b.length(band.WidthCut)), cell(b.length(band.WidthFinished))}})
	}
	key := "set " + numeral(n)
	list := []document.Item{item(lead("Sew", "%s. Sewn together, a set must measure %s unfinished, from cut edge to cut edge.", b.runs(s), b.length(s.WidthCut)))}
	if len(s.Runs) > 0 {
		list = append(list, item(document.Text{{Text: "Cut", Bold: true}, {Text: " " + b.wedgesOf(n) + b.seeSet(n)}}))
	}
	var whole []document.Block
	if len(about.Text) > 0 {
		whole = append(whole, about)
	}
	whole = append(whole, head, t, document.List{Items: list})
	if m := b.setMaps[n]; m != nil {
		whole = append(whole, document.Figure{Of: *m, Width: b.wholeWidth(), Least: b.leastMap(m), Caption: caption(key, capital(b.setName(n))+" with the wedges that one set gives.")})
	}
	b.keep(whole...)
}

func (b *book) seeSet(n int) string {
	if b.setMaps[n] == nil {
		return ""
	}
	return " " + see("set "+numeral(n)) + " shows the wedges on a set."
}

// runs says how many sets are sewn and how long.
func (b *book) runs(s *cutting.StripSet) string {
	var list []string
	for _, r := range s.Runs {
		list = append(list, count(r.Sets, "set")+" "+b.noLess(r.LengthCut)+" long")
	}
	return listed(list)
}

// turnedName is what a strip set's wedges are called that are cut with their tip on its other edge.
func turnedName(set string) string { return set + ", turned" }

// wedgesOf says which wedges a set gives.
func (b *book) wedgesOf(n int) string {
	s := &b.Cuts.Sets[n]
	text := ""
	for _, r := range s.Runs {
		text += count(r.Wedges, "wedge") + " from " + verb(r.Sets, "the set", "each set") + " " + b.noLess(r.LengthCut) + " long"
		text += b.begun(s, r)
		text += "; "
	}
	text = text[:len(text)-2] + "."
	if s.Alike {
		return text + " The set reads the same from both edges, so all its wedges are alike. " + b.wanted(s, 0, "") + "."
	}
	name := b.Cuts.SetName(n)
	return text + " Every other wedge has its tip on the other edge of the set, where the others have their wide end: it is called " + turnedName(name) + ". " + b.wanted(s, 0, name) + ", and " + b.wanted(s, 1, turnedName(name)) + "."
}

// begun says which wedge is cut first where a set gives one more of that kind than of the other.
func (b *book) begun(s *cutting.StripSet, r cutting.SetRun) string {
	switch {
	case s.Alike || r.Wedges%2 == 0:
		return ""
	case r.FirstReversed == 0:
		return " (begin with a wedge that is not turned)"
	case r.FirstReversed == r.Sets:
		return " (begin with a turned wedge)"
	}
	return " (begin " + numeral(r.FirstReversed) + " of them with a turned wedge and the others with one that is not turned)"
}

// wanted says how many wedges of a kind are needed and how many more there are.
func (b *book) wanted(s *cutting.StripSet, way int, kind string) string {
	text := "You need " + count(s.Wanted[way], "wedge")
	if way == 1 {
		text = numeral(s.Wanted[way])
	}
	if s.Wanted[way] == 0 {
		text = "none"
	}
	if kind != "" {
		text += " of " + kind
	}
	if s.LeftOver[way] > 0 {
		text += " (" + numeral(s.LeftOver[way]) + verb(s.LeftOver[way], " is", " are") + " left over)"
	}
	return text
}

// mostRows is how long a table may be; what is beyond is said to be left out.
const mostRows = 150

// manySets is strip sets in a table, as pools of scraps make them.
func (b *book) manySets() {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Set"}, {Title: "Strips from the wide end, cut"}, {Title: "Sew"}, {Title: "Wedges", Kind: document.Counts}, {Title: "Wedges, turned", Kind: document.Counts}}}
	shown := b.Cuts.Sets[:min(mostRows, len(b.Cuts.Sets))]
	for i := range shown {
		s := &shown[i]
		var bands []string
		for _, band := range s.Bands {
			bands = append(bands, b.letters[b.Cuts.Fabrics[band.Fabric].Index]+" "+b.length(band.WidthCut))
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(b.Cuts.SetName(i)), cell(joinedBy(bands, ", ")), cell(b.runs(s)), cell(numeral(s.Wanted[0])), cell(numeral(s.Wanted[1]))}})
	}
	b.add(para("Turned wedges have their tip on the other edge of the set; every other wedge of a set is one."), t)
	if more := len(b.Cuts.Sets) - len(shown); more > 0 {
		b.add(para("Another %s %s left out here for want of room; the cutting plan has them.", count(more, "strip set"), verb(more, "is", "are")))
	}
}
