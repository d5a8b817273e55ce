package paper

import "math"

// outlines are the outlines that a mark paints, its fill before its line; all go clockwise
// but for the holes of letters.
func (g *glyphs) outlines(m *mark) []layer {
	var list []layer
	if m.words != nil {
		if m.fill != nil {
			list = append(list, layer{g.text(m.words), *m.fill, 1})
		}
		return list
	}
	if m.fill != nil {
		var outlines [][]xy
		for _, p := range m.paths {
			outlines = append(outlines, clockwise(p.points))
		}
		list = append(list, layer{outlines, *m.fill, 1})
	}
	if m.line != nil {
		list = append(list, layer{m.stroked(), *m.line, m.opacity})
	}
	return list
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

// stroked are the outlines of a mark's lines: a rectangle for each stretch, and a disc for
// each round end or corner.
func (m *mark) stroked() [][]xy {
	var list [][]xy
	half := m.width / 2
	for _, p := range m.paths {
		for _, stretch := range m.dashed(p) {
			list = appendStretch(list, stretch, half)
			if m.round {
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

// mostDashes is the most dashes of one line.
const mostDashes = 100_000

// dashed are the stretches of a path that are drawn. Every path begins with a dash.
func (m *mark) dashed(p path) [][2]xy {
	var list [][2]xy
	dashes := m.dashes
	if len(dashes)%2 == 1 { // one number is dash and gap alike
		dashes = append(append([]float64(nil), dashes...), dashes...)
	}
	for i := range p.points {
		if i+1 == len(p.points) && (!p.closed || i == 0) {
			break
		}
		a, b := p.points[i], p.points[(i+1)%len(p.points)]
		if len(dashes) == 0 {
			list = append(list, [2]xy{a, b})
			continue
		}
		list = appendDashes(list, a, b, dashes)
	}
	return list
}

func appendDashes(list [][2]xy, a, b xy, dashes []float64) [][2]xy {
	long := math.Hypot(b.x-a.x, b.y-a.y)
	at := func(d float64) xy {
		part := min(d, long) / long
		return xy{a.x + float64((b.x-a.x)*part), a.y + float64((b.y-a.y)*part)}
	}
	for d, n := 0.0, 0; d < long && n < mostDashes; n++ {
		end := d + dashes[n%len(dashes)]
		if n%2 == 0 {
			list = append(list, [2]xy{at(d), at(end)})
		}
		d = end
	}
	return list
}
