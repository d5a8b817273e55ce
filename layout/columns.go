package layout

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// run is a column of cells that are one column of pieces.
type run struct {
	Block       int // index
	X, Y, Cells int // its first cell, and how many it has
	Divided     blocks.Column
}

// runs finds the columns of column blocks and divides them.
func (c *checker) runs() {
	d := &c.design
	for i := range d.Cells {
		cell := &d.Cells[i]
		if cell.Block < 0 || d.Blocks[cell.Block].Kind == nil || !d.Blocks[cell.Block].Kind.Column || cell.Run >= 0 {
			continue
		}
		run := run{Block: cell.Block, X: i % d.Columns, Y: i / d.Columns}
		for at := i; at < len(d.Cells) && d.Cells[at].Block == cell.Block && (run.Cells == 0 || d.Sash == nil); at += d.Columns {
			d.Cells[at].Run = len(d.Runs)
			run.Cells++
		}
		if n := c.tree.Blocks[run.Block]; !n.poisoned {
			divided, ok := c.divide(run)
			run.Divided, n.poisoned = divided, !ok
		}
		d.Runs = append(d.Runs, run)
	}
}

// divide finds how a column is divided.
func (c *checker) divide(run run) (blocks.Column, bool) {
	d := &c.design
	b := &d.Blocks[run.Block]
	n := c.tree.Blocks[run.Block]
	length := measure.NM(run.Cells) * d.SideFinished
	strip := d.SideFinished + 2*d.Seam
	switch {
	case b.line != nil && b.about != nil:
		c.fault(b.about.Span, "keep one of the two", "line and about cannot both be given, since each follows from the other").note(b.line.Span, "the other one")
		return blocks.Column{}, false
	case b.line == nil && b.about == nil:
		c.fault(n.Label.Span, "for example about "+measure.Number(measure.Nearest(3*d.SideFinished/4, d.Units.Unit()/2), d.Units), "block %s says neither the line of the wedge ruler nor about how long its pieces are", quote(b.Label))
		return blocks.Column{}, false
	case b.line != nil:
		line := b.line.In(d.Units).NM()
		mean := blocks.MeanByLine(line, strip, d.Seam)
		col, err := blocks.ByLine(length, d.SideFinished, mean)
		return col, c.divided(b.line.Span, err, strip) && c.columnLimit(b.line.Span, &col)
	}
	about := b.about.In(d.Units).NM()
	if b.about.Cut {
		about -= 2 * d.Seam
	}
	if about < MinFinished {
		c.fault(b.about.Span, "write a longer length", "pieces of %s cannot be cut", c.text(about))
		return blocks.Column{}, false
	}
	col, err := blocks.ByLength(length, d.SideFinished, about)
	return col, c.divided(b.about.Span, err, strip) && c.columnLimit(b.about.Span, &col)
}

// columnLimit refuses a column of more pieces than it may have.
func (c *checker) columnLimit(at Span, col *blocks.Column) bool {
	n := col.Whole + 2
	if n > MaxColumn {
		c.fault(at, "let the pieces be longer, or give the lower blocks another label", "this column has %d pieces; the limit is %d", n, MaxColumn)
	}
	return n <= MaxColumn
}

// divided reports why a column could not be divided.
func (c *checker) divided(at Span, err error, strip measure.NM) bool {
	if err == nil {
		return true
	}
	d := &c.design
	needed := err.(*blocks.ColumnError).Needed
	least := measure.RoundUp(blocks.LineFor(float64(needed+2*d.Seam), strip, d.Seam), d.Units.Unit()/8)
	c.fault(at, fmt.Sprintf("line %s or more, or about %s or more", measure.Number(least, d.Units), measure.Number(measure.RoundUp(needed+2*d.Seam, d.Units.Unit()/4), d.Units)),
		"in columns %s wide such pieces have no narrow side left: their mean length must be more than %s", c.text(d.SideFinished), c.text(needed))
	return false
}
