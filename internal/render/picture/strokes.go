package picture

import (
	"math"

	"eighthturn/svgout"
)

// filledOf are the outlines of paths that are filled; all go clockwise.
func filledOf(list []path) [][]xy {
	var outlines [][]xy
	for _, p := range list {
		outlines = append(outlines, clockwise(p.points))
	}
	return outlines
}

// clockwise is an outline turned to go clockwise on screen.
func clockwise(points []xy) []xy {
	area := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		area += float64(p.x*q.y) - float64(q.x*p.y)
	}
	if area >= 0 {
		return points
	}
	list := make([]xy, len(points))
	for i, p := range points {
		list[len(points)-1-i] = p
	}
	return list
}

// stroked are the outlines of paths' lines: a rectangle for each stretch, and a disc for each
// round end or corner.
func stroked(paths []path, s svgout.Style) [][]xy {
	var list [][]xy
	half := s.Width / 2
	for _, p := range paths {
		for _, stretch := range dashed(p, s.Dash) {
			list = appendStretch(list, stretch, half)
			if s.Caps {
				list = append(list, disc(stretch[0], half), disc(stretch[1], half))
			}
		}
	}
	return list
}

// appendStretch appends a rectangle along a stretch of a line.
func appendStretch(list [][]xy, s [2]xy, half float64) [][]xy {
	dx, dy := s[1].x-s[0].x, s[1].y-s[0].y
	long := math.Hypot(dx, dy)
	if long == 0 {
		return list
	}
	nx, ny := float64(-dy*half)/long, float64(dx*half)/long
	return append(list, clockwise([]xy{
		{s[0].x + nx, s[0].y + ny}, {s[0].x - nx, s[0].y - ny}, {s[1].x - nx, s[1].y - ny}, {s[1].x + nx, s[1].y + ny},
	}))
}

// discCorners is how many corners stand for a round end.
const discCorners = 16

func disc(at xy, radius float64) []xy {
	list := make([]xy, discCorners)
	for i := range list {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / discCorners)
		list[i] = xy{at.x + float64(radius*cos), at.y + float64(radius*sin)}
	}
	return list
}

// maxDashes is the most dashes of one line.
const maxDashes = 100_000

// dashed are the stretches of a path that are drawn, with gaps as long as the dashes; a dash of
// 0 is a solid line. Every stretch begins with a dash.
func dashed(p path, dash float64) [][2]xy {
	var list [][2]xy
	for i := range p.points {
		if i+1 == len(p.points) && (!p.closed || i == 0) {
			break
		}
		a, b := p.points[i], p.points[(i+1)%len(p.points)]
		if dash > 0 {
			list = appendDashes(list, a, b, dash)
		} else {
			list = append(list, [2]xy{a, b})
		}
	}
	return list
}

func appendDashes(list [][2]xy, a, b xy, dash float64) [][2]xy {
	long := math.Hypot(b.x-a.x, b.y-a.y)
	at := func(d float64) xy {
		part := min(d, long) / long
		return xy{a.x + float64((b.x-a.x)*part), a.y + float64((b.y-a.y)*part)}
	}
	for d, n := 0.0, 0; d < long && n < maxDashes; n++ {
		list = append(list, [2]xy{at(d), at(d + dash)})
		d += 2 * dash
	}
	return list
}
