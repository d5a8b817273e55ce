package booklet

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// cuttingPart is all that is cut, fabric by fabric.
func (b *book) cuttingPart() {
	b.part("Cutting", true)
	b.add(para("All sizes here are cut sizes: the seam allowance of %s is in them. %s Work through each fabric from the top of its list.", b.length(b.Cuts.Seam), b.units.AboutMeans()))
	b.faults()
	b.addNotes("cutting")
	var advice []document.Item
	for _, a := range cutting.Advice() {
		advice = append(advice, item(document.Plain(a)))
	}
	b.add(document.List{Items: advice})
	b.howTo()
	b.offRuler()
	for _, group := range b.alikeFabrics() {
		b.fabricCutting(group)
	}
}

// alikeFabrics puts fabrics together that are cut in the same way, as those of a pool of scraps are.
func (b *book) alikeFabrics() [][]int {
	var list [][]int
	of := map[string]int{}
	for i := range b.Cuts.Fabrics {
		f := &b.Cuts.Fabrics[i]
		if len(f.Strips)+len(f.Blocks) == 0 {
			continue
		}
		key := fmt.Sprint(f.UsableWidth, f.Purchase, b.pieceTable(f), b.order(f))
		at, ok := of[key]
		if !ok {
			at = len(list)
			of[key] = at
			list = append(list, nil)
		}
		list[at] = append(list[at], i)
	}
	return list
}

// faults says what cannot be cut.
func (b *book) faults() {
	var list []document.Block
	for _, f := range b.Cuts.Faults {
		list = append(list, document.Paragraph{Text: document.Plain(sentence(own(f.Message)))})
	}
	if len(list) > 0 {
		b.add(document.Box{Caution: true, Word: "Cannot be cut as it stands", Blocks: list})
	}
}

// howTo explains each way of cutting that the quilt needs, and no other: how its shapes are cut, then what is common to several.
func (b *book) howTo() {
	var items []document.Item
	for _, s := range blocks.Shapes() {
		if d := s.Description(); d.CutTitle != "" && b.Cuts.Cuts(s) {
			items = append(items, item(lead(d.CutTitle+".", "%s", d.CutWords)))
		}
	}
	for _, h := range []struct {
		used       cutting.Method
		name, text string
	}{
		{cutting.OnceOnDiagonal, "Squares cut once.", "Cut the square from corner to corner: two triangles. Their long edges are on the bias and stretch, so handle them little."},
		{cutting.TwiceOnDiagonal, "Squares cut twice.", "Cut the square from corner to corner both ways without moving it: four triangles with the straight grain on their long edges."},
		{cutting.Joined, "Long strips.", "Sew strips end to end, press the seams open, and cut the lengths from that."},
		{cutting.Lengthwise, "Strips along the cloth.", "Cut these first, along the selvage, in one piece each."},
	} {
		if b.cutBy(func(p *cutting.Piece) bool { return p.Method == h.used }) {
			items = append(items, item(lead(h.name, "%s", h.text)))
		}
	}
	if len(items) > 0 {
		b.add(heading(1, "How the pieces are cut"), document.List{Items: items})
	}
	b.wedgeTable()
	b.tumblerTable()
}

// wedgeTable is what a strip gives.
func (b *book) wedgeTable() {
	if len(b.Cuts.Wedges) == 0 {
		return
	}
	t := document.Table{Caption: document.Plain("What one strip gives"), Columns: []document.Column{
		{Title: "Strip, cut", Kind: document.Counts}, {Title: "Wide end", Kind: document.Counts}, {Title: "Blunt tip", Kind: document.Counts}, {Title: "Length of strip", Kind: document.Counts}, {Title: "Wedges", Kind: document.Counts},
	}}
	for _, w := range b.Cuts.Wedges {
		t.Rows = withRow(t.Rows, b.length(w.StripCut), b.length(w.BaseCut), b.length(w.TipCut), b.length(w.UsableWidth), numeral(w.PerStrip))
	}
	b.add(t)
}

func (b *book) tumblerTable() {
	if len(b.Cuts.Tumblers) == 0 {
		return
	}
	t := document.Table{Caption: document.Plain("Tumblers"), Columns: []document.Column{
		{Title: "Strip, cut", Kind: document.Counts}, {Title: "Line of the rule", Kind: document.Counts}, {Title: "Wide side", Kind: document.Counts}, {Title: "Narrow side", Kind: document.Counts},
	}}
	for _, w := range b.Cuts.Tumblers {
		t.Rows = withRow(t.Rows, b.length(w.StripCut), b.length(w.LineCut), b.length(w.WideCut), b.length(w.NarrowCut))
	}
	b.add(t)
}

// withRow adds a row of texts to those of a table, unless it reads as one of them does.
func withRow(rows []document.Row, texts ...string) []document.Row {
	var row document.Row
	for _, text := range texts {
		row.Cells = append(row.Cells, cell(text))
	}
	like := func(a, b document.Cell) bool { return a.Text.String() == b.Text.String() }
	if slices.ContainsFunc(rows, func(o document.Row) bool { return slices.EqualFunc(o.Cells, row.Cells, like) }) {
		return rows
	}
	return append(rows, row)
}

// betweenMarks are the sizes that must be exact and that no line of a ruler shows, each once.
func (b *book) betweenMarks() []cutting.Ruler {
	var list []cutting.Ruler
	for i := range b.Cuts.Lines {
		for _, r := range b.Cuts.Lines[i].Piece.OnRuler {
			if !r.OnMark && !slices.ContainsFunc(list, func(o cutting.Ruler) bool { return o.ExactCut == r.ExactCut }) {
				list = append(list, r)
			}
		}
	}
	return list
}

// offRuler lists sizes that must be exact and that no line of a ruler shows.
func (b *book) offRuler() {
	var items []document.Item
	for _, r := range b.betweenMarks() {
		items = append(items, item(lead(capital(b.length(r.ExactCut))+",", "exactly %s, lies between the marks for %s and %s.", b.units.Exact(r.ExactCut), b.length(r.BelowCut), b.length(r.AboveCut))))
	}
	if len(items) > 0 {
		b.add(heading(1, "Sizes between the marks of a ruler"),
			para("These must be exact, so put a strip of tape on the ruler at the size. Where a piece has a template, that will do as well."), document.List{Items: items})
	}
}

// fabricCutting is one fabric, or several that are cut alike: what comes of it, the order of cutting, its map, what is left.
func (b *book) fabricCutting(group []int) {
	n := group[0]
	f := &b.Cuts.Fabrics[n]
	var names []string
	for _, i := range group {
		names = append(names, b.fabricName(&b.Cuts.Fabrics[i]))
	}
	title, text, others := "Fabric "+names[0], "Buy "+b.shop(f.Purchase.Buy)+".", ""
	if len(group) > 1 {
		title, text, others = "Fabrics "+listed(names), "These are cut alike; all of this is for each of them. "+text, "; the others are cut in the same way"
	}
	if f.StripCount > 0 {
		text += " The plan takes " + count(f.StripCount, "strip") + "."
	}
	m := b.maps[n]
	if m != nil {
		text += " " + see(mapKey(n)) + " shows how the pieces lie on the cloth."
	}
	b.cuttingOrder(f, append([]document.Block{heading(1, title), para("%s", text)}, b.pieceTable(f)...))
	b.chains(f)
	b.leftOver(f)
	if m != nil {
		b.add(document.Figure{Of: *m, Width: b.wholeWidth(), Least: b.leastMap(m), Caption: caption(mapKey(n), "Cutting map of fabric "+b.fabricName(f)+others+". The selvages are at the left and right. Numbers without a unit are "+b.unitNoun()+".")})
	}
}

func mapKey(fabric int) string { return "map " + numeral(fabric) }

// leastWidth is the narrowest that pictures of cloth and of tops can still be read at, where they are no higher than wide.
const leastWidth = 3 * measure.Inch

// leastMap is the narrowest that a map of cloth may be: where it is no higher than wide, most of the page's width, since its
// words do not get smaller with it.
func (b *book) leastMap(m *diagram.Figure) measure.NM {
	if m.Max.Y > m.Max.X {
		return leastOf(m.Max.X, m.Max.Y)
	}
	return b.wholeWidth() * 7 / 8
}

// leastOf is the narrowest that a picture can still be read at whose subject has a width and a height.
func leastOf(width, height measure.NM) measure.NM {
	const parts = 1000
	if height > width {
		return leastWidth / 2 * max(1, parts*width/height) / parts
	}
	return leastWidth
}

// unitNoun is what a bare number counts.
func (b *book) unitNoun() string {
	if b.units == measure.Centimetres {
		return "centimetres"
	}
	return "inches"
}

// pieceTable lists what comes of a fabric, nothing where strips are all of it.
func (b *book) pieceTable(f *cutting.Fabric) []document.Block {
	if len(f.Lines) == 0 {
		return nil
	}
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Pieces"}, {Title: "Number", Kind: document.Counts}, {Title: "Cut from"}, {Title: "To trim later", Kind: document.Counts}}}
	for _, n := range f.Lines {
		line := &b.Cuts.Lines[n]
		number := numeral(line.Pieces)
		if line.Left > 0 && line.Right > 0 {
			number += ", " + numeral(line.Left) + " left and " + numeral(line.Right) + " right"
		}
		trim := ""
		if line.Piece.TrimCut > 0 {
			trim = b.length(line.Piece.TrimCut)
			if measure.Nearest(line.Piece.TrimCut, b.units.Mark()) == 0 || line.Piece.Shape.Description().Edging {
				trim = ""
			}
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(capital(b.pieces(line)) + handName(line.Piece.Hand)), cell(number), cell(b.cutFrom(line)), cell(trim)}})
	}
	if !slices.ContainsFunc(t.Rows, func(r document.Row) bool { return r.Cells[3].Text.String() != "" }) {
		t.Columns = t.Columns[:3]
		for i := range t.Rows {
			t.Rows[i].Cells = t.Rows[i].Cells[:3]
		}
	}
	return []document.Block{t}
}

func handName(h cutting.Hand) string {
	if h == cutting.Either {
		return ""
	}
	return ", " + h.String() + "-hand"
}

// cutFrom says what a line's pieces are cut from.
func (b *book) cutFrom(line *cutting.Line) string {
	p := &line.Piece
	size := b.size(p.AcrossCut, p.AlongCut)
	switch p.Method {
	case cutting.OnceOnDiagonal:
		return count(line.Units, "square") + " " + b.length(p.AcrossCut) + b.orRule(p) + each(line.Units) + "cut once"
	case cutting.TwiceOnDiagonal:
		return count(line.Units, "square") + " " + b.length(p.AcrossCut) + b.orRule(p) + each(line.Units) + "cut twice"
	case cutting.Nested:
		return "strips " + b.length(p.AcrossCut) + " wide"
	case cutting.EndPairs:
		return count(line.Units, "rectangle") + " " + size + each(line.Units) + "cut in two"
	case cutting.Joined:
		return "strips sewn end to end, " + size
	case cutting.Lengthwise:
		return size + ", along the cloth"
	}
	return size
}

// each stands before what is done to one or to several.
func each(n int) string { return verb(n, ", ", ", each ") }

// cutWords says what the cutting plan holds.
func (b *book) cutWords() cutting.Words { return cutting.Words{Plan: b.Cuts} }

// orRule is the size that the rule of thumb gives, where it says otherwise.
func (b *book) orRule(p *cutting.Piece) string {
	if p.RuleCut == 0 {
		return ""
	}
	return " (by the rule of thumb " + b.length(p.RuleCut) + ")"
}

func (b *book) leftOver(f *cutting.Fabric) {
	const most = 8
	var list []string
	for _, l := range f.LeftOver[:min(most, len(f.LeftOver))] {
		list = append(list, count(l.Times, "piece")+" "+b.cutWords().LeftOver(&l))
	}
	if len(list) > 0 {
		b.add(document.Paragraph{Text: document.Small("Left over in one piece: " + listed(list) + ".")})
	}
}
