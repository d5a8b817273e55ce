package contrast

import (
	"slices"

	"eighthturn/internal/quilt"
)

// Complement is the figures that the pieces between others make, where they show as strongly or more.
type Complement struct {
	Sort     Sort     `json:"sort"`
	Of       []string `json:"of"`
	Count    int      `json:"count"`
	Stronger bool     `json:"stronger"` // than the figures that the layout means to show
}

// complement finds the figures that the pieces between those of a sort make: stars between webs, webs between stars.
func (s *study) complement(sort Sort, shown []Sort) []member {
	other := Web
	switch sort {
	case Web:
		other = Star
	case Star:
	default:
		return nil
	}
	var list []member
	for _, g := range s.gather(other, shown) {
		if g.meant || !slices.ContainsFunc(g.patches, func(i int32) bool { return shown[s.Patches[i].Cell] == sort }) {
			continue
		}
		list = append(list, s.centred(g.patches))
	}
	return list
}

// setOff tells of the figures between those that are meant, where they show as strongly or more. Where they run on into a
// border of their own fabric they are the ground.
func (s *study) setOff(figures []Figure, g group, mass *masses) {
	other := Star
	if g.sort == Star {
		other = Web
	}
	f := s.figure(other, g.between, mass)
	most := 0
	for i := range figures {
		if figures[i].Count > figures[most].Count {
			most = i
		}
	}
	meant := &figures[most]
	if f.Closed == 0 || 2*f.Closed < meant.Closed || f.Verdict != Reads || s.groundIn(g.between) {
		return
	}
	stronger := meant.Verdict != Reads || meant.Rim != nil && !meant.Rim.Verdict.Shows() && (f.Rim == nil || f.Rim.Verdict.Shows())
	smaller := s.areaOf(g.between) < s.areaOf(g.variants[most])
	if !stronger && (!smaller || massScore(&f) < massScore(meant) || f.Outline.Score < meant.Outline.Score) {
		return
	}
	var of []int
	for i := range g.between {
		_, own, _ := s.colouring(&g.between[i])
		of = append(of, own...)
	}
	meant.Complement = &Complement{Sort: other, Of: s.names(distinct(of)), Count: f.Closed, Stronger: stronger}
}

// massScore is a figure's score as a mass, 0 where it is none.
func massScore(f *Figure) float64 {
	if f.Mass == nil {
		return 0
	}
	return f.Mass.Score
}

// groundIn says whether figures run on into a border of their own fabric.
func (s *study) groundIn(members []member) bool {
	for i := range members {
		for _, edge := range members[i].rim {
			if s.seams[edge.seam].sameOne {
				return true
			}
		}
	}
	return false
}

// areaOf is the mean area of figures that have all their pieces, square millimetres.
func (s *study) areaOf(members []member) float64 {
	sum, n := 0.0, 0
	for _, m := range whole(members) {
		n++
		for _, f := range m.faces {
			sum += quilt.Area(s.Faces[f].Outline)
		}
	}
	return sum / float64(n)
}

// byTurns judges two sorts of figures against each other, wherever they stand. Those that are light and dark in themselves, and
// scraps of one pool, are not meant to be told apart by value alone.
func (s *study) byTurns(g group, mass *masses) (Figure, bool) {
	var faces [2][][]int32
	f := Figure{Sort: ByTurns}
	of := g.turns
	if of[0] == nil || s.onePool(slices.Concat(of[0], of[1])...) || !s.oneValue(of[0]) || !s.oneValue(of[1]) {
		return f, false
	}
	for _, v := range g.variants {
		_, fabrics, _ := s.colouring(&v[0])
		side := slices.IndexFunc(of[:], func(list []int) bool { return slices.Equal(list, fabrics) })
		for i := range v {
			if side < 0 {
				break
			}
			faces[side] = append(faces[side], v[i].faces)
			f.Faces = append(f.Faces, v[i].faces...)
			f.Count++
			if v[i].closed {
				f.Closed++
			}
		}
	}
	f.Of, f.Against = s.names(of[0]), s.names(of[1])
	f.Mass = mass.apart(faces[0], faces[1], s.wideSoft())
	if f.Mass == nil {
		return f, false
	}
	f.Verdict = verdict(&f)
	f.Lacks = []Lack{}
	if len(of[0]) == 1 && len(of[1]) == 1 && f.Mass.Hold < 1 {
		band := Soft
		if f.Mass.Hold == 0 {
			band = Vanishes
		}
		f.Lacks = append(f.Lacks, s.lack(of[0][0], of[1][0], band))
	}
	return f, true
}

// twoSorts finds the two sorts of figures that take turns, by their fabrics: they share none, and all others are made of both.
// Both are nil where there are not just two.
func (s *study) twoSorts(variants [][]member) (of [2][]int) {
	var sets [][]int
	for _, v := range variants {
		_, fabrics, _ := s.colouring(&v[0])
		if !slices.ContainsFunc(sets, func(other []int) bool { return slices.Equal(other, fabrics) }) {
			sets = append(sets, fabrics)
		}
		if len(sets) > maxVariants {
			return of
		}
	}
	for i := range sets {
		for j := i + 1; j < len(sets); j++ {
			if !shareOne(sets[i], sets[j]) && !slices.ContainsFunc(sets, func(list []int) bool { return !mixes(list, sets[i], sets[j]) }) {
				return [2][]int{sets[i], sets[j]}
			}
		}
	}
	return of
}

// mixes says whether a list is one of two others, or is made of both.
func mixes(list, a, b []int) bool {
	return slices.Equal(list, a) || slices.Equal(list, b) || shareOne(list, a) && shareOne(list, b) &&
		!slices.ContainsFunc(list, func(f int) bool { return !slices.Contains(a, f) && !slices.Contains(b, f) })
}

// shareOne says whether two lists have something in common.
func shareOne(a, b []int) bool {
	return slices.ContainsFunc(a, func(f int) bool { return slices.Contains(b, f) })
}

// oneValue says whether no clear step lies between any two of some fabrics.
func (s *study) oneValue(fabrics []int) bool {
	l := s.sorted(fabrics)
	return slices.Max(l)-slices.Min(l) < s.clear()
}

// wideSoft is the step below which the widest pieces of the top cannot be told apart.
func (s *study) wideSoft() float64 {
	soft := s.clear()
	for i := range s.seams {
		soft = min(soft, s.seams[i].soft)
	}
	return soft
}
