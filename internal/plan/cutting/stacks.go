package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
)

// End is the end of a strip, or of as many like ones, that is cut into narrower strips one above the other: those of the fabric that
// lie on it. It is cut so only where a whole strip is saved, and where the least cloth is asked for: it is more to cut.
type End struct {
	Times        int        `json:"ends"`
	LengthCut    measure.NM `json:"length_cut"`     // of the end, and so of the strips that lie on it
	WidthCut     measure.NM `json:"width_cut"`      // of the strip that it is the end of
	LeftWidthCut measure.NM `json:"left_width_cut"` // beside the narrower strips
}

// opened is one strip whose end is cut into narrower strips.
type opened struct {
	width  measure.NM
	head   []int // items as wide as the strip
	end    measure.NM
	strips []pattern // of the end
}

// stack is a packing in which some strips are opened.
type stack struct {
	*packing
	patterns []pattern // strips that are not
	opened   []opened
}

// maxStacked is how many strips are saved at the most, maxOpened how many are opened at once.
const (
	maxStacked = 20
	maxOpened  = 3
)

// stacked saves strips of a solution, one after the other, by cutting what they give from the ends of others; nil where none can be.
func (p *packing) stacked(s *solution) *stack {
	k := &stack{packing: p}
	for _, t := range s.patterns {
		k.patterns = append(k.patterns, pattern{t.width, t.counts, t.times})
	}
	for range maxStacked {
		if !k.saveOne() {
			break
		}
	}
	if len(k.opened) == 0 {
		return nil
	}
	return k
}

// saveOne saves one strip, a wide one if it can. It says whether it could.
func (k *stack) saveOne() bool {
	order := make([]int, len(k.patterns))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(k.patterns[b].width, k.patterns[a].width) })
	for _, gone := range order {
		if k.patterns[gone].times > 0 && k.without(gone) {
			return true
		}
	}
	return false
}

// without tries to do without one strip of a pattern.
func (k *stack) without(gone int) bool {
	need := k.area(k.patterns[gone].counts)
	var others []int // patterns to open one strip of, some more than once
	for i := range k.patterns {
		times := k.patterns[i].times
		if i == gone {
			times--
		}
		for range min(times, maxOpened) {
			if end := k.endOf(i); end >= k.shortest() {
				others = append(others, i)
			}
		}
	}
	slices.SortStableFunc(others, func(a, b int) int { return cmp.Compare(k.free(b), k.free(a)) })
	for count := 1; count <= min(maxOpened, len(others)); count++ {
		for first := 0; first+count <= len(others); first++ {
			for _, open := range [][]int{others[first : first+count], slices.Concat(others[:1], others[first:first+count])} {
				if first == 0 && len(open) > count || len(open) > maxOpened {
					continue
				}
				room := 0.0
				for _, i := range open {
					room += k.free(i)
				}
				if room >= need && k.into(gone, open) {
					return true
				}
				if k.budget.spent() {
					return false
				}
			}
		}
	}
	return false
}

// into cuts what a strip gives from the ends of others, if that can be.
func (k *stack) into(gone int, open []int) bool {
	pool := slices.Clone(k.patterns[gone].counts)
	list := make([]opened, 0, len(open))
	for _, i := range open {
		t := &k.patterns[i]
		o := opened{width: t.width, head: make([]int, len(t.counts)), end: k.endOf(i)}
		for n, count := range t.counts {
			if k.items[n].across == t.width {
				o.head[n] = count
			} else {
				pool[n] += count
			}
		}
		list = append(list, o)
	}
	for i := range list {
		r := &region{packing: &packing{items: k.items, length: list[i].end, budget: k.budget}, budget: maxRegions}
		r.fill(pool, 0, list[i].width, nil, 0)
		list[i].strips = r.best
		for _, s := range r.best {
			for n, count := range s.counts {
				pool[n] -= count
			}
		}
	}
	if slices.Max(pool) > 0 {
		return false
	}
	k.patterns[gone].times--
	for _, i := range open {
		k.patterns[i].times--
	}
	for _, o := range list {
		if len(o.strips) == 0 { // nothing lies on its end after all
			k.patterns = append(k.patterns, pattern{o.width, o.head, 1})
			continue
		}
		k.opened = append(k.opened, o)
	}
	return true
}

// endOf is how long the end of a strip is behind what is as wide as it.
func (k *stack) endOf(i int) measure.NM {
	end := k.length
	for n, count := range k.patterns[i].counts {
		if k.items[n].across == k.patterns[i].width {
			end -= k.takes(n, count, 1)
		}
	}
	return end
}

// shortest is the shortest length that an item takes.
func (k *stack) shortest() measure.NM {
	least := k.length
	for i := range k.items {
		least = min(least, k.items[i].along+k.items[i].extra)
	}
	return least
}

// area is the area of items.
func (k *stack) area(counts []int) float64 {
	sum := 0.0
	for i, n := range counts {
		sum += float64(n) * float64(k.items[i].across) * float64(k.items[i].along)
	}
	return sum
}

// free is the area of a strip that nothing is cut from.
func (k *stack) free(i int) float64 {
	return float64(k.patterns[i].width)*float64(k.length) - k.area(k.patterns[i].counts)
}

// maxRegions is how many strips are tried in one end.
const maxRegions = 300

// region is the end of a strip that is filled with narrower strips so that most of it is used.
type region struct {
	*packing
	best   []pattern
	used   float64
	budget int
}

// fill lays one more strip into the room that is left, no wider than those before it.
func (r *region) fill(pool []int, from int, room measure.NM, now []pattern, used float64) {
	if used > r.used {
		r.best, r.used = slices.Clone(now), used
	}
	for lead := from; lead < len(pool); lead++ {
		t := &r.items[lead]
		if pool[lead] == 0 || t.across > room || r.most(lead, r.length, 1) == 0 {
			continue
		}
		if r.budget--; r.budget < 0 || !r.packing.budget.spend(len(pool)) {
			return
		}
		counts := r.bestFilling(pool, lead, rules()[1])
		left := slices.Clone(pool)
		area := 0.0
		for i, n := range counts {
			left[i] -= n
			area += float64(n) * float64(r.items[i].across) * float64(r.items[i].along)
		}
		if area > 0 {
			r.fill(left, lead, room-t.across, append(slices.Clip(now), pattern{t.across, counts, 1}), used+area)
		}
	}
}

// stackEnds cuts strips of a solution, some of them from the ends of others.
func (f *Fabric) stackEnds(k *stack, laid *alike) {
	kept := slices.DeleteFunc(k.patterns, func(t pattern) bool { return t.times == 0 })
	f.Strips, f.LengthCut = laid.strips(merged(kept), -1), 0
	for _, t := range kept {
		f.LengthCut += measure.NM(t.times) * t.width
	}
	for _, o := range k.opened {
		f.LengthCut += o.width
		heads := laid.strips([]pattern{{o.width, o.head, 1}}, -1)
		end := End{1, o.end, o.width, o.width}
		tail := &alike{packing: packing{items: laid.items, length: o.end, budget: laid.budget}, of: laid.of}
		whole := Cut{Set: -1, Use: ForEnd, Units: 1, Rows: 1, AcrossCut: o.width, AlongCut: o.end}
		for _, t := range o.strips {
			end.LeftWidthCut -= t.width
			for _, s := range tail.strips([]pattern{t}, -1) {
				s.OnEnd = len(f.Ends)
				for i := range s.Cuts {
					whole.Lines = bothLines(whole.Lines, s.Cuts[i].Lines)
				}
				f.Strips = append(f.Strips, s)
			}
		}
		head := heads[0]
		head.Cuts, head.EndLeftCut, head.End = append(head.Cuts, whole), 0, len(f.Ends)
		f.Strips, f.Ends = append(f.Strips, head), append(f.Ends, end)
	}
}
