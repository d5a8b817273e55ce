package layout

func parseBacking(p *parser, c *cursor, _ Span) {
	c.newField()
	n, ok := c.nameOf("the fabric of the backing")
	if !ok {
		c.dropRest()
		return
	}
	p.tree.Backing = &n
}

func parseBatting(p *parser, _ *cursor, keyword Span) {
	p.tree.Batting = &WordNode{keyword, "batting"}
}
