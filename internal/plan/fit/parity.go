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
	a := &f.grows.Axes[which]
	g := Growth{Step: a.Way.Period, Least: a.Least(), Repeats: a.Repeats, Parity: f.parity(which)}
	if g.Parity == Any && f.lattice() && a.Way.Period%2 == 1 {
		g.Parity, g.Corners = Even, true
	}
	if !a.Way.Fixed() {
		g.Before, g.Behind = a.Way.Start, len(a.IDs)-a.Way.End
	}
	return g
}

// plan finds how the grid grows, then the parities.
func (f *fitting) plan() {
	f.grows = f.tree.Growth(f.design, f.warningsBy)
	f.probeParities()
}

// warningsBy is how many warnings a grid of so many blocks brings by a growth, with everything else as it is; below 0 if
// there is none.
func (f *fitting) warningsBy(g *layout.Growth, counts [2]int) int {
	if counts == g.Counts() {
		return len(f.warned[0])
	}
	design, _, faults := f.Read(f.rewritten(f.grownEdits(g, counts)))
	if design == nil {
		return -1
	}
	return len(faults)
}

// warningsOf is the same, noWay if there is none.
func (f *fitting) warningsOf(counts [2]int) int {
	if n := f.warningsBy(f.grows, counts); counts[across]*counts[down] <= maxBlocks && n >= 0 {
		return n
	}
	return noWay
}

// probeParities tries a grid of each parity that the ways reach.
func (f *fitting) probeParities() {
	f.parities = [2][2]int{{noWay, noWay}, {noWay, noWay}}
	for x := range 2 {
		for y := range 2 {
			counts := f.grows.Counts()
			counts[across] += x * f.grows.Axes[across].Way.Period
			counts[down] += y * f.grows.Axes[down].Way.Period
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
