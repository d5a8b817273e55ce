package layout

import (
	"strings"

	"eighthturn/internal/measure"
)

// finishNodes is what a quilt is finished with, as written.
type finishNodes struct {
	Backing *NameNode
	Batting *WordNode

	SquareUp *extraNode
	Spare    *extraNode
}

// finish is what a quilt is finished with beside its binding.
type finish struct {
	Backing int  // fabric, -1 if not said
	Batting bool // asked for
	Extra   Extra
}

// Extra is cloth to buy beyond what is cut from a fabric; nil for what is usual.
type Extra struct {
	SquareUp *measure.NM // for squaring up its ends
	Spare    *measure.NM // for slips
}

// extraNode is a length, or the word that says there is none.
type extraNode struct {
	None   *WordNode
	Length LengthNode
}

func finishStatements() []Statement {
	return []Statement{
		{
			Word: "backing", Form: "backing fabric", Summary: "the backing", Once: true, Example: "backing navy", aliases: []string{"back"},
			parse: parseBacking, check: (*checker).backing, after: []string{"binding"},
		},
		{
			Word: "batting", Form: "batting", Summary: "the batting", Once: true, Example: "batting", aliases: []string{"wadding"},
			parse: func(p *parser, _ *cursor, keyword Span) { p.tree.Batting = &WordNode{keyword, "batting"} },
			check: func(c *checker) { c.design.Batting = c.tree.Batting != nil },
		},
		{
			Word: "square-up", Form: "square-up length|none", Summary: "fabric to add for squaring up; 2 in or 5 cm if omitted", Once: true, Example: "square-up 1",
			aliases: []string{"squaring-up"},
			parse:   func(p *parser, c *cursor, _ Span) { p.tree.SquareUp = c.extra("the length for squaring up") },
			check:   func(c *checker) { c.design.Extra.SquareUp = c.extra(c.tree.SquareUp, "the length for squaring up") }, after: []string{"units"},
		},
		{
			Word: "spare", Form: "spare length|none", Summary: "fabric to add for cutting errors; one more of the widest strip if omitted", Once: true, Example: "spare 4 1/2",
			aliases: []string{"insurance", "extra"},
			parse:   func(p *parser, c *cursor, _ Span) { p.tree.Spare = c.extra("the spare length") },
			check:   func(c *checker) { c.design.Extra.Spare = c.extra(c.tree.Spare, "the spare length") }, after: []string{"units"},
		},
	}
}

func parseBacking(p *parser, c *cursor, _ Span) {
	c.newField()
	n, ok := c.nameOf("the fabric of the backing")
	if !ok {
		c.dropRest()
		return
	}
	p.tree.Backing = &n
}

func (c *checker) backing() {
	c.design.Backing = -1
	if n := c.tree.Backing; n != nil {
		c.design.Backing, _ = c.fabric(*n, "a backing is cut from one fabric")
	}
}

// extra takes a length, or the word none.
func (c *cursor) extra(what string) *extraNode {
	c.newField()
	if !c.done() && strings.EqualFold(c.peek(), "none") {
		return &extraNode{None: &WordNode{c.word(), "none"}}
	}
	length, ok := c.length(what)
	if !ok {
		c.dropRest()
		return nil
	}
	return &extraNode{Length: length}
}

// extra is a length of cloth to add, nil where nothing is said.
func (c *checker) extra(n *extraNode, what string) *measure.NM {
	if n == nil {
		return nil
	}
	var nm measure.NM
	if n.None == nil {
		if !c.noFrame(&n.Length, what) {
			return nil
		}
		nm = c.within(&n.Length, 0, MaxExtraCloth, what)
	}
	return &nm
}
