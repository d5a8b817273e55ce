package sewing

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// seamLine is a long seam line with the tiles on its two sides: above and below it, or to the
// left and right.
type seamLine struct {
	one, other []tile
	above      bool // else one lies to the left
	seam       int  // of the assembly, one that lies on it
}

// Numbers by which seams at a point are sewn one after the other: those within blocks, then
// those between two tiles, then the long line.
const (
	betweenTiles = 10_000
	longLine     = 2 * betweenTiles
)

// lineArm is an arm on a line, at its place along it.
type lineArm struct {
	at measure.NM
	arm
	tile int // which of the line's tiles it belongs to
}

// junctions calls found for each point of a line to which a seam runs from either side, and
// which has cloth all round.
func (p *Plan) junctions(l *seamLine, found func(at measure.NM, g *junction)) {
	list := p.armsAlong(l.one, l.above, true)
	list = append(list, p.armsAlong(l.other, l.above, false)...)
	slices.SortStableFunc(list, func(a, b lineArm) int { return cmp.Compare(a.at, b.at) })
	for i := 0; i < len(list); {
		j := i
		for j < len(list) && list[j].at == list[i].at {
			j++
		}
		p.sign.Step(j - i)
		if at := list[i].at; p.surrounded(l, at) {
			found(at, junctionOf(append(p.lineArms(l), armsOf(list[i:j])...)))
		}
		i = j
	}
}

// armsOf is the arms at one point, in the order of sewing within each tile.
func armsOf(list []lineArm) []arm {
	arms := make([]arm, len(list))
	var tiles []int
	for i, a := range list {
		rank := slices.Index(tiles, a.tile)
		if rank < 0 {
			rank = len(tiles)
			tiles = append(tiles, a.tile)
		}
		arms[i] = a.arm
		if a.order < betweenTiles {
			arms[i].order += 100 * rank
		} else {
			arms[i].order += rank
		}
	}
	return arms
}

// armsAlong is the arms of tiles on one side of a line: of the seams within them, and of
// those between them.
func (p *Plan) armsAlong(tiles []tile, above, before bool) []lineArm {
	side := facingSide(above, before)
	var list []lineArm
	for n := range tiles {
		t, number := &tiles[n], 2*n
		if before {
			number++
		}
		start := t.at.Min.Y
		if above {
			start = t.at.Min.X
		}
		if t.seam >= 0 {
			list = append(list, lineArm{start, p.betweenArm(t.seam, above, before), number})
		}
		cell := p.Assembly.Parts[t.part].Cell
		if cell < 0 {
			continue
		}
		for i := range p.rawEdges(cell).arms[side] {
			a := &p.rawEdges(cell).arms[side][i]
			made := arm{bearing(distant(a.way)), a.join, (p.Pressing.Choices[p.Pressing.Cells[cell][a.group]].Way == 0) != a.turned}
			list = append(list, lineArm{start + a.at, made, number})
		}
	}
	return list
}

// facingSide is the side of a tile that lies on a line.
func facingSide(above, before bool) int {
	switch {
	case above && before:
		return bottom
	case above:
		return top
	case before:
		return right
	}
	return left
}

// distant is a way as a point far away, fit for its bearing.
func distant(a measure.Vec) point { return point{X: rounded(a.X * 1e9), Y: rounded(a.Y * 1e9)} }

// betweenArm is the seam between two tiles side by side, from a line that it ends on.
func (p *Plan) betweenArm(seam int, above, before bool) arm {
	press := p.toLater(seam)
	switch {
	case above && before: // it goes up; towards the later tile is clockwise
		return arm{3 * math.Pi / 2, betweenTiles, press}
	case above:
		return arm{math.Pi / 2, betweenTiles, !press}
	case before: // it goes to the left, and the later tile lies below it
		return arm{math.Pi, betweenTiles, !press}
	}
	return arm{0, betweenTiles, press}
}

// lineArms is the two arms of a line itself.
func (p *Plan) lineArms(l *seamLine) []arm {
	press := p.toLater(l.seam)
	if l.above {
		return []arm{{0, longLine, press}, {math.Pi, longLine, !press}}
	}
	return []arm{{3 * math.Pi / 2, longLine, press}, {math.Pi / 2, longLine, !press}}
}

// toLater says whether a seam of the assembly is pressed towards what lies below it or to its right.
func (p *Plan) toLater(seam int) bool {
	s := &p.Assembly.Seams[seam]
	return s.Press == (s.From.X < s.To.X || s.From.Y > s.To.Y)
}

// sideBySide finds for the tiles along each long seam line the seam between each and the one before it: within a row, between
// two rows where the line runs along their ends, or between a row and a strip of a border.
func (p *Plan) sideBySide() {
	parts := len(p.Assembly.Parts)
	above := make([]int, parts+len(p.Assembly.Seams)) // the unit that a unit is sewn into, 0 for none
	for i := range p.Assembly.Seams {
		above[p.Assembly.Seams[i].A], above[p.Assembly.Seams[i].B] = parts+i, parts+i
	}
	for i := range p.seamLines {
		p.sign.Look()
		l := &p.seamLines[i]
		l.one, l.other = joinedBy(l.one, l.above, above, parts), joinedBy(l.other, l.above, above, parts)
	}
}

// joinedBy is tiles along a line, each that touches the one before it with the seam of the assembly between them.
func joinedBy(tiles []tile, across bool, above []int, parts int) []tile {
	list := slices.Clone(tiles)
	for i := range list {
		if i == 0 || across && list[i-1].at.Max.X != list[i].at.Min.X || !across && list[i-1].at.Max.Y != list[i].at.Min.Y {
			continue
		}
		one, other := list[i-1].part, list[i].part
		for one != other { // what is made later has the higher number; what touches is sewn together in the end
			one, other = max(one, other), above[min(one, other)]
		}
		list[i].seam = one - parts
	}
	return list
}

// surrounded says whether there is cloth on both sides of a line right before and right
// behind a point of it.
func (p *Plan) surrounded(l *seamLine, at measure.NM) bool {
	return covered(l.one, l.above, at) && covered(l.other, l.above, at)
}

func covered(tiles []tile, above bool, at measure.NM) bool {
	begin := func(t *tile) (measure.NM, measure.NM) {
		if above {
			return t.at.Min.X, t.at.Max.X
		}
		return t.at.Min.Y, t.at.Max.Y
	}
	first, _ := slices.BinarySearchFunc(tiles, at, func(t tile, at measure.NM) int {
		_, end := begin(&t)
		return cmp.Compare(end, at)
	})
	if first == len(tiles) {
		return false
	}
	from, to := begin(&tiles[first])
	if from < at && at < to {
		return true
	}
	if to != at || first+1 == len(tiles) {
		return false
	}
	next, _ := begin(&tiles[first+1])
	return next == at
}

// junctionOf is arms put in order, with the corners between them.
func junctionOf(arms []arm) *junction {
	slices.SortFunc(arms, func(a, b arm) int { return cmp.Compare(a.from, b.from) })
	g := &junction{arms: arms}
	for i := range arms {
		angle := arms[(i+1)%len(arms)].from - arms[i].from
		if angle <= 0 {
			angle += 2 * math.Pi
		}
		g.corners = append(g.corners, corner{arms[i].from, angle, angle < blocks.Tip()*math.Pi/180})
	}
	return g
}

// key tells junctions apart that fold otherwise.
func (g *junction) key(b []byte) []byte {
	for _, a := range g.arms {
		way := int(math.Round(a.from * 1e4))
		press := byte(0)
		if a.clockwise {
			press = 1
		}
		b = append(b, byte(way), byte(way>>8), byte(a.order), byte(a.order>>8), press)
	}
	return b
}
