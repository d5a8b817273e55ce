package cutting

import (
	"encoding/binary"
	"slices"
	"strconv"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// setAt is the strip set that bands make, one way round or the other.
type setAt struct {
	set      int
	reversed bool
}

// setOf is the strip set of a patch. Patches whose bands are of equal fabrics and widths share one, and so do those whose
// bands stand in the opposite order, since a wedge cut the other way round has them so.
func (p *planning) setOf(patch int) (set int, reversed bool) {
	t := &p.top.Patches[patch]
	given := p.top.CutFacts.Sets[t.Set].BandsCut
	forth, back := p.keys[0][:0], p.keys[1][:0]
	band := func(list []byte, i int) []byte {
		at := i
		if t.Reversed {
			at = int(t.Count) - 1 - i
		}
		list = binary.BigEndian.AppendUint32(list, uint32(p.top.Faces[int(t.First)+i].Fabric))
		return binary.BigEndian.AppendUint64(list, uint64(given[at]))
	}
	for i := range int(t.Count) {
		forth, back = band(forth, i), band(back, int(t.Count)-1-i)
	}
	p.keys = [2][]byte{forth, back}
	if at, ok := p.sets[string(forth)]; ok {
		return at.set, at.reversed
	}
	if at, ok := p.sets[string(back)]; ok {
		at.reversed = !at.reversed
		p.sets[string(forth)] = at
		return at.set, at.reversed
	}
	alike := string(forth) == string(back)
	at := setAt{p.newSet(patch, alike), t.Reversed && !alike}
	p.sets[string(forth)] = at
	return at.set, at.reversed
}

// How many different strip sets a plan may have, and how many strips they may have in all: pools of scraps in their strips can
// make a set for every wedge.
const (
	maxSets      = 500
	maxSetStrips = 5000
)

// tooManySets says so at the first set that is one too many.
func (p *planning) tooManySets(s *StripSet, at Place) {
	before := p.stripsOfSets
	p.stripsOfSets += len(s.Bands)
	const hint = "name one fabric for some of its strips, or use a smaller pool"
	switch {
	case before > maxSetStrips || len(p.Sets) > maxSets:
	case p.stripsOfSets > maxSetStrips:
		p.fault(at, hint, "the pools of %q make different strip sets of more than %d strips in all; the limit is %d", s.Name, maxSetStrips, maxSetStrips)
	case len(p.Sets) == maxSets:
		p.fault(at, hint, "the pools of %q make more than %d different strip sets; the limit is %d", s.Name, maxSets, maxSets)
	}
}

// newSet begins a strip set for a patch's bands, which stand as the layout has them.
func (p *planning) newSet(patch int, alike bool) int {
	t := &p.top.Patches[patch]
	given := &p.top.CutFacts.Sets[t.Set]
	s := StripSet{Name: given.Name, StripCut: p.top.CutFacts.StripsCut[given.Height], Alike: alike, Lines: [2]int{-1, -1}}
	q := p.top.Seam
	for i, cut := range given.BandsCut {
		face := int(t.First) + i
		if t.Reversed {
			face = int(t.First) + int(t.Count) - 1 - i
		}
		s.Bands = append(s.Bands, Band{
			Fabric: p.fabric(int(p.top.Faces[face].Fabric)), WidthCut: cut, WidthFinished: cut - 2*q, OnRuler: p.ruler(blocks.Exact{Cut: cut}),
		})
		s.WidthCut += cut
	}
	s.WidthCut -= measure.NM(t.Count-1) * 2 * q
	if off := s.WidthCut - s.StripCut; off > measure.NM(t.Count) || -off > measure.NM(t.Count) {
		p.fault(Place(t.Place.Span()), "let one of its strips be the rest", "sewn together, %q comes to %s, but wedges are cut from strips of %s",
			s.Name, p.text(s.WidthCut), p.text(s.StripCut))
	}
	p.tooManySets(&s, Place(t.Place.Span()))
	p.Sets = append(p.Sets, s)
	return len(p.Sets) - 1
}

// sewSets counts the strip sets, once all patches are gathered.
func (p *planning) sewSets() {
	for i := range p.Sets {
		s := &p.Sets[i]
		s.LengthCut = p.Fabrics[s.Bands[0].Fabric].UsableWidth
		for _, b := range s.Bands {
			s.LengthCut = min(s.LengthCut, p.Fabrics[b.Fabric].UsableWidth)
		}
		p.sewSet(s)
	}
}

// sewSet counts the sets of a length that give a strip set's wedges.
func (p *planning) sewSet(s *StripSet) {
	for way, n := range s.Lines {
		if n >= 0 {
			s.Wanted[way], s.OnHand[way] = p.Lines[n].Pieces, p.Lines[n].OnHand
		}
	}
	piece := p.wedgeOf(s)
	if s.PerSet = nested(s.LengthCut, piece); s.PerSet > 0 && s.toCut() != [2]int{} { // else it is said with the other pieces that are too large
		s.run(piece, p.Steps.Trimmed)
	}
}

// wedgeOf is the piece that is cut from a strip set.
func (p *planning) wedgeOf(s *StripSet) *Piece { return &p.Lines[max(s.Lines[0], s.Lines[1])].Piece }

// wants is what each fabric's strips must give, with strip sets as long as is best. How long that is, is found for one quilt,
// whatever the copies: it shifts cloth from one fabric to another, and more quilts are not to need less of either.
func (p *planning) wants() ([][]demand, [][]joining) {
	if p.Copies > 1 {
		o := p.options
		o.Copies = 1
		one := plan(p.sign, p.top, o)
		list := one.demands()
		one.shorterSets(list, one.joinings())
		for i := range p.Sets {
			if length := one.Sets[i].LengthCut; length != p.Sets[i].LengthCut {
				p.Sets[i].LengthCut = length
				p.sewSet(&p.Sets[i])
			}
		}
		list = p.demands()
		joinings := p.joinings()
		return p.quiltByQuilt(one, list, joinings), joinings
	}
	list := p.demands() // which of the long pieces are joined shows then
	joinings := p.joinings()
	return p.shorterSets(list, joinings), joinings
}

// maxQuiltByQuilt is how many strip sets are tried quilt by quilt.
const maxQuiltByQuilt = 6

// quiltByQuilt sews the sets for every quilt by itself where that takes less cloth than sewing them together: fewer sets may
// go together worse with what else is cut.
func (p *planning) quiltByQuilt(one *planning, list [][]demand, joinings [][]joining) [][]demand {
	if len(p.Faults) > 0 {
		return list
	}
	for i := range min(len(p.Sets), maxQuiltByQuilt) {
		s, kept := &p.Sets[i], p.Sets[i]
		if s.OnHand != [2]int{} { // which are used up in one quilt
			continue
		}
		before := p.clothOfSet(s, list, joinings)
		s.Runs = slices.Clone(one.Sets[i].Runs)
		for n := range s.Runs {
			s.Runs[n].Sets *= p.Copies
		}
		s.share()
		if now := p.demands(); p.clothOfSet(s, now, joinings) < before {
			list = now
		} else {
			*s = kept
		}
	}
	p.demands() // units are those of the sets that were kept
	return list
}

// shorterSets makes strip sets shorter where their strips then come from beside lengthwise pieces or from precuts, and that takes
// less yardage in all. It gives what each fabric's strips must then give.
func (p *planning) shorterSets(list [][]demand, joinings [][]joining) [][]demand {
	if len(p.Faults) > 0 {
		return list
	}
	tried := 0
	for i := range p.Sets {
		s := &p.Sets[i]
		for _, b := range s.Bands {
			for _, length := range p.Fabrics[b.Fabric].shorter() {
				if len(s.Runs) == 0 || s.Runs[0].Sets < 2 && p.Fabrics[b.Fabric].From == nil || length >= s.LengthCut || nested(length, p.wedgeOf(s)) < minWedges || tried == maxShorter {
					continue
				}
				tried++
				before, kept := p.clothOfSet(s, list, joinings), *s
				s.LengthCut = length
				p.sewSet(s)
				if now := p.demands(); p.clothOfSet(s, now, joinings) < before {
					list = now
				} else {
					*s = kept
				}
			}
		}
	}
	if tried > 0 {
		p.demands() // units are those of the sets that were kept
	}
	return list
}

// shorter are the lengths of strips from beside lengthwise pieces, and from precuts.
func (f *Fabric) shorter() []measure.NM {
	var list []measure.NM
	if len(f.Blocks) > 0 {
		list = append(list, f.Blocks[0].LeftWidthCut)
	}
	if f.From != nil {
		list = append(list, f.From.sizes()[0].length)
	}
	return list
}

// maxShorter is how many strip sets are tried shorter.
const maxShorter = 4

// minWedges is how many wedges a strip set must give to be worth sewing.
const minWedges = 5

// clothOfSet is what the fabrics of a strip set take.
func (p *planning) clothOfSet(s *StripSet, list [][]demand, joinings [][]joining) measure.NM {
	var cloth measure.NM
	for i := range p.Fabrics {
		if slices.ContainsFunc(s.Bands, func(b Band) bool { return b.Fabric == i }) {
			f := p.Fabrics[i]
			f.budget = p.trials
			f.layBest(list[i], joinings[i])
			cloth += f.LengthCut
		}
	}
	return cloth
}

// nested is how many wedges or tumblers a strip of a length gives.
func nested(length measure.NM, p *Piece) int { return blocks.NestedIn(length, p.WideCut, p.NarrowCut) }

// nestedLength is the strip that so many wedges or tumblers take.
func nestedLength(n int, p *Piece) measure.NM { return p.WideCut + measure.NM(n-1)*p.PitchCut() }

// run finds how many sets are sewn: as few as give enough wedges of both kinds, the last only as long as it need be.
func (s *StripSet) run(piece *Piece, step measure.NM) {
	s.FirstOfSet, s.SecondOfSet = (s.PerSet+1)/2, s.PerSet/2
	sets := s.fewest()
	last := 1
	for s.short(sets-1, last) {
		last++
	}
	length := min(s.LengthCut, measure.RoundUp(nestedLength(last, piece), step))
	if last == s.PerSet || length == s.LengthCut {
		last, length = s.PerSet, s.LengthCut
		s.Runs = []SetRun{{Sets: sets, LengthCut: length, Wedges: last}}
	} else {
		s.Runs = []SetRun{{Sets: sets - 1, LengthCut: s.LengthCut, Wedges: s.PerSet}, {Sets: 1, LengthCut: length, Wedges: last}}
		if sets == 1 {
			s.Runs = s.Runs[1:]
		}
	}
	s.share()
}

// toCut is how many wedges of each order are cut.
func (s *StripSet) toCut() [2]int {
	return [2]int{s.Wanted[0] - s.OnHand[0], s.Wanted[1] - s.OnHand[1]}
}

// fewest is the least number of whole sets that gives enough of both kinds.
func (s *StripSet) fewest() int {
	cut, m := s.toCut(), s.PerSet
	a, b := cut[0], cut[1]
	switch {
	case s.Alike:
		return up(a, m)
	case m%2 == 0:
		return up(max(a, b), m/2)
	}
	return max(up(a, (m+1)/2), up(b, (m+1)/2), up(a+b, m))
}

// short says whether some whole sets and one of a number of wedges do not give enough.
func (s *StripSet) short(sets, last int) bool {
	cut := s.toCut()
	if s.Alike {
		return sets*s.PerSet+last < cut[0]
	}
	each, odd := sets*(s.PerSet/2)+last/2, sets*(s.PerSet%2)+last%2
	return max(0, cut[0]-each)+max(0, cut[1]-each) > odd
}

// share counts what the sets give: where the number of wedges is odd, one more of the kind that is cut first.
func (s *StripSet) share() {
	each, odd := 0, 0
	for _, r := range s.Runs {
		each += r.Sets * (r.Wedges / 2)
		odd += r.Sets * (r.Wedges % 2)
	}
	if s.Alike {
		s.Given = [2]int{2*each + odd, 0}
	} else {
		reversed := max(0, s.toCut()[1]-each)
		s.Given = [2]int{each + odd - reversed, each + reversed}
		for i := range s.Runs {
			r := &s.Runs[i]
			if r.Wedges%2 == 1 {
				r.FirstReversed = min(reversed, r.Sets)
				reversed -= r.FirstReversed
			}
		}
	}
	cut := s.toCut()
	s.LeftOver = [2]int{s.Given[0] - cut[0], s.Given[1] - cut[1]}
}

// up is a/b rounded up.
func up(a, b int) int { return (a + b - 1) / b }

// SetName is a strip set's name, with a number where several fabrics make sets of one name.
func (p *Plan) SetName(n int) string {
	if at := p.setNumbers[n]; at > 0 {
		return p.Sets[n].Name + " " + strconv.Itoa(at)
	}
	return p.Sets[n].Name
}

// numberSets numbers the sets of each name, those that are not alone with it.
func (p *Plan) numberSets() {
	count, at := map[string]int{}, map[string]int{}
	for i := range p.Sets {
		count[p.Sets[i].Name]++
	}
	p.setNumbers = make([]int, len(p.Sets))
	for i := range p.Sets {
		if number, dealt := p.dealtNumbers[i]; dealt {
			p.setNumbers[i] = number
		} else if name := p.Sets[i].Name; count[name] > 1 {
			at[name]++
			p.setNumbers[i] = at[name]
		}
	}
}
