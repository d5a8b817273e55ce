package preview

import (
	"fmt"

	"eighthturn/figure"
	"eighthturn/patchwork"
	"eighthturn/sewing"
)

// course is what blocks are sewn into first.
func (s *sewRows) course() string {
	if s.Assembly.ByColumns {
		return "column"
	}
	return "row"
}

// assembly is how blocks, sashes and borders go together.
func (s *sewRows) assembly() section {
	out := section{Title: "Blocks together"}
	pictures := s.Pictures()
	courses, borders := len(pictures), len(pictures)
	for i := range pictures {
		if pictures[i].Block < 0 && courses == len(pictures) && s.hasStage(sewing.CourseStage, sewing.CoursesStage) {
			courses = i
		} else if pictures[i].Block < 0 {
			borders = i
		}
	}
	shown := func(w row, n int) row {
		if n < len(pictures) {
			w.Diagram = s.diagram(func() *figure.Figure { return pictures[n].Figure })
		}
		return w
	}
	if w, ok := s.courses(); ok {
		out.Rows = append(out.Rows, shown(w, courses))
	}
	for i := range s.Assembly.Stages {
		st := &s.Assembly.Stages[i]
		switch w := (row{Seams: s.seamsFrom(st.First, st.Count)}); st.Sort {
		case sewing.CoursesStage:
			w.Cells = []string{fmt.Sprintf("Sew the %ss together in their order, each to the one before: about %s in all.", s.course(), s.size(st.Size))}
			out.Rows = append(out.Rows, shown(w, courses))
		case sewing.BorderStage:
			how := "the strips at the two sides first, then those above and below across the whole width"
			if st.Count > 4 {
				how = "the strips at the two sides first; sew a square to both ends of the other two, and then those above and below"
			}
			w.Cells = []string{fmt.Sprintf("Border %d: %s; about %s then.", st.Number, how, s.size(st.Size))}
			w.Patches = s.borderPatches(st.Number - 1)
			out.Rows = append(out.Rows, shown(w, borders))
		}
	}
	for range s.Assembly.Loose {
		out.Rows = append(out.Rows, row{Cells: []string{"A part hangs together with nothing else: places beside it are empty, and no border reaches it."}, Tone: doubtful})
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

// courses is how the blocks of each row or column go together.
func (s *sewRows) courses() (w row, ok bool) {
	count := 0
	var size sewing.Size
	for _, st := range s.Assembly.Stages {
		if st.Sort != sewing.CourseStage {
			continue
		}
		w.Seams = append(w.Seams, s.seamsFrom(st.First, st.Count)...)
		ok = ok || st.Count > 0
		if st.Number > 0 {
			count++
			if st.Size.Across.NM+st.Size.Down.NM > size.Across.NM+size.Down.NM {
				size = st.Size
			}
		}
	}
	w.Cells = []string{fmt.Sprintf("Lay all blocks out by their places and turns. Sew the blocks of each %s together: %s, a whole one about %s. Pin where seam lines meet, not raw corners.",
		s.course(), plural(count, s.course()), s.size(size))}
	return w, ok
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
	names := [4]string{"top", "right", "bottom", "left"}
	for i := range s.Blocks {
		b := &s.Blocks[i]
		var sides []string
		var edge sewing.EdgeGrain
		for n, e := range b.Edges {
			if e.OffGrain+e.Bias > 0 {
				sides, edge = append(sides, names[n]), e
			}
		}
		if len(sides) == 0 {
			continue
		}
		share, how := edge.OffGrain, "off the grain and the rest straight"
		if edge.Bias > 0 {
			share, how = edge.Bias, "on the bias"
		}
		part := float64(share) / float64(edge.OffGrain+edge.Straight+edge.Bias)
		out.Rows = append(out.Rows, row{Cells: []string{fmt.Sprintf("%s, as its pictures show it: %s edge, %.2f of each %s.", b.Label, listed(sides), part, how)}, Patches: s.wholeBlock(b)})
	}
	if len(out.Rows) == 0 {
		return sentences(out.Title, []string{"All edges of blocks lie on the straight grain."})
	}
	out.Rows = append(out.Rows, s.outside()...)
	return out
}

// outside is which of those edges lie on the outside.
func (s *sewRows) outside() []row {
	sides := map[string][]int{}
	for _, o := range s.Grain.Outside {
		sides[o.Side] = append(sides[o.Side], o.Cells...)
	}
	what := "Until the border is on, do not pull at these edges of the field, and sew them without stretching"
	if s.Grain.AtEdge {
		what = "These are edges of the top itself: sew a line just inside the seam allowance before you handle it, and do not pull"
	}
	var list []row
	for _, side := range []string{"top", "right", "bottom", "left", "inside"} {
		cells := sides[side]
		if len(cells) == 0 {
			continue
		}
		where := side
		if side == "inside" {
			where = "beside empty places"
		}
		list = append(list, row{Cells: []string{fmt.Sprintf("%s, %s: %s.", what, where, s.places(cells))}, Patches: s.cellPatches(cells)})
		what = "So too"
	}
	return list
}

// bulk is where cloth grows thick, and what becomes of points.
func (s *sewRows) bulk() section {
	b := &s.Bulk
	out := section{Title: "Thick places and points"}
	says := func(at []patchwork.Point, format string, a ...any) {
		out.Rows = append(out.Rows, row{Cells: []string{fmt.Sprintf(format, a...)}, Patches: s.patchesAt(at)})
	}
	switch {
	case b.Most == 0:
		says(nil, "Nowhere do more than %d layers lie on each other.", b.Limit)
	case len(b.Thick) == 0:
		says(nil, "Nowhere do more than %d layers lie on each other; the most is %d.", b.Limit, b.Most)
	default:
		says(nil, "More than %d layers lie on each other at these points, as allowances are folded (counted, to within one). Trim dog ears there, sew slowly over them, and press the last seam open or turn all allowances one way round if they will not lie flat.", b.Limit)
	}
	for _, t := range b.Thick[:min(mostRows, len(b.Thick))] {
		text := fmt.Sprintf("%d layers where %d pieces meet, at %s, first at %s", t.Layers, t.Pieces, plural(t.Count, "point"), s.where(t.At[0]))
		if !t.Inside {
			text += fmt.Sprintf("; %d with the last seam open, %d turned round", t.Open, t.Round)
		}
		says(t.At, "%s", text)
	}
	for _, n := range b.Points {
		text := fmt.Sprintf("Points of %ss: %d of %d keep a seam allowance of cloth all round", n.Shape, n.Keep, n.Count)
		if n.AtEdge > 0 {
			text += fmt.Sprintf("; %d lie on the quilt's outside, right in the binding's seam", n.AtEdge)
		}
		says(nil, "%s.", text)
	}
	for _, n := range b.Blunted {
		if n.Distance > 0 {
			says(n.At, "%s within %s of the quilt's outside, less than a seam allowance: the binding may blunt them, first at %s.", plural(n.Count, "point"), s.text(n.Distance), s.where(n.At[0]))
		}
	}
	return out
}
