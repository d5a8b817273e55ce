package report

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// patchesOf are the patches of some pieces of a block, at all of its places.
func (s *sewer) patchesOf(b *sewing.Block, pieces []int) []int {
	var list []int
	for _, v := range b.Variants {
		for _, at := range v.Cells {
			list = append(list, s.Patches(at.Cell, pieces)...)
		}
	}
	return list
}

// stepPatches are the patches that a step joins.
func (s *sewer) stepPatches(b *sewing.Block, step *sewing.Step) []int {
	joined := map[int]bool{}
	var pieces []int
	for _, j := range step.Joins {
		for _, n := range slices.Concat(j.A, j.B) {
			if !joined[n] {
				joined[n] = true
				pieces = append(pieces, n)
			}
		}
	}
	return s.patchesOf(b, pieces)
}

// wholeBlock are all patches of the blocks of a label.
func (s *sewer) wholeBlock(b *sewing.Block) []int {
	var all []int
	for i := range b.Variants {
		all = append(all, placedPatches(b.Variants[i].Cells)...)
	}
	return all
}

// placedPatches are all patches of blocks where they are placed.
func placedPatches(list []sewing.Placed) []int {
	var all []int
	for _, at := range list {
		for _, n := range at.Patches {
			all = append(all, int(n))
		}
	}
	return all
}

// cellPatches are all patches of some cells.
func (s *sewer) cellPatches(cells []int) []int {
	var list []int
	for _, n := range cells {
		c := &s.top.Cells[n]
		for i := range c.Count {
			list = append(list, c.First+i)
		}
	}
	return list
}

func (s *sewer) borderPatches(border int) []int {
	var list []int
	for i := range s.top.Patches {
		if int(s.top.Patches[i].Border) == border {
			list = append(list, i)
		}
	}
	return list
}

// patchesAt are the patches that have a corner at one of some points.
func (s *sewer) patchesAt(points []measure.Point) []int {
	var list []int
	for i := range s.top.Patches {
		if slices.ContainsFunc(s.top.Patches[i].Outline, func(q measure.Point) bool { return slices.Contains(points, q) }) {
			list = append(list, i)
		}
	}
	return list
}

// joints are the patches round some joints.
func (s *sewer) joints(wanted func(*sewing.Joint) bool) []int {
	var list []int
	for i := range s.Pressing.Joints {
		if wanted(&s.Pressing.Joints[i]) {
			list = append(list, s.JointPatches(i)...)
		}
	}
	return list
}

// lineSeams are the seams of the top within rows or columns.
func (s *sewer) lineSeams() []int {
	var stages []int
	for i := range s.Assembly.Stages {
		if s.Assembly.Stages[i].Sort == sewing.LineStage {
			stages = append(stages, i)
		}
	}
	return s.stageSeams(stages)
}

// stageSeams are the seams of the top that some stages sew.
func (s *sewer) stageSeams(stages []int) []int {
	var list []int
	for _, n := range stages {
		list = append(list, s.seamsFrom(s.Assembly.Stages[n].First, s.Assembly.Stages[n].Count)...)
	}
	return list
}

// seamsFrom are the seams of the top that are sewn by some seams of the assembly.
func (s *sewer) seamsFrom(first, count int) []int {
	return slices.Concat(s.sewnBy[first : first+count]...)
}

// seamsOf are the seams of the top that are sewn by seams of the assembly, by index.
func (s *sewer) seamsOf(list []int) []int {
	var all []int
	for _, n := range list {
		all = append(all, s.sewnBy[n]...)
	}
	return all
}

// sewnBy finds for each seam of the top between two parts the seam of the assembly that sews it: the one that makes the
// smallest unit which holds both.
func sewnBy(top *quilt.Top, plan *sewing.Plan) [][]int {
	a := &plan.Assembly
	parts := len(a.Parts)
	above := make([]int, parts+len(a.Seams)) // the unit that a unit is sewn into
	for i := range a.Seams {
		above[a.Seams[i].A], above[a.Seams[i].B] = parts+i, parts+i
	}
	partOf := slices.Repeat([]int{-1}, len(top.Patches))
	for n, part := range a.Parts {
		for patch := part.First; patch < part.First+part.Patches; patch++ {
			partOf[patch] = n
		}
	}
	by := make([][]int, len(a.Seams))
	for i := range top.Seams {
		one, other := partOf[top.Faces[top.Seams[i].A].Patch], partOf[top.Faces[top.Seams[i].B].Patch]
		for one != other && one >= 0 && other >= 0 {
			if one, other = min(one, other), max(one, other); above[one] == 0 {
				one = -1
			} else {
				one = above[one] // what is made later has the higher number
			}
		}
		if one >= parts && one == other {
			by[one-parts] = append(by[one-parts], i)
		}
	}
	return by
}
