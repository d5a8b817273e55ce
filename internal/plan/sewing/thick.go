package sewing

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// thickFrom is what counts as thick: more layers than this.
const thickFrom = 8

// shownPoints is how many places are listed of points that are alike.
const shownPoints = 12

// counting is the work of counting layers all over a top.
type counting struct {
	*Plan
	known  map[string]stacked
	points map[pointKey]*alikePoints
	key    []byte
}

// alikePoints is points that are told apart by nothing but how the seams there are pressed.
type alikePoints struct {
	count int
	most  stacked // the most of each
	at    []point // the first of them
}

// pointKey is what is told apart of points at which seams meet.
type pointKey struct {
	sort   PointSort
	pieces int
	shape  string // the angles of the pieces' corners, as they follow each other either way
}

// stacked is how many layers lie at a point, with every seam pressed to one side and with the last one open, and its shape.
type stacked struct {
	pressed, open int
	shape         string
}

// bulk finds the points where many layers lie on each other. Which of them are thick may hang on how seams are pressed: all
// that are alike but for that count as thick if one of them is.
func (p *Plan) bulk() {
	c := &counting{Plan: p, known: map[string]stacked{}, points: map[pointKey]*alikePoints{}}
	p.Bulk.Limit = thickFrom
	p.sideBySide()
	for i := range p.seamLines {
		c.along(&p.seamLines[i])
	}
	for i := range p.lines {
		c.within(p.lines[i].tiles)
	}
	c.insideBlocks()
	keys := slices.SortedFunc(maps.Keys(c.points), func(a, b pointKey) int {
		order := []PointSort{AtCorners, AtEdges, AtSashes, AtBorders, InBlocks}
		return cmp.Or(cmp.Compare(slices.Index(order, a.sort), slices.Index(order, b.sort)), cmp.Compare(b.pieces, a.pieces), cmp.Compare(a.shape, b.shape))
	})
	for _, key := range keys {
		p.Bulk.Meeting = counted(p.Bulk.Meeting, key, c.points[key].count)
		p.Bulk.Most = max(p.Bulk.Most, c.points[key].most.pressed)
		if c.points[key].most.pressed > thickFrom {
			p.Bulk.thicken(key, c.points[key])
		}
	}
	slices.SortStableFunc(p.Bulk.Thick, func(a, b ThickPoint) int {
		return cmp.Compare(b.Pieces, a.Pieces)
	})
}

// counted adds points to those of the same sort and as many pieces.
func counted(list []MeetingPoints, key pointKey, count int) []MeetingPoints {
	for i := range list {
		if list[i].Sort == key.sort && list[i].Pieces == key.pieces {
			list[i].Count += count
			return list
		}
	}
	return append(list, MeetingPoints{key.sort, key.pieces, count})
}

// thicken adds thick points to those at which as many pieces meet.
func (b *Bulk) thicken(key pointKey, points *alikePoints) {
	inside := key.sort == InBlocks
	n := slices.IndexFunc(b.Thick, func(t ThickPoint) bool { return t.Pieces == key.pieces && t.Inside == inside })
	if n < 0 {
		n = len(b.Thick)
		b.Thick = append(b.Thick, ThickPoint{Pieces: key.pieces, Inside: inside})
	}
	t := &b.Thick[n]
	t.Count += points.count
	t.Layers, t.Open = max(t.Layers, points.most.pressed), max(t.Open, points.most.open)
	t.Sorts = counted(t.Sorts, key, points.count)
	t.At = append(t.At, points.at[:min(len(points.at), shownPoints-len(t.At))]...)
}

// along counts along a line.
func (c *counting) along(l *seamLine) {
	c.junctions(l, func(at measure.NM, g *junction) { c.add(g, c.pointOn(l, at), c.sortOn(l, at)) })
}

// sortOn is where a point of a line lies.
func (c *counting) sortOn(l *seamLine, along measure.NM) PointSort {
	sort := AtEdges
	for _, tiles := range [2][]tile{l.one, l.other} {
		switch part := &c.Assembly.Parts[tiles[0].part]; {
		case part.Border >= 0:
			return AtBorders
		case slices.ContainsFunc(tiles[:min(2, len(tiles))], func(t tile) bool { return t.sash || t.post }):
			sort = AtSashes
		}
	}
	if sort == AtEdges && c.corner(c.pointOn(l, along)) {
		sort = AtCorners
	}
	return sort
}

// corner says whether a point between blocks without sashes is a corner of some place of the grid.
func (p *Plan) corner(at point) bool {
	on := func(at measure.NM) bool {
		return at%p.SideFinished == 0
	}
	return on(at.X-p.top.FirstCell.X) && on(at.Y-p.top.FirstCell.Y)
}

// pointOn is a point of a line.
func (p *Plan) pointOn(l *seamLine, along measure.NM) point {
	if l.above {
		return point{X: along, Y: l.other[0].at.Min.Y}
	}
	return point{X: l.other[0].at.Min.X, Y: along}
}

// within counts along the seams between the tiles of a line, but not at their ends.
func (c *counting) within(tiles []tile) {
	above := c.Assembly.ByColumns
	for i := 1; i < len(tiles); i++ {
		if tiles[i].seam < 0 {
			continue
		}
		c.along(&seamLine{tiles[i-1 : i], tiles[i : i+1], above, tiles[i].seam})
	}
}

// add counts the layers at a point.
func (c *counting) add(g *junction, at point, sort PointSort) {
	c.key = g.key(c.key[:0])
	n, ok := c.known[string(c.key)]
	if !ok {
		n = stacked{pressed: g.layers(whole), shape: g.shape()}
		if n.pressed > thickFrom {
			n.open = g.layers(lastOpen)
		}
		c.known[string(c.key)] = n
	}
	c.note(pointKey{sort, len(g.corners), n.shape}, at, n)
}

func (c *counting) note(key pointKey, at point, n stacked) {
	p := c.points[key]
	if p == nil {
		p = &alikePoints{}
		c.points[key] = p
	}
	p.count++
	p.most.pressed, p.most.open = max(p.most.pressed, n.pressed), max(p.most.open, n.open)
	if len(p.at) < shownPoints {
		p.at = append(p.at, at)
	}
}

// shape tells junctions apart by the angles of their corners, wherever these begin and whichever way they are gone through.
func (g *junction) shape() string {
	least := ""
	for first := range g.corners {
		for _, step := range [2]int{1, len(g.corners) - 1} {
			var angles []byte
			for i := range g.corners {
				angle := int(math.Round(g.corners[(first+i*step)%len(g.corners)].angle * 1e3))
				angles = append(angles, byte(angle>>8), byte(angle))
			}
			if text := string(angles); least == "" || text < least {
				least = text
			}
		}
	}
	return least
}

// insideBlocks counts the points inside blocks.
func (c *counting) insideBlocks() {
	for cell := range c.cells {
		s := &c.cells[cell]
		if s.block < 0 {
			continue
		}
		for _, r := range c.Blocks[s.block].Rounds {
			layers := r.Layers
			if !r.Turns {
				layers = r.Without
			}
			at := c.top.CellRect(cell).Min.Add(turned(r.At, c.SideFinished, int(s.turns)))
			c.note(pointKey{sort: InBlocks, pieces: len(r.Pieces)}, at, stacked{pressed: layers, open: min(layers, r.Last)})
		}
	}
}
