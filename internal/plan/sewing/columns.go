package sewing

import (
	"eighthturn/internal/blocks"
)

// newColumn is a column's pieces and joins: each piece to all those above it. Its frame has
// the upper left corner of its upper cell for origin.
func (s *sorting) newColumn(cell int, found columnFound) *sewn {
	k := &sewn{kind: s.kinds[s.top.Cells[cell].Kind], column: cell, seam: s.Seam, side: s.SideFinished}
	at := s.top.CellRect(cell).Min
	all := make([]int, found.count) // the pieces above each are the first of these
	for i := range found.count {
		all[i] = i
		var o outline
		for _, p := range s.top.Patches[found.first+i].Outline {
			o = append(o, minus(p, at))
		}
		k.pieces = append(k.pieces, o)
		k.cuts = append(k.cuts, s.cutOf(found.first+i))
		if i > 0 {
			k.joins = append(k.joins, k.below(i, all[:i:i]))
		}
	}
	return k
}

// below is the join of a column's piece number i to those above it, of which the last alone
// has corners at the seam.
func (s *sewn) below(i int, above []int) joined {
	j := joined{Join: blocks.Join{A: blocks.Made(i - 2), B: blocks.Part(i)}, // what no join made is the first piece
		pieces: [2][]int{above, {i}}, parts: [2]outline{s.pieces[i-1], s.pieces[i]}, unit: s.pieces[i]}
	j.seam = shared(j.parts[1], j.parts[0])
	return j
}

// leans is the side to which the first slanted seam of a column falls.
func (s *sorting) leans(c *cellSewn) string {
	o := s.top.Patches[s.index[c.first]].Outline
	if o[2].Y > o[3].Y {
		return "right"
	}
	return "left"
}

// longer is the side of each end piece of a column, above and below, that is the longer one.
func (s *sorting) longer(c *cellSewn) []string {
	var list []string
	for _, i := range []int32{c.first, c.first + c.count - 1} {
		o := s.top.Patches[s.index[i]].Outline // from its upper left corner, clockwise
		side := "left"
		if o[2].Y-o[1].Y > o[3].Y-o[0].Y {
			side = "right"
		}
		list = append(list, side)
	}
	return list
}

// columnSteps lists the joins of the longest column; shorter ones have the first of them and
// an end piece in place of a whole one, and those that lean the other way are mirror images.
func (s *sorting) columnSteps(k *sewn, step *Step, count int) {
	for i := range k.joins {
		step.Joins = append(step.Joins, s.joinOf(k, i))
	}
	step.PerBlock, step.Make = 1, count
}
