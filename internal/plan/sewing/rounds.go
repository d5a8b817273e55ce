package sewing

import (
	"cmp"
	"math"
	"slices"
)

// rounds finds the points inside a block where three or more seams meet, and what their
// allowances can do there.
func (p *Plan) rounds(b *Block, s *sewn) {
	if b.Column {
		return
	}
	for _, at := range s.inner() {
		r := Round{At: at, Pieces: s.around(at)}
		g := s.junction(at)
		r.Seams = len(g.arms)
		r.Turns, r.WhyNot = s.canTurn(at, g)
		if r.Through = -1; r.WhyNot == RunsThrough {
			r.Through = r.Pieces[slices.IndexFunc(g.corners, func(c corner) bool { return c.angle > math.Pi-1e-6 })]
		}
		r.Without = g.layers(whole)
		r.Last = g.layers(lastOpen)
		r.Opened = g.layers(opened)
		if r.Turns {
			r.Layers = g.layers(round)
			r.Partial = s.partials(at, b)
		}
		b.Rounds = append(b.Rounds, r)
	}
}

// inner is the corners of pieces inside the block, each once.
func (s *sewn) inner() []point {
	var list []point
	for _, o := range s.pieces {
		for _, p := range o {
			inside := min(p.X, p.Y, s.side-p.X, s.side-p.Y) > 0
			if inside && cornerAt(list, p) < 0 {
				list = append(list, p)
			}
		}
	}
	return list
}

// around is the pieces that meet in a point inside the block, clockwise.
func (s *sewn) around(at point) []int {
	type met struct {
		piece int
		way   float64
	}
	var list []met
	for i, o := range s.pieces {
		if from, ok := sector(o, at); ok {
			list = append(list, met{i, from})
		}
	}
	slices.SortFunc(list, func(a, b met) int { return cmp.Compare(a.way, b.way) })
	pieces := make([]int, len(list))
	for i, m := range list {
		pieces[i] = m.piece
	}
	return pieces
}

// sector is the way from which an outline lies clockwise round a point of it; radians, from the way to the right.
func sector(o outline, at point) (from float64, ok bool) {
	if i := cornerAt(o, at); i >= 0 {
		return bearing(minus(o[(i+1)%len(o)], o[i])), true
	}
	for i := range o {
		if _, on := onStretch(o[i], o[(i+1)%len(o)], at); on {
			return bearing(minus(o[(i+1)%len(o)], at)), true
		}
	}
	return 0, false
}

// bearing is the direction of a way, clockwise on screen from the right, 0 to 2 pi.
func bearing(way point) float64 {
	a := math.Atan2(float64(way.Y), float64(way.X))
	if a < -1e-9 {
		a += 2 * math.Pi
	}
	return max(a, 0)
}

// junction is the seams and pieces round a point inside the block.
func (s *sewn) junction(at point) *junction {
	pieces := s.around(at)
	var arms []arm
	for i, piece := range pieces { // each arm is pressed towards its join's B
		from, _ := sector(s.pieces[piece], at)
		order := s.order(pieces[(i+len(pieces)-1)%len(pieces)], piece)
		arms = append(arms, arm{from, order, slices.Contains(s.joins[order].pieces[1], piece)})
	}
	return junctionOf(arms)
}

// order is the number of the join that sews two pieces together.
func (s *sewn) order(a, b int) int {
	return slices.IndexFunc(s.joins, func(j joined) bool {
		one, other := j.pieces[0], j.pieces[1]
		return slices.Contains(one, a) && slices.Contains(other, b) || slices.Contains(one, b) && slices.Contains(other, a)
	})
}

// canTurn says whether the allowances can all turn one way round a point: none of its pieces
// may run past it, and all seams there must be pressed so.
func (s *sewn) canTurn(at point, g *junction) (bool, Obstacle) {
	for _, c := range g.corners {
		if c.angle > math.Pi-1e-6 {
			return false, RunsThrough
		}
	}
	for _, a := range g.arms {
		if r := s.kind.Recipe.Pressing[s.joins[a.order].Press]; !r.Round {
			return false, PressedOtherwise
		}
	}
	return true, ""
}

// partials marks the joins that end in a point round which the allowances turn: all but the
// one that runs through it are sewn in part.
func (s *sewn) partials(at point, b *Block) []int {
	var list []int
	for i := range b.Steps {
		for j := range b.Steps[i].Joins {
			join := &b.Steps[i].Joins[j]
			for end, p := range [2]point{join.From, join.To} {
				if length(minus(p, at)) <= near {
					join.Ends[end].Partial = true
					list = append(list, join.Number)
				}
			}
		}
	}
	return list
}
