package layout

import (
	"strings"

	"eighthturn/internal/blocks"
)

func parseGrid(p *parser, c *cursor, keyword Span) {
	p.tree.Grid = &GridNode{Span: keyword}
	p.rows = gridRows
}

// row reads one row under the grid.
func (p *parser) row(c *cursor, indented bool) {
	if p.rows == brokenRows {
		c.dropRest()
		return
	}
	if p.rows == webRows {
		p.webRow(c)
		return
	}
	g := p.tree.Grid
	row := RowNode{Span: Span{c.at, c.end}}
	if n := len(g.Rows); n > 0 { // rows are of one length, and a label takes two bytes with its blank
		likely := min(len(g.Rows[n-1].Cells), (c.end-c.at+1)/2)
		row.Cells, c.tokens = make([]CellNode, 0, likely), make([]Token, 0, likely)
	}
	if !indented {
		p.warn(c.here(), "put blanks before it", "this row of blocks has lost its indentation")
	}
	for !c.done() {
		c.newField()
		at := c.word()
		row.Cells = append(row.Cells, p.cell(at))
		row.Span.End = at.End
	}
	g.Rows = append(g.Rows, row)
	g.Span.End = row.Span.End
}

// cell reads a label with the turn that may follow it.
func (p *parser) cell(at Span) CellNode {
	text := p.src[at.Start:at.End]
	label, turn, turned := strings.Cut(text, ":")
	c := CellNode{Span: at, Label: NameNode{Span{at.Start, at.Start + len(label)}, label}}
	if !turned {
		return c
	}
	span := Span{at.Start + len(label), at.End}
	for i, name := range blocks.CornerNames() {
		if strings.EqualFold(turn, name) {
			c.Turn, c.Towards = span, blocks.Corner(i)
			return c
		}
	}
	p.fault(span, "a turn is :nw, :ne, :se or :sw", "%s is not a turn", quote(":"+turn))
	return c
}
