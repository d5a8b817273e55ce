package svgout

import (
	"math"

	"eighthturn/internal/measure"
)

// inset is a convex outline drawn inwards until its first side has shrunk to nothing: each
// corner runs along the line that halves its angle. For triangles and kites that is the
// middle of the circle that touches all sides, for a long strip a stretch down its middle.
// Products are converted one by one, so that no machine joins them with a sum into one
// rounding and all machines draw the same picture.
type inset struct {
	sides []side
	depth float64 // nanometres
}

// side is one side of an outline, from a corner clockwise to the next.
type side struct {
	x, y   float64 // the corner, nanometres
	dx, dy float64 // the way along it, of length 1; inwards is -dy, dx
	length float64 // nanometres
	slope  float64 // how far the corner moves along the side for one inwards
	next   float64 // the same for the corner at the end, backwards
}

// of finds the inset of a clockwise outline, in the room of the last one.
func (in *inset) of(outline []measure.Point) {
	in.sides = in.sides[:0]
	for i, p := range outline {
		q := outline[0]
		if i+1 < len(outline) {
			q = outline[i+1]
		}
		dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
		length := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		in.sides = append(in.sides, side{x: float64(p.X), y: float64(p.Y), dx: dx / length, dy: dy / length, length: length})
	}
	last := &in.sides[len(in.sides)-1]
	for i := range in.sides {
		s := &in.sides[i]
		sine := float64(last.dx*s.dy) - float64(last.dy*s.dx)
		cosine := float64(last.dx*s.dx) + float64(last.dy*s.dy)
		s.slope = sine / (1 + cosine) // the tangent of half the turn
		last.next = s.slope
		last = s
	}
	in.depth = math.Inf(1)
	for i := range in.sides {
		s := &in.sides[i]
		in.depth = min(in.depth, s.length/(s.slope+s.next))
	}
}

// inwards is the place of the inset that belongs to a place so far along a side.
func (in *inset) inwards(s *side, along float64) (x, y float64) {
	along = max(float64(in.depth*s.slope), min(along, s.length-float64(in.depth*s.next)))
	x = s.x + float64(s.dx*along) - float64(s.dy*in.depth)
	y = s.y + float64(s.dy*along) + float64(s.dx*in.depth)
	return x, y
}

// middle is the mean of the inset's corners, well inside the outline, and room its distance
// to the nearest side.
func (in *inset) middle() (x, y, room float64) {
	for i := range in.sides {
		cx, cy := in.inwards(&in.sides[i], 0)
		x, y = x+cx, y+cy
	}
	n := float64(len(in.sides))
	x, y, room = x/n, y/n, math.Inf(1)
	for i := range in.sides {
		s := &in.sides[i]
		room = min(room, float64(s.dx*(y-s.y))-float64(s.dy*(x-s.x)))
	}
	return x, y, room
}

// stretch is the stretch of the inset that belongs to one of the outline's, clockwise.
func (in *inset) stretch(from, to measure.Point) (a, b measure.Point) {
	x, y := float64(from.X), float64(from.Y)
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	var best *side
	least := math.Inf(1)
	for i := range in.sides {
		s := &in.sides[i]
		off := math.Abs(float64(s.dx*(y-s.y))-float64(s.dy*(x-s.x))) + math.Abs(float64(s.dx*dy)-float64(s.dy*dx))
		if off < least {
			best, least = s, off
		}
	}
	along := float64(best.dx*(x-best.x)) + float64(best.dy*(y-best.y))
	length := float64(best.dx*dx) + float64(best.dy*dy)
	return coarselyAt(in.inwards(best, along)), coarselyAt(in.inwards(best, along+length))
}
