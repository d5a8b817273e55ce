package invent

import (
	"fmt"
	"strings"

	"eighthturn/internal/blocks"
)

// pattern says which block stands at a place, by its index.
type pattern func(x, y int) int

// patterns are the ways in which grids are mixed.
func (v *inventor) patterns(columns, rows int) []pattern {
	n := len(v.blocks)
	return []pattern{
		func(_, _ int) int { return v.IntN(n) },
		func(x, y int) int { return (x + y) % n },
		func(x, _ int) int { return x % n },
		func(x, y int) int {
			if x == 0 || y == 0 || x == columns-1 || y == rows-1 {
				return n - 1
			}
			return 0
		},
		func(_, _ int) int { return 0 },
	}
}

// grid is the grid in rows and columns of 1 to 12, mixed in one of several ways, and how
// often it is laid. The block that stands at the upper left has wedges where the strip gives
// the side.
func (v *inventor) grid() []string {
	columns, rows := 1+v.IntN(12), 1+v.IntN(12)
	v.across, v.down = 1, 1
	if v.one(4) {
		columns, rows = 1+v.IntN(3), 1+v.IntN(3)
	}
	at := pick(v, v.patterns(columns, rows))
	holes, forced := v.one(4), v.one(3)
	lines := []string{v.line("grid")}
	for y := range rows {
		row := make([]block, columns)
		for x := range row {
			if row[x] = v.blocks[at(x, y)]; holes && v.one(6) {
				row[x] = block{}
			}
		}
		if y == 0 {
			row[0] = v.firstBlock()
		}
		v.cells = append(v.cells, row)
		lines = append(lines, v.row(row, forced))
	}
	if columns*rows < 20 && v.one(3) {
		v.across, v.down = 1+v.IntN(4), 1+v.IntN(4)
		lines = append(lines, v.repeat())
	}
	if v.one(4) {
		v.topLeft = pick(v, []string{"web", "star"})
		lines = append(lines, v.line("top-left", v.topLeft))
	}
	return lines
}

// repeat lays the grid's rows several times; a number that is 1 may be left out.
func (v *inventor) repeat() string {
	words := []string{"repeat", fmt.Sprintf("across %d", v.across), fmt.Sprintf("down %d", v.down)}
	switch {
	case v.across == 1 && v.one(2):
		words = []string{words[0], words[2]}
	case v.down == 1 && v.one(2):
		words = words[:2]
	}
	return v.line(words...)
}

// row is a row as it is written.
func (v *inventor) row(row []block, forced bool) string {
	words := make([]string, len(row))
	for x, b := range row {
		words[x] = v.cell(b, forced)
	}
	return pick(v, []string{"  ", "\t", "    ", " "}) + v.line(words...)
}

// firstBlock is a block with wedges, if there is one.
func (v *inventor) firstBlock() block {
	for _, b := range v.blocks {
		if b.kind.Height != blocks.NoWedges {
			return b
		}
	}
	return v.blocks[0]
}

// cell is a block's label, turned by force once in a while where it may be.
func (v *inventor) cell(b block, forced bool) string {
	if b.kind == nil {
		return "."
	}
	label := v.written(b.label)
	if b.kind.Turning != blocks.Fixed && (forced || b.kind.Turning == blocks.AsWritten) && v.one(3) {
		label += ":" + v.written(pick(v, blocks.CornerNames()))
	}
	return label
}

// starFirst says whether a star centre stands at the upper left.
func (v *inventor) starFirst() bool {
	if v.topLeft != "" {
		return v.topLeft == "star"
	}
	found := false
	for _, row := range v.cells {
		for _, b := range row {
			if b.kind == nil || !b.kind.Turning.InLattice() {
				continue
			}
			if !b.kind.Turning.OnStar() {
				return false
			}
			found = true
		}
	}
	return found
}

// webTable is a table of webs, a value or a dot for each web centre inside the quilt. It
// takes the place of nothing: the blocks keep their own wedges.
func (v *inventor) webTable() []string {
	columns, rows := v.across*len(v.cells[0]), v.down*len(v.cells)
	if v.webs || columns < 3 || rows < 2 || !v.one(3) {
		return nil
	}
	lines := []string{v.line("webs")}
	for y := 1; y < rows; y++ {
		var words []string
		for x := 1; x < columns; x++ {
			if (x+y)%2 == 0 == v.starFirst() {
				continue
			}
			if words = append(words, "."); !v.one(4) {
				words[len(words)-1] = v.value(true)
			}
		}
		lines = append(lines, "  "+strings.Join(words, "  "))
	}
	return lines
}
