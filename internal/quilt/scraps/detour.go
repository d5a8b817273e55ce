package scraps

import "slices"

// detourWork is how much work the detours of one pool may be, all in all: a detour goes
// through all places and all pairs of fabrics.
const detourWork = 100_000

// goRound makes detours as long as they leave a pool that is uneven more even.
func (t *solver) goRound(pools []poolOf, pool poolOf) {
	fabrics := len(t.marked)
	d := detour{t, pools, t.squares(), detourWork / (len(t.places) + fabrics*fabrics)}
	for t.uneven(pool) && (d.found(1) || d.found(2)) {
		d.before = t.squares()
	}
}

// uneven says whether two fabrics of a pool are used more than one time apart.
func (t *solver) uneven(pool poolOf) bool {
	used := t.used[t.seats[pool.places[0]].pool]
	least, most := used[pool.fabrics[0]], used[pool.fabrics[0]]
	for _, f := range pool.fabrics {
		least, most = min(least, used[f]), max(most, used[f])
	}
	return most-least > 1
}

// squares is the lower, the more evenly the pools are used.
func (t *solver) squares() int {
	sum := 0
	for _, used := range t.used {
		for _, n := range used {
			sum += n * n
		}
	}
	return sum
}

// detour looks for a more even deal of the pools behind one that is no better.
type detour struct {
	*solver
	pools  []poolOf
	before int // what the squares were
	left   int // how many chains it may still look for or turn
}

// found turns so many chains one after the other, each of any two fabrics and through
// whatever pools it goes, and keeps them if the pools can then be settled more evenly than
// before. It is false if no chains help, or too many were turned.
func (d *detour) found(chains int) bool {
	fabrics := slices.Clone(d.fabric)
	for a := range d.marked {
		for b := range a {
			d.even -= len(d.places) + len(d.used)*len(d.marked)/8
			if d.left--; d.left < 0 || d.even < 0 {
				return false
			}
			list, _ := d.chains(anyPool, a, b, d.having(a, b))
			for _, c := range list {
				d.even -= len(d.places) + len(d.used)*len(d.marked)/8
				if d.left--; d.left < 0 || d.even < 0 {
					return false
				}
				d.turn(c.places, a, b)
				if chains > 1 && d.found(chains-1) {
					return true
				}
				d.settle(d.pools)
				if d.squares() < d.before {
					return true
				}
				d.restore(fabrics)
			}
		}
	}
	return false
}

// having is the places that have one of two fabrics.
func (t *solver) having(a, b int) []int32 {
	var places []int32
	for p, f := range t.fabric {
		if f == a || f == b {
			places = append(places, int32(p))
		}
	}
	return places
}

// restore gives all places the fabrics that they had.
func (t *solver) restore(fabrics []int) {
	for p, f := range fabrics {
		if t.fabric[p] != f {
			t.take(int32(p))
			t.put(int32(p), f)
		}
	}
}
