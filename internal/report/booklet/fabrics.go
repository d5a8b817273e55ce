package booklet

import (
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
