package layout

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"eighthturn/blocks"
)

func (c *checker) blocks() {
	for _, n := range c.tree.Blocks {
		if first, twice := c.labels[n.Label.key()]; twice {
			c.fault(n.Label.Span, "", "block %s is already defined", quote(n.Label.Text)).note(c.tree.Blocks[first].Label.Span, "first defined here")
			// The label keeps its first meaning; the second is checked all the same.
		} else {
			c.labels[n.Label.key()] = len(c.design.Blocks)
		}
		c.design.Blocks = append(c.design.Blocks, c.block(n))
	}
}

func (c *checker) block(n *BlockNode) Block {
	b := Block{Label: n.Label.Text, Kind: n.Kind, Span: n.Span}
	if n.Kind == nil {
		return b
	}
	b.Fills = make([][]Fill, len(n.Kind.Roles))
	for _, r := range n.Roles {
		role := &n.Kind.Roles[r.Index]
		b.Fills[r.Index] = c.fills(n, role, r)
	}
	for i := range n.Kind.Roles {
		c.completeRole(n, &b, i)
	}
	return b
}

// fills looks up a role's values.
func (c *checker) fills(n *BlockNode, role *blocks.Role, r RoleNode) []Fill {
	fills := make([]Fill, 0, len(r.Values))
	for _, v := range r.Values {
		fills = append(fills, c.fill(v, role.Banded, role.Name))
	}
	if !slices.Contains(role.Counts, len(r.Values)) {
		hint := ""
		if role.Order != "" {
			hint = role.Order
		}
		c.fault(r.Values[0].Span.To(r.Values[len(r.Values)-1].Span), hint, "the %s of a %s block take %s, found %d", role.Name, n.Kind.Name, counts(role.Counts), len(r.Values))
	}
	return fills
}

// counts writes "one, two or four fabrics".
func counts(list []int) string {
	words := map[int]string{1: "one", 2: "two", 4: "four", 8: "eight"}
	if len(list) == 1 && list[0] == 1 {
		return "one fabric"
	}
	text := words[list[0]]
	for i, n := range list[1:] {
		if i == len(list)-2 {
			text += " or " + words[n]
		} else {
			text += ", " + words[n]
		}
	}
	return text + " fabrics"
}

// fill looks up one value.
func (c *checker) fill(v ValueNode, banded bool, role string) Fill {
	e, ok := c.find(v.Name)
	f := Fill{Fabric: e.fabric, Set: e.set, Turned: !v.Turned.Empty(), Span: v.Span}
	switch {
	case !ok:
	case e.set >= 0 && !banded:
		c.fault(v.Span, "", "the %s are cut from one fabric, and %s is a strip set", role, quote(v.Name.Text)).note(e.span, "defined here")
	case e.set < 0 && f.Turned:
		c.fault(v.Span, "leave out turned", "only strip sets can be turned, and %s is a fabric", quote(v.Name.Text)).note(e.span, "defined here")
	}
	return f
}

// completeRole sees that a role has its fabric, from the block or from the webs.
func (c *checker) completeRole(n *BlockNode, b *Block, i int) {
	role := &n.Kind.Roles[i]
	byWebs := role.OfWebs && c.tree.Webs != nil
	switch {
	case len(b.Fills[i]) == 0 && !byWebs && !n.Broken:
		c.fault(n.Label.Span, fmt.Sprintf("for example block %s %s … %s %s", n.Label.Text, n.Kind.Name, role.Name, c.someFabric()),
			"block %s has no %s", quote(n.Label.Text), role.Name)
	case len(b.Fills[i]) > 0 && byWebs:
		for _, r := range n.Roles {
			if r.Index == i {
				c.warn(r.Span, "leave them out here, or leave out webs", "these %s are not used: webs gives every web its fabric", role.Name)
			}
		}
	}
}

func (c *checker) someFabric() string {
	if len(c.design.Fabrics) > 0 {
		return c.design.Fabrics[0].Name
	}
	return "navy"
}

func (c *checker) webs() {
	if c.tree.Webs == nil {
		return
	}
	for _, v := range c.tree.Webs.Values {
		c.design.Webs = append(c.design.Webs, c.fill(v, true, "webs"))
	}
}

// grid looks up the cells. Without a grid that can be drawn it is false.
func (c *checker) grid() bool {
	g := c.tree.Grid
	if g == nil {
		at := Span{len(c.src), len(c.src)}
		if !c.tree.gridReported {
			c.fault(at, "write grid, and under it, indented, the labels of the blocks row by row", "this layout has no grid")
		}
		return false
	}
	if len(g.Rows) == 0 {
		c.fault(g.Span, "write the labels of the blocks under it, indented, row by row", "the grid has no rows")
		return false
	}
	if !c.gridSize(g) {
		return false
	}
	reported := map[string]bool{}
	ok, blocks := true, 0
	c.design.Cells = make([]Cell, 0, c.design.Columns*c.design.Rows)
	for _, row := range g.Rows {
		for i := range row.Cells {
			cell, known := c.cell(&row.Cells[i], reported)
			c.design.Cells = append(c.design.Cells, cell)
			ok = ok && known
			if cell.Block >= 0 {
				blocks++
			}
		}
	}
	if ok && blocks == 0 {
		c.fault(g.Span, "", "the grid holds no blocks")
		return false
	}
	return ok
}

// gridSize sees that rows are of one length and the grid is within its limits.
func (c *checker) gridSize(g *GridNode) bool {
	columns := commonLength(g.Rows)
	ok := true
	for i, row := range g.Rows {
		if len(row.Cells) == columns {
			continue
		}
		ok = false
		if glued := c.gluedRow(row, columns); glued != "" {
			c.fault(row.Span, "put blanks between the labels: "+glued, "these labels stand without blanks between them")
			continue
		}
		other := 0
		for len(g.Rows[other].Cells) != columns {
			other++
		}
		c.fault(row.Span, "", "row %d has %s, but row %d has %d", i+1, plural(len(row.Cells), "block"), other+1, columns).note(g.Rows[other].Span, "row %d", other+1)
	}
	if columns*len(g.Rows) > MaxCells {
		c.fault(g.Rows[0].Span, "", "the grid has %d places, %d is the most", columns*len(g.Rows), MaxCells)
		return false
	}
	c.design.Columns, c.design.Rows = columns, len(g.Rows)
	return ok
}

// plural writes "1 block", "3 blocks".
func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// commonLength is the length that most rows have; of two, the one that comes first.
func commonLength(rows []RowNode) int {
	count := map[int]int{}
	for _, r := range rows {
		count[len(r.Cells)]++
	}
	best := len(rows[0].Cells)
	for _, r := range rows {
		if n := len(r.Cells); count[n] > count[best] {
			best = n
		}
	}
	return best
}

// gluedRow is a row's labels with blanks between them, if it is one word made of labels.
func (c *checker) gluedRow(row RowNode, columns int) string {
	if len(row.Cells) != 1 || !row.Cells[0].Turn.Empty() {
		return ""
	}
	split := c.splitLabels(row.Cells[0].Label.Text)
	if columns > 1 && len(split) != columns {
		return ""
	}
	return strings.Join(split, " ")
}

// splitLabels is a word's letters if each is a block's label, nil if not.
func (c *checker) splitLabels(word string) []string {
	if utf8.RuneCountInString(word) < 2 {
		return nil
	}
	var split []string
	for _, r := range word {
		if _, ok := c.labels[foldName(string(r))]; !ok && r != '.' {
			return nil
		}
		split = append(split, string(r))
	}
	return split
}

// cell looks up one place of the grid.
func (c *checker) cell(n *CellNode, reported map[string]bool) (Cell, bool) {
	cell := Cell{Block: -1, Span: n.Span}
	if n.Label.Text == "." {
		if !n.Turn.Empty() {
			c.fault(n.Turn, "", "there is nothing to turn at a .")
		}
		return cell, true
	}
	i, ok := c.labels[n.Label.key()]
	if !ok {
		c.unknownLabel(n, reported)
		return cell, false
	}
	b := &c.design.Blocks[i]
	cell.Block, b.used = i, true
	if b.Kind != nil && !n.Turn.Empty() && b.Kind.Turning == blocks.Fixed {
		c.fault(n.Turn, "leave it out", "%s blocks are not turned", b.Kind.Name)
	}
	return cell, b.Kind != nil
}

// unknownLabel reports a label that no block has, once for each label.
func (c *checker) unknownLabel(n *CellNode, reported map[string]bool) {
	if reported[n.Label.key()] {
		return
	}
	reported[n.Label.key()] = true
	known := make([]string, 0, len(c.design.Blocks))
	for i := range c.design.Blocks {
		known = append(known, c.design.Blocks[i].Label)
	}
	hint := didYouMean(n.Label.Text, known)
	if split := c.splitLabels(n.Label.Text); split != nil {
		hint = "put blanks between the labels: " + strings.Join(split, " ")
	}
	if len(known) == 0 {
		hint = "define it: block " + n.Label.Text + " web …"
	}
	c.fault(n.Label.Span, hint, "no block is called %s", quote(n.Label.Text))
}
