package quilt

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// column is a run of cells laid as one column of pieces.
type column struct {
	first     int // its first cell
	last      int
	count     map[int][2]int // by cell: its first patch and how many
	perimeter perimeter
}

// columnCell lays a column at its first cell, and notes for every cell which of the
// column's pieces lie in it.
func (l *builder) columnCell(cell int, at measure.Point) {
	c := l.design.Cells[cell]
	run := l.design.Runs[c.Run]
	if l.runs[c.Run] == nil {
		l.runs[c.Run] = l.column(c.Run, at)
	}
	col := l.runs[c.Run]
	place := placedCell{at: at, first: len(l.Patches), run: col}
	place.shows = [4]bool{top: cell == col.first, right: cell == col.first, bottom: cell == col.last, left: cell == col.last}
	l.cells = append(l.cells, place)
	b := &l.design.Blocks[run.Block]
	here := col.count[cell]
	l.Cells = append(l.Cells, Cell{Label: b.Label, Kind: b.Kind.Name, Place: c.Span, First: here[0], Count: here[1]})
}

// column lays the pieces of a column from the top down: an end piece, whole pieces that
// lean in turn, an end piece. Columns side by side lean opposite ways.
func (l *builder) column(n int, at measure.Point) *column {
	run := l.design.Runs[n]
	side := l.SideFinished
	cell := run.Y*l.Columns + run.X
	col := &column{first: cell, last: cell + (run.Cells-1)*l.Columns, count: map[int][2]int{}}
	length := measure.NM(run.Cells) * side
	var leftY, rightY measure.NM
	slants := run.Divided.Slants(side)
	for i := range len(slants) + 1 {
		nextLeft, nextRight := length, length
		if i < len(slants) {
			nextLeft, nextRight = slants[i].Lower, slants[i].Upper
			if (i+run.X)%2 == 1 {
				nextLeft, nextRight = nextRight, nextLeft
			}
		}
		outline := l.outline([]measure.Point{{X: 0, Y: leftY}, {X: side, Y: rightY}, {X: side, Y: nextRight}, {X: 0, Y: nextLeft}}, at)
		cell := cell + l.Columns*int((leftY+rightY+nextLeft+nextRight)/4/side) // that its middle lies in
		l.columnPiece(col, pieceOfColumn{block: run.Block, number: i, last: len(slants), cell: cell, outline: outline})
		leftY, rightY = nextLeft, nextRight
	}
	slices.Reverse(col.perimeter[left]) // which runs upwards
	return col
}

// pieceOfColumn is a piece of a column, by its number from the top, 0 to the number of the last.
type pieceOfColumn struct {
	block, number, last int
	cell                int // that its middle lies in
	outline             []measure.Point
}

// columnRole is the role that gives a piece of a column its fabric: an end piece faces the outside with its square end.
func (l *builder) columnRole(col *column, p pieceOfColumn) int {
	switch p.number {
	case 0:
		return l.roleFacing(col.first, 0, func(outside blocks.Sides) blocks.Sides { return outside & blocks.TopSide })
	case p.last:
		return l.roleFacing(col.last, 0, func(outside blocks.Sides) blocks.Sides { return outside & blocks.BottomSide })
	}
	return 0
}

// columnPiece adds a piece to a column.
func (l *builder) columnPiece(col *column, p pieceOfColumn) {
	i, outline, cell := p.number, p.outline, p.cell
	b := &l.design.Blocks[p.block]
	n := l.columnRole(col, p)
	role := &b.Kind.Roles[n]
	f := &b.Fills[n][i%len(b.Fills[n])]
	shape := blocks.ColumnShape(i == 0 || i == p.last)
	here := col.count[cell]
	if here[1] == 0 {
		here[0] = len(l.Patches)
	}
	here[1]++
	col.count[cell] = here
	face := int32(len(l.Faces))
	l.patch(Patch{Outline: outline, Shape: shape, Role: l.role(role.Shown(), role.Letter), Cell: int32(cell), Border: -1, Number: int32(here[1])}, f, nil, measure.Point{})
	r := perimeterOf(face, outline)
	if i > 0 {
		l.join([]span{{face - 1, outline[1], outline[0]}}, r[top])
	} else {
		col.perimeter[top] = r[top]
	}
	col.perimeter[right] = append(col.perimeter[right], r[right]...)
	col.perimeter[left] = append(col.perimeter[left], r[left]...)
	col.perimeter[bottom] = r[bottom]
}
