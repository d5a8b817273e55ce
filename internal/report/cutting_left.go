package report

import (
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
)

// leftovers is all that is left once the quilt is cut: pieces, ends of strips, and what of each length bought is not cut.
func (c *cuts) leftovers() document.Section {
	s := document.Section{ID: LeftoversID, Title: "Leftovers", Depth: document.Detail}
	if t := c.leftPieces(); len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t.Filled())
	}
	if list := c.leftFabric(); len(list) > 0 {
		s.Blocks = append(s.Blocks, bullets(list...)...)
		s.Blocks = append(s.Blocks, para("Leftovers are at least as large as listed. The last part of a length includes what is bought for squaring up and as a spare."))
	}
	return s
}

// leftPieces are the pieces that are cut and not used.
func (c *cuts) leftPieces() document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "leftover"}, {Title: "pieces", Kind: document.Counts, BySize: true}, {Title: "enough for"}}}
	for _, l := range c.Left {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{c.leftName(&l), cell(number(l.Pieces)), cell(enoughFor(l.Set >= 0, l.Pieces))}})
	}
	for i := range c.OnHand {
		h := &c.OnHand[i]
		if h.Left() > 0 {
			t.Rows = append(t.Rows, row(measure.Plural(c.handName(h))+" on hand", number(h.Left()), enoughFor(h.Wedges(), h.Left())))
		}
	}
	return t
}

// leftName is what pieces that are left are, beside their colors.
func (c *cuts) leftName(l *cutting.LeftPieces) document.Cell {
	if l.Set < 0 {
		line := &c.Lines[l.Line]
		named := cell(c.Fabrics[line.Fabric].Name + " " + c.plans.piecesName(line))
		named.Swatches = c.colors(line)
		return named
	}
	named := cell(measure.Plural(c.wedgesName(l.Set, l.Reversed) + " wedge"))
	named.Swatches = c.colors(&cutting.Line{Fabric: -1, Set: l.Set, Reversed: l.Reversed})
	return named
}

// enoughFor says how many circles wedges make, "" of other pieces.
func enoughFor(wedges bool, n int) string {
	switch {
	case !wedges:
		return ""
	case n < inCircle:
		return "less than a circle of eight"
	}
	return measure.Count(n/inCircle, "circle") + " of eight"
}

// inCircle is how many wedges make a circle.
const inCircle = 8

// leftFabric is what is left of each fabric, those together of which the same is left, and of a backing of your choice.
func (c *cuts) leftFabric() []string {
	var order []string
	names := map[string][]string{}
	add := func(name string, parts []string) {
		if text := strings.Join(parts, "; "); text != "" {
			if names[text] == nil {
				order = append(order, text)
			}
			names[text] = append(names[text], name)
		}
	}
	for i := range c.Fabrics {
		add(c.name(i), c.leftOf(&c.Fabrics[i]))
	}
	if c.BackingOf < 0 {
		add("backing", append(c.leftBacking(), c.uncut(&c.BackingBuy)...))
	}
	list := make([]string, 0, len(order))
	for _, text := range order {
		each := ""
		if len(names[text]) > 1 {
			each = "each of "
		}
		list = append(list, "Leftover from "+each+measure.List(names[text])+": "+text+".")
	}
	return list
}

// leftOf is what is left of a fabric.
func (c *cuts) leftOf(f *cutting.Fabric) []string {
	var parts []string
	for n := range f.LeftOver {
		parts = append(parts, c.leftOver(&f.LeftOver[n]))
	}
	if f.Index == c.BackingOf {
		parts = append(parts, c.leftBacking()...)
	}
	return append(parts, c.uncut(&f.Purchase)...)
}

// uncut is what of a length that is bought is not cut, nothing where it is under a mark.
func (c *cuts) uncut(bought *supplies.Purchase) []string {
	if bought.Left < c.Units.CutMark() {
		return nil
	}
	return []string{"the last " + c.Units.AtMost(bought.Left)}
}

// leftOver is the size of an end worth keeping, neither side longer than it is.
func (c *cuts) leftOver(l *cutting.LeftOver) string {
	if across, along := c.Units.AtMost(l.AcrossCut), c.Units.AtMost(l.AlongCut); across == along {
		return measure.Count(l.Times, "square") + " of " + across
	}
	return measure.Count(l.Times, "piece") + " of " + c.Units.ByAtMost(l.AcrossCut, l.AlongCut)
}

// minBackingLeft is how wide what is left of a backing must be to be told of.
const minBackingLeft = 4 * measure.Inch

// leftBacking is what is cut off the backings, nothing where it is narrow.
func (c *cuts) leftBacking() []string {
	if c.Backing == nil {
		return nil
	}
	left := c.Backing.Ways[c.Backing.Less].Left
	if left.Width < minBackingLeft {
		return nil
	}
	return []string{measure.Count(c.Copies, "piece") + " of " + c.Units.ByAtMost(left.Width, left.Height) + " cut off the panels"}
}
