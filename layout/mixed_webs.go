package layout

import (
	"fmt"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt/orient"
)

// warnMixed warns of webs that different blocks give different fabrics.
func (c *checker) warnMixed() {
	d := &c.design
	known := map[endKey][]Fill{}
	first, count := -1, 0
	for i, centre := range d.WebCentres {
		if c.mixed(centre.Corner, known) {
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
		if p.Shape.Description().Gathers == blocks.WebCentre && p.Outline[0] == corner.Point() {
			f := b.Fills[p.Role][b.Kind.Roles[p.Role].Value(n, pieceCount(pieces, p.Role), len(b.Fills[p.Role]))]
			if f.given() { // what was not found has been reported
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

// webEnd is a cell at a web center: its block, and what its wedges there are cut from.
type webEnd struct {
	block int
	fills []Fill // none where it has no wedges there
}

// around is the four cells round a web center.
func (c *checker) around(at orient.Corner, known map[endKey][]Fill) [4]webEnd {
	var round [4]webEnd
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
		round[n] = webEnd{key.block, fills}
	}
	return round
}

// mixed says whether blocks of different labels give a web different fabrics.
func (c *checker) mixed(at orient.Corner, known map[endKey][]Fill) bool {
	round := c.around(at, known)
	for n, a := range round {
		for _, b := range round[:n] {
			if a.block != b.block && a.fills != nil && b.fills != nil && !sameSorts(a.fills, b.fills) {
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
				found = found || f.same(g)
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
	for _, end := range c.around(at, known) {
	next:
		for _, f := range end.fills {
			for i := range sorts {
				if sorts[i].same(f) {
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
