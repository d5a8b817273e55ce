package layout

import (
	"slices"
	"strings"

	"eighthturn/internal/measure"
)

type edgingNodes struct {
	Sash    *edgingNode
	Borders []*edgingNode
	Binding *edgingNode
}

// edgings is what lies between the blocks and round them.
type edgings struct {
	Sash    *Edging  // nil if there is none
	Borders []Edging // from the inside out
	Binding *Edging  // nil if there is none
}

func edgingStatements() []Statement {
	return []Statement{
		{
			Word: "sash", Form: "sash width fabric [posts fabric] [around]", Once: true, Example: "sash 1 1/2 navy",
			Summary: "sashing between the blocks, with posts where strips cross, and around the outside",
			Options: []Option{{Word: "posts"}, {Word: "around"}}, aliases: []string{"sashing", "sashes"}, next: `"posts" or "around"`, like: "border",
			parse: func(p *parser, c *cursor, keyword Span) { p.tree.Sash = c.edging(keyword, "sash") },
			check: (*checker).sash, after: []string{"webs"},
		},
		{
			Word: "border", Form: "border width fabric [corners fabric] [lengthwise]", Summary: "a border, from the inside out", Example: "border 4 navy",
			Options: []Option{{Word: "corners"}, {Word: "lengthwise"}}, next: `"corners" or "lengthwise"`,
			parse: parseBorder, check: (*checker).borders, after: []string{"top-left"},
		},
		{
			Word: "binding", Form: "binding width fabric", Summary: "the binding", Once: true, Example: "binding 2 1/2 navy", like: "border",
			parse: func(p *parser, c *cursor, keyword Span) { p.tree.Binding = c.edging(keyword, "binding") },
			check: (*checker).binding, after: []string{"border"},
		},
	}
}

// edgingNode is a border, the sashes or the binding.
type edgingNode struct {
	Span
	Width      LengthNode
	Fabric     NameNode
	Corners    *NameNode // the fabric of corner squares, or of the posts of sashes
	Lengthwise Span      // the word, empty if it was not there
	Around     Span      // the word, empty if it was not there
}

// Edging is a border, the sashes or the binding. The width of borders and sashes is
// finished, a binding's cut.
type Edging struct {
	Width      measure.NM
	Fabric     int
	Corners    int  // fabric of a border's corner squares or the sashes' posts, -1 for none
	CornersCut *Cut // from which place of it they are cut; nil as they come along strips
	Lengthwise bool // cut along the cloth
	Around     bool // sashes go round the outside too
	Span       Span
}

func parseBorder(p *parser, c *cursor, keyword Span) {
	if e := c.edging(keyword, "border"); e != nil {
		p.tree.Borders = append(p.tree.Borders, e)
	}
}

// edging takes a width and a fabric.
func (c *cursor) edging(keyword Span, what string) *edgingNode {
	c.newField()
	if !c.done() && !c.atNumber() {
		c.fault(c.here(), "", "expected the width of the %s, found %s", what, c.found()).suggest(c.widthHint(what))
		c.dropRest()
		return nil
	}
	width, ok := c.length("the width of the " + what)
	if !ok {
		c.dropRest()
		return nil
	}
	c.newField()
	fabric, ok := c.nameOf("the fabric of the " + what)
	if !ok {
		c.dropRest()
		return nil
	}
	e := &edgingNode{Width: width, Fabric: fabric}
	c.edgingOptions(e, what)
	if !c.done() && what != "sash" {
		c.aroundAll(what)
	}
	e.Span = keyword.To(c.last())
	return e
}

// widthHint is a hint at the width that should stand before a fabric: the one that stands behind it, or one to begin with.
func (c *cursor) widthHint(what string) hint {
	at := c.here()
	fabric := c.text(at)
	rest := strings.TrimLeftFunc(c.src[at.End:c.end], measure.IsSpace)
	width, err := measure.Read(rest)
	switch {
	case !isName(fabric) || c.isReserved(fabric):
		return hint{}
	case err == nil:
		first := rest[:width.Bytes]
		end := c.end - len(rest) + width.Bytes
		for _, frame := range []string{"cut", "finished"} {
			if more := strings.TrimLeftFunc(rest[width.Bytes:], measure.IsSpace); beginsWithWord(more, frame) {
				end = c.end - len(more) + len(frame)
				first += " " + frame
			}
		}
		return edit("the width comes first: "+what+" "+first+" "+fabric, Span{at.Start, end}, first+" "+fabric)
	}
	usual := map[string]string{"binding": "2 1/2", "border": "4", "sash": "1 1/2"}[what]
	return advice("for example " + what + " " + usual + " " + fabric)
}

// aroundAll reports a word for a side behind an edging, which goes around all sides.
func (c *cursor) aroundAll(what string) bool {
	word := strings.Trim(strings.ToLower(c.peek()), ",")
	if !slices.Contains([]string{"top", "bottom", "left", "right", "sides", "all", "top-left"}, word) {
		return false
	}
	rest := Span{c.at, c.end - len(c.rest()) + len(strings.TrimRightFunc(c.rest(), measure.IsSpace))}
	c.fault(c.here(), "", "a %s goes around all sides, found %s", what, c.found()).suggest(c.leaveOut(shorten(c.text(rest)), rest))
	c.dropRest()
	return true
}

// edgingOptions takes what may follow a border's or the sashes' fabric.
func (c *cursor) edgingOptions(e *edgingNode, what string) {
	squares := map[string]string{"border": "corners", "sash": "posts"}[what]
	for !c.done() {
		switch word := strings.ToLower(c.peek()); {
		case word == squares && e.Corners == nil:
			c.newField()
			c.word()
			n, ok := c.nameOf("the fabric of the " + squares)
			if !ok {
				c.dropRest()
				return
			}
			e.Corners = &n
		case word == "lengthwise" && what == "border" && e.Lengthwise.Empty():
			c.newField()
			e.Lengthwise = c.word()
		case word == "around" && what == "sash" && e.Around.Empty():
			c.newField()
			e.Around = c.word()
		default:
			return
		}
	}
}

func (c *checker) sash() {
	if n := c.tree.Sash; n != nil {
		e := c.checkEdging(n, "a sash")
		c.design.Sash = &e
	}
}

func (c *checker) borders() {
	for i, n := range c.tree.Borders {
		if i == MaxBorders {
			c.fault(n.Span, "", "a layout may have at most %d borders", MaxBorders)
			break
		}
		c.design.Borders = append(c.design.Borders, c.checkEdging(n, "a border"))
	}
	c.topLimit()
}

func (c *checker) binding() {
	n := c.tree.Binding
	switch {
	case n == nil:
		return
	case n.Width.Finished:
		c.fault(n.Width.Span, "for example binding 2 1/2 "+n.Fabric.Text, "a binding's width is cut, not finished")
		return
	}
	e := Edging{Span: n.Span, Corners: -1, Width: c.within(&n.Width, measure.Inch/4, 20*measure.Inch, "the binding's cut width")}
	e.Fabric, _ = c.fabric(n.Fabric, "a binding is cut from one fabric")
	if n.Width.In(c.design.Units).NM() == e.Width && e.Width < 4*c.design.Seam {
		c.warn(n.Width.Span, "bindings are often "+c.usualBinding()+" cut", "a binding of %s cut does not reach over a seam of %s on both sides", c.text(e.Width), c.text(c.design.Seam))
	}
	c.design.Binding = &e
}

// usualBinding is how wide bindings are often cut. Common practice, no source.
func (c *checker) usualBinding() string {
	if c.design.Units == measure.Centimetres {
		return "6 or 6.5 cm"
	}
	return "2 1/4 or 2 1/2 in"
}

// checkEdging checks a border or the sashes.
func (c *checker) checkEdging(n *edgingNode, what string) Edging {
	e := Edging{Span: n.Span, Corners: -1, Width: c.finishedWidth(&n.Width, what+"'s width")}
	e.Fabric, _ = c.fabric(n.Fabric, what+" is cut from one fabric")
	if n.Corners != nil {
		e.Corners, e.CornersCut = c.squares(*n.Corners)
	}
	e.Lengthwise, e.Around = !n.Lengthwise.Empty(), !n.Around.Empty()
	return e
}

// squares is what corner squares or posts are cut from: a fabric, or a motif.
func (c *checker) squares(n NameNode) (fabric int, cut *Cut) {
	if e, known := c.names.find(n); known && e.is == aMotif && !e.poisoned() {
		e.used = true
		return c.design.Motifs[e.index].Fabric, &Cut{Motif: e.index}
	}
	fabric, _ = c.fabric(n, "a square is cut from one fabric or motif")
	return fabric, nil
}
