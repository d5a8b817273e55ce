package layout

import (
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// sizeNodes is the lengths that every block is made by, as written.
type sizeNodes struct {
	Units       *WordNode
	Seam        *LengthNode
	Strip       *LengthNode
	Side        *LengthNode
	UsableWidth *LengthNode
}

// sizes is the lengths that every block is made by.
type sizes struct {
	Units        measure.System
	Seam         measure.NM // allowance
	UsableWidth  measure.NM // of the cloth
	SideFinished measure.NM // of a block; an even number of nanometres
	StripGiven   bool       // the layout gave the strip, not the side
	StripsCut    [blocks.Heights]measure.NM
}

func sizeStatements() []Statement {
	return []Statement{
		{
			Word: "units", Form: "units inches | cm", Summary: "what a bare number means", Once: true,
			Example: "units cm", Options: []Option{{Word: "inches"}, {Word: "cm"}},
			parse: func(p *parser, c *cursor, _ Span) {
				c.newField()
				p.tree.Units = c.oneOf("the units", "inches", "cm")
			},
			check: (*checker).units,
		},
		{
			Word: "seam", Form: "seam length", Summary: "the seam allowance; 1/4 in or 0.75 cm if omitted", Once: true,
			Example: "seam 1/4 in", aliases: []string{"allowance", "seam-allowance"},
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Seam = c.onlyLength("the seam allowance") },
			check: (*checker).seam, after: []string{"units"},
		},
		{
			Word: "strip", Form: "strip length", Summary: "the width of the cut strip for wedges; the block's side follows from it", Once: true, Example: "strip 4",
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Strip = c.onlyLength("the width of the cut strip") },
			// checked with the side
		},
		{
			Word: "side", Form: "side length", Summary: "the finished side of a block; the strip widths follow from it", Once: true,
			Example: "side 7", aliases: []string{"block-size"},
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Side = c.onlyLength("the finished side of a block") },
			check: (*checker).sizes, after: []string{"seam", "grid"},
		},
		{
			Word: "usable-width", Form: "usable-width length", Summary: "the usable width of fabric (WOF); 40 in or 100 cm if omitted", Once: true,
			Example: "usable-width 42", aliases: []string{"wof"},
			parse: func(p *parser, c *cursor, _ Span) {
				p.tree.UsableWidth = c.onlyLength("the usable width of fabric")
			},
			check: (*checker).usableWidth, after: []string{"units"},
		},
	}
}

func (c *checker) units() {
	d := &c.design
	d.Units, d.Seam, d.UsableWidth = measure.Inches, measure.Inch/4, 40*measure.Inch
	if n := c.tree.Units; n != nil && n.Word == "cm" {
		d.Units, d.Seam, d.UsableWidth = measure.Centimetres, 3*measure.Centimetre/4, 100*measure.Centimetre
	}
}

func (c *checker) usableWidth() {
	if n := c.tree.UsableWidth; n != nil && c.noFrame(n, "the usable width of fabric") {
		c.design.UsableWidth = c.within(n, measure.Inch, MaxCloth, "the usable width of fabric")
	}
}

func (c *checker) seam() {
	n := c.tree.Seam
	if n == nil {
		return
	}
	seam := n.In(c.design.Units).NM()
	switch {
	case !c.noFrame(n, "a seam allowance"):
	case n.In(c.design.Units).Sign() == 0:
		c.fault(n.Span, c.text(c.design.Seam)+" is usual", "a seam allowance must be above 0")
	case seam > MaxSeam:
		hint := c.text(c.design.Seam) + " is usual"
		if c.design.Units == measure.Centimetres && !n.reading.HasUnit() && seam <= 10*measure.Centimetre {
			written := c.src[n.Start:n.End] + " mm"
			likely := write(written).saying("did you mean " + written + "?")
			c.fault(n.Span, "", "a seam allowance of %s is too wide; the limit is %s", c.text(seam), c.text(MaxSeam)).suggest(likely)
			break
		}
		c.fault(n.Span, hint, "a seam allowance of %s is too wide; the limit is %s", c.text(seam), c.text(MaxSeam))
	default:
		c.design.Seam = seam
		return
	}
	c.poison("seam")
}

// heightUse is a wedge height that the grid's blocks need, with one block that does.
type heightUse struct {
	height blocks.WedgeHeight
	block  *Block
	node   *blockNode
}

// sizes finds the side of a block and the strips that its wedges come from.
func (c *checker) sizes() {
	if c.poisoned("grid") {
		return
	}
	uses := c.heightsUsed()
	c.countPatches()
	if c.poisoned("strip", "side", "seam", "units") || !c.side(uses) {
		c.poison("side")
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
	if c.mayHold("side") {
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
	side := "side " + measure.Number(measure.Nearest(whole, d.Units.Unit()/2), d.Units)
	at := Span{c.source.lineSpan(c.source.Line(n.Start)).Start, n.End}
	at.Start += strings.Index(strings.ToLower(c.src[at.Start:at.End]), "strip")
	f := c.fault(n.Span, "", "cut strips of %s make %s blocks of %s and %s blocks of %s, but a grid has one side",
		n.In(d.Units).Text(d.Units), first.block.Kind.Name, c.text(a), second.block.Kind.Name, c.text(b))
	f.suggest(edit("write "+side+" instead; each kind then has its own strip", at, side))
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

// exactStrip is the cut strip for wedges of a height: as given, or as it follows from the
// side.
func (c *checker) exactStrip(h blocks.WedgeHeight) measure.Length {
	d := &c.design
	if d.StripGiven {
		return c.tree.Strip.In(d.Units)
	}
	return measure.Of(d.StripsCut[h])
}
