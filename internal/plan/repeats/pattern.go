package repeats

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
)

// pattern is what a strip may hold: its beginning within the repeat, its width, and its pieces from left to right.
type pattern struct {
	phase  measure.NM
	height measure.NM
	pieces []Placed // By.Y from the strip's beginning
	sorts  []int    // of each
	counts []int    // of each sort
}

// mostShared is up to how many sorts every choice of them is tried in one strip.
const mostShared = 3

// rows finds all patterns that are worth having: each sort alone, and those of several sorts that give as much as can be of each.
func (f *fitting) rows() {
	for first := range f.sorts {
		f.pattern(first, []int{first})
	}
	if len(f.sorts) <= mostShared {
		f.choices(nil, 0)
		return
	}
	for first := range f.sorts {
		f.within(first)
	}
}

// choices goes through all sets of two or three sorts, and has each of a set begin the strip in turn.
func (f *fitting) choices(set []int, from int) {
	if len(set) > 1 {
		for _, first := range set {
			f.pattern(first, set)
		}
	}
	for n := from; n < len(f.sorts); n++ {
		f.choices(append(slices.Clone(set), n), n+1)
	}
}

// within has a sort begin strips of every width that another sort asks for, each with all that fits between its edges.
func (f *fitting) within(first int) {
	reach := func(n int) measure.NM {
		return mod(f.sorts[n].phase-f.sorts[first].phase, f.cloth.Along) + f.sorts[n].height()
	}
	order := make([]int, len(f.sorts))
	for n := range order {
		order[n] = n
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(reach(a), reach(b)) })
	begins := slices.Index(order, first)
	for last := range order {
		if last > 0 && last >= begins && (last+1 == len(order) || reach(order[last]) < reach(order[last+1])) {
			f.pattern(first, order[:last+1])
		}
	}
}

// spot is a place in a strip where a piece may be cut.
type spot struct {
	sort        int
	piece       Placed
	left, right measure.NM
	outline     []measure.Point
}

// pattern adds the patterns of a strip that some sorts share; the first of them begins it.
func (f *fitting) pattern(first int, set []int) {
	begin := &f.sorts[first]
	p := pattern{phase: begin.phase}
	var spots []spot
	for _, n := range set {
		s := &f.sorts[n]
		down := mod(s.phase-begin.phase, f.cloth.Along)
		p.height = max(p.height, down+s.height())
		for _, x := range f.spread(s) {
			at := spot{sort: n, piece: Placed{s.piece, measure.Point{X: x, Y: down - s.low.Y}}, left: x + s.low.X, right: x + s.high.X}
			at.outline = at.piece.Outline(f.pieces)
			spots = append(spots, at)
		}
	}
	p.height = f.marked(p.height)
	slices.SortStableFunc(spots, func(a, b spot) int { return cmp.Or(cmp.Compare(a.left, b.left), cmp.Compare(a.sort, b.sort)) })
	for _, end := range f.choose(spots) {
		q := p
		q.counts = end.counts
		for c := end; c.from != nil; c = c.from {
			if c.spot >= 0 {
				q.pieces, q.sorts = append(q.pieces, spots[c.spot].piece), append(q.sorts, spots[c.spot].sort)
			}
		}
		slices.Reverse(q.pieces)
		slices.Reverse(q.sorts)
		if len(q.pieces) > 0 {
			f.patterns = append(f.patterns, q)
		}
	}
}

// spread are all places that a piece may have in a strip, where the print repeats across; else those side by side.
func (f *fitting) spread(s *sort) []measure.NM {
	if f.cloth.Across == 0 {
		return f.places(s)
	}
	all := *s
	all.step = f.cloth.Across
	return f.places(&all)
}

// chosen is what is chosen of the spots so far.
type chosen struct {
	counts []int // of each sort
	total  int
	active []int // spots that may yet be in the way
	spot   int   // the last one chosen, -1 where it was left out
	from   *chosen
}

// choose goes through the spots from left to right and takes or leaves each; of what takes as many of each sort and is in the way
// alike one is kept, and at the end what gives no more of anything than another is dropped.
func (f *fitting) choose(spots []spot) []*chosen {
	list := []*chosen{{counts: make([]int, len(f.sorts)), spot: -1}}
	for n := range spots {
		next := make([]*chosen, 0, 2*len(list))
		for _, c := range list {
			f.left--
			active := slices.DeleteFunc(slices.Clone(c.active), func(i int) bool { return spots[i].right <= spots[n].left })
			if !slices.ContainsFunc(active, func(i int) bool { return overlap(spots[i].outline, spots[n].outline) }) {
				taken := &chosen{counts: slices.Clone(c.counts), active: append(slices.Clone(active), n), spot: n, from: c, total: c.total + 1}
				taken.counts[spots[n].sort]++
				next = append(next, taken)
			}
			next = append(next, &chosen{c.counts, c.total, active, -1, c})
		}
		list = f.thinned(next)
	}
	return unbeaten(list)
}

// mostChosen is how many choices are gone on with from spot to spot; once the steps are used up it is one.
const mostChosen = 100

// thinned leaves one of those that are alike, and of too many those with the most pieces.
func (f *fitting) thinned(list []*chosen) []*chosen {
	slices.SortStableFunc(list, func(a, b *chosen) int {
		return cmp.Or(slices.Compare(a.active, b.active), slices.Compare(a.counts, b.counts))
	})
	list = slices.CompactFunc(list, func(a, b *chosen) bool {
		return slices.Equal(a.active, b.active) && slices.Equal(a.counts, b.counts)
	})
	most := mostChosen
	if f.left < 0 {
		most = 1
	}
	if len(list) > most {
		slices.SortStableFunc(list, func(a, b *chosen) int { return cmp.Compare(b.total, a.total) })
		list = list[:most]
	}
	return list
}

// unbeaten leaves those that give more of something than any other.
func unbeaten(list []*chosen) []*chosen {
	return slices.DeleteFunc(slices.Clone(list), func(c *chosen) bool {
		return slices.ContainsFunc(list, func(d *chosen) bool { return c != d && beats(d.counts, c.counts) })
	})
}

// beats says whether one gives no less of anything than another, and is not the same; of equal ones neither beats the other.
func beats(a, b []int) bool {
	more := false
	for i := range a {
		if a[i] < b[i] {
			return false
		}
		more = more || a[i] > b[i]
	}
	return more
}

// overlap says whether two convex outlines overlap by more than the tolerance: whether no side of either has the other beyond it.
func overlap(a, b []measure.Point) bool { return !parted(a, b) && !parted(b, a) }

func parted(a, b []measure.Point) bool {
	p := a[len(a)-1]
	for _, q := range a {
		side := measure.Vec{X: float64(q.X - p.X), Y: float64(q.Y - p.Y)}
		long := side.Length()
		if !slices.ContainsFunc(b, func(c measure.Point) bool {
			return side.Cross(measure.Vec{X: float64(c.X - p.X), Y: float64(c.Y - p.Y)}) > 2*float64(measure.Tolerance)*long
		}) && long > 0 {
			return true
		}
		p = q
	}
	return false
}
