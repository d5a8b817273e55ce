package sewing

import (
	"cmp"
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
	known map[string]stacked
	found map[thickSort]*ThickPoint
	key   []byte
}

// thickSort is what makes thick points alike.
type thickSort struct {
	pieces, layers int
	inside         bool
}

// stacked is how many layers lie at a point: with every seam pressed to one side, with the last
// one open, and with all of them turned round the point.
type stacked struct{ pressed, open, round int }

// bulk finds the points where many layers lie on each other.
func (p *Plan) bulk() {
	c := &counting{Plan: p, known: map[string]stacked{}, found: map[thickSort]*ThickPoint{}}
	p.Bulk.Limit = thickFrom
	for i := range p.seamLines {
		l := &p.seamLines[i]
		p.junctions(l, func(at measure.NM, g *junction) { c.add(g, c.pointOn(l, at)) })
	}
	for i := range p.lines {
		c.within(p.lines[i].tiles)
	}
	c.insideBlocks()
	for _, t := range c.found {
		p.Bulk.Thick = append(p.Bulk.Thick, *t)
	}
	slices.SortFunc(p.Bulk.Thick, func(a, b ThickPoint) int {
		return cmp.Or(cmp.Compare(b.Layers, a.Layers), cmp.Compare(b.Pieces, a.Pieces), cmp.Compare(b.Count, a.Count))
	})
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
		one, other := tiles[i-1], tiles[i]
		one.seam, other.seam = -1, -1
		l := seamLine{[]tile{one}, []tile{other}, above, tiles[i].seam}
		c.junctions(&l, func(at measure.NM, g *junction) { c.add(g, c.pointOn(&l, at)) })
	}
}

// add counts the layers at a point.
func (c *counting) add(g *junction, at point) {
	c.key = g.key(c.key[:0])
	n, ok := c.known[string(c.key)]
	if !ok {
		n = stacked{g.layers(whole), 0, 0}
		if n.pressed > thickFrom {
			n.open, n.round = g.layers(lastOpen), g.layers(round)
		}
		c.known[string(c.key)] = n
	}
	c.note(thickSort{len(g.corners), n.pressed, false}, at, n)
}

func (c *counting) note(kind thickSort, at point, n stacked) {
	c.Bulk.Most = max(c.Bulk.Most, kind.layers)
	if kind.layers <= thickFrom {
		return
	}
	t := c.found[kind]
	if t == nil {
		t = &ThickPoint{Pieces: kind.pieces, Layers: kind.layers, Inside: kind.inside}
		c.found[kind] = t
	}
	t.Count++
	t.Open, t.Round = max(t.Open, n.open), max(t.Round, n.round)
	if len(t.At) < shownPoints {
		t.At = append(t.At, at)
	}
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
			c.note(thickSort{len(r.Pieces), layers, true}, at, stacked{layers, r.Last, r.Layers})
		}
	}
}
