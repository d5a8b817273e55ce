package contrast

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// What takes turns, what stands between, stray scraps and losses by the plainest means.

// spread is how far the values of fabrics lie apart.
func (p *plainly) spread(fabrics []int) float64 {
	var l []float64
	for _, f := range fabrics {
		l = append(l, p.lightOf(f))
	}
	return slices.Max(l) - slices.Min(l)
}

// takeTurns are the two lists of fabrics of which figures are made that take turns: they share none, and what is not of one of them is
// of some of both and of no others; nil where there are not two such, or where a look at value alone would not tell.
func (p *plainly) takeTurns(g group) [][]int {
	var made [][]int
	for _, v := range g.variants {
		of := p.fabricsOf(v[0].faces)
		if !slices.ContainsFunc(made, func(list []int) bool { return slices.Equal(list, of) }) {
			made = append(made, of)
		}
	}
	if len(made) > 6 {
		return nil
	}
	list, ok := sortsOf(made)
	both := slices.Concat(list[:]...)
	onePool := slices.ContainsFunc(p.Credits.Pools, func(pool layout.Pool) bool { return amongst(both, pool.Fabrics) })
	if !ok || onePool || p.spread(list[0]) >= p.clear || p.spread(list[1]) >= p.clear {
		return nil
	}
	return list[:]
}

// sortsOf are the two of takeTurns by the lists of fabrics alone.
func sortsOf(made [][]int) (list [2][]int, ok bool) {
	for i, a := range made {
		for _, b := range made[i+1:] {
			both := slices.Concat(a, b)
			if len(distinct(slices.Clone(both))) == len(both) && !slices.ContainsFunc(made, func(list []int) bool { return !ofBoth(list, a, b) }) {
				return [2][]int{a, b}, true
			}
		}
	}
	return list, false
}

// ofBoth says whether a list is one of two, or is of both and no others.
func ofBoth(list, a, b []int) bool {
	if slices.Equal(list, a) || slices.Equal(list, b) {
		return true
	}
	some := func(of []int) bool {
		return slices.ContainsFunc(list, func(f int) bool { return slices.Contains(of, f) })
	}
	return some(a) && some(b) && amongst(list, slices.Concat(a, b))
}

// amongst says whether all of a list are among others.
func amongst(list, others []int) bool {
	return !slices.ContainsFunc(list, func(f int) bool { return !slices.Contains(others, f) })
}

// byTurnsOf judges two sorts of figures one against the other; nil where there are none.
func (p *plainly) byTurnsOf(g group) *Figure {
	turns := p.takeTurns(g)
	if turns == nil {
		return nil
	}
	f := &Figure{Sort: ByTurns, Of: p.namesOf(turns[0]), Against: p.namesOf(turns[1]), Lacks: []Lack{}}
	var sides [2][]int32
	for _, m := range slices.Concat(g.variants...) {
		for side, of := range turns {
			if slices.Equal(p.fabricsOf(m.faces), of) {
				sides[side] = append(sides[side], m.faces...)
				f.Count, f.Closed = f.Count+1, f.Closed+map[bool]int{true: 1}[m.closed]
			}
		}
	}
	f.Faces = slices.Concat(sides[:]...)
	least := p.clear
	for i := range p.seams {
		least = min(least, p.seams[i].soft)
	}
	if f.Mass = p.massOf(sides[0], sides[1], least); f.Mass == nil {
		return nil
	}
	f.Verdict = verdict(f)
	if a, b := turns[0][0], turns[1][0]; len(turns[0])+len(turns[1]) == 2 && f.Mass.Hold < 1 {
		if cmp.Or(cmp.Compare(p.lightOf(a), p.lightOf(b)), cmp.Compare(a, b)) > 0 {
			a, b = b, a
		}
		l := Lack{Names: [2]string{p.Fabrics[a].Name, p.Fabrics[b].Name}, Step: p.lightOf(b) - p.lightOf(a)}
		if f.Mass.Hold > 0 {
			l.Band = Soft
		}
		f.Lacks = append(f.Lacks, l)
	}
	return f
}

// complementOf says which figures between those of a group show as strongly or more, nil for none: most of them must be whole, read, and
// not run on into a border; unless those that are meant do not read, they must be smaller and score no less.
func (p *plainly) complementOf(g group, figures []Figure) *Complement {
	if len(g.between) == 0 {
		return nil
	}
	other := Web
	if g.sort == Web {
		other = Star
	}
	f, most := p.figure(other, g.between), 0
	for i := range figures {
		if figures[i].Count > figures[most].Count {
			most = i
		}
	}
	meant := &figures[most]
	ground := slices.ContainsFunc(g.between, func(m member) bool {
		return slices.ContainsFunc(m.rim, func(o outlineSeam) bool { return p.seams[o.seam].a == p.seams[o.seam].b })
	})
	if f.Closed == 0 || 2*f.Closed < meant.Closed || f.Verdict != Reads || ground {
		return nil
	}
	rims := func(f *Figure) bool { return f.Rim == nil || f.Rim.Verdict.Shows() }
	c := &Complement{Sort: other, Count: f.Closed, Stronger: meant.Verdict != Reads || !rims(meant) && rims(&f)}
	score := func(f *Figure) float64 {
		if f.Mass == nil {
			return 0
		}
		return f.Mass.Score
	}
	if !c.Stronger && (p.meanArea(g.between) >= p.meanArea(g.variants[most]) || score(&f) < score(meant)-1e-9 || f.Outline.Score < meant.Outline.Score-1e-9) {
		return nil
	}
	var of []int32
	for _, m := range g.between {
		of = append(of, m.faces...)
	}
	c.Of = p.namesOf(p.fabricsOf(of))
	return c
}

// meanArea is the mean area of figures.
func (p *plainly) meanArea(members []member) float64 {
	sum := 0.0
	for _, m := range judgedOf(members) {
		for _, f := range m.faces {
			sum += quilt.Area(p.Faces[f].Outline)
		}
	}
	return sum / float64(len(judgedOf(members)))
}

// groupOf judges all figures of a group.
func (p *plainly) groupOf(g group) []Figure {
	var list []Figure
	for _, v := range g.variants {
		list = append(list, p.figure(g.sort, v))
	}
	if c := p.complementOf(g, list); c != nil {
		most := 0
		for i := range list {
			if list[i].Count > list[most].Count {
				most = i
			}
		}
		list[most].Complement = c
	}
	if len(list) > 6 {
		pooled := p.pooledOf(g.sort, g.variants)
		for i := range list {
			if list[i].Complement != nil {
				pooled.Complement = list[i].Complement
			}
		}
		list = []Figure{pooled}
	}
	if g.sort == Web || g.sort == Star || g.sort == Wheel {
		if f := p.byTurnsOf(g); f != nil {
			list = append(list, *f)
		}
	}
	return list
}

// figures judges all figures: those found, then sashes and borders.
func (p *plainly) figures() []Figure {
	var list []Figure
	for _, g := range p.study.found {
		list = append(list, p.groupOf(g)...)
	}
	for _, zone := range p.zones() {
		list = append(list, p.frame(zone))
	}
	return list
}

// strays are the scraps that fall out of their pools: as seen beside the middle of the rest of the pool, which is a clear step from the
// middle of what the pool stands against, they are nearer to that, and no clear step from it.
func (p *plainly) strays() []Stray {
	list := []Stray{}
	for _, pool := range p.Credits.Pools {
		var across []int
		for i := range p.seams {
			s := &p.seams[i]
			for _, two := range [2][2]int{{s.a, s.b}, {s.b, s.a}} {
				if s.found && slices.Contains(pool.Fabrics, two[0]) && !slices.Contains(pool.Fabrics, two[1]) {
					across = append(across, two[1])
				}
			}
		}
		if across = distinct(across); len(across) == 0 || len(pool.Fabrics) < 3 {
			continue
		}
		other := p.middle(across)
		for _, f := range pool.Fabrics {
			own := p.middle(slices.DeleteFunc(slices.Clone(pool.Fabrics), func(g int) bool { return g == f }))
			l := p.lightOf(f)
			if math.Abs(own-other) < p.clear || math.Abs(l-other) >= p.clear || math.Abs(l-other) >= math.Abs(l-own) {
				continue
			}
			list = append(list, p.strayOf(f, pool.Name, across, l < own))
		}
	}
	return list
}

func (p *plainly) strayOf(f int, pool string, across []int, darker bool) Stray {
	one := Stray{Fabric: p.Fabrics[f].Name, Pool: pool, Darker: darker, Lightness: p.lightOf(f)}
	var like []int
	for _, g := range across {
		if math.Abs(p.lightOf(g)-p.lightOf(f)) < p.clear {
			like, one.Like = append(like, g), append(one.Like, p.Fabrics[g].Name)
		}
	}
	for _, other := range p.Credits.Pools {
		if amongst(like, other.Fabrics) {
			one.LikePool = other.Name
		}
	}
	for i := range p.Faces {
		if int(p.Faces[i].Fabric) == f && p.zoneOf(int32(i)) == -2 {
			one.Faces = append(one.Faces, int32(i))
		}
	}
	one.Pieces = len(one.Faces)
	return one
}

// middle is the median of fabrics' values.
func (p *plainly) middle(fabrics []int) float64 {
	var l []float64
	for _, f := range fabrics {
		l = append(l, p.lightOf(f))
	}
	slices.Sort(l)
	return (l[(len(l)-1)/2] + l[len(l)/2]) / 2
}

// lossesOf are what figures do not show of what they are meant to, figures first, then colorings that look alike, scraps and the few
// figures of a sort (less than a third) that a scrap spoils, edges in a border, sashes and borders.
func lossesOf(figures []Figure, strays []Stray) []Loss {
	shows := func(v Verdict) bool { return v == Reads || v == OutlineOnly || v == FromAfarOnly || v == RunsOn }
	var ranks [6][]Loss
	for i := range figures {
		f, all := &figures[i], 0
		for _, g := range figures {
			if g.Sort == f.Sort {
				all += g.Count
			}
		}
		part := float64(f.Count) / float64(all)
		scrap := slices.ContainsFunc(strays, func(s Stray) bool { return slices.Contains(slices.Concat(f.Of, f.Against), s.Fabric) })
		l := Loss{Figure: i, Scrap: -1, Verdict: f.Verdict, Part: 1}
		switch {
		case f.Sort == Strips || shows(f.Verdict) && (f.Rim == nil || shows(f.Rim.Verdict)):
		case shows(f.Verdict):
			l.Of, l.Verdict, l.Part = LossOfRim, f.Rim.Verdict, float64(f.Rim.Count)/float64(f.Count)
			ranks[4] = append(ranks[4], l)
		case f.Sort == ByTurns:
			l.Of = LossOfTurns
			ranks[1] = append(ranks[1], l)
		case f.Sort == Sashes || f.Sort == Border:
			l.Of = LossOfFrame
			ranks[5] = append(ranks[5], l)
		default:
			l.Of, l.Part = LossOfFigure, part
			rank := map[bool]int{true: 3}[part < 1.0/3 && scrap]
			ranks[rank] = append(ranks[rank], l)
		}
	}
	for i := range strays {
		ranks[2] = append(ranks[2], Loss{Of: LossOfScrap, Figure: -1, Scrap: i, Verdict: Lost, Part: 1})
	}
	return slices.Concat(ranks[:]...)
}
