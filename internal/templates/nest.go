package templates

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
)

// shape is the convex outline of all that is drawn of a piece, as corners one after the other.
type shape []measure.Vec

// shapeOf is the shape of a piece put on paper; with words or broad lines beyond its outlines, the rectangle that it takes.
func shapeOf(p Piece) shape {
	by, w, h := placed(p)
	var points []measure.Vec
	for _, m := range p.Figure.Marks {
		var list []measure.Point
		switch {
		case m.Area != nil:
			list = m.Area.Outline
		case m.Line != nil:
			list = m.Line.Points
		}
		for _, q := range list {
			points = append(points, measure.Vec{X: float64(q.X + by.X), Y: float64(q.Y + by.Y)})
		}
	}
	hull := convex(points)
	low, high := hull.bounds()
	if most := float64(plateGap) / 2; len(hull) < 3 || low.X > most || low.Y > most || high.X < float64(w)-most || high.Y < float64(h)-most {
		return rectangle(0, 0, w, h)
	}
	return hull
}

func rectangle(x, y, w, h measure.NM) shape {
	left, top, right, foot := float64(x), float64(y), float64(x+w), float64(y+h)
	return shape{{X: left, Y: top}, {X: right, Y: top}, {X: right, Y: foot}, {X: left, Y: foot}}
}

// convex is the convex hull of points, by Andrew's monotone chain (A. M. Andrew, Another efficient algorithm for convex hulls in
// two dimensions, 1979; from memory).
func convex(points []measure.Vec) shape {
	points = slices.Clone(points)
	slices.SortFunc(points, func(a, b measure.Vec) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	if len(points) < 3 {
		return points
	}
	var hull shape
	for range 2 {
		from := len(hull)
		for _, p := range points {
			for len(hull) >= from+2 && turn(hull[len(hull)-2], hull[len(hull)-1], p) <= 0 {
				hull = hull[:len(hull)-1]
			}
			hull = append(hull, p)
		}
		hull = hull[:len(hull)-1]
		slices.Reverse(points)
	}
	return hull
}

// turn is positive where the way over three points bends one way, negative where it bends the other.
func turn(a, b, c measure.Vec) float64 {
	return float64((b.X-a.X)*(c.Y-a.Y)) - float64((b.Y-a.Y)*(c.X-a.X))
}

func (s shape) bounds() (low, high measure.Vec) {
	low, high = measure.Vec{X: endless, Y: endless}, measure.Vec{X: -endless, Y: -endless}
	for _, p := range s {
		low, high = measure.Vec{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, measure.Vec{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}

func (s shape) moved(x, y measure.NM) shape {
	out := make(shape, len(s))
	for i, p := range s {
		out[i] = measure.Vec{X: p.X + float64(x), Y: p.Y + float64(y)}
	}
	return out
}

// clear says whether two shapes are so far apart, by the normals of their sides (the separating axis theorem).
func (s shape) clear(other shape, gap float64) bool {
	return s.beside(other, gap) || other.beside(s, gap)
}

// beside says whether the other shape lies beyond one of the sides.
func (s shape) beside(other shape, gap float64) bool {
	for i, a := range s {
		b := s[(i+1)%len(s)]
		x, y := a.Y-b.Y, b.X-a.X // the normal, one way or the other
		long := math.Hypot(x, y) // 0 where corners fall on one another, which parts nothing
		own, others := s.along(x/long, y/long), other.along(x/long, y/long)
		if others[0]-own[1] >= gap || own[0]-others[1] >= gap {
			return true
		}
	}
	return false
}

// along is how far a shape reaches along a direction.
func (s shape) along(x, y float64) [2]float64 {
	reach := [2]float64{endless, -endless}
	for _, p := range s {
		at := float64(p.X*x) + float64(p.Y*y)
		reach = [2]float64{min(reach[0], at), max(reach[1], at)}
	}
	return reach
}

// nestStep is how far the places that are tried for a piece are apart.
const nestStep = measure.Inch / 8

// maxNested is how many pieces are tried in all places of the plates before them.
const maxNested = 24

// nest puts a piece on one of the last plates of whole pieces, or on a new one, between what stands there, with the test squares
// where they then have room; false where it finds no place. New says which of the two is tried.
func (l *plating) nest(p Piece, fresh bool) bool {
	if fresh {
		l.plates = append(l.plates, Plate{})
		if l.nestOn(len(l.plates)-1, p) {
			return true
		}
		l.plates = l.plates[:len(l.plates)-1]
		return false
	}
	for i := len(l.plates) - 1; i >= max(0, len(l.plates)-2); i-- {
		if l.plates[i].Parts == 0 && l.nestOn(i, p) {
			return true
		}
	}
	return false
}

func (l *plating) nestOn(plate int, p Piece) bool {
	by, w, h := placed(p)
	if w > l.whole.X || h > l.whole.Y {
		return false
	}
	own := shapeOf(p)
	for _, squares := range squarePlaces(l.whole) {
		taken := append(slices.Clone(l.shapes[plate]), squares.shapes()...)
		if !squaresClear(taken) {
			continue
		}
		for _, y := range steps(l.whole.Y - h) {
			for _, x := range steps(l.whole.X - w) {
				at := own.moved(x, y)
				if slices.ContainsFunc(taken, func(s shape) bool { return !at.clear(s, float64(plateGap)) }) {
					continue
				}
				l.plates[plate].add(p, measure.Point{X: x + by.X, Y: y + by.Y})
				l.shapes[plate] = append(l.shapes[plate], at)
				l.squares[plate] = squares
				l.close(plate)
				return true
			}
		}
	}
	return false
}

// squaresClear says whether the last two of some shapes, the test squares, are clear of the others.
func squaresClear(list []shape) bool {
	n := len(list) - 2
	for _, square := range list[n:] {
		for _, s := range list[:n] {
			if !square.clear(s, float64(plateGap)) {
				return false
			}
		}
	}
	return true
}

// steps are places from 0 to a last one.
func steps(last measure.NM) []measure.NM {
	var list []measure.NM
	for at := measure.NM(0); at < last; at += nestStep {
		list = append(list, at)
	}
	return append(list, last)
}

// twoSquares are the places of the test squares: that of the inch and that of the centimeters.
type twoSquares [2]measure.Point

func (s twoSquares) shapes() []shape {
	return []shape{rectangle(s[0].X, s[0].Y, inchSquare, inchSquare), rectangle(s[1].X, s[1].Y, centimetreSquare, centimetreSquare)}
}

func (s twoSquares) marks() []diagram.Mark {
	return slices.Concat(testSquare(s[0], inchSquare, "1 inch"), testSquare(s[1], centimetreSquare, threeCentimetres))
}

// squarePlaces are where the test squares of a plate may stand: side by side or one above the other in each corner, or in two
// corners.
func squarePlaces(room measure.Point) []twoSquares {
	const gap, rim = measure.Inch / 4, measure.Inch / 20
	left, right := measure.NM(rim), func(side measure.NM) measure.NM { return room.X - rim - side }
	head, foot := measure.NM(rim), func(side measure.NM) measure.NM { return room.Y - rim - side }
	column := room.X - 5*measure.Inch/4
	return []twoSquares{
		squaresAtFoot(room), squaresAtSide(room),
		{{X: right(centimetreSquare) - gap - inchSquare, Y: foot(inchSquare)}, {X: right(centimetreSquare), Y: foot(centimetreSquare)}},
		{{X: column, Y: foot(centimetreSquare) - gap - inchSquare}, {X: column, Y: foot(centimetreSquare)}},
		{{X: left, Y: head}, {X: left + inchSquare + gap, Y: head}},
		{{X: right(centimetreSquare) - gap - inchSquare, Y: head}, {X: right(centimetreSquare), Y: head}},
		{{X: left, Y: head}, {X: left, Y: head + inchSquare + gap}},
		{{X: left, Y: foot(centimetreSquare) - gap - inchSquare}, {X: left, Y: foot(centimetreSquare)}},
		{{X: left, Y: head}, {X: right(centimetreSquare), Y: head}},
		{{X: left, Y: foot(inchSquare)}, {X: right(centimetreSquare), Y: foot(centimetreSquare)}},
		{{X: right(inchSquare), Y: head}, {X: right(centimetreSquare), Y: foot(centimetreSquare)}},
	}
}
