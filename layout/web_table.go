package layout

// webTable looks up the table of webs and sees that every wedge has its fabric.
func (c *checker) webTable() {
	w := c.tree.Webs
	d := &c.design
	if w == nil || len(w.Rows) == 0 || c.poisoned("webs") {
		return
	}
	d.WebTable = make([]Fill, (d.Columns+1)*(d.Rows+1))
	for i := range d.WebTable {
		d.WebTable[i] = noFill
	}
	inside := d.centresInside()
	if len(w.Rows) != len(inside) {
		c.fault(w.Span.firstBytes(len("webs")), "write one row for each row of web centers inside the quilt", "the table of webs has %s, but the quilt has %s of web centers inside it", plural(len(w.Rows), "row"), plural(len(inside), "row"))
		return
	}
	before := len(c.list)
	for i, row := range w.Rows {
		c.webTableRow(inside[i], row)
	}
	if len(c.list) > before || c.poisoned("webs") {
		return
	}
	if !c.poisoned("side") {
		c.fitTable()
	}
	c.tableGaps()
}

// centresInside are the web centers inside the quilt, by corner of the grid, row by row; a quilt of two columns has some in every other
// row alone.
func (d *Design) centresInside() (rows [][]int) {
	for y := 1; y < d.Rows; y++ {
		var corners []int
		for x := 1; x < d.Columns; x++ {
			if (x+y)&1 == 1 == d.StarFirst {
				corners = append(corners, y*(d.Columns+1)+x)
			}
		}
		if corners != nil {
			rows = append(rows, corners)
		}
	}
	return rows
}

// webTableRow looks up the values of the centers in one row of corners.
func (c *checker) webTableRow(corners []int, row webRowNode) {
	d := &c.design
	if len(corners) != len(row.Values) {
		y := corners[0] / (d.Columns + 1)
		c.fault(row.Span, "write one value for each, or . for the blocks' own", "this row of the table of webs has %s for %s between rows %d and %d of the quilt", plural(len(row.Values), "value"), plural(len(corners), "web center"), y, y+1)
		return
	}
	for i, v := range row.Values {
		if v.Own {
			continue
		}
		f := c.fill(v.Value, true, "webs")
		if d.WebTable[corners[i]] = f; !f.given() {
			c.poison("webs")
		}
	}
}

// tableGaps reports blocks without wedges of their own at web centres that the table gives
// none, once for each block.
func (c *checker) tableGaps() {
	d := &c.design
	reported := map[int]bool{}
	for i, cell := range d.Cells {
		if cell.Block < 0 || reported[cell.Block] {
			continue
		}
		b := &d.Blocks[cell.Block]
		for _, p := range b.Kind.Turned(int(cell.Turns)) {
			role := &b.Kind.Roles[p.Role]
			if !role.OfWebs || len(b.Fills[p.Role]) > 0 {
				continue
			}
			if d.Web(i, &p) == nil {
				reported[cell.Block] = true
				c.fault(c.tree.Blocks[cell.Block].Label.Span, "", "block %s has no %s of its own, and webs gives none to its web at %s", quote(b.Label), role.Name, c.place(i)).suggest(c.addTo(c.tree.Blocks[cell.Block], role.Name+" "+c.someFabric(0)))
				break
			}
		}
	}
}
