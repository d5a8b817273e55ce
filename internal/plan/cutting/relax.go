package cutting

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// relaxation is a packing in which strips may be cut in fractions: a linear programme over all ways to fill a strip, of
// which only those are made that help (P. Gilmore and R. Gomory, A linear programming approach to the cutting-stock problem,
// Operations Research 9, 1961; from memory). Whatever its prices are when it ends, they give a bound: prices by which no
// way to fill a strip is worth more than it costs make all items together worth no more than the strips cost.
type relaxation struct {
	*packing
	need   []float64 // of each item
	cost   cost
	widths []measure.NM // of strips, the widest first
	first  []int        // the first item that goes into each width

	inverse [][]float64 // of the basis
	ways    []way       // the basis: ways to fill a strip
	often   []float64   // how often each is cut
	prices  []float64   // of the items
}

// cost is what a strip of some width costs in which things lie in up to so many rows.
type cost func(width measure.NM, rows int) float64

// way is a way to fill a strip of some width.
type way struct {
	width  measure.NM
	rows   int
	counts []int
}

// maxRows is up to how many rows are told apart; strips of more count as if they had one more.
const maxRows = 6

// rowCounts is up to how many rows there can be in a strip of some width, 1 first.
func (p *packing) rowCounts(width measure.NM) []int {
	list := []int{1}
	for i := range p.items {
		for rows := p.rows(i, width); len(list) < rows && len(list) <= maxRows; {
			list = append(list, len(list)+1)
		}
	}
	return list
}

// rowsUpTo is in how many rows an item lies in a strip of some width, if there may be so many.
func (p *packing) rowsUpTo(i int, width measure.NM, most int) int {
	if most > maxRows {
		return p.rows(i, width)
	}
	return min(most, p.rows(i, width))
}

// maxPivots is how often a relaxation is improved at the most; its bound holds whenever it ends.
const maxPivots = 150

// relaxed solves the relaxation; the bound is what the strips cost at the least.
func (p *packing) relaxed(need []float64, cost cost) (*relaxation, float64) {
	r := &relaxation{packing: p, need: need, cost: cost}
	for i := range p.items {
		if i == 0 || p.items[i].across != p.items[i-1].across {
			r.widths, r.first = append(r.widths, p.items[i].across), append(r.first, i)
		}
	}
	if steps := len(p.items) * len(p.items) / 8; !p.budget.spend(steps) {
		r.prices = make([]float64, len(p.items))
		return r, 0
	}
	r.begin()
	for range maxPivots {
		if !p.budget.spend(len(p.items) + len(p.items)*len(p.items)/8) {
			return r, 0
		}
		r.price()
		enter, gain := r.cheapest()
		if gain <= 1e-9 || !r.pivot(enter) {
			break
		}
	}
	return r, r.worth()
}

// begin is the basis in which every strip holds one sort of item.
func (r *relaxation) begin() {
	n := len(r.items)
	r.inverse = make([][]float64, n)
	for i := range r.items {
		r.inverse[i] = make([]float64, n)
		most := min(r.most(i, r.length, 1), r.items[i].count)
		r.inverse[i][i] = 1 / float64(most)
		counts := make([]int, n)
		counts[i] = most
		r.ways = append(r.ways, way{r.items[i].across, 1, counts})
		r.often = append(r.often, r.need[i]/float64(most))
	}
	r.prices = make([]float64, n)
}

// price gives the items the prices at which every way in the basis is worth what it costs.
func (r *relaxation) price() {
	for i := range r.prices {
		r.prices[i] = 0
		for j := range r.ways {
			r.prices[i] += r.cost(r.ways[j].width, r.ways[j].rows) * r.inverse[j][i]
		}
		r.prices[i] = max(0, r.prices[i])
	}
}

// cheapest is the way to fill a strip that is worth most beyond its cost.
func (r *relaxation) cheapest() (way, float64) {
	var best way
	gain := 0.0
	for j, width := range r.widths {
		for _, rows := range r.rowCounts(width) {
			counts, value, _ := r.fullest(r.first[j], rows)
			if g := value - r.cost(width, rows); g > gain {
				best, gain = way{width, rows, counts}, g
			}
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
		for _, rows := range r.rowCounts(width) {
			_, _, atMost := r.fullest(r.first[j], rows)
			over = max(over, atMost/r.cost(width, rows))
		}
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

// fullest fills a strip with items from one on so that it is worth most, and says what it could be worth at the most. Where
// things may lie in rows, and some would, the strip holds one item at the least that is as wide as it is: otherwise strips
// could be cut as wide as one likes.
func (r *relaxation) fullest(first, rows int) (counts []int, value, atMost float64) {
	k := &knapsack{relaxation: r, now: make([]int, len(r.items)), best: make([]int, len(r.items)), held: -1}
	inRows := false
	k.rows, k.order = make([]int, len(r.items)), make([]int, 0, len(r.items))
	for i := range r.items {
		k.rows[i] = r.rowsUpTo(i, r.items[first].across, rows)
		if i >= first && r.prices[i] > 0 {
			k.order = append(k.order, i)
			inRows = inRows || k.rows[i] > 1
		}
	}
	slices.SortStableFunc(k.order, func(a, b int) int { return cmp.Compare(k.density(b), k.density(a)) })
	switch {
	case rows == 1:
		atMost = k.search(r.length)
		return k.best, k.value, atMost
	case !inRows:
		return k.best, 0, 0
	}
	for i := first; i < len(r.items) && r.items[i].across == r.items[first].across; i++ {
		k.hold(i)
		atMost = max(atMost, k.search(r.length-r.takes(i, 1, 1)))
	}
	return k.best, k.value, atMost
}

// maxWorths is how many ways to fill a strip are weighed.
const maxWorths = 4000

// knapsack looks for the way to fill a strip that is worth most.
type knapsack struct {
	*relaxation
	order  []int // items, those worth most for their length first
	rows   []int // of each item
	now    []int
	best   []int
	value  float64
	held   int // an item of which one is in the strip already, -1 for none
	budget int
}

// density is what an item is worth for its length.
func (k *knapsack) density(i int) float64 {
	return float64(k.rows[i]) * k.prices[i] / float64(k.items[i].along)
}

// hold puts one of an item into the strip.
func (k *knapsack) hold(i int) {
	clear(k.now)
	k.held = i
	k.now[i] = 1
}

// search fills the room that is left in the strip, and says what the strip could be worth at the most.
func (k *knapsack) search(room measure.NM) float64 {
	worth := 0.0
	if k.held >= 0 {
		worth = k.prices[k.held]
	}
	before := k.value
	k.value, k.budget = 0, maxWorths
	best := slices.Clone(k.best)
	if k.packing.budget.spent() {
		k.budget = 0
	}
	k.fill(0, room, worth)
	if !k.packing.budget.spend(maxWorths - k.budget + len(k.order)) {
		k.budget = -1 // what it could be worth is not known
	}
	atMost := k.value
	if k.budget < 0 && len(k.order) > 0 {
		atMost = worth + k.density(k.order[0])*float64(room)
	}
	if before >= k.value {
		k.value, k.best = before, best
	}
	return atMost
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
	if value+k.density(i)*float64(room) <= k.value+1e-12 {
		return
	}
	held := k.now[i]
	count, rows, extra := k.items[i].count-held, k.rows[i], k.items[i].extra
	if held > 0 {
		extra = 0
	}
	most := 0
	if room >= k.items[i].along+extra {
		most = min(count, rows*int((room-extra)/k.items[i].along))
	}
	for n := most; n >= 0; n = fewer(n, rows) {
		k.now[i] = held + n
		left := room
		if n > 0 {
			left -= measure.NM(up(n, rows))*k.items[i].along + extra
		}
		k.fill(at+1, left, value+float64(n)*k.prices[i])
	}
	k.now[i] = held
}
