package layout

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/measure"
)

func quiltSizeStatements() []Statement {
	return []Statement{{
		Word: "size", Form: "size name [across number] [down number] [strip length | side length] [border length … | border none] [units cm | units inches]",
		Summary: "the same quilt in another size; the name alone is for the size as written",
		Example: "size queen across 14 down 16", Options: []Option{{"across", "across 14"}, {"down", "down 16"}, {"strip", "strip 5"}, {"side", "side 7"}, {"border", "border 2 5"}, {"units", "units cm"}},
		aliases: []string{"sizes"}, next: `"across", "down", "strip", "side", "border" or "units"`,
		parse: parseQuiltSize, // checked behind all others
	}}
}

// quiltSizeNode is a size of the quilt as written.
type quiltSizeNode struct {
	Span
	Name         NameNode
	Across, Down countNode // blocks; empty spans where they are not said
	Strip, Side  *LengthNode
	Borders      []LengthNode // from the inside out
	Units        *WordNode    // that its lengths are in; nil for the layout's
	UnitsAt      Span         // the word units
	BordersAt    Span         // the word border, empty where nothing is said of borders
}

// QuiltSize is a size of the quilt.
type QuiltSize struct {
	Name   string
	Own    bool // the layout as written
	Design *Design
	Span   Span
}

// InSize is the design in a size by its name, which is compared as names are; nil if there is none.
func (d *Design) InSize(name string) *Design {
	for i := range d.Sizes {
		if foldName(d.Sizes[i].Name) == foldName(name) {
			return d.Sizes[i].Design
		}
	}
	return nil
}

func parseQuiltSize(p *parser, c *cursor, keyword Span) {
	c.newField()
	if c.atNumber() {
		p.poison("side") // which is what it was most likely to be
		c.fault(c.here(), "", "expected a size's name, found %s", c.found()).suggest(c.sizeIsNamed(keyword))
		c.dropRest()
		return
	}
	name, ok := c.newName("a size's name", false)
	if !ok {
		c.dropRest()
		return
	}
	n := &quiltSizeNode{Name: name}
	p.tree.Sizes = append(p.tree.Sizes, n)
	for ok && !c.done() {
		var more bool
		if ok, more = c.quiltSizeOption(n); !more {
			break
		}
	}
	c.dropIfFaulty(!ok)
	n.Span = keyword.To(c.last())
}

// sizeIsNamed is a hint for a size that begins with a number: the side of a block, or how a size of the quilt is written.
func (c *cursor) sizeIsNamed(keyword Span) hint {
	if twoLengths(strings.TrimSpace(c.rest())) {
		return advice("a size has a name and numbers of blocks: size lap across 8 down 10; the quilt is as large as its grid makes it")
	}
	return edit("the finished side of a block is side "+c.text(c.here()), keyword, "side").backed("a size has a name and numbers of blocks: size lap across 8 down 10")
}

// quiltSizeOption takes one option of a size. More says that there was one.
func (c *cursor) quiltSizeOption(n *quiltSizeNode) (ok, more bool) {
	word := strings.ToLower(c.peek())
	for _, o := range []struct {
		word string
		to   *countNode
	}{{"across", &n.Across}, {"down", &n.Down}} {
		if word == o.word && o.to.Empty() {
			return c.blockCount(o.to, word), true
		}
	}
	for _, o := range []struct {
		word, what string
		to         **LengthNode
	}{{"strip", "the width of the cut strip", &n.Strip}, {"side", "the finished side of a block", &n.Side}} {
		if word == o.word && *o.to == nil {
			*o.to = c.sizeLength(o.what)
			return *o.to != nil, true
		}
	}
	if word == "units" && n.Units == nil {
		c.newField()
		n.UnitsAt = c.word()
		n.Units = c.oneOf("the units", "inches", "cm")
		return n.Units != nil, true
	}
	if word != "border" || !n.BordersAt.Empty() {
		return true, false
	}
	c.newField()
	n.BordersAt = c.word()
	return c.borderWidths(n), true
}

// blockCount takes a number of blocks.
func (c *cursor) blockCount(to *countNode, word string) bool {
	c.newField()
	c.word()
	count, ok := c.count("the number of blocks " + word)
	if ok && count.Count == 0 {
		c.fault(count.Span, "write 1 or more", "a quilt cannot be 0 blocks %s", word)
		ok = false
	}
	*to = count
	return ok
}

// sizeLength takes an option's word and its length.
func (c *cursor) sizeLength(what string) *LengthNode {
	c.newField()
	c.word()
	l, ok := c.length(what)
	if !ok {
		return nil
	}
	return &l
}

// borderWidths takes the widths of borders, or the word none.
func (c *cursor) borderWidths(n *quiltSizeNode) bool {
	if _, ok := c.accept("none"); ok {
		return true
	}
	for first := true; first || c.atNumber(); first = false {
		width, ok := c.number("the widths of the borders or the word none")
		if !ok {
			return false
		}
		n.Borders = append(n.Borders, c.framed(width))
	}
	return true
}

// quiltSizes makes the design in each size, once all else is known.
func (c *checker) quiltSizes() {
	if len(c.tree.Sizes) == 0 {
		return
	}
	z := &sizing{checker: c, places: c.design.Columns * c.design.Rows}
	named := map[string]Span{}
	var list []*quiltSizeNode
	for i, n := range c.tree.Sizes {
		if i == MaxSizes {
			c.fault(n.Name.Span, "", "a layout may have at most %d sizes", MaxSizes)
			break
		}
		if first, twice := named[n.Name.key()]; twice {
			c.fault(n.Name.Span, "give this one another name", "the size %s is already defined", quote(n.Name.Text)).note(first, "first defined here")
			continue
		}
		named[n.Name.key()] = n.Name.Span
		list = append(list, n)
	}
	if errors, _ := Count(c.list); errors > 0 || len(c.bad.words) > 0 || c.bad.any {
		return
	}
	for _, n := range list {
		z.size(n)
	}
}

// sizing is the work on the sizes of a layout.
type sizing struct {
	*checker
	growth *Growth // nil before it is needed
	warned []Fault // of the layout as it is written; nil before it is needed
	places int     // in the grids of all sizes so far
}

// size makes the design in one size.
func (z *sizing) size(n *quiltSizeNode) {
	before := len(z.list)
	counts := z.counts(n)
	z.blockSize(n)
	z.otherUnits(n)
	if len(n.Borders) > len(z.tree.Borders) {
		z.fault(n.BordersAt.To(n.Borders[len(n.Borders)-1].Span), "", "the size %s has widths for %s, but the layout has %s", quote(n.Name.Text),
			plural(len(n.Borders), "border"), plural(len(z.tree.Borders), "border")).suggest(z.fewerBorders(n))
	}
	if errors, _ := Count(z.list[before:]); errors > 0 {
		return
	}
	s := QuiltSize{Name: n.Name.Text, Span: n.Span}
	if counts == [2]int{z.design.Columns, z.design.Rows} && n.Strip == nil && n.Side == nil && n.BordersAt.Empty() && n.Units == nil {
		if i := slices.IndexFunc(z.design.Sizes, func(s QuiltSize) bool { return s.Own }); i >= 0 {
			first := z.design.Sizes[i]
			z.fault(n.Name.Span, "say how many blocks it has: size "+n.Name.Text+" across "+fmt.Sprint(z.design.Columns)+" down "+fmt.Sprint(z.design.Rows),
				"%s and %s are both the size as written", quote(first.Name), quote(n.Name.Text)).note(first.Span, "the first")
			return
		}
		own := z.design
		own.Sizes = nil
		s.Own, s.Design = true, &own
		z.design.Sizes = slices.Insert(z.design.Sizes, 0, s)
		return
	}
	other := z.again(func(t *Tree) { z.apply(n, counts, t) })
	list := other.sorted()
	if i := slices.IndexFunc(list, func(f Fault) bool { return f.Severity == Error }); i >= 0 {
		z.tell(n, list[i])
		return
	}
	for _, f := range list {
		if !z.isTold(f) {
			z.tell(n, f)
		}
	}
	s.Design = &other.design
	z.design.Sizes = append(z.design.Sizes, s)
}

// tell says at a size what is wrong in it.
func (z *sizing) tell(n *quiltSizeNode, f Fault) {
	if n.holds(f.Span) {
		z.list = append(z.list, f)
		return
	}
	name := quote(n.Name.Text)
	if f.Severity == Warning {
		z.warn(n.Name.Span, f.Hint, "in the size %s, %s", name, f.Message).note(f.Span, "this place")
		return
	}
	z.fault(n.Name.Span, f.Hint, "in the size %s, %s", name, f.Message).note(f.Span, "this place")
}

// counts are the columns and rows of a size.
func (z *sizing) counts(n *quiltSizeNode) [2]int {
	counts := [2]int{z.design.Columns, z.design.Rows}
	for which, said := range [2]countNode{n.Across, n.Down} {
		if said.Empty() || said.Count == counts[which] {
			continue
		}
		z.grows()
		counts[which] = said.Count
		if a := &z.growth.Axes[which]; !a.Allows(said.Count) {
			z.cannotGrow(said, which, a)
		}
	}
	z.places += counts[Across] * counts[Down]
	if float64(counts[Across])*float64(counts[Down]) > MaxCells || z.places > MaxCells {
		z.fault(n.Name.Span, "", "with the size %s the grids of all sizes have more than the %d places that are the limit", quote(n.Name.Text), MaxCells)
	}
	return counts
}

// cannotGrow reports a number of blocks that the grid cannot have, with those nearest to it that it can.
func (z *sizing) cannotGrow(said countNode, which int, a *Axis) {
	way := [2]string{"across", "down"}[which]
	if a.Way.Fixed() {
		z.fault(said.Span, "", "the grid cannot have %s %s: its table of webs does not let it grow that way", plural(said.Count, "block"), way).
			suggest(write(fmt.Sprint(len(a.IDs))))
		return
	}
	var words []string
	for _, count := range a.Nearest(said.Count) {
		words = append(words, fmt.Sprint(count))
	}
	z.fault(said.Span, "", "the grid cannot have %s %s: it grows %d at a time from %s", plural(said.Count, "block"), way, a.Way.Period, plural(a.Least(), "block")).
		suggest(write(words[len(words)-1]).saying("write " + strings.Join(words, " or ")))
}

// grows finds how the grid grows.
func (z *sizing) grows() {
	if z.growth != nil {
		return
	}
	z.growth = z.tree.Growth(&z.design, func(g *Growth, counts [2]int) int {
		if counts == [2]int{z.design.Columns, z.design.Rows} {
			return len(z.now())
		}
		other := z.again(func(t *Tree) { g.grow(t, counts) })
		list := other.sorted()
		if errors, _ := Count(list); errors > 0 {
			return -1
		}
		return len(list)
	})
}

// now is what the layout warns of as it is written.
func (z *sizing) now() []Fault {
	if z.warned == nil {
		z.warned = append([]Fault{}, (&faults{slices.Clone(z.list)}).sorted()...)
	}
	return z.warned
}

// isTold says whether the layout as it is written warns of the same: in the same words, or at the same place with the same hint.
func (z *sizing) isTold(f Fault) bool {
	return slices.ContainsFunc(z.now(), func(n Fault) bool { return n.Message == f.Message || n.Span == f.Span && n.Hint == f.Hint })
}

// blockSize sees that a size gives the strip or the side as the layout does.
func (z *sizing) blockSize(n *quiltSizeNode) {
	to, mark := z.design.Units, measure.NM(1)
	if n.Units != nil {
		to = n.units(to)
		mark = scaleMark(to)
	}
	given, hint := "strip", "side "+measure.Number(measure.Nearest(z.design.SideFinished, mark), to)
	if z.design.StripGiven {
		given, hint = "side", "strip "+measure.Number(measure.Nearest(z.design.OwnSize(), mark), to)
	}
	wrong := n.Side
	if !z.design.StripGiven {
		wrong = n.Strip
	}
	if wrong != nil {
		other := map[string]string{"strip": "side", "side": "strip"}[given]
		z.fault(wrong.Span, "for example "+hint, "this layout gives the %s, so its sizes cannot give the %s", other, given)
	}
}

// fewerBorders is a hint to leave out the widths of borders that are not there.
func (z *sizing) fewerBorders(n *quiltSizeNode) hint {
	have := len(z.tree.Borders)
	if have == 0 {
		return z.leaveOut(z.src[n.BordersAt.Start:n.Borders[len(n.Borders)-1].End], n.BordersAt.To(n.Borders[len(n.Borders)-1].Span))
	}
	at := Span{n.Borders[have].Start, n.Borders[len(n.Borders)-1].End}
	return z.leaveOut(z.src[at.Start:at.End], at)
}

// apply gives a tree, read from the layout's own text, a size.
func (z *sizing) apply(n *quiltSizeNode, counts [2]int, t *Tree) {
	if z.growth != nil {
		z.growth.grow(t, counts)
	}
	to := n.units(z.design.Units)
	given := t.blockSize(n)
	var scaled []Rescaled
	switch {
	case n.Units != nil:
		scaled = t.Redraft(&z.design, to, given)
		t.Units = n.Units
	case given != nil:
		scaled = t.Rescale(&z.design, z.design.SizeOf(given))
	}
	for i := range scaled {
		scaled[i].apply()
	}
	if given != nil {
		t.OnHand = nil // pieces on hand are of the size that is written
	}
	if n.BordersAt.Empty() {
		return
	}
	t.Borders = t.Borders[:len(n.Borders)]
	for i, b := range t.Borders {
		b.Width = n.Borders[i]
	}
}

// blockSize exchanges the strip or the side for that of a size, and is the length; nil if the size has none.
func (t *Tree) blockSize(n *quiltSizeNode) *LengthNode {
	switch {
	case n.Strip != nil:
		t.Strip = n.Strip
		return n.Strip
	case n.Side != nil:
		t.Side = n.Side
		return n.Side
	}
	return nil
}

// again checks the layout once more, with its tree changed and without its sizes.
func (c *checker) again(change func(*Tree)) *checker {
	p := newParser(c.source)
	p.parse()
	change(&p.tree)
	p.tree.Sizes = nil
	other := &checker{session: p.session, tree: &p.tree, photos: c.photos, asWritten: map[string]int{}, sized: true}
	other.check()
	return other
}
