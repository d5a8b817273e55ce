package contrast

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// The figures of a top found by the plainest means: which pieces make each, what its outline is, and what it stands against.

// finding is the work of finding them.
type finding struct {
	*quilt.Top
	seams []quilt.Seam
	means []Sort // by cell: what its kind means to show
}

func newFinding(top *quilt.Top) *finding {
	w := &finding{Top: top, seams: slices.Concat(top.Seams, top.StripSeams)}
	for i := range top.Cells {
		sort := Sort("")
		if k, ok := blocks.Find(blocks.Kinds(), top.Cells[i].Kind); ok && top.Cells[i].Count > 0 {
			switch {
			case k.Turning.InLattice() && k.Turning.OnStar():
				sort = Star
			case k.Turning.InLattice():
				sort = Web
			case k.Height == blocks.ToMiddle:
				sort = Wheel
			}
		}
		w.means = append(w.means, sort)
	}
	return w
}

// patch is the patch of a face.
func (w *finding) patch(face int32) *quilt.Patch { return &w.Patches[w.Faces[face].Patch] }

// centerOf is the point that the pieces of a figure point at.
func (w *finding) centerOf(m *member) measure.Point { return w.patch(m.faces[0]).Outline[0] }

// gathered are the patches of a sort's shape by the point that they all point at: wedges of rings by themselves.
func (w *finding) gathered(sort Sort) map[measure.Point][]int32 {
	shape := blocks.Gathering(blocks.WebCentre)
	if sort == Star {
		shape = blocks.Gathering(blocks.StarCentre)
	}
	list := map[measure.Point][]int32{}
	for i := range w.Patches {
		p := &w.Patches[i]
		if p.Cell >= 0 && p.Shape == shape && (w.means[p.Cell] == Wheel) == (sort == Wheel) {
			list[p.Outline[0]] = append(list[p.Outline[0]], int32(i))
		}
	}
	return list
}

// cloth is the fabrics of a patch.
func (w *finding) cloth(patch int32) string {
	p, text := &w.Patches[patch], ""
	for f := p.First; f < p.First+p.Count; f++ {
		text += fmt.Sprint(w.Faces[f].Fabric, " ")
	}
	return text
}

// memberApart says what is wrong with a figure of pieces round a point, "" for nothing.
func (w *finding) memberApart(sort Sort, m *member, patches []int32) string {
	round := map[Sort]int{Web: 8, Star: 4, Wheel: 8}[sort]
	if m.closed != (len(patches) == round) {
		return fmt.Sprintf("that it is whole is %v, of %d pieces", m.closed, len(patches))
	}
	inside, all := map[int32]bool{}, map[int32]bool{}
	for _, f := range m.faces {
		inside[f] = true
	}
	for _, n := range patches {
		p, left := &w.Patches[n], 0
		for f := p.First; f < p.First+p.Count; f++ {
			all[f] = true
			left += map[bool]int{true: 1}[inside[f]]
		}
		if left == 0 {
			return "nothing is left of a piece"
		}
		for f := p.First; f < p.First+p.Count; f++ {
			if melts := w.meets(f, inside); inside[f] && melts && left > 1 {
				return "a strip of the ground's own fabric counts as the figure"
			} else if !inside[f] && !melts {
				return "a strip is missing that is of another fabric than what it meets"
			}
		}
	}
	if len(inside) != len(m.faces) || slices.ContainsFunc(m.faces, func(f int32) bool { return !all[f] }) {
		return "faces that are not its own, or twice"
	}
	return w.outlineApart(sort, m, inside, all)
}

// meets says whether a face meets its own fabric outside a figure and the borders; a strip that belongs to the ground already counts.
func (w *finding) meets(face int32, inside map[int32]bool) bool {
	for _, s := range w.seams {
		other := s.A + s.B - face
		if (s.A == face || s.B == face) && !inside[other] && w.patch(other).Border < 0 && w.Faces[other].Fabric == w.Faces[face].Fabric {
			return true
		}
	}
	return false
}

// outlineApart is memberApart for what is round a figure.
func (w *finding) outlineApart(sort Sort, m *member, inside, all map[int32]bool) string {
	var seams, rim []outlineSeam
	var against []int32
	for f := range all {
		if !inside[f] {
			against = append(against, f)
		}
	}
	wedge := blocks.Gathering(blocks.WebCentre)
	for i, s := range w.seams {
		if inside[s.A] == inside[s.B] {
			continue
		}
		out, o := s.B, outlineSeam{int32(i), 1}
		if inside[s.B] {
			out, o.side = s.A, -1
		}
		switch {
		case w.patch(out).Border >= 0:
			rim = append(rim, o)
		case sort == Wheel && w.patch(s.A).Shape == wedge && w.patch(s.B).Shape == wedge && w.Faces[s.A].Patch != w.Faces[s.B].Patch: // two wheels side by side
		default:
			seams, against = append(seams, o), append(against, out)
		}
	}
	if sort == Wheel {
		against = slices.DeleteFunc(against, func(f int32) bool { return w.patch(f).Shape == wedge })
	}
	switch {
	case !sameSeams(m.seams, seams):
		return fmt.Sprintf("its outline is %v, not %v", m.seams, seams)
	case !sameSeams(m.rim, rim):
		return fmt.Sprintf("at the border %v, not %v", m.rim, rim)
	case !slices.Equal(sortedFaces(m.against), slices.Compact(sortedFaces(against))):
		return fmt.Sprintf("against %v, not %v", m.against, against)
	}
	return ""
}

func sortedFaces(list []int32) []int32 { return slices.Sorted(slices.Values(list)) }

func sameSeams(a, b []outlineSeam) bool {
	order := func(x, y outlineSeam) int { return cmp.Compare(x.seam, y.seam) }
	return slices.Equal(slices.SortedFunc(slices.Values(a), order), slices.SortedFunc(slices.Values(b), order))
}

// turnsApart says what is wrong with wedges of two cloths or more round the middle of a block.
func (w *finding) turnsApart(m *member, patches []int32) string {
	figure := map[int32]bool{}
	for _, f := range m.faces {
		figure[w.Faces[f].Patch] = true
	}
	var all, faces []int32
	first, least := patches[0], 2*math.Pi
	for _, n := range patches {
		p := &w.Patches[n]
		for f := p.First; f < p.First+p.Count; f++ {
			all = append(all, f)
			if figure[n] {
				faces = append(faces, f)
			}
		}
		tip, a, b := p.Outline[0], p.Outline[1], p.Outline[2]
		way := math.Mod(math.Atan2(float64(a.X+b.X-2*tip.X), -float64(a.Y+b.Y-2*tip.Y))+2*math.Pi+1e-6, 2*math.Pi)
		if way < least {
			first, least = n, way
		}
	}
	var seams []outlineSeam
	for i, s := range w.seams {
		a, b := w.Faces[s.A].Patch, w.Faces[s.B].Patch
		if a != b && slices.Contains(patches, a) && slices.Contains(patches, b) && w.cloth(a) != w.cloth(b) {
			o := outlineSeam{int32(i), -1}
			if figure[a] {
				o.side = 1
			}
			if figure[a] == figure[b] {
				o.side = m.seams[min(len(m.seams)-1, len(seams))].side // an odd number of runs: two of one side meet
			}
			seams = append(seams, o)
		}
	}
	switch {
	case !slices.Equal(sortedFaces(all), sortedFaces(slices.Concat(m.faces, m.against))) || !slices.Equal(sortedFaces(faces), sortedFaces(m.faces)):
		return "its wedges are not all there, once"
	case !figure[first]:
		return "the wedge that points up is not of the figure"
	case m.closed != (len(patches) == 8):
		return "that it is whole is told of others"
	case !sameSeams(m.seams, seams):
		return fmt.Sprintf("its seams are %v, not %v", m.seams, seams)
	}
	return ""
}

// groupApart says what is wrong with a group of figures round points.
func (w *finding) groupApart(groups []group, sort Sort) string {
	left := w.gathered(sort)
	maps.DeleteFunc(left, func(_ measure.Point, patches []int32) bool {
		return !slices.ContainsFunc(patches, func(n int32) bool { return w.means[w.Patches[n].Cell] == sort })
	})
	for _, g := range groups {
		for _, v := range g.variants {
			for i := range v {
				m := &v[i]
				patches := left[w.centerOf(m)]
				delete(left, w.centerOf(m))
				if len(patches) == 0 {
					return "there is no such figure, or it is listed twice"
				}
				cloths := map[string]bool{}
				for _, n := range patches {
					cloths[w.cloth(n)] = true
				}
				fault := ""
				if turns := sort == Wheel && len(cloths) > 1; turns != (g.sort == Alternation) {
					fault = "it is listed as another sort"
				} else if turns {
					fault = w.turnsApart(m, patches)
				} else {
					fault = w.memberApart(sort, m, patches)
				}
				if fault != "" {
					return fault
				}
			}
		}
	}
	if len(left) > 0 {
		return fmt.Sprintf("%d figures are not found", len(left))
	}
	return ""
}

// betweenApart says what is wrong with the figures that the pieces between others make.
func (w *finding) betweenApart(g group) string {
	other := map[Sort]Sort{Web: Star, Star: Web}[g.sort]
	left := w.gathered(other)
	maps.DeleteFunc(left, func(_ measure.Point, patches []int32) bool {
		sorts := map[Sort]bool{}
		for _, n := range patches {
			sorts[w.means[w.Patches[n].Cell]] = true
		}
		return other == "" || sorts[other] || !sorts[g.sort]
	})
	for i := range g.between {
		m := &g.between[i]
		patches := left[w.centerOf(m)]
		delete(left, w.centerOf(m))
		if len(patches) == 0 {
			return "between: there is no such figure"
		}
		if fault := w.memberApart(other, m, patches); fault != "" {
			return "between: " + fault
		}
	}
	if len(left) > 0 {
		return fmt.Sprintf("between: %d figures are not found", len(left))
	}
	return ""
}

// stripsApart says what is wrong with the strips of strip sets: of wedges of the same strips, whichever way round, the seams between them.
func (w *finding) stripsApart(g group) string {
	seams, faces := map[string][]outlineSeam{}, map[string][]int32{}
	key := func(patch int32) string {
		var cloth []int32
		p := &w.Patches[patch]
		for f := p.First; f < p.First+p.Count; f++ {
			cloth = append(cloth, w.Faces[f].Fabric)
		}
		back := slices.Clone(cloth)
		slices.Reverse(back)
		if slices.Compare(back, cloth) < 0 {
			cloth = back
		}
		return fmt.Sprint(cloth)
	}
	for i := range w.Patches {
		if p := &w.Patches[i]; p.Count > 1 {
			for f := p.First; f < p.First+p.Count; f++ {
				faces[key(int32(i))] = append(faces[key(int32(i))], f)
			}
		}
	}
	for i := len(w.Seams); i < len(w.seams); i++ {
		k := key(w.Faces[w.seams[i].A].Patch)
		seams[k] = append(seams[k], outlineSeam{int32(i), 1})
	}
	for _, m := range slices.Concat(g.variants...) {
		k := key(w.Faces[m.faces[0]].Patch)
		if !m.closed || !sameSeams(m.seams, seams[k]) || !slices.Equal(sortedFaces(m.faces), sortedFaces(faces[k])) || len(m.against)+len(m.rim) > 0 {
			return "a strip set's strips or seams are not all there, once"
		}
		delete(seams, k)
	}
	if len(seams) > 0 {
		return "a strip set is missing"
	}
	return ""
}

// neighborsApart says what is wrong with the seams of kinds that show no figure round a point: two pieces of a column, of two columns,
// of one block, or two blocks of one piece.
func (w *finding) neighborsApart(groups []group) string {
	want := map[Sort][]outlineSeam{}
	for i, s := range w.Seams {
		p, q := w.patch(s.A), w.patch(s.B)
		if p.Cell < 0 || q.Cell < 0 || w.means[p.Cell] != "" || w.means[q.Cell] != "" || w.Faces[s.A].Fabric == w.Faces[s.B].Fabric {
			continue
		}
		a, _ := blocks.Find(blocks.Kinds(), w.Cells[p.Cell].Kind)
		b, _ := blocks.Find(blocks.Kinds(), w.Cells[q.Cell].Kind)
		sort := Sort("")
		switch {
		case a.Column != b.Column:
		case a.Column && (p.Cell-q.Cell)%int32(w.Columns) == 0:
			sort = DownColumns
		case a.Column:
			sort = BetweenColumns
		case p.Cell == q.Cell:
			sort = InBlocks
		case len(a.Pieces) == 1 && len(b.Pieces) == 1:
			sort = Squares
		}
		if sort != "" {
			want[sort] = append(want[sort], outlineSeam{int32(i), 1})
		}
	}
	last := ""
	for _, g := range groups {
		if at := map[Sort]string{DownColumns: "1", BetweenColumns: "2", InBlocks: "3", Squares: "4"}[g.sort]; at <= last {
			return "sorts come out of their order"
		} else {
			last = at
		}
		m := &g.variants[0][0]
		var faces []int32
		for _, o := range want[g.sort] {
			faces = append(faces, w.seams[o.seam].A, w.seams[o.seam].B)
		}
		if len(g.variants) != 1 || len(g.variants[0]) != 1 || !m.closed || !sameSeams(m.seams, want[g.sort]) || !slices.Equal(m.faces, slices.Compact(sortedFaces(faces))) {
			return fmt.Sprintf("%s: its seams or faces are not all there, once", g.sort)
		}
		delete(want, g.sort)
	}
	if len(want) > 0 {
		return fmt.Sprintf("%v are not found", slices.Collect(maps.Keys(want)))
	}
	return ""
}

// variantsApart says what is wrong with the colorings of a group: figures of one have the same fabrics at their edge, in them and
// against them, and no two have.
func (w *finding) variantsApart(g group) string {
	known := map[string]bool{}
	for _, v := range g.variants {
		first := ""
		for i := range v {
			key, edge := "", []int32{}
			inside := map[int32]bool{}
			for _, f := range v[i].faces {
				inside[f] = true
			}
			for _, o := range v[i].seams {
				for _, f := range [2]int32{w.seams[o.seam].A, w.seams[o.seam].B} {
					if inside[f] {
						edge = append(edge, f)
					}
				}
			}
			for _, faces := range [3][]int32{edge, v[i].faces, v[i].against} {
				var of []int
				for _, f := range faces {
					of = append(of, int(w.Faces[f].Fabric))
				}
				key += fmt.Sprint(distinct(of))
			}
			if i == 0 {
				first = key
			}
			if key != first {
				return "two colorings are taken for one"
			}
		}
		if known[first] {
			return "one coloring is taken for two"
		}
		known[first] = true
	}
	return ""
}

// foundApart says what is wrong with the figures that were found.
func (w *finding) foundApart(found []group) string {
	var faults []string
	of := map[Sort][]group{}
	var others []group
	for _, g := range found {
		of[g.sort] = append(of[g.sort], g)
		faults = append(faults, w.variantsApart(g))
		if g.sort != Web && g.sort != Star && g.sort != Wheel && g.sort != Alternation && g.sort != Strips {
			others = append(others, g)
		}
	}
	faults = append(faults, w.groupApart(of[Web], Web), w.groupApart(of[Star], Star), w.groupApart(append(of[Wheel], of[Alternation]...), Wheel))
	faults = append(faults, w.betweenApart(of[Web][0]), w.betweenApart(of[Star][0]), w.stripsApart(of[Strips][0]), w.neighborsApart(others))
	for _, fault := range faults {
		if fault != "" {
			return fault
		}
	}
	return ""
}

// TestFiguresAreFound: every figure that a layout means to show, and no other, each of its own pieces against what it meets.
func TestFiguresAreFound(t *testing.T) {
	for name, one := range studied() {
		if len(one.study.seams) > 1500 {
			continue // what is done by plain means is slow
		}
		if fault := newFinding(one.Top).foundApart(one.study.found); fault != "" {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// TestFindingNotices: of figures that are spoilt in one place the law tells.
func TestFindingNotices(t *testing.T) {
	for name, c := range map[string]struct {
		file  string
		spoil func(m *member)
	}{
		"a seam's side":            {"g1", func(m *member) { m.seams[0].side = -m.seams[0].side }},
		"a seam that is left out":  {"g1", func(m *member) { m.seams = m.seams[1:] }},
		"a face that is left out":  {"g1", func(m *member) { m.faces = m.faces[1:] }},
		"a ground that is missing": {"m03", func(m *member) { m.against = m.against[1:] }},
		"a figure that is whole":   {"m03", func(m *member) { m.closed = !m.closed }},
		"another place":            {"m03", func(m *member) { m.faces[0] = m.against[0] }},
	} {
		top := lay.Top(t, judgedText(t, c.file))
		s := newStudy(nil, top, Options{})
		g := s.found[slices.IndexFunc(s.found, func(g group) bool { return len(g.variants) > 0 })]
		w := newFinding(top)
		if fault := w.foundApart(s.found); fault != "" {
			t.Fatal(fault)
		}
		c.spoil(&g.variants[0][0])
		if w.foundApart(s.found) == "" {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}
