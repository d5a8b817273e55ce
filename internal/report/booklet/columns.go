package booklet

import (
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/report"
)

// grid is how the blocks lie, in words.
func (b *patternBuilder) grid() report.Grid { return report.Grid{Top: b.Top, Plan: b.Sewing} }

// noun is what the top is sewn of: blocks, or columns where all of it is columns of tumblers.
func (b *patternBuilder) noun() string { return b.grid().Noun() }

// labelled says whether the layout has room for each block's label.
func (b *patternBuilder) labelled() bool { return b.grid().Labeled() }

// runsOfCells is, for each cell, the last one of the block or column that begins there; -1 for a cell that a column runs over.
func (b *patternBuilder) runsOfCells() []int {
	last := make([]int, len(b.Top.Cells))
	for i := range last {
		last[i] = i
	}
	b.grid().Columns(func(at *sewing.Placed) {
		for n := range at.Cells {
			last[at.Cell+n*b.Top.Columns] = -1
		}
		last[at.Cell] = at.Cell + (at.Cells-1)*b.Top.Columns
	})
	return last
}
