package scraps

import (
	"cmp"
	"slices"

	"eighthturn/internal/stop"
)

// allotment is which webs are cut from which set.
type allotment struct {
	*StripSet
	sign   *stop.Sign
	sets   [][]int
	sewn   int
	loads  [][2]int // by set: the wedges that webs take
	of     []int    // by web: its set, -1 while it has none
	shares map[int][]Part
	mixed  int // webs that are cut from several sets
	crowds *crowds
	list   []int // room for counted
	left   int   // steps that bettering may still take
}

// burden is what an allotment is to have little of, the worst first.
type burden struct{ beside, touches, like, crowding int }

func (b burden) less(c burden) bool {
	return cmp.Or(cmp.Compare(b.beside, c.beside), cmp.Compare(b.touches, c.touches), cmp.Compare(b.like, c.like), cmp.Compare(b.crowding, c.crowding)) < 0
}

func (b burden) plus(c burden) burden {
	return burden{b.beside + c.beside, b.touches + c.touches, b.like + c.like, b.crowding + c.crowding}
}

// maxAllotSteps is how much work bettering an allotment may be: two webs that are compared, or a neighbor that is looked at.
const maxAllotSteps = 40_000

// allot gives every web a set, each set sewn so often: whole webs as many as there is room for, the others from what is left. If
// it is known how all of them find room, they do.
func allot(sign *stop.Sign, s *StripSet, sets [][]int, sewn int, whole []int) *allotment {
	order := s.largestFirst()
	a := newAllotment(sign, s, sets, sewn)
	a.place(order)
	a.finish()
	if whole == nil && a.mixed > 0 {
		slices.Reverse(order) // small webs leave room for more that are whole
		b := newAllotment(sign, s, sets, sewn)
		b.place(order)
		a = a.orBetter(b)
	}
	if whole != nil && a.mixed > 0 {
		a = a.orBetter(s.placed(sign, sets, sewn, whole))
	}
	for pairs := 0; whole != nil && pairs < a.all().beside; pairs++ {
		if of := s.apart(sign, sewn, len(sets), pairs); of != nil {
			a = a.orBetter(s.placed(sign, sets, sewn, of))
			break
		}
	}
	return a
}

// placed is an allotment of webs whose sets are known.
func (s *StripSet) placed(sign *stop.Sign, sets [][]int, sewn int, of []int) *allotment {
	a := newAllotment(sign, s, sets, sewn)
	for w, set := range of {
		a.put(w, set)
	}
	return a
}

// finish betters an allotment and cuts what found no room from several sets.
func (a *allotment) finish() {
	a.improve()
	a.useAll()
	a.mix()
}

// useAll gives sets that no web is cut from one of another set, where that makes no neighbors alike.
func (a *allotment) useAll() {
	for s, load := range a.loads {
		if load != ([2]int{}) {
			continue
		}
		for w, was := range a.of {
			a.sign.Step(1)
			if was < 0 || a.loads[was] == a.Webs[w].Wedges {
				continue
			}
			a.take(w)
			if b := a.burden(w, s); b.beside+b.touches == 0 {
				a.put(w, s)
				break
			}
			a.put(w, was)
		}
	}
}

// orBetter is an allotment, or another once it is finished if that is better.
func (a *allotment) orBetter(b *allotment) *allotment {
	b.finish()
	if cmp.Compare(b.mixed, a.mixed) < 0 || b.mixed == a.mixed && b.all().less(a.all()) {
		return b
	}
	return a
}

func newAllotment(sign *stop.Sign, s *StripSet, sets [][]int, sewn int) *allotment {
	a := &allotment{StripSet: s, sign: sign, sets: sets, sewn: sewn, loads: make([][2]int, len(sets)), of: make([]int, len(s.Webs)), shares: map[int][]Part{}, left: maxAllotSteps}
	lines, fabrics := int32(0), 0
	for i := range s.Webs {
		a.of[i] = -1
		lines = max(lines, slices.Max(s.Webs[i].Lines[:]))
	}
	for _, pool := range s.Pools {
		fabrics = max(fabrics, slices.Max(pool)+1)
	}
	a.crowds = newCrowds(lines, 2*fabrics)
	return a
}

// place gives each web a set of its own, in an order; as long as one has room.
func (a *allotment) place(order []int) {
	for _, w := range order {
		if s := a.bestFor(w); s >= 0 {
			a.put(w, s)
		}
	}
}

// maxTried is how many sets that have room are looked at for a web.
const maxTried = 30

// bestFor is the set with room for a web that burdens it least, the emptiest of those alike; -1 if none has room. It begins to look
// at another set for each web, and at more than a few only where neighbors have them all.
func (a *allotment) bestFor(w int) int {
	best, tried := -1, 0
	var least burden
	for i := range a.sets {
		s := (i + w) % len(a.sets)
		a.sign.Step(1)
		if !a.holds(sum(a.loads[s], a.Webs[w].Wedges), a.sewn) {
			continue
		}
		b := a.burden(w, s)
		if best < 0 || b.less(least) || b == least && a.lighter(s, best) {
			best, least = s, b
		}
		if tried++; tried >= maxTried && least.beside == 0 {
			break
		}
	}
	return best
}

// lighter says whether fewer wedges are taken from a set than from another.
func (a *allotment) lighter(s, t int) bool {
	return a.loads[s][0]+a.loads[s][1] < a.loads[t][0]+a.loads[t][1]
}

// burden is what a web would add if it were cut from a set.
func (a *allotment) burden(w, s int) burden {
	var b burden
	web := &a.Webs[w]
	for _, n := range web.Beside {
		b = b.plus(a.meeting(n, s, a.of[n.Web]))
		if n.Mine < 0 && a.of[n.Web] >= 0 {
			b.like += a.like(w, s, int(n.Web), a.of[n.Web])
		}
	}
	for _, v := range web.Next {
		if a.of[v] >= 0 {
			b.like += a.like(w, s, int(v), a.of[v])
		}
	}
	for _, m := range web.Barred {
		if a.sets[s][m.Strip] == m.Fabric {
			b.touches++
		}
	}
	if a.crowds != nil {
		for _, f := range a.counted(w, s) {
			b.crowding += int(a.crowds.of(&web.Lines, f))
		}
	}
	return b
}

// like is how many rings of two webs from two sets are of one fabric, the widest twice.
func (a *allotment) like(w, s, v, t int) (n int) {
	for i := range a.Strips {
		if f := a.ring(w, s, i); a.Strips[i] >= 0 && f == a.ring(v, t, i) {
			n++
			if i == 0 {
				n++
			}
		}
	}
	return n
}

// ring is the fabric of a ring of a web from a set, from the wide ends of most of its wedges.
func (a *allotment) ring(w, s, ring int) int {
	set := a.sets[s]
	if a.Webs[w].Wedges[1] > a.Webs[w].Wedges[0] {
		ring = len(set) - 1 - ring
	}
	return set[ring]
}

// counted is what is counted in the lines of a web from a set: its fabrics, and once more the one of its widest ring.
func (a *allotment) counted(w, s int) []int {
	a.list = a.list[:0]
	for _, f := range a.sets[s] {
		if f >= 0 {
			a.list = append(a.list, f)
		}
	}
	if f := a.ring(w, s, 0); f >= 0 {
		a.list = append(a.list, a.crowds.fabrics/2+f)
	}
	return a.list
}

// meeting is the burden of two webs beside each other from two sets, -1 for none.
func (a *allotment) meeting(n Near, s, other int) burden {
	var b burden
	if other < 0 {
		return b
	}
	switch {
	case n.Mine < 0:
		if s == other {
			b.beside = 1
		}
	case a.sets[s][n.Mine] >= 0 && a.sets[s][n.Mine] == a.sets[other][n.Theirs]:
		b.touches = 1
	}
	return b
}

func (a *allotment) put(w, s int) {
	a.of[w] = s
	a.loads[s] = sum(a.loads[s], a.Webs[w].Wedges)
	a.count(w, s, 1)
}

func (a *allotment) take(w int) {
	s := a.of[w]
	a.of[w] = -1
	a.loads[s][0] -= a.Webs[w].Wedges[0]
	a.loads[s][1] -= a.Webs[w].Wedges[1]
	a.count(w, s, -1)
}

// count notes where the fabrics of a set lie.
func (a *allotment) count(w, s int, n int32) {
	if a.crowds == nil {
		return
	}
	for _, f := range a.counted(w, s) {
		a.crowds.add(&a.Webs[w].Lines, f, n)
	}
}

// improve has webs change their sets about, two of a size at a time or one for a set with room, as long as that burdens the quilt less.
func (a *allotment) improve() {
	for changed := true; changed; {
		changed = false
		for w := range a.Webs {
			if a.of[w] < 0 {
				continue
			}
			if a.moves(w) || a.trades(w) {
				changed = true
			}
			if a.left < 0 {
				return
			}
		}
	}
}

// moves gives a web another set that has room, if that is better.
func (a *allotment) moves(w int) bool {
	was := a.of[w]
	a.take(w)
	a.spend(len(a.sets))
	now := a.bestFor(w)
	if now < 0 || !a.burden(w, now).less(a.burden(w, was)) {
		now = was
	}
	a.put(w, now)
	return now != was
}

// trades has a web change its set with that of another of as many wedges, the first with which that is better.
func (a *allotment) trades(w int) bool {
	for v := range w {
		if a.of[v] < 0 || a.of[v] == a.of[w] || a.Webs[v].Wedges != a.Webs[w].Wedges {
			continue
		}
		a.spend(1 + (len(a.Webs[w].Beside)+len(a.Webs[v].Beside)+len(a.Webs[w].Next)+len(a.Webs[v].Next))/4)
		if a.left < 0 {
			return false
		}
		s, t := a.of[w], a.of[v]
		a.take(w)
		a.take(v)
		before := a.both(w, v, s, t)
		after := a.both(w, v, t, s)
		if after.less(before) {
			a.put(w, t)
			a.put(v, s)
			return true
		}
		a.put(w, s)
		a.put(v, t)
	}
	return false
}

// both is the burden of two webs that have no set yet, from one set each.
func (a *allotment) both(w, v, s, t int) burden {
	b := a.burden(w, s)
	a.put(w, s)
	b = b.plus(a.burden(v, t))
	a.take(w)
	return b
}

func (a *allotment) spend(steps int) {
	a.left -= steps
	a.sign.Step(steps)
}

// mix cuts the webs that found no set with room for all of their wedges from what several sets have left, each from as few as can be.
func (a *allotment) mix() {
	for w := range a.Webs {
		if a.of[w] >= 0 {
			continue
		}
		left := a.Webs[w].Wedges
		for left != ([2]int{}) {
			s, part := a.mostLeft(w, left)
			a.shares[w] = withPart(a.shares[w], Part{s, part})
			a.loads[s] = sum(a.loads[s], part)
			left[0] -= part[0]
			left[1] -= part[1]
		}
		if len(a.shares[w]) > 1 {
			a.mixed++
		}
	}
}

// most is how often the set that gives most is sewn.
func (a *allotment) most() int {
	sewn := 1
	for _, load := range a.loads {
		for !a.holds(load, sewn) {
			sewn++
		}
	}
	return sewn
}

// withPart is parts of a web and one more; those from one set are one.
func withPart(parts []Part, more Part) []Part {
	for i := range parts {
		if parts[i].Set == more.Set {
			parts[i].Wedges = sum(parts[i].Wedges, more.Wedges)
			return parts
		}
	}
	return append(parts, more)
}

// mostLeft is the set that gives most of some wedges of a web, and how many; where none is left one set is sewn once more.
func (a *allotment) mostLeft(w int, wanted [2]int) (best int, most [2]int) {
	var least burden
	for s := range a.sets {
		a.sign.Step(1)
		part := a.leftOf(s, wanted)
		more := part[0] + part[1] - most[0] - most[1]
		if b := a.burden(w, s); more > 0 || more == 0 && b.less(least) {
			best, most, least = s, part, b
		}
	}
	if most == ([2]int{}) {
		return best, wanted
	}
	return best, most
}

// leftOf is how many of some wedges a set still gives.
func (a *allotment) leftOf(s int, wanted [2]int) [2]int {
	var part [2]int
	for way := range part {
		for part[way] < wanted[way] {
			more := part
			more[way]++
			if !a.holds(sum(a.loads[s], more), a.sewn) {
				break
			}
			part = more
		}
	}
	return part
}

// parts is by web the sets that its wedges come from.
func (a *allotment) parts() [][]Part {
	list := make([][]Part, len(a.Webs))
	for w := range list {
		if list[w] = a.shares[w]; a.of[w] >= 0 {
			list[w] = []Part{{a.of[w], a.Webs[w].Wedges}}
		}
	}
	return list
}

// all is the burden of all webs, each pair of neighbors once, without what is only crowded.
func (a *allotment) all() burden {
	var b burden
	parts := a.parts()
	for w := range a.Webs {
		for _, p := range parts[w] {
			for _, n := range a.Webs[w].Beside {
				if int(n.Web) > w {
					continue
				}
				for _, q := range parts[n.Web] {
					b = b.plus(a.meeting(n, p.Set, q.Set))
				}
			}
			for _, m := range a.Webs[w].Barred {
				if a.sets[p.Set][m.Strip] == m.Fabric {
					b.touches++
				}
			}
		}
	}
	return b
}
