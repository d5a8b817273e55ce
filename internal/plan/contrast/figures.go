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
	Sort     Sort     `json:"sort"`
	Of       []string `json:"of"`      // the fabrics that it is made of
	Edge     []string `json:"edge"`    // those of them that stand at its outline
	Against  []string `json:"against"` // the fabrics that it stands against
	Border   int      `json:"border,omitempty"`
	Count    int      `json:"count"` // how many there are, halves at the quilt's edge too
	Outline  Outline  `json:"outline"`
	Mass     *Mass    `json:"mass,omitempty"` // nil where the sort is not meant as one mass, or is too thin for one
	Verdict  Verdict  `json:"verdict"`
	Lost     int      `json:"lost"`    // how many of them have an outline that does not hold by itself
	Weakest  Place    `json:"weakest"` // where the outline is weakest: the cell, or the one above and to the left of the centre
	Weak     float64  `json:"weak"`    // the outline's score there
	Doubtful bool     `json:"doubtful"`
	Faces    []int32  `json:"-"` // of the top, by index: what it is made of, both sides of an alternation, all strips of a set
}

// Outline is how well the edge of a figure holds.
type Outline struct {
	Score      float64    `json:"score"`    // 0 to 100: 100 sqrt(Edge Polarity)
	Edge       float64    `json:"edge"`     // 0 to 1: each seam by how much it holds, 0 where it vanishes to 1 where it is clear, by length
	Polarity   float64    `json:"polarity"` // 0 to 1: 1 where the figure is the darker side all along, or the lighter one
	Length     measure.NM `json:"length"`
	Broken     measure.NM `json:"broken"`      // of it, what vanishes
	LongestGap measure.NM `json:"longest_gap"` // the longest stretch that vanishes without a break
	RunsOn     measure.NM `json:"runs_on"`     // seams of a border with one fabric on both sides, beside the length
}

// Verdict is whether a figure reads.
type Verdict string

const (
	Reads        Verdict = "reads"
	OutlineOnly  Verdict = "outline-only"   // its edge holds, its mass does not
	FromAfarOnly Verdict = "from-afar-only" // its mass holds, its edge does not
	Lost         Verdict = "lost"
	RunsOn       Verdict = "runs-on" // a border of the cloth that it is sewn to: it is meant not to show
)

// readsFrom is the score from which an outline holds, or a mass; our choice.
const readsFrom = 70

// verdict draws both scores together.
func verdict(f *Figure) Verdict {
	outline := f.Outline.Score >= readsFrom
	switch {
	case f.Outline.Length == 0 && f.Outline.RunsOn > 0:
		return RunsOn
	case f.Mass == nil && outline:
		return Reads
	case f.Mass == nil:
		return Lost
	case outline && f.Mass.Score >= readsFrom:
		return Reads
	case outline:
		return OutlineOnly
	case f.Mass.Score >= readsFrom:
		return FromAfarOnly
	}
	return Lost
}

// maxVariants is how many colourings of one sort are told apart before all are judged
// together, as in a quilt of scraps.
const maxVariants = 6

// figures judges every figure that the top means to show.
func (s *study) figures() []Figure {
	shown := s.shown()
	var list []Figure
	mass := s.newMasses()
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
		list = append(list, s.judge(sort, whole, mass)...)
		list = append(list, s.judge(Alternation, turns, mass)...)
	}
	list = append(list, s.judge(Strips, s.stripSets(), mass)...)
	return append(list, s.frames()...)
}

// judge sorts figures of one sort by their colouring and judges each colouring.
func (s *study) judge(sort Sort, members []member, mass *masses) []Figure {
	s.sides.mark(members, sort != Strips && sort != Alternation)
	var list []Figure
	variants := s.variants(members)
	for _, v := range variants {
		list = append(list, s.figure(sort, v, mass))
	}
	if len(list) > maxVariants {
		list = []Figure{pooled(list)}
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
		of = append(of, s.Faces[f].Fabric)
	}
	for _, f := range m.against {
		against = append(against, s.Faces[f].Fabric)
	}
	inside := map[int32]bool{}
	for _, f := range m.faces {
		inside[f] = true
	}
	for _, o := range m.seams {
		one := &s.seams[o.seam]
		for _, f := range [2]int32{one.a, one.b} {
			if inside[f] {
				edge = append(edge, s.Faces[f].Fabric)
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

// figure judges one colouring.
func (s *study) figure(sort Sort, members []member, mass *masses) Figure {
	edge, of, against := s.colouring(&members[0])
	f := Figure{Sort: sort, Of: s.names(of), Edge: s.names(edge), Against: s.names(against), Count: len(members)}
	sum := outlineSum{study: s}
	f.Weak = math.Inf(1)
	for i := range members {
		s.sign.Look()
		one := outlineSum{study: s, both: sort == Strips}
		one.add(&members[i])
		score := one.outline().Score
		if score < readsFrom {
			f.Lost++
		}
		if score < f.Weak {
			f.Weak, f.Weakest = score, s.placeOf(&members[i])
		}
		sum.join(&one)
		f.Faces = append(f.Faces, members[i].faces...)
		if sort == Alternation {
			f.Faces = append(f.Faces, members[i].against...)
		}
	}
	f.Outline = sum.outline()
	f.Doubtful = sum.doubtful
	if sort.massed() {
		f.Mass = mass.judge(members)
	}
	f.Verdict = verdict(&f)
	return f
}

// placeOf is where a figure lies: the cell of its first piece.
func (s *study) placeOf(m *member) Place {
	place := s.place(m.faces[0])
	for _, f := range m.faces {
		p := s.place(f)
		if cmp.Or(cmp.Compare(p.Row, place.Row), cmp.Compare(p.Column, place.Column)) < 0 {
			place = p
		}
	}
	return place
}

// pooled draws many colourings together, each weighted by how many figures have it.
func pooled(list []Figure) Figure {
	out := Figure{Sort: list[0].Sort, Weak: math.Inf(1)}
	var edge, polarity, massing, step, length, massed float64
	for _, f := range list {
		out.Count += f.Count
		out.Lost += f.Lost
		out.Faces = append(out.Faces, f.Faces...)
		if f.Weak < out.Weak {
			out.Weak, out.Weakest = f.Weak, f.Weakest
		}
		l := float64(f.Outline.Length)
		length += l
		edge += float64(l * f.Outline.Edge)
		polarity += float64(l * f.Outline.Polarity)
		out.Outline.Broken += f.Outline.Broken
		out.Outline.Length += f.Outline.Length
		out.Outline.LongestGap = max(out.Outline.LongestGap, f.Outline.LongestGap)
		if f.Mass != nil {
			n := float64(f.Count)
			massed += n
			massing += float64(n * f.Mass.Massing)
			step += float64(n * f.Mass.Step)
		}
		out.Of, out.Edge, out.Against = union(out.Of, f.Of), union(out.Edge, f.Edge), union(out.Against, f.Against)
		out.Doubtful = out.Doubtful || f.Doubtful
	}
	if length > 0 {
		out.Outline.Edge, out.Outline.Polarity = edge/length, polarity/length
	}
	out.Outline.Score = score(out.Outline.Edge, out.Outline.Polarity)
	if massed > 0 {
		out.Mass = &Mass{Score: score(massing/massed, step/massed), Massing: massing / massed, Step: step / massed}
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

// score is 100 times the geometric mean of two parts of 0 to 1.
func score(a, b float64) float64 { return 100 * math.Sqrt(a*b) }
