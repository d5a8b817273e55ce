package quilt

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// tile is a place of the field: a cell or a part of the sashes.
type tile struct {
	cell      int
	perimeter *perimeter // of a part of the sashes, nil for a cell
}

// field sews the blocks and the sashes between them together and returns the field's outer
// spans.
func (l *builder) field() perimeter {
	rows := l.tiles()
	for i, row := range rows {
		if i > 0 {
			l.join(l.tilesSide(rows[i-1], bottom), l.tilesSide(row, top))
		}
	}
	for _, pair := range l.verticalLines(rows) {
		l.join(l.tilesSide(pair[0], right), l.tilesSide(pair[1], left))
	}
	firsts, lasts := make([]tile, len(rows)), make([]tile, len(rows))
	for i, row := range rows {
		firsts[i], lasts[i] = row[0], row[len(row)-1]
	}
	var r perimeter
	r[top] = slices.Clone(l.tilesSide(rows[0], top))
	r[right] = slices.Clone(l.tilesSide(lasts, right))
	r[bottom] = slices.Clone(l.tilesSide(rows[len(rows)-1], bottom))
	r[left] = slices.Clone(l.tilesSide(firsts, left))
	return r
}

// tilesSide is the spans on one side of a row or a column of tiles, clockwise.
func (l *builder) tilesSide(tiles []tile, side int) []span {
	list := &l.joins.one
	if side == top || side == left {
		list = &l.joins.other
	}
	*list = (*list)[:0]
	for i := range tiles {
		t := tiles[i]
		if side == bottom || side == left {
			t = tiles[len(tiles)-1-i]
		}
		if t.perimeter != nil {
			*list = append(*list, t.perimeter[side]...)
		} else {
			*list = l.side(*list, t.cell, side)
		}
	}
	return *list
}

// verticalLines is the neighbouring columns of tiles, two and two. A row that is one long
// strip has no part in them, nor has a grid of one column.
func (l *builder) verticalLines(rows [][]tile) [][2][]tile {
	columns := make([][]tile, 0, l.Columns)
	for _, row := range rows {
		if len(row) == 1 {
			continue
		}
		for x, t := range row {
			if x == len(columns) {
				columns = append(columns, make([]tile, 0, len(rows)))
			}
			columns[x] = append(columns[x], t)
		}
	}
	var lines [][2][]tile
	for x := 1; x < len(columns); x++ {
		lines = append(lines, [2][]tile{columns[x-1], columns[x]})
	}
	return lines
}

// tiles is the field row by row, the sashes laid between the blocks.
func (l *builder) tiles() [][]tile {
	s := &sashing{builder: l}
	var rows [][]tile
	for y := range l.Rows {
		if l.hasSash(y) {
			rows = append(rows, s.crossRow(y))
		}
		rows = append(rows, s.blockRow(y))
	}
	if l.hasSash(l.Rows) {
		rows = append(rows, s.crossRow(l.Rows))
	}
	return rows
}

// hasSash says whether a sash lies before the row of that number; the number behind the
// last stands for the outside.
func (l *builder) hasSash(n int) bool {
	s := l.design.Sash
	return s != nil && (s.Around || n > 0 && n < l.Rows)
}

// sashing lays the sashes.
type sashing struct {
	*builder
	number int32
}

// columnSash says whether a sash lies before a column.
func (s *sashing) columnSash(x int) bool {
	return s.design.Sash != nil && (s.design.Sash.Around || x > 0 && x < s.Columns)
}

// blockRow is a row of blocks with the sashes between them.
func (s *sashing) blockRow(y int) []tile {
	var row []tile
	for x := range s.Columns + 1 {
		if s.columnSash(x) {
			at := s.corner(x, y)
			row = append(row, s.part(Rect{measure.Point{X: at.X - s.design.Sash.Width, Y: at.Y}, measure.Point{X: at.X, Y: at.Y + s.SideFinished}}, false))
		}
		if x < s.Columns {
			row = append(row, tile{cell: y*s.Columns + x})
		}
	}
	return row
}

// crossRow is the sashes before a row of blocks: one long strip, or short ones with posts
// between them.
func (s *sashing) crossRow(y int) []tile {
	width := s.design.Sash.Width
	bottomY := s.corner(0, y).Y
	if s.design.Sash.Corners < 0 {
		return []tile{s.part(Rect{measure.Point{X: s.Field.Min.X, Y: bottomY - width}, measure.Point{X: s.Field.Max.X, Y: bottomY}}, false)}
	}
	var row []tile
	for x := range s.Columns + 1 {
		at := s.corner(x, y)
		if s.columnSash(x) {
			row = append(row, s.part(Rect{measure.Point{X: at.X - width, Y: at.Y - width}, at}, true))
		}
		if x < s.Columns {
			row = append(row, s.part(Rect{measure.Point{X: at.X, Y: at.Y - width}, measure.Point{X: at.X + s.SideFinished, Y: at.Y}}, false))
		}
	}
	return row
}

// corner is the upper left corner of a cell; the cells behind the last row and column are
// counted too.
func (s *sashing) corner(x, y int) measure.Point {
	return s.FirstCell.Add(measure.Point{X: measure.NM(x) * s.StepFinished, Y: measure.NM(y) * s.StepFinished})
}

// part lays a strip or a post. Sashes run through beside places with nothing in them too.
func (s *sashing) part(at Rect, post bool) tile {
	s.number++
	p := Patch{Shape: blocks.EdgingShape(post), Border: -1, Number: s.number, Place: placeOf(s.design.Sash.Span)}
	fabric, cut := s.design.Sash.Fabric, (*layout.Cut)(nil)
	if post {
		p.Role, fabric, cut = s.role("posts", "O"), s.design.Sash.Corners, s.design.Sash.CornersCut
	} else {
		p.Role = s.role("sash", "S")
	}
	r := s.rectangle(p, fabric, cut, at)
	return tile{perimeter: &r}
}
