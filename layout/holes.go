package layout

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
			c.warn(cell.Span, "write a block there: a plain one will do", "the quilt has a hole at %s, and the blocks around it cannot be sewn row by row", c.place(i))
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
