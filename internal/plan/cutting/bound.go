package cutting

import (
	"iter"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// Bounds that no plan of strips beats. For every width, all items as wide or wider must lie in strips as wide or wider, and
// those take at least as many strips as they would if nothing else were cut. The cloth is at least the sum of these numbers,
// each times the step from its width to the next.
//
// Strips are counted as often as they have rows: a strip in rows is so many strips side by side, and where all are taken
// apart nothing lies in rows any more. So the fewest strips in which nothing does are a bound of that count. For the cloth a
// strip counts once, and what may lie in rows has its part of the length.
//
// How many strips a number of items takes at the least is told by dual feasible functions: functions of an item's length of
// which those in one strip never come to more than 1, so that all of them together come to no more than the strips. (S.
// Fekete and J. Schepers, Mathematical Programming 91, 2001; S. Martello and P. Toth, Discrete Applied Mathematics 28, 1990;
// J. Carlier, F. Clautiaux and A. Moukrim, Computers & Operations Research 34, 2007. Named from memory; the tests hold every
// bound against a search of everything.)

// bound is the least cloth and the fewest strips that the items can take.
func (p *packing) bound() (cloth measure.NM, strips int) {
	return p.leastCloth(func(wide *packing) int { return wide.fewest() }), p.inOneRow().fewest()
}

// sharpBound is the same as bound, with every number of strips told by a relaxation as well, and the cloth by one of its own.
func (p *packing) sharpBound() (cloth measure.NM, strips int) {
	cloth = p.leastCloth(func(wide *packing) int { return max(wide.fewest(), wide.fewestRelaxed()) })
	flat := p.inOneRow()
	_, least := p.relaxed(p.needs(), byCloth)
	return max(cloth, upTo(least)), max(flat.fewest(), flat.fewestRelaxed())
}

// leastCloth is the least cloth by what is told of the strips that all items as wide or wider take.
func (p *packing) leastCloth(fewest func(*packing) int) measure.NM {
	cloth, strips := measure.NM(0), 0
	for i := range p.items {
		last := i+1 == len(p.items)
		if !last && p.items[i+1].across == p.items[i].across {
			continue
		}
		next := measure.NM(0)
		if !last {
			next = p.items[i+1].across
		}
		strips = max(strips, fewest(&packing{p.items[:i+1], p.length, p.budget}))
		cloth += measure.NM(strips) * (p.items[i].across - next)
	}
	return cloth
}

// fewestRelaxed is the fewest strips by a relaxation.
func (p *packing) fewestRelaxed() int {
	if p.budget.spent() {
		return 0
	}
	_, least := p.relaxed(p.needs(), byStrips)
	return int(math.Ceil(least - 1e-6))
}

// fewestFor is a bound of the strips of all plans that take no more than some cloth. Cloth is weighed against strips: by
// whatever weight, what strips and cloth cost together at the least, less what that much cloth costs, is a bound.
func (p *packing) fewestFor(cloth measure.NM, strips int) int {
	if len(p.items) == 0 {
		return 0
	}
	narrowest := float64(p.items[len(p.items)-1].across)
	for _, weight := range []float64{0, 0.25, 1, 4} {
		_, least := p.relaxed(p.needs(), func(width measure.NM, rows int) float64 { return float64(rows) + weight*float64(width)/narrowest })
		strips = max(strips, int(math.Ceil(least-weight*float64(cloth)/narrowest-1e-6)))
	}
	return strips
}

// part is an item's length as a part of a strip's, 0 to 1, and how many there are. What a run takes extra is laid on its
// pieces in equal parts, as if the run were as long as can be; of what lies in rows a piece has its part of the length, in the
// widest strip that there can be.
type part struct {
	length float64
	count  float64
	most   int // in one strip
}

// fewest is the fewest strips that the items can take.
func (p *packing) fewest() int {
	parts := make([]part, 0, len(p.items))
	total, alone := measure.NM(0), 0
	whole := float64(p.length)
	for i := range p.items {
		t, rows := &p.items[i], p.rows(i, p.items[0].across)
		most := p.most(i, p.length, rows)
		runs := up(t.count, most)
		total += measure.NM(t.count)*t.along/measure.NM(rows) + measure.NM(runs)*t.extra
		alone = max(alone, runs)
		parts = append(parts, part{(float64(t.along)/float64(rows) + float64(t.extra)/float64(most)) / whole, float64(t.count), most})
	}
	best := max(alone, int((total+p.length-1)/p.length))
	if p.budget.spent() {
		return best
	}
	for f := range functions(parts) {
		if !p.budget.spend(len(parts)) {
			break
		}
		sum := 0.0
		for i := range parts {
			sum += f(parts[i].length) * parts[i].count
		}
		best = max(best, int(math.Ceil(sum-1e-6)))
	}
	return best
}

// grain is how near lengths must lie to count as equal: too small a part of a strip to be cut.
const grain = 1e-12

// maxWays is how many functions of one sort are tried.
const maxWays = 40

// functions are dual feasible functions that suit the parts.
func functions(parts []part) iter.Seq[func(float64) float64] {
	return func(yield func(func(float64) float64) bool) {
		for k := 1; k <= maxWays; k++ {
			if !yield(inSteps(float64(k))) {
				return
			}
		}
		cuts := cutsOf(parts)
		for _, e := range cuts {
			if !yield(withoutSmall(e)) || !yield(inUnits(e)) {
				return
			}
		}
		for _, e := range cuts {
			for _, q := range parts {
				if !yield(composed(inSteps(float64(q.most)), withoutSmall(e))) {
					return
				}
			}
		}
	}
}

// cutsOf are the first lengths up to a half at which functions may jump: the items' own, and what is left beside one.
func cutsOf(parts []part) []float64 {
	var list []float64
	for _, q := range parts {
		for _, e := range []float64{q.length, 1 - q.length} {
			if e > grain && e <= 0.5 && len(list) < maxWays && !slices.Contains(list, e) {
				list = append(list, e)
			}
		}
	}
	return list
}

// inSteps counts an item as so many k-ths of a strip as there would be at the least (Fekete and Schepers, u^(k)).
func inSteps(k float64) func(float64) float64 {
	return func(x float64) float64 {
		n := x * (k + 1)
		if near := math.Round(n); math.Abs(n-near) < grain*(k+1) {
			return near / (k + 1)
		}
		return math.Floor(n) / k
	}
}

// withoutSmall leaves out what is shorter than e, and counts what leaves less than e beside it as a whole strip (Martello
// and Toth).
func withoutSmall(e float64) func(float64) float64 {
	return func(x float64) float64 {
		switch {
		case x > 1-e+grain:
			return 1
		case x < e-grain:
			return 0
		}
		return x
	}
}

// inUnits counts in units of e, rounded down, and what is longer than a half by what it leaves (Carlier and others).
func inUnits(e float64) func(float64) float64 {
	whole := math.Floor(1/e + grain)
	return func(x float64) float64 {
		switch {
		case x > 0.5+grain:
			return 1 - math.Floor((1-x)/e+grain)/whole
		case x >= 0.5-grain:
			return 0.5
		}
		return math.Floor(x/e+grain) / whole
	}
}

// composed is f after g: dual feasible if both are.
func composed(f, g func(float64) float64) func(float64) float64 {
	return func(x float64) float64 { return f(g(x)) }
}
