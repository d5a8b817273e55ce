package cutting

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/measure"
)

// relaxation is a packing in which strips may be cut in fractions: a linear programme over all ways to fill a strip, of
// which only those are made that help (P. Gilmore and R. Gomory, A linear programming approach to the cutting-stock problem,
// Operations Research 9, 1961; from memory). Whatever its prices are when it ends, they give a bound: prices by which no
// way to fill a strip is worth more than it costs make all items together worth no more than the strips cost.
type relaxation struct {
	*packing
	need   []float64                // of each item
	cost   func(measure.NM) float64 // of a strip of some width
	widths []measure.NM             // of strips, the widest first
	first  []int                    // the first item that goes into each width

	inverse [][]float64 // of the basis
	ways    []way       // the basis: ways to fill a strip
	often   []float64   // how often each is cut
	prices  []float64   // of the items
}

// way is a way to fill a strip of some width.
type way struct {
	width  measure.NM
	counts []int
}

// mostPivots is how often a relaxation is improved at the most; its bound holds whenever it ends.
const mostPivots = 150

// relaxed solves the relaxation; the bound is what the strips cost at the least.
func (p *packing) relaxed(need []float64, cost func(measure.NM) float64) (*relaxation, float64) {
	r := &relaxation{packing: p, need: need, cost: cost}
	for i := range p.items {
		if i == 0 || p.items[i].across != p.items[i-1].across {
			r.widths, r.first = append(r.widths, p.items[i].across), append(r.first, i)
		}
	}
	r.begin()
	for range mostPivots {
		r.price()
		enter, gain := r.cheapest()
		if gain <= 1e-9 || !r.pivot(enter) {
			break
		}
	}
	r.price()
	return r, r.worth()
}

// begin is the basis in which every strip holds one sort of item.
func (r *relaxation) begin() {
	n := len(r.items)
	r.inverse = make([][]float64, n)
	for i := range r.items {
		r.inverse[i] = make([]float64, n)
		most := min(r.most(i, r.length), r.items[i].count)
		r.inverse[i][i] = 1 / float64(most)
		counts := make([]int, n)
		counts[i] = most
		r.ways = append(r.ways, way{r.items[i].across, counts})
		r.often = append(r.often, r.need[i]/float64(most))
	}
	r.prices = make([]float64, n)
}

// price gives the items the prices at which every way in the basis is worth what it costs.
func (r *relaxation) price() {
	for i := range r.prices {
		r.prices[i] = 0
		for j := range r.ways {
			r.prices[i] += r.cost(r.ways[j].width) * r.inverse[j][i]
		}
		r.prices[i] = max(0, r.prices[i])
	}
}

// cheapest is the way to fill a strip that is worth most beyond its cost.
func (r *relaxation) cheapest() (way, float64) {
	var best way
	gain := 0.0
	for j, width := range r.widths {
		counts, value, _ := r.fullest(r.first[j])
		if g := value - r.cost(width); g > gain {
			best, gain = way{width, counts}, g
		}
	}
	return best, gain
}

// pivot brings a way into the basis; false where numbers have become too small to go on.
func (r *relaxation) pivot(enter way) bool {
	n := len(r.ways)
	column := make([]float64, n)
	for j := range n {
		for i, c := range enter.counts {
			column[j] += r.inverse[j][i] * float64(c)
		}
	}
	leave, least := -1, math.Inf(1)
	for j := range n {
		if column[j] > 1e-9 && r.often[j]/column[j] < least {
			leave, least = j, r.often[j]/column[j]
		}
	}
	if leave < 0 {
		return false
	}
	for i := range n {
		r.inverse[leave][i] /= column[leave]
	}
	r.often[leave] = least
	for j := range n {
		if j != leave && column[j] != 0 {
			r.often[j] = max(0, r.often[j]-column[j]*least)
			for i := range n {
				r.inverse[j][i] -= column[j] * r.inverse[leave][i]
			}
		}
	}
	r.ways[leave] = enter
	return true
}

// worth is what the items are worth at prices brought down so far that no way to fill a strip is worth more than it costs.
func (r *relaxation) worth() float64 {
	over := 0.0
	for j, width := range r.widths {
		_, _, atMost := r.fullest(r.first[j])
		over = max(over, atMost/r.cost(width))
	}
	if over == 0 {
		return 0
	}
	sum := 0.0
	for i := range r.need {
		sum += r.need[i] * r.prices[i]
	}
	return sum / over
}

// fullest fills a strip with items from one on so that it is worth most, and says what it could be worth at the most.
func (r *relaxation) fullest(first int) (counts []int, value, atMost float64) {
	k := &knapsack{relaxation: r, now: make([]int, len(r.items)), best: make([]int, len(r.items)), budget: mostWorths}
	for i := first; i < len(r.items); i++ {
		if r.prices[i] > 0 {
			k.order = append(k.order, i)
		}
	}
	density := func(i int) float64 { return r.prices[i] / float64(r.items[i].along) }
	slices.SortStableFunc(k.order, func(a, b int) int { return cmp.Compare(density(b), density(a)) })
	k.fill(0, r.length, 0)
	atMost = k.value
	if k.budget < 0 && len(k.order) > 0 {
		atMost = density(k.order[0]) * float64(r.length)
	}
	return k.best, k.value, atMost
}

// mostWorths is how many ways to fill a strip are weighed.
const mostWorths = 4000

// knapsack looks for the way to fill a strip that is worth most.
type knapsack struct {
	*relaxation
	order  []int // items, those worth most for their length first
	now    []int
	best   []int
	value  float64
	budget int
}

func (k *knapsack) fill(at int, room measure.NM, value float64) {
	if value > k.value+1e-12 {
		k.value = value
		copy(k.best, k.now)
	}
	if k.budget--; at == len(k.order) || k.budget < 0 {
		return
	}
	i := k.order[at]
	if value+k.prices[i]/float64(k.items[i].along)*float64(room) <= k.value+1e-12 {
		return
	}
	for n := min(k.items[i].count, k.most(i, room)); n >= 0; n-- {
		k.now[i] = n
		left := room
		if n > 0 {
			left -= measure.NM(n)*k.items[i].along + k.items[i].extra
		}
		k.fill(at+1, left, value+float64(n)*k.prices[i])
	}
	k.now[i] = 0
}
