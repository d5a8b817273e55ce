package cutting

import (
	"slices"

	"eighthturn/internal/measure"
)

// maxSteps is how many strips a search lays down before it gives up; it is then no longer known to be the best.
const maxSteps = 1000

// maxSearched is how many strips a search begins with at the most. Of more, the rules' like strips stay as they are, but
// for a few of each.
const maxSearched = 24

// searching looks for a better packing by laying down strip after strip in every way.
type searching struct {
	*packing
	left   []int
	now    solution
	best   *solution
	steps  int
	cloth  measure.NM // no packing takes less
	strips int        // or fewer
}

// improved looks for something better than a solution.
func (p *packing) improved(s *solution, cloth measure.NM, strips int) *solution {
	kept, left := p.keep(s)
	rest := solution{}
	for _, k := range kept {
		p.add(&rest, k)
	}
	f := &searching{packing: p, left: left, now: rest, best: s, steps: maxSteps, cloth: cloth, strips: strips}
	f.lay(0)
	return f.best
}

// keep says which strips of a solution stay as they are, and what is then left to be cut.
func (p *packing) keep(s *solution) (kept []pattern, left []int) {
	left = make([]int, len(p.items))
	free := max(2, maxSearched/max(1, len(s.patterns)))
	if s.strips <= maxSearched {
		free = s.strips
	}
	for _, t := range s.patterns {
		again := min(t.times, free)
		if t.times > again {
			kept = append(kept, pattern{t.width, t.counts, t.times - again})
		}
		for i, n := range t.counts {
			left[i] += n * again
		}
	}
	return kept, left
}

// lay lays down one more strip in every way, and goes on from there. It is false when nothing better can come or the
// steps are used up.
func (f *searching) lay(lead int) bool {
	for lead < len(f.left) && f.left[lead] == 0 {
		lead++
	}
	if lead == len(f.left) {
		if f.now.better(f.best) {
			best := f.now
			best.patterns = merged(best.patterns)
			f.best = &best
		}
		return f.best.cloth > f.cloth || f.best.strips > f.strips
	}
	if f.steps--; f.steps < 0 || !f.budget.spend(len(f.left)) {
		return false
	}
	if cloth, strips := f.least(lead); f.now.cloth+cloth > f.best.cloth || f.now.cloth+cloth == f.best.cloth && f.now.strips+strips >= f.best.strips {
		return true
	}
	more := true
	p := *f.packing
	p.fillings(f.left, lead, maxSteps, func(g filling) bool {
		counts := slices.Clone(g.counts)
		before := f.now
		f.now.patterns = append(slices.Clip(f.now.patterns), pattern{p.items[lead].across, counts, 1})
		f.now.cloth += p.items[lead].across
		f.now.strips += p.rowsFor(counts, p.items[lead].across)
		for i, n := range counts {
			f.left[i] -= n
		}
		more = f.lay(lead)
		for i, n := range counts {
			f.left[i] += n
		}
		f.now = before
		return more
	})
	return more
}

// least is what the items that are left take at the least: for each width the length of all items as wide or wider.
func (f *searching) least(lead int) (cloth measure.NM, strips int) {
	var length, inRows measure.NM
	wide := 0
	for i := lead; i < len(f.left); i++ {
		if n := f.left[i]; n > 0 {
			t := &f.items[i]
			one := measure.NM(n)*t.along + measure.NM(up(n, f.most(i, f.length, 1)))*t.extra
			length += one
			inRows += one / measure.NM(f.rows(i, f.items[lead].across))
		}
		if last := i+1 == len(f.left); last || f.items[i+1].across != f.items[i].across {
			next := measure.NM(0)
			if !last {
				next = f.items[i+1].across
			}
			wide = max(wide, int((inRows+f.length-1)/f.length))
			cloth += measure.NM(wide) * (f.items[i].across - next)
			strips = max(strips, int((length+f.length-1)/f.length))
		}
	}
	return cloth, strips
}

// merged puts like strips together, in the order of the first of each.
func merged(list []pattern) []pattern {
	var out []pattern
	for _, t := range list {
		at := slices.IndexFunc(out, func(o pattern) bool { return o.width == t.width && slices.Equal(o.counts, t.counts) })
		if at < 0 {
			out = append(out, t)
			continue
		}
		out[at].times += t.times
	}
	return out
}
