package pixels

import "slices"

// part is how finely places within a pixel are known, across and down.
const part = 256

// whole is the coverage of a pixel that is wholly covered: twice its parts.
const whole = 2 * part * part

// spot is a place in a picture, in parts of a pixel.
type spot struct{ x, y int32 }

// cell is what an edge of one paint does to one pixel of a row. Cover is by how much the
// coverage of everything to the right rises, in parts of a pixel's height; area is what that
// lacks within the pixel itself, of whole.
type cell struct {
	x           int32
	paint       int32
	cover, area int32
}

// cells are the cells of a band of rows.
type cells struct {
	first  int32 // row
	rows   [][]cell
	keys   []uint64 // for sorting
	sorted []cell
}

func newCells(rows int) *cells { return &cells{rows: make([][]cell, rows)} }

// begin empties the cells for the rows from first on.
func (c *cells) begin(first, rows int) {
	c.first = int32(first)
	c.rows = c.rows[:rows]
	for i := range c.rows {
		c.rows[i] = c.rows[i][:0]
	}
}

// outline adds a closed outline. Outlines that go clockwise cover, others uncover. An edge
// is always followed downwards, so that two that share it cancel out to the last part.
func (c *cells) outline(outline []spot, paint int32) {
	p := outline[len(outline)-1]
	for _, q := range outline {
		if p.y > q.y {
			c.edge(q, p, paint, 1)
		} else if p.y < q.y {
			c.edge(p, q, paint, -1)
		}
		p = q
	}
}

// edge adds an edge from its upper to its lower end.
func (c *cells) edge(upper, lower spot, paint, sign int32) {
	from := max(upper.y/part, c.first)
	to := min((lower.y-1)/part, c.first+int32(len(c.rows))-1)
	if upper.x == lower.x {
		for row := from; row <= to; row++ {
			down := min(lower.y, (row+1)*part) - max(upper.y, row*part)
			c.add(row, upper.x>>8, cell{paint: paint, cover: sign * down, area: sign * down * 2 * (upper.x & (part - 1))})
		}
		return
	}
	for row := from; row <= to; row++ {
		a, b := max(upper.y, row*part), min(lower.y, (row+1)*part)
		if a < b {
			c.slanted(row, stretch{spot{along(upper, lower, a), a}, spot{along(upper, lower, b), b}, paint, sign})
		}
	}
}

// along is where an edge is at a height.
func along(upper, lower spot, y int32) int32 {
	across, down := int64(lower.x)-int64(upper.x), int64(lower.y)-int64(upper.y)
	n := int64(y-upper.y) * across
	q := n / down
	if n < 0 && q*down != n {
		q-- // towards the left, whichever way the edge leans
	}
	return upper.x + int32(q)
}

// stretch is the part of an edge in one row, or in one pixel of it.
type stretch struct {
	from, to    spot
	paint, sign int32
}

// slanted adds the part of an edge within a row, pixel by pixel.
func (c *cells) slanted(row int32, s stretch) {
	first, last := s.from.x>>8, s.to.x>>8
	if first == last {
		c.pieceIn(row, first, s)
		return
	}
	step, at := int32(1), s.from
	if last < first {
		step = -1
	}
	across, down := int64(s.to.x-s.from.x), int64(s.to.y-s.from.y)
	for x := first; x != last; x += step {
		border := (x + max(step, 0)) * part
		y := s.from.y + int32(int64(border-s.from.x)*down/across)
		c.pieceIn(row, x, stretch{at, spot{border, y}, s.paint, s.sign})
		at = spot{border, y}
	}
	c.pieceIn(row, last, stretch{at, s.to, s.paint, s.sign})
}

// pieceIn adds a stretch that lies within one pixel.
func (c *cells) pieceIn(row, x int32, s stretch) {
	down := s.sign * (s.to.y - s.from.y)
	if down != 0 {
		c.add(row, x, cell{paint: s.paint, cover: down, area: down * (s.from.x + s.to.x - 2*x*part)})
	}
}

func (c *cells) add(row, x int32, e cell) {
	e.x = x
	c.rows[row-c.first] = append(c.rows[row-c.first], e)
}

// inOrder is a row's cells from left to right; the list is lent until the next call.
func (c *cells) inOrder(row int) []cell {
	c.keys, c.sorted = c.keys[:0], c.sorted[:0]
	for i, e := range c.rows[row] {
		c.keys = append(c.keys, uint64(e.x+leftmost)<<32|uint64(i))
	}
	slices.Sort(c.keys)
	for _, key := range c.keys {
		c.sorted = append(c.sorted, c.rows[row][uint32(key)])
	}
	return c.sorted
}

// leftmost makes the numbers of all pixels whole, however far to the left they lie.
const leftmost = 1 << 24

// shares are how much each paint covers of a pixel; those that cover nothing are left out.
type shares []share

type share struct {
	paint int32
	cover int32 // of whole
}

// sweep goes through a row's sorted cells and tells of every run of pixels that are covered
// alike, from the first pixel to the last. What it lends is only lent.
type sweep struct {
	cover []int32 // by paint, of what lies to the right of the last cell
	on    []int32 // paints whose cover is not 0
	here  []int32 // by paint: what the cells of this pixel take away, of whole
	list  shares
}

func newSweep(paints int) *sweep {
	return &sweep{cover: make([]int32, paints), here: make([]int32, paints)}
}

// row calls do for each run, which leaves out its last pixel. Cells left of the picture
// count, those right of it do not.
func (s *sweep) row(list []cell, width int32, do func(from, to int32, covered shares)) {
	at := int32(0)
	for i := 0; i < len(list); {
		x := list[i].x
		if x >= width {
			break
		}
		if x > at {
			do(at, x, s.flat())
		}
		n := i
		for ; n < len(list) && list[n].x == x; n++ {
			s.take(list[n])
		}
		if x >= 0 {
			do(x, x+1, s.pixel())
			at = x + 1
		}
		s.leave(list[i:n])
		i = n
	}
	if at < width {
		do(at, width, s.flat())
	}
	for _, p := range s.on {
		s.cover[p] = 0
	}
	s.on = s.on[:0]
}

// take adds a cell to the pixel that is looked at.
func (s *sweep) take(c cell) {
	if s.cover[c.paint] == 0 && !slices.Contains(s.on, c.paint) {
		s.on = append(s.on, c.paint)
	}
	s.cover[c.paint] += c.cover
	s.here[c.paint] += c.area
}

// pixel is what covers the pixel that is looked at.
func (s *sweep) pixel() shares {
	s.list = s.list[:0]
	for _, p := range s.on {
		if cover := s.cover[p]*2*part - s.here[p]; cover > 0 {
			s.list = append(s.list, share{p, cover})
		}
	}
	return s.list
}

// leave ends a pixel.
func (s *sweep) leave(list []cell) {
	for _, c := range list {
		s.here[c.paint] = 0
	}
	s.on = slices.DeleteFunc(s.on, func(p int32) bool { return s.cover[p] == 0 })
}

// flat is what covers the pixels up to the next cell.
func (s *sweep) flat() shares {
	s.list = s.list[:0]
	for _, p := range s.on {
		if s.cover[p] > 0 {
			s.list = append(s.list, share{p, s.cover[p] * 2 * part})
		}
	}
	return s.list
}
