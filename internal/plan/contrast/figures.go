package contrast

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// Figure is one sort of figure in one colouring.
type Figure struct {
	Sort       Sort        `json:"sort"`
	Of         []string    `json:"of"`      // the fabrics that it is made of
	Edge       []string    `json:"edge"`    // those of them that stand at its outline
	Against    []string    `json:"against"` // the fabrics that it stands against
	Border     int         `json:"border,omitempty"`
	Count      int         `json:"count"`              // how many there are, halves at the quilt's edge too
	Closed     int         `json:"closed"`             // how many of them have all their pieces; what is judged where there are any
	Reversed   bool        `json:"reversed,omitempty"` // made of a strip set that lies the other way round
	Outline    Outline     `json:"outline"`
	Mass       *Mass       `json:"mass,omitempty"` // nil where the sort is not meant as one mass, or is too thin for one
	Rim        *Rim        `json:"rim,omitempty"`  // nil where it does not reach a border
	Complement *Complement `json:"complement,omitempty"`
	Alternates float64     `json:"alternates,omitempty"` // 0 to 1: of the pieces in a column, how many are darker than both neighbors or lighter than both
	Verdict    Verdict     `json:"verdict"`
	Lost       int         `json:"lost"`    // how many of them have an outline that does not hold by itself
	Weakest    Place       `json:"weakest"` // where the outline is weakest: the cell, or the one above and to the left of the centre
	Weak       float64     `json:"weak"`    // the outline's score there
	Doubtful   bool        `json:"doubtful"`
	Faces      []int32     `json:"-"`     // of the top, by index: what it is made of, both sides of an alternation, all strips of a set
	Lacks      []Lack      `json:"lacks"` // the fabrics that should stand apart and do not, those of the longest seams first
	place      [2]int      `json:"-"`     // what stays the same in other colors: its group, or that of frames, and its number in it
}

// Outline is how well the edge of a figure holds.
type Outline struct {
	Score      float64    `json:"score"`    // 0 to 100: 100 Edge, less half of what the figure is darker than where it is mostly lighter, or lighter than where it is mostly darker
	Edge       float64    `json:"edge"`     // 0 to 1: each seam by how much it holds, 0 where it vanishes to 1 where it is clear, by length
	Polarity   float64    `json:"polarity"` // 0 to 1: 1 where the figure is the darker side all along, or the lighter one
	Length     measure.NM `json:"length"`
	Broken     measure.NM `json:"broken"`      // of it, what vanishes
	LongestGap measure.NM `json:"longest_gap"` // the longest stretch that vanishes without a break
	RunsOn     measure.NM `json:"runs_on"`     // seams of a border with one fabric on both sides, beside the length
}

// maxVariants is how many colourings of one sort are told apart before all are judged
// together, as in a quilt of scraps.
const maxVariants = 6

// group is the figures of one sort in all colourings, found once for all colours that a top may take.
type group struct {
	sort     Sort
	variants [][]member // by colouring
	turns    [2][]int   // the fabrics of two sorts that take turns, nil where there are not just two
	between  []member   // the figures that the pieces between them make, which are not meant to be seen as such
}

// groups finds every figure that the top means to show, but for frames.
func (s *study) groups() []group {
	shown := s.shown()
	var list []group
	for _, sort := range [3]Sort{Web, Star, Wheel} {
		var whole, turns []member
		for _, g := range s.gather(sort, shown) {
			s.sign.Look()
			switch {
			case !g.meant:
			case sort == Wheel:
				one, alternates := s.wheel(g.patches)
				if alternates {
					turns = append(turns, one)
				} else {
					whole = append(whole, one)
				}
			default:
				whole = append(whole, s.centred(g.patches))
			}
		}
		figures := s.group(sort, whole)
		figures.between = s.complement(sort, shown)
		list = append(list, figures, s.group(Alternation, turns))
	}
	list = append(list, s.group(Strips, s.stripSets()))
	for _, g := range s.neighbors() {
		list = append(list, s.group(g.sort, g.members))
	}
	return list
}

// group sorts figures of one sort by their colouring and notes where they lie.
func (s *study) group(sort Sort, members []member) group {
	s.sides.mark(members, sort.parted())
	g := group{sort: sort, variants: s.variants(members)}
	if sort.inTurns() {
		g.turns = s.twoSorts(g.variants)
	}
	return g
}

// figures judges every figure that the top means to show.
func (s *study) figures() []Figure { return s.figuresBy(s.newMasses()) }

// figuresBy judges every figure, with masses that are known.
func (s *study) figuresBy(mass *masses) []Figure {
	var list []Figure
	for n, g := range s.found {
		list = append(list, numbered(n, s.judge(g, mass))...)
	}
	return append(list, numbered(len(s.found), s.frames())...)
}

// numbered notes where figures stand.
func numbered(group int, list []Figure) []Figure {
	for i := range list {
		list[i].place = [2]int{group, i}
	}
	return list
}

// Twin is the same figure in the study of the same top in other colors, nil where that does not judge it: whether two sorts that
// take turns are judged against each other depends on their colors.
func (r *Report) Twin(f *Figure) *Figure {
	if i := r.twin(f); i >= 0 {
		return &r.Figures[i]
	}
	return nil
}

func (r *Report) twin(f *Figure) int {
	return slices.IndexFunc(r.Figures, func(g Figure) bool { return g.place == f.place })
}

// judge judges each colouring of a sort, and where two sorts take turns, one against the other.
func (s *study) judge(g group, mass *masses) []Figure {
	var list []Figure
	for _, v := range g.variants {
		list = append(list, s.figure(g.sort, v, mass))
	}
	if len(g.between) > 0 && !s.quick { // what they lie between is in the list, then
		s.setOff(list, g, mass)
	}
	if len(list) > maxVariants {
		list = []Figure{pooled(list)}
	}
	if g.sort.inTurns() {
		if f, ok := s.byTurns(g, mass); ok {
			list = append(list, f)
		}
	}
	return list
}

// variants puts figures of one colouring together, in the order in which each first comes.
func (s *study) variants(members []member) [][]member {
	at := map[string]int{}
	var list [][]member
	for _, m := range members {
		s.sign.Look()
		edge, of, against := s.colouring(&m)
		key := fmt.Sprint(edge, of, against)
		n, ok := at[key]
		if !ok {
			n = len(list)
			at[key] = n
			list = append(list, nil)
		}
		list[n] = append(list[n], m)
	}
	return list
}

// colouring is the fabrics of a figure, each list without doubles and in the layout's order.
func (s *study) colouring(m *member) (edge, of, against []int) {
	for _, f := range m.faces {
		of = append(of, int(s.Faces[f].Fabric))
	}
	for _, f := range m.against {
		against = append(against, int(s.Faces[f].Fabric))
	}
	inside := map[int32]bool{}
	for _, f := range m.faces {
		inside[f] = true
	}
	for _, o := range m.seams {
		one := &s.seams[o.seam]
		for _, f := range [2]int32{one.a, one.b} {
			if inside[f] {
				edge = append(edge, int(s.Faces[f].Fabric))
			}
		}
	}
	return distinct(edge), distinct(of), distinct(against)
}

func distinct(list []int) []int {
	slices.Sort(list)
	return slices.Compact(list)
}

func (s *study) names(fabrics []int) []string {
	names := make([]string, len(fabrics))
	for i, f := range fabrics {
		names[i] = s.Fabrics[f].Name
	}
	return names
}

// figure judges one colouring: those figures that have all their pieces, where there are any.
func (s *study) figure(sort Sort, members []member, mass *masses) Figure {
	f := Figure{Sort: sort, Count: len(members), Weak: math.Inf(1)}
	if !s.quick {
		s.describe(&f, members)
	}
	sum := outlineSum{study: s}
	for _, m := range whole(members) {
		s.sign.Look()
		one := outlineSum{study: s, both: sort.bothWays()}
		one.add(m)
		score := one.outline().Score
		if score < readsFrom {
			f.Lost++
		}
		if score < f.Weak && !s.quick {
			f.Weak, f.Weakest = score, s.placeOf(m)
		}
		sum.join(&one)
	}
	f.Outline = sum.outline()
	f.Doubtful = sum.doubtful
	if sort.massed() {
		f.Mass = mass.judge(whole(members), sum.meanSoft())
	}
	if sort.centred() {
		f.Rim = s.rim(members)
	}
	if sort == DownColumns && !s.quick {
		f.Alternates = s.alternates(members)
	}
	f.Verdict, f.Lacks = verdict(&f), []Lack{}
	if f.Verdict != Reads {
		f.Lacks = s.lacking(outlines(members))
	}
	return f
}

// describe says what figures of one colouring are, whatever their verdict.
func (s *study) describe(f *Figure, members []member) {
	edge, of, against := s.colouring(&members[0])
	f.Of, f.Edge, f.Against = s.names(of), s.names(edge), s.names(against)
	for i := range members {
		m := &members[i]
		if m.closed {
			f.Closed++
		}
		f.Faces = append(f.Faces, m.faces...)
		if f.Sort == Alternation {
			f.Faces = append(f.Faces, m.against...)
		}
	}
	f.Reversed = s.reversed(members)
}

// whole are the figures that have all their pieces, or all of them where none has.
func whole(members []member) []*member {
	var all, closed []*member
	for i := range members {
		all = append(all, &members[i])
		if members[i].closed {
			closed = append(closed, &members[i])
		}
	}
	if len(closed) > 0 {
		return closed
	}
	return all
}

// reversed says whether figures are made of strip sets that all lie the other way round, whatever else is in them.
func (s *study) reversed(members []member) bool {
	some := false
	for i := range members {
		for _, f := range members[i].faces {
			p := &s.Patches[s.Faces[f].Patch]
			if p.Count > 1 && !p.Reversed {
				return false
			}
			some = some || p.Count > 1
		}
	}
	return some
}

// placeOf is where a figure lies: the cell of its first piece.
func (s *study) placeOf(m *member) Place {
	return s.place(slices.MinFunc(m.faces, func(a, b int32) int {
		p, q := s.place(a), s.place(b)
		return cmp.Or(cmp.Compare(p.Row, q.Row), cmp.Compare(p.Column, q.Column))
	}))
}

// pooled draws many colourings together, each weighted by how many figures have it.
func pooled(list []Figure) Figure {
	out := Figure{Sort: list[0].Sort, Weak: math.Inf(1)}
	var edge, polarity, length, massed float64
	var mass Mass
	lacks, rims := lackSum{list: []Lack{}}, lackSum{list: []Lack{}}
	for _, f := range list {
		out.Count += f.Count
		out.Closed += f.Closed
		lacks.add(f.Lacks)
		if out.Rim = out.Rim.with(f.Rim); f.Rim != nil {
			rims.add(f.Rim.Lacks)
		}
		if out.Complement == nil {
			out.Complement = f.Complement
		}
		out.Lost += f.Lost
		out.Faces = append(out.Faces, f.Faces...)
		if f.Weak < out.Weak {
			out.Weak, out.Weakest = f.Weak, f.Weakest
		}
		l := float64(f.Outline.Length)
		length += l
		edge += float64(l * f.Outline.Edge)
		polarity += float64(l * f.Outline.Polarity)
		out.Outline.Score += float64(l * f.Outline.Score)
		out.Outline.Broken += f.Outline.Broken
		out.Outline.Length += f.Outline.Length
		out.Outline.LongestGap = max(out.Outline.LongestGap, f.Outline.LongestGap)
		if f.Mass != nil {
			n := float64(f.Count)
			massed += n
			mass.Score += float64(n * f.Mass.Score)
			mass.Massing += float64(n * f.Mass.Massing)
			mass.Step += float64(n * f.Mass.Step)
			mass.Hold += float64(n * f.Mass.Hold)
		}
		out.Of, out.Edge, out.Against = union(out.Of, f.Of), union(out.Edge, f.Edge), union(out.Against, f.Against)
		out.Doubtful = out.Doubtful || f.Doubtful
	}
	out.Lacks = lacks.sum()
	if out.Rim != nil {
		rim := *out.Rim
		rim.Lacks = rims.sum()
		out.Rim = &rim
	}
	out.Outline.Edge, out.Outline.Polarity, out.Outline.Score = edge/length, polarity/length, out.Outline.Score/length
	if massed > 0 {
		out.Mass = &Mass{Score: mass.Score / massed, Massing: mass.Massing / massed, Step: mass.Step / massed, Hold: mass.Hold / massed}
	}
	out.Verdict = verdict(&out)
	return out
}

// union is the names of both lists, each once.
func union(a, b []string) []string {
	for _, name := range b {
		if !slices.Contains(a, name) {
			a = append(a, name)
		}
	}
	return a
}
