package layout

import (
	"cmp"
	"strings"

	"eighthturn/internal/blocks"
)

// webs is what `webs` gives web centres.
type webs struct {
	Webs     []Fill // none, one, or two set like a draughtboard
	WebTable []Fill // of single centres, by corner of the grid in reading order; nil if there is no table
}

func websStatements() []Statement {
	return []Statement{{
		Word: "webs", Form: "webs value [/ value], or webs and under it indented rows of values",
		Summary: "the wedges around each web center: all alike, two kinds set like a checkerboard on point, or web by web", Once: true,
		Example: "webs navy / teal", next: `"/" and a second value`,
		parse: parseWebs, check: (*checker).webs, after: []string{"block"},
	}}
}

// websNode is the fabric of the webs: one value, two set like a draughtboard, or a table.
type websNode struct {
	Span
	Values []valueNode
	Rows   []webRowNode
}

// webRowNode is one row of the table of webs.
type webRowNode struct {
	Span
	Values []webNode
}

// webNode is one place of the table of webs.
type webNode struct {
	Span
	Own   bool // the blocks' own
	Value valueNode
}

func parseWebs(p *parser, c *cursor, keyword Span) {
	w := &websNode{}
	p.tree.Webs = w
	if c.done() {
		w.Span, p.rows = keyword, webRows
		return
	}
	c.newField()
	for {
		v, ok := c.value("a fabric or a strip set")
		if !ok {
			c.dropRest()
			break
		}
		w.Values = append(w.Values, v)
		if c.peek() != "/" {
			break
		}
		if len(w.Values) == 2 {
			c.fault(c.here(), "for more than two write a table in rows below", "webs takes two values at most, found a third")
			c.dropRest()
			break
		}
		c.word()
	}
	if !c.done() {
		hint := "write webs " + w.Values[0].Name.Text + " / " + c.peek()
		if word := c.peek(); strings.EqualFold(word, Reversed) || strings.EqualFold(word, "turned") {
			hint = "reversed stands before its strip set: reversed " + w.Values[len(w.Values)-1].Name.Text
		}
		c.fault(c.here(), hint, "expected / and a second value, found %s", c.found())
		c.dropRest()
	}
	w.Span = keyword.To(c.last())
	p.rows = noRows
}

// webRow reads one row of the table of webs.
func (p *parser) webRow(c *cursor) {
	w := p.tree.Webs
	row := webRowNode{Span: Span{c.at, c.end}}
	for !c.done() {
		c.newField()
		if at, ok := c.accept("."); ok {
			row.Values = append(row.Values, webNode{Span: at, Own: true})
			continue
		}
		v, ok := c.value("a fabric, a strip set or .")
		if !ok {
			last := &c.list[len(c.list)-1]
			last.Hint = cmp.Or(last.Hint, "write a fabric, a strip set, or . for the blocks' own")
			p.poison("webs")
			c.dropRest()
			break
		}
		row.Values = append(row.Values, webNode{Span: v.Span, Value: v})
	}
	row.Span.End = c.last().End
	w.Rows = append(w.Rows, row)
	w.Span.End = row.Span.End
}

func (c *checker) webs() {
	if c.tree.Webs == nil {
		return
	}
	for _, v := range c.tree.Webs.Values {
		c.design.Webs = append(c.design.Webs, c.fill(v, true, "webs"))
	}
	c.warnUnusedWedges()
	if w := c.tree.Webs; len(w.Values) == 0 && len(w.Rows) == 0 && !c.poisoned("webs") {
		c.fault(w.Span, "for example webs navy / teal", "webs has neither values nor a table below it")
	}
}

// warnUnusedWedges warns of wedges that blocks and webs both give a fabric, once for all
// blocks.
func (c *checker) warnUnusedWedges() {
	if w := c.tree.Webs; w == nil || len(w.Values) == 0 || c.poisoned("webs") {
		return
	}
	first := -1
	for _, n := range c.tree.Blocks {
		for _, r := range n.Roles {
			if n.Kind == nil || r.Index < 0 || !n.Kind.Roles[r.Index].OfWebs {
				continue
			}
			if first >= 0 {
				c.list[first].note(r.Span, "nor are these")
				continue
			}
			first = len(c.list)
			c.warn(r.Span, "leave them out here, or leave out webs", "these %s are not used: webs gives every web its fabric", n.Kind.Roles[r.Index].Name)
		}
	}
}

// Web is what `webs` gives a wedge of a cell by the web centre that its tip stands on; nil where it gives nothing.
func (d *Design) Web(cell int, p *blocks.Piece) *Fill {
	x, y := cell%d.Columns, cell/d.Columns
	tip := p.Outline[0]
	if tip.X == blocks.Full {
		x++
	}
	if tip.Y == blocks.Full {
		y++
	}
	if d.WebTable != nil {
		if f := &d.WebTable[y*(d.Columns+1)+x]; f.given() {
			return f
		}
		return nil
	}
	if len(d.Webs) == 0 {
		return nil
	}
	return &d.Webs[webSort(y)%len(d.Webs)]
}

// webSort is which of two sorts, set like a draughtboard, a web centre belongs to. Every
// other corner of the grid is a web centre, so the nearest ones lie a row up or down and
// the sorts alternate by rows; the first row inside the quilt is of the first sort.
func webSort(y int) int { return 1 - y&1 }
