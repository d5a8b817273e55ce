package sewing

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Shown is the block that stands for all of its label in pictures, in its own frame: unturned, its upper left corner is the
// origin. It is the first one, but of columns the longest.
type Shown struct {
	Cell   int // of the top, by index
	Pieces []ShownPiece

	plan *Plan
	kind *sewn
}

// ShownPiece is a piece of the kind, or of the column from the top, finished.
type ShownPiece struct {
	Patch   int // of the top, by index
	Outline []measure.Point
	Faces   []ShownFace
}

// ShownFace is a part of a piece of one fabric.
type ShownFace struct {
	Outline []measure.Point
	Fabric  int
}

// Shown is the block that pictures of a label show.
func (p *Plan) Shown(block int) *Shown {
	cell := p.Blocks[block].Variants[0].Cells[0].Cell
	if p.Blocks[block].Column {
		cell = p.kinds[block].column
	}
	return p.shownAt(block, cell)
}

// ShownAs is a block in the cloths of one of its variants, by index.
func (p *Plan) ShownAs(block, variant int) *Shown {
	return p.shownAt(block, p.Blocks[block].Variants[variant].Cells[0].Cell)
}

// shownAt is a block as it lies in a cell, turned back.
func (p *Plan) shownAt(block, cell int) *Shown {
	s := &Shown{Cell: cell, plan: p, kind: p.kinds[block]}
	c := &p.cells[s.Cell]
	at := p.top.CellRect(s.Cell).Min
	own := func(o []measure.Point) []measure.Point {
		var list []measure.Point
		for _, q := range o {
			list = append(list, turned(minus(q, at), p.SideFinished, 4-int(c.turns)))
		}
		return list
	}
	for i := range int(c.count) {
		n := p.patch(s.Cell, i)
		patch := &p.top.Patches[n]
		made := ShownPiece{Patch: n, Outline: own(patch.Outline)}
		for f := range patch.Count {
			face := &p.top.Faces[patch.First+f]
			made.Faces = append(made.Faces, ShownFace{own(face.Outline), int(face.Fabric)})
		}
		s.Pieces = append(s.Pieces, made)
	}
	return s
}

// Unit is the pieces of what a join makes, by index.
func (s *Shown) Unit(join int) []int { return s.kind.joins[join].all() }

// Raw is the raw outline of some pieces sewn together, after trimming or before it. Pieces of a column follow each other.
func (s *Shown) Raw(pieces []int, trimmed bool) []measure.Vec {
	if !s.kind.kind.Column {
		if !trimmed {
			return s.kind.untrimmed(pieces, s.kind.unit(pieces))
		}
		return s.kind.rawOutline(pieces, s.kind.unit(pieces))
	}
	var list []outline
	for _, i := range pieces {
		list = append(list, s.Pieces[i].Outline)
	}
	unit := united(list)
	var raw []measure.Vec
	for i := range unit {
		raw = append(raw, s.kind.cornerBetween(pieces, unit, i, cornerOut{})...)
	}
	return raw
}

// Trims is the raw sides along which a unit is cut to size: their two ends, and where these lay before.
func (s *Shown) Trims(pieces []int) [][2][2]measure.Vec {
	return s.kind.trimLines(pieces, s.kind.unit(pieces))
}

// At is which of some pieces lies at the beginning of a join's seam.
func (s *Shown) At(pieces []int, j *Join) int {
	if s.kind.kind.Column {
		return pieces[len(pieces)-1]
	}
	return beside(s.kind.pieces, pieces, stretch{j.From, j.To})
}

// About is the point round which the allowances of a join turn.
func (s *Shown) About(j *Join) measure.Point { return s.kind.about(j) }

// ToB says whether a join is pressed towards its B, or clockwise where it turns round a point.
func (s *Shown) ToB(j *Join) bool { return s.plan.Way(s.Cell, j.Choice) == 0 }

// Line is a row of blocks and sashes, or a column of them, or the sashes between two.
type Line struct {
	Number int // of the row or column, from 1; 0 for sashes
	Tiles  []Tile
}

// Tile is a part of the assembly at its place.
type Tile struct {
	Part int        // of the assembly, by index
	At   quilt.Rect // on the top
	Seam int        // of the assembly: that between it and the tile before it in its line, -1 for none
	Post bool       // it is a square where sashes meet
}

// Lines are the rows or columns that the blocks are sewn into first.
func (p *Plan) Lines() []Line {
	list := make([]Line, len(p.lines))
	for i, l := range p.lines {
		list[i].Number = l.number
		for _, t := range l.tiles {
			list[i].Tiles = append(list[i].Tiles, Tile{t.part, t.at, t.seam, t.post})
		}
	}
	return list
}

// Turns is how many quarters a cell's block is turned clockwise from the way its pictures show it.
func (p *Plan) Turns(cell int) int { return int(p.cells[cell].turns) }

// BlockAt is the block or column of a cell, by index; -1 for none.
func (p *Plan) BlockAt(cell int) int { return int(p.cells[cell].block) }

// InBlock is a point of a block's own frame where it lies on the top.
func (p *Plan) InBlock(cell int, at measure.Point) measure.Point {
	return turned(at, p.SideFinished, p.Turns(cell)).Add(p.top.CellRect(cell).Min)
}

// BorderStrips is the patches of a border's strips in the order in which they are sewn on.
func (p *Plan) BorderStrips(stage *Stage) []int {
	var list []int
	for i := stage.First; i < stage.First+stage.Count; i++ {
		s := &p.Assembly.Seams[i]
		if p.Pressing.Choices[s.choice].Sort != SeamChoice {
			continue
		}
		if first := p.Assembly.Parts[s.beside[0][1]].First; !slices.Contains(list, first) {
			list = append(list, first)
		}
	}
	return list
}
