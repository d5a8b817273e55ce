package layout

import "eighthturn/internal/measure"

// countPatches refuses a quilt of more patches than can be held, before any are made.
func (c *checker) countPatches() {
	widest := 1
	for _, s := range c.design.StripSets {
		widest = max(widest, len(s.Bands))
	}
	counted := make([]int, len(c.design.Blocks))
	total := c.sashPatches()
	for i := range c.design.Cells {
		b := c.design.Cells[i].Block
		if b < 0 || c.design.Blocks[b].Kind == nil {
			continue
		}
		if counted[b] == 0 {
			counted[b] = c.blockPatches(&c.design.Blocks[b], widest)
		}
		total += counted[b]
	}
	if total > MaxPatches {
		c.fault(c.tree.Grid.Rows[0].Span, "", "this quilt has up to %d pieces; the limit is %d", total, MaxPatches)
	}
}

// sashPatches is the most strips and posts that sashes can have.
func (c *checker) sashPatches() int {
	if c.design.Sash == nil {
		return 0
	}
	across, down := c.design.Columns+1, c.design.Rows+1
	if c.design.Sash.Corners < 0 {
		return across*down + down
	}
	return 3 * across * down
}

// blockPatches is the most pieces, strips of sets counted, that a block can have.
func (c *checker) blockPatches(b *Block, widest int) int {
	n := 0
	if b.Kind.Column {
		return 4
	}
	for _, p := range b.Kind.Pieces {
		if b.Kind.Roles[p.Role].Banded {
			n += widest
		} else {
			n++
		}
	}
	return n
}

// topLimit refuses a top that is larger than the pictures can hold.
func (c *checker) topLimit() {
	d := &c.design
	size := measure.NM(max(d.Columns, d.Rows)) * d.SideFinished
	if d.Sash != nil {
		size += measure.NM(max(d.Columns, d.Rows)+1) * d.Sash.Width
	}
	for _, b := range d.Borders {
		size += 2 * b.Width
	}
	if size > MaxTop {
		at := Span{}
		if c.tree.Grid != nil {
			at = c.tree.Grid.Span.firstBytes(len("grid"))
		}
		c.fault(at, "", "this top is %s long; the limit is %s", c.text(size), c.text(MaxTop))
	}
}
