package scraps

import "eighthturn/internal/stop"

// Webs are packed into sets as parcels into boxes. The largest go first, each into the first set that still has room: that is the
// best where each size divides the next, as 2, 4 and 8 do. Of a few webs all ways are looked through as well.

// maxPacked is how many webs are looked through, and maxPackSteps how many steps that takes at the most.
const (
	maxPacked    = 40
	maxPackSteps = 20_000
)

// pack is which set each web comes from so that all are whole and the sets, each sewn so often, are few; and how many that are.
func (s *StripSet) pack(sign *stop.Sign, sewn int) (of []int, sets int) {
	p := packing{StripSet: s, sign: sign, sewn: sewn, order: s.largestFirst(), of: make([]int, len(s.Webs))}
	of, sets = p.firstFit(), len(p.loads)
	if len(s.Webs) > maxPacked {
		return of, sets
	}
	for fewer := sets - 1; fewer > 0; fewer-- {
		p.loads, p.left, p.of = make([][2]int, fewer), maxPackSteps, make([]int, len(s.Webs))
		if !p.fits(0, 0) {
			break
		}
		of, sets = p.of, fewer
	}
	return of, sets
}

// apart is the same for so many sets, where no more than some pairs of neighboring webs come from one; nil where that is not found.
func (s *StripSet) apart(sign *stop.Sign, sewn, sets, pairs int) []int {
	if len(s.Webs) > maxPacked {
		return nil
	}
	p := packing{StripSet: s, sign: sign, sewn: sewn, order: s.largestFirst(), of: make([]int, len(s.Webs)), loads: make([][2]int, sets), left: maxPackSteps, apart: true, pairs: pairs}
	for w := range p.of {
		p.of[w] = -1
	}
	if !p.fits(0, 0) {
		return nil
	}
	return p.of
}

// packing is webs on their way into sets.
type packing struct {
	*StripSet
	sign  *stop.Sign
	sewn  int
	order []int
	of    []int // by web
	loads [][2]int
	left  int  // steps
	apart bool // neighbors go into different sets
	pairs int  // but for so many
}

func (p *packing) firstFit() []int {
	from := map[[2]int]int{} // by wedges of a web: the first set that may have room for such a one
	for _, w := range p.order {
		wedges := p.Webs[w].Wedges
		i := from[wedges]
		for ; i < len(p.loads) && !p.holds(sum(p.loads[i], wedges), p.sewn); i++ {
			p.sign.Step(1)
		}
		if i == len(p.loads) {
			p.loads = append(p.loads, [2]int{})
		}
		p.loads[i], from[wedges], p.of[w] = sum(p.loads[i], wedges), i, i
	}
	return p.of
}

// fits puts the webs from the i-th on into the sets, of which so many are begun; false if that cannot be or takes too long.
func (p *packing) fits(i, begun int) bool {
	if i == len(p.order) {
		return true
	}
	w := p.order[i]
	for n := range min(begun+1, len(p.loads)) {
		if p.left--; p.left < 0 {
			return false
		}
		p.sign.Step(1)
		kept, met := p.loads[n], p.meets(w, n)
		if more := sum(kept, p.Webs[w].Wedges); met <= p.pairs && p.holds(more, p.sewn) {
			p.loads[n], p.of[w], p.pairs = more, n, p.pairs-met
			if p.fits(i+1, max(begun, n+1)) {
				return true
			}
			p.loads[n], p.of[w], p.pairs = kept, -1, p.pairs+met
		}
	}
	return false
}

// meets is how many neighbors of a web are in a set, where that is to be avoided.
func (p *packing) meets(w, set int) int {
	count := 0
	for _, n := range p.Webs[w].Beside {
		if p.apart && n.Mine < 0 && p.of[n.Web] == set {
			count++
		}
	}
	return count
}
