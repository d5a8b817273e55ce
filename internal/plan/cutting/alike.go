package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
)

// alike is demands put together whose items are of one size, in the order in which packing wants them.
type alike struct {
	packing
	of [][]demand // of each item
}

// together puts demands of one size together; the list is then in their order.
func together(list []demand, length measure.NM) *alike {
	slices.SortStableFunc(list, func(a, b demand) int {
		return cmp.Or(cmp.Compare(b.across, a.across), cmp.Compare(b.along+b.extra, a.along+a.extra), cmp.Compare(b.extra, a.extra))
	})
	a := &alike{packing: packing{length: length}}
	for _, d := range list {
		// What lies in rows is not put together: a length of strip with several rows goes to one of those who want it.
		stacks := d.stacks && list[0].across >= 2*d.across
		last := len(a.items) - 1
		if last < 0 || a.items[last].across != d.across || a.items[last].along != d.along || a.items[last].extra != d.extra || d.nests || stacks || a.items[last].stacks {
			a.items, a.of = append(a.items, item{across: d.across, along: d.along, extra: d.extra, stacks: stacks}), append(a.of, nil)
			last++
		}
		a.items[last].count += d.count
		a.of[last] = append(a.of[last], d)
	}
	return a
}

// all is the demands one after another.
func (a *alike) all() []demand { return slices.Concat(a.of...) }

// strips turns ways to fill strips into strips with what each is for. It deals the items of one size to those who want
// them, and uses the demands up.
func (a *alike) strips(patterns []pattern, block int) []Strip {
	var list []Strip
	for _, t := range patterns {
		for left := t.times; left > 0; {
			s, dealt := a.deal(t, block)
			times := left
			for _, n := range dealt {
				times = min(times, n.from.count/n.units)
			}
			for _, n := range dealt {
				n.from.count -= n.units * times
			}
			s.Times = times
			list = append(list, s)
			left -= times
		}
	}
	return list
}

// share is how many of a strip's items go to one demand.
type share struct {
	from  *demand
	units int
}

// deal is one strip filled in a way, its items given to the first demands that want them.
func (a *alike) deal(t pattern, block int) (Strip, []share) {
	s := Strip{WidthCut: t.width, LengthCut: a.length, InBlock: block, OnSheet: -1, OnEnd: -1, End: -1, EndLeftCut: a.length}
	most := a.rowsFor(t.counts, t.width)
	var dealt []share
	for i, n := range t.counts {
		rows := min(a.rows(i, t.width), most)
		s.EndLeftCut -= a.takes(i, n, rows)
		for j := range a.of[i] {
			d := &a.of[i][j]
			units := min(n, d.count)
			if units == 0 {
				continue
			}
			n -= units
			dealt = append(dealt, share{d, units})
			s.Cuts = append(s.Cuts, d.cut(units, min(rows, units)))
		}
	}
	return s, dealt
}

// cut is a stretch of strip with so many of a demand's items, in rows.
func (d *demand) cut(units, rows int) Cut {
	c := Cut{Lines: d.lines, Set: d.set, Use: d.use, Units: units, Rows: rows, AcrossCut: d.across, AlongCut: d.along, Nests: d.nests}
	if d.nests {
		c.AlongCut = measure.NM(units)*d.along + d.extra
	}
	return c
}
