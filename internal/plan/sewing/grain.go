package sewing

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

type rect = quilt.Rect

// grainOf is the way along which a piece lies on the straight grain, as it is cut.
func grainOf(cut *cutting.Piece, o outline) measure.Vec {
	return vecOf(minus(o[cut.Grain[1]], o[cut.Grain[0]]))
}

// addGrain adds a stretch of an edge to what lies straight, off the grain or on the bias.
func (e *EdgeGrain) addGrain(along, grain measure.Vec) {
	off := math.Mod(math.Abs(math.Atan2(along.Cross(grain), along.Dot(grain))), math.Pi/2) * 180 / math.Pi
	off = math.Round(min(off, 90-off)*100) / 100
	e.Degrees = max(e.Degrees, off)
	switch l := rounded(along.Length()); {
	case off < 0.01:
		e.Straight += l
	case off > 44.99:
		e.Bias += l
	default:
		e.OffGrain += l
	}
}

// edgesOf is the grain along the four sides of a block, unturned. Both ends of a column are
// cut square.
func (s *sewn) edgesOf() [4]EdgeGrain {
	var edges [4]EdgeGrain
	across := s.side
	var down measure.NM
	for _, o := range s.pieces {
		for _, p := range o {
			down = max(down, p.Y)
		}
	}
	for i, o := range s.pieces {
		for n := range o {
			a, b := o[n], o[(n+1)%len(o)]
			for side, on := range [4]bool{a.Y == 0 && b.Y == 0, a.X == across && b.X == across, a.Y == down && b.Y == down, a.X == 0 && b.X == 0} {
				if on {
					edges[side].addGrain(vecOf(minus(b, a)), grainOf(s.cuts[i], o))
				}
			}
		}
	}
	return edges
}

// grain lists the edges of blocks, and the cells on the outside of the field whose edges are
// not straight.
func (p *Plan) grain() {
	for i := range p.Blocks {
		p.Blocks[i].Edges = p.kinds[i].edgesOf()
	}
	p.Grain.AtEdge = len(p.top.CutFacts.Borders) == 0 && (p.top.CutFacts.Sash == nil || !p.top.CutFacts.Sash.Around)
	p.Grain.Staystitch = measure.Nearest(p.Seam/2, p.Units.Mark())
	found := map[grainKey]int{}
	for side := range 4 {
		for cell := range p.cells {
			p.sign.Step(1)
			p.outsideGrain(found, cell, side)
		}
	}
}

// grainKey is what edges on the outside have in common to be listed together.
type grainKey struct {
	block, own int
	side       string
}

// outsideGrain lists a cell's edge if it lies on the outside and off the grain.
func (p *Plan) outsideGrain(found map[grainKey]int, cell, side int) {
	c := &p.cells[cell]
	if c.block < 0 {
		return
	}
	name, exposed := p.exposed(cell, side)
	own := (side - int(c.turns)) & 3
	edge := p.Blocks[c.block].Edges[own]
	if !exposed || edge.OffGrain == 0 && edge.Bias == 0 {
		return
	}
	key := grainKey{int(c.block), own, name}
	i, ok := found[key]
	if !ok {
		i = len(p.Grain.Outside)
		found[key] = i
		p.Grain.Outside = append(p.Grain.Outside, OutsideGrain{Block: int(c.block), Edge: edge, Side: name})
	}
	p.Grain.Outside[i].Cells = append(p.Grain.Outside[i].Cells, cell)
}

// exposed says whether a side of a cell lies on the outside of the field of blocks, and where.
func (p *Plan) exposed(cell, side int) (string, bool) {
	x, y := cell%p.Columns, cell/p.Columns
	x += [4]int{0, 1, 0, -1}[side]
	y += [4]int{-1, 0, 1, 0}[side]
	sash := p.top.CutFacts.Sash
	switch {
	case sash != nil && (sash.Around || x >= 0 && x < p.Columns && y >= 0 && y < p.Rows):
		return "", false
	case x < 0 || x >= p.Columns || y < 0 || y >= p.Rows:
		return [4]string{"top", "right", "bottom", "left"}[side], true
	case p.hole(x, y):
		return "inside", true
	}
	return "", false
}
