package report

import (
	"fmt"
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/palettes"
)

// Panels of a step's picture: a square each, in units of the figure.
const (
	panel  = 1000 * float64(measure.Millimetre)
	gap    = 0.16 * panel
	header = 0.12 * panel // for a line of words above each
)

// panelAt is the upper left corner of a panel.
func panelAt(column, row int) measure.Vec {
	return measure.Vec{X: float64(column) * (panel + gap), Y: header + float64(row)*(panel+gap+header)}
}

// stepDrawing is a step of a block being drawn.
type stepDrawing struct {
	sketch
	shown  *sewing.Shown
	seam   measure.NM
	column bool
	step   *sewing.Step
	size   string // of the unit, in words
	list   []sewing.ShownPiece
	join   sewing.Join // the join that the picture shows
	unit   []int       // pieces of the unit that the step makes
}

// drawStep is the picture of a step: the parts laid out, laid together and sewn, the wrong
// side with the pressing, and the unit's right side with its size in words.
func (s *sewer) drawStep(block, n int, size string) *diagram.Figure {
	b := &s.Blocks[block]
	step := &b.Steps[n]
	f := &diagram.Figure{Title: fmt.Sprintf("%sblock %s, step %d: %s", SewingPictureTitle, b.Label, n+1, step.Name)}
	shown := s.Shown(block)
	d := &stepDrawing{sketch: sketch{Figure: f, plan: s.Plan, top: s.top}, shown: shown, seam: s.Seam, column: b.Column, step: step, size: size, list: shown.Pieces}
	d.pick(b)
	d.laidOut()
	d.together()
	d.wrongSide()
	d.rightSide()
	if d.differs() {
		d.ends()
	} else {
		d.Panels[1].Note = "No offset: match the trimmed corners at both ends."
	}
	d.framed()
	f.Max = measure.Point{X: measure.NM(3*(panel+gap) - gap), Y: measure.NM(2*(panel+header) + gap + 1.2*header)}
	f.Description = d.described(b, n)
	return f
}

// described is the picture in words.
func (d *stepDrawing) described(b *sewing.Block, step int) string {
	return fmt.Sprintf("Step %d of block %s: the parts of the %s laid out right side up, the two parts laid right sides together with the seam, the wrong side with the pressing direction, and the right side with its unfinished size.", step+1, b.Label, d.step.Name)
}

// shownOfColumn is how many pieces of a column are drawn.
const shownOfColumn = 4

// pick chooses what of the step is shown.
func (d *stepDrawing) pick(b *sewing.Block) {
	joins := d.step.Joins
	if b.Column {
		n := min(len(d.list), shownOfColumn)
		d.join = joins[min(1, len(joins)-1, max(n-2, 0))]
		for i := range n {
			d.unit = append(d.unit, i)
		}
		d.join.A = d.join.A[len(d.join.A)-1:]
		return
	}
	d.join = joins[0]
	last := joins[0].Number
	for _, j := range joins[1:] { // as long as the unit goes on
		if j.MadeA == last {
			last = j.Number
		}
	}
	d.unit = d.shown.Unit(last)
}

// outer is the raw outline of some pieces together, as it is once they are sewn.
func (d *stepDrawing) outer(which []int) []measure.Vec { return vecs(d.shown.Raw(which, true)) }

// panel begins a panel of the step: what is drawn from here on belongs to it.
func (d *stepDrawing) panel(caption string, corner measure.Vec) {
	side := measure.Vec{X: panel, Y: panel}
	d.place = same
	d.Panels = append(d.Panels, diagram.Panel{Caption: caption, First: len(d.Marks), Min: d.at(corner), Max: d.at(corner.Plus(side))})
}

// framed ends the figure: each panel has the marks up to the next, and a frame as high as what it shows.
func (d *stepDrawing) framed() {
	for i := range d.Panels {
		p, end := &d.Panels[i], len(d.Marks)
		if i+1 < len(d.Panels) {
			end = d.Panels[i+1].First
		}
		p.Count = end - p.First
		p.Min, p.Max = extentOf(d.Marks[p.First:end], p.Min, p.Max)
	}
}

// extentOf is the frame of marks: the corners of their areas and lines; as it was where there are none.
func extentOf(marks []diagram.Mark, low, high measure.Point) (least, most measure.Point) {
	var list []measure.Vec
	for _, m := range marks {
		switch {
		case m.Area != nil:
			list = append(list, vecsOf(m.Area.Outline)...)
		case m.Line != nil:
			list = append(list, vecsOf(m.Line.Points)...)
		}
	}
	if len(list) == 0 {
		return low, high
	}
	a, b := box(list)
	return measure.Point{X: rounded(a.X), Y: rounded(a.Y)}, measure.Point{X: rounded(b.X), Y: rounded(b.Y)}
}

// parts is what the step sews together, part by part.
func (d *stepDrawing) parts() [][]int {
	if d.column {
		var list [][]int
		for _, i := range d.unit {
			list = append(list, []int{i})
		}
		return list
	}
	list := [][]int{d.join.A, d.join.B}
	last := d.join.Number
	for _, j := range d.step.Joins {
		if j.MadeA == last && j.Number != last {
			list, last = append(list, j.B), j.Number
		}
	}
	return list
}

// laidOut draws the parts a little apart, right side up, with their allowances.
func (d *stepDrawing) laidOut() {
	corner := panelAt(0, 0)
	d.panel("1  Lay out, right side up", corner)
	middle := centre(d.outer(d.unit))
	parts := d.parts()
	apart := func(which []int) measure.Vec { return centre(d.outer(which)).Minus(middle).Times(0.28) }
	var all []measure.Vec
	for _, which := range parts {
		by := apart(which)
		for _, v := range d.outer(which) {
			all = append(all, v.Plus(by))
		}
	}
	put := fittedIn(all, corner, panel, same)
	for _, which := range parts {
		by := apart(which)
		d.place = func(v measure.Vec) measure.Vec { return put(v.Plus(by)) }
		d.area(d.outer(which), white(), false, diagram.Frame)
		d.pieces(d.list, which, false)
	}
}

func centre(list []measure.Vec) measure.Vec {
	least, most := box(list)
	return least.Plus(most).Times(0.5)
}

// sewnTogether is how the two parts of the shown join lie when they are sewn: turned so that
// the seam runs down the right, A beneath and B folded over on it.
func (d *stepDrawing) sewnTogether() (as func(measure.Vec) measure.Vec, a, b []measure.Vec) {
	from, to := vecOf(d.join.From), vecOf(d.join.To)
	way := to.Minus(from).Unit()
	over := func(v measure.Vec) measure.Vec { return v.Minus(from).Reflected(way).Plus(from) }
	a = d.outer(d.join.A)
	for _, v := range d.outer(d.join.B) {
		b = append(b, over(v))
	}
	// The seam goes downwards on the right: what lies to the left of its way is on the page's
	// right, so the way is turned upwards where A lies to its left.
	as = func(v measure.Vec) measure.Vec {
		v = v.Minus(from)
		return measure.Vec{X: v.Dot(way.Quarter()), Y: -v.Dot(way)}
	}
	return as, a, b
}

// together draws the parts laid right sides together, with the seam.
func (d *stepDrawing) together() {
	corner := panelAt(1, 0)
	d.panel("2  Right sides together; sew", corner)
	as, a, b := d.sewnTogether()
	d.place = fittedIn(append(slices.Clone(a), b...), corner, panel, as)
	d.area(a, d.clothOf(d.join.A), false, diagram.Thin)
	d.pieces(d.list, d.join.A, false)
	d.area(b, d.clothOf(d.join.B), true, diagram.Thin)
	d.seamLine()
	if d.differs() {
		for i, at := range [2]measure.Vec{vecOf(d.join.From), vecOf(d.join.To)} {
			d.words([2]string{"a", "b"}[i], at.Plus(d.outwards().Times(2.2*float64(d.seam))), label{captionPoints, diagram.Middle, 0})
		}
	}
}

// outwards is the way from the seam away from A.
func (d *stepDrawing) outwards() measure.Vec {
	return vecOf(d.join.To).Minus(vecOf(d.join.From)).Unit().Quarter()
}

// clothOf is the colour by which a part is known: that of its last piece's wide end, which
// lies at the seam.
func (d *stepDrawing) clothOf(which []int) palettes.Colour {
	return d.top.Fabrics[d.list[d.shown.At(which, &d.join)].Faces[0].Fabric].Colour
}

// seamLine draws the seam: from raw edge to raw edge, but for ends that are left open.
func (d *stepDrawing) seamLine() {
	from, to := vecOf(d.join.From), vecOf(d.join.To)
	way := to.Minus(from).Unit()
	stroke := diagram.Sew
	ends := [2]measure.Vec{from, to}
	marks := [2]diagram.Ending{}
	for i, e := range d.join.Ends {
		if e.Partial {
			stroke, marks[i] = diagram.Partial, diagram.Dot
			continue
		}
		beyond := way.Times(float64(max(e.Reach[0], e.Reach[1])))
		if i == 0 {
			beyond = beyond.Times(-1)
		}
		ends[i] = ends[i].Plus(beyond.Times(0.6))
	}
	d.line(stroke, marks[0], marks[1], ends[0], ends[1])
}

// wrongSide draws the unit from behind, with an arrow across each seam of the step by which
// its allowance is pressed.
func (d *stepDrawing) wrongSide() {
	corner := panelAt(0, 1)
	caption := "3  Wrong side: press along the arrows"
	if d.pressedBothWays() {
		caption += "; in some blocks, the other way"
	}
	d.panel(caption, corner)
	d.place = fittedIn(d.outer(d.unit), corner, panel, mirrored)
	d.area(d.outer(d.unit), d.clothOf(d.join.A), true, diagram.Frame)
	d.pieces(d.list, d.unit, true)
	for _, j := range d.step.Joins {
		if !d.inUnit(&j) {
			continue
		}
		d.pressArrow(&j, d.shown.ToB(&j))
	}
}

// pressedBothWays says whether a seam of the step is pressed one way in some of the blocks and the other way in others.
func (d *stepDrawing) pressedBothWays() bool {
	if d.column {
		return false
	}
	b := &d.plan.Blocks[d.plan.BlockAt(d.shown.Cell)]
	for _, j := range d.step.Joins {
		first := d.plan.Way(d.shown.Cell, j.Choice)
		for i := range b.Variants {
			if slices.ContainsFunc(b.Variants[i].Cells, func(at sewing.Placed) bool { return d.plan.Way(at.Cell, j.Choice) != first }) {
				return true
			}
		}
	}
	return false
}

// inUnit says whether a join belongs to the unit that is shown.
func (d *stepDrawing) inUnit(j *sewing.Join) bool {
	return slices.Contains(d.unit, j.B[0]) && slices.Contains(d.unit, j.A[len(j.A)-1])
}

// pressArrow draws the arrows of one seam.
func (d *stepDrawing) pressArrow(j *sewing.Join, first bool) {
	from, to := vecOf(j.From), vecOf(j.To)
	parts := [][2]measure.Vec{{from, to}}
	if j.Round {
		parts = d.roundArms(j)
	}
	for _, part := range parts {
		way := part[1].Minus(part[0])
		at := part[0].Plus(way.Times(0.55))
		side := way.Unit().Quarter().Times(panelShare * way.Length())
		if !first {
			side = side.Times(-1)
		}
		d.line(diagram.Pressing, diagram.Plain, diagram.Arrow, at.Minus(side.Times(0.35)), at.Plus(side))
	}
}

// panelShare is how long an arrow is, as part of the seam that it crosses.
const panelShare = 0.16

// roundArms is the parts of a seam that turns round points of the block, each from its point
// outwards.
func (d *stepDrawing) roundArms(j *sewing.Join) [][2]measure.Vec {
	about := vecOf(d.shown.About(j))
	from, to := vecOf(j.From), vecOf(j.To)
	var parts [][2]measure.Vec
	for _, end := range [2]measure.Vec{from, to} {
		if end != about {
			parts = append(parts, [2]measure.Vec{about, end})
		}
	}
	return parts
}

// rightSide draws the unit with its size.
func (d *stepDrawing) rightSide() {
	corner := panelAt(1, 1)
	d.panel("4  Right side", corner)
	d.Panels[len(d.Panels)-1].Note = d.size
	outer := d.outer(d.unit)
	d.place = fittedIn(d.larger(outer), corner, panel, same)
	d.area(outer, white(), false, diagram.Frame)
	d.pieces(d.list, d.unit, false)
	if d.step.Trim != "" && !d.column {
		d.trimLines()
	}
}

// larger is the unit's raw outline before it is trimmed, if it is; else as it is.
func (d *stepDrawing) larger(outer []measure.Vec) []measure.Vec {
	if d.step.Trim == "" || d.column {
		return outer
	}
	return vecs(d.shown.Raw(d.unit, false))
}

// trimLines marks the raw sides where larger pieces are cut to size.
func (d *stepDrawing) trimLines() {
	for _, side := range d.shown.Trims(d.unit) {
		raw, larger := vecs(side[0][:]), vecs(side[1][:])
		d.line(diagram.Trim, diagram.Plain, diagram.Plain, raw[0], raw[1])
		d.line(diagram.Frame, diagram.Plain, diagram.Plain, raw[0], larger[0], larger[1], raw[1])
	}
}
