package fit

import (
	"slices"

	"eighthturn/layout"
)

// Growth is how a grid grows, across or down.
type Growth struct {
	Step    int    `json:"step"`  // blocks that come and go together; 0 if the layout does not let the grid grow this way
	Least   int    `json:"least"` // the fewest blocks
	Repeats bool   `json:"by_repeat"`
	Before  int    `json:"frame_before"` // blocks that stay in front of what grows
	Behind  int    `json:"frame_behind"` // and behind it
	Parity  Parity `json:"preferred"`
	Corners bool   `json:"for_the_corners"` // the parity is for the corners of the quilt, which are alike only where both counts are even
}

// Parity says which counts bring fewer warnings.
type Parity string

const (
	Any  Parity = "any"
	Even Parity = "even"
	Odd  Parity = "odd"
)

// growth is what a report says of an axis.
func (f *fitting) growth(which int) Growth {
	a := &f.axes[which]
	g := Growth{Step: a.way.period, Least: a.least(), Repeats: a.repeats, Parity: f.parity(which)}
	if g.Parity == Any && f.lattice() && a.way.period%2 == 1 {
		g.Parity, g.Corners = Even, true
	}
	if !a.way.fixed() {
		g.Before, g.Behind = a.way.start, len(a.ids)-a.way.end
	}
	return g
}

// plan finds how the grid grows: for each axis the way with the fewest warnings, then the parities.
func (f *fitting) plan() {
	f.readAxes()
	table := f.tree.Webs != nil && len(f.tree.Webs.Rows) > 0
	for which := range f.axes {
		a := &f.axes[which]
		best, least := way{}, noWay
		for _, w := range a.ways(table) {
			a.way = w
			if n := min(f.probe(which, 0), f.probe(which, 1)); n < least {
				best, least = w, n
			}
		}
		a.way = best
	}
	f.probeParities()
}

// probe is how many warnings a grid of some more blocks along one axis brings.
func (f *fitting) probe(which, periods int) int {
	counts := [2]int{len(f.axes[across].ids), len(f.axes[down].ids)}
	counts[which] += periods * f.axes[which].way.period
	return f.warningsOf(counts)
}

// warningsOf is how many warnings a grid of so many blocks brings, with everything else as it is.
func (f *fitting) warningsOf(counts [2]int) int {
	if counts[across]*counts[down] > maxBlocks {
		return noWay
	}
	if counts == [2]int{len(f.axes[across].ids), len(f.axes[down].ids)} {
		return len(f.warned[0])
	}
	design, _, faults := f.Read(f.rewritten(f.gridEdits(counts)))
	if design == nil {
		return noWay
	}
	return len(faults)
}

// probeParities tries a grid of each parity that the ways reach.
func (f *fitting) probeParities() {
	f.parities = [2][2]int{{noWay, noWay}, {noWay, noWay}}
	for x := range 2 {
		for y := range 2 {
			counts := [2]int{len(f.axes[across].ids) + x*f.axes[across].way.period, len(f.axes[down].ids) + y*f.axes[down].way.period}
			at := &f.parities[counts[across]%2][counts[down]%2]
			*at = min(*at, f.warningsOf(counts))
		}
	}
}

// fewest is the fewest warnings that grids of any parity bring.
func (f *fitting) fewest() int {
	least := noWay
	for _, row := range f.parities {
		least = min(least, row[0], row[1])
	}
	return least
}

// lattice says whether the grid has blocks that share web centres and star centres, which sashes would part.
func (f *fitting) lattice() bool {
	return f.design.Sash == nil && slices.ContainsFunc(f.design.Cells, func(c layout.Cell) bool {
		return c.Block >= 0 && f.design.Blocks[c.Block].Kind.Turning.InLattice()
	})
}

// parity is the parity of an axis in the grids that bring the fewest warnings, if only one does and the other could be had.
func (f *fitting) parity(which int) Parity {
	var good, reached [2]bool
	for x, row := range f.parities {
		for y, n := range row {
			own := [2]int{x, y}[which]
			good[own] = good[own] || n == f.fewest()
			reached[own] = reached[own] || n < noWay
		}
	}
	switch {
	case !reached[0] || !reached[1] || good[0] && good[1]:
		return Any
	case good[0]:
		return Even
	}
	return Odd
}
