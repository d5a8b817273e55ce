package sewing

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
)

// Patches is the patches of some pieces of the block or column at a cell, by index in the top:
// what a step there concerns.
func (p *Plan) Patches(cell int, pieces []int) []int {
	list := make([]int, 0, len(pieces))
	for _, i := range pieces {
		if i < int(p.cells[cell].count) {
			list = append(list, p.patch(cell, i))
		}
	}
	return list
}

// Way is which way a block's choice of pressing was made at a cell: 0 or 1, by Block.Pressings.
func (p *Plan) Way(cell, group int) int {
	return p.Pressing.Choices[p.Pressing.Cells[cell][group]].Way
}

// Spins says whether the seams of a block are spun: all allowances turn one way round each point where seams meet in it.
func (b *Block) Spins() bool {
	return len(b.Rounds) > 0 && !slices.ContainsFunc(b.Rounds, func(r Round) bool { return !r.Turns })
}

// CellName is a block's label and, where blocks of that label differ in cloth, the number of
// its variant: what pictures write into its place.
func (p *Plan) CellName(cell int) string {
	return p.Blocks[p.cells[cell].block].VariantName(int(p.cells[cell].variant) + 1)
}

// VariantName is a block's label and, where blocks of it differ in cloth, the number of one of its variants, set off from a
// label that ends in a digit.
func (b *Block) VariantName(number int) string {
	if len(b.Variants) == 1 {
		return b.Label
	}
	if last := b.Label[len(b.Label)-1]; last >= '0' && last <= '9' {
		return fmt.Sprintf("%s-%d", b.Label, number)
	}
	return fmt.Sprintf("%s%d", b.Label, number)
}

// down is how many cells the block or column at a cell takes.
func (p *Plan) down(cell int) int { return max(1, int(p.cells[cell].down)) }

// LooseCells are the cells of a part that hangs together with nothing else, by its number in Assembly.Loose; none if it is of
// sashes or borders.
func (p *Plan) LooseCells(n int) []int {
	var cells []int
	a := &p.Assembly
	for units := []int{a.Loose[n]}; len(units) > 0; {
		unit := units[len(units)-1]
		units = units[:len(units)-1]
		if unit >= len(a.Parts) {
			s := &a.Seams[unit-len(a.Parts)]
			units = append(units, s.A, s.B)
			continue
		}
		if cell := a.Parts[unit].Cell; cell >= 0 {
			for down := range p.down(cell) {
				cells = append(cells, cell+down*p.Columns)
			}
		}
	}
	return cells
}

// Inwards is the long seams of the assembly that are pressed the other way than most: inwards, or towards the earlier row
// or column; by index.
func (p *Plan) Inwards() []int {
	var seams []int
	for i := range p.Assembly.Seams {
		if p.Pressing.Choices[p.Choice(i)].Sort == SeamChoice && !p.Assembly.Seams[i].Press {
			seams = append(seams, i)
		}
	}
	return seams
}

// Choice is the choice of pressing that a seam of the assembly follows, by index.
func (p *Plan) Choice(seam int) int { return int(p.Assembly.Seams[seam].choice) }

// JointPatches is the four patches round a joint, two on each side of the later seam.
func (p *Plan) JointPatches(joint int) []int {
	j := &p.Pressing.Joints[joint]
	return []int{int(j.A.Patches[0]), int(j.A.Patches[1]), int(j.B.Patches[0]), int(j.B.Patches[1])}
}

// CellOf is the cell in which a point of the top lies, or that it touches, by index; -1 where
// only sashes or borders do.
func (p *Plan) CellOf(at point) int {
	for y := range p.Rows {
		for x := range p.Columns {
			r := p.top.CellRect(y*p.Columns + x)
			if at.X >= r.Min.X && at.X <= r.Max.X && at.Y >= r.Min.Y && at.Y <= r.Max.Y {
				return y*p.Columns + x
			}
		}
	}
	return -1
}

// Shape is what shape a piece of a block has.
func (p *Plan) Shape(b *Block, piece int) blocks.Shape {
	return p.top.Patches[p.patch(b.Variants[0].Cells[0].Cell, piece)].Shape
}

// Sashed says whether sashes lie between the blocks.
func (p *Plan) Sashed() bool { return p.top.CutFacts.Sash != nil }
