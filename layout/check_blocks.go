package layout

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"eighthturn/internal/blocks"
)

func (c *checker) blocks() {
	for _, n := range c.tree.Blocks {
		first, twice := c.labels[n.Label.key()]
		if !twice && len(c.labels) == MaxDefined {
			c.fault(n.Label.Span, "", "a layout may define %d blocks at the most", MaxDefined)
			c.tree.gridReported = true
			break
		}
		if twice {
			c.fault(n.Label.Span, "give this one another label", "block %s is already defined", quote(n.Label.Text)).note(c.tree.Blocks[first].Label.Span, "first defined here")
			// The label keeps its first meaning; the second is checked all the same.
		} else {
			c.labels[n.Label.key()] = len(c.design.Blocks)
		}
		c.design.Blocks = append(c.design.Blocks, c.block(n))
	}
}

func (c *checker) block(n *BlockNode) Block {
	b := Block{Label: n.Label.Text, Kind: n.Kind, Span: n.Span, line: n.Line, about: n.About}
	if n.Kind == nil {
		return b
	}
	b.Fills = make([][]Fill, len(n.Kind.Roles))
	for i := range n.Roles {
		r := c.misspeltRole(n, n.Roles[i])
		role := &n.Kind.Roles[r.Index]
		b.Fills[r.Index] = c.fills(n, role, r)
	}
	c.missingRoles(n, &b)
	return b
}

// fills looks up a role's values.
func (c *checker) fills(n *BlockNode, role *blocks.Role, r RoleNode) []Fill {
	fills := make([]Fill, 0, len(r.Values))
	before := len(c.list)
	for _, v := range r.Values {
		fills = append(fills, c.fill(v, role.Banded, role.Name))
	}
	if len(r.Values) > 0 && role.Counts != nil && !slices.Contains(role.Counts, len(r.Values)) && !c.anyUnknown(r.Values) {
		c.list = c.list[:before]
		c.fault(r.Values[0].Span.To(r.Values[len(r.Values)-1].Span), cmp.Or(role.Order, "leave out all but one"), "the %s of a %s block %s %s, found %d",
			role.Name, n.Kind.Name, verb(role.Name, "takes", "take"), counts(role.Counts), len(r.Values))
		n.Broken = true
	}
	return fills
}

// misspeltRole cuts a role's values off where one is no name, but nearly another role of the
// kind, and reports that one.
func (c *checker) misspeltRole(n *BlockNode, r RoleNode) RoleNode {
	var roles []string
	for _, role := range n.Kind.Roles {
		roles = append(roles, role.Name)
	}
	for i, v := range r.Values {
		if _, known := c.names[v.Name.key()]; known || i == 0 || c.spoilt[v.Name.key()] || nearest(v.Name.Text, c.order) != "" {
			continue
		}
		if hint := c.guess(v.Name.Text, roles); hint != "" {
			c.fault(v.Name.Span, hint, "expected a role of the %s block, found %s", n.Kind.Name, quote(v.Name.Text))
			r.Values, n.Broken = r.Values[:i], true
			break
		}
	}
	return r
}

// anyUnknown says whether one of the names is nothing's: it was reported, here or where it
// may have been defined, and the number may come right with it.
func (c *checker) anyUnknown(values []ValueNode) bool {
	return slices.ContainsFunc(values, func(v ValueNode) bool { _, known := c.names[v.Name.key()]; return !known })
}

// verb is the form that goes with a role's name.
func verb(role, one, many string) string {
	if strings.HasSuffix(role, "s") {
		return many
	}
	return one
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
	f := Fill{Fabric: e.fabric, Set: e.set, Pool: e.pool, Turned: !v.Turned.Empty(), Span: v.Span}
	switch {
	case !ok:
	case e.set >= 0 && !banded:
		c.fault(v.Span, "write a fabric, for example "+c.someFabric(0), "the %s %s cut from fabric, and %s is a strip set", role, verb(role, "is", "are"), quote(v.Name.Text)).note(e.span, "defined here")
	case e.set < 0 && f.Turned:
		c.fault(v.Span, "leave out turned", "only strip sets can be turned, and %s is a %s", quote(v.Name.Text), e.what()).note(e.span, "defined here")
	}
	return f
}

// missingRoles sees that every role has its fabric, from the block or from the webs.
func (c *checker) missingRoles(n *BlockNode, b *Block) {
	if model, ok := c.model(n); ok && model.Broken {
		n.Broken = true
	}
	var missing, add []string
	for i := range n.Kind.Roles {
		role := &n.Kind.Roles[i]
		if role.Outer || len(b.Fills[i]) > 0 || n.Broken || role.OfWebs && (c.tree.Webs != nil || c.tree.unread) {
			continue
		}
		add = append(add, role.Name, c.someFabric(len(missing)))
		missing = append(missing, role.Name)
	}
	if len(missing) > 0 {
		c.fault(n.Label.Span, "add "+strings.Join(add, " "), "block %s has no %s", quote(n.Label.Text), strings.Join(missing, " and no "))
	}
}

// model is the block that a block is like, if it stands before it.
func (c *checker) model(n *BlockNode) (*BlockNode, bool) {
	if n.Like == nil {
		return nil, false
	}
	i, ok := c.labels[n.Like.key()]
	if !ok {
		return nil, false
	}
	return c.tree.Blocks[i], true
}

// warnUnusedWedges warns of wedges that blocks and webs both give a fabric, once for all
// blocks.
func (c *checker) warnUnusedWedges() {
	if w := c.tree.Webs; w == nil || len(w.Values) == 0 || w.Broken {
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

// someFabric is a fabric of the layout for an example, another for every number.
func (c *checker) someFabric(number int) string {
	if n := len(c.design.Fabrics); n > 0 {
		return c.design.Fabrics[number%n].Name
	}
	return []string{"navy", "cream"}[number%2]
}

func (c *checker) webs() {
	if c.tree.Webs == nil {
		return
	}
	for _, v := range c.tree.Webs.Values {
		c.design.Webs = append(c.design.Webs, c.fill(v, true, "webs"))
	}
	c.warnUnusedWedges()
	if w := c.tree.Webs; len(w.Values) == 0 && len(w.Rows) == 0 && !w.Broken {
		c.fault(w.Span, "for example webs navy / teal", "webs has neither values nor a table below it")
	}
}

// grid looks up the cells. Without a grid that can be drawn it is false.
func (c *checker) grid() bool {
	g := c.tree.Grid
	if g == nil {
		at := Span{len(c.src), len(c.src)}
		if !c.tree.gridReported && !c.tree.unread {
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
	for i := range c.design.Columns * c.design.Rows {
		cell, known := c.cell(c.node(i), reported)
		c.design.Cells = append(c.design.Cells, cell)
		ok = ok && known
		if cell.Block >= 0 {
			blocks++
		}
	}
	if ok && blocks == 0 {
		c.fault(g.Span.firstBytes(len("grid")), "write labels of blocks in its rows", "the grid holds no blocks")
		return false
	}
	return ok && !c.tree.gridReported
}

// gridSize sees that rows are of one length and the grid is within its limits.
func (c *checker) gridSize(g *GridNode) bool {
	columns := commonLength(g.Rows)
	other := slices.IndexFunc(g.Rows, func(r RowNode) bool { return len(r.Cells) == columns })
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
		c.fault(row.Span, "rows have one length: write . where nothing stands", "row %d has %s, but row %d has %d", i+1, plural(len(row.Cells), "block"), other+1, columns).note(g.Rows[other].Span, "row %d", other+1)
	}
	across, down, at := 1, 1, g.Rows[0].Span
	if r := c.tree.Repeat; r != nil {
		across, down, at = r.Across.Count, r.Down.Count, r.Span
	}
	if places := float64(columns*across) * float64(len(g.Rows)*down); places > MaxCells {
		c.fault(at, "", "the grid has %.0f places, %d is the most", places, MaxCells)
		return false
	}
	c.design.Columns, c.design.Rows = columns*across, len(g.Rows)*down
	return ok
}

// node is what was written for a cell; where the grid repeats, its rows are a tile.
func (c *checker) node(cell int) *CellNode {
	rows := c.tree.Grid.Rows
	row := &rows[cell/c.design.Columns%len(rows)]
	return &row.Cells[cell%c.design.Columns%len(row.Cells)]
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
	if letters := utf8.RuneCountInString(word); letters < 2 || letters > MaxNameChars {
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
	cell := Cell{Block: -1, Run: -1, Span: n.Span}
	if n.Label.Text == "." {
		if !n.Turn.Empty() {
			c.fault(n.Turn, "leave it out", "there is nothing to turn at a .")
		}
		return cell, true
	}
	i, ok := c.asWritten[n.Label.Text]
	if !ok {
		if i, ok = c.labels[n.Label.key()]; !ok {
			c.unknownLabel(n, reported)
			return cell, false
		}
		c.asWritten[n.Label.Text] = i
	}
	b := &c.design.Blocks[i]
	cell.Block, b.used = i, true
	if b.Kind != nil && !n.Turn.Empty() && b.Kind.Turning == blocks.Fixed {
		c.fault(n.Turn, "leave it out", "%s blocks are not turned", b.Kind.Name)
	}
	return cell, b.Kind != nil
}

// unknownLabel reports a label that no block has, once for each label; labels without
// blanks between them are reported once for the whole grid.
func (c *checker) unknownLabel(n *CellNode, reported map[string]bool) {
	const glued = " "
	key := n.Label.key()
	if reported[key] || c.spoilt[key] || c.noLabel[key] || c.tree.gridReported {
		return
	}
	reported[key], c.noLabel[key] = true, true
	if c.labelOfNamelessBlock(n.Label.Text) {
		return
	}
	if split := c.splitLabels(n.Label.Text); split != nil {
		if !reported[glued] {
			c.fault(n.Label.Span, "put blanks between the labels: "+strings.Join(split, " "), "these labels stand without blanks between them")
		}
		reported[glued] = true
		return
	}
	if n.Label.Text == "" {
		c.fault(n.Span, "write the label in front of it", "no label stands before the turn %s", quote(c.src[n.Start:n.End]))
		return
	}
	var known []string
	for _, b := range c.guessable(c.tree.Blocks) {
		known = append(known, b.Label.Text)
	}
	c.fault(n.Label.Span, c.labelHint(n.Label.Text, known), "no block is called %s", quote(n.Label.Text))
}

// labelOfNamelessBlock says whether a label that no block has is most likely that of a block
// at fault without one.
func (c *checker) labelOfNamelessBlock(text string) bool {
	if c.unlabelled == 0 {
		return false
	}
	c.unlabelled--
	c.spoilt[foldName(text)] = true
	return true
}

// labelHint is a label that is near, or those that there are, or how to define one.
func (c *checker) labelHint(text string, known []string) string {
	const shown = 12
	hint := c.guess(text, known)
	switch {
	case len(c.list) >= mostGuesses:
		return ""
	case hint != "":
		return hint
	case len(known) > shown:
		return "define it: block " + text + " and its kind"
	case len(known) > 0:
		return "blocks are: " + strings.Join(known, ", ")
	}
	return "define it: block " + text + " web wedges navy kites cream"
}
