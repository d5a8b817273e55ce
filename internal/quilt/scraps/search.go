package scraps

import "cmp"

// attempt is a place on the way of a search, with the fabrics that were tried there.
type attempt struct {
	place int32
	tried []int
}

// search gives every place of a group a fabric so that no neighbours are alike. It always
// goes on with a place that has the fewest fabrics left, and goes back when one has none.
// Where it finds no such deal no fabric is given, and sure says that there is none. Steps are counted once it goes back:
// on the first way through every place is looked at once.
func (t *solver) search(group []int32) (found, sure bool) {
	queue := newQueue(t, group)
	way := make([]attempt, 0, len(group))
	for back := 0; queue.Len() > 0; {
		way = append(way, attempt{place: queue.take()})
		for {
			last := &way[len(way)-1]
			fabric, ok := t.best(last.place, last.tried)
			if ok {
				last.tried = append(last.tried, fabric)
				t.put(last.place, fabric)
				queue.around(last.place)
				break
			}
			queue.giveBack(last.place)
			if way = way[:len(way)-1]; len(way) == 0 {
				return false, true
			}
			t.take(way[len(way)-1].place)
			queue.around(way[len(way)-1].place)
			t.left -= 20 + len(t.places[way[len(way)-1].place].Choices)/4
			if back++; back > MaxSteps || t.left < 0 {
				t.giveUp(way[:len(way)-1])
				return false, false
			}
		}
	}
	return true, true
}

// giveUp takes back every fabric that a search gave.
func (t *solver) giveUp(way []attempt) {
	for _, w := range way {
		t.take(w.place)
	}
}

// best is the fabric that a place may still get and that is used least; of those used alike
// the deal chooses. It is none of those that were tried.
func (t *solver) best(place int32, tried []int) (int, bool) {
	t.mark(place, tried)
	used := t.used[t.seats[place].pool]
	best, most := -1, uint64(0)
	for _, f := range t.places[place].Choices {
		if t.marked[f] == t.marks || best >= 0 && used[f] > used[best] {
			continue
		}
		if chance := t.chance(int(place), f); best < 0 || used[f] < used[best] || chance < most {
			best, most = f, chance
		}
	}
	return best, best >= 0
}

// mark marks the fabrics that a place cannot get: those barred, tried or beside it.
func (t *solver) mark(place int32, tried []int) {
	t.sign.Step(4)
	t.marks++
	for _, f := range t.seats[place].barred {
		t.marked[f] = t.marks
	}
	for _, f := range tried {
		t.marked[f] = t.marks
	}
	for _, n := range t.places[place].Neighbours {
		if f := t.fabric[n]; f >= 0 {
			t.marked[f] = t.marks
		}
	}
}

// compromise gives every place of a group a fabric where neighbours cannot all differ: one
// by one the fabric that fewest neighbours have, then as long as a change leaves fewer
// neighbours alike.
func (t *solver) compromise(group []int32) {
	for _, p := range group {
		t.put(p, t.leastBad(p))
	}
	for range 50 {
		changed := false
		for _, p := range group {
			t.sign.Step(4)
			was := t.fabric[p]
			if t.alike(p, was) == 0 {
				continue
			}
			t.take(p)
			now := t.leastBad(p)
			if t.alike(p, now) >= t.alike(p, was) {
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
func (t *solver) leastBad(place int32) int {
	used := t.used[t.seats[place].pool]
	best, least, most := -1, 0, uint64(0)
	t.mark(place, nil) // a fabric that is not marked is no neighbor's
	for _, f := range t.places[place].Choices {
		alike := 0
		if t.marked[f] == t.marks {
			if !t.may(place, f) {
				continue
			}
			alike = t.alike(place, f)
		}
		if best >= 0 && cmp.Or(cmp.Compare(alike, least), cmp.Compare(used[f], used[best])) > 0 {
			continue
		}
		if chance := t.chance(int(place), f); best < 0 || alike < least || used[f] < used[best] || chance < most {
			best, least, most = f, alike, chance
		}
	}
	return best
}
