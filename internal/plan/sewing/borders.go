package sewing

import (
	"cmp"
	"slices"

	"eighthturn/internal/quilt"
)

// findEdges finds what lies along each side of the field.
func (a *assembling) findEdges() {
	var all []tile
	for _, c := range a.lines {
		all = append(all, c.tiles...)
	}
	a.edgesOf(all)
}

// edgesOf finds which of some tiles lie along each side of what is there.
func (a *assembling) edgesOf(tiles []tile) {
	a.edges = [4][]tile{}
	for _, t := range tiles {
		for side, lies := range [4]bool{t.at.Min.Y == a.outer.Min.Y, t.at.Max.X == a.outer.Max.X, t.at.Max.Y == a.outer.Max.Y, t.at.Min.X == a.outer.Min.X} {
			if lies {
				a.edges[side] = append(a.edges[side], t)
			}
		}
	}
}

// inOrder puts tiles along a side in order: rightwards or downwards.
func inOrder(tiles []tile, side int) {
	slices.SortFunc(tiles, func(s, t tile) int {
		if side == left || side == right {
			return cmp.Compare(s.at.Min.Y, t.at.Min.Y)
		}
		return cmp.Compare(s.at.Min.X, t.at.Min.X)
	})
}

// borders sews each border on in turn, from the inside out.
func (a *assembling) borders() {
	for n, b := range a.top.CutFacts.Borders {
		count := 4
		if b.Corners >= 0 {
			count = 8
		}
		tiles := a.border[:count]
		a.border = a.border[count:]
		stage := a.stage(Stage{Sort: BorderStage, Number: n + 1})
		if count == 8 {
			a.corneredBorder(tiles)
		} else {
			for i, side := range [4]int{left, right, top, bottom} {
				a.strip(tiles[i:i+1], side, tiles[:i])
			}
		}
		a.outer = quilt.Rect{
			Min: point{X: a.outer.Min.X - b.Width, Y: a.outer.Min.Y - b.Width}, Max: point{X: a.outer.Max.X + b.Width, Y: a.outer.Max.Y + b.Width},
		}
		a.edgesOf(tiles)
		a.close(stage, a.outer)
	}
}

// corneredBorder sews the strips at the two sides on first, then those above and below with
// a square at either end.
func (a *assembling) corneredBorder(tiles []tile) {
	a.strip(tiles[left:left+1], left, nil)
	a.strip(tiles[right:right+1], right, nil)
	for _, side := range [2]int{top, bottom} {
		ends := [2]tile{tiles[4], tiles[5]}
		if side == bottom {
			ends = [2]tile{tiles[7], tiles[6]}
		}
		choice := a.choose(Choice{Sort: LineChoice, Cell: -1, Stage: len(a.Stages) - 1, Seam: -1})
		strip := tiles[side]
		for i, pair := range [2][2]tile{{ends[0], strip}, {strip, ends[1]}} {
			at := pair[1].at
			s := a.sew(a.root(pair[0].part), a.root(pair[1].part), point{X: at.Min.X, Y: at.Max.Y}, at.Min)
			s.choice, s.towardsA = choice, i == 1
			s.beside = [2][2]int{{pair[0].part, pair[1].part}, {pair[0].part, pair[1].part}}
		}
		a.strip([]tile{ends[0], strip, ends[1]}, side, []tile{tiles[left], tiles[right]})
	}
}

// strip sews a strip of a border, alone or between two corner squares, to all that lies along it: to one side of what is there,
// and to the ends of strips that were sewn on before.
func (a *assembling) strip(sewn []tile, side int, before []tile) {
	t := sewn[len(sewn)/2]
	along := a.along(side, before)
	inner, outer := along, sewn
	if side == top || side == left {
		inner, outer = outer, inner
	}
	p := seamLine{one: inner, other: outer, above: side == top || side == bottom}
	defer func() { a.seamLines = append(a.seamLines, p) }()
	for i, e := range along {
		one, other := a.root(e.part), a.root(t.part)
		if one == other {
			continue
		}
		last := e
		for _, f := range along[i:] {
			if a.root(f.part) == one {
				last = f
			}
		}
		from, to := stretchOn(side, e.at, last.at)
		p.seam = len(a.Seams)
		s := a.longSeam(one, other, from, to)
		s.beside = [2][2]int{{e.part, t.part}, {last.part, t.part}}
		if side == top || side == right { // the seam goes the other way
			s.beside[0], s.beside[1] = s.beside[1], s.beside[0]
		}
	}
}

// along is what lies along one side, in its order.
func (a *assembling) along(side int, before []tile) []tile {
	list := slices.Clone(a.edges[side])
	for _, t := range before {
		if side == top && t.at.Min.Y == a.outer.Min.Y || side == bottom && t.at.Max.Y == a.outer.Max.Y {
			list = append(list, t)
		}
	}
	inOrder(list, side)
	return list
}

// stretchOn is the stretch of one side from a first rectangle to a last, so that what lies
// outside is to the right of it.
func stretchOn(side int, first, last quilt.Rect) (from, to point) {
	switch side {
	case top:
		return point{X: last.Max.X, Y: first.Min.Y}, first.Min
	case right:
		return last.Max, point{X: last.Max.X, Y: first.Min.Y}
	case bottom:
		return point{X: first.Min.X, Y: first.Max.Y}, last.Max
	}
	return first.Min, point{X: first.Min.X, Y: last.Max.Y}
}

// findLoose lists what the largest unit has not taken in.
func (a *assembling) findLoose() {
	patches := map[int]int{}
	for i := range a.Parts {
		patches[a.root(i)] += a.Parts[i].Patches
	}
	roots := make([]int, 0, len(patches))
	for r := range patches {
		roots = append(roots, r)
	}
	slices.SortFunc(roots, func(r, s int) int { return cmp.Or(cmp.Compare(patches[s], patches[r]), cmp.Compare(r, s)) })
	if len(roots) > 1 {
		a.Loose = roots[1:]
	}
}

// choose adds a choice of pressing.
func (p *Plan) choose(c Choice) int32 {
	p.Pressing.Choices = append(p.Pressing.Choices, c)
	return int32(len(p.Pressing.Choices) - 1)
}
