package report

import (
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// SewingPictureTitle is how the titles of all pictures begin.
const SewingPictureTitle = "How to sew "

// Sizes of words in pictures, points.
const (
	captionPoints = 8.5
	dimPoints     = 7.5
)

// sketch is a figure in the making.
type sketch struct {
	*diagram.Figure
	plan  *sewing.Plan
	top   *quilt.Top
	place func(vec) vec // from the subject to the figure
	lit   []int
}

func (d *sketch) at(v vec) measure.Point {
	v = d.place(v)
	return measure.Point{X: rounded(v.x), Y: rounded(v.y)}
}

func (d *sketch) points(list []vec) []measure.Point {
	out := make([]measure.Point, len(list))
	for i, v := range list {
		out[i] = d.at(v)
	}
	return out
}

func vecsOf(o []measure.Point) []vec {
	list := make([]vec, len(o))
	for i, p := range o {
		list[i] = vecOf(p)
	}
	return list
}

// area draws a filled outline.
func (d *sketch) area(o []vec, fill palettes.Colour, hatch bool, edge diagram.Stroke) {
	if len(o) > 2 {
		d.Marks = append(d.Marks, diagram.Mark{Area: &diagram.Area{Outline: d.points(o), Fill: fill, Hatch: hatch, Edge: edge}, Lit: d.lit})
	}
}

// hollow draws an outline without a fill.
func (d *sketch) hollow(o []vec, edge diagram.Stroke) {
	if len(o) > 2 {
		d.Marks = append(d.Marks, diagram.Mark{Area: &diagram.Area{Outline: d.points(o), Clear: true, Edge: edge}})
	}
}

func (d *sketch) line(stroke diagram.Stroke, start, end diagram.Ending, points ...vec) {
	d.Marks = append(d.Marks, diagram.Mark{Line: &diagram.Line{Points: d.points(points), Stroke: stroke, Start: start, End: end}, Lit: d.lit})
}

// label is how words stand: how large, by which part of them at their place, and in how much
// room, 0 for as much as they take.
type label struct {
	points float64
	anchor diagram.Anchor
	room   measure.NM
}

func (d *sketch) words(text string, at vec, l label) {
	d.Marks = append(d.Marks, diagram.Mark{Words: &diagram.Words{Text: text, At: d.at(at), Points: l.points, Anchor: l.anchor, Halo: true, Room: l.room, Colour: palettes.Colour{R: 0x11, G: 0x11, B: 0x11}}})
}

// wordsOn writes words on cloth, dark or light as it asks for.
func (d *sketch) wordsOn(text string, at vec, cloth palettes.Colour) {
	d.Marks = append(d.Marks, diagram.Mark{Words: &diagram.Words{Text: text, At: d.at(at), Points: captionPoints, Anchor: diagram.Middle, Backing: &cloth}})
}

// pieces draws pieces by their faces: the right side, or the wrong side of the cloth.
func (d *sketch) pieces(list []sewing.ShownPiece, which []int, hatch bool) {
	for _, i := range which {
		d.lit = []int{list[i].Patch}
		for _, f := range list[i].Faces {
			d.area(vecsOf(f.Outline), d.top.Fabrics[f.Fabric].Colour, hatch, diagram.Thin)
		}
		d.lit = nil
	}
}

// box is the least and greatest of points.
func box(points []vec) (least, most vec) {
	least, most = vec{math.Inf(1), math.Inf(1)}, vec{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		least, most = vec{min(least.x, p.x), min(least.y, p.y)}, vec{max(most.x, p.x), max(most.y, p.y)}
	}
	return least, most
}

// fittedIn is a place for a subject: scaled and moved so that its box lies in the middle of a
// square of a side, whose upper left corner is given.
func fittedIn(subject []vec, corner vec, side float64, as func(vec) vec) func(vec) vec {
	moved := make([]vec, len(subject))
	for i, p := range subject {
		moved[i] = as(p)
	}
	least, most := box(moved)
	middle := least.plus(most).times(0.5)
	scale := side / max(most.x-least.x, most.y-least.y, 1)
	return func(v vec) vec {
		return as(v).minus(middle).times(scale).plus(corner).plus(vec{side / 2, side / 2})
	}
}

func same(v vec) vec     { return v }
func mirrored(v vec) vec { return vec{-v.x, v.y} }

// clippedTo is the part of an outline that lies in a square round a point.
func clippedTo(o []vec, middle vec, half float64) []vec {
	for _, way := range []vec{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		o = clipped(o, way, middle.dot(way)-half)
	}
	return o
}

// clipped is the part of a convex outline that lies at least so far along a way.
func clipped(o []vec, way vec, least float64) []vec {
	var out []vec
	for i, p := range o {
		q := o[(i+1)%len(o)]
		a, b := p.dot(way)-least, q.dot(way)-least
		if a >= 0 {
			out = append(out, p)
		}
		if a < 0 != (b < 0) {
			out = append(out, p.plus(q.minus(p).times(a/(a-b))))
		}
	}
	return out
}

func white() palettes.Colour { return palettes.Colour{R: 0xff, G: 0xff, B: 0xff} }

// vec is a place or a way in nanometers, not rounded.
type vec struct{ x, y float64 }

func vecOf(p measure.Point) vec     { return vec{float64(p.X), float64(p.Y)} }
func (a vec) plus(b vec) vec        { return vec{a.x + b.x, a.y + b.y} }
func (a vec) minus(b vec) vec       { return vec{a.x - b.x, a.y - b.y} }
func (a vec) times(f float64) vec   { return vec{float64(a.x * f), float64(a.y * f)} }
func (a vec) dot(b vec) float64     { return float64(a.x*b.x) + float64(a.y*b.y) }
func (a vec) length() float64       { return math.Hypot(a.x, a.y) }
func (a vec) unit() vec             { return a.times(1 / a.length()) }
func (a vec) quarter() vec          { return vec{-a.y, a.x} }                     // turned clockwise on screen
func (a vec) reflected(way vec) vec { return way.times(2 * a.dot(way)).minus(a) } // in the line through the origin along a unit way

func rounded(x float64) measure.NM { return measure.NM(math.Round(x)) }

func vecs(list []cutting.Vec) []vec {
	out := make([]vec, len(list))
	for i, v := range list {
		out[i] = vec{v.X, v.Y}
	}
	return out
}
