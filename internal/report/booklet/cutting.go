package booklet

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
)

// cuttingPart is all that is cut: the pieces, how they are cut, then fabric by fabric.
func (b *patternBuilder) cuttingPart() {
	b.part("Cutting", true)
	b.add(paragraph(report.CutSizes(b.plans)))
	b.addNotes("cutting")
	b.take(report.BeforeCutID, false)
	b.piecesTable()
	b.take(report.HowToCutID, true)
	b.take(report.BetweenMarksID, true)
	for _, group := range b.alikeFabrics() {
		b.fabricCutting(group)
	}
	b.take(report.LeftoversID, true)
}

// piecesTable is every piece with its sizes; where there is little room what they are cut from stands above them, and in large print
// the table has fewer columns.
func (b *patternBuilder) piecesTable() {
	s, _ := b.cut.Section(report.PiecesID)
	blocks := printed(s.Blocks)
	switch {
	case b.Large:
		for i, block := range blocks {
			if _, ok := block.(document.Table); ok {
				blocks[i] = report.PiecesInShort(b.plans)
			}
		}
	case b.wholeWidth() < 6*measure.Inch || b.sized:
		blocks = printed(byCloth(s.Blocks))
	}
	b.add(heading(1, s.Title))
	b.add(blocks...)
}

// byCloth is blocks whose tables have what their rows are cut from as headings, and not as a column.
func byCloth(list []document.Block) []document.Block {
	list = slices.Clone(list)
	for n, block := range list {
		t, ok := block.(document.Table)
		column := slices.IndexFunc(t.Columns, func(c document.Column) bool { return c.Title == report.ClothHead })
		if !ok || column < 0 {
			continue
		}
		t.Columns = slices.Delete(slices.Clone(t.Columns), column, column+1)
		rows := t.Rows
		t.Rows = nil
		for i, r := range rows {
			cloth := r.Cells[column]
			if i == 0 || !reflect.DeepEqual(cloth, rows[i-1].Cells[column]) {
				t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cloth}})
			}
			r.Cells = slices.Delete(slices.Clone(r.Cells), column, column+1)
			t.Rows = append(t.Rows, r)
		}
		list[n] = t
	}
	return list
}

// setsPart is how strips are sewn together before wedges are cut from them.
func (b *patternBuilder) setsPart() {
	s, ok := b.cut.Section(report.StripSetsID)
	if !ok {
		return
	}
	b.part(s.Title, false)
	b.add(printed(s.Blocks)...)
	for i := range b.Cuts.Sets {
		if s, ok := b.cut.Section(report.StripSetID + numeral(i+1)); ok {
			key := "set " + numeral(i)
			b.keep(append([]document.Block{heading(1, s.Title)}, b.mapped(seenFirst(printed(s.Blocks), key), key)...)...)
		}
	}
	for i := range b.Cuts.Dealt {
		b.take(report.DealtSetsID+numeral(i+1), true)
	}
}

// labelsPart is labels to pin to strip sets that were dealt.
func (b *patternBuilder) labelsPart() {
	if s, ok := b.cut.Section(report.SetLabelsID); ok && !b.sized {
		b.part(s.Title, true)
		b.parts[len(b.parts)-1].Alone = true
		s.Blocks = slices.Clone(s.Blocks)
		s.Blocks[0] = paragraph(report.UseLabels)
		for _, block := range (document.Document{Sections: []document.Section{s}}).Print().Sections[0].Blocks {
			b.add(b.enlarged(block))
		}
	}
}

// enlarged is a gallery whose figures are as wide as the page in large print.
func (b *patternBuilder) enlarged(block document.Block) document.Block {
	g, ok := block.(document.Gallery)
	if !ok || !b.Large {
		return block
	}
	for i, one := range g.Pictures {
		if f, ok := one.(document.Figure); ok {
			f.Width = b.wholeWidth()
			g.Pictures[i] = f
		}
	}
	return g
}

// seenFirst is blocks whose first item of a list refers to a figure.
func seenFirst(list []document.Block, key string) []document.Block {
	for i, block := range list {
		if l, ok := block.(document.List); ok && len(l.Items) > 0 {
			l.Items = slices.Clone(l.Items)
			l.Items[0].Text = seeing(l.Items[0].Text, key).Text
			list[i] = l
			break
		}
	}
	return list
}

// take adds a section of the cutting report, under its title or without one.
func (b *patternBuilder) take(id string, titled bool) {
	s, ok := b.cut.Section(id)
	if !ok {
		return
	}
	if titled {
		b.add(heading(1, s.Title))
	}
	b.add(printed(s.Blocks)...)
}

// printed are blocks of a report for paper, where the heads of columns begin with a capital letter, no column is empty
// and rows have no pictures.
func printed(list []document.Block) []document.Block {
	list = slices.Clone(list)
	for i, block := range list {
		t, ok := block.(document.Table)
		if !ok {
			continue
		}
		t = t.Filled()
		t.Columns = slices.Clone(t.Columns)
		for n := range t.Columns {
			t.Columns[n].Title = capital(t.Columns[n].Title)
		}
		t.Rows = slices.Clone(t.Rows)
		for n := range t.Rows {
			t.Rows[n].Figure = nil
		}
		list[i] = t
	}
	return list
}

// mapped are blocks with the map among them behind the others, drawn for the width of the page and numbered by a key.
func (b *patternBuilder) mapped(list []document.Block, key string) []document.Block {
	var rest []document.Block
	var maps []document.Block
	for _, block := range list {
		f, ok := block.(document.Figure)
		if !ok {
			rest = append(rest, block)
			continue
		}
		drawn := f.Diagram()
		maps = append(maps, document.Figure{Of: *drawn, Width: b.wholeWidth(), Least: b.leastMap(drawn), Caption: caption(key, f.Caption.String()), Alternative: f.Alternative})
	}
	return append(rest, maps...)
}

// alikeFabrics puts fabrics together that are cut in the same way, as those of a pool of scraps are. What tells them apart is
// their name and the numbers of their lines.
func (b *patternBuilder) alikeFabrics() [][]int {
	var list [][]int
	of := map[string]int{}
	for i := range b.Cuts.Fabrics {
		s, ok := b.cut.Section(report.FabricID + numeral(i+1))
		if !ok {
			continue
		}
		key := fmt.Sprint(b.Cuts.Fabrics[i].Purchase, b.Cuts.Fabrics[i].UsableWidth, unnumbered(s.Blocks))
		at, known := of[key]
		if !known {
			at = len(list)
			of[key] = at
			list = append(list, nil)
		}
		list[at] = append(list[at], i)
	}
	return list
}

// unnumbered is what blocks say but for pictures and the numbers of lines.
func unnumbered(list []document.Block) string {
	var text strings.Builder
	for _, block := range list {
		switch v := block.(type) {
		case document.Paragraph:
			text.WriteString(v.Text.String())
		case document.List:
			for _, it := range v.Items {
				text.WriteString(it.Text.String())
			}
		case document.Table:
			for _, r := range v.Rows {
				for n, c := range r.Cells {
					if v.Columns[n].Title != report.LinesHead {
						text.WriteString(c.Text.String() + "|")
					}
				}
			}
		}
	}
	return text.String()
}

// maxTogether is how many rows of strips are kept on one page with the heading above them.
const maxTogether = 8

// fabricCutting is one fabric, or several that are cut alike.
func (b *patternBuilder) fabricCutting(group []int) {
	s, _ := b.cut.Section(report.FabricID + numeral(group[0]+1))
	title := s.Title
	if len(group) > 1 {
		title = report.CutAlike(b.plans, group)
	}
	key := "map " + numeral(group[0])
	above := []document.Block{heading(1, title), paragraph(report.FabricCut(b.plans, group, see(key)))}
	list := b.linesOfAll(s.Blocks, group)
	for i := range list {
		if f, ok := list[i].(document.Figure); ok {
			f.Caption = report.AlikeMap(b.plans, group)
			list[i] = f
		}
	}
	blocks := b.mapped(printed(list), key)
	for len(blocks) > 0 {
		t, ok := blocks[0].(document.Table)
		if ok && len(t.Rows) > maxTogether && !b.sized {
			break
		}
		above, blocks = append(above, blocks[0]), blocks[1:]
		if ok {
			break
		}
	}
	b.keep(above...)
	b.add(blocks...)
}

// linesOfAll is the blocks of the first of several fabrics that are cut alike, with the lines of all of them.
func (b *patternBuilder) linesOfAll(list []document.Block, group []int) []document.Block {
	list = slices.Clone(list)
	for n, block := range list {
		t, ok := block.(document.Table)
		column := slices.IndexFunc(t.Columns, func(c document.Column) bool { return c.Title == report.LinesHead })
		if !ok || column < 0 || len(group) < 2 {
			continue
		}
		t.Rows = slices.Clone(t.Rows)
		for i := range t.Rows {
			lines := []string{}
			for _, f := range group {
				other, _ := b.cut.Section(report.FabricID + numeral(f+1))
				lines = append(lines, other.Blocks[n].(document.Table).Rows[i].Cells[column].Text.String())
			}
			t.Rows[i].Cells = slices.Clone(t.Rows[i].Cells)
			t.Rows[i].Cells[column].Text = document.Plain(strings.Join(lines, ", "))
		}
		list[n] = t
	}
	return list
}

// minWidth is the narrowest that pictures of cloth and of tops can still be read at, where they are no higher than wide.
const minWidth = 3 * measure.Inch

// leastMap is the narrowest that a map of cloth may be: where it is no higher than wide, most of the page's width, since its
// words do not get smaller with it. On a print a piece must be found again, so that a map of one is never small.
func (b *patternBuilder) leastMap(m *diagram.Figure) measure.NM {
	switch printed := slices.ContainsFunc(m.Marks, func(k diagram.Mark) bool { return k.Area != nil && k.Area.Print != nil }); {
	case m.Max.Y > m.Max.X && printed:
		return b.wholeWidth() / 1000 * max(333, 750*m.Max.X/m.Max.Y)
	case m.Max.Y > m.Max.X:
		return minOf(m.Max.X, m.Max.Y)
	}
	return b.wholeWidth() * 7 / 8
}

// minOf is the narrowest that a picture can still be read at whose subject has a width and a height.
func minOf(width, height measure.NM) measure.NM {
	const parts = 1000
	if height > width {
		return minWidth / 2 * max(1, parts*width/height) / parts
	}
	return minWidth
}
