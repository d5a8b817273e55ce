package booklet

import (
	"strings"

	"eighthturn/internal/document"
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
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Foundation"}, {Title: "Print", Kind: document.Counts}, {Title: "In this order"}, {Title: "Shown in"}}}
	for i := range b.Foundations {
		f := &b.Foundations[i]
		var order []string
		for n, p := range f.Pieces {
			order = append(order, numeral(n+1)+": "+p.What)
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(numeral(f.Number))}, cell(numeral(f.Count)), cell(strings.Join(order, "; ")), cell(shownIn(plates, numeral(f.Number), foundationKey))}})
	}
	b.part("Foundations", true)
	b.add(para("Use these for foundation paper piecing, in place of the template pieces. They are mirror images: place the fabric on the back of the paper, right side out, and sew on the printed side along the dashed lines, in numerical order. "+
		"The outermost dashed line is the finished edge of the half block; trim on the solid line. Print at 100%% (Actual size), and measure both test squares."), t)
	b.tooLarge("foundation", large)
	b.plates(plates, foundationKey)
}

const (
	templateKey   = "template "
	foundationKey = "foundation "
)
