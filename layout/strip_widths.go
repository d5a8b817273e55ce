package layout

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

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
	if f.Set < 0 || h == blocks.NoWedges || c.setPoisoned(f.Set) || c.design.StripSets[f.Set].Bands[0].Cut[h] != 0 {
		return
	}
	if !c.fitSet(f.Set, h, kind.Name) {
		c.setNodes[f.Set].poisoned = true
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

// setPoisoned says whether a strip set cannot be fitted.
func (c *checker) setPoisoned(set int) bool {
	n := c.setNodes[set]
	return n.poisoned || len(n.Bands) == 0
}

// fitSet sees that a set comes to the strip for a height, and sets its bands' cut widths.
func (c *checker) fitSet(set int, h blocks.WedgeHeight, kind string) bool {
	d, n := &c.design, c.setNodes[set]
	exact := c.exactStrip(h)
	allowance := measure.Of(d.Seam)
	total := measure.Length{}
	open := 0 // strips that share what the others leave
	for _, b := range n.Bands {
		if b.Cut == nil {
			open++
			continue
		}
		total = total.Add(b.Cut.In(d.Units))
	}
	comesTo := total.Sub(allowance.Times(2 * (len(n.Bands) - 1)))
	left := exact.Sub(comesTo)
	if open == 0 && left.Sign() != 0 {
		c.setDiffers(n, kind, comesTo, exact)
		return false
	}
	share := left.Over(max(1, open))
	for i, b := range n.Bands {
		cut := share
		if b.Cut != nil {
			cut = b.Cut.In(d.Units)
		}
		if cut.Sub(allowance.Times(2)).Cmp(measure.Of(MinFinished)) < 0 {
			c.bandTooNarrow(b, cut, kind, exact)
			return false
		}
		d.StripSets[set].Bands[i].Cut[h] = cut.NM()
	}
	if _, on := measure.On(share.NM(), d.Units.Mark()); open > 1 && !on {
		c.warnOffMark(n, share, exact, open)
	}
	return true
}

// warnOffMark warns of equal strips that no ruler shows, and says which strips for wedges would make them such.
func (c *checker) warnOffMark(n *StripSetNode, share, exact measure.Length, open int) {
	u := c.design.Units
	h := advice("give all but one a width that a ruler shows, and write rest for the last")
	if step := u.Usual(measure.Inch/4, measure.Centimetre/2); c.design.StripGiven {
		low := measure.RoundUp(share.NM(), step) - step
		strip := func(width measure.NM) string {
			return measure.Number(exact.Add(measure.Of(width).Sub(share).Times(open)).NM(), u)
		}
		h = advice(fmt.Sprintf("strip %s makes them %s", strip(low+step), measure.Text(low+step, u)))
		if low > 2*c.design.Seam {
			h = advice(fmt.Sprintf("strip %s makes them %s, and strip %s makes them %s", strip(low), measure.Text(low, u), strip(low+step), measure.Text(low+step, u)))
		}
	}
	c.warn(n.Span, "", "the equal strips of %s are %s wide, which no ruler shows", quote(n.Name.Text), u.Nearest(share.NM())).suggest(h)
}

func (c *checker) setDiffers(n *StripSetNode, kind string, comesTo, exact measure.Length) {
	d := &c.design
	difference, more := comesTo.Sub(exact), "more"
	if difference.Sign() < 0 {
		difference, more = exact.Sub(comesTo), "less"
	}
	c.fault(n.Name.Span.To(n.Bands[len(n.Bands)-1].Span), "", "sewn together, %s comes to %s, %s %s than the strip of %s that %s blocks need",
		quote(n.Name.Text), comesTo.Text(d.Units), difference.Text(d.Units), more, exact.Text(d.Units), kind).suggest(c.setHint(n, exact.Sub(comesTo)))
}

// setHint says which width of a strip set to change by how much, and that it may be left
// open.
func (c *checker) setHint(n *StripSetNode, missing measure.Length) hint {
	last := n.Bands[len(n.Bands)-1]
	width := last.Cut.In(c.design.Units).Add(missing).NM()
	finest := c.design.Units.Fine()
	if width <= 2*c.design.Seam || width%finest != 0 {
		return advice("write rest for one of the widths")
	}
	return edit("write "+last.Fabric.Text+" rest, which makes it "+c.text(width), last.Cut.Span, "rest")
}

func (c *checker) bandTooNarrow(b bandNode, cut measure.Length, kind string, exact measure.Length) {
	d, rest := &c.design, b.Cut == nil
	if rest && cut.Sign() <= 0 {
		c.fault(b.Span, "make the other strips narrower", "the other strips leave nothing of the %s that %s blocks need", exact.Text(d.Units), kind)
		return
	}
	if rest {
		c.fault(b.Span, "make the other strips narrower", "the other strips leave %s of the %s that %s blocks need, no more than its two seam allowances",
			cut.Text(d.Units), exact.Text(d.Units), kind)
		return
	}
	c.fault(b.Span, "write a width above "+c.text(2*d.Seam), "a strip of %s vanishes in its two seam allowances of %s", cut.Text(d.Units), c.text(d.Seam))
}
