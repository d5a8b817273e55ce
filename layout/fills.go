package layout

import "strings"

// valueNode is what a role is given.
type valueNode struct {
	Span
	Name     NameNode
	Reversed Span        // the word `reversed`, empty if it was not there
	Strips   *WordNode   // which way the strips of a striped fabric are cut, nil if not said
	From     *LengthNode // where its stripes begin, nil if not said
}

// values is all that roles and webs are given.
func (t *Tree) values() (list []*valueNode) {
	for _, b := range t.Blocks {
		for r := range b.Roles {
			for i := range b.Roles[r].Values {
				list = append(list, &b.Roles[r].Values[i])
			}
		}
	}
	if t.Webs == nil {
		return list
	}
	for i := range t.Webs.Values {
		list = append(list, &t.Webs.Values[i])
	}
	for r := range t.Webs.Rows {
		for i := range t.Webs.Rows[r].Values {
			list = append(list, &t.Webs.Rows[r].Values[i].Value)
		}
	}
	return list
}

// Fill is what a piece is cut from: a fabric, a pool of scraps, or a strip set one way or
// the other. Of the three indexes two are -1; where all are, nothing was said.
type Fill struct {
	Fabric, Set, Pool int
	Reversed          bool
	Cut               *Cut // from which place of the cloth; nil as it comes along strips
	Span              Span
}

// noFill is a fill of which nothing was said.
var noFill = Fill{Fabric: -1, Set: -1, Pool: -1}

// given says whether the fill is one.
func (f Fill) given() bool { return f.Fabric >= 0 || f.Set >= 0 || f.Pool >= 0 }

// same says whether two fills look alike.
func (f Fill) same(g Fill) bool {
	return f.Fabric == g.Fabric && f.Set == g.Set && f.Pool == g.Pool && f.Reversed == g.Reversed && f.cut() == g.cut()
}

// cut is the place that a piece is cut from, one that no place is where none was said.
func (f Fill) cut() Cut {
	if f.Cut == nil {
		return Cut{Motif: -2}
	}
	return *f.Cut
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
		ok = c.stripsOf(&v)
	}
	return v, ok
}

// stripsOf takes how strips are cut from a striped fabric, and where its stripes begin.
func (c *cursor) stripsOf(v *valueNode) bool {
	faults := len(c.list)
	for _, word := range []string{"lengthwise", "crosswise"} {
		if at, ok := c.accept(word); ok {
			v.Strips = &WordNode{at, word}
		}
	}
	if strings.EqualFold(c.peek(), "from") {
		v.From = c.lengthBehind("how far within the repeat the stripes begin at the wide end", "from 1/4")
	}
	v.Span = v.To(c.last())
	return len(c.list) == faults
}

// fill looks up one value.
func (c *checker) fill(v valueNode, banded bool, role string) Fill {
	e, ok := c.find(v.Name)
	f := e.fill()
	f.Reversed, f.Span = !v.Reversed.Empty(), v.Span
	if ok {
		c.cut(v, e, &f)
	}
	switch {
	case !ok && f.Reversed:
		c.meantAsStripSet(e, v.Name.Text)
	case !ok:
	case e.is == aStripSet && !banded:
		c.fault(v.Span, "write a fabric, for example "+c.someFabric(0), "the %s %s cut from fabric, and %s is a strip set", role, verb(role, "is", "are"), quote(v.Name.Text)).note(e.span, "defined here")
	case e.is == aPool && c.design.Pools[e.index].By == BySet:
		c.fault(v.Span, "make a strip set of it, or deal it by piece, block or web", "%s is dealt by set, so only strip sets are made of it", quote(v.Name.Text)).note(e.span, "defined here")
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

// cut looks up from which place of its cloth a value is cut.
func (c *checker) cut(v valueNode, e *entry, f *Fill) {
	if e.is == aMotif {
		f.Fabric, f.Cut = c.design.Motifs[e.index].Fabric, &Cut{Motif: e.index}
	}
	if v.Strips == nil && v.From == nil {
		return
	}
	if e.is != aFabric || !c.isStriped(e.index) {
		c.fault(v.Span, "", "only a striped fabric is cut along or across its stripes, and %s is a %s", quote(v.Name.Text), c.sortOf(e)).
			suggest(c.leaveOut(strings.TrimSpace(c.src[v.Name.End:v.Span.End]), Span{v.Name.End, v.Span.End})).note(e.span, "defined here")
		return
	}
	f.Cut = &Cut{Motif: -1, Crosswise: v.Strips == nil || v.Strips.Word == "crosswise"}
	if v.From == nil {
		return
	}
	f.Cut.Alike, f.Cut.From = true, v.From.In(c.design.Units).NM()
	if repeat := c.design.Fabrics[e.index].Stripes.Repeat(); repeat > 0 && (f.Cut.From < 0 || f.Cut.From >= repeat) {
		c.fault(v.From.Span, "", "the stripes of %s repeat every %s, and they would begin at %s", quote(v.Name.Text), c.text(repeat), c.text(f.Cut.From))
	}
}

func (c *checker) fillName(f Fill) string {
	name := "?"
	switch {
	case f.Set >= 0:
		name = c.design.StripSets[f.Set].Name
	case f.Cut != nil && f.Cut.Motif >= 0:
		name = c.design.Motifs[f.Cut.Motif].Name
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
