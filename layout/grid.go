package layout

import (
	"slices"
	"strings"

	"eighthturn/internal/blocks"
)

type gridNodes struct {
	Grid   *gridNode
	Repeat *repeatNode
}

// grid is the blocks' places.
type grid struct {
	Columns, Rows int
	Cells         []Cell // row by row
	Runs          []run  // the columns of the grid's column blocks
}

func gridStatements() []Statement {
	return []Statement{
		{
			Word: "grid", Form: "grid, and under it indented rows of labels", Summary: "the quilt as it looks; . leaves a place empty; :nw :ne :se :sw rotate a block",
			Once: true, Example: "grid", hint: "put the labels on the lines below, with blanks before them", aliases: []string{"rows", "layout"},
			next: "the rows on lines of their own below", parse: parseGrid, check: (*checker).grid, after: []string{"block", "webs", "sash"},
		},
		{
			Word: "repeat", Form: "repeat across number down number", Summary: "the grid's rows are a tile, repeated this many times", Once: true,
			Example: "repeat across 3 down 4", Options: []Option{{Word: "across"}, {Word: "down"}}, parse: parseRepeat, // checked with the grid
		},
	}
}

// cellNode is one place of the grid as written.
type cellNode struct {
	Span
	Label   NameNode
	Turn    Span // the turn behind the colon, empty if there was none
	Towards blocks.Corner
}

// gridNode is the grid, row by row.
type gridNode struct {
	Span
	Rows []rowNode
}

// rowNode is one row of the grid.
type rowNode struct {
	Span
	Cells []cellNode
}

// repeatNode is how often the grid's rows are laid.
type repeatNode struct {
	Span
	Across, Down countNode
}

// Cell is one place of the grid.
type Cell struct {
	Block int   // index, -1 for nothing there
	Turns uint8 // quarter turns clockwise
	Run   int   // index of its column, -1 for blocks of their own
	Span  Span
}

func parseGrid(p *parser, c *cursor, keyword Span) {
	p.tree.Grid = &gridNode{Span: keyword}
	p.rows = gridRows
	if c.done() {
		return
	}
	at := c.here()
	switch rest := (Span{at.Start, c.end}); {
	case p.looksLikeRow(c):
		p.fault(at, "", "expected the rows on lines of their own below, found %s", c.found()).
			suggest(edit("put the labels on the lines below, with blanks before them", Span{keyword.End, at.Start}, p.lineEnd()+"  "))
	case twoLengths(strings.TrimSpace(c.text(rest))):
		p.fault(at, "", "expected the rows on lines of their own below, found %s", c.found()).suggest(c.leaveOut(strings.TrimSpace(c.text(rest)), rest))
	default:
		return
	}
	c.dropRest()
}

// lineEnd is what ends the lines of the layout.
func (s *session) lineEnd() string {
	if i := strings.IndexAny(s.src, "\r\n"); i >= 0 {
		return s.src[i : i+lineEnd(s.src[i:])]
	}
	return "\n"
}

// row reads one row under the grid.
func (p *parser) row(c *cursor, indented bool) {
	if p.rows == poisonedRows {
		c.dropRest()
		return
	}
	if p.rows == webRows {
		p.webRow(c)
		return
	}
	g := p.tree.Grid
	row := rowNode{Span: Span{c.at, c.end}}
	if n := len(g.Rows); n > 0 { // rows are of one length, and a label takes two bytes with its blank
		likely := min(len(g.Rows[n-1].Cells), (c.end-c.at+1)/2)
		row.Cells, c.tokens = make([]cellNode, 0, likely), make([]token, 0, likely)
	}
	if !indented {
		p.lost = append(p.lost, Edit{Span{c.at, c.at}, "  "})
	}
	for !c.done() {
		c.newField()
		at := c.word()
		row.Cells = append(row.Cells, p.cell(at))
		row.Span.End = at.End
	}
	g.Rows = append(g.Rows, row)
	g.Span.End = row.Span.End
}

// warnUnindented warns of rows without blanks before them, once for all of a grid.
func (p *parser) warnUnindented() {
	if len(p.lost) == 0 {
		return
	}
	at := p.source.lineSpan(p.source.Line(p.lost[0].Span.Start))
	at.End = newCursor(p.session, at).wordAt(at.Start).End
	if n := len(p.lost); n > 1 {
		const words = "put blanks before them"
		p.warn(at, "", "%d rows of blocks have lost their indentation", n).suggest(hint{words: words, edits: p.lost, instead: words})
		return
	}
	p.warn(at, "", "this row of blocks has lost its indentation").suggest(edit("put blanks before it", p.lost[0].Span, p.lost[0].Text))
}

// cell reads a label with the turn that may follow it.
func (p *parser) cell(at Span) cellNode {
	text := p.src[at.Start:at.End]
	label, turn, turned := strings.Cut(text, ":")
	c := cellNode{Span: at, Label: NameNode{Span{at.Start, at.Start + len(label)}, label}}
	if !turned {
		return c
	}
	span := Span{at.Start + len(label), at.End}
	for i, name := range blocks.CornerNames() {
		if strings.EqualFold(turn, name) {
			c.Turn, c.Towards = span, blocks.Corner(i)
			return c
		}
	}
	p.fault(span, "a turn is :nw, :ne, :se or :sw", "%s is not a turn", quote(":"+turn))
	return c
}

func parseRepeat(p *parser, c *cursor, keyword Span) {
	n := &repeatNode{Across: countNode{Count: 1}, Down: countNode{Count: 1}}
	for _, option := range []struct {
		word string
		to   *countNode
	}{{"across", &n.Across}, {"down", &n.Down}} {
		c.newField()
		if _, ok := c.accept(option.word); !ok {
			continue
		}
		count, ok := c.count("how often the grid is repeated " + option.word)
		if ok && count.Count == 0 {
			c.fault(count.Span, "write 1 or more", "a grid cannot be repeated 0 times")
			ok = false
		}
		if !ok {
			c.dropRest()
			return
		}
		*option.to = count
	}
	if n.Across.Empty() && n.Down.Empty() {
		c.fault(c.here(), "for example repeat across 3 down 4", "expected across or down, found %s", c.found())
		c.dropRest()
		return
	}
	n.Span = keyword.To(c.last())
	p.tree.Repeat = n
}

// grid looks up the cells; a grid that cannot be drawn is poisoned.
func (c *checker) grid() {
	if !c.cells() || c.poisoned("repeat") {
		c.poison("grid")
	}
}

// cells looks up the cells and says whether they can be drawn.
func (c *checker) cells() bool {
	g := c.tree.Grid
	if g == nil {
		at := Span{len(c.src), len(c.src)}
		if !c.mayHold("grid") && !c.poisoned("repeat") {
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
	ok, blocks := true, 0
	c.design.Cells = make([]Cell, 0, c.design.Columns*c.design.Rows)
	for i := range c.design.Columns * c.design.Rows {
		cell, known := c.cell(c.node(i))
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
	return ok
}

// gridSize sees that rows are of one length and the grid is within its limits.
func (c *checker) gridSize(g *gridNode) bool {
	columns := commonLength(g.Rows)
	other := slices.IndexFunc(g.Rows, func(r rowNode) bool { return len(r.Cells) == columns })
	ok := true
	for i, row := range g.Rows {
		if len(row.Cells) == columns {
			continue
		}
		ok = false
		if glued := c.gluedRow(row, columns); glued != "" {
			c.fault(row.Span, "", "these labels have no blanks between them").suggest(apart(strings.Fields(glued)))
			continue
		}
		c.fault(row.Span, "rows have one length: write . where nothing stands", "row %d has %s, but row %d has %d", i+1, plural(len(row.Cells), "block"), other+1, columns).note(g.Rows[other].Span, "row %d", other+1)
	}
	across, down, at := 1, 1, g.Rows[0].Span
	if r := c.tree.Repeat; r != nil {
		across, down, at = r.Across.Count, r.Down.Count, r.Span
	}
	if places := float64(columns*across) * float64(len(g.Rows)*down); places > MaxCells {
		c.fault(at, "", "the grid has %.0f places; the limit is %d", places, MaxCells)
		return false
	}
	c.design.Columns, c.design.Rows = columns*across, len(g.Rows)*down
	return ok
}

// node is what was written for a cell; where the grid repeats, its rows are a tile.
func (c *checker) node(cell int) *cellNode {
	rows := c.tree.Grid.Rows
	row := &rows[cell/c.design.Columns%len(rows)]
	return &row.Cells[cell%c.design.Columns%len(row.Cells)]
}

// commonLength is the length that most rows have; of two, the one that comes first.
func commonLength(rows []rowNode) int {
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

// cell looks up one place of the grid.
func (c *checker) cell(n *cellNode) (Cell, bool) {
	cell := Cell{Block: -1, Run: -1, Span: n.Span}
	if n.Label.Text == "." {
		if !n.Turn.Empty() {
			c.fault(n.Turn, "", "there is nothing to turn at a .").suggest(write("").saying("leave it out"))
		}
		return cell, true
	}
	i, ok := c.asWritten[n.Label.Text]
	if !ok {
		e, known := c.labels.find(n.Label)
		if !known || e.poisoned() {
			c.unknownLabel(n)
			return cell, false
		}
		i = e.index
		c.asWritten[n.Label.Text] = i
	}
	b := &c.design.Blocks[i]
	cell.Block, b.used = i, true
	if b.Kind != nil && !n.Turn.Empty() && b.Kind.Turning == blocks.Fixed {
		c.fault(n.Turn, "", "%s blocks are not rotated", b.Kind.Name).suggest(write("").saying("leave it out"))
	}
	return cell, b.Kind != nil
}
