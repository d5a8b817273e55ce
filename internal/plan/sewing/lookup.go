package sewing

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

// SeamsBetween is the seams of the top, by index, along which patches of one list lie beside
// patches of another: what a join or a joint's arm looks like.
func (p *Plan) SeamsBetween(one, other []int) []int {
	side := map[int]int{}
	for _, n := range one {
		side[n] = 1
	}
	for _, n := range other {
		side[n] = 2
	}
	var list []int
	for i := range p.top.Seams {
		s := &p.top.Seams[i]
		if side[p.top.Faces[s.A].Patch]+side[p.top.Faces[s.B].Patch] == 3 {
			list = append(list, i)
		}
	}
	return list
}

// Way is which way a block's choice of pressing was made at a cell: 0 or 1, by Block.Ways.
func (p *Plan) Way(cell, group int) int {
	return p.Pressing.Choices[p.Pressing.Cells[cell][group]].Way
}

// CellName is a block's label and, where blocks of that label differ in cloth, the number of
// its variant: what pictures write into its place.
func (p *Plan) CellName(cell int) string { return p.cellName(cell) }

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

// ShapeName is what a piece of a block is called at the cutting table.
func (p *Plan) ShapeName(b *Block, piece int) string {
	return p.top.Patches[p.patch(b.Variants[0].Cells[0].Cell, piece)].Shape.String()
}

// Sashed says whether sashes lie between the blocks.
func (p *Plan) Sashed() bool { return p.top.CutFacts.Sash != nil }

// Place says where in a cell a point lies: its middle, one of its corners or sides.
func (p *Plan) Place(cell int, at point) string {
	r := p.top.CellRect(cell)
	name := map[[2]bool]string{{true, false}: "upper", {false, true}: "lower"}[[2]bool{at.Y == r.Min.Y, at.Y == r.Max.Y}]
	side := map[[2]bool]string{{true, false}: "left", {false, true}: "right"}[[2]bool{at.X == r.Min.X, at.X == r.Max.X}]
	switch {
	case name != "" && side != "":
		return "the " + name + " " + side + " corner"
	case name != "":
		return "the " + name + " side"
	case side != "":
		return "the " + side + " side"
	}
	return "the middle"
}

// Round says whether a block's choice is the way in which allowances turn round a point.
func (b *Block) Round(group int) bool {
	for _, s := range b.Steps {
		for _, j := range s.Joins {
			if j.Choice == group {
				return j.Round
			}
		}
	}
	return false
}
