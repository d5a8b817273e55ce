package sewing

import (
	"cmp"
	"eighthturn/internal/measure"
	"math"
	"slices"
)

// junction is what meets in one point: corners of pieces, and the seams between them.
// Lengths are in seam allowances, ways in radians, clockwise on screen from the right.
type junction struct {
	corners []corner // clockwise; corner i lies clockwise of arm i
	arms    []arm    // clockwise
}

// corner is one piece at the point.
type corner struct {
	from, angle float64
	blunt       bool // cut off flat a seam allowance beyond its point
}

// arm is a seam that runs from the point.
type arm struct {
	from      float64
	order     int  // when it is sewn: two arms of one number are one seam that runs through
	clockwise bool // as it is pressed
}

// pressMode is how the seams at a point are pressed.
type pressMode uint8

const (
	whole    pressMode = iota // each seam to one side, as its arms say
	lastOpen                  // the last seam open, the others as their arms say
	opened                    // all open
	round                     // all to the clockwise side of their arms, so that each piece lies free of the others
)

// layers is how many layers of cloth lie on each other at the thickest place round the point.
//
// It is found by folding: every piece is its corner, grown by a seam allowance, and is a flat
// shape. Seams are sewn in their order; what reaches beyond the seam line is left as it lies
// on the side that it is pressed to, and folded back along the line on the other. Turned
// round, each piece is folded by itself, along one of its two sides; with all seams open, along
// both. Layers are counted at the points of a fine grid; the thickness of cloth, and what a
// turned fold takes up, are left out of account, and so are dog ears that are trimmed off.
func (g *junction) layers(m pressMode) int { return stackedOn(g.shapes(m)).thickest() }

// shapes is the layers of cloth round the point.
func (g *junction) shapes(m pressMode) []shape {
	stacks := make([][]shape, len(g.corners))
	for i, c := range g.corners {
		stacks[i] = []shape{grownCorner(c)}
	}
	if m == whole || m == lastOpen {
		g.fold(stacks, m)
		return slices.Concat(stacks...)
	}
	for i, c := range g.corners {
		stacks[i] = side{wayOf(c.from), true}.foldedBack(stacks[i])
		if m == opened {
			stacks[i] = side{wayOf(c.from + c.angle), false}.foldedBack(stacks[i])
		}
	}
	return slices.Concat(stacks...)
}

// folding is the work of folding layers at a point.
type folding struct {
	stacks [][]shape // by corner: its layers
	unit   []int     // by corner: the unit that it has become part of
}

// fold sews the seams in their order and folds what is to be folded.
func (g *junction) fold(stacks [][]shape, m pressMode) {
	f := folding{stacks: stacks}
	for i := range stacks {
		f.unit = append(f.unit, i)
	}
	order := g.inOrder()
	for n, i := range order {
		a := g.arms[i]
		open := m == lastOpen && n == len(order)-1
		way := wayOf(a.from)
		before, after := f.unit[(i+len(stacks)-1)%len(stacks)], f.unit[i] // anticlockwise of the arm, and clockwise
		f.sew(after, side{way, true}, open || a.clockwise)
		f.sew(before, side{way, false}, open || !a.clockwise)
		for n := range f.unit {
			if f.unit[n] == before {
				f.unit[n] = after
			}
		}
	}
}

// side is one side of a line through the point: the clockwise one of a way along it, or the
// other.
type side struct {
	way       measure.Vec
	clockwise bool
}

// inwards is the way from the line into the side.
func (s side) inwards() measure.Vec {
	if s.clockwise {
		return s.way.Quarter()
	}
	return s.way.Quarter().Times(-1)
}

// sew sews a unit, which lies on one side of a seam, along it: dog ears are trimmed off, and if
// its allowance is to lie on its own side it is folded back.
func (f *folding) sew(unit int, s side, back bool) {
	for n := range f.stacks {
		if f.unit[n] != unit {
			continue
		}
		f.stacks[n] = s.trimmed(f.stacks[n])
		if back {
			f.stacks[n] = s.foldedBack(f.stacks[n])
		}
	}
}

// trimmed is the layers of a unit without the dog ears that stand out of its raw edge.
func (s side) trimmed(stack []shape) []shape {
	var list []shape
	for _, layer := range stack {
		if kept := layer.clipped(s.inwards(), -1); len(kept) > 2 {
			list = append(list, kept)
		}
	}
	return list
}

// inOrder is the arms as they are sewn, each seam once.
func (g *junction) inOrder() []int {
	var list []int
	for i := range g.arms {
		if !slices.ContainsFunc(list, func(n int) bool { return g.arms[n].order == g.arms[i].order }) {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(g.arms[a].order, g.arms[b].order) })
	return list
}

func wayOf(angle float64) measure.Vec { return measure.Vec{X: math.Cos(angle), Y: math.Sin(angle)} }

// shape is a convex flat piece of cloth.
type shape []measure.Vec

// reachOf is how far from the point shapes are followed, in seam allowances: farther than
// any allowance reaches.
const reachOf = 8

// grownCorner is a piece round its corner with its allowance.
func grownCorner(c corner) shape {
	s := shape{{X: -reachOf, Y: -reachOf}, {X: reachOf, Y: -reachOf}, {X: reachOf, Y: reachOf}, {X: -reachOf, Y: reachOf}}
	first, last := wayOf(c.from), wayOf(c.from+c.angle)
	s = s.clipped(first.Quarter(), -1)
	s = s.clipped(last.Quarter().Times(-1), -1)
	if c.blunt {
		s = s.clipped(wayOf(c.from+c.angle/2), -1)
	}
	return s
}

// clipped is the part of a shape that reaches at least so far along a way.
func (s shape) clipped(way measure.Vec, least float64) shape {
	var out shape
	for i, p := range s {
		q := s[(i+1)%len(s)]
		a, b := p.Dot(way)-least, q.Dot(way)-least
		if a >= 0 {
			out = append(out, p)
		}
		if a < 0 != (b < 0) {
			out = append(out, p.Plus(q.Minus(p).Times(a/(a-b))))
		}
	}
	return out
}

// foldedBack is layers folded along the line, so that they lie on the side.
func (s side) foldedBack(stack []shape) []shape {
	var list []shape
	for _, layer := range stack {
		if stays := layer.clipped(s.inwards(), 0); len(stays) > 2 {
			list = append(list, stays)
		}
		if over := layer.clipped(s.inwards().Times(-1), 0); len(over) > 2 {
			mirror := make(shape, len(over))
			for i, p := range over {
				mirror[len(over)-1-i] = p.Reflected(s.way)
			}
			list = append(list, mirror)
		}
	}
	return list
}

// A grid of points round the point where seams meet, in seam allowances.
const (
	gridHalf  = 1.2 // each way
	gridMesh  = 0.06
	gridLines = int(2*gridHalf/gridMesh) + 1
	rowsWider = 1.01
	gridAside = 0.0137 // so that no point of the grid lies on a fold
	enough    = 4      // points that must see as many layers: what fewer see is a sliver that comes of rounding
)

// sampleGrid counts layers at its points, row by row.
type sampleGrid [gridLines][gridLines]uint8

func gridAt(line int) float64 { return -gridHalf + gridAside + float64(line)*gridMesh }

// rowAt is a row's: rows lie a little wider than columns, so that no point lies on a diagonal.
func rowAt(line int) float64 { return gridAt(line) * rowsWider }

// add counts a shape at all points in it.
func (n *sampleGrid) add(s shape) {
	for row := range gridLines {
		from, to, ok := s.span(rowAt(row))
		if !ok {
			continue
		}
		first := max(0, int(math.Ceil((from-gridAt(0))/gridMesh)))
		last := min(gridLines-1, int(math.Floor((to-gridAt(0))/gridMesh)))
		for column := first; column <= last; column++ {
			n[row][column]++
		}
	}
}

// span is where a level line enters and leaves a shape.
func (s shape) span(y float64) (from, to float64, ok bool) {
	from, to = math.Inf(1), math.Inf(-1)
	for i, p := range s {
		q := s[(i+1)%len(s)]
		if (p.Y < y) == (q.Y < y) {
			continue
		}
		x := p.X + (q.X-p.X)*((y-p.Y)/(q.Y-p.Y))
		from, to = min(from, x), max(to, x)
	}
	return from, to, from < to
}

// stackedOn counts shapes at the points of a grid.
func stackedOn(list []shape) *sampleGrid {
	n := &sampleGrid{}
	for _, s := range list {
		n.add(s)
	}
	return n
}

// thickest is the most shapes that lie on each other, at as many points as make more than a sliver.
func (n *sampleGrid) thickest() int {
	var found [256]int
	for row := range n {
		for _, count := range n[row] {
			found[count]++
		}
	}
	most, points := 255, found[255]
	for points < enough {
		most--
		points += found[most]
	}
	return most
}
