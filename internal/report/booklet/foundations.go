package booklet

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
)

// foundationsPart is the halves of blocks for those who sew on paper, at true size.
func (b *book) foundationsPart() {
	if len(b.Foundations) == 0 {
		return
	}
	var list []trueSize
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Foundation"}, {Title: "Print", Kind: document.Counts}, {Title: "In this order"}, {Title: "Shown in"}}}
	for i := range b.Foundations {
		f := &b.Foundations[i]
		name := numeral(f.Number)
		list = append(list, trueSize{name, "Foundation " + name, pieceAlone(f.Figure(b.Top))})
	}
	sheets, out := b.laid(list, "Foundation")
	for i := range b.Foundations {
		f := &b.Foundations[i]
		var order []string
		for n, p := range f.Pieces {
			order = append(order, numeral(n+1)+": "+p.What)
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(numeral(f.Number))}, cell(numeral(f.Count)), cell(joinedBy(order, "; ")), cell(shownIn(sheets, numeral(f.Number), foundationKey))}})
	}
	b.part("Foundations", true)
	b.add(para("These are for sewing on paper, in place of the pieces cut by template. They are mirror images: cloth lies on the back of the paper, right side out, and you sew on the printed side along the dashed lines, in the order of the numbers. "+
		"The outermost dashed line is the finished edge of the half block; trim on the solid line. Print at 100 %%, and measure both test squares."), t)
	b.tooLarge("foundation", out)
	b.sheets(sheets, foundationKey)
}

// trueSize is a figure that is printed at true size: its name, what it is, and the figure.
type trueSize struct {
	name, what string
	*diagram.Figure
}

const (
	templateKey   = "template "
	foundationKey = "foundation "
)
