package sewing

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// tile is a part of the assembly at its place.
type tile struct {
	part int
	at   quilt.Rect
	seam int  // of the assembly: that between it and the tile before it in its line, -1 for none
	sash bool // a strip of the sashes
	post bool
}

// line is a row of tiles, or a column of them, or the sashes between two.
type line struct {
	number int // of the row or column, from 1; 0 for sashes
	after  int // for sashes: the row before them
	tiles  []tile
}

// begin and end are how far along its line a tile reaches.
func (a *assembling) begin(t *tile) measure.NM {
	if a.ByColumns {
		return t.at.Min.Y
	}
	return t.at.Min.X
}

func (a *assembling) end(t *tile) measure.NM {
	if a.ByColumns {
		return t.at.Max.Y
	}
	return t.at.Max.X
}

// assembling is the work of putting an assembly together.
type assembling struct {
	*Plan
	*Assembly
	lines  []line
	above  []int     // by part and seam: the seam that took it in, -1 for none
	loose  []int     // patches of sashes and borders that are not used yet
	border []tile    // the tiles of the borders, in the order of their patches
	edges  [4][]tile // what lies along each side of what is there
	outer  quilt.Rect
}

// assemble puts blocks, sashes and borders together.
func (p *Plan) assemble() {
	a := &assembling{Plan: p, Assembly: &p.Assembly, outer: p.top.Field}
	for i := range p.top.Patches {
		if p.top.Patches[i].Cell < 0 {
			a.loose = append(a.loose, i)
		}
	}
	for i := range p.cells {
		a.ByColumns = a.ByColumns || p.cells[i].down > 1
	}
	if a.ByColumns {
		a.layColumns()
	} else {
		a.layRows()
	}
	a.sewLines()
	a.joinLines()
	a.findEdges()
	a.borders()
	a.findLoose()
	p.lines = a.lines
}

// add adds a part and gives its tile.
func (a *assembling) add(p Part, at quilt.Rect) tile {
	a.Parts = append(a.Parts, p)
	return tile{part: len(a.Parts) - 1, at: at, seam: -1}
}

// cellTile is the tile of a cell, false where there is nothing or another cell's column.
func (a *assembling) cellTile(cell int) (tile, bool) {
	c := &a.cells[cell]
	if c.block < 0 {
		return tile{}, false
	}
	at := a.top.CellRect(cell)
	at.Max.Y += measure.NM(c.down-1) * a.SideFinished
	first := a.top.Cells[cell].First
	if c.columns {
		first = a.patch(cell, 0)
	}
	return a.add(Part{Cell: cell, Border: -1, First: first, Patches: int(c.count)}, at), true
}

// loosePatch is the next patch of the sashes and borders.
func (a *assembling) loosePatch() tile {
	n := a.loose[0]
	a.loose = a.loose[1:]
	o := a.top.Patches[n].Outline
	return a.add(Part{Cell: -1, Border: int(a.top.Patches[n].Border), First: n, Patches: 1}, quilt.Rect{Min: o[0], Max: o[2]})
}

func (a *assembling) layColumns() {
	for x := range a.Columns {
		c := line{number: x + 1}
		for y := range a.Rows {
			if t, ok := a.cellTile(y*a.Columns + x); ok {
				c.tiles = append(c.tiles, t)
			}
		}
		a.lines = append(a.lines, c)
	}
}

// layRows lays the rows of blocks with the sashes beside them, and the sashes between the
// rows, in the order in which a top lists them.
func (a *assembling) layRows() {
	sash := a.top.CutFacts.Sash
	has := func(n, of int) bool { return sash != nil && (sash.Around || n > 0 && n < of) }
	for y := 0; ; y++ {
		if has(y, a.Rows) {
			a.lines = append(a.lines, a.sashRow(y, has))
		}
		if y == a.Rows {
			break
		}
		c := line{number: y + 1}
		for x := 0; ; x++ {
			if has(x, a.Columns) {
				t := a.loosePatch()
				t.sash = true
				c.tiles = append(c.tiles, t)
			}
			if x == a.Columns {
				break
			}
			if t, ok := a.cellTile(y*a.Columns + x); ok {
				c.tiles = append(c.tiles, t)
			}
		}
		a.lines = append(a.lines, c)
	}
}

// sashRow is the sashes before a row: one long strip, or short ones with posts between them.
func (a *assembling) sashRow(y int, has func(n, of int) bool) line {
	c := line{after: y}
	if a.top.CutFacts.Sash.Corners < 0 {
		t := a.loosePatch()
		t.sash = true
		c.tiles = append(c.tiles, t)
		return c
	}
	for x := range a.Columns + 1 {
		if has(x, a.Columns) {
			t := a.loosePatch()
			t.post = true
			c.tiles = append(c.tiles, t)
		}
		if x < a.Columns {
			t := a.loosePatch()
			t.sash = true
			c.tiles = append(c.tiles, t)
		}
	}
	return c
}
