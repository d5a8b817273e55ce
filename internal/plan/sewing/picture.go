package sewing

import (
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// PictureTitle is how the titles of all pictures begin.
const PictureTitle = "How to sew "

// Sizes of words in pictures, points.
const (
	captionPoints = 8.5
	dimPoints     = 7.5
)

// piece is one piece as it is drawn: its faces in the block's own frame.
type piece struct {
	patch   int
	outline outline
	faces   []face
}

type face struct {
	outline outline
	colour  palettes.Colour
}

// shownCell is the cell whose block pictures show: the first one, but of columns the longest.
func (p *Plan) shownCell(block int) int {
	if p.Blocks[block].Column {
		return p.kinds[block].column
	}
	return p.Blocks[block].Variants[0].Cells[0].Cell
}

// shownPieces is the pieces of the block that pictures show, in the block's own frame.
func (p *Plan) shownPieces(block int) []piece {
	cell := p.shownCell(block)
	c := &p.cells[cell]
	at := p.top.CellRect(cell).Min
	own := func(o outline) outline {
		var list outline
		for _, q := range o {
			list = append(list, turned(minus(q, at), p.SideFinished, 4-int(c.turns)))
		}
		return list
	}
	var list []piece
	for i := range int(c.count) {
		n := p.patch(cell, i)
		patch := &p.top.Patches[n]
		made := piece{patch: n, outline: own(patch.Outline)}
		for f := range patch.Count {
			shown := &p.top.Faces[patch.First+f]
			made.faces = append(made.faces, face{own(shown.Outline), p.top.Fabrics[shown.Fabric].Colour})
		}
		list = append(list, made)
	}
	return list
}

// sketch is a figure in the making.
type sketch struct {
	*diagram.Figure
	plan  *Plan
	place func(vec) vec // from the subject to the figure
	lit   []int
}

func (d *sketch) at(v vec) diagram.Point {
	v = d.place(v)
	return diagram.Point{X: rounded(v.x), Y: rounded(v.y)}
}

func (d *sketch) points(list []vec) []diagram.Point {
	out := make([]diagram.Point, len(list))
	for i, v := range list {
		out[i] = d.at(v)
	}
	return out
}

func vecsOf(o outline) []vec {
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
func (d *sketch) pieces(list []piece, which []int, hatch bool) {
	for _, i := range which {
		d.lit = []int{list[i].patch}
		for _, f := range list[i].faces {
			d.area(vecsOf(f.outline), f.colour, hatch, diagram.Thin)
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

// fitted is a place for a subject: scaled and moved so that its box lies in the middle of a
// square of a side, whose upper left corner is given.
func fitted(subject []vec, corner vec, side float64, as func(vec) vec) func(vec) vec {
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
	s := shape(o)
	for _, way := range []vec{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		s = s.clipped(way, middle.dot(way)-half)
	}
	return s
}

func white() palettes.Colour { return palettes.Colour{R: 0xff, G: 0xff, B: 0xff} }
