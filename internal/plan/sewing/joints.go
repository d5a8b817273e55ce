package sewing

import (
	"eighthturn/internal/measure"
)

// joints finds the places where seams butt: within rows or columns, between them, and where a
// border's corner squares meet its strips.
func (p *Plan) joints() {
	for i := range p.lines {
		p.sign.Step(len(p.lines[i].tiles))
		p.jointsWithin(i)
	}
	for i := 1; i < len(p.lines); i++ {
		p.jointsBetween(p.lines[i-1].tiles, p.lines[i].tiles)
	}
	p.crossings()
	p.inside()
}

// jointsWithin is the joints on the seams between the tiles of a line.
func (p *Plan) jointsWithin(n int) {
	tiles := p.lines[n].tiles
	a := assembling{Plan: p, Assembly: &p.Assembly}
	for i := 1; i < len(tiles); i++ {
		if a.end(&tiles[i-1]) == a.begin(&tiles[i]) {
			p.facing(&tiles[i-1], &tiles[i], p.Assembly.ByColumns)
		}
	}
}

// jointsBetween is the joints of blocks on the line between two lines.
func (p *Plan) jointsBetween(one, other []tile) {
	a := assembling{Plan: p, Assembly: &p.Assembly}
	for _, t := range a.touches(one, other) {
		p.facing(&one[t.one], &other[t.other], !p.Assembly.ByColumns)
	}
}

// facing is the joints of two blocks side by side, or one above the other.
func (p *Plan) facing(one, other *tile, above bool) {
	cell, next := p.Assembly.Parts[one.part].Cell, p.Assembly.Parts[other.part].Cell
	if min(cell, next) < 0 {
		return
	}
	side, opposite := right, left
	start, nextStart := one.at.Min.Y, other.at.Min.Y
	if above {
		side, opposite = bottom, top
		start, nextStart = one.at.Min.X, other.at.Min.X
	}
	arms, nextArms := p.rawEdges(cell).arms[side], p.rawEdges(next).arms[opposite]
	for i, j := 0, 0; i < len(arms) && j < len(nextArms); {
		p.sign.Step(1)
		a, b := &arms[i], &nextArms[j]
		from, to := start+a.at, nextStart+b.at
		switch {
		case from == to && alike(a.slope, b.slope):
			p.joint(lineAt(other, from, above), p.armOf(cell, a), p.armOf(next, b))
			i++ // and the other by and by
		case from < to || from == to && a.slope < b.slope:
			i++
		default:
			j++
		}
	}
}

// alike says whether two arms are mirror images in the line between them: their slopes are
// the same but for what the rounding of their corners makes.
func alike(a, b int64) bool { return a-b <= 1 && b-a <= 1 }

// lineAt is a point of the line between a tile and the one before it.
func lineAt(t *tile, along measure.NM, above bool) point {
	if above {
		return point{X: along, Y: t.at.Min.Y}
	}
	return point{X: t.at.Min.X, Y: along}
}

// armOf is an arm of a raw edge as it stands in a cell.
func (p *Plan) armOf(cell int, a *edgeArm) Arm {
	return Arm{
		Choice: p.Pressing.Cells[cell][a.group], Turned: a.turned,
		Patches: [2]int32{int32(p.patch(cell, a.patches[0])), int32(p.patch(cell, a.patches[1]))},
	}
}

func (p *Plan) joint(at point, a, b Arm) {
	p.Pressing.Joints = append(p.Pressing.Joints, Joint{At: at, A: a, B: b})
}

// crossing is an end of a seam of the assembly.
type crossing struct {
	at  point
	way int // the side from which it comes: top, right, bottom or left
	arm Arm
}

// crossings is the joints of seams of lines with those of the next line, and of the
// strips of borders with their corner squares: both ends of a seam may meet another's.
func (p *Plan) crossings() {
	ends := map[point][]crossing{}
	var order []point
	for i := range p.Assembly.Seams {
		s := &p.Assembly.Seams[i]
		for end := range 2 {
			c := p.crossingOf(s, end)
			if len(ends[c.at]) == 0 {
				order = append(order, c.at)
			}
			ends[c.at] = append(ends[c.at], c)
		}
	}
	for _, at := range order {
		list := ends[at]
		for i := range list {
			p.sign.Step(len(list))
			for j := i + 1; j < len(list); j++ {
				if list[i].way^list[j].way == 2 { // opposite
					p.joint(at, list[i].arm, list[j].arm)
				}
			}
		}
	}
}

// crossingOf is one end of a seam.
func (p *Plan) crossingOf(s *Seam, end int) crossing {
	at, far := s.From, s.To
	if end == 1 {
		at, far = far, at
	}
	c := crossing{at: at, way: heading(at, far), arm: Arm{Choice: s.choice, Turned: s.towardsA != (end == 1)}}
	one, other := p.patchAt(s, end, 0), p.patchAt(s, end, 1)
	c.arm.Patches = [2]int32{other, one}
	if end == 1 {
		c.arm.Patches = [2]int32{one, other}
	}
	return c
}

// patchAt is the patch at an end of a seam, on the side of its A or of its B.
func (p *Plan) patchAt(s *Seam, end, side int) int32 {
	part := &p.Assembly.Parts[s.beside[end][side]]
	if part.Cell < 0 {
		return int32(part.First)
	}
	way, last := heading(s.From, s.To), end // last is which end of the part's side it is
	if way == left || way == top {
		last = 1 - end
	}
	facing := (way + 1 + 2*side) & 3 // the side of the part that the seam runs along: going up A lies to the left of it
	return int32(p.patch(part.Cell, p.rawEdges(part.Cell).ends[facing][last]))
}

// heading is the side to which a way along the grid goes.
func heading(from, to point) int {
	switch {
	case to.X > from.X:
		return right
	case to.Y > from.Y:
		return bottom
	case to.X < from.X:
		return left
	}
	return top
}

// inside counts the joints within blocks: two seams of one direction of turning that end on
// a later one from its two sides. A column has none: each of its pieces is joined to all those above.
func (p *Plan) inside() {
	for i, k := range p.kinds {
		if p.Blocks[i].Column {
			continue
		}
		count := 0
		for n := range k.joins {
			count += k.jointsOn(n)
		}
		p.Pressing.Inside += count * p.Blocks[i].Count
	}
}

// jointsOn is how many joints lie on the line of a kind's join, all of which nest: their seams
// follow one choice and are turned the same way.
func (s *sewn) jointsOn(n int) int {
	line := &s.joins[n]
	count := 0
	for a := range n {
		for b := range n {
			if s.isOf(line, 0, a) && s.isOf(line, 1, b) && s.mirrored(&s.joins[a], &s.joins[b], line) {
				count++
			}
		}
	}
	return count
}

// isOf says whether a join's unit is part of one side of another.
func (s *sewn) isOf(line *joined, part, n int) bool {
	for _, piece := range s.joins[n].all() {
		found := false
		for _, q := range line.pieces[part] {
			found = found || q == piece
		}
		if !found {
			return false
		}
	}
	return true
}

// mirrored says whether two joins end in one point of a line as mirror images.
func (s *sewn) mirrored(a, b, line *joined) bool {
	way := vecOf(minus(line.seam.to, line.seam.from)).Unit()
	for _, e := range [2]stretch{a.seam, {a.seam.to, a.seam.from}} {
		for _, f := range [2]stretch{b.seam, {b.seam.to, b.seam.from}} {
			if _, on := onStretch(line.seam.from, line.seam.to, e.from); !on || length(minus(e.from, f.from)) > near {
				continue
			}
			if u, v := vecOf(minus(e.to, e.from)).Unit(), vecOf(minus(f.to, f.from)).Unit(); u.Minus(v.Reflected(way)).Length() < 1e-6 {
				return true
			}
		}
	}
	return false
}
