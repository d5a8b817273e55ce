package layout

import (
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// checker is the second stage: a tree to a design.
type checker struct {
	*session
	photos    func(file string) (palettes.Cloth, error) // nil if there are none
	tree      *Tree
	design    Design
	names     map[string]entry // fabrics and strip sets share one set of names
	order     []string         // names as defined, for hints
	labels    map[string]int   // blocks by label
	asWritten map[string]int   // blocks by label as the grid spells it
	used      map[string]bool  // names that something uses
	// missing is the message about each name that nothing has, by its number in the list.
	missing map[string]int
	// setNodes is where each strip set of the design was written.
	setNodes []*StripSetNode
	tooMany  bool            // names, and a message says so
	noLabel  map[string]bool // labels that no block has, and a message says so
}

// entry is a name that is defined.
type entry struct {
	fabric, set, pool int // index, -1 if it is not one
	span              Span
	palette           bool // brought in by a palette
}

// what names the sort of thing that an entry is.
func (e entry) what() string {
	switch {
	case e.set >= 0:
		return "strip set"
	case e.pool >= 0:
		return "pool of scraps"
	}
	return "fabric"
}

// Read turns the text of a layout into a design. The design is nil if there are errors;
// warnings do not stop it. Messages come in the order of their places. A layout that names
// photos has an error.
func Read(text string) (*Design, *Source, []Fault) { return ReadWith(text, nil) }

// ReadWith is Read for a layout that may name photos, which it is given by a function; a
// fault of the function is one sentence.
func ReadWith(text string, photos func(file string) (palettes.Cloth, error)) (*Design, *Source, []Fault) {
	source := NewSource(text)
	p := newParser(source)
	p.parse()
	if len(p.list) > 0 && len(p.tree.Lines) == 0 {
		return nil, source, p.sorted()
	}
	parsed := len(p.list)
	c := &checker{session: p.session, tree: &p.tree, photos: photos, names: map[string]entry{}, labels: map[string]int{}, asWritten: map[string]int{}, used: map[string]bool{}, missing: map[string]int{}, noLabel: map[string]bool{}}
	c.check()
	c.dropFollowUps(parsed)
	list := c.sorted()
	if errors, _ := Count(list); errors > 0 {
		return nil, source, list
	}
	return &c.design, source, list
}

func (c *checker) check() {
	c.basics()
	c.fabrics()
	c.palettes()
	c.scraps()
	c.stripSets()
	c.likes()
	c.blocks()
	c.webs()
	c.sash()
	if c.grid() {
		c.sizes()
		c.laid()
	}
	c.edgings()
	c.words()
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
	if n := c.tree.UsableWidth; n != nil && c.noFrame(n, "the width of the cloth") {
		d.UsableWidth = c.within(n, measure.Inch, MaxCloth, "the width of the cloth")
	}
}

func (c *checker) text(nm measure.NM) string { return measure.Text(nm, c.design.Units) }

func (c *checker) seam(n *LengthNode) {
	seam := n.In(c.design.Units).NM()
	switch {
	case !c.noFrame(n, "a seam allowance"):
	case seam <= 0:
		c.fault(n.Span, c.text(c.design.Seam)+" is usual", "a seam allowance must be above 0")
	case seam > MaxSeam:
		hint := c.text(c.design.Seam) + " is usual"
		if c.design.Units == measure.Centimetres && !n.reading.HasUnit() && seam <= 10*measure.Centimetre {
			hint = "did you mean " + c.src[n.Start:n.End] + " mm?"
		}
		c.fault(n.Span, hint, "a seam allowance of %s is too wide, %s is the most", c.text(seam), c.text(MaxSeam))
	default:
		c.design.Seam = seam
		return
	}
	c.tree.sizeReported = true
}

// within is a length that must lie between two; outside it is reported, and the nearer
// bound stands for it.
func (c *checker) within(n *LengthNode, least, most measure.NM, what string) measure.NM {
	nm := n.In(c.design.Units).NM()
	switch {
	case nm <= 0:
		c.fault(n.Span, "", "%s must be above 0", what)
		return least
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
	if len(c.names) >= MaxDefined {
		if c.spoilt[n.key()] = true; !c.tooMany {
			c.fault(n.Span, "", "a layout may define %d names at the most", MaxDefined)
		}
		c.tooMany = true
		return false
	}
	if first, twice := c.names[n.key()]; twice {
		const hint = "give this one another name"
		if what == first.what() {
			c.fault(n.Span, hint, "%s %s is already defined", what, quote(n.Text)).note(first.span, "first defined here")
		} else {
			c.fault(n.Span, hint, "%s is already defined as a %s", quote(n.Text), first.what()).note(first.span, "first defined here")
		}
		return false
	}
	e.span = n.Span
	c.names[n.key()] = e
	c.order = append(c.order, n.Text)
	return true
}

func (c *checker) fabrics() {
	for _, n := range c.tree.Fabrics {
		if !c.define(n.Name, "fabric", entry{fabric: len(c.design.Fabrics), set: -1, pool: -1}) {
			continue
		}
		c.warnTwoColours(n)
		f := Fabric{Name: n.Name.Text, Colour: n.Colour, Span: n.Span, UsableWidth: c.design.UsableWidth}
		if n.Swatch != nil {
			c.photo(n, &f)
		}
		if n.Print != nil {
			f.Print = n.Print.Text
		}
		if n.OnHand != nil {
			f.OnHand = c.within(n.OnHand, 1, 1000*measure.Yard, "the length on hand")
			c.warnInchesOnHand(n)
		}
		if n.UsableWidth != nil {
			f.UsableWidth = c.within(n.UsableWidth, measure.Inch, MaxCloth, "the width of the cloth")
		}
		c.design.Fabrics = append(c.design.Fabrics, f)
	}
}

// warnInchesOnHand warns of a short length without its unit: yards were meant, most likely.
func (c *checker) warnInchesOnHand(n *FabricNode) {
	nm := n.OnHand.In(c.design.Units).NM()
	if n.OnHand.reading.HasUnit() || c.design.Units != measure.Inches || nm <= 0 || nm >= 12*measure.Inch {
		return
	}
	written := c.src[n.OnHand.Start:n.OnHand.End]
	c.warn(n.OnHand.Span, "if yards are meant, write "+written+" yd", "only %s of %s is on hand", c.text(nm), quote(n.Name.Text))
}

func (c *checker) stripSets() {
	for _, n := range c.tree.StripSets {
		if !c.define(n.Name, "strip set", entry{fabric: -1, set: len(c.design.StripSets), pool: -1}) {
			continue
		}
		s := StripSet{Name: n.Name.Text, Span: n.Span}
		rests := 0
		for _, b := range n.Bands {
			band, ok := c.bandOf(b)
			n.Broken = n.Broken || !ok
			if b.Cut == nil {
				if rests++; rests == 2 {
					c.fault(b.Span, "give this one its cut width", "a strip set may have one rest, %s has two", quote(n.Name.Text))
					n.Broken = true
				}
			} else if b.Cut.Finished {
				c.cutNotFinished(b.Cut, "the widths of a strip set are")
				n.Broken = true
			}
			s.Bands = append(s.Bands, band)
		}
		c.design.StripSets, c.setNodes = append(c.design.StripSets, s), append(c.setNodes, n)
	}
}

// find looks a name up.
func (c *checker) find(n NameNode) (entry, bool) {
	e, ok := c.names[n.key()]
	if !ok {
		c.noSuchName(n)
		return entry{fabric: -1, set: -1, pool: -1}, false
	}
	c.used[n.key()] = true
	return e, true
}

// noSuchName reports a name that nothing has: once for each name, and not where a faulty
// line may have meant to define it.
func (c *checker) noSuchName(n NameNode) {
	const noted = 3 // more places would say no more
	first, again := c.missing[n.key()]
	switch {
	case c.spoilt[n.key()]:
	case c.tree.paletteReported && nearest(n.Text, c.order) == "":
	case !again && c.nameless > 0 && nearest(n.Text, c.order) == "":
		c.nameless--
		c.spoilt[n.key()] = true
	case !again:
		c.missing[n.key()] = len(c.list)
		c.fault(n.Span, c.nameToWrite(n.Text), "no fabric, pool or strip set is called %s", quote(n.Text)).noSuchName = true
	case len(c.list[first].Notes) < noted && c.list[first].Span != n.Span:
		c.list[first].note(n.Span, "here too")
	}
}

// nameToWrite is a hint for a name that nothing has: one that is near, or the fabric that
// a colour would make.
func (c *checker) nameToWrite(text string) string {
	hint := c.guess(text, c.order)
	if hint == "" {
		hint = didYouMean(text, []string{"cut", "finished", "rest", "turned"})
	}
	if hint != "" || len(c.list) >= mostGuesses {
		return hint
	}
	_, err := palettes.Parse(text)
	switch {
	case err != nil && isName(text) && !c.reserved(text):
		return "define it: fabric " + text + " and its colour"
	case err != nil && len(c.order) > 0:
		const shown = 12
		return "names are: " + strings.Join(c.order[:min(len(c.order), shown)], ", ")
	case err != nil:
		return ""
	case isName(text) && !c.reserved(text):
		return "define it: fabric " + text + " " + text
	}
	return "define a fabric of this colour, as in fabric cream " + text + ", and write its name here"
}

// fabric looks a fabric up; why says what needs one.
func (c *checker) fabric(n NameNode, why string) (int, bool) {
	e, ok := c.find(n)
	if !ok {
		return 0, false
	}
	if e.fabric < 0 {
		c.fault(n.Span, "write a fabric, for example "+c.someFabric(0), "%s, and %s is a %s", why, quote(n.Text), e.what()).note(e.span, "defined here")
		return 0, false
	}
	return e.fabric, true
}

// unused warns of what is defined and never used.
func (c *checker) unused() {
	for _, name := range c.order {
		key := foldName(name)
		if e := c.names[key]; !c.used[key] && !e.palette {
			c.warn(e.span, "", "the %s %s is never used", e.what(), quote(name))
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
		c.design.Borders = append(c.design.Borders, c.edging(n, "a border"))
	}
	if n := c.tree.Binding; n != nil && n.Width.Finished {
		c.fault(n.Width.Span, "for example binding 2 1/2 "+n.Fabric.Text, "a binding's width is cut, not finished")
	} else if n != nil {
		e := Edging{Span: n.Span, Corners: -1, Width: c.within(&n.Width, measure.Inch/4, 20*measure.Inch, "the binding's cut width")}
		e.Fabric, _ = c.fabric(n.Fabric, "a binding is cut from one fabric")
		if n.Width.In(c.design.Units).NM() == e.Width && e.Width < 4*c.design.Seam {
			c.warn(n.Width.Span, "bindings are often "+c.usualBinding()+" cut", "a binding of %s cut does not reach over a seam of %s on both sides", c.text(e.Width), c.text(c.design.Seam))
		}
		c.design.Binding = &e
	}
	c.topLimit()
}

// usualBinding is how wide bindings are often cut. Common practice, no source.
func (c *checker) usualBinding() string {
	if c.design.Units == measure.Centimetres {
		return "6 or 6.5 cm"
	}
	return "2 1/4 or 2 1/2 in"
}

// edging checks a border or the sashes.
func (c *checker) edging(n *EdgingNode, what string) Edging {
	e := Edging{Span: n.Span, Corners: -1, Width: c.finishedWidth(&n.Width, what+"'s width")}
	e.Fabric, _ = c.fabric(n.Fabric, what+" is cut from one fabric")
	if n.Corners != nil {
		e.Corners, _ = c.fabric(*n.Corners, "a square is cut from one fabric")
	}
	e.Lengthwise, e.Around = !n.Lengthwise.Empty(), !n.Around.Empty()
	return e
}

// cutNotFinished reports a width given finished where widths are cut, with both.
func (c *checker) cutNotFinished(n *LengthNode, what string) {
	width := n.In(c.design.Units).NM()
	c.fault(n.Span, c.text(width)+" finished is cut "+c.text(width+2*c.design.Seam)+" wide", "%s cut, not finished", what)
}

// cutAway reports a length given cut of which the seams leave nothing, with the widths that
// it would have without the word.
func (c *checker) cutAway(n *LengthNode, what string) {
	length := n.In(c.design.Units).NM()
	c.fault(n.Span, "without cut it finishes at "+c.text(length)+", and is cut "+c.text(length+2*c.design.Seam)+" wide",
		"%s of %s cut leaves nothing when two seam allowances of %s are taken", what, c.text(length), c.text(c.design.Seam))
}

// finishedWidth is a width that is finished unless it was given as cut.
func (c *checker) finishedWidth(n *LengthNode, what string) measure.NM {
	allowances := measure.NM(0)
	if n.Cut {
		allowances = 2 * c.design.Seam
	}
	if width := n.In(c.design.Units).NM(); n.Cut && width > 0 && width <= allowances {
		c.cutAway(n, what)
		return measure.Inch
	}
	return c.within(n, allowances, MaxSide, what) - allowances
}

// topLimit refuses a top that is larger than the pictures can hold.
func (c *checker) topLimit() {
	d := &c.design
	size := measure.NM(max(d.Columns, d.Rows)) * d.SideFinished
	if d.Sash != nil {
		size += measure.NM(max(d.Columns, d.Rows)+1) * d.Sash.Width
	}
	for _, b := range d.Borders {
		size += 2 * b.Width
	}
	if size > MaxTop {
		at := Span{}
		if c.tree.Grid != nil {
			at = c.tree.Grid.Span.firstBytes(len("grid"))
		}
		c.fault(at, "", "this top is %s long, %s is the most", c.text(size), c.text(MaxTop))
	}
}
