package layout

import (
	"slices"
	"strings"
)

// MaxGrown is how many places a grid may have to be tried for the way in which it grows best.
const MaxGrown = 20_000

// The axes of a grid, by which the numbers of its columns and rows are kept.
const (
	Across = iota
	Down
)

// Growth is how a grid grows across and down: a frame is kept, and what comes back inside it comes more or less often.
type Growth struct {
	Axes      [2]Axis
	tree      *Tree
	columns   int  // of the grid as it is
	starFirst bool // a star centre stands at its upper left corner
}

// Axis is the columns of a grid, or its rows.
type Axis struct {
	IDs     []int // of each column or row: alike ones have one number
	Written int   // how many stand in the layout, before they are repeated
	Repeats bool  // the layout repeats them
	Way     Way
}

// Way is how an axis grows: the stretch from Start to End comes back with a period and takes in or gives up whole ones.
type Way struct{ Start, End, Period int }

// Fixed says that an axis cannot grow.
func (w Way) Fixed() bool { return w.Period == 0 }

// mostWays is how many ways are tried for an axis, and mostPeriod the longest stretch that is looked for.
const (
	mostWays   = 3
	mostPeriod = 100
)

// Growth numbers the columns and rows of a layout's grid and finds the best way for each: the one of which a grid as it is
// or a period longer brings the fewest warnings. Warnings says how many a grid of so many blocks brings, columns first;
// below 0 where there can be none. It is given the growth by the way that is tried.
func (t *Tree) Growth(d *Design, warnings func(g *Growth, counts [2]int) int) *Growth {
	g := &Growth{tree: t, columns: d.Columns, starFirst: d.StarFirst}
	rows := t.Grid.Rows
	keys := make([][]string, len(rows))
	for y, row := range rows {
		for _, c := range row.Cells {
			keys[y] = append(keys[y], c.key())
		}
	}
	wide, high := len(keys[0]), len(keys)
	g.Axes[Down] = newAxis(d.Rows, high, func(y int) string { return strings.Join(keys[y%high], " ") })
	g.Axes[Across] = newAxis(d.Columns, wide, func(x int) string {
		column := make([]string, high)
		for y := range keys {
			column[y] = keys[y][x%wide]
		}
		return strings.Join(column, " ")
	})
	if n := t.Repeat; n != nil { // a number that is 1 counts if it is written
		g.Axes[Across].Repeats, g.Axes[Down].Repeats = !n.Across.Empty(), !n.Down.Empty()
	}
	g.choose(warnings)
	return g
}

// key is what cells are told apart by.
func (c *cellNode) key() string {
	if c.Turn.Empty() {
		return c.Label.key()
	}
	return c.Label.key() + ":" + string(rune('0'+c.Towards))
}

// choose gives each axis its way.
func (g *Growth) choose(warnings func(g *Growth, counts [2]int) int) {
	for which := range g.Axes {
		a := &g.Axes[which]
		ways := a.ways(g.hasTable())
		best, least := Way{}, -1
		if len(ways) > 0 {
			best = ways[0] // of a grid that is too large to be tried
		}
		for _, w := range ways {
			a.Way = w
			for periods := range 2 {
				counts := g.Counts()
				counts[which] += periods * w.Period
				if counts[Across]*counts[Down] > MaxGrown {
					continue
				}
				if n := warnings(g, counts); n >= 0 && (least < 0 || n < least) {
					best, least = w, n
				}
			}
		}
		a.Way = best
	}
}

// hasTable says whether the layout has a table of webs.
func (g *Growth) hasTable() bool { return g.tree.Webs != nil && len(g.tree.Webs.Rows) > 0 }

// Counts are the columns and rows of the grid as it is.
func (g *Growth) Counts() [2]int { return [2]int{len(g.Axes[Across].IDs), len(g.Axes[Down].IDs)} }

// newAxis numbers the columns or rows of a grid. At gives what stands at a place along the axis, for each place across it.
func newAxis(length, written int, at func(i int) string) Axis {
	a := Axis{Written: written}
	numbers := map[string]int{}
	for i := range length {
		key := at(i)
		if _, known := numbers[key]; !known {
			numbers[key] = len(numbers)
		}
		a.IDs = append(a.IDs, numbers[key])
	}
	return a
}

// ways are the ways in which an axis may grow, the likeliest first.
func (a *Axis) ways(table bool) []Way {
	n := len(a.IDs)
	var list []Way
	add := func(w Way) {
		known := slices.ContainsFunc(list, func(k Way) bool { return w.Period%k.Period == 0 && k.Start <= w.Start && k.End >= w.End })
		if w = w.forTable(table); !known && !w.Fixed() && len(list) < mostWays {
			list = append(list, w)
		}
	}
	if a.Repeats {
		add(Way{0, n, a.Written})
		return list
	}
	for period := 1; period <= min(n/2, mostPeriod); period++ {
		if w := a.longest(period); 2*(w.End-w.Start) >= n && w.End-w.Start >= 2*period {
			add(w)
		}
	}
	if n > 2 && a.IDs[0] == a.IDs[n-1] {
		add(Way{0, n, n - 1})
	}
	add(Way{0, n, n})
	return list
}

// longest is the longest stretch with a period, the first of several.
func (a *Axis) longest(period int) Way {
	best := Way{Period: period}
	start := 0
	for i := 0; i+period <= len(a.IDs); i++ {
		if i+period < len(a.IDs) && a.IDs[i] == a.IDs[i+period] {
			continue
		}
		if end := i + period; end-start > best.End-best.Start {
			best.Start, best.End = start, end
		}
		start = i + 1
	}
	return best
}

// forTable makes a way fit a table of webs, of whose corners every other one is a web centre: its period becomes even, and
// the corner between two periods must be one that the table has, which the first of the grid is not. A way that cannot is fixed.
func (w Way) forTable(table bool) Way {
	if !table {
		return w
	}
	if w.Period%2 != 0 {
		w.Period *= 2
	}
	if w.End <= w.Period {
		return Way{}
	}
	return w
}

// Least is the fewest blocks that the way leaves.
func (a *Axis) Least() int {
	if a.Way.Fixed() {
		return len(a.IDs)
	}
	return len(a.IDs) - ((a.Way.End-a.Way.Start)/a.Way.Period-1)*a.Way.Period
}

// Allows says whether the axis may have so many blocks.
func (a *Axis) Allows(count int) bool {
	switch {
	case count == len(a.IDs):
		return true
	case a.Way.Fixed() || count < a.Least():
		return false
	}
	return (count-len(a.IDs))%a.Way.Period == 0
}

// Nearest are the counts that the axis may have on either side of one that it may not: one of them, or two.
func (a *Axis) Nearest(count int) []int {
	if a.Way.Fixed() {
		return []int{len(a.IDs)}
	}
	if least := a.Least(); count < least {
		return []int{least}
	}
	over := (count - a.Least()) % a.Way.Period
	return []int{count - over, count - over + a.Way.Period}
}

// Places says for each of so many blocks which one of the layout it is.
func (a *Axis) Places(count int) []int {
	list := make([]int, count)
	w, more := a.Way, count-len(a.IDs)
	for i := range list {
		switch {
		case i < w.Start || more == 0:
			list[i] = i
		case i >= w.End+more:
			list[i] = i - more
		case i < w.End:
			list[i] = i
		default:
			list[i] = i - (i-w.End+w.Period)/w.Period*w.Period
		}
	}
	return list
}

// Places are those of both axes.
func (g *Growth) Places(counts [2]int) [2][]int {
	return [2][]int{g.Axes[Across].Places(counts[Across]), g.Axes[Down].Places(counts[Down])}
}

// Cell is where the block is written that stands at two places of the grid as it is.
func (g *Growth) Cell(x, y int) Span { return g.node(x, y).Span }

func (g *Growth) node(x, y int) *cellNode {
	return &g.tree.Grid.Rows[y%g.Axes[Down].Written].Cells[x%g.Axes[Across].Written]
}

// Webs are the values of the table of webs for the blocks at places, row by row: where each is written, and an empty span
// for a web that is left to its blocks. Nil where the layout has no table.
func (g *Growth) Webs(places [2][]int) [][]Span {
	var list [][]Span
	for _, row := range g.webs(places) {
		spans := make([]Span, len(row))
		for i, n := range row {
			if !n.Own {
				spans[i] = n.Span
			}
		}
		list = append(list, spans)
	}
	return list
}

// webs are the values of the table of webs for the blocks at places: a corner takes what the corner at the upper left of
// the same block has, which lies inside the quilt, since no stretch that comes back begins with the grid and is as long as its period.
func (g *Growth) webs(places [2][]int) [][]webNode {
	if !g.hasTable() {
		return nil
	}
	var list [][]webNode
	for y := 1; y < len(places[Down]); y++ {
		var row []webNode
		for x := 1; x < len(places[Across]); x++ {
			if (x+y)%2 == 0 != g.starFirst {
				row = append(row, g.webAt(places[Across][x], places[Down][y]))
			}
		}
		if len(row) > 0 {
			list = append(list, row)
		}
	}
	return list
}

// webAt is what the table has for a web centre at a corner of the grid.
func (g *Growth) webAt(x, y int) webNode {
	row := 0
	for v := 1; v < y; v++ {
		if g.centresIn(v, g.columns) > 0 {
			row++
		}
	}
	return g.tree.Webs.Rows[row].Values[g.centresIn(y, x)]
}

// centresIn counts the web centres of a row of corners, inside the quilt, that stand before column x.
func (g *Growth) centresIn(y, x int) int {
	n := 0
	for u := 1; u < x; u++ {
		if (u+y)%2 == 0 != g.starFirst {
			n++
		}
	}
	return n
}

// grow gives a tree, read from the same text, the grid and the table of so many blocks.
func (g *Growth) grow(t *Tree, counts [2]int) {
	if counts == g.Counts() {
		return
	}
	places := g.Places(counts)
	grid := &gridNode{Span: t.Grid.Span, Rows: make([]rowNode, counts[Down])}
	for i, y := range places[Down] {
		row := &grid.Rows[i]
		row.Span = t.Grid.Rows[y%len(t.Grid.Rows)].Span
		row.Cells = make([]cellNode, counts[Across])
		for j, x := range places[Across] {
			row.Cells[j] = *g.node(x, y)
		}
	}
	if g.hasTable() {
		table := &websNode{Span: t.Webs.Span}
		for _, row := range g.webs(places) {
			table.Rows = append(table.Rows, webRowNode{Span: t.Webs.Span, Values: row})
		}
		t.Webs = table
	}
	t.Grid, t.Repeat, t.Swaps = grid, nil, nil // places are those of the grid as written
}
