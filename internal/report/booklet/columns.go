package booklet

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/plan/sewing"
)

// wholeColumns are the numbers of the grid's columns that are tumblers from end to end, from 1.
func (b *patternBuilder) wholeColumns() []int {
	var list []int
	b.eachColumn(func(at *sewing.Placed) {
		if at.Cells == b.Top.Rows && b.Sewing.Assembly.ByColumns {
			list = append(list, at.Col)
		}
	})
	slices.Sort(list)
	return list
}

// eachColumn hands on every column of tumblers.
func (b *patternBuilder) eachColumn(with func(at *sewing.Placed)) {
	for i := range b.Sewing.Blocks {
		k := &b.Sewing.Blocks[i]
		if !k.Column {
			continue
		}
		for _, c := range k.Variants {
			for n := range c.Cells {
				with(&c.Cells[n])
			}
		}
	}
}

// noun is what the top is sewn of: blocks, or columns where all of it is columns of tumblers.
func (b *patternBuilder) noun() string {
	if len(b.wholeColumns()) == b.Top.Columns {
		return "column"
	}
	return "block"
}

// across says of how many blocks, or columns of tumblers, the top is.
func (b *patternBuilder) across() string {
	t, whole := b.Top, len(b.wholeColumns())
	blocks := count(t.Columns, "block") + " across and " + count(t.Rows, "block") + " down"
	switch {
	case whole == 0:
		return blocks
	case b.noun() == "column":
		return count(whole, "column") + " of " + b.tumblersText()
	}
	return blocks + "; " + numeral(whole) + " of its columns " + verb(whole, "is", "are") + " of " + b.tumblersText()
}

// tumblersText says how many tumblers a column has.
func (b *patternBuilder) tumblersText() string {
	least, most := len(b.Top.Patches), 0
	b.eachColumn(func(at *sewing.Placed) {
		n := 0
		for _, p := range at.Patches {
			if b.Top.Patches[p].Shape == blocks.ColumnShape(false) {
				n++
			}
		}
		if at.Cells == b.Top.Rows {
			least, most = min(n, least), max(n, most)
		}
	})
	text := count(most, "tumbler")
	if least < most {
		text = numeral(least) + " to " + text
	}
	return text + ", with an end piece at each end"
}

// layoutCaption says how rows and columns are counted.
func (b *patternBuilder) layoutCaption() string {
	if b.noun() == "column" {
		return "Layout of the columns, counted from the left."
	}
	return "Layout of the blocks; rows are counted from the top, columns from the left."
}

// runsOfCells is, for each cell, the last one of the block or column that begins there; -1 for a cell that a column runs over.
func (b *patternBuilder) runsOfCells() []int {
	last := make([]int, len(b.Top.Cells))
	for i := range last {
		last[i] = i
	}
	b.eachColumn(func(at *sewing.Placed) {
		for n := range at.Cells {
			last[at.Cell+n*b.Top.Columns] = -1
		}
		last[at.Cell] = at.Cell + (at.Cells-1)*b.Top.Columns
	})
	return last
}
