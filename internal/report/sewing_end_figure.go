package report

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// differs says whether one part's raw corner leads the other's at an end of the seam.
func (d *stepDrawing) differs() bool {
	for _, e := range d.join.Ends {
		if e.Lead != 0 || e.LeadBlunt != 0 || e.Blunted[0] || e.Blunted[1] {
			return true
		}
	}
	return false
}

// ends draws the two ends of the seam larger, with the offset of the raw corners.
func (d *stepDrawing) ends() {
	for i := range d.join.Ends {
		corner := panelAt(2, i)
		d.panel([2]string{"End a", "End b"}[i]+", enlarged: "+d.leadText(&d.join.Ends[i]), corner)
		d.end(i, corner)
	}
}

// leadText says by how much one part leads.
func (d *stepDrawing) leadText(e *sewing.End) string {
	lead := e.LeadBlunt
	if lead == 0 {
		return "the corners match"
	}
	return "offset " + d.plan.Units.Offset(max(lead, -lead))
}

// end draws one end of the seam.
func (d *stepDrawing) end(i int, corner measure.Vec) {
	e := &d.join.Ends[i]
	as, a, b := d.sewnTogether()
	at := [2]measure.Vec{vecOf(d.join.From), vecOf(d.join.To)}[i]
	half := 1.25 * float64(max(e.Reach[0], e.Reach[1], d.seam*2))
	window := []measure.Vec{{X: -half, Y: -half}, {X: half, Y: -half}, {X: half, Y: half}, {X: -half, Y: half}}
	middle := as(at)
	for n := range window {
		window[n] = window[n].Plus(middle)
	}
	put := fittedIn(window, corner, panel, same)
	d.place = put
	turn := func(list []measure.Vec) []measure.Vec {
		out := make([]measure.Vec, len(list))
		for n, v := range list {
			out[n] = as(v)
		}
		return clippedTo(out, middle, half)
	}
	d.area(turn(a), d.clothOf(d.join.A), false, diagram.Thin)
	d.area(turn(b), d.clothOf(d.join.B), true, diagram.Thin)
	d.hollow(window, diagram.Window)
	d.tipLines(i, as, [2][]measure.Vec{a, b}, middle, half)
	d.endMarks(i, as, middle, half)
}

// endMarks draws the seam line and the measure between the raw corners; how much it is stands above the panel.
func (d *stepDrawing) endMarks(i int, as func(measure.Vec) measure.Vec, middle measure.Vec, half float64) {
	e := &d.join.Ends[i]
	way := as(vecOf(d.join.To)).Minus(as(vecOf(d.join.From))).Unit()
	if i == 0 {
		way = way.Times(-1)
	}
	stroke, stop := diagram.Sew, middle.Plus(way.Times(half*0.8))
	ending := diagram.Plain
	if e.Partial {
		stroke, stop, ending = diagram.Partial, middle, diagram.Dot
	}
	d.line(stroke, diagram.Plain, ending, middle.Minus(way.Times(half)), stop)
	edge := measure.Vec{X: float64(d.seam), Y: 0} // the raw edges lie a seam allowance to the right
	a, b := middle.Plus(edge).Plus(way.Times(float64(reachOf(e, 0, d.seam)))), middle.Plus(edge).Plus(way.Times(float64(reachOf(e, 1, d.seam))))
	if a == b {
		return
	}
	out := measure.Vec{X: half * 0.13, Y: 0}
	d.line(diagram.Dimension, diagram.Bar, diagram.Bar, a.Plus(out), b.Plus(out))
	d.line(diagram.Dimension, diagram.Plain, diagram.Plain, a, a.Plus(out.Times(1.3)))
	d.line(diagram.Dimension, diagram.Plain, diagram.Plain, b, b.Plus(out.Times(1.3)))
}

// tipLines marks where sharp corners are cut off before they are sewn: flat, a seam allowance
// beyond the finished point.
func (d *stepDrawing) tipLines(i int, as func(measure.Vec) measure.Vec, lists [2][]measure.Vec, middle measure.Vec, half float64) {
	for part, list := range lists {
		if !d.join.Ends[i].Blunted[part] {
			continue
		}
		tip := list[0]
		for _, v := range list { // the raw corner that belongs to this end of the seam
			if as(v).Minus(middle).Length() < as(tip).Minus(middle).Length() {
				tip = v
			}
		}
		over := as(tip).Minus(middle).Unit()
		at := middle.Plus(over.Times(float64(d.seam)))
		d.line(diagram.Trim, diagram.Plain, diagram.Plain, at.Minus(over.Quarter().Times(half*0.45)), at.Plus(over.Quarter().Times(half*0.45)))
	}
}

// reachOf is how far a part's raw corner stands out once it is trimmed.
func reachOf(e *sewing.End, part int, seam measure.NM) measure.NM {
	if e.Blunted[part] {
		return sewing.ReachBlunt(e.Degrees[part], seam)
	}
	return e.Reach[part]
}
