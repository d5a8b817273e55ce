package templates

import (
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
)

// window is a part of a figure.
type window struct{ min, max measure.Point }

// maxWindows is how many parts of one piece are looked at.
const maxWindows = 4096

// parts are the plates of a piece that is larger than one; parts that show nothing of it are left out.
func (l *plating) parts(p Piece) []Plate {
	f := p.Figure
	columns, rows := tiles(f.Max.X, l.room.X), tiles(f.Max.Y, l.room.Y)
	if columns*rows > maxWindows {
		return make([]Plate, maxWindows) // more than are printed
	}
	var list []Plate
	for row := range rows {
		for column := range columns {
			low := measure.Point{X: measure.NM(column) * (l.room.X - overlap), Y: measure.NM(row) * (l.room.Y - overlap)}
			w := window{low, measure.Point{X: low.X + l.room.X, Y: low.Y + l.room.Y}}
			marks := w.clipped(f)
			if len(marks) == 0 {
				continue
			}
			list = append(list, Plate{Shows: []string{p.Name}, Figure: diagram.Figure{Marks: append(marks, l.register([2]int{column, row}, [2]int{columns, rows})...)}})
		}
	}
	for i := range list {
		list[i].Part, list[i].Parts = i+1, len(list)
	}
	return list
}

// tiles is how many pages a length takes.
func tiles(length, room measure.NM) int {
	n := 1
	for at := room; at < length && n <= maxWindows; at += room - overlap {
		n++
	}
	return n
}

// register is a page's frame and the dotted lines that its neighbours' frames come to lie on.
func (l *plating) register(at, of [2]int) []diagram.Mark {
	x, y := l.room.X, l.room.Y
	marks := []diagram.Mark{{Area: &diagram.Area{Outline: box(measure.Point{}, measure.Point{X: x, Y: y}), Clear: true, Edge: diagram.PartFrame}}}
	dotted := func(from, to measure.Point) {
		marks = append(marks, diagram.Mark{Line: &diagram.Line{Points: []measure.Point{from, to}, Stroke: diagram.NextFrame}})
	}
	if at[0] > 0 {
		dotted(measure.Point{X: overlap}, measure.Point{X: overlap, Y: y})
	}
	if at[0] < of[0]-1 {
		dotted(measure.Point{X: x - overlap}, measure.Point{X: x - overlap, Y: y})
	}
	if at[1] > 0 {
		dotted(measure.Point{Y: overlap}, measure.Point{X: x, Y: overlap})
	}
	if at[1] < of[1]-1 {
		dotted(measure.Point{Y: y - overlap}, measure.Point{X: x, Y: y - overlap})
	}
	return marks
}

// clipped is what a window shows of a figure's lines, moved to the page's corner. Outlines become their sides.
func (w window) clipped(f *diagram.Figure) []diagram.Mark {
	var marks []diagram.Mark
	line := func(from, to measure.Point, like diagram.Line) {
		if seen := w.line(from, to, like); seen != nil {
			marks = append(marks, diagram.Mark{Line: seen})
		}
	}
	for _, m := range f.Marks {
		switch {
		case m.Area != nil && m.Area.Print != nil:
			if seen := w.outline(m.Area.Outline); seen != nil {
				m.Area = &diagram.Area{Outline: seen, Fill: m.Area.Fill, Print: m.Area.Print, Repeat: m.Area.Repeat, Turn: m.Area.Turn}
				marks = append(marks, moved(m, measure.Point{X: -w.min.X, Y: -w.min.Y}))
			}
		case m.Area != nil:
			for i, p := range m.Area.Outline {
				line(p, m.Area.Outline[(i+1)%len(m.Area.Outline)], diagram.Line{Stroke: m.Area.Edge})
			}
		case m.Line != nil && len(m.Line.Points) == 1:
			if w.holds(m.Line.Points[0]) {
				marks = append(marks, moved(m, measure.Point{X: -w.min.X, Y: -w.min.Y}))
			}
		case m.Words != nil:
			if w.inner().holds(m.Words.At) {
				marks = append(marks, moved(m, measure.Point{X: -w.min.X, Y: -w.min.Y}))
			}
		case m.Line != nil:
			last := len(m.Line.Points) - 1
			for i := 1; i <= last; i++ {
				like := diagram.Line{Stroke: m.Line.Stroke}
				if i == 1 {
					like.Start = m.Line.Start
				}
				if i == last {
					like.End = m.Line.End
				}
				line(m.Line.Points[i-1], m.Line.Points[i], like)
			}
		}
	}
	return marks
}

// line is what a window shows of a line, moved to the page's corner: plain where it is cut off; nil for nothing.
func (w window) line(from, to measure.Point, like diagram.Line) *diagram.Line {
	a, b, ok := w.stretch(from, to)
	if !ok {
		return nil
	}
	like.Points = []measure.Point{w.at(a), w.at(b)}
	if a != from {
		like.Start = diagram.Plain
	}
	if b != to {
		like.End = diagram.Plain
	}
	return &like
}

// inner is the window without a rim, in which words have room.
func (w window) inner() window {
	return window{measure.Point{X: w.min.X + 2*overlap, Y: w.min.Y + overlap}, measure.Point{X: w.max.X - 2*overlap, Y: w.max.Y - overlap}}
}

func (w window) at(p measure.Point) measure.Point {
	return measure.Point{X: p.X - w.min.X, Y: p.Y - w.min.Y}
}

func (w window) holds(p measure.Point) bool {
	return w.min.X <= p.X && p.X <= w.max.X && w.min.Y <= p.Y && p.Y <= w.max.Y
}

// stretch is the part of a line that lies in a window (after Liang and Barsky, A new concept and method for line clipping,
// 1984); from memory.
func (w window) stretch(from, to measure.Point) (a, b measure.Point, ok bool) {
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	enter, leave := 0.0, 1.0
	for _, side := range [4][2]float64{
		{-dx, float64(from.X - w.min.X)}, {dx, float64(w.max.X - from.X)}, {-dy, float64(from.Y - w.min.Y)}, {dy, float64(w.max.Y - from.Y)},
	} {
		switch p, q := side[0], side[1]; {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			enter = max(enter, q/p)
		case p > 0:
			leave = min(leave, q/p)
		}
	}
	if enter >= leave {
		return a, b, false
	}
	on := func(t float64) measure.Point {
		return measure.Point{X: from.X + measure.NM(math.Round(float64(t*dx))), Y: from.Y + measure.NM(math.Round(float64(t*dy)))}
	}
	return on(enter), on(leave), true
}
