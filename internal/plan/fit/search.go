package fit

import (
	"cmp"
	"fmt"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// candidate is a suggestion that was not read yet.
type candidate struct {
	Suggestion
	size     measure.NM // strip or side
	warnings int        // that grids of its parities bring
	cost     measure.NM
}

// maxRead is how many candidates of one size and sort of borders are read before it is given up.
const maxRead = 4

// suggest finds what comes nearest for a strip or a side, one for each sort of borders; if there is nothing, the first
// fault.
func (f *fitting) suggest(size measure.NM) (list []Suggestion, refused string) {
	for _, b := range []Borders{AsWritten, Scaled, LeftOut} {
		if b != AsWritten && len(f.design.Borders) == 0 {
			continue
		}
		candidates := f.candidates(size, b)
		for i := range candidates[:min(maxRead, len(candidates))] {
			c := &candidates[i]
			fault := f.read(c)
			if fault == "" {
				list = append(list, c.Suggestion)
				break
			}
			if refused == "" {
				refused = fault
			}
		}
	}
	if refused == "" {
		refused = fmt.Sprintf("a top of the wanted size takes more blocks of %s than the %d that are tried", f.design.Units.Nearest(f.side(size)), maxBlocks)
	}
	return list, refused
}

// read writes a candidate into the layout and reads it. The answer is the first fault.
func (f *fitting) read(c *candidate) string {
	e := f.sizeEdits(c.size).with(f.gridEdits([2]int{c.Columns, c.Rows}))
	if c.Borders == LeftOut {
		e = e.with(f.withoutBorders())
	} else {
		e = e.with(f.borderEdits(c.BordersFinished))
	}
	design, _, faults := f.Read(f.rewritten(e))
	if design == nil {
		return firstError(faults)
	}
	now := f.warnedNow(c.Borders)
	c.Warnings, c.MoreWarnings = added(messages(faults), now), len(faults)-len(now)
	c.SizeLine = f.sizeLine(&c.Suggestion)
	if f.Size != "" {
		e = f.sizeEdit(c.SizeLine)
		c.Text = f.rewrittenFrom(f.whole, e)
		if design, _, faults = f.Read(c.Text); design == nil || design.InSize(f.Size) == nil {
			return firstError(faults)
		}
	} else {
		c.Text, e = f.finished(e)
	}
	c.Changes = f.changes(e)
	return ""
}

// firstError is the first error among faults, which has one.
func firstError(faults []layout.Fault) string {
	return faults[slices.IndexFunc(faults, func(x layout.Fault) bool { return x.Severity == layout.Error })].Message
}

// candidates are what may come near for a size and a sort of borders, the best first.
func (f *fitting) candidates(size measure.NM, b Borders) []candidate {
	side := f.side(size)
	if side < layout.MinSide || side > layout.MaxSide { // the reader says what is wrong
		return []candidate{{size: size, Suggestion: Suggestion{Columns: f.design.Columns, Rows: f.design.Rows, BordersFinished: f.bordersNow()}}}
	}
	var list []candidate
	columns, rows := f.counts(across, side, b), f.counts(down, side, b)
	for _, x := range columns {
		for _, y := range rows {
			if x*y > maxBlocks {
				continue
			}
			c := candidate{size: size, warnings: f.parities[x%2][y%2]}
			c.SideFinished, c.Columns, c.Rows, c.Borders = side, x, y, b
			if f.design.StripGiven {
				c.StripCut = size
			}
			if f.choose(&c) && c.warnings < noWay {
				list = append(list, c)
			}
		}
	}
	slices.SortStableFunc(list, func(p, q candidate) int {
		return cmp.Or(cmp.Compare(p.warnings, q.warnings), cmp.Compare(p.cost, q.cost))
	})
	return list
}

// counts are the numbers of blocks along an axis that may come near: of each parity the two on either side of what is
// wanted, and where borders are scaled all that borders can make up for.
func (f *fitting) counts(which int, side measure.NM, b Borders) []int {
	wanted := [2]measure.NM{f.Wanted.Finished.Width, f.Wanted.Finished.Height}[which]
	least, most := wanted, wanted
	switch b {
	case AsWritten:
		edge := 2 * sum(f.bordersNow())
		least, most = wanted-edge, wanted-edge
	case Scaled:
		least = wanted - 2*f.MaxBorder
	}
	a := &f.grows.Axes[which]
	if a.Way.Fixed() {
		return []int{len(a.IDs)}
	}
	var list []int
	step := 2 * a.Way.Period
	last := min(f.blocksIn(most, side)+1+step, maxBlocks)
	for n := f.blocksIn(least, side) - step; n <= last; n++ {
		if a.Allows(n) {
			list = append(list, n)
		}
	}
	if n := a.Least(); n > last-step { // as few as there can be are too many, so both parities stand by
		list = append(list, n, n+a.Way.Period)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// blocksIn is how many whole blocks fit into a length, with their sashes.
func (f *fitting) blocksIn(length, side measure.NM) int {
	one, two := f.field(1, side), f.field(2, side)
	return int(max(0, (length-one+two-one)/(two-one)))
}

// choose settles the borders of a candidate and what it costs. It says whether there is one.
func (f *fitting) choose(c *candidate) bool {
	own := sum(f.bordersNow())
	switch c.Borders {
	case AsWritten:
		c.BordersFinished = f.bordersNow()
	case Scaled:
		total := f.bestBorder(c)
		c.BordersFinished = f.scaledBorders(total)
		if c.BordersFinished == nil || total == own {
			return false
		}
	}
	f.measureUp(&c.Suggestion)
	c.cost = f.cost(&c.Suggestion)
	return true
}

// cost is the distance, a quarter of what the borders differ from those that are written, and what odd counts weigh.
func (f *fitting) cost(s *Suggestion) measure.NM {
	cost := distance(s) + abs(sum(s.BordersFinished)-sum(f.bordersNow()))/4
	if f.lattice() {
		cost += measure.NM(s.Columns%2+s.Rows%2) * oddCost
	}
	return cost
}

// oddCost is what an odd number of blocks weighs in a grid of webs and stars.
const oddCost = 2 * measure.Inch

// distance is what a top is off across and down, the worse of the two counted twice.
func distance(s *Suggestion) measure.NM {
	w, h := abs(s.Over.Width), abs(s.Over.Height)
	return w + h + max(w, h)
}

func abs(nm measure.NM) measure.NM { return max(nm, -nm) }

// bestBorder is how wide the borders of one side should be together, on a mark. What a top is off weighs more than what its borders
// differ, and weighs least where it is off as much across as down, one of them too large and the other too small: of the marks on
// either side of that width the one that costs less.
func (f *fitting) bestBorder(c *candidate) measure.NM {
	w := f.Wanted.Finished
	across, down := w.Width-f.field(c.Columns, c.SideFinished), w.Height-f.field(c.Rows, c.SideFinished)
	mark := f.mark()
	least := 2 * mark * measure.NM(len(f.design.Borders))
	most := max(least, f.MaxBorder/mark*mark)
	below := (across + down) / 4 / mark * mark
	low, high := max(least, min(below, most)), max(least, min(below+mark, most))
	if f.costWith(c, low) <= f.costWith(c, high) {
		return low
	}
	return high
}

// costWith is what a candidate costs with borders of a width.
func (f *fitting) costWith(c *candidate, total measure.NM) measure.NM {
	s := c.Suggestion
	s.BordersFinished = []measure.NM{total}
	f.measureUp(&s)
	return f.cost(&s)
}

// rank puts the best suggestion first: fewer warnings, then less cost, then a strip nearer to the layout's own.
func (f *fitting) rank(list []Suggestion) {
	far := func(s *Suggestion) measure.NM { return abs(s.SideFinished - f.design.SideFinished) }
	slices.SortStableFunc(list, func(a, b Suggestion) int {
		return cmp.Or(cmp.Compare(a.MoreWarnings, b.MoreWarnings), cmp.Compare(f.cost(&a), f.cost(&b)), cmp.Compare(far(&a), far(&b)))
	})
}
