package contrast

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/palettes"
)

// steps is what is asked of the values of all fabrics at once: for each two of them how much lighter the one must be than the
// other, and between which values each may lie.
type steps struct {
	own         []float64   // CIE L* as it is
	apart       [][]float64 // how much lighter the second must be than the first at least, minus infinity where nothing is asked
	least, most []float64
}

// roundingOf is what rounding to eight bits may take from a step, CIE L*.
const roundingOf = 0.3

// newSteps asks for nothing but what cloth can be.
func newSteps(lightness []float64) *steps {
	n := len(lightness)
	p := &steps{own: lightness, apart: make([][]float64, n), least: make([]float64, n), most: make([]float64, n)}
	for i, l := range lightness {
		p.apart[i] = make([]float64, n)
		for j := range n {
			p.apart[i][j] = math.Inf(-1)
		}
		p.apart[i][i] = 0
		p.least[i], p.most[i] = min(l, palettes.DarkestCloth), max(l, palettes.LightestCloth)
	}
	return p
}

// ask asks for a step between two fabrics, the darker one first.
func (p *steps) ask(darker, lighter int, step float64) {
	p.apart[darker][lighter] = max(p.apart[darker][lighter], step)
}

// close adds up what steps ask for by way of others.
func (p *steps) close() {
	for k := range p.own {
		for i := range p.own {
			if math.IsInf(p.apart[i][k], -1) {
				continue
			}
			for j := range p.own {
				p.apart[i][j] = max(p.apart[i][j], p.apart[i][k]+p.apart[k][j])
			}
		}
	}
}

// between is where a fabric's value may lie once some are settled; those not settled have NaN.
func (p *steps) between(v int, settled []float64) (low, high float64) {
	low, high = p.least[v], p.most[v]
	for i := range p.own {
		lo, hi := p.least[i], p.most[i]
		if !math.IsNaN(settled[i]) {
			lo, hi = settled[i], settled[i]
		}
		low = max(low, lo+p.apart[i][v])
		high = min(high, hi-p.apart[v][i])
	}
	return low, high
}

// solve settles all values: as many as can be stay as they are, those that come first in the order before others, and the
// rest move as little as they must. ok is false where not all that is asked for can be had.
func (p *steps) solve(order []int) (settled []float64, ok bool) {
	settled = make([]float64, len(p.own))
	for i := range settled {
		settled[i] = math.NaN()
	}
	for v := range p.own {
		if low, high := p.between(v, settled); low > high {
			return nil, false
		}
	}
	var rest []int
	for _, v := range order {
		if low, high := p.between(v, settled); low <= p.own[v] && p.own[v] <= high {
			settled[v] = p.own[v]
		} else {
			rest = append(rest, v)
		}
	}
	for _, v := range rest {
		low, high := p.between(v, settled)
		settled[v] = min(max(p.own[v], low), high)
	}
	return settled, true
}

// orders are the orders in which fabrics are asked to stay: those that cover most first, the darks first, the lights first,
// those that cover least first.
func orders(lightness, share []float64) [][]int {
	by := func(less func(a, b int) int) []int {
		list := make([]int, len(lightness))
		for i := range list {
			list[i] = i
		}
		slices.SortStableFunc(list, less)
		return list
	}
	return [][]int{
		by(func(a, b int) int { return -cmp.Compare(share[a], share[b]) }),
		by(func(a, b int) int { return cmp.Compare(lightness[a], lightness[b]) }),
		by(func(a, b int) int { return -cmp.Compare(lightness[a], lightness[b]) }),
		by(func(a, b int) int { return cmp.Compare(share[a], share[b]) }),
	}
}
