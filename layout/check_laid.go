package layout

import (
	"fmt"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt/orient"
)

// laid turns the blocks and warns of what the turned quilt shows.
func (c *checker) laid() {
	d := &c.design
	laid := orient.Lay(c.latticeGrid())
	d.StarFirst, d.WebCentres, d.StarCentres = laid.StarFirst, laid.Webs, laid.Stars
	for i, t := range laid.Turns {
		d.Cells[i].Turns = t
	}
	if errors, _ := Count(c.list); d.Sash != nil && errors > 0 {
		d.WebCentres, d.StarCentres = nil, nil
	} else if d.Sash != nil {
		c.warnParted()
	} else {
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

func (c *checker) latticeGrid() orient.Grid {
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
		hint = "put a plain block there, or begin with the other centre: top-left"
	}
	if len(cells) == 1 {
		c.warn(d.Cells[first].Span, hint, "the %s at %s cannot close, since both its ends lie on the quilt's edge", what, c.place(first))
		return
	}
	c.warn(d.Cells[first].Span, hint, "the %ss at %s and %s cannot close, since both their ends lie on the quilt's edge", what, c.place(first), plural(len(cells)-1, "more place"))
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
		c.warn(d.Cells[first].Span, hint, "the %s that the %s block at %s points at does not close: the blocks beside it give it too few %s", what, k.Name, c.place(first), others)
		return
	}
	c.warn(d.Cells[first].Span, hint, "the %ss that the %s block at %s and %s point at do not close: the blocks beside them give them too few %s",
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

// endFills is what a cell's wedges at one of its corners are cut from, in their order.
func (c *checker) endFills(cell int, corner blocks.Corner) []Fill {
	at := c.design.Cells[cell]
	b := &c.design.Blocks[at.Block]
	var fills []Fill
	number := make([]int, len(b.Kind.Roles))
	pieces := b.Kind.Turned(int(at.Turns))
	for _, p := range pieces {
		n := number[p.Role]
		number[p.Role]++
		if p.Shape == blocks.Wedge && p.Outline[0] == corner.Point() && len(b.Fills[p.Role]) > 0 {
			f := b.Fills[p.Role][b.Kind.Roles[p.Role].Value(n, pieceCount(pieces, p.Role), len(b.Fills[p.Role]))]
			if f.Given() { // what was not found has been reported
				fills = append(fills, f)
			}
		}
	}
	return fills
}

func pieceCount(pieces []blocks.Piece, role int) int {
	n := 0
	for _, p := range pieces {
		if p.Role == role {
			n++
		}
	}
	return n
}

// warnMixed warns of webs that different blocks give different fabrics.
func (c *checker) warnMixed() {
	d := &c.design
	known := map[endKey][]Fill{}
	first, count := -1, 0
	for i, centre := range d.WebCentres {
		if centre.Tips > 0 && c.mixed(centre.Corner, known) {
			if count++; first < 0 {
				first = i
			}
		}
	}
	if first < 0 {
		return
	}
	at := d.WebCentres[first]
	more := ""
	if count > 1 {
		more = fmt.Sprintf(", as %s %s", verb(plural(count-1, "web"), "does", "do"), plural(count-1, "other web"))
	}
	c.warn(d.Cells[(at.Y-1)*d.Columns+at.X-1].Span, "webs gives every web its fabric, in place of the blocks: for example webs "+c.someFabric(1),
		"the web between rows %d and %d, columns %d and %d mixes %s%s", at.Y, at.Y+1, at.X, at.X+1, c.mixture(at.Corner, known), more)
}

// endKey is what the wedges at a cell's corner depend on.
type endKey struct {
	block  int
	turns  uint8
	corner blocks.Corner
}

// around is the fills of the wedges round a web centre, a list for each of its four cells.
func (c *checker) around(at orient.Corner, known map[endKey][]Fill) [4][]Fill {
	var round [4][]Fill
	for n, offset := range [4]struct {
		x, y   int
		corner blocks.Corner
	}{{-1, -1, blocks.SE}, {0, -1, blocks.SW}, {0, 0, blocks.NW}, {-1, 0, blocks.NE}} {
		i := (at.Y+offset.y)*c.design.Columns + at.X + offset.x
		key := endKey{c.design.Cells[i].Block, c.design.Cells[i].Turns, offset.corner}
		fills, ok := known[key]
		if !ok {
			fills = c.endFills(i, offset.corner)
			known[key] = fills
		}
		round[n] = fills
	}
	return round
}

// mixed says whether blocks of different labels give a web different fabrics.
func (c *checker) mixed(at orient.Corner, known map[endKey][]Fill) bool {
	round := c.around(at, known)
	blockAt := func(n int) int {
		offset := [4][2]int{{-1, -1}, {0, -1}, {0, 0}, {-1, 0}}[n]
		return c.design.Cells[(at.Y+offset[1])*c.design.Columns+at.X+offset[0]].Block
	}
	for n := 1; n < 4; n++ {
		for m := range n {
			if blockAt(n) != blockAt(m) && len(round[n]) > 0 && len(round[m]) > 0 && !sameSorts(round[n], round[m]) {
				return true
			}
		}
	}
	return false
}

// sameSorts says whether two lists hold the same fills, whatever their numbers.
func sameSorts(a, b []Fill) bool {
	within := func(a, b []Fill) bool {
		for _, f := range a {
			found := false
			for _, g := range b {
				found = found || f.Same(g)
			}
			if !found {
				return false
			}
		}
		return true
	}
	return within(a, b) && within(b, a)
}

// mixture counts a web's wedges by what they are cut from: "4 wedges of rust and 4 of teal".
func (c *checker) mixture(at orient.Corner, known map[endKey][]Fill) string {
	var sorts []Fill
	var counts []int
	for _, fills := range c.around(at, known) {
	next:
		for _, f := range fills {
			for i := range sorts {
				if sorts[i].Same(f) {
					counts[i]++
					continue next
				}
			}
			sorts, counts = append(sorts, f), append(counts, 1)
		}
	}
	parts := make([]string, len(sorts))
	for i, f := range sorts {
		parts[i] = fmt.Sprintf("%d of %s", counts[i], c.fillName(f))
	}
	parts[0] = fmt.Sprintf("%s of %s", plural(counts[0], "wedge"), c.fillName(sorts[0]))
	last := len(parts) - 1
	return strings.Join(parts[:last], ", ") + " and " + parts[last]
}

func (c *checker) fillName(f Fill) string {
	name := "?"
	switch {
	case f.Set >= 0:
		name = c.design.StripSets[f.Set].Name
	case f.Fabric >= 0:
		name = c.design.Fabrics[f.Fabric].Name
	case f.Pool >= 0:
		name = c.design.Pools[f.Pool].Name
	}
	if f.Turned {
		return "turned " + name
	}
	return name
}

// warnHoles warns of places with nothing at the edge of a quilt that has a border, and of holes.
func (c *checker) warnHoles() {
	d := &c.design
	around := d.Sash != nil && d.Sash.Around
	var open []bool
	if !around && len(c.tree.Borders) == 0 {
		open = d.open()
	}
	for i, cell := range d.Cells {
		switch {
		case cell.Block >= 0 || open != nil && open[i]:
			continue
		case len(c.tree.Borders) > 0 && !around && d.onEdge(i):
			c.warn(cell.Span, "write a block there, or leave the border out", "the border has nothing to be sewn to at %s", c.place(i))
		default:
			c.warn(cell.Span, "write a block there: a plain one will do", "the quilt has a hole at %s, and what lies round it cannot be sewn row by row", c.place(i))
		}
		return
	}
}

// onEdge says whether a cell lies at the edge of the grid.
func (d *Design) onEdge(cell int) bool {
	x, y := cell%d.Columns, cell/d.Columns
	return x == 0 || y == 0 || x == d.Columns-1 || y == d.Rows-1
}

// open says of every cell with nothing whether it leads to the grid's edge over others like it.
func (d *Design) open() []bool {
	open := make([]bool, len(d.Cells))
	var list []int
	reach := func(i int) {
		if d.Cells[i].Block < 0 && !open[i] {
			open[i] = true
			list = append(list, i)
		}
	}
	for i := range d.Cells {
		if d.onEdge(i) {
			reach(i)
		}
	}
	for len(list) > 0 {
		i := list[len(list)-1]
		list = list[:len(list)-1]
		if x := i % d.Columns; x > 0 {
			reach(i - 1)
		}
		if x := i % d.Columns; x < d.Columns-1 {
			reach(i + 1)
		}
		if i >= d.Columns {
			reach(i - d.Columns)
		}
		if i+d.Columns < len(d.Cells) {
			reach(i + d.Columns)
		}
	}
	return open
}
