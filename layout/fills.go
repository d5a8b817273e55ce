package layout

import "strings"

// valueNode is what a role is given.
type valueNode struct {
	Span
	Name     NameNode
	Reversed Span // the word `reversed`, empty if it was not there
}

// Fill is what a piece is cut from: a fabric, a pool of scraps, or a strip set one way or
// the other. Of the three indexes two are -1; where all are, nothing was said.
type Fill struct {
	Fabric, Set, Pool int
	Reversed          bool
	Span              Span
}

// noFill is a fill of which nothing was said.
var noFill = Fill{Fabric: -1, Set: -1, Pool: -1}

// given says whether the fill is one.
func (f Fill) given() bool { return f.Fabric >= 0 || f.Set >= 0 || f.Pool >= 0 }

// same says whether two fills look alike.
func (f Fill) same(g Fill) bool {
	return f.Fabric == g.Fabric && f.Set == g.Set && f.Pool == g.Pool && f.Reversed == g.Reversed
}

// value takes a role's value: a name, with `reversed` before it or not.
func (c *cursor) value(what string) (valueNode, bool) {
	v := valueNode{}
	start := c.here()
	if at, ok := c.acceptNow(Reversed, "turned"); ok {
		v.Reversed = at
	}
	name, ok := c.nameOf(what)
	if ok {
		v.Name, v.Span = name, start.To(name.Span)
	}
	return v, ok
}

// fill looks up one value.
func (c *checker) fill(v valueNode, banded bool, role string) Fill {
	e, ok := c.find(v.Name)
	f := e.fill()
	f.Reversed, f.Span = !v.Reversed.Empty(), v.Span
	switch {
	case !ok && f.Reversed:
		c.meantAsStripSet(e, v.Name.Text)
	case !ok:
	case e.is == aStripSet && !banded:
		c.fault(v.Span, "write a fabric, for example "+c.someFabric(0), "the %s %s cut from fabric, and %s is a strip set", role, verb(role, "is", "are"), quote(v.Name.Text)).note(e.span, "defined here")
	case e.is != aStripSet && f.Reversed:
		c.fault(v.Span, "", "only strip sets can be reversed, and %s is a %s", quote(v.Name.Text), e.is).suggest(c.leaveOut(Reversed, v.Reversed)).note(e.span, "defined here")
	}
	return f
}

// meantAsStripSet says to define a name that nothing has as a strip set, since it is reversed somewhere.
func (c *checker) meantAsStripSet(e *entry, name string) {
	const fabric = "define it: fabric "
	if e.message == 0 || e.message > len(c.list) {
		return
	}
	if f := &c.list[e.message-1]; strings.HasPrefix(f.Hint, fabric) {
		f.Hint = "define it: strip-set " + name + " and its fabrics"
	}
}

func (c *checker) fillName(f Fill) string {
	name := "?"
	switch {
	case f.Set >= 0:
		name = c.design.StripSets[f.Set].Name
	case f.Fabric >= 0:
		name = c.design.Fabrics[f.Fabric].Name
	case f.Pool >= 0:
		name = c.design.Pools[f.Pool].Name
	}
	if f.Reversed {
		return Reversed + " " + name
	}
	return name
}

// someFabric is a fabric of the layout for an example, another for every number.
func (c *checker) someFabric(number int) string {
	if n := len(c.design.Fabrics); n > 0 {
		return c.design.Fabrics[number%n].Name
	}
	return []string{"navy", "cream"}[number%2]
}
