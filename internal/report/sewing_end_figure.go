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
		d.caption([2]string{"a", "b"}[i]+", enlarged: "+d.leadText(&d.join.Ends[i]), corner)
		d.end(i, corner)
	}
}

// leadText says by how much one part leads.
func (d *stepDrawing) leadText(e *sewing.End) string {
	lead := e.LeadBlunt
	if lead == 0 {
		return "the corners lie on each other"
	}
	return "offset " + d.plan.Units.Nearest(max(lead, -lead))
}

// end draws one end of the seam.
func (d *stepDrawing) end(i int, corner vec) {
	e := &d.join.Ends[i]
	as, a, b := d.sewnTogether()
	at := [2]vec{vecOf(d.join.From), vecOf(d.join.To)}[i]
	half := 1.25 * float64(max(e.Reach[0], e.Reach[1], d.seam*2))
	window := []vec{{-half, -half}, {half, -half}, {half, half}, {-half, half}}
	middle := as(at)
	for n := range window {
		window[n] = window[n].plus(middle)
	}
	put := fittedIn(window, corner, panel, same)
	d.place = put
	turn := func(list []vec) []vec {
		out := make([]vec, len(list))
		for n, v := range list {
			out[n] = as(v)
		}
		return clippedTo(out, middle, half)
	}
	d.area(turn(a), d.clothOf(d.join.A), false, diagram.Thin)
	d.area(turn(b), d.clothOf(d.join.B), true, diagram.Thin)
	d.hollow(window, diagram.Frame)
	d.tipLines(i, as, [2][]vec{a, b}, middle, half)
	d.endMarks(i, as, middle, half)
}

// endMarks draws the seam line and the measure between the raw corners.
func (d *stepDrawing) endMarks(i int, as func(vec) vec, middle vec, half float64) {
	e := &d.join.Ends[i]
	way := as(vecOf(d.join.To)).minus(as(vecOf(d.join.From))).unit()
	if i == 0 {
		way = way.times(-1)
	}
	stroke, stop := diagram.Sew, middle.plus(way.times(half*0.8))
	ending := diagram.Plain
	if e.Partial {
		stroke, stop, ending = diagram.Partial, middle, diagram.Dot
	}
	d.line(stroke, diagram.Plain, ending, middle.minus(way.times(half)), stop)
	edge := vec{float64(d.seam), 0} // the raw edges lie a seam allowance to the right
	a, b := middle.plus(edge).plus(way.times(float64(reachOf(e, 0, d.seam)))), middle.plus(edge).plus(way.times(float64(reachOf(e, 1, d.seam))))
	if a == b {
		return
	}
	out := vec{half * 0.13, 0}
	d.line(diagram.Dimension, diagram.Bar, diagram.Bar, a.plus(out), b.plus(out))
	d.line(diagram.Dimension, diagram.Plain, diagram.Plain, a, a.plus(out.times(1.3)))
	d.line(diagram.Dimension, diagram.Plain, diagram.Plain, b, b.plus(out.times(1.3)))
	text := d.plan.Units.Nearest(max(e.LeadBlunt, -e.LeadBlunt))
	d.words(text, a.plus(b).times(0.5).plus(out.times(1.5)), label{dimPoints, diagram.Start, measure.NM(panel * 0.34)})
}

// tipLines marks where sharp corners are cut off before they are sewn: flat, a seam allowance
// beyond the finished point.
func (d *stepDrawing) tipLines(i int, as func(vec) vec, lists [2][]vec, middle vec, half float64) {
	for part, list := range lists {
		if !d.join.Ends[i].Blunted[part] {
			continue
		}
		tip := list[0]
		for _, v := range list { // the raw corner that belongs to this end of the seam
			if as(v).minus(middle).length() < as(tip).minus(middle).length() {
				tip = v
			}
		}
		over := as(tip).minus(middle).unit()
		at := middle.plus(over.times(float64(d.seam)))
		d.line(diagram.Trim, diagram.Plain, diagram.Plain, at.minus(over.quarter().times(half*0.45)), at.plus(over.quarter().times(half*0.45)))
	}
}

// reachOf is how far a part's raw corner stands out once it is trimmed.
func reachOf(e *sewing.End, part int, seam measure.NM) measure.NM {
	if e.Blunted[part] {
		return sewing.ReachBlunt(e.Degrees[part], seam)
	}
	return e.Reach[part]
}
