package templates

import (
	"fmt"
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// largestName is the greatest size of a template's name on it, in points.
const largestName = 26.0

// nameRoom is how wide a name may be, by the distance of its middle to the nearest side.
const nameRoom = 1.6

// Figure is the template as a diagram of true size: cut line, seam line, dots where seams
// begin and end, the arrow along the grain, and its name.
func (t *Template) Figure(top *quilt.Top, cloths *Cloths) *diagram.Figure {
	low, high := bounds(t.Cut)
	f := &diagram.Figure{
		Title: "Template " + t.Name() + ": " + t.Piece(), TrueSize: true, Min: low, Max: high,
		Description: fmt.Sprintf("A %s at true size, right side up, with its cut line, its seam line %s within it, and an arrow along the straight grain.", t.Shape, top.Units.Nearest(top.Seam)),
	}
	add := func(m diagram.Mark) { f.Marks = append(f.Marks, m) }
	if cloth := cloths.area(t); cloth != nil {
		add(diagram.Mark{Area: cloth})
		f.Description += " The print shows through, paler, as it lies on the piece."
	}
	add(diagram.Mark{Area: &diagram.Area{Outline: t.Cut, Clear: true, Edge: diagram.Cut}})
	add(diagram.Mark{Line: &diagram.Line{Points: append(append([]measure.Point(nil), t.Finished...), t.Finished[0]), Stroke: diagram.Sew}})
	for _, p := range t.Finished {
		add(diagram.Mark{Line: &diagram.Line{Points: []measure.Point{p}, Stroke: diagram.Sew, Start: diagram.Dot}})
	}
	add(diagram.Mark{Line: &diagram.Line{Points: t.Grain[:], Stroke: diagram.Grain, Start: diagram.Arrow, End: diagram.Arrow}})
	t.printMarks(add)
	at, room := t.nameplace()
	add(diagram.Mark{Words: &diagram.Words{Text: t.Name(), At: at, Points: min(largestName, room*diagram.TrueScale*0.8), Anchor: diagram.Middle, Bold: true, Room: measure.NM(room), Halo: true}})
	return f
}

// nameplace is where the template's name stands and the room that it has there, in
// nanometres: beside the middle of the grain's arrow, on its wider side.
func (t *Template) nameplace() (measure.Point, float64) {
	outline := make([]xy, len(t.Finished))
	for i, p := range t.Finished {
		outline[i] = xy{float64(p.X), float64(p.Y)}
	}
	a, b := xy{float64(t.Grain[0].X), float64(t.Grain[0].Y)}, xy{float64(t.Grain[1].X), float64(t.Grain[1].Y)}
	along := unitOf(a, b)
	best, most := middleOf(a, b), 0.0
	for _, part := range []float64{0.3, 0.4, 0.5, 0.6, 0.7} {
		on := xy{a.x + (b.x-a.x)*part, a.y + (b.y-a.y)*part}
		for _, aside := range []xy{{along.y, -along.x}, {-along.y, along.x}} {
			reach := rayOut(outline, on, aside)
			at := xy{on.x + aside.x*reach*0.5, on.y + aside.y*reach*0.5}
			if room := roomAt(outline, at, endless); room > most*1.001 {
				best, most = at, room
			}
		}
	}
	return measure.Point{X: measure.NM(math.Round(best.x)), Y: measure.NM(math.Round(best.y))}, max(1, nameRoom*most)
}

// rayOut is how far it is from a place within an outline to its edge.
func rayOut(outline []xy, from, way xy) float64 {
	least := endless
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		side := xy{q.x - p.x, q.y - p.y}
		cross := float64(way.x*side.y) - float64(way.y*side.x)
		if math.Abs(cross) < 1e-9 {
			continue
		}
		if t := (float64((p.x-from.x)*side.y) - float64((p.y-from.y)*side.x)) / cross; t > 0 {
			least = min(least, t)
		}
	}
	if least == endless {
		return 0
	}
	return least
}

// roomAt is the distance from a place to the nearest side of an outline about it, no more
// than a most; 0 outside.
func roomAt(outline []xy, at xy, most float64) float64 {
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		d := unitOf(p, q)
		most = min(most, float64(d.x*(at.y-p.y))-float64(d.y*(at.x-p.x)))
	}
	return max(0, most)
}
