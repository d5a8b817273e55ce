package fit

import (
	"slices"
	"strings"
)

// axis is the columns of a grid, or its rows.
type axis struct {
	ids     []int // of each column or row: alike ones have one number
	written int   // how many stand in the layout, before they are repeated
	repeats bool  // the layout repeats them
	way     way
}

// way is how an axis grows: the stretch from start to end comes back with a period and takes in or gives up whole ones.
type way struct{ start, end, period int }

// fixed says that an axis cannot grow.
func (w way) fixed() bool { return w.period == 0 }

// mostWays is how many ways are tried for an axis, and mostPeriod the longest stretch that is looked for.
const (
	mostWays   = 3
	mostPeriod = 100
)

// newAxis numbers the columns or rows of a grid. At gives what stands at a place along the axis, for each place across it.
func newAxis(length, written int, repeats bool, at func(i int) string) axis {
	a := axis{written: written, repeats: repeats}
	numbers := map[string]int{}
	for i := range length {
		key := at(i)
		if _, known := numbers[key]; !known {
			numbers[key] = len(numbers)
		}
		a.ids = append(a.ids, numbers[key])
	}
	return a
}

// readAxes numbers the columns and rows of the layout.
func (f *fitting) readAxes() {
	rows := f.tree.Grid.Rows
	keys := make([][]string, len(rows))
	for y, row := range rows {
		for _, c := range row.Cells {
			keys[y] = append(keys[y], strings.ToLower(f.text[c.Start:c.End]))
		}
	}
	wide, high := len(keys[0]), len(keys)
	acrossRepeats, downRepeats := f.repeats()
	f.axes[down] = newAxis(f.design.Rows, high, downRepeats, func(y int) string { return strings.Join(keys[y%high], " ") })
	f.axes[across] = newAxis(f.design.Columns, wide, acrossRepeats, func(x int) string {
		column := make([]string, high)
		for y := range keys {
			column[y] = keys[y][x%wide]
		}
		return strings.Join(column, " ")
	})
}

// repeats says whether the layout repeats its rows across, and down. A number that is 1 counts if it is written.
func (f *fitting) repeats() (acrossToo, downToo bool) {
	n := f.tree.Repeat
	if n == nil {
		return false, false
	}
	return !n.Across.Empty(), !n.Down.Empty()
}

// ways are the ways in which an axis may grow, the likeliest first.
func (a *axis) ways(table bool) []way {
	n := len(a.ids)
	var list []way
	add := func(w way) {
		known := slices.ContainsFunc(list, func(k way) bool { return w.period%k.period == 0 && k.start <= w.start && k.end >= w.end })
		if w = w.forTable(table, n); !known && !w.fixed() && len(list) < mostWays {
			list = append(list, w)
		}
	}
	if a.repeats {
		add(way{0, n, a.written})
		return list
	}
	for period := 1; period <= min(n/2, mostPeriod); period++ {
		if w := a.longest(period); 2*(w.end-w.start) >= n && w.end-w.start >= 2*period {
			add(w)
		}
	}
	if n > 2 && a.ids[0] == a.ids[n-1] {
		add(way{0, n, n - 1})
	}
	add(way{0, n, n})
	return list
}

// longest is the longest stretch with a period, the first of several.
func (a *axis) longest(period int) way {
	best := way{period: period}
	start := 0
	for i := 0; i+period <= len(a.ids); i++ {
		if i+period < len(a.ids) && a.ids[i] == a.ids[i+period] {
			continue
		}
		if end := i + period; end-start > best.end-best.start {
			best.start, best.end = start, end
		}
		start = i + 1
	}
	return best
}

// forTable makes a way fit a table of webs, of whose corners every other one is a web centre: its period becomes even, and
// the corner between two periods must be one that the table has. A way that cannot is fixed.
func (w way) forTable(table bool, n int) way {
	if !table {
		return w
	}
	if w.period%2 != 0 {
		w.period *= 2
	}
	if w.end-w.start < w.period || w.start == 0 && w.period > n-1 {
		return way{}
	}
	return w
}

// least is the fewest blocks that a way leaves.
func (a *axis) least() int {
	if a.way.fixed() {
		return len(a.ids)
	}
	return len(a.ids) - ((a.way.end-a.way.start)/a.way.period-1)*a.way.period
}

// allows says whether the axis may have so many blocks.
func (a *axis) allows(count int) bool {
	switch {
	case count == len(a.ids):
		return true
	case a.way.fixed() || count < a.least():
		return false
	}
	return (count-len(a.ids))%a.way.period == 0
}

// places says for each of so many blocks which one of the layout it is.
func (a *axis) places(count int) []int {
	list := make([]int, count)
	w, more := a.way, count-len(a.ids)
	for i := range list {
		switch {
		case i < w.start || more == 0:
			list[i] = i
		case i >= w.end+more:
			list[i] = i - more
		case i < w.end:
			list[i] = i
		default:
			list[i] = i - (i-w.end+w.period)/w.period*w.period
		}
	}
	return list
}

// idsOf are the numbers of what stands at places.
func (a *axis) idsOf(places []int) []int {
	ids := make([]int, len(places))
	for i, p := range places {
		ids[i] = a.ids[p]
	}
	return ids
}

// tile is the shortest period that divides a list into whole ones.
func tile(ids []int) int {
	for period := 1; period <= len(ids)/2; period++ {
		if len(ids)%period == 0 && periodic(ids, period) {
			return period
		}
	}
	return len(ids)
}

func periodic(ids []int, period int) bool {
	for i := period; i < len(ids); i++ {
		if ids[i] != ids[i-period] {
			return false
		}
	}
	return true
}
