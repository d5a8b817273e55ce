package sewing

import (
	"math"
	"slices"
)

// Limits of the exact search: choices in all, how many of them a table may range over, and how
// many entries all tables may have. Ten rows of blocks are within.
const (
	mostChoices = 1000
	widestTable = 13
	mostEntries = 1 << 18
)

// table is the least that must be left broken for all ways of some choices.
type table struct {
	over []int32 // choices, ascending; bit i of an index is the way of choice i
	cost []int32
}

// taken is a choice that was taken out, with the way that was best for all ways of its
// neighbours.
type taken struct {
	choice int32
	over   []int32
	best   []bool
}

// taking is the work of taking choices out one by one.
type taking struct {
	r       *constraintGraph
	tables  map[int32][]*table // by choice: those that range over it
	left    map[int32]bool
	done    []taken
	entries int
}

// exact finds ways for some choices that leave the least broken while all others stay as they
// are. False if its tables would grow too large; then nothing is changed.
func (r *constraintGraph) exact(c component, ways []bool) bool {
	if len(c.choices) > mostChoices || r.left <= 0 {
		return false
	}
	t := &taking{r: r, tables: map[int32][]*table{}, left: map[int32]bool{}}
	for _, at := range c.choices {
		t.left[at] = true
	}
	t.begin(c, ways)
	for range c.choices {
		if !t.takeOut(t.narrowest(c.choices)) {
			return false
		}
	}
	for _, d := range slices.Backward(t.done) {
		ways[d.choice] = d.best[indexOf(d.over, ways)]
	}
	return true
}

// begin makes a table of each pair of choices that has a constraint, and of each choice
// that has a constraint with one that stays as it is.
func (t *taking) begin(c component, ways []bool) {
	pairs := map[[2]int32]*table{}
	for _, at := range c.choices {
		for _, n := range t.r.at[at] {
			a := &t.r.constraints[n]
			other := a.other(at)
			switch {
			case a.a == a.b:
			case !t.left[other]:
				p := t.tableOf(pairs, at, at)
				for i := range p.cost {
					if (ways[other] != (i == 1)) != a.opposite {
						p.cost[i]++
					}
				}
			case a.a == at:
				p := t.tableOf(pairs, min(a.a, a.b), max(a.a, a.b))
				for i := range p.cost {
					if (i == 1 || i == 2) != a.opposite {
						p.cost[i]++
					}
				}
			}
		}
	}
}

// tableOf is the table of two choices, or of one.
func (t *taking) tableOf(known map[[2]int32]*table, a, b int32) *table {
	p := known[[2]int32{a, b}]
	if p == nil {
		p = &table{over: []int32{a, b}, cost: make([]int32, 4)}
		if a == b {
			p = &table{over: []int32{a}, cost: make([]int32, 2)}
		}
		known[[2]int32{a, b}] = p
		t.put(p)
	}
	return p
}

func (t *taking) put(p *table) {
	for _, at := range p.over {
		t.tables[at] = append(t.tables[at], p)
	}
}

// neighbours is the choices that the tables over a choice range over besides.
func (t *taking) neighbours(at int32) []int32 {
	var list []int32
	for _, p := range t.tables[at] {
		list = append(list, p.over...)
	}
	slices.Sort(list)
	list = slices.Compact(list)
	return slices.DeleteFunc(list, func(n int32) bool { return n == at })
}

// narrowest is the choice with the fewest neighbours, the first of them.
func (t *taking) narrowest(choices []int32) int32 {
	var best int32
	least := math.MaxInt
	for _, at := range choices {
		if !t.left[at] {
			continue
		}
		if n := len(t.neighbours(at)); n < least {
			best, least = at, n
		}
	}
	return best
}

// takeOut replaces the tables over a choice by one over its neighbours.
func (t *taking) takeOut(at int32) bool {
	over := t.neighbours(at)
	t.entries += 1 << len(over)
	t.r.left -= 1<<len(over) + 8*len(t.left)
	if len(over) > widestTable || t.entries > mostEntries {
		return false
	}
	sum := &table{over: over, cost: make([]int32, 1<<len(over))}
	best := make([]bool, len(sum.cost))
	tables := slices.Clone(t.tables[at])
	with := append(slices.Clone(over), at)
	picks := make([][]int, len(tables))
	for i, p := range tables {
		picks[i] = positions(with, p.over)
	}
	for i := range sum.cost {
		var cost [2]int32
		for way := range 2 {
			for n, p := range tables {
				cost[way] += p.cost[picked(i|way<<len(over), picks[n])]
			}
		}
		best[i] = cost[1] < cost[0]
		sum.cost[i] = min(cost[0], cost[1])
	}
	t.done = append(t.done, taken{at, over, best})
	t.remove(at, tables)
	t.put(sum)
	return true
}

// remove takes a choice and the tables over it away.
func (t *taking) remove(at int32, tables []*table) {
	delete(t.left, at)
	for _, p := range tables {
		for _, n := range p.over {
			t.tables[n] = slices.DeleteFunc(t.tables[n], func(q *table) bool { return q == p })
		}
	}
}

// positions is where the choices of one list stand in another.
func positions(in, of []int32) []int {
	list := make([]int, len(of))
	for i, n := range of {
		list[i] = slices.Index(in, n)
	}
	return list
}

// picked is the index made of some bits of another.
func picked(index int, bits []int) int {
	made := 0
	for i, b := range bits {
		made |= index >> b & 1 << i
	}
	return made
}

// indexOf is the index of the ways of some choices.
func indexOf(over []int32, ways []bool) int {
	index := 0
	for i, n := range over {
		if ways[n] {
			index |= 1 << i
		}
	}
	return index
}
