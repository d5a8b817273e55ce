package orient

import "eighthturn/internal/blocks"

// gives says whether pieces put their block's share on a centre.
func gives(pieces []blocks.Piece, c blocks.Corner, star bool) bool {
	tips, kites := blocks.Tips(pieces, c)
	if star {
		return kites > 0
	}
	return tips == 2
}

// choosing is the blocks that may point at either of two centres, by how many of their
// neighbours are sure to put points on the better one.
type choosing struct {
	*orienter
	sure    []bool
	waiting [4][]int // cells, by that number
}

// turnTheRest turns the blocks that have a choice, those first whose neighbours settle it
// best: each goes where a web or star can still close, then where more of the blocks that
// are sure already have their points, then to the upper corner, then the left. A block that has been turned is sure for the others.
func (l *orienter) turnTheRest(sure []bool) {
	c := &choosing{orienter: l, sure: sure}
	for i := range l.Cells {
		if !sure[i] {
			n, _ := c.better(i)
			c.waiting[n] = append(c.waiting[n], i)
		}
	}
	for n := 3; n >= 0; {
		if len(c.waiting[n]) == 0 {
			n--
			continue
		}
		i := c.waiting[n][0]
		c.waiting[n] = c.waiting[n][1:]
		if now, corner := c.better(i); !sure[i] && now == n {
			l.point(i, corner)
			sure[i] = true
			n = c.again(i, n)
		}
	}
}

// better is the corner for a cell, and how settled that is: the number of neighbours that
// are sure to put points there, or 3 where the other corner can no longer be closed.
func (c *choosing) better(i int) (int, blocks.Corner) {
	pair := c.candidates(i)
	first, second := c.certain(i, pair[0], c.sure), c.certain(i, pair[1], c.sure)
	spoiledFirst, spoiledSecond := c.spoiled(i, pair[0]), c.spoiled(i, pair[1])
	switch {
	case spoiledFirst && !spoiledSecond:
		return 3, pair[1]
	case spoiledSecond && !spoiledFirst:
		return 3, pair[0]
	case second > first:
		return second, pair[1]
	}
	return first, pair[0]
}

// spoiled says whether a block that is sure already points away from corner c of cell i.
func (c *choosing) spoiled(i int, corner blocks.Corner) bool {
	at := c.corner(i, corner)
	for place, j := range c.cells(at) {
		if j >= 0 && c.sure[j] && !gives(c.pieces(j), facing(place), c.isStar(at)) {
			return true
		}
	}
	return false
}

// again looks anew at the neighbours of a cell that has been turned; it returns the highest
// number at which one waits now, or n.
func (c *choosing) again(i, n int) int {
	x, y := c.at(i)
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			j := (y+dy)*c.Columns + x + dx
			if x+dx < 0 || x+dx >= c.Columns || y+dy < 0 || y+dy >= c.Rows || c.sure[j] {
				continue
			}
			now, _ := c.better(j)
			c.waiting[now] = append(c.waiting[now], j)
			n = max(n, now)
		}
	}
	return n
}

// findOpen lists the blocks that are to close a web or a star and, inside the quilt, do
// not, because their neighbours give it too little.
func (l *orienter) findOpen() {
	for i, c := range l.Cells {
		if c.Kind == nil || !c.Kind.Turning.Towards() {
			continue
		}
		corner := c.Kind.Points + blocks.Corner(l.Turns[i])
		at := l.corner(i, corner&3)
		if !l.inside(at) {
			continue
		}
		for place, j := range l.cells(at) {
			if !gives(l.pieces(j), facing(place), c.Kind.Turning.OnStar()) {
				l.Open = append(l.Open, i)
				break
			}
		}
	}
}
