package layout

import (
	"fmt"
	"slices"
)

func swapStatements() []Statement {
	return []Statement{{
		Word: "swap", Form: "swap row number column number with row number column number",
		Summary: "two blocks of one label trade the scraps that were dealt to them", Example: swapExample,
		Options: []Option{{"row", "row 2"}, {"column", "column 3"}, {"with", "with row 5 column 1"}}, aliases: []string{"exchange", "switch", "trade"},
		parse: parseSwap, check: (*checker).swaps, after: []string{"top-left", "scraps"},
	}}
}

const swapExample = "swap row 2 column 3 with row 5 column 1"

// swapNode is two places whose blocks trade their scraps.
type swapNode struct {
	Span
	Places [2]placeNode
}

// placeNode is a place of the grid by its numbers, from 1.
type placeNode struct {
	Span
	Row, Column countNode
}

// Swap is two cells of one block that trade the scraps dealt to them, piece by piece.
type Swap struct {
	Cells [2]int
	Span  Span
}

func parseSwap(p *parser, c *cursor, keyword Span) {
	n := &swapNode{}
	for i := range n.Places {
		if i > 0 {
			c.newField()
			if _, ok := c.accept("with"); !ok {
				c.fault(c.here(), "for example "+swapExample, "expected with and a second block, found %s", c.found())
				c.dropRest()
				return
			}
		}
		if !c.placeOfGrid(&n.Places[i]) {
			c.dropRest()
			return
		}
	}
	n.Span = keyword.To(c.last())
	p.tree.Swaps = append(p.tree.Swaps, n)
}

// placeOfGrid takes a row and a column.
func (c *cursor) placeOfGrid(n *placeNode) bool {
	start := c.here()
	for _, part := range []struct {
		word string
		to   *countNode
	}{{"row", &n.Row}, {"column", &n.Column}} {
		c.newField()
		if _, ok := c.accept(part.word); !ok {
			c.fault(c.here(), "for example "+swapExample, "expected %s and its number, found %s", part.word, c.found())
			return false
		}
		count, ok := c.count("the number of the " + part.word)
		if !ok {
			return false
		}
		*part.to = count
	}
	n.Span = start.To(c.last())
	return true
}

// swaps looks up which blocks trade their scraps.
func (c *checker) swaps() {
	if c.poisoned("grid") || c.poisoned("scraps") {
		return
	}
	for _, n := range c.tree.Swaps {
		a, ok := c.swapped(n.Places[0])
		if !ok {
			continue
		}
		if b, ok := c.swapped(n.Places[1]); ok && c.mayTrade(n, a, b) {
			c.design.Swaps = append(c.design.Swaps, Swap{[2]int{a, b}, n.Span})
		}
	}
}

// swapped is the cell at a place that can trade its scraps.
func (c *checker) swapped(n placeNode) (int, bool) {
	d := &c.design
	for _, part := range []struct {
		at   countNode
		most int
		word string
	}{{n.Row, d.Rows, "row"}, {n.Column, d.Columns, "column"}} {
		if part.at.Count < 1 || part.at.Count > part.most {
			c.fault(part.at.Span, fmt.Sprintf("write a number from 1 to %d", part.most), "the quilt has %s, so it has no %s %d", plural(part.most, part.word), part.word, part.at.Count)
			return 0, false
		}
	}
	i := (n.Row.Count-1)*d.Columns + n.Column.Count - 1
	switch cell := d.Cells[i]; {
	case cell.Block < 0:
		c.fault(n.Span, "", "there is no block at %s", c.place(i))
	case cell.Run >= 0:
		c.fault(n.Span, "", "the blocks of a column are sewn in one strip, and cannot be swapped")
	case !c.dealtByItself(cell.Block):
		c.fault(n.Span, "leave the swap out", "block %s has no scraps of its own to swap: %s", quote(d.Blocks[cell.Block].Label), c.noScraps(cell.Block))
	default:
		return i, true
	}
	return 0, false
}

// mayTrade says whether two blocks can trade, and reports why not.
func (c *checker) mayTrade(n *swapNode, a, b int) bool {
	d := &c.design
	first, second := d.Cells[a].Block, d.Cells[b].Block
	switch {
	case a == b:
		c.fault(n.Span, "name another block behind with", "a block cannot be swapped with itself")
	case first != second:
		c.fault(n.Span, "name two blocks of one label", "only blocks of one label can be swapped: there is %s at %s, and %s at %s", quote(d.Blocks[first].Label), c.place(a), quote(d.Blocks[second].Label), c.place(b))
	default:
		return true
	}
	return false
}

// fillsOf are what a block's pieces may be cut from, those that the webs statement gives among them.
func (d *Design) fillsOf(block int) []Fill {
	b := &d.Blocks[block]
	var list []Fill
	for i := range b.Kind.Roles {
		list = append(list, b.Fills[i]...)
		if b.Kind.Roles[i].OfWebs {
			list = append(append(list, d.Webs...), d.WebTable...)
		}
	}
	return list
}

// poolsOf are the pools that a block's pieces come from.
func (d *Design) poolsOf(block int) []int {
	var pools []int
	for _, f := range d.fillsOf(block) {
		if f.Pool >= 0 {
			pools = append(pools, f.Pool)
		}
		if f.Set >= 0 {
			for _, band := range d.StripSets[f.Set].Bands {
				if band.Pool >= 0 {
					pools = append(pools, band.Pool)
				}
			}
		}
	}
	return pools
}

// dealtByItself says whether a block gets scraps that it does not share with the blocks round a web.
func (c *checker) dealtByItself(block int) bool {
	for _, pool := range c.design.poolsOf(block) {
		if by := c.design.Pools[pool].By; by == ByPiece || by == ByBlock {
			return true
		}
	}
	return false
}

// noScraps is why a block has none.
func (c *checker) noScraps(block int) string {
	pools := c.design.poolsOf(block)
	switch {
	case slices.ContainsFunc(pools, func(n int) bool { return c.design.Pools[n].By == BySet }):
		return "they are dealt by set, to whole webs"
	case len(pools) > 0:
		return "they are dealt by web, to all blocks around it"
	}
	return "none of its pieces come from a pool"
}
