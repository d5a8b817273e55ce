package report

import (
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// SewingPictureTitle is how the titles of all pictures begin.
const SewingPictureTitle = "How to sew "

// Sizes of words in pictures, points.
const (
	captionPoints = 8.5
	dimPoints     = 8
)

// sketch is a figure in the making.
type sketch struct {
	*diagram.Figure
	plan  *sewing.Plan
	top   *quilt.Top
	place func(measure.Vec) measure.Vec // from the subject to the figure
	lit   []int
}

func (d *sketch) at(v measure.Vec) measure.Point {
	v = d.place(v)
	return measure.Point{X: rounded(v.X), Y: rounded(v.Y)}
}

func (d *sketch) points(list []measure.Vec) []measure.Point {
	out := make([]measure.Point, len(list))
	for i, v := range list {
		out[i] = d.at(v)
	}
	return out
}

func vecsOf(o []measure.Point) []measure.Vec {
	list := make([]measure.Vec, len(o))
	for i, p := range o {
		list[i] = vecOf(p)
	}
	return list
}

// area draws a filled outline.
func (d *sketch) area(o []measure.Vec, fill palettes.Colour, hatch bool, edge diagram.Stroke) {
	if len(o) > 2 {
		d.Marks = append(d.Marks, diagram.Mark{Area: &diagram.Area{Outline: d.points(o), Fill: fill, Hatch: hatch, Edge: edge}, Lit: d.lit})
	}
}

// hollow draws an outline without a fill.
func (d *sketch) hollow(o []measure.Vec, edge diagram.Stroke) {
	if len(o) > 2 {
		d.Marks = append(d.Marks, diagram.Mark{Area: &diagram.Area{Outline: d.points(o), Clear: true, Edge: edge}})
	}
}

func (d *sketch) line(stroke diagram.Stroke, start, end diagram.Ending, points ...measure.Vec) {
	d.Marks = append(d.Marks, diagram.Mark{Line: &diagram.Line{Points: d.points(points), Stroke: stroke, Start: start, End: end}, Lit: d.lit})
}

// label is how words stand: how large, by which part of them at their place, and in how much
// room, 0 for as much as they take.
type label struct {
	points float64
	anchor diagram.Anchor
	room   measure.NM
}

func (d *sketch) words(text string, at measure.Vec, l label) {
	d.Marks = append(d.Marks, diagram.Mark{Words: &diagram.Words{Text: text, At: d.at(at), Points: l.points, Anchor: l.anchor, Halo: true, Room: l.room, Colour: diagram.Black()}})
}

// wordsOn writes words on cloth, dark or light as it asks for.
func (d *sketch) wordsOn(text string, at measure.Vec, cloth palettes.Colour) {
	d.Marks = append(d.Marks, diagram.Mark{Words: &diagram.Words{Text: text, At: d.at(at), Points: captionPoints, Anchor: diagram.Middle, Halo: true, Backing: &cloth}})
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
func box(points []measure.Vec) (least, most measure.Vec) {
	least, most = measure.Vec{X: math.Inf(1), Y: math.Inf(1)}, measure.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range points {
		least, most = measure.Vec{X: min(least.X, p.X), Y: min(least.Y, p.Y)}, measure.Vec{X: max(most.X, p.X), Y: max(most.Y, p.Y)}
	}
	return least, most
}

// fittedIn is a place for a subject: scaled and moved so that its box lies in the middle of a
// square of a side, whose upper left corner is given.
func fittedIn(subject []measure.Vec, corner measure.Vec, side float64, as func(measure.Vec) measure.Vec) func(measure.Vec) measure.Vec {
	moved := make([]measure.Vec, len(subject))
	for i, p := range subject {
		moved[i] = as(p)
	}
	least, most := box(moved)
	middle := least.Plus(most).Times(0.5)
	scale := side / max(most.X-least.X, most.Y-least.Y, 1)
	return func(v measure.Vec) measure.Vec {
		return as(v).Minus(middle).Times(scale).Plus(corner).Plus(measure.Vec{X: side / 2, Y: side / 2})
	}
}

func same(v measure.Vec) measure.Vec     { return v }
func mirrored(v measure.Vec) measure.Vec { return measure.Vec{X: -v.X, Y: v.Y} }

// clippedTo is the part of an outline that lies in a square round a point.
func clippedTo(o []measure.Vec, middle measure.Vec, half float64) []measure.Vec {
	for _, way := range []measure.Vec{{X: 1, Y: 0}, {X: -1, Y: 0}, {X: 0, Y: 1}, {X: 0, Y: -1}} {
		o = measure.Clipped(o, way, middle.Dot(way)-half)
	}
	return o
}

func white() palettes.Colour { return palettes.Colour{R: 0xff, G: 0xff, B: 0xff} }

// vecOf is a point as a vector in nanometers.
func vecOf(p measure.Point) measure.Vec { return measure.Vec{X: float64(p.X), Y: float64(p.Y)} }

func rounded(x float64) measure.NM { return measure.NM(math.Round(x)) }

func vecs(list []measure.Vec) []measure.Vec {
	out := make([]measure.Vec, len(list))
	for i, v := range list {
		out[i] = measure.Vec{X: v.X, Y: v.Y}
	}
	return out
}
