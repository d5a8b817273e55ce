package sewing

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// Sides, clockwise.
const (
	top = iota
	right
	bottom
	left
)

// rawEdges is what the neighbours of a block meet on its four sides, as it lies.
type rawEdges struct {
	arms [4][]edgeArm // by side, along it: rightwards or downwards
	ends [4][2]int    // by side: the pieces at its beginning and at its end
}

// edgeArm is a seam within a block that ends on its raw edge.
type edgeArm struct {
	at      measure.NM  // along the side from its upper or left end
	way     measure.Vec // inwards from there
	group   int         // which of the block's choices it follows
	turned  bool        // way 0 of it turns the allowance anticlockwise round that end
	patches [2]int      // pieces clockwise and anticlockwise of it, seen from that end
	join    int         // whose seam it is; 0 in columns
	slope   int64       // of way, as it is compared: along the side by depth into the block, in millionths
}

// rawEdgesOf is the rawEdges of a kind after so many quarter turns.
func (s *sewn) rawEdgesOf(quarters int) *rawEdges {
	if s.turns[quarters] == nil {
		pieces := make([]outline, len(s.pieces))
		for i, o := range s.pieces {
			for _, p := range o {
				pieces[i] = append(pieces[i], turned(p, s.side, quarters))
			}
		}
		r := &rawEdges{}
		for i := range s.joins {
			s.addArms(r, pieces, i, quarters)
		}
		r.finish(pieces, s.side, s.side)
		s.turns[quarters] = r
	}
	return s.turns[quarters]
}

// addArms adds the ends of a join's seam that lie on a raw edge.
func (s *sewn) addArms(r *rawEdges, pieces []outline, n, quarters int) {
	j := &s.joins[n]
	from, to := turned(j.seam.from, s.side, quarters), turned(j.seam.to, s.side, quarters)
	round := s.kind.Recipe.Pressing[j.Press].Round
	for end, e := range [2]stretch{{from, to}, {to, from}} {
		a := edgeArm{way: vecOf(minus(e.to, e.from)).Unit(), group: j.Press, turned: round || end == 1, join: n}
		b, other := beside(pieces, j.pieces[1], e), beside(pieces, j.pieces[0], e)
		if end == 0 {
			a.patches = [2]int{b, other}
		} else {
			a.patches = [2]int{other, b}
		}
		r.add(a, e.from, s.side, s.side)
	}
}

// add puts an arm on each side that its end lies on, one or, at a corner, two.
func (r *rawEdges) add(a edgeArm, at point, across, down measure.NM) {
	for side := range 4 {
		depth := [4]measure.NM{at.Y, across - at.X, down - at.Y, at.X}[side]
		along, inwards := a.way.X, a.way.Y
		a.at = at.X
		if side == left || side == right {
			a.at, along, inwards = at.Y, a.way.Y, a.way.X
		}
		if a.slope = int64(math.Round(along / math.Abs(inwards) * 1e6)); depth == 0 && math.Abs(inwards) > 1e-9 {
			r.arms[side] = append(r.arms[side], a)
		}
	}
}

// beside is which of some pieces lies at the beginning of a stretch, along it.
func beside(pieces []outline, of []int, along stretch) int {
	lies := func(piece int) bool {
		o := pieces[piece]
		for i := range o {
			a, b := stretch{o[i], o[(i+1)%len(o)]}, stretch{o[(i+1)%len(o)], o[i]}
			_, begins := onStretch(a.from, a.to, along.from)
			_, one := common(along, a)
			_, other := common(along, b)
			if begins && (one || other) {
				return true
			}
		}
		return false
	}
	return of[slices.IndexFunc(of, lies)]
}

// finish puts the arms in order and finds the pieces at the ends of each side.
func (r *rawEdges) finish(pieces []outline, across, down measure.NM) {
	corners := [4]point{{}, {X: across}, {X: across, Y: down}, {Y: down}}
	ends := [4][2]point{{corners[0], corners[1]}, {corners[1], corners[2]}, {corners[3], corners[2]}, {corners[0], corners[3]}}
	all := make([]int, len(pieces))
	for i := range all {
		all[i] = i
	}
	for side := range 4 {
		slices.SortStableFunc(r.arms[side], func(a, b edgeArm) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.slope, b.slope)) })
		for end := range 2 {
			r.ends[side][end] = beside(pieces, all, stretch{ends[side][end], ends[side][1-end]})
		}
	}
}

// rawEdges is what the neighbours of the block or column at a cell meet.
func (p *Plan) rawEdges(cell int) *rawEdges {
	c := &p.cells[cell]
	if !c.columns {
		return p.kinds[c.block].rawEdgesOf(int(c.turns))
	}
	if p.columnEdges[cell] == nil {
		p.columnEdges[cell] = p.rawEdgesOfColumn(cell)
	}
	return p.columnEdges[cell]
}

// rawEdgesOfColumn is the rawEdges of a column: its slanted seams end on its long sides.
func (p *Plan) rawEdgesOfColumn(cell int) *rawEdges {
	c := &p.cells[cell]
	at := p.top.CellRect(cell).Min
	pieces := make([]outline, c.count)
	for i := range pieces {
		for _, q := range p.top.Patches[p.patch(cell, i)].Outline {
			pieces[i] = append(pieces[i], minus(q, at))
		}
	}
	r := &rawEdges{}
	down := measure.NM(c.down) * p.SideFinished
	for i := 1; i < len(pieces); i++ {
		l, rt := pieces[i][0], pieces[i][1] // the seam above piece i
		r.add(edgeArm{way: vecOf(minus(rt, l)).Unit(), patches: [2]int{i, i - 1}}, l, p.SideFinished, down)
		r.add(edgeArm{way: vecOf(minus(l, rt)).Unit(), turned: true, patches: [2]int{i - 1, i}}, rt, p.SideFinished, down)
	}
	r.finish(pieces, p.SideFinished, down)
	return r
}
