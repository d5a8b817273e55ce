package preview

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// assembly is how blocks, sashes and borders go together.
func (s *sewRows) assembly() section {
	out := section{Title: "Blocks together"}
	pictures := s.Pictures()
	courses, borders := len(pictures), len(pictures)
	for i := range pictures {
		if pictures[i].Block < 0 && courses == len(pictures) && s.hasStage(sewing.LineStage, sewing.LinesStage) {
			courses = i
		} else if pictures[i].Block < 0 {
			borders = i
		}
	}
	shown := func(w row, n int) row {
		if n < len(pictures) {
			w.Diagram = s.diagram(func() *diagram.Figure { return pictures[n].Figure })
		}
		return w
	}
	if text := s.LinesLine(); text != "" {
		out.Rows = append(out.Rows, shown(row{Cells: []string{text}, Seams: s.courseSeams()}, courses))
	}
	if text := s.SashesLine(); text != "" {
		out.Rows = append(out.Rows, row{Cells: []string{text}})
	}
	for i := range s.Assembly.Stages {
		st := &s.Assembly.Stages[i]
		switch w := (row{Cells: []string{s.StageLine(st)}, Seams: s.seamsFrom(st.First, st.Count)}); st.Sort {
		case sewing.LinesStage:
			out.Rows = append(out.Rows, shown(w, courses))
		case sewing.BorderStage:
			w.Patches = s.borderPatches(st.Number - 1)
			out.Rows = append(out.Rows, shown(w, borders))
		}
	}
	for n := range s.Assembly.Loose {
		out.Rows = append(out.Rows, row{Cells: []string{s.LooseLine(n)}, Tone: doubtful, Patches: s.cellPatches(s.LooseCells(n))})
	}
	return out
}

func (s *sewRows) hasStage(sorts ...sewing.StageSort) bool {
	for _, st := range s.Assembly.Stages {
		for _, sort := range sorts {
			if st.Sort == sort && st.Count > 0 {
				return true
			}
		}
	}
	return false
}

// courseSeams are the seams of the top within rows or columns.
func (s *sewRows) courseSeams() []int {
	var list []int
	for _, st := range s.Assembly.Stages {
		if st.Sort == sewing.LineStage {
			list = append(list, s.seamsFrom(st.First, st.Count)...)
		}
	}
	return list
}

func (s *sewRows) borderPatches(border int) []int {
	var list []int
	for i := range s.top.Patches {
		if s.top.Patches[i].Border == border {
			list = append(list, i)
		}
	}
	return list
}

// seamsFrom are the seams of the top that are sewn by some seams of the assembly.
func (s *sewRows) seamsFrom(first, count int) []int {
	if s.between == nil {
		s.between = s.sewnBy()
	}
	var list []int
	for n := first; n < first+count; n++ {
		list = append(list, s.between[n]...)
	}
	return list
}

// sewnBy finds for each seam of the top between two parts the seam of the assembly that sews
// it: the one that makes the smallest unit which holds both.
func (s *sewRows) sewnBy() [][]int {
	a := &s.Assembly
	parts := len(a.Parts)
	above := make([]int, parts+len(a.Seams)) // the unit that a unit is sewn into
	for i := range a.Seams {
		above[a.Seams[i].A], above[a.Seams[i].B] = parts+i, parts+i
	}
	partOf := make([]int, len(s.top.Patches))
	for i := range partOf {
		partOf[i] = -1
	}
	for n, part := range a.Parts {
		for patch := part.First; patch < part.First+part.Patches; patch++ {
			partOf[patch] = n
		}
	}
	by := make([][]int, len(a.Seams))
	for i := range s.top.Seams {
		one, other := partOf[s.top.Faces[s.top.Seams[i].A].Patch], partOf[s.top.Faces[s.top.Seams[i].B].Patch]
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

// joints are the patches round some joints.
func (s *sewRows) joints(wanted func(*sewing.Joint) bool) []int {
	var list []int
	for i := range s.Pressing.Joints {
		if wanted(&s.Pressing.Joints[i]) {
			list = append(list, s.JointPatches(i)...)
		}
	}
	return list
}

// grain is which edges lie off the straight grain.
func (s *sewRows) grain() section {
	out := section{Title: "Edges that stretch"}
	for i := range s.Blocks {
		b := &s.Blocks[i]
		if text := s.EdgeLine(b); text != "" {
			out.Rows = append(out.Rows, row{Cells: []string{text}, Patches: s.wholeBlock(b)})
		}
	}
	if len(out.Rows) == 0 {
		return sentences(out.Title, []string{"All edges of blocks lie on the straight grain."})
	}
	for _, said := range s.OutsideLines() {
		out.Rows = append(out.Rows, row{Cells: []string{said.Text}, Patches: s.cellPatches(said.Cells)})
	}
	return out
}

// bulk is where cloth grows thick, and what becomes of points.
func (s *sewRows) bulk() section {
	b := &s.Bulk
	out := section{Title: "Thick places and points"}
	says := func(at []quilt.Point, text string) {
		if text != "" {
			out.Rows = append(out.Rows, row{Cells: []string{text}, Patches: s.patchesAt(at)})
		}
	}
	says(nil, s.ThickLine())
	for i := range b.Thick[:min(mostRows, len(b.Thick))] {
		says(b.Thick[i].At, s.ThickPointLine(&b.Thick[i]))
	}
	for i := range b.Points {
		says(nil, s.PointsLine(&b.Points[i]))
	}
	for i := range b.Blunted {
		says(b.Blunted[i].At, s.BluntedLine(&b.Blunted[i]))
	}
	return out
}
