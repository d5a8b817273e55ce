package layout

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// heightUse is a wedge height that the grid's blocks ask for, with one block that does.
type heightUse struct {
	height blocks.WedgeHeight
	block  *Block
	node   *BlockNode
}

// sizes finds the side of a block and the strips that its wedges come from.
func (c *checker) sizes() {
	uses := c.heightsUsed()
	c.countPatches()
	if c.tree.sizeReported || !c.side(uses) {
		c.tree.sizeReported = true
		return
	}
	d := &c.design
	for _, u := range uses {
		d.StripsCut[u.height] = u.height.Finished(d.SideFinished) + 2*d.Seam
		if d.StripGiven {
			d.StripsCut[u.height] = c.tree.Strip.In(d.Units).NM()
		}
	}
	c.fitSets()
	c.runs()
}

func (c *checker) heightsUsed() []heightUse {
	var uses []heightUse
	var seen [blocks.Heights]bool
	for i := range c.design.Blocks {
		b := &c.design.Blocks[i]
		if !b.used || b.Kind == nil || b.Kind.Height == blocks.NoWedges || seen[b.Kind.Height] {
			continue
		}
		seen[b.Kind.Height] = true
		uses = append(uses, heightUse{b.Kind.Height, b, c.tree.Blocks[i]})
	}
	return uses
}

// countPatches refuses a quilt of more patches than can be held, before any are made.
func (c *checker) countPatches() {
	widest := 1
	for _, s := range c.design.StripSets {
		widest = max(widest, len(s.Bands))
	}
	counted := make([]int, len(c.design.Blocks))
	total := 0
	for i := range c.design.Cells {
		b := c.design.Cells[i].Block
		if b < 0 || c.design.Blocks[b].Kind == nil {
			continue
		}
		if counted[b] == 0 {
			counted[b] = c.blockPatches(&c.design.Blocks[b], widest)
		}
		total += counted[b]
	}
	if total > MaxPatches {
		c.fault(c.tree.Grid.Rows[0].Span, "", "this quilt has up to %d pieces, %d is the most", total, MaxPatches)
	}
}

// blockPatches is the most pieces, strips of sets counted, that a block can have.
func (c *checker) blockPatches(b *Block, widest int) int {
	n := 0
	if b.Kind.Column {
		return 4
	}
	for _, p := range b.Kind.Pieces {
		if b.Kind.Roles[p.Role].Banded {
			n += widest
		} else {
			n++
		}
	}
	return n
}

// side finds the finished side of a block from `strip` or `side`.
func (c *checker) side(uses []heightUse) bool {
	strip, side := c.tree.Strip, c.tree.Side
	switch {
	case strip != nil && side != nil:
		first, second := Span(strip.Span), side.Span
		if second.Start < first.Start {
			first, second = second, first
		}
		c.fault(second, "keep one of the two", "strip and side cannot both be given, since each follows from the other").note(first, "the other one")
		return false
	case strip != nil:
		return c.sideFromStrip(strip, uses)
	case side != nil:
		return c.sideGiven(side)
	}
	if c.tree.unread {
		return false
	}
	hint := "for example strip 4"
	if len(uses) != 1 {
		hint = "for example side 7"
	}
	c.fault(c.tree.Grid.Span.firstBytes(len("grid")), hint, "this layout says neither the cut strip nor the finished side of its blocks")
	return false
}

func (s Span) firstBytes(n int) Span { return Span{s.Start, min(s.End, s.Start+n)} }

// sideFromStrip finds the one side that all blocks of the grid take.
func (c *checker) sideFromStrip(n *LengthNode, uses []heightUse) bool {
	d := &c.design
	strip := n.In(d.Units)
	height := strip.Sub(measure.Of(d.Seam).Times(2))
	switch {
	case n.Finished:
		c.fault(n.Span, "wedges that finish at "+strip.Text(d.Units)+" are cut from strips of "+strip.Add(strip.Sub(height)).Text(d.Units), "a strip's width is cut, not finished")
		return false
	case height.Sign() <= 0:
		c.fault(n.Span, "write a strip wider than "+c.text(2*d.Seam), "a strip of %s leaves nothing when two seam allowances of %s are taken", strip.Text(d.Units), c.text(d.Seam))
		return false
	case strip.Cmp(measure.Of(MaxStrip)) > 0:
		c.fault(n.Span, "", "the strip is %s, but must be %s or less", strip.Text(d.Units), c.text(MaxStrip))
		return false
	case len(uses) == 0:
		c.fault(n.Span, "write side and the finished side of a block instead", "no block of the grid has wedges, so no side follows from a strip")
		return false
	}
	d.StripGiven = true
	d.SideFinished = uses[0].height.Side(height)
	if len(uses) > 1 {
		c.twoSides(n, uses, height)
		return false
	}
	return c.checkSide(n.Span, measure.Of(d.SideFinished))
}

// twoSides reports a strip that would give blocks of two sides.
func (c *checker) twoSides(n *LengthNode, uses []heightUse, height measure.Length) {
	d := &c.design
	first, second := uses[0], uses[1]
	a, b := first.height.Side(height), second.height.Side(height)
	whole := max(a, b)
	f := c.fault(n.Span, "write side "+measure.Number(measure.Nearest(whole, d.Units.Unit()/2), d.Units)+" instead; each kind then has its own strip",
		"cut strips of %s make %s blocks of %s and %s blocks of %s, but a grid has one side",
		n.In(d.Units).Text(d.Units), first.block.Kind.Name, c.text(a), second.block.Kind.Name, c.text(b))
	f.note(first.node.Label.Span, "a %s block", first.block.Kind.Name)
	f.note(second.node.Label.Span, "a %s block", second.block.Kind.Name)
}

// sideGiven takes the side, made an even number of nanometres.
func (c *checker) sideGiven(n *LengthNode) bool {
	side := n.In(c.design.Units)
	if n.Cut {
		side = side.Sub(measure.Of(c.design.Seam).Times(2))
		if side.Sign() <= 0 {
			c.cutAway(n, "a side")
			return false
		}
	}
	c.design.SideFinished = 2 * side.Half().NM()
	return c.checkSide(n.Span, side)
}

func (c *checker) checkSide(at Span, side measure.Length) bool {
	if nm := side.NM(); nm < MinSide || nm > MaxSide {
		c.fault(at, "", "this makes blocks of %s, but a block must be %s to %s", side.Text(c.design.Units), c.text(MinSide), c.text(MaxSide))
		return false
	}
	return true
}

// fitSets gives the bands of every strip set their widths, for each height of wedge that it
// is used for.
func (c *checker) fitSets() {
	d := &c.design
	for i := range d.Blocks {
		b := &d.Blocks[i]
		if !b.used || b.Kind == nil {
			continue
		}
		for r, fills := range b.Fills {
			if b.Kind.Roles[r].OfWebs && len(d.Webs) > 0 {
				fills = d.Webs
			}
			for _, f := range fills {
				c.useSet(f, b.Kind)
			}
		}
	}
}

// useSet fits the strip set of a fill, if it is one, to the strip of a kind.
func (c *checker) useSet(f Fill, kind *blocks.Kind) {
	h := kind.Height
	if f.Set < 0 || h == blocks.NoWedges || c.setBroken(f.Set) || c.design.StripSets[f.Set].Bands[0].Cut[h] != 0 {
		return
	}
	if !c.fitSet(f.Set, h, kind.Name) {
		c.setNodes[f.Set].Broken = true
	}
}

// fitTable fits the strip sets of the table of webs to the strips of the kinds that stand
// round web centres.
func (c *checker) fitTable() {
	seen := map[*blocks.Kind]bool{}
	for i := range c.design.Blocks {
		b := &c.design.Blocks[i]
		if !b.used || !b.Kind.Turning.InLattice() || seen[b.Kind] {
			continue
		}
		seen[b.Kind] = true
		for _, f := range c.design.WebTable {
			c.useSet(f, b.Kind)
		}
	}
}

// setBroken says whether a strip set was reported already.
func (c *checker) setBroken(set int) bool {
	n := c.setNodes[set]
	return n.Broken || len(n.Bands) == 0
}

// fitSet sees that a set comes to the strip for a height, and sets its bands' cut widths.
func (c *checker) fitSet(set int, h blocks.WedgeHeight, kind string) bool {
	d, n := &c.design, c.setNodes[set]
	exact := c.exactStrip(h)
	allowance := measure.Of(d.Seam)
	total := measure.Length{}
	rest := -1
	for i, b := range n.Bands {
		if b.Cut == nil {
			rest = i
			continue
		}
		total = total.Add(b.Cut.In(d.Units))
	}
	comesTo := total.Sub(allowance.Times(2 * (len(n.Bands) - 1)))
	left := exact.Sub(comesTo)
	if rest < 0 && left.Sign() != 0 {
		c.setDiffers(n, kind, comesTo, exact)
		return false
	}
	for i, b := range n.Bands {
		cut := left
		if i != rest {
			cut = b.Cut.In(d.Units)
		}
		if cut.Sub(allowance.Times(2)).Cmp(measure.Of(MinFinished)) < 0 {
			c.bandTooNarrow(b, i == rest, cut, kind, exact)
			return false
		}
		d.StripSets[set].Bands[i].Cut[h] = cut.NM()
	}
	return true
}

// exactStrip is the cut strip for wedges of a height: as given, or as it follows from the
// side.
func (c *checker) exactStrip(h blocks.WedgeHeight) measure.Length {
	d := &c.design
	if d.StripGiven {
		return c.tree.Strip.In(d.Units)
	}
	return measure.Of(d.StripsCut[h])
}

func (c *checker) setDiffers(n *StripSetNode, kind string, comesTo, exact measure.Length) {
	d := &c.design
	difference, more := comesTo.Sub(exact), "more"
	if difference.Sign() < 0 {
		difference, more = exact.Sub(comesTo), "less"
	}
	c.fault(n.Name.Span.To(n.Bands[len(n.Bands)-1].Span), c.setHint(n, exact.Sub(comesTo)), "sewn together, %s comes to %s, %s %s than the strip of %s that %s blocks ask for",
		quote(n.Name.Text), comesTo.Text(d.Units), difference.Text(d.Units), more, exact.Text(d.Units), kind)
}

// setHint says which width of a strip set to change by how much, and that it may be left
// open.
func (c *checker) setHint(n *StripSetNode, missing measure.Length) string {
	last := n.Bands[len(n.Bands)-1]
	width := last.Cut.In(c.design.Units).Add(missing).NM()
	finest := measure.Inch / 64
	if c.design.Units == measure.Centimetres {
		finest = measure.Millimetre / 10
	}
	if width <= 2*c.design.Seam || width%finest != 0 {
		return "write rest for one of the widths"
	}
	return "write " + last.Fabric.Text + " rest, which makes it " + c.text(width)
}

func (c *checker) bandTooNarrow(b BandNode, rest bool, cut measure.Length, kind string, exact measure.Length) {
	d := &c.design
	if rest && cut.Sign() <= 0 {
		c.fault(b.Span, "make the other strips narrower", "the other strips leave nothing of the %s that %s blocks ask for", exact.Text(d.Units), kind)
		return
	}
	if rest {
		c.fault(b.Span, "make the other strips narrower", "the other strips leave %s of the %s that %s blocks ask for, no more than its two seam allowances",
			cut.Text(d.Units), exact.Text(d.Units), kind)
		return
	}
	c.fault(b.Span, "write a width above "+c.text(2*d.Seam), "a strip of %s vanishes in its two seam allowances of %s", cut.Text(d.Units), c.text(d.Seam))
}
