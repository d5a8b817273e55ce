package layout

import (
	"fmt"

	"eighthturn/internal/quilt/orient"
)

// turning is what turns the blocks.
type turning struct {
	StarFirst   bool // a star centre stands at the upper left corner
	WebCentres  []orient.Centre
	StarCentres []orient.Centre
}

// Centers are the words for what meets in a corner of four blocks.
func Centers() []string { return []string{"web", "star"} }

func turningStatements() []Statement {
	return []Statement{{
		Word: "top-left", Form: "top-left web | star", Summary: "which center is at the upper left corner", Once: true, Example: "top-left star",
		parse: func(p *parser, c *cursor, _ Span) {
			c.newField()
			p.tree.TopLeft = c.oneOf("the center at the upper left", Centers()...)
		},
		check: (*checker).laid, after: []string{"side"},
	}}
}

// laid turns the blocks and warns of what the turned quilt shows.
func (c *checker) laid() {
	if c.poisoned("grid") {
		return
	}
	d := &c.design
	laid := orient.Lay(c.orientGrid())
	d.StarFirst, d.WebCentres, d.StarCentres = laid.StarFirst, laid.Webs, laid.Stars
	for i, t := range laid.Turns {
		d.Cells[i].Turns = t
	}
	if errors, _ := Count(c.list); d.Sash != nil && errors == 0 {
		c.warnParted()
	} else if d.Sash == nil {
		c.warnUnclosable(laid.Unclosable)
		c.warnOpen(laid.Open)
		c.warnApart(laid.Apart)
	}
	c.webTable()
	if errors, _ := Count(c.list); errors == 0 && len(d.Webs) == 0 && d.WebTable == nil {
		c.warnMixed()
	}
	if errors, _ := Count(c.list); errors == 0 {
		c.warnHoles()
	}
}

func (c *checker) orientGrid() orient.Grid {
	d := &c.design
	g := orient.Grid{Columns: d.Columns, Rows: d.Rows, Cells: make([]orient.Cell, len(d.Cells))}
	if n := c.tree.TopLeft; n != nil {
		g.Start = orient.WithWeb
		if n.Word == "star" {
			g.Start = orient.WithStar
		}
	}
	for i, cell := range d.Cells {
		if cell.Block < 0 {
			continue
		}
		node := c.node(i)
		g.Cells[i] = orient.Cell{Kind: d.Blocks[cell.Block].Kind, Forced: !node.Turn.Empty(), Towards: node.Towards}
	}
	return g
}

// place names a cell by its row and column.
func (c *checker) place(cell int) string {
	return fmt.Sprintf("row %d, column %d", cell/c.design.Columns+1, cell%c.design.Columns+1)
}

func (c *checker) warnUnclosable(cells []int) {
	if len(cells) == 0 {
		return
	}
	d := &c.design
	first := cells[0]
	what := "web"
	onStar := d.Blocks[d.Cells[first].Block].Kind.Turning.OnStar()
	if onStar {
		what = "star"
	}
	hint := "even numbers of blocks across and down avoid it, or a plain block there"
	if onStar != d.StarFirst || d.Columns%2 == 0 && d.Rows%2 == 0 {
		hint = "put a plain block there, or begin with the other center: top-left"
	}
	if len(cells) == 1 {
		c.warn(d.Cells[first].Span, hint, "the %s at %s cannot be complete, since both its ends lie on the quilt's edge", what, c.place(first))
		return
	}
	c.warn(d.Cells[first].Span, hint, "the %ss at %s and %s cannot be complete, since both their ends lie on the quilt's edge", what, c.place(first), plural(len(cells)-1, "more place"))
}

// warnOpen warns of blocks whose web or star, inside the quilt, lacks pieces.
func (c *checker) warnOpen(cells []int) {
	if len(cells) == 0 {
		return
	}
	d := &c.design
	first := cells[0]
	k := d.Blocks[d.Cells[first].Block].Kind
	what, others := "web", "wedges"
	if k.Turning.OnStar() {
		what, others = "star", "kites"
	}
	const hint = "turn it with :nw, :ne, :se or :sw, or change the blocks beside it"
	if len(cells) == 1 {
		c.warn(d.Cells[first].Span, hint, "the %s that the %s block at %s points at is incomplete: the blocks beside it give it too few %s", what, k.Name, c.place(first), others)
		return
	}
	c.warn(d.Cells[first].Span, hint, "the %ss that the %s block at %s and %s point at are incomplete: the blocks beside them give them too few %s",
		what, k.Name, c.place(first), plural(len(cells)-1, "more block"), others)
}

func (c *checker) warnApart(pairs [][2]int) {
	if len(pairs) == 0 {
		return
	}
	first := pairs[0]
	more := ""
	if len(pairs) > 1 {
		more = fmt.Sprintf(", as at %s", plural(len(pairs)-1, "more place"))
	}
	c.warn(c.design.Cells[first[0]].Span, "let the blocks turn themselves: leave out :nw and the like",
		"the seams of the blocks at %s and %s miss each other along their common side%s", c.place(first[0]), c.place(first[1]), more)
}

// warnParted warns of webs that sashes part.
func (c *checker) warnParted() {
	d := &c.design
	what := ""
	for _, w := range d.WebCentres {
		if w.Tips > 2 {
			what = "web"
		}
	}
	for _, s := range d.StarCentres {
		if s.Kites > 1 && what == "" {
			what = "star"
		}
	}
	d.WebCentres, d.StarCentres = nil, nil
	if what != "" {
		c.warn(d.Sash.Span, "leave the sashes out where webs should close", "sashes separate every %s: its pieces no longer meet", what)
	}
}
