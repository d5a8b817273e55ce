package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/report"
)

// fabricsPart is what to buy.
func (b *patternBuilder) fabricsPart() {
	b.part("Fabric requirements", true)
	if b.Cuts.Copies > 1 {
		b.add(paragraph(report.AmountsFor(b.Cuts.Copies)))
	}
	b.addNotes("fabric")
	if s, ok := b.cut.Section(report.ToBuyID); ok {
		b.add(printed(b.fewerColumns(s.Blocks))...)
	}
	for _, id := range []string{report.UseFirstID, report.OwnPrecutsID, report.ForFinishingID, report.PrecutsID, report.ScrapsID} {
		b.take(id, true)
	}
}

// mostInLarge is how many columns of fabrics have room beside one another in large print.
const mostInLarge = 5

// fewerColumns is blocks whose tables lack what their designer has of each fabric, since a reader has a stash of their own, and, in large
// print, no more columns than have room: what is cut of a fabric stands in the heading of its cutting list too.
func (b *patternBuilder) fewerColumns(list []document.Block) []document.Block {
	list = slices.Clone(list)
	for n, block := range list {
		if t, ok := block.(document.Table); ok {
			t = without(t, report.OnHandHead)
			if b.Large && len(t.Columns) > mostInLarge {
				t = without(t, report.LengthUsedHead)
			}
			list[n] = t
		}
	}
	return list
}

// without is a table without the column of a title.
func without(t document.Table, title string) document.Table {
	at := slices.IndexFunc(t.Columns, func(c document.Column) bool { return c.Title == title })
	if at < 0 {
		return t
	}
	t.Columns, t.Rows = slices.Delete(slices.Clone(t.Columns), at, at+1), slices.Clone(t.Rows)
	for i := range t.Rows {
		t.Rows[i].Cells = slices.Delete(slices.Clone(t.Rows[i].Cells), at, at+1)
	}
	return t
}
