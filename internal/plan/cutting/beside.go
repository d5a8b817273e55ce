package cutting

import (
	"slices"

	"eighthturn/internal/measure"
)

// maxSideBySide is up to how many lengthwise pieces side by side are tried.
const maxSideBySide = 8

// cutBesideBlocks plans the strips of a fabric of which pieces are cut lengthwise: some from the width that the blocks
// leave, the rest across the whole cloth. How many pieces lie side by side and what goes beside them is chosen in several
// ways, and the best is kept.
func (f *Fabric) cutBesideBlocks(list []demand) {
	var best Fabric
	for most := max(1, min(f.Blocks[0].wholes(), maxSideBySide)); most > 0; most-- {
		for _, choose := range []chooser{widestBeside, dearestBeside} {
			try := Fabric{UsableWidth: f.UsableWidth, along: f.along, alongLines: f.alongLines, longest: f.longest, budget: f.budget}
			if best.Blocks != nil && f.budget.spent() {
				break
			}
			try.layBlocks(most)
			try.cutBeside(list, choose)
			if best.Blocks == nil || try.LengthCut < best.LengthCut {
				best = try
			}
		}
	}
	f.Blocks, f.Strips, f.LengthCut = best.Blocks, best.Strips, best.LengthCut
}

// cutBeside plans the strips in one way, and reckons up the cloth.
func (f *Fabric) cutBeside(list []demand, choose chooser) {
	left := slices.Clone(list)
	beside := f.beside(left, choose)
	left = slices.DeleteFunc(left, func(d demand) bool { return d.count == 0 })
	s, laid := turnings(left, f.UsableWidth, f.budget)
	f.Strips = append(beside, laid.strips(s.patterns, -1)...)
	f.LengthCut = s.cloth
	for _, b := range f.Blocks {
		f.LengthCut += measure.NM(b.Times) * b.LengthCut
	}
}

// chooser chooses the next strip beside a block: what is wanted of what goes there, how long the strips are, and how much of
// the block is left. It gives the width and what the strip holds, or nothing.
type chooser func(here *alike, all *packing, room measure.NM) (measure.NM, []int)

// beside cuts strips from the width that blocks leave, as many as the blocks are long, and takes what they give off what is
// wanted.
func (f *Fabric) beside(list []demand, choose chooser) []Strip {
	var strips []Strip
	for n := range f.Blocks {
		b := &f.Blocks[n]
		if b.Times > 1 {
			continue
		}
		for room := b.LengthCut; ; {
			here := within(f.budget, slices.DeleteFunc(slices.Clone(list), func(d demand) bool {
				return d.count == 0 || d.across > room || d.along+d.extra > b.LeftWidthCut
			}), b.LeftWidthCut)
			if len(here.items) == 0 {
				break
			}
			all := f.together(slices.DeleteFunc(slices.Clone(list), func(d demand) bool { return d.count == 0 }))
			width, counts := choose(here, &all.packing, room)
			times := min(repeats(here.counts(), counts), int(room/width))
			made := here.strips([]pattern{{width, counts, times}}, n)
			strips = append(strips, made...)
			room -= measure.NM(times) * width
			for i := range here.of {
				for _, d := range here.of[i] {
					list[d.number].count = d.count
				}
			}
		}
	}
	return strips
}

// widestBeside is the strip of the widest item, filled as well as can be.
func widestBeside(here *alike, _ *packing, _ measure.NM) (measure.NM, []int) {
	return here.items[0].across, here.bestFilling(here.counts(), 0, rules()[1])
}

// dearestBeside is the strip that saves most cloth elsewhere for each length of the block: items are worth what cloth they
// would take if strips could be cut in fractions.
func dearestBeside(here *alike, all *packing, _ measure.NM) (measure.NM, []int) {
	if here.budget.spent() {
		return widestBeside(here, all, 0)
	}
	r, _ := all.relaxed(all.needs(), byCloth)
	q := &relaxation{packing: &here.packing, prices: make([]float64, len(here.items))}
	for i, t := range here.items {
		at := slices.IndexFunc(all.items, func(u item) bool { return u.across == t.across && u.along == t.along && u.extra == t.extra })
		q.prices[i] = r.prices[at]
	}
	var width measure.NM
	var counts []int
	dearest := -1.0
	for i, t := range here.items {
		if i > 0 && here.items[i-1].across == t.across {
			continue
		}
		filled, value, _ := q.fullest(i, 1)
		if worth := value / float64(t.across); worth > dearest && slices.Max(filled) > 0 {
			width, counts, dearest = here.widest(filled), filled, worth
		}
	}
	if counts == nil {
		return widestBeside(here, all, 0)
	}
	return width, counts
}
