package booklet

import (
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// foundationPlates are the halves of blocks for those who sew on paper, at true size.
func (b *patternBuilder) foundationPlates(most templates.Most) ([]templates.Plate, []templates.Large) {
	var pieces []templates.Piece
	for i := range b.Foundations {
		f := &b.Foundations[i]
		pieces = append(pieces, templates.Piece{Name: numeral(f.Number), Figure: f.Figure(b.Top)})
	}
	return templates.Plates(pieces, b.plateRoom(), most)
}

// foundationsPart is the foundations with what there is to know of them.
func (b *patternBuilder) foundationsPart(plates []templates.Plate, large []templates.Large) {
	if len(b.Foundations) == 0 {
		return
	}
	b.part("Foundations", true)
	b.add(report.Foundations(b.Foundations, shownIn(plates, foundationKey))...)
	b.add(report.TooLarge("foundation", large)...)
	b.plates(plates, foundationKey)
}

const (
	templateKey   = "template "
	foundationKey = "foundation "
)
