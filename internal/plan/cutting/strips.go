package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// boundBlocks is the bound where there are blocks of lengthwise pieces. Beside those the strips' bounds do not hold for the
// whole. A line across the cloth anywhere crosses pieces that lie beside each other; the relaxation over all such lines,
// each of no height, is a bound for any way to lay the pieces out.
func (f *Fabric) boundBlocks(list []demand) {
	least := measure.NM(0)
	each(list, f.UsableWidth, func(way []demand) {
		items := f.together(way).items
		for i := range f.along {
			w := &f.along[i]
			items = append(items, item{across: w.Along, along: w.Across, count: w.Count})
		}
		needs := make([]float64, len(items))
		for i := range items {
			needs[i] = float64(items[i].across) * float64(items[i].count)
		}
		_, cloth := (&packing{items: items, length: f.UsableWidth, budget: f.budget}).relaxed(needs, byStrips)
		if c := upTo(cloth); least == 0 || c < least {
			least = c
		}
	})
	f.LengthBound = max(least, f.alongBound())
}

// maxTurned is up to how many of a fabric's lines every way of laying them is tried.
const maxTurned = 4

// cutStrips plans a fabric's strips, and says how good the plan is. It gives the binding as it was planned.
func (f *Fabric) cutStrips(list []demand, joinings []joining) *supplies.Binding {
	binding := f.layBest(list, joinings)
	slices.SortStableFunc(f.Strips, func(a, b Strip) int {
		return cmp.Or(cmp.Compare(a.sheet(), b.sheet()), cmp.Compare(b.WidthCut, a.WidthCut), cmp.Compare(a.EndLeftCut, b.EndLeftCut))
	})
	f.StripCount, f.StripRows = f.count(), f.rows()
	if len(f.Blocks) > 0 {
		f.boundBlocks(f.wanted)
		f.StripBound = f.StripRows
		each(f.wanted, f.UsableWidth, func(way []demand) {
			_, strips := f.together(way).bound()
			f.StripBound = min(f.StripBound, strips)
		})
	} else {
		f.bounds(f.wanted)
	}
	f.LengthBound = min(f.LengthBound, f.LengthCut) + f.printCloth()
	f.LengthCut += f.printCloth()
	f.SearchEnded = f.budget.spent()
	return binding
}

// together puts demands of one size together, to be packed within the fabric's budget.
func (f *Fabric) together(list []demand) *alike { return within(f.budget, list, f.UsableWidth) }

// within is together within a budget.
func within(b *budget, list []demand, length measure.NM) *alike {
	a := together(list, length)
	a.budget = b
	return a
}

// layBest plans a fabric's strips with every manner of joining, and keeps the plan that takes the least cloth, the fewest
// strips, and the fewest long strips that are tight.
func (f *Fabric) layBest(list []demand, joinings []joining) *supplies.Binding {
	var best Fabric
	var binding *supplies.Binding
	tight := 0
	for i, joining := range joinings {
		try := *f
		try.lay(slices.Concat(list, joining.list))
		if i == 0 || cmp.Or(cmp.Compare(try.LengthCut, best.LengthCut), cmp.Compare(try.rows(), best.rows()), cmp.Compare(joining.tight(), tight)) < 0 {
			best, binding, tight = try, joining.binding, joining.tight()
			best.Chains = joining.chains
		}
	}
	*f = best
	return binding
}

// count is how many strips of yardage there are, counting like ones.
func (f *Fabric) count() int {
	n := 0
	for i := range f.Strips {
		if s := &f.Strips[i]; s.OnSheet < 0 && s.OnEnd < 0 {
			n += s.Times
		}
	}
	return n
}

// rows is the same, each strip counted as often as it has rows, and those that lie on the ends of others too.
func (f *Fabric) rows() int {
	n := 0
	for i := range f.Strips {
		if f.Strips[i].OnSheet < 0 {
			n += f.Strips[i].Times * f.Strips[i].rows()
		}
	}
	return n
}

// lay plans a fabric's strips and reckons up their cloth.
func (f *Fabric) lay(list []demand) {
	for i := range list {
		list[i].number = i
	}
	between := f.cutGaps(list)
	if len(between) > 0 {
		list = slices.DeleteFunc(list, func(d demand) bool { return d.count == 0 })
	}
	for i := range list {
		list[i].number = i
	}
	if f.From != nil {
		f.layWithPrecuts(list)
	} else {
		f.layYardage(list)
	}
	f.Strips = append(between, f.Strips...)
}

// layYardage plans strips that are all of yardage.
func (f *Fabric) layYardage(list []demand) {
	for i := range list {
		list[i].number = i
	}
	f.wanted = slices.Clone(list)
	if len(f.Blocks) > 0 {
		f.cutBesideBlocks(list)
		return
	}
	best, laid := turnings(list, f.UsableWidth, f.budget)
	all := laid.all()
	for i := range all {
		all[i].stacks = list[all[i].number].stacks // its bound is one of plans with rows, whether it has some or not
	}
	f.laid = f.together(all)
	f.Ends = nil
	if f.stacks {
		if k := laid.stacked(best); k != nil {
			f.stackEnds(k, laid)
			return
		}
	}
	f.Strips = laid.strips(best.patterns, -1)
	f.LengthCut = best.cloth
}

// turnings packs with every way of laying what may be turned, all pieces of a line one way, and gives the best.
func turnings(list []demand, length measure.NM, b *budget) (*solution, *alike) {
	best, laid := &solution{}, together(nil, length)
	first := true
	try := func(way []demand) {
		a := within(b, way, length)
		if s := a.pack(); first || s.better(best) {
			best, laid, first = s, a, false
		}
	}
	each(list, length, func(way []demand) {
		try(inOneRow(way))
		if rowsMaySave(within(b, way, length), best) {
			try(way)
		}
	})
	return best, laid
}

// rowsMaySave says whether something may lie in rows, and a plan with rows could take less cloth than a solution: rows are more
// to cut, and must save some.
func rowsMaySave(a *alike, s *solution) bool {
	if !slices.ContainsFunc(a.items, func(t item) bool { return t.stacks }) {
		return false
	}
	if cloth, _ := a.bound(); s.cloth <= cloth {
		return false
	}
	_, least := a.relaxed(a.needs(), byCloth)
	return s.cloth > upTo(least)
}

// inOneRow is demands of which nothing lies in rows.
func inOneRow(list []demand) []demand {
	list = slices.Clone(list)
	for i := range list {
		list[i].stacks = false
	}
	return list
}

// each hands on every way of laying demands; what may be turned and fits both ways is tried both ways.
func each(list []demand, length measure.NM, try func([]demand)) {
	var free []int
	for i := range list {
		if list[i].turn && list[i].across <= length && list[i].across != list[i].along && len(free) < maxTurned {
			free = append(free, i)
		}
	}
	for ways := range 1 << len(free) {
		way := slices.Clone(list)
		for bit, i := range free {
			if ways>>bit&1 == 1 {
				way[i].across, way[i].along = way[i].along, way[i].across
			}
		}
		try(way)
	}
}

// bounds finds what a fabric's strips take at the least: the cloth whichever way its pieces are laid, and the strips as
// they are laid and with no more cloth.
func (f *Fabric) bounds(list []demand) {
	f.LengthBound = f.LengthCut
	each(list, f.UsableWidth, func(way []demand) {
		a := f.together(way)
		cloth, _ := a.bound()
		if cloth < f.LengthBound {
			cloth, _ = a.sharpBound()
			f.LengthBound = min(f.LengthBound, cloth)
		}
	})
	_, f.StripBound = f.laid.bound()
	if f.StripBound < f.StripRows {
		_, f.StripBound = f.laid.sharpBound()
		f.StripBound = min(f.StripRows, f.laid.fewestFor(f.LengthCut, f.StripBound))
	}
}
