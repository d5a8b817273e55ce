package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/report"
)

// fabricsPart is what to buy.
func (b *patternBuilder) fabricsPart() {
	b.part("Fabric requirements", true)
	if b.Cuts.Copies > 1 {
		b.add(paragraph(report.AmountsFor(b.Cuts.Copies)))
	}
	b.addNotes("fabric")
	b.take(report.ToBuyID, false)
	for _, id := range []string{report.ForFinishingID, report.PrecutsID, report.OnHandID} {
		b.take(id, true)
	}
}

// fabricTable is what to buy, as a table alone.
func (b *patternBuilder) fabricTable() document.Block {
	s, _ := b.cut.Section(report.ToBuyID)
	return printed(s.Blocks)[0]
}

// fabricCell is a fabric's square of colour with its letter and name.
func (b *patternBuilder) fabricCell(f *cutting.Fabric) document.Cell {
	c := document.Cell{Swatches: b.swatch(f.Index), Text: document.Plain(f.Name)}
	if print := own(f.Print); print != "" && print != f.Name {
		c.Text = append(c.Text, document.Run{Text: " (" + print + ")", Small: true})
	}
	return c
}

func (b *patternBuilder) swatch(fabric int) []document.Swatch {
	return []document.Swatch{{Letter: b.letters[fabric], Colour: b.Top.Fabrics[fabric].Colour}}
}
