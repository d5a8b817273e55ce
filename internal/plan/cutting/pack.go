package cutting

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// item is so many like things to be cut off strips: each takes some length of a strip, and a run of them an extra length
// once (wedges, whose ends slant).
type item struct {
	across measure.NM // of the strip, at the least
	along  measure.NM // of the strip, each
	extra  measure.NM // once a run
	count  int
	stacks bool // in a strip as wide as two of them, or more, they may lie in rows
}

// pattern is a way to fill a strip, and how many strips are filled so. Nothing lies in more rows than it must for all to go in.
type pattern struct {
	width  measure.NM
	counts []int // of the items, by index
	times  int
}

// packing is strips of one length that are filled with items. Items stand widest first, and of one width the longest.
type packing struct {
	items  []item
	length measure.NM
	budget *budget
}

// rows is in how many rows an item lies in a strip of some width.
func (p *packing) rows(i int, width measure.NM) int {
	if t := &p.items[i]; t.stacks && width >= 2*t.across {
		return int(width / t.across)
	}
	return 1
}

// most is how many of an item, in so many rows, go into some length of strip.
func (p *packing) most(i int, length measure.NM, rows int) int {
	t := &p.items[i]
	if length < t.along+t.extra {
		return 0
	}
	return rows * int((length-t.extra)/t.along)
}

// takes is how much of a strip so many of an item in rows take.
func (p *packing) takes(i, n, rows int) measure.NM {
	if n == 0 {
		return 0
	}
	return measure.NM(up(n, rows))*p.items[i].along + p.items[i].extra
}

// rowsFor is in how many rows at the most things must lie so that all of them go into a strip of some width, which holds them.
func (p *packing) rowsFor(counts []int, width measure.NM) int {
	for most := 1; ; most++ {
		room := p.length
		for i, n := range counts {
			room -= p.takes(i, n, min(p.rows(i, width), most))
		}
		if room >= 0 {
			return most
		}
	}
}

// solution is a packing done.
type solution struct {
	patterns []pattern
	cloth    measure.NM
	strips   int // each counted as often as it has rows
}

// add adds strips that are filled alike.
func (p *packing) add(s *solution, t pattern) {
	s.patterns = append(s.patterns, pattern{t.width, slices.Clone(t.counts), t.times})
	s.cloth += measure.NM(t.times) * t.width
	s.strips += t.times * p.rowsFor(t.counts, t.width)
}

// better says whether s takes less cloth than t, or as much in fewer strips.
func (s *solution) better(t *solution) bool {
	return s.cloth < t.cloth || s.cloth == t.cloth && s.strips < t.strips
}

// rule says which of two ways to fill a strip is the better one.
type rule func(a, b *filling) bool

// filling is one way to fill a strip: what it uses in all, and of items as wide as the strip.
type filling struct {
	counts       []int
	used, usedBy measure.NM
	area         float64 // of its items
}

// rules are tried in turn. All of them begin a strip with the widest and longest item that is left.
func rules() []rule {
	return []rule{
		nil, // as many of each item in turn as go in
		func(a, b *filling) bool { return a.used > b.used },
		func(a, b *filling) bool { return a.usedBy > b.usedBy || a.usedBy == b.usedBy && a.used > b.used },
		func(a, b *filling) bool {
			return a.counts[0] > b.counts[0] || a.counts[0] == b.counts[0] && a.used > b.used
		},
		func(a, b *filling) bool { return a.area > b.area },
	}
}

// pack fills strips with all items: with the least cloth that it finds, and with that in the fewest strips.
func (p *packing) pack() *solution {
	counts := p.counts()
	cloth, strips := p.bound()
	best := p.byRules(counts, cloth, strips)
	if best.cloth <= cloth && best.strips <= strips || p.budget.spent() {
		return best
	}
	r, least := p.relaxed(p.needs(), byCloth)
	if s := p.rounded(r, counts); s.better(best) {
		best = s
	}
	return p.improved(best, max(cloth, upTo(least)), strips)
}

// counts is how many of each item are wanted.
func (p *packing) counts() []int {
	counts := make([]int, len(p.items))
	for i := range p.items {
		counts[i] = p.items[i].count
	}
	return counts
}

// needs is the same for a relaxation.
func (p *packing) needs() []float64 {
	needs := make([]float64, len(p.items))
	for i := range p.items {
		needs[i] = float64(p.items[i].count)
	}
	return needs
}

// upTo is a bound in whole nanometres; what a computer's arithmetic may be off by is taken off.
func upTo(bound float64) measure.NM { return measure.NM(math.Ceil(bound - 1e-9*bound - 1e-6)) }

// byRules is the best that the rules find; they end with the first that reaches the bounds.
func (p *packing) byRules(counts []int, cloth measure.NM, strips int) *solution {
	var best *solution
	for _, r := range rules() {
		s := p.greedy(slices.Clone(counts), r)
		if best == nil || s.better(best) {
			best = s
		}
		if best.cloth <= cloth && best.strips <= strips || p.budget.spent() {
			break
		}
	}
	return best
}

// byCloth is the cost of a strip as cloth.
func byCloth(width measure.NM, _ int) float64 { return float64(width) }

// byStrips is the cost of every strip as one, in rows or not.
func byStrips(measure.NM, int) float64 { return 1 }

// inOneRow is the packing with nothing in rows.
func (p *packing) inOneRow() *packing {
	flat := &packing{slices.Clone(p.items), p.length, p.budget}
	for i := range flat.items {
		flat.items[i].stacks = false
	}
	return flat
}

// rounded cuts what a relaxation cuts as often as that is whole, and the rest by the rules.
func (p *packing) rounded(r *relaxation, counts []int) *solution {
	left := slices.Clone(counts)
	s := &solution{}
	for j, w := range r.ways {
		times := int(r.often[j] + 1e-6)
		for i, n := range w.counts {
			if n > 0 {
				times = min(times, left[i]/n)
			}
		}
		if times <= 0 {
			continue
		}
		for i, n := range w.counts {
			left[i] -= n * times
		}
		p.add(s, pattern{p.widest(w.counts), w.counts, times})
	}
	rest := p.byRules(left, 0, 0)
	s.patterns = merged(append(s.patterns, rest.patterns...))
	s.cloth, s.strips = s.cloth+rest.cloth, s.strips+rest.strips
	return s
}

// widest is the width of the strip that items ask for.
func (p *packing) widest(counts []int) measure.NM {
	return p.items[slices.IndexFunc(counts, func(n int) bool { return n > 0 })].across
}

// greedy fills strip after strip by a rule, like strips together.
func (p *packing) greedy(left []int, better rule) *solution {
	s := &solution{}
	for lead := 0; ; {
		for lead < len(left) && left[lead] == 0 {
			lead++
		}
		if lead == len(left) {
			return s
		}
		counts := p.firstFilling(left, lead)
		if better != nil {
			counts = p.bestFilling(left, lead, better)
		}
		times := repeats(left, counts)
		for i, n := range counts {
			left[i] -= n * times
		}
		p.add(s, pattern{p.items[lead].across, counts, times})
	}
}

// repeats is how often a pattern can be cut before something in it runs out.
func repeats(left, counts []int) int {
	times := 0
	for i, n := range counts {
		if n > 0 && (times == 0 || left[i]/n < times) {
			times = left[i] / n
		}
	}
	return times
}

// firstFilling takes as many of each item in turn as go in.
func (p *packing) firstFilling(left []int, lead int) []int {
	counts := make([]int, len(left))
	room := p.length
	for i := lead; i < len(left); i++ {
		rows := p.rows(i, p.items[lead].across)
		counts[i] = min(left[i], p.most(i, room, rows))
		room -= p.takes(i, counts[i], rows)
	}
	return counts
}

// maxFillings is how many ways to fill one strip are looked at.
const maxFillings = 400

// bestFilling is the best way to fill a strip that begins with an item.
func (p *packing) bestFilling(left []int, lead int, better rule) []int {
	var best *filling
	p.fillings(left, lead, maxFillings, func(f filling) bool {
		g := filling{f.counts[lead:], f.used, f.usedBy, f.area}
		if best == nil || better(&g, best) {
			g.counts = slices.Clone(g.counts)
			best = &g
		}
		return true
	})
	if best == nil { // the budget was spent before there was one
		return p.firstFilling(left, lead)
	}
	return append(make([]int, lead), best.counts...)
}

// fillings gives the ways to fill a strip with what is left, an item at the least of it, to which nothing more can be
// added: up to a number of them, those with most of the first items first. It ends when told to.
func (p *packing) fillings(left []int, lead, most int, each func(filling) bool) {
	f := &filler{packing: p, left: left, lead: lead, budget: most, each: each, counts: make([]int, len(left)), rows: make([]int, len(left))}
	width := p.items[lead].across
	for _, rows := range p.rowCounts(width) {
		for i := range p.items {
			f.rows[i] = p.rowsUpTo(i, width, rows)
		}
		if !f.from(lead, p.length, 0) {
			return
		}
	}
}

type filler struct {
	*packing
	left   []int
	lead   int
	budget int
	each   func(filling) bool
	counts []int
	rows   []int // of each item
	area   float64
}

// from fills the room that is left with items from one on. It is false when it is to end.
func (f *filler) from(i int, room, usedBy measure.NM) bool {
	if !f.packing.budget.spend(1) {
		return false
	}
	if i == len(f.left) {
		f.packing.budget.spend((len(f.left) - f.lead) / 4)
		if !f.full(room) {
			return true
		}
		f.budget--
		return f.each(filling{f.counts, f.length - room, usedBy, f.area}) && f.budget > 0
	}
	least := 0
	if i == f.lead {
		least = 1
	}
	t, rows, area := &f.items[i], f.rows[i], f.area
	more := true
	for n := min(f.left[i], f.most(i, room, rows)); more && n >= least; n = fewer(n, rows) {
		f.counts[i] = n
		used := f.takes(i, n, rows)
		by := usedBy
		if t.across == f.items[f.lead].across {
			by += used
		}
		f.area = area + float64(float64(n)*float64(t.across)*float64(t.along))
		more = f.from(i+1, room-used, by)
	}
	f.counts[i], f.area = 0, area
	return more
}

// fewer is the number of items that take a length less in rows.
func fewer(n, rows int) int {
	if n == 0 {
		return -1
	}
	return (up(n, rows) - 1) * rows
}

// full says whether nothing more that is left goes into the room.
func (f *filler) full(room measure.NM) bool {
	for i := f.lead; i < len(f.left); i++ {
		n := f.counts[i]
		if n < f.left[i] && f.takes(i, n+1, f.rows[i])-f.takes(i, n, f.rows[i]) <= room {
			return false
		}
	}
	return true
}
