package layout

// finishNodes is what a quilt is finished with, as written.
type finishNodes struct {
	Backing *NameNode
	Batting *WordNode
}

// finish is what a quilt is finished with beside its binding.
type finish struct {
	Backing int  // fabric, -1 if not said
	Batting bool // asked for
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
