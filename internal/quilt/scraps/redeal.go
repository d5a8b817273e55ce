package scraps

import (
	"cmp"
	"slices"
)

// redeal is a few places of a pool that touch, dealt their fabrics anew: that finds what neither a trade nor a chain reaches, where
// few fabrics leave neighbors little choice.
type redeal struct {
	*lineSpread
	places  []int32
	left    []int // by fabric: how often it is still to be dealt
	order   []int // the fabrics, in the order in which they are tried
	alike   int   // how many more neighbors may be alike
	sum     int32 // what the places dealt so far add to the squares
	least   int32 // what the best deal adds
	best    []int // its fabrics; nil for none yet
	fabrics []int
	steps   int
}

// Of a redeal.
const (
	maxRedealSteps = 1_500
)

// dealAnew deals the window around a place anew, as little crowded as can be with no more neighbors alike.
func (s *lineSpread) dealAnew(p int32, kick int) {
	window := window{solver: s.solver}
	r := redeal{lineSpread: s, left: make([]int, len(s.marked)), steps: min(maxRedealSteps, s.left)}
	for _, q := range window.touching(p) {
		if s.solver.places[q].Pool == s.solver.places[p].Pool && s.solver.places[q].Lines != (Lines{}) {
			r.places = append(r.places, q)
		}
	}
	was, before := make([]int, len(r.places)), s.change
	for i, q := range r.places {
		was[i] = s.fabric[q]
		r.left[was[i]]++
		r.alike += s.solver.alike(q, was[i])
		s.leave(q)
		s.note(q, -1)
		s.take(q)
	}
	r.order = slices.Compact(slices.Sorted(slices.Values(was)))
	slices.SortFunc(r.order, func(a, b int) int { return cmp.Compare(s.chance(kick, a), s.chance(kick, b)) })
	r.fabrics, r.least = make([]int, len(r.places)), before-s.change+1
	r.from(0)
	s.spend(min(maxRedealSteps, s.left) - r.steps)
	if r.best == nil {
		r.best = was
	}
	for i, q := range r.places {
		s.put(q, r.best[i])
		s.enter(q)
		s.note(q, 1)
	}
}

// from deals the places from the i-th on.
func (r *redeal) from(i int) {
	if i == len(r.places) {
		r.best, r.least = slices.Clone(r.fabrics), r.sum
		return
	}
	p := r.places[i]
	l := &r.solver.places[p].Lines
	for _, f := range r.order {
		if r.steps--; r.steps < 0 {
			return
		}
		if r.left[f] == 0 || !r.may(p, f) {
			continue
		}
		alike, more := r.solver.alike(p, f), 2*r.crowds.of(l, f)+shared(l, l)
		if alike > r.alike || r.sum+more >= r.least {
			continue
		}
		r.left[f]--
		r.alike -= alike
		r.sum += more
		r.fabrics[i], r.fabric[p] = f, f
		r.crowds.add(l, f, 1)
		r.from(i + 1)
		r.crowds.add(l, f, -1)
		r.fabric[p] = -1
		r.sum -= more
		r.alike += alike
		r.left[f]++
	}
}
