package layout

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

func stripSetStatements() []Statement {
	return []Statement{{
		Word: "strip-set", Form: "strip-set name fabric length fabric length … [sets number]",
		Summary: "strips sewn together, from the wedge's wide end to its tip; one length may be the word rest, or several the word equal",
		Example: "strip-set shore rust 1 3/4 cream 1 1/2 teal rest", Options: []Option{{Word: "rest"}, {Word: "equal"}, {"sets", "sets 16"}}, next: "a fabric", defines: true,
		parse: parseStripSet, check: (*checker).stripSets, after: []string{"motif", "scraps"},
	}}
}

// StripSetNode is a strip set as written, from the wide end of the wedge to its tip.
type StripSetNode struct {
	Span
	Name     NameNode
	Bands    []bandNode
	Sets     *countNode // how many are dealt; nil if not said
	poisoned bool       // does not hold together: no strip is asked to fit it
}

// bandNode is one band of a strip set; without a length it is the rest, or as wide as all others that are equal.
type bandNode struct {
	Span
	Fabric NameNode
	Cut    *LengthNode
	Equal  Span // the word, empty if it was not there
}

// StripSet is strips sewn together, from the wide end of a wedge to its tip.
type StripSet struct {
	Name  string
	Bands []Band
	Dealt bool // its pools are dealt by set
	Sets  int  // how many different sets are dealt; 0 for as many as are needed
	Span  Span
}

// Band is one strip of a strip set.
type Band struct {
	Fabric int  // index, -1 for a pool
	Pool   int  // index, -1 for a fabric
	Rest   bool // takes what the others leave
	Equal  bool // shares what the others leave with the rest of its kind
	// Cut is the band's cut width in the strip for wedges of each height; 0 where no
	// block of the grid uses the set so.
	Cut [blocks.Heights]measure.NM
}

func parseStripSet(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a strip set's name", false)
	if !ok {
		c.dropRest()
		return
	}
	s := &StripSetNode{Name: name}
	p.tree.StripSets = append(p.tree.StripSets, s)
	for !c.done() && !s.poisoned {
		s.poisoned = !c.bandOrSets(s)
	}
	if len(s.Bands) == 0 && !s.poisoned {
		s.poisoned = true
		c.fault(c.here(), "for example strip-set "+name.Text+" navy 1 3/4 cream rest", "expected the fabrics of %s and their cut widths, found the end of the line", quote(name.Text))
	}
	c.dropIfFaulty(s.poisoned)
	s.Span = keyword.To(c.last())
}

// band takes one fabric and its width.
func (c *cursor) band(s *StripSetNode) bool {
	if len(s.Bands) == MaxBands {
		c.fault(c.here(), "", "a strip set may have at most %d strips", MaxBands)
		return false
	}
	c.newField()
	if c.atNumber() {
		c.fault(c.here(), "the set's name comes first, then each fabric with its width", "expected a fabric's name, found %s", c.found())
		c.lacksName(false)
		return false
	}
	name, ok := c.nameOf("a fabric's name")
	if !ok {
		return false
	}
	b := bandNode{Span: name.Span, Fabric: name}
	if at, ok := c.accept("rest"); ok {
		b.Span = b.Span.To(at)
		s.Bands = append(s.Bands, b)
		return true
	}
	if at, ok := c.accept("equal"); ok {
		b.Span, b.Equal = b.Span.To(at), at
		s.Bands = append(s.Bands, b)
		return true
	}
	l, ok := c.length("the cut width of " + quote(b.Fabric.Text) + ", or the word rest or equal")
	if !ok {
		return false
	}
	b.Cut, b.Span = &l, b.Span.To(l.Span)
	s.Bands = append(s.Bands, b)
	return true
}

func (c *checker) stripSets() {
	strips := 0
	for _, n := range c.tree.StripSets {
		if before := strips; before <= MaxSetStrips {
			if strips += len(n.Bands); strips > MaxSetStrips {
				c.fault(n.Span, "", "the strip sets of a layout may have at most %d strips in all", MaxSetStrips)
			}
		}
		if !c.define(n.Name, aStripSet, len(c.design.StripSets)) {
			continue
		}
		s := StripSet{Name: n.Name.Text, Span: n.Span}
		for _, b := range n.Bands {
			band, ok := c.bandOf(b)
			n.poisoned = n.poisoned || !ok
			if b.Cut != nil && b.Cut.Finished {
				c.cutNotFinished(b.Cut, "the widths of a strip set are")
				n.poisoned = true
			}
			s.Bands = append(s.Bands, band)
		}
		n.poisoned = n.poisoned || !c.oneRest(n)
		c.dealt(n, &s)
		c.design.StripSets, c.setNodes = append(c.design.StripSets, s), append(c.setNodes, n)
	}
}

// bandOf looks up what a band of a strip set is cut from.
func (c *checker) bandOf(b bandNode) (Band, bool) {
	e, ok := c.find(b.Fabric)
	f := e.fill()
	if ok && e.is == aStripSet {
		c.fault(b.Fabric.Span, "write a fabric, for example "+c.someFabric(0), "a strip set is sewn from fabrics, and %s is a strip set", quote(b.Fabric.Text)).note(e.span, "defined here")
		ok = false
	}
	return Band{Fabric: f.Fabric, Pool: f.Pool, Rest: b.Cut == nil && b.Equal.Empty(), Equal: !b.Equal.Empty()}, ok
}

// oneRest sees that a set has one rest at most, and none beside strips that share it.
func (c *checker) oneRest(n *StripSetNode) bool {
	var rests []bandNode
	shared := false
	for _, b := range n.Bands {
		switch {
		case !b.Equal.Empty():
			shared = true
		case b.Cut == nil:
			rests = append(rests, b)
		}
	}
	switch {
	case len(rests) > 1:
		c.fault(rests[1].Span, "", "a strip set may have one rest, %s has two", quote(n.Name.Text)).suggest(c.allEqual(n))
	case len(rests) == 1 && shared:
		c.fault(rests[0].Span, "", "the equal strips of %s share what the others leave, so there is no rest", quote(n.Name.Text)).suggest(c.allEqual(n))
	default:
		return true
	}
	return false
}

// allEqual is a hint to share what the other strips leave between all that have no width.
func (c *checker) allEqual(n *StripSetNode) hint {
	h := hint{words: "write equal for each strip that takes an equal share of the rest"}
	for _, b := range n.Bands {
		if b.Cut == nil && b.Equal.Empty() {
			h.edits = append(h.edits, Edit{Span{b.End - len("rest"), b.End}, "equal"})
		}
	}
	return h
}
