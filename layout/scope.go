package layout

import (
	"strings"

	"eighthturn/palettes"
)

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
