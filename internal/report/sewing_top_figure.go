package report

import (
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// How much of a top its picture shows: up to so many patches their faces, and up to so many
// parts their labels.
const (
	maxFaces  = 6000
	maxLabels = 500
)

// drawTop is the pictures of how blocks, sashes and borders are sewn together.
func (s *sewer) drawTop() []*diagram.Figure {
	list := []*diagram.Figure{s.drawLines(s.wholeGrid())}
	if len(s.top.CutFacts.Borders) > 0 {
		list = append(list, s.drawBorders())
	}
	return list
}

// topDrawing is the top being drawn, its lines a little apart.
type topDrawing struct {
	sketch
	lines  []sewing.Line
	apart  measure.NM
	marked bool   // some block is marked at its top
	part   Window // of the grid that is shown
	whole  bool   // it is all of the grid
}

// drawLines is the rows, or columns, of a part of the grid, a little apart, with what stands in each place, how
// it is turned, and which way the seams between the blocks are pressed.
func (s *sewer) drawLines(part Window) *diagram.Figure {
	what := "rows"
	if s.Assembly.ByColumns {
		what = "columns"
	}
	title := "the blocks in " + what
	if s.Assembly.ByColumns && !slices.ContainsFunc(s.Blocks, func(b sewing.Block) bool { return !b.Column }) {
		title = "the columns together"
	}
	f := &diagram.Figure{Title: SewingPictureTitle + title}
	f.Description = "All blocks in place, the " + what + " slightly apart. The white triangle in each block points to the top of its picture; curved arrows show which way to spin the seams at the center, straight arrows which way to press the others."
	d := &topDrawing{sketch: sketch{Figure: f, plan: s.Plan, top: s.top, place: same}, lines: s.Lines(), apart: s.apart(), part: part, whole: part == s.wholeGrid()}
	if !d.whole {
		d.keepPart()
		f.Title += ": " + part.String()
	}
	for i := range d.lines {
		d.row(i)
	}
	d.place = same
	if !d.whole {
		d.around()
		d.columnNumbers()
		return f
	}
	if !d.marked {
		return d.framed()
	}
	f.Title += "; white triangles point to the top of each block's picture"
	return d.framed()
}

// framed is the figure with its frame.
func (d *topDrawing) framed() *diagram.Figure {
	field, half := d.top.Field, d.plan.SideFinished/2
	wider := measure.NM(len(d.lines)-1) * d.apart
	d.Min, d.Max = measure.Point{X: field.Min.X - half, Y: field.Min.Y - half}, measure.Point{X: field.Max.X, Y: field.Max.Y + wider}
	if d.plan.Assembly.ByColumns {
		d.Max = measure.Point{X: field.Max.X + wider, Y: field.Max.Y}
	}
	return d.Figure
}

// row draws one line, moved away from the one before it.
func (d *topDrawing) row(n int) {
	by := measure.Vec{X: 0, Y: float64(measure.NM(n) * d.apart)}
	if d.plan.Assembly.ByColumns {
		by = measure.Vec{X: by.Y, Y: 0}
	}
	d.place = func(v measure.Vec) measure.Vec { return v.Plus(by) }
	c := &d.lines[n]
	for i := range c.Tiles {
		d.tile(&c.Tiles[i])
	}
	for i := range c.Tiles {
		if c.Tiles[i].Seam < 0 {
			continue
		}
		d.pressed(c.Tiles[i].Seam, 0.5, 0.12*float64(d.plan.SideFinished))
		if len(d.plan.Assembly.Parts) > maxLabels {
			break // the others are pressed the same way
		}
	}
	if c.Number > 0 && len(c.Tiles) > 0 && len(d.plan.Assembly.Parts) <= maxLabels {
		d.lineNumber(c)
	}
}

func (d *topDrawing) lineNumber(c *sewing.Line) {
	at, name := vecOf(c.Tiles[0].At.Min), fmt.Sprintf("row %d", c.Number)
	if !d.whole {
		d.partLineNumber(c)
		return
	}
	side := float64(d.plan.SideFinished)
	at = measure.Vec{X: float64(d.top.Field.Min.X) - 0.08*side, Y: at.Y + side/2}
	if d.plan.Assembly.ByColumns {
		at, name = measure.Vec{X: vecOf(c.Tiles[0].At.Min).X + side/2, Y: float64(d.top.Field.Min.Y) - 0.2*side}, fmt.Sprintf("%d", c.Number)
		d.optional(name, at, label{dimPoints, diagram.Middle, measure.NM(side)})
		return
	}
	d.optional(name, at, label{dimPoints, diagram.End, 0})
	d.Marks[len(d.Marks)-1].Words.Across = measure.NM(side)
}

// tile draws a block or a part of the sashes.
func (d *topDrawing) tile(t *sewing.Tile) {
	part := &d.plan.Assembly.Parts[t.Part]
	switch {
	case !d.whole && part.Cell < 0:
		d.areaInPart(t)
	case len(d.top.Patches) <= maxFaces:
		for i := range part.Patches {
			d.patch(part.First + i)
		}
	default:
		d.area(rectOf(t.At), d.clothAt(part.First), false, diagram.Thin)
	}
	if part.Cell >= 0 && len(d.plan.Assembly.Parts) <= maxLabels {
		d.label(part.Cell, t.At)
	}
}

// clothAt is the colour of a patch's first face.
func (d *sketch) clothAt(patch int) palettes.Colour {
	return d.top.Fabrics[d.top.Faces[d.top.Patches[patch].First].Fabric].Colour
}

func rectOf(r quilt.Rect) []measure.Vec {
	a, b := vecOf(r.Min), vecOf(r.Max)
	return []measure.Vec{a, {X: b.X, Y: a.Y}, b, {X: a.X, Y: b.Y}}
}

// patch draws a patch by its faces.
func (d *sketch) patch(n int) {
	t := d.top
	d.lit = []int{n}
	for f := range t.Patches[n].Count {
		face := &t.Faces[t.Patches[n].First+f]
		d.area(vecsOf(face.Outline), t.Fabrics[face.Fabric].Colour, false, diagram.Thin)
	}
	d.lit = nil
}

// label writes a block's label in its place, and an arrow to the top of its picture.
func (d *topDrawing) label(cell int, at quilt.Rect) {
	b := &d.plan.Blocks[d.plan.BlockAt(cell)]
	middle := vecOf(at.Min).Plus(vecOf(at.Max)).Times(0.5)
	side := float64(d.plan.SideFinished)
	if HasArrow(b) {
		d.topMark(middle, d.plan.Turns(cell), side)
	}
	d.pressedInside(cell, middle, side)
	name := d.plan.CellName(cell)
	if !d.whole {
		name = b.Label // what it is made of is told by the layout
	}
	d.optional(name, middle.Plus(measure.Vec{X: -0.31 * side, Y: 0.34 * side}), label{dimPoints, diagram.Middle, measure.NM(RowsLabelShare * side)})
}

// optional writes words that are left out where they have too little room.
func (d *topDrawing) optional(text string, at measure.Vec, l label) {
	d.words(text, at, l)
	words := d.Marks[len(d.Marks)-1].Words
	words.Optional, words.Plate, words.Halo = true, true, false
}

// topMark is a small triangle that points to the top of a block's picture.
func (d *topDrawing) topMark(middle measure.Vec, turns int, side float64) {
	up := measure.Vec{X: 0, Y: -1}
	for range turns {
		up = up.Quarter()
	}
	tip, foot := middle.Plus(up.Times(0.35*side)), middle.Plus(up.Times(0.24*side))
	across := up.Quarter().Times(0.07 * side)
	d.marked = true
	d.area([]measure.Vec{tip, foot.Plus(across), foot.Minus(across)}, white(), false, diagram.Thin)
}

// pressedInside draws how the seams within a block are pressed: a bent arrow the way in which they are spun at its center,
// straight ones across the others.
func (d *topDrawing) pressedInside(cell int, middle measure.Vec, side float64) {
	b := &d.plan.Blocks[d.plan.BlockAt(cell)]
	for group := range b.Pressings {
		first := d.plan.Way(cell, group) == 0
		if b.Pressings[group].Round && b.Spins() {
			d.bentArrow(middle, 0.17*side, first)
			continue
		}
		if b.Column {
			d.arrow(middle.Plus(measure.Vec{X: 0.3 * side, Y: 0}), measure.Vec{X: 0, Y: 0.12 * side}, first)
			continue
		}
		for _, step := range b.Steps {
			for i := range step.Joins {
				if j := &step.Joins[i]; j.Choice == group {
					d.joinArrow(cell, b, j)
				}
			}
		}
	}
}

// joinArrow draws the arrow across one seam of a block. Seams that turn round a point are pressed clockwise as they run from it.
func (d *topDrawing) joinArrow(cell int, b *sewing.Block, j *sewing.Join) {
	side := float64(d.plan.SideFinished)
	from, to := vecOf(d.plan.InBlock(cell, j.From)), vecOf(d.plan.InBlock(cell, j.To))
	if j.Round && slices.ContainsFunc(b.Rounds, func(r sewing.Round) bool { return r.At == j.To }) {
		from, to = to, from
	}
	place := 0.5
	if to.Minus(from).Length() > side {
		place = 0.3 // clear of the middle
	}
	d.arrow(from.Plus(to.Minus(from).Times(place)), to.Minus(from).Unit().Quarter().Times(0.09*side), d.plan.Way(cell, j.Choice) == 0)
}

// arrow draws a short arrow along a way, or against it.
func (d *sketch) arrow(at, way measure.Vec, along bool) {
	if !along {
		way = way.Times(-1)
	}
	d.line(diagram.Pressing, diagram.Plain, diagram.Arrow, at.Minus(way), at.Plus(way))
}

// bentArrow draws an arrow most of the way round a point.
func (d *sketch) bentArrow(middle measure.Vec, radius float64, clockwise bool) {
	var points []measure.Vec
	for i := range 13 {
		degrees := float64(i)*20 - 60
		if i == 12 {
			degrees += 35 // the last stretch is long enough for a head
		}
		angle := degrees * math.Pi / 180
		v := measure.Vec{X: math.Cos(angle), Y: math.Sin(angle)}.Times(radius)
		if !clockwise {
			v.X = -v.X
		}
		points = append(points, middle.Plus(v))
	}
	d.line(diagram.Pressing, diagram.Plain, diagram.Arrow, points...)
}

// pressed draws the arrow by which a seam's allowance is pressed, so far along the seam.
func (d *sketch) pressed(seam int, along, half float64) {
	s := &d.plan.Assembly.Seams[seam]
	from, to := vecOf(s.From), vecOf(s.To)
	at := from.Plus(to.Minus(from).Times(along))
	side := to.Minus(from).Unit().Quarter().Times(half)
	if !s.Press {
		side = side.Times(-1)
	}
	d.line(diagram.Pressing, diagram.Plain, diagram.Arrow, at.Minus(side.Times(0.4)), at.Plus(side))
}

// asideIn is a place in a strip between two corners, a quarter of its length from one end: clear of the arrows near its middle.
func asideIn(a, b measure.Vec) measure.Vec {
	at, wide, high := a.Plus(b).Times(0.5), math.Abs(b.X-a.X), math.Abs(b.Y-a.Y)
	if wide > high {
		return measure.Vec{X: at.X - wide/4, Y: at.Y}
	}
	return measure.Vec{X: at.X, Y: at.Y - high/4}
}

// How far from the edge beside it the number of a border's strip stands: one in so many of the quilt center's width inside it, but no
// more than one in lowCenter of its lesser side; one in outsideBorder of the quilt's width outside.
const (
	insideBorder  = 18
	lowCenter     = 5
	outsideBorder = 28
)

// numberInside numbers a strip of the first border beside the quilt center, between two of its corners, where it meets the center.
func (d *sketch) numberInside(number int, a, b measure.Vec) {
	field := d.top.Field
	wide, high := float64(field.Max.X-field.Min.X), float64(field.Max.Y-field.Min.Y)
	room := min(max(wide, high)/insideBorder, min(wide, high)/lowCenter)
	at := asideIn(a, b)
	if x, y := at.X-float64(field.Min.X), at.Y-float64(field.Min.Y); math.Abs(b.X-a.X) > math.Abs(b.Y-a.Y) {
		at.Y = float64(field.Min.Y) + min(max(y, room), high-room)
	} else {
		at.X = float64(field.Min.X) + min(max(x, room), wide-room)
	}
	d.words(fmt.Sprint(number), at, label{dimPoints, diagram.Middle, 0})
	words := d.Marks[len(d.Marks)-1].Words
	words.Optional, words.Across = true, measure.NM(1.8*room)
}

// numberOutside numbers a strip of the last border beside the quilt, between two of its corners.
func (d *sketch) numberOutside(number int, a, b measure.Vec) {
	outer := d.top.Outer
	at := asideIn(a, b)
	gap := float64(max(outer.Width(), outer.Height())) / outsideBorder
	switch level := math.Abs(b.X-a.X) > math.Abs(b.Y-a.Y); {
	case level && at.Y < float64(outer.Min.Y+outer.Max.Y)/2:
		at.Y = float64(outer.Min.Y) - gap
	case level:
		at.Y = float64(outer.Max.Y) + gap
	case at.X < float64(outer.Min.X+outer.Max.X)/2:
		at.X = float64(outer.Min.X) - gap
	default:
		at.X = float64(outer.Max.X) + gap
	}
	d.words(fmt.Sprint(number), at, label{dimPoints, diagram.Middle, 0})
}

// borderArrow is half the length of the pressing arrows of a border.
func (s *sewer) borderArrow(number int) float64 {
	width := float64(s.top.Field.Width())
	return max(min(0.4*float64(s.top.CutFacts.Borders[number-1].Width), width/20), width/40)
}

// nameField names what the borders go round, where the arrows of the first border leave room for it.
func (s *sewer) nameField(d *sketch) {
	field := s.top.Field
	d.words(measure.Plural((Grid{s.top, s.Plan}).Noun()), vecOf(field.Min).Plus(vecOf(field.Max)).Times(0.5), label{captionPoints, diagram.Middle, 0})
	words := d.Marks[len(d.Marks)-1].Words
	words.Optional, words.Across = true, max(1, field.Height()-measure.NM(2*s.borderArrow(1)))
}

// drawBorders is the borders round the field, numbered in the order in which their strips
// are sewn on.
func (s *sewer) drawBorders() *diagram.Figure {
	title := "the borders, in the order numbered"
	if len(s.top.CutFacts.Borders) == 1 {
		title = "the border strips, in the order numbered"
	}
	f := &diagram.Figure{Title: SewingPictureTitle + title, Description: "The borders around the quilt center. Sew the strips on in the order numbered; arrows show the pressing direction."}
	d := &sketch{Figure: f, plan: s.Plan, top: s.top, place: same}
	d.area(rectOf(s.top.Field), white(), false, diagram.Thin)
	s.nameField(d)
	number := 0
	for i := range s.Assembly.Parts {
		if part := &s.Assembly.Parts[i]; part.Border >= 0 {
			d.patch(part.First)
		}
	}
	for _, stage := range s.Assembly.Stages {
		if stage.Sort != sewing.BorderStage {
			continue
		}
		drift := 0.05 * float64((stage.Number-1)%3+1) // of the strip's length: no arrow meets that of the next border
		for i := stage.First; i < stage.First+stage.Count; i++ {
			d.pressed(i, 0.5+drift, s.borderArrow(stage.Number))
		}
		for _, n := range s.BorderStrips(&stage) {
			number++
			o := s.top.Patches[n].Outline
			switch stage.Number {
			case 1:
				d.numberInside(number, vecOf(o[0]), vecOf(o[2]))
				continue
			case len(s.top.CutFacts.Borders):
				d.numberOutside(number, vecOf(o[0]), vecOf(o[2]))
				continue
			}
			d.wordsOn(fmt.Sprint(number), asideIn(vecOf(o[0]), vecOf(o[2])), d.clothAt(n))
			words := d.Marks[len(d.Marks)-1].Words // the text tells the order too
			wide, high := math.Abs(vecOf(o[2]).X-vecOf(o[0]).X), math.Abs(vecOf(o[2]).Y-vecOf(o[0]).Y)
			apart := (0.25 - drift) * max(wide, high)                                                                         // from the arrow
			words.Plate, words.Halo, words.Optional, words.Across = true, false, true, measure.NM(0.9*min(wide, high, apart)) // clear of the strip's edges
		}
	}
	f.Min, f.Max = measure.Point(s.top.Outer.Min), measure.Point(s.top.Outer.Max)
	return f
}
