package scraps

import (
	"cmp"
	"slices"
)

// A window is a few places that touch. All of their deals are gone through while the other places stay as they are: that finds
// what no chain of two fabrics reaches, where each is held by a place that may not have the other.

// maxWindow is how many places a window has.
const maxWindow = 12

// windowWork is how much work the windows of one pool may be, all in all, and that of one window: a fabric looked at for a
// place is one.
const (
	windowWork    = 40_000
	oneWindowWork = 4_000
)

// window is one that is gone through.
type window struct {
	*solver
	pools   []poolOf
	places  []int32
	before  int // what the squares were
	squares int // what they are with the places dealt so far
	alike   int // how many more neighbors may be alike
	left    int // work that may still be done
	last    int // what is left when this window is given up
}

// lookThrough deals windows anew as long as that leaves a pool that is uneven more even: one around each place.
func (t *solver) lookThrough(pools []poolOf, pool poolOf) {
	w := window{solver: t, pools: pools, left: windowWork}
	for better := true; better && t.uneven(pool); {
		better = false
		for _, p := range pool.places {
			if better = w.around(p); better || t.even < 0 || w.left < 0 {
				break
			}
		}
		if better {
			t.settle(pools)
		}
	}
}

// around deals the window around a place anew, and says whether that is more even with no more neighbors alike; otherwise all
// stays as it is.
func (w *window) around(p int32) bool {
	w.places = w.filled(w.touching(p))
	w.before, w.alike = w.solver.squares(), 0
	fabrics := make([]int, len(w.places))
	for i, q := range w.places {
		fabrics[i] = w.fabric[q]
		w.alike += w.solver.alike(q, fabrics[i])
		w.take(q)
	}
	w.squares = w.solver.squares()
	work := w.left
	w.last = work - oneWindowWork
	found := w.deal(0)
	if !found {
		for i, q := range w.places {
			w.put(q, fabrics[i])
		}
	}
	w.left -= len(w.used)*len(w.marked)/8 + len(w.places)
	w.even -= work - w.left
	w.sign.Step(work - w.left)
	return found
}

// touching is so many places as a window has around one of them, itself first, or fewer where no more touch.
func (w *window) touching(p int32) []int32 {
	list := []int32{p}
	for at := 0; at < len(list); at++ {
		for _, n := range w.solver.places[list[at]].Neighbours {
			if len(list) == maxWindow {
				return list
			}
			if !slices.Contains(list, n) {
				list = append(list, n)
			}
		}
	}
	return list
}

// filled is some places, and others of the top behind them until the window is full: what is uneven in one group of places that
// touch may need another to make up for it.
func (w *window) filled(list []int32) []int32 {
	first := int(list[0])
	for i := range w.solver.places {
		p := int32((first + i) % len(w.solver.places))
		if len(list) == maxWindow {
			break
		}
		if !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	return list
}

// deal gives fabrics to the places of the window from the i-th on, those used least first; false if no way of it is more even.
func (w *window) deal(i int) bool {
	if w.squares+w.least(i) >= w.before {
		return false
	}
	if i == len(w.places) {
		return true
	}
	p := w.places[i]
	used := w.used[w.seats[p].pool]
	choices := slices.Clone(w.solver.places[p].Choices)
	slices.SortStableFunc(choices, func(a, b int) int { return cmp.Compare(used[a], used[b]) })
	for _, f := range choices {
		if w.left--; w.left < 0 || w.left < w.last {
			return false
		}
		alike, adds := w.solver.alike(p, f), 2*used[f]+1
		if alike > w.alike || !w.may(p, f) {
			continue
		}
		w.put(p, f)
		w.alike -= alike
		w.squares += adds
		if w.deal(i + 1) {
			return true
		}
		w.squares -= adds
		w.alike += alike
		w.take(p)
	}
	return false
}

// least is what the places from the i-th on add to the squares at the least, whatever lies beside them.
func (w *window) least(i int) int {
	sum := 0
	for _, pool := range w.pools {
		n, level, used := 0, w.before, w.used[w.seats[pool.places[0]].pool]
		for _, p := range w.places[i:] {
			if w.solver.places[p].Pool == pool.number {
				n++
			}
		}
		for _, f := range pool.fabrics {
			level = min(level, used[f])
		}
		for ; n > 0; level++ { // fabrics used so often take one more each
			for _, f := range pool.fabrics {
				if used[f] <= level && n > 0 {
					sum += 2*level + 1
					n--
				}
			}
		}
	}
	return sum
}
