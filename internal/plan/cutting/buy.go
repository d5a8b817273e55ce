package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// precuts says which precuts would do instead of cloth by the length: those of which every strip of the plan can be cut
// anew, shorter as they are. Once the steps are used up they are counted by the first rule alone, and may be too many.
func (f *Fabric) precuts(b *budget) {
	if f.From != nil || len(f.Blocks) > 0 || len(f.FromPrint) > 0 || f.BackingCut > 0 || f.StripCount == 0 {
		return
	}
	for _, c := range supplies.Precuts() {
		if n := f.fromPrecut(c.Usable, b); n > 0 {
			f.Precuts = append(f.Precuts, Precut{c, n})
		}
	}
	f.SearchEnded = f.SearchEnded || b.spent()
}

// fromPrecut is how many pieces of cloth of a size give everything that the fabric's strips give; 0 where they cannot.
func (f *Fabric) fromPrecut(size supplies.Size, b *budget) int {
	length, width := max(size.Width, size.Height), min(size.Width, size.Height)
	list := slices.Clone(f.wanted)
	for i := range list {
		if d := &list[i]; d.across > width || d.along+d.extra > length {
			return 0
		}
	}
	a := within(b, list, length)
	s := a.byRules(a.counts(), 0, 0)
	var strips []item
	for _, t := range s.patterns {
		strips = append(strips, item{across: t.width, along: t.width, count: t.times})
	}
	return inPieces(strips, width)
}

// inPieces is how many pieces of cloth hold strips of some widths, the widest first, each in the first that has room.
func inPieces(strips []item, width measure.NM) int {
	slices.SortStableFunc(strips, func(a, b item) int { return cmp.Compare(b.along, a.along) })
	return (&packing{items: strips, length: width}).greedyCount()
}

// greedyCount is how many strips the first rule fills.
func (p *packing) greedyCount() int {
	left := make([]int, len(p.items))
	for i := range left {
		left[i] = p.items[i].count
	}
	return p.greedy(left, nil).strips
}
