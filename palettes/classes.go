package palettes

import (
	"cmp"
	"math"
	"slices"
)

// Area is how much of a quilt has one lightness.
type Area struct {
	Lightness float64 // CIE L*, 0 to 100
	Size      float64 // finished area in any one unit, 0 or more; if no area has a size, all count alike
}

// Classes sorts lightnesses into groups, the darkest first.
type Classes struct {
	Of        []int     // the class of each area, in the order given
	Means     []float64 // mean CIE L* of each class, weighted by size, rising
	Explained float64   // the share of the spread, 0 to 1, that lies between the classes; 1 where there is no spread
}

// Classify finds the k groups with the least squared distance, weighted by size, from their means: the exact best by
// Fisher's dynamic programme (W. D. Fisher 1958, On Grouping for Maximum Homogeneity, JASA 53).
// Of several best ones it takes that with the fewest in the darkest groups. Alike lightnesses stay together, so there are
// fewer groups than k where there are fewer lightnesses, and none where there is no area or k is below 1.
func Classify(areas []Area, k int) Classes {
	steps, at := merged(areas)
	k = min(k, len(steps))
	if k < 1 {
		return Classes{}
	}
	starts := newPartition(steps).starts(k)
	means := make([]float64, k)
	class := make([]int, len(steps))
	for c, from := range starts {
		to := len(steps)
		if c+1 < k {
			to = starts[c+1]
		}
		means[c], _ = meanAndSpread(steps[from:to])
		for i := from; i < to; i++ {
			class[i] = c
		}
	}
	of := make([]int, len(areas))
	for i := range areas {
		of[i] = class[at[i]]
	}
	return Classes{Of: of, Means: means, Explained: explained(steps, class, means)}
}

// merged joins areas of one lightness and sorts them, darkest first; at gives the place there of each area.
func merged(areas []Area) (steps []Area, at []int) {
	sizes := usableSizes(areas)
	order := make([]int, len(areas))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(areas[i].Lightness, areas[j].Lightness)
	})
	at = make([]int, len(areas))
	for _, i := range order {
		l := areas[i].Lightness
		if n := len(steps); n == 0 || cmp.Compare(steps[n-1].Lightness, l) != 0 {
			steps = append(steps, Area{Lightness: l})
		}
		steps[len(steps)-1].Size += sizes[i]
		at[i] = len(steps) - 1
	}
	return steps, at
}

// usableSizes takes a size that is no area for 0, and counts all alike where nothing is left.
func usableSizes(areas []Area) []float64 {
	sizes := make([]float64, len(areas))
	total := 0.0
	for i, a := range areas {
		if a.Size > 0 && !math.IsInf(a.Size, 1) {
			sizes[i] = a.Size
		}
		total += sizes[i]
	}
	if total == 0 {
		for i := range sizes {
			sizes[i] = 1
		}
	}
	return sizes
}

// meanAndSpread is the weighted mean, or the plain one of areas without size, and the weighted sum of squared distances.
func meanAndSpread(areas []Area) (mean, spread float64) {
	size, plain := 0.0, 0.0
	for _, a := range areas {
		size += a.Size
		mean += a.Size * a.Lightness
		plain += a.Lightness
	}
	if size == 0 {
		return plain / float64(len(areas)), 0
	}
	mean /= size
	for _, a := range areas {
		spread += a.Size * (a.Lightness - mean) * (a.Lightness - mean)
	}
	return mean, spread
}

func explained(steps []Area, class []int, means []float64) float64 {
	_, whole := meanAndSpread(steps)
	if whole == 0 {
		return 1
	}
	left := 0.0
	for i, s := range steps {
		d := s.Lightness - means[class[i]]
		left += s.Size * d * d
	}
	return 1 - left/whole
}

// partition holds the running sums from which the cost of any run of steps follows.
type partition struct {
	size, first, second []float64 // sums of size, size times distance, size times its square, before each step
}

func newPartition(steps []Area) partition {
	n := len(steps) + 1
	p := partition{make([]float64, n), make([]float64, n), make([]float64, n)}
	middle, _ := meanAndSpread(steps)
	for i, s := range steps {
		d := s.Lightness - middle
		p.size[i+1] = p.size[i] + s.Size
		p.first[i+1] = p.first[i] + s.Size*d
		p.second[i+1] = p.second[i] + s.Size*d*d
	}
	return p
}

// cost is the weighted sum of squared distances from their mean of the steps from and up to, but not with, to.
func (p partition) cost(from, to int) float64 {
	size := p.size[to] - p.size[from]
	if size <= 0 {
		return 0
	}
	first := p.first[to] - p.first[from]
	return max(0, p.second[to]-p.second[from]-first*first/size)
}

// starts gives the first step of each of the k cheapest runs that together hold all steps; k is at most their number.
func (p partition) starts(k int) []int {
	n := len(p.size) - 1
	best := make([]float64, n+1) // the least cost of the first i steps in c+1 runs
	for i := 1; i <= n; i++ {
		best[i] = p.cost(0, i)
	}
	cuts := make([][]int, k) // where the last of c+1 runs over the first i steps begins
	for c := 1; c < k; c++ {
		best, cuts[c] = p.extend(best, c)
	}
	starts := make([]int, k)
	for c, to := k-1, n; c > 0; c-- {
		starts[c] = cuts[c][to]
		to = starts[c]
	}
	return starts
}

// extend adds one run to the cheapest c runs.
func (p partition) extend(best []float64, c int) (next []float64, cut []int) {
	n := len(p.size) - 1
	next, cut = make([]float64, n+1), make([]int, n+1)
	for i := c + 1; i <= n; i++ {
		next[i] = math.Inf(1)
		for from := c; from < i; from++ {
			if cost := best[from] + p.cost(from, i); cost < next[i] {
				next[i], cut[i] = cost, from
			}
		}
	}
	return next, cut
}
