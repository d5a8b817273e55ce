package layout

import (
	"eighthturn/measure"
	"eighthturn/palettes"
)

// checker is the second stage: a tree to a design.
type checker struct {
	*session
	tree   *Tree
	design Design
	names  map[string]entry // fabrics and strip sets share one set of names
	order  []string         // names as defined, for hints
	labels map[string]int   // blocks by label
	used   map[string]bool  // names that something uses
}

// entry is a name that is defined.
type entry struct {
	fabric, set int // index, -1 if it is not one
	span        Span
}

// Read turns the text of a layout into a design. The design is nil if there are errors;
// warnings do not stop it. Messages come in the order of their places.
func Read(text string) (*Design, *Source, []Fault) {
	source := NewSource(text)
	p := newParser(source)
	p.parse()
	if len(p.list) > 0 && len(p.tree.Lines) == 0 {
		return nil, source, p.sorted()
	}
	c := &checker{session: p.session, tree: &p.tree, names: map[string]entry{}, labels: map[string]int{}, used: map[string]bool{}}
	c.check()
	list := c.sorted()
	if errors, _ := Count(list); errors > 0 {
		return nil, source, list
	}
	return &c.design, source, list
}

func (c *checker) check() {
	c.basics()
	c.fabrics()
	c.stripSets()
	c.blocks()
	c.webs()
	if c.grid() {
		c.sizes()
		c.laid()
	}
	c.edgings()
	if errors, _ := Count(c.list); errors == 0 {
		c.unused()
	}
}

// basics takes what every other statement is read with.
func (c *checker) basics() {
	d := &c.design
	d.Units, d.Seam, d.UsableWidth = measure.Inches, measure.Inch/4, 40*measure.Inch
	if c.tree.Title != nil {
		d.Title = c.tree.Title.Text
	}
	if c.tree.Units != nil && c.tree.Units.Word == "cm" {
		d.Units, d.Seam, d.UsableWidth = measure.Centimetres, 3*measure.Centimetre/4, 100*measure.Centimetre
	}
	if n := c.tree.Seam; n != nil {
		c.seam(n)
	}
	if n := c.tree.UsableWidth; n != nil && c.noCut(n, "the width of the cloth") {
		d.UsableWidth = c.within(n, measure.Inch, MaxCloth, "the width of the cloth")
	}
}

func (c *checker) text(nm measure.NM) string { return measure.Text(nm, c.design.Units) }

func (c *checker) seam(n *LengthNode) {
	seam := n.In(c.design.Units).NM()
	switch {
	case n.Cut:
		c.noCut(n, "a seam allowance")
	case seam <= 0:
		c.fault(n.Span, "", "a seam allowance must be above 0")
	case seam > MaxSeam:
		hint := ""
		if c.design.Units == measure.Centimetres && !n.reading.HasUnit() && seam <= 10*measure.Centimetre {
			hint = "did you mean " + c.src[n.Start:n.End] + " mm?"
		}
		c.fault(n.Span, hint, "a seam allowance of %s is too wide, %s is the most", c.text(seam), c.text(MaxSeam))
	default:
		c.design.Seam = seam
	}
}

// noCut refuses the word cut where it says nothing.
func (c *checker) noCut(n *LengthNode, what string) bool {
	if n.Cut {
		c.fault(n.Span, "leave out cut", "%s is neither cut nor finished", what)
	}
	return !n.Cut
}

// within is a length that must lie between two; outside it is reported, and the nearer
// bound stands for it.
func (c *checker) within(n *LengthNode, least, most measure.NM, what string) measure.NM {
	nm := n.In(c.design.Units).NM()
	switch {
	case nm < least:
		c.fault(n.Span, "", "%s is %s, but must be %s or more", what, c.text(nm), c.text(least))
		return least
	case nm > most:
		c.fault(n.Span, "", "%s is %s, but must be %s or less", what, c.text(nm), c.text(most))
		return most
	}
	return nm
}

// define enters a name; a second definition is reported.
func (c *checker) define(n NameNode, what string, e entry) bool {
	if len(c.names) == MaxDefined {
		c.fault(n.Span, "", "a layout may define %d names at the most", MaxDefined)
		return false
	}
	if first, twice := c.names[n.key()]; twice {
		was := "fabric"
		if first.set >= 0 {
			was = "strip set"
		}
		c.fault(n.Span, "", "%s %s is already defined as a %s", what, quote(n.Text), was).note(first.span, "first defined here")
		return false
	}
	e.span = n.Span
	c.names[n.key()] = e
	c.order = append(c.order, n.Text)
	return true
}

func (c *checker) fabrics() {
	for _, n := range c.tree.Fabrics {
		if !c.define(n.Name, "fabric", entry{fabric: len(c.design.Fabrics), set: -1}) {
			continue
		}
		f := Fabric{Name: n.Name.Text, Colour: n.Colour, Span: n.Span, UsableWidth: c.design.UsableWidth}
		if n.Print != nil {
			f.Print = n.Print.Text
		}
		if n.OnHand != nil {
			f.OnHand = c.within(n.OnHand, 1, 1000*measure.Yard, "the length on hand")
		}
		if n.UsableWidth != nil {
			f.UsableWidth = c.within(n.UsableWidth, measure.Inch, MaxCloth, "the width of the cloth")
		}
		c.design.Fabrics = append(c.design.Fabrics, f)
	}
}

func (c *checker) stripSets() {
	for _, n := range c.tree.StripSets {
		if !c.define(n.Name, "strip set", entry{fabric: -1, set: len(c.design.StripSets)}) {
			continue
		}
		s := StripSet{Name: n.Name.Text, Span: n.Span}
		rests := 0
		for _, b := range n.Bands {
			fabric, ok := c.fabric(b.Fabric, "a strip set is sewn from fabrics")
			n.Broken = n.Broken || !ok
			if b.Cut == nil {
				if rests++; rests == 2 {
					c.fault(b.Span, "", "a strip set may have one rest, %s has two", quote(n.Name.Text))
					n.Broken = true
				}
			}
			s.Bands = append(s.Bands, Band{Fabric: fabric, Rest: b.Cut == nil})
		}
		c.design.StripSets = append(c.design.StripSets, s)
	}
}

// find looks a name up.
func (c *checker) find(n NameNode) (entry, bool) {
	e, ok := c.names[n.key()]
	if !ok {
		hint := didYouMean(n.Text, c.order)
		if hint == "" {
			if _, err := palettes.Parse(n.Text); err == nil {
				hint = "define it: fabric " + n.Text + "-1 " + n.Text
				if !c.reserved(n.Text) && isName(n.Text) {
					hint = "define it: fabric " + n.Text + " " + n.Text
				}
			}
		}
		c.fault(n.Span, hint, "no fabric, pool or strip set is called %s", quote(n.Text))
		return entry{fabric: -1, set: -1}, false
	}
	c.used[n.key()] = true
	return e, true
}

// fabric looks a fabric up; why says what needs one.
func (c *checker) fabric(n NameNode, why string) (int, bool) {
	e, ok := c.find(n)
	if !ok {
		return 0, false
	}
	if e.fabric < 0 {
		c.fault(n.Span, "", "%s, and %s is a strip set", why, quote(n.Text)).note(e.span, "defined here")
		return 0, false
	}
	return e.fabric, true
}

// unused warns of what is defined and never used.
func (c *checker) unused() {
	for _, name := range c.order {
		key := foldName(name)
		if e := c.names[key]; !c.used[key] {
			what := "fabric"
			if e.set >= 0 {
				what = "strip set"
			}
			c.warn(e.span, "", "the %s %s is never used", what, quote(name))
		}
	}
	for i := range c.design.Blocks {
		if b := &c.design.Blocks[i]; !b.used {
			c.warn(c.tree.Blocks[i].Label.Span, "", "the block %s stands nowhere in the grid", quote(b.Label))
		}
	}
}

// edgings checks the borders and the binding.
func (c *checker) edgings() {
	for _, n := range c.tree.Borders {
		e := Edging{Span: n.Span, Width: c.finishedWidth(&n.Width, "a border's width")}
		e.Fabric, _ = c.fabric(n.Fabric, "a border is cut from one fabric")
		c.design.Borders = append(c.design.Borders, e)
	}
	if n := c.tree.Binding; n != nil {
		e := Edging{Span: n.Span, Width: c.within(&n.Width, measure.Inch/4, 20*measure.Inch, "the binding's cut width")}
		e.Fabric, _ = c.fabric(n.Fabric, "a binding is cut from one fabric")
		c.design.Binding = &e
	}
	c.topLimit()
}

// finishedWidth is a width that is finished unless it was given as cut.
func (c *checker) finishedWidth(n *LengthNode, what string) measure.NM {
	allowances := measure.NM(0)
	if n.Cut {
		allowances = 2 * c.design.Seam
	}
	if n.In(c.design.Units).NM() <= allowances {
		c.fault(n.Span, "", "%s of %s leaves nothing when two seam allowances of %s are taken", what, c.text(n.In(c.design.Units).NM()), c.text(c.design.Seam))
		return measure.Inch
	}
	return c.within(n, allowances, MaxSide, what) - allowances
}

// topLimit refuses a top that is larger than the pictures can hold.
func (c *checker) topLimit() {
	d := &c.design
	size := measure.NM(max(d.Columns, d.Rows)) * d.SideFinished
	for _, b := range d.Borders {
		size += 2 * b.Width
	}
	if size > MaxTop {
		at := Span{}
		if c.tree.Grid != nil {
			at = c.tree.Grid.Span
		}
		c.fault(at, "", "this top is %s long, %s is the most", c.text(size), c.text(MaxTop))
	}
}
