package scraps

import "slices"

// Once neighbors differ and the fabrics of each pool are used evenly, fabrics of a pool change places so that none of them crowds in
// one row, column or diagonal. What is made small is the sum of the squares of how often each fabric is in each line: of a line with
// so many places that sum is least where every fabric has its even share.

// The steps of spreading along lines: two places that are compared, or a fabric that is looked at for a place.
const (
	lineSteps      = 30_000 // of all pools together
	lineStepsPlace = 25     // and for each place
	maxKicks       = 200    // how often a pool is shaken that nothing betters any more
	maxShaken      = 150    // places of a pool that is shaken
)

// lineSpread is the places of one pool, and how often each fabric is in each of their lines.
type lineSpread struct {
	*solver
	crowds *crowds
	places []int32
	with   [][]int32 // by fabric: its places
	at     []int32   // by place: where in with
	order  []int     // room for fewest
	sums   []int32   // the same
	left   int       // steps
	made   [][]int32 // places that have changed their fabrics about since the pool was shaken
	change int32     // what that has changed the sum by
}

// spreadLines spreads every pool along its lines. What can then be bettered by no trade is shaken a few times, since several trades may
// better it together.
func (t *solver) spreadLines() {
	last := int32(0)
	for i := range t.places {
		last = max(last, slices.Max(t.places[i].Lines[:]))
	}
	if last == 0 {
		return
	}
	s := lineSpread{solver: t, crowds: newCrowds(last, len(t.marked)), with: make([][]int32, len(t.marked)), at: make([]int32, len(t.places)), sums: make([]int32, len(t.marked)), left: lineSteps + lineStepsPlace*len(t.places)}
	if s.crowds == nil {
		return
	}
	pools := t.pools()
	s.settlePools(pools)
	for i, pool := range pools { // a quarter of the steps is kept for what comes after
		s.each(pool, func() { s.shakeOften(s.left - s.left*3/4/(len(pools)-i)) })
	}
	s.settlePools(pools)
}

// settlePools has the places of all pools trade as long as any lies better for it: a trade in one pool may allow one in another.
func (s *lineSpread) settlePools(pools []poolOf) {
	for better := true; better && s.left > 0; {
		better = false
		for _, pool := range pools {
			s.each(pool, func() { better = s.settleLines() || better })
		}
	}
}

// each takes up a pool for some work.
func (s *lineSpread) each(pool poolOf, work func()) {
	if s.begin(pool.places); len(s.places) > 2 {
		work()
	}
	for _, p := range s.places {
		s.leave(p)
		s.crowds.add(&s.solver.places[p].Lines, s.fabric[p], -1)
	}
}

// begin takes up the places of a pool that lie in lines.
func (s *lineSpread) begin(places []int32) {
	s.places = s.places[:0]
	for _, p := range places {
		if s.solver.places[p].Lines != (Lines{}) {
			s.places = append(s.places, p)
			s.enter(p)
			s.crowds.add(&s.solver.places[p].Lines, s.fabric[p], 1)
		}
	}
}

// enter notes that a place has its fabric.
func (s *lineSpread) enter(p int32) {
	f := s.fabric[p]
	s.at[p] = int32(len(s.with[f]))
	s.with[f] = append(s.with[f], p)
}

// leave takes that back.
func (s *lineSpread) leave(p int32) {
	list := s.with[s.fabric[p]]
	end := list[len(list)-1]
	list[s.at[p]], s.at[end] = end, s.at[p]
	s.with[s.fabric[p]] = list[:len(list)-1]
}

// shakeOften shakes a pool that nothing betters any more, until so many steps are left; what is no better after it is taken back.
func (s *lineSpread) shakeOften(until int) {
	for kick := 0; kick < maxKicks && s.left > until && len(s.places) <= maxShaken; kick++ {
		s.made, s.change = s.made[:0], 0
		if kick%3 == 2 {
			s.dealAnew(s.places[s.chance(kick, 0)%uint64(len(s.places))], kick) // which is no worse
		} else {
			s.shake(kick)
		}
		s.settleLines()
		if s.change > 0 {
			for _, places := range slices.Backward(slices.Clone(s.made)) {
				s.turnAbout(places)
			}
		}
	}
}

// settleLines has places of the pool trade as long as any lies better for it, and says whether any did.
func (s *lineSpread) settleLines() (any bool) {
	for better := true; better; any = any || better {
		better = false
		for _, p := range s.places {
			if s.left < 0 {
				return any
			}
			if q := s.partner(p); q >= 0 {
				s.trade(p, q)
				better = true
			}
		}
	}
	return any
}

// shake has two pairs of places trade, or whole chains of two fabrics, chosen by the deal, whatever that costs.
func (s *lineSpread) shake(kick int) {
	for n, tries := 0, 0; n < 2 && tries < 20; tries++ {
		s.spend(1)
		p := s.places[s.chance(kick, 2*tries)%uint64(len(s.places))]
		q := s.places[s.chance(kick, 2*tries+1)%uint64(len(s.places))]
		switch {
		case s.fabric[p] == s.fabric[q]:
		case kick%3 == 1:
			if s.turnChains(p, q) {
				return
			}
		case s.allows(p, q):
			s.trade(p, q)
			n++
		}
	}
}

// turnChains turns the chains of two fabrics that two places are in, if each fabric is then used as often as before. Neighbors stay
// as unlike as they are.
func (s *lineSpread) turnChains(p, q int32) bool {
	pool := s.solver.places[p].Pool
	s.spend(len(s.places) / 4)
	list, _ := s.chains(pool, s.fabric[p], s.fabric[q], []int32{p, q})
	var both []int32
	surplus := 0
	for i, c := range list {
		if i > 0 && surplus == 0 {
			break
		}
		surplus += c.surplus
		both = append(both, c.places...)
	}
	if len(both) == 0 || surplus != 0 || slices.ContainsFunc(both, func(p int32) bool { return s.solver.places[p].Lines == Lines{} }) {
		return false
	}
	s.turnAbout(both)
	return true
}

// fewPlaces is how many places of a pool are all tried as partners; of more only those of the fabrics that are fewest in its lines.
const (
	fewPlaces   = 64
	fewFabrics  = 3
	fewOfFabric = 24
)

// partner is the place that a place does best to trade with, -1 where none makes the sum less.
func (s *lineSpread) partner(p int32) int32 {
	best, least := int32(-1), int32(0)
	look := func(q int32) {
		if s.fabric[q] == s.fabric[p] {
			return
		}
		s.spend(1)
		if d := s.difference(p, q); d < least && s.allows(p, q) {
			best, least = q, d
		}
	}
	if len(s.places) <= fewPlaces {
		for _, q := range s.places {
			look(q)
		}
		return best
	}
	for _, f := range s.fewest(p) {
		list := s.with[f]
		from := int(s.chance(int(p), f) % uint64(len(list)+1))
		for i := range min(len(list), fewOfFabric) {
			look(list[(from+i)%len(list)])
		}
	}
	return best
}

// fewest are the fabrics that a place may have and that are fewest in its lines, fewer than its own by more than it counts itself.
func (s *lineSpread) fewest(p int32) []int {
	place := &s.solver.places[p]
	s.spend(1 + len(place.Choices)/8)
	clear(s.sums)
	for _, line := range place.Lines {
		if line > 0 {
			for f, n := range s.crowds.counts[int(line)*len(s.sums):][:len(s.sums)] {
				s.sums[f] += n
			}
		}
	}
	own := s.sums[s.fabric[p]] - shared(&place.Lines, &place.Lines)
	s.order = s.order[:0]
	for _, f := range place.Choices {
		n := s.sums[f]
		if n >= own || f == s.fabric[p] || len(s.order) == fewFabrics && n >= s.sums[s.order[fewFabrics-1]] {
			continue
		}
		s.order = append(s.order, f)
		for i := len(s.order) - 1; i > 0 && s.sums[s.order[i-1]] > n; i-- {
			s.order[i], s.order[i-1] = s.order[i-1], s.order[i]
		}
		s.order = s.order[:min(len(s.order), fewFabrics)]
	}
	return s.order
}

// difference is half of what a trade changes the sum of the squares by.
func (s *lineSpread) difference(p, q int32) int32 {
	a, b := s.fabric[p], s.fabric[q]
	l, m := &s.solver.places[p].Lines, &s.solver.places[q].Lines
	return s.crowds.of(l, b) - s.crowds.of(l, a) + shared(l, l) + s.crowds.of(m, a) - s.crowds.of(m, b) + shared(m, m) - 2*shared(l, m)
}

// trade has two places change their fabrics about.
func (s *lineSpread) trade(p, q int32) { s.turnAbout([]int32{p, q}) }

// turnAbout gives places of two fabrics the other one each, and notes that.
func (s *lineSpread) turnAbout(places []int32) {
	s.made = append(s.made, places)
	a := s.fabric[places[0]]
	b := a
	for _, p := range places {
		if b = s.fabric[p]; b != a {
			break
		}
	}
	for _, p := range places {
		s.leave(p)
		s.note(p, -1)
	}
	s.turn(places, a, b)
	for _, p := range places {
		s.enter(p)
		s.note(p, 1)
	}
}

// note counts a place's fabric in its lines, or takes it out, and what that changes the sum by.
func (s *lineSpread) note(p, n int32) {
	l := &s.solver.places[p].Lines
	before := s.crowds.of(l, s.fabric[p])
	s.crowds.add(l, s.fabric[p], n)
	s.change += n*2*before + shared(l, l)
}

func (s *lineSpread) spend(steps int) {
	s.left -= steps
	s.sign.Step(steps)
}

// allows says whether two places may have each other's fabric, with no more neighbours alike than now.
func (t *solver) allows(p, q int32) bool {
	a, b := t.fabric[p], t.fabric[q]
	return t.may(p, b) && t.may(q, a) && t.alikeBut(p, b, q)+t.alikeBut(q, a, p) <= t.alikeBut(p, a, q)+t.alikeBut(q, b, p)
}

// alikeBut is how many neighbours of a place have a fabric, one of them left out.
func (t *solver) alikeBut(place int32, fabric int, without int32) int {
	n := 0
	for _, other := range t.places[place].Neighbours {
		if other != without && t.fabric[other] == fabric {
			n++
		}
	}
	return n
}
