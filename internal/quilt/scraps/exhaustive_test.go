package scraps_test

import (
	"maps"
	"math/bits"

	"eighthturn/internal/quilt/scraps"
)

// exhaustive looks through all deals, written without package deal: each place's fabrics are
// the bits of a number, and giving one strikes it out at the neighbours.
type exhaustive struct {
	places []scraps.Place
	steps  int
	most   int // steps before it gives up
	// limits holds for each pool how often a fabric may and must be used; nil for no limits.
	limits map[int]limit
	used   map[int]map[int]int
}

type limit struct{ least, most int }

// verdict is what a search came to.
type verdict uint8

const (
	none verdict = iota
	some
	unknown // it took too long
)

// domain is what a place may get: its choices that are not barred, or all of them where all
// are barred.
func domain(p scraps.Place) uint64 {
	all, open := uint64(0), uint64(0)
	for _, f := range p.Choices {
		all |= 1 << f
	}
	open = all
	for _, f := range p.Barred {
		open &^= 1 << f
	}
	if open == 0 {
		return all
	}
	return open
}

// exists says whether the places have a deal without neighbours alike, within limits.
func exists(places []scraps.Place, limits map[int]limit, most int) verdict {
	e := &exhaustive{places: places, most: most, limits: limits, used: map[int]map[int]int{}}
	domains := make([]uint64, len(places))
	for i, p := range places {
		domains[i] = domain(p)
		e.used[p.Pool] = map[int]int{}
	}
	return e.from(domains, make([]bool, len(places)))
}

func (e *exhaustive) from(domains []uint64, given []bool) verdict {
	if e.steps++; e.steps > e.most {
		return unknown
	}
	at := narrowest(domains, given)
	switch {
	case !e.enough(given):
		return none
	case at < 0:
		return some
	}
	given[at] = true
	defer func() { given[at] = false }()
	pool := e.places[at].Pool
	for left := domains[at]; left != 0; left &= left - 1 {
		f := bits.TrailingZeros64(left)
		if l, ok := e.limits[pool]; ok && e.used[pool][f] == l.most {
			continue
		}
		next := append([]uint64(nil), domains...)
		for _, n := range e.places[at].Neighbours {
			if !given[n] {
				next[n] &^= 1 << f
			}
		}
		e.used[pool][f]++
		v := e.from(next, given)
		e.used[pool][f]--
		if v != none {
			return v
		}
	}
	return none
}

// narrowest is the place with the fewest fabrics left, -1 where all have theirs.
func narrowest(domains []uint64, given []bool) int {
	at := -1
	for i, d := range domains {
		if !given[i] && (at < 0 || bits.OnesCount64(d) < bits.OnesCount64(domains[at])) {
			at = i
		}
	}
	return at
}

// enough says whether the places left can still use every fabric of a pool with limits as
// often as it must be.
func (e *exhaustive) enough(given []bool) bool {
	for pool, l := range e.limits {
		left := 0
		for i, p := range e.places {
			if p.Pool == pool && !given[i] {
				left++
			}
		}
		for _, f := range fabricsOf(e.places, pool) {
			left -= max(0, l.least-e.used[pool][f])
		}
		if left < 0 {
			return false
		}
	}
	return true
}

// fabricsOf is the fabrics that places of a pool may get at all, each once.
func fabricsOf(places []scraps.Place, pool int) []int {
	all := uint64(0)
	for _, p := range places {
		if p.Pool == pool {
			all |= domain(p)
		}
	}
	var list []int
	for ; all != 0; all &= all - 1 {
		list = append(list, bits.TrailingZeros64(all))
	}
	return list
}

// minSpread is how evenly one pool can be dealt at best: the least difference between the
// fabric used most and the one used least, in any deal without neighbours alike in which
// the other pools keep within limits; -1 if there is no such deal.
func minSpread(places []scraps.Place, pool int, others map[int]limit) int {
	count := 0
	for _, p := range places {
		if p.Pool == pool {
			count++
		}
	}
	share := count / max(1, len(fabricsOf(places, pool)))
	limits := maps.Clone(others)
	if limits == nil {
		limits = map[int]limit{}
	}
	for spread := range count + 1 {
		for least := max(0, share-spread); least <= share; least++ {
			limits[pool] = limit{least, least + spread}
			if exists(places, limits, 1<<40) == some {
				return spread
			}
		}
	}
	return -1
}

// useOf is how often the fabrics of a pool were used.
func useOf(places []scraps.Place, fabrics []int, pool int) limit {
	used := map[int]int{}
	for i, p := range places {
		if p.Pool == pool {
			used[fabrics[i]]++
		}
	}
	l := limit{least: len(places)}
	for _, f := range fabricsOf(places, pool) {
		l.least, l.most = min(l.least, used[f]), max(l.most, used[f])
	}
	return l
}

// fewestAlike is how many pairs of neighbours must be alike in the best of all deals.
func fewestAlike(places []scraps.Place) int {
	fabrics, best := make([]int, len(places)), len(places)*len(places)
	var from func(at, alike int)
	from = func(at, alike int) {
		if alike >= best {
			return
		}
		if at == len(places) {
			best = alike
			return
		}
		for left := domain(places[at]); left != 0; left &= left - 1 {
			fabrics[at] = bits.TrailingZeros64(left)
			more := 0
			for _, n := range places[at].Neighbours {
				if int(n) < at && fabrics[n] == fabrics[at] {
					more++
				}
			}
			from(at+1, alike+more)
		}
	}
	from(0, 0)
	return best
}
