package sewing

import (
	"maps"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// points counts the points of pieces, as those of wedges and kites, and finds those that lie nearer than a seam
// allowance to the outside of the quilt.
func (p *Plan) points() {
	counts := map[blocks.Shape]*Points{}
	near := map[measure.NM]*NearPoint{}
	seen := map[point]bool{}
	for i := range p.top.Patches {
		p.sign.Step(1)
		patch := &p.top.Patches[i]
		corner := patch.Shape.Description().Point
		if corner < 0 {
			continue
		}
		c := counts[patch.Shape]
		if c == nil {
			c = &Points{Shape: patch.Shape.String()}
			counts[patch.Shape] = c
		}
		c.Count++
		at := patch.Outline[corner]
		distance := p.outside(int(patch.Cell), at)
		if distance >= p.Seam {
			c.Keep++
			continue
		}
		if distance == 0 {
			c.AtEdge++
		}
		if !seen[at] {
			seen[at] = true
			noteNear(near, distance, at)
		}
	}
	p.listPoints(counts, near)
}

func noteNear(near map[measure.NM]*NearPoint, distance measure.NM, at point) {
	n := near[distance]
	if n == nil {
		n = &NearPoint{Distance: distance}
		near[distance] = n
	}
	n.Count++
	if len(n.At) < shownPoints {
		n.At = append(n.At, at)
	}
}

func (p *Plan) listPoints(counts map[blocks.Shape]*Points, near map[measure.NM]*NearPoint) {
	for _, shape := range blocks.Shapes() {
		if c := counts[shape]; c != nil {
			p.Bulk.Points = append(p.Bulk.Points, *c)
		}
	}
	for _, distance := range slices.Sorted(maps.Keys(near)) {
		p.Bulk.Blunted = append(p.Bulk.Blunted, *near[distance])
	}
}

// outside is how far a point of a cell lies from the outside of the quilt, as far as that is
// near: from its outer edge, or from a place with nothing in it beside the cell.
func (p *Plan) outside(cell int, at point) measure.NM {
	o := p.top.Outer
	best := min(at.X-o.Min.X, at.Y-o.Min.Y, o.Max.X-at.X, o.Max.Y-at.Y)
	x, y := cell%p.Columns, cell/p.Columns
	beside := [3]int{-1, 0, 1}
	for _, dy := range beside {
		for _, dx := range beside {
			if p.hole(x+dx, y+dy) {
				best = min(best, distanceTo(p.top.CellRect((y+dy)*p.Columns+x+dx), at))
			}
		}
	}
	return best
}

// hole says whether a place of the grid has nothing in it.
func (p *Plan) hole(x, y int) bool {
	return x >= 0 && x < p.Columns && y >= 0 && y < p.Rows && p.top.Empty(y*p.Columns+x)
}

// distanceTo is how far a point lies from a rectangle, along the grid.
func distanceTo(r rect, at point) measure.NM {
	return max(r.Min.X-at.X, at.X-r.Max.X, r.Min.Y-at.Y, at.Y-r.Max.Y, 0)
}
