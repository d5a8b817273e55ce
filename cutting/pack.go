package cutting

import (
	"math"
	"slices"

	"eighthturn/measure"
)

// item is so many like things to be cut off strips: each takes some length of a strip, and a run of them an extra length
// once (wedges, whose ends slant).
type item struct {
	across measure.NM // of the strip, at the least
	along  measure.NM // of the strip, each
	extra  measure.NM // once a run
	count  int
}

// pattern is a way to fill a strip, and how many strips are filled so.
type pattern struct {
	width  measure.NM
	counts []int // of the items, by index
	times  int
}

// packing is strips of one length that are filled with items. Items stand widest first, and of one width the longest.
type packing struct {
	items  []item
	length measure.NM
}

// most is how many of an item go into some length of strip.
func (p *packing) most(i int, length measure.NM) int {
	t := &p.items[i]
	if length < t.along+t.extra {
		return 0
	}
	return int((length - t.extra) / t.along)
}

// solution is a packing done.
type solution struct {
	patterns []pattern
	cloth    measure.NM
	strips   int
}

func (s *solution) add(width measure.NM, counts []int, times int) {
	s.patterns = append(s.patterns, pattern{width, slices.Clone(counts), times})
	s.cloth += measure.NM(times) * width
	s.strips += times
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
	}
}

// pack fills strips with all items: with the least cloth that it finds, and with that in the fewest strips.
func (p *packing) pack() *solution {
	counts := p.counts()
	cloth, strips := p.bound()
	best := p.byRules(counts, cloth, strips)
	if best.cloth <= cloth && best.strips <= strips {
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
		if best.cloth <= cloth && best.strips <= strips {
			break
		}
	}
	return best
}

// byCloth is the cost of a strip as cloth.
func byCloth(width measure.NM) float64 { return float64(width) }

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
		s.add(p.widest(w.counts), w.counts, times)
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
		s.add(p.items[lead].across, counts, times)
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
		if n := min(left[i], p.most(i, room)); n > 0 {
			counts[i] = n
			room -= measure.NM(n)*p.items[i].along + p.items[i].extra
		}
	}
	return counts
}

// mostFillings is how many ways to fill one strip are looked at.
const mostFillings = 400

// bestFilling is the best way to fill a strip that begins with an item.
func (p *packing) bestFilling(left []int, lead int, better rule) []int {
	var best *filling
	p.fillings(left, lead, mostFillings, func(f filling) bool {
		g := filling{f.counts[lead:], f.used, f.usedBy}
		if best == nil || better(&g, best) {
			best = &filling{slices.Clone(g.counts), f.used, f.usedBy}
		}
		return true
	})
	return append(make([]int, lead), best.counts...)
}

// fillings gives the ways to fill a strip with what is left, an item at the least of it, to which nothing more can be
// added: up to a number of them, those with most of the first items first. It ends when told to.
func (p *packing) fillings(left []int, lead, most int, each func(filling) bool) {
	f := &filler{packing: p, left: left, lead: lead, budget: most, each: each, counts: make([]int, len(left))}
	f.from(lead, p.length, 0)
}

type filler struct {
	*packing
	left   []int
	lead   int
	budget int
	each   func(filling) bool
	counts []int
}

// from fills the room that is left with items from one on. It is false when it is to end.
func (f *filler) from(i int, room, usedBy measure.NM) bool {
	if i == len(f.left) {
		if !f.full(room) {
			return true
		}
		f.budget--
		return f.each(filling{f.counts, f.length - room, usedBy}) && f.budget > 0
	}
	least := 0
	if i == f.lead {
		least = 1
	}
	for n := min(f.left[i], f.most(i, room)); n >= least; n-- {
		f.counts[i] = n
		used := measure.NM(0)
		if n > 0 {
			used = measure.NM(n)*f.items[i].along + f.items[i].extra
		}
		by := usedBy
		if f.items[i].across == f.items[f.lead].across {
			by += used
		}
		if !f.from(i+1, room-used, by) {
			f.counts[i] = 0
			return false
		}
	}
	f.counts[i] = 0
	return true
}

// full says whether nothing more that is left goes into the room.
func (f *filler) full(room measure.NM) bool {
	for i := f.lead; i < len(f.left); i++ {
		more := f.items[i].along
		if f.counts[i] == 0 {
			more += f.items[i].extra
		}
		if f.counts[i] < f.left[i] && more <= room {
			return false
		}
	}
	return true
}
