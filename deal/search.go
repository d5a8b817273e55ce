package deal

import "cmp"

// try is a place on the way of a search, with the fabrics that are left to be tried.
type try struct {
	place int32
	left  []int
}

// search gives every place of a group a fabric so that no neighbours are alike. It always
// goes on with a place that has the fewest fabrics left, and goes back when one has none.
// It is false, with no fabric given, if there is no such deal or the steps ran out.
func (t *table) search(group []int32) bool {
	t.steps = 0
	queue := newQueue(t, group)
	var way []try
	for {
		place, found := queue.next()
		if !found {
			return true
		}
		way = append(way, try{place, t.open(place)})
		for len(way[len(way)-1].left) == 0 {
			way = way[:len(way)-1]
			if len(way) == 0 {
				return false
			}
			t.take(way[len(way)-1].place)
			queue.back(way[len(way)-1].place)
		}
		if t.steps++; t.steps > MaxSteps {
			t.giveUp(way)
			return false
		}
		last := &way[len(way)-1]
		fabric := last.left[0]
		last.left = last.left[1:]
		t.put(last.place, fabric)
		queue.done(last.place)
	}
}

// giveUp takes back every fabric that a search gave.
func (t *table) giveUp(way []try) {
	for _, w := range way {
		if t.fabric[w.place] >= 0 {
			t.take(w.place)
		}
	}
}

// queue finds the place with the fewest fabrics left; of those alike the one with more
// neighbours that have none yet, then the first in the group.
type queue struct {
	t       *table
	group   []int32
	waiting []int32 // places beside one that has its fabric: only they can be short of fabrics
	beside  []int   // by place: how many neighbours have a fabric
	fresh   int     // where to look for a place beside none
}

func newQueue(t *table, group []int32) *queue {
	return &queue{t: t, group: group, beside: make([]int, len(t.places))}
}

// next is the place to go on with.
func (q *queue) next() (int32, bool) {
	best, found := int32(0), false
	bestFreedom, kept := 0, q.waiting[:0]
	for _, p := range q.waiting {
		if q.t.fabric[p] >= 0 || q.beside[p] == 0 {
			continue
		}
		kept = append(kept, p)
		freedom := q.t.freedom(p)
		if !found || cmp.Or(cmp.Compare(freedom, bestFreedom), cmp.Compare(q.beside[best], q.beside[p]), cmp.Compare(p, best)) < 0 {
			best, bestFreedom, found = p, freedom, true
		}
	}
	q.waiting = kept
	if found {
		return best, true
	}
	for _, p := range q.group[q.fresh:] {
		if q.t.fabric[p] < 0 {
			return p, true
		}
		q.fresh++
	}
	return 0, false
}

// done notes that a place has its fabric.
func (q *queue) done(place int32) {
	for _, n := range q.t.places[place].Neighbours {
		if q.beside[n]++; q.t.fabric[n] < 0 && q.beside[n] == 1 {
			q.waiting = append(q.waiting, n)
		}
	}
}

// back notes that a place has lost its fabric again.
func (q *queue) back(place int32) {
	for _, n := range q.t.places[place].Neighbours {
		q.beside[n]--
	}
	if q.beside[place] > 0 {
		q.waiting = append(q.waiting, place)
	}
	q.fresh = 0
}

// compromise gives every place of a group a fabric where neighbours cannot all differ: one
// by one the fabric that fewest neighbours have, then as long as a change leaves fewer
// neighbours alike.
func (t *table) compromise(group []int32) {
	for _, p := range group {
		t.put(p, t.leastBad(p))
	}
	for range 50 {
		changed := false
		for _, p := range group {
			was := t.fabric[p]
			if t.blocked[p][was] == 0 {
				continue
			}
			t.take(p)
			now := t.leastBad(p)
			if t.blocked[p][now] >= t.blocked[p][was] {
				now = was
			}
			t.put(p, now)
			changed = changed || now != was
		}
		if !changed {
			return
		}
	}
}

// leastBad is the fabric that fewest neighbours of a place have; of those alike the one
// used least, then by the deal.
func (t *table) leastBad(place int32) int {
	pool := t.places[place].Pool
	best := -1
	for _, f := range t.allowed[place] {
		if best < 0 || cmp.Or(
			cmp.Compare(t.blocked[place][f], t.blocked[place][best]),
			cmp.Compare(t.used[use{pool, f}], t.used[use{pool, best}]),
			cmp.Compare(t.chance(int(place), f), t.chance(int(place), best))) < 0 {
			best = f
		}
	}
	return best
}
