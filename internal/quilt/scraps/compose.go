package scraps

import (
	"cmp"
	"encoding/binary"
	"slices"

	"eighthturn/internal/stop"
)

// composer deals fabrics to the strips of sets. Each pool is dealt in rounds: its fabrics lie in one order, every strip takes them
// from another place on, and a row is what lies side by side. A whole round has every row, so that each strip has every fabric
// once; what is left of a round has each at most once.
type composer struct {
	*StripSet
	sign *stop.Sign
	sets [][]int
	seen map[string]bool // the sets so far, and those turned end for end where that is one too
}

// maxShifts is how many ways of shifting a pool are tried for a round before it is given up that all sets differ.
const maxShifts = 200

// compose deals so many sets, or as many as are found to differ.
func compose(sign *stop.Sign, s *StripSet, count, number int) [][]int {
	c := &composer{StripSet: s, sign: sign, seen: map[string]bool{}, sets: make([][]int, count)}
	for i := range c.sets {
		c.sets[i] = make([]int, len(s.Strips))
		for n := range c.sets[i] {
			c.sets[i][n] = -1
		}
	}
	last := c.most()
	for pool := range s.Pools {
		if pool != last {
			c.round(pool, number, false)
		}
	}
	c.round(last, number, true)
	return c.sets
}

// most is the pool that leaves the most choice: it is dealt last, so that sets differ.
func (c *composer) most() int {
	best, ways := 0, -1
	for pool, fabrics := range c.Pools {
		if n := len(fabrics) * len(c.stripsOf(pool)); n > ways {
			best, ways = pool, n
		}
	}
	return best
}

// stripsOf are the strips that come from a pool.
func (c *composer) stripsOf(pool int) []int {
	var list []int
	for i, p := range c.Strips {
		if p == pool {
			list = append(list, i)
		}
	}
	return list
}

// round deals a pool round by round. The last pool is dealt so that all sets differ, as far as that goes; sets beyond are dropped.
func (c *composer) round(pool, number int, last bool) {
	r := rounds{composer: c, strips: c.stripsOf(pool), fabrics: c.order(pool, number), used: make([]int, len(c.Pools[pool]))}
	for start := 0; start < len(c.sets); start += len(r.fabrics) {
		rows := r.best(start, last)
		for i, row := range rows {
			r.put(row, start+i)
			if last {
				c.note(c.sets[start+i])
			}
		}
		if end := start + len(rows); last && end < min(len(c.sets), start+len(r.fabrics)) {
			c.sets = c.sets[:end]
		}
	}
}

// best is the rows of the round that begins with a set: as many as make sets that differ, and of ways to shift that make as many
// one that uses the fabrics evenly. Where none makes enough, the rows begin further down the stack, beside other rows of the other pools.
func (r *rounds) best(start int, last bool) [][]int {
	count := min(len(r.fabrics), len(r.sets)-start)
	var best [][]int
	var least int
	shifts, from := first(len(r.strips)), 0
	for range maxShifts {
		rows, off := r.rows(shifts, count)
		rows = slices.Concat(rows[from:], rows[:from])
		rows = rows[:r.differ(rows, start, last)]
		if best == nil || len(rows) > len(best) || len(rows) == len(best) && off < least {
			best, least = rows, off
		}
		if len(best) == count && least < 2 {
			break
		}
		if shifts = next(shifts, len(r.fabrics)); shifts == nil {
			if from++; from == count {
				break
			}
			shifts = first(len(r.strips))
		}
	}
	return best
}

// order is the fabrics of a pool as they lie in the stack: as written, or in another order for a numbered deal.
func (c *composer) order(pool, number int) []int {
	fabrics := slices.Clone(c.Pools[pool])
	if number != 0 {
		t := solver{number: uint64(number)}
		slices.SortFunc(fabrics, func(a, b int) int { return cmp.Compare(t.chance(a, pool), t.chance(b, pool)) })
	}
	return fabrics
}

// rounds is the rounds of one pool.
type rounds struct {
	*composer
	strips  []int
	fabrics []int // in the order of the stack
	used    []int // how often each is used in the rounds so far, by its place in the stack
}

// first is the first way to shift the stacks of some strips: each by one more than the one before.
func first(strips int) []int {
	shifts := make([]int, strips)
	for i := range shifts {
		shifts[i] = i
	}
	return shifts
}

// next is the way to shift behind another, nil behind the last: the first stack stays, no two others are shifted alike.
func next(shifts []int, fabrics int) []int {
	shifts = slices.Clone(shifts)
	for at := len(shifts) - 1; at > 0; at-- {
		for shifts[at]++; shifts[at] < fabrics; shifts[at]++ {
			if !slices.Contains(shifts[:at], shifts[at]) {
				return filled(shifts, at+1)
			}
		}
	}
	return nil
}

// filled gives the strips from one on the least shifts that no other has.
func filled(shifts []int, from int) []int {
	for at := from; at < len(shifts); at++ {
		shifts[at] = 1
		for slices.Contains(shifts[:at], shifts[at]) {
			shifts[at]++
		}
	}
	return shifts
}

// rows is so many rows of a round, in the order of the stack: those that use each fabric of the pool as evenly as can be, one
// by one; and how many times more the one used most is used.
func (r *rounds) rows(shifts []int, count int) ([][]int, int) {
	used, taken := slices.Clone(r.used), make([]bool, len(r.fabrics))
	for range count {
		best, least := -1, 0
		for at := range taken {
			r.sign.Step(1)
			if taken[at] {
				continue
			}
			if cost := r.cost(used, shifts, at); best < 0 || cost < least {
				best, least = at, cost
			}
		}
		taken[best] = true
		for _, s := range shifts {
			used[(best+s)%len(used)]++
		}
	}
	var rows [][]int
	for at, is := range taken {
		if is {
			row := make([]int, len(shifts))
			for i, s := range shifts {
				row[i] = (at + s) % len(taken)
			}
			rows = append(rows, row)
		}
	}
	return rows, slices.Max(used) - slices.Min(used)
}

// cost is how often the fabrics of a row are used already.
func (r *rounds) cost(used, shifts []int, at int) int {
	cost := 0
	for _, s := range shifts {
		cost += used[(at+s)%len(used)]
	}
	return cost
}

// differ is how many of the first rows make sets that no other is like.
func (r *rounds) differ(rows [][]int, start int, last bool) int {
	if !last {
		return len(rows)
	}
	seen := map[string]bool{}
	set := make([]int, len(r.Strips))
	for i, row := range rows {
		r.sign.Step(1)
		copy(set, r.sets[start+i])
		for n, strip := range r.strips {
			set[strip] = r.fabrics[row[n]]
		}
		if k := key(set); r.seen[k] || seen[k] {
			return i
		}
		for _, k := range r.keys(set) {
			seen[k] = true
		}
	}
	return len(rows)
}

// put deals a row to a set.
func (r *rounds) put(row []int, set int) {
	for n, strip := range r.strips {
		r.sets[set][strip] = r.fabrics[row[n]]
		r.used[row[n]]++
	}
}

// note keeps that there is a set.
func (c *composer) note(set []int) {
	for _, k := range c.keys(set) {
		c.seen[k] = true
	}
}

// keys are a set's own, and that of the set turned end for end where it is one too.
func (c *composer) keys(set []int) []string {
	if !c.Turns {
		return []string{key(set)}
	}
	turned := slices.Clone(set)
	slices.Reverse(turned)
	return []string{key(set), key(turned)}
}

func key(set []int) string {
	var list []byte
	for _, f := range set {
		list = binary.AppendVarint(list, int64(f))
	}
	return string(list)
}
