package main

import (
	"fmt"

	"eighthturn/blocks"
	"eighthturn/cutting"
	"eighthturn/measure"
)

// cutPage is a plan put into words.
type cutPage struct{ *cutting.Plan }

func (p cutPage) text(nm measure.NM) string { return measure.Text(nm, p.Units) }

// shop is a length as shops sell it: yards, or metres.
func (p cutPage) shop(nm measure.NM) string {
	if p.Units == measure.Centimetres {
		return measure.Number(nm/100, p.Units) + " m"
	}
	return measure.Number(nm/36, p.Units) + " yd"
}

// shopExact is a length of cloth in yards or metres, as near as it is read.
func (p cutPage) shopExact(nm measure.NM) string {
	if p.Units == measure.Centimetres {
		return measure.Decimal(nm/100, p.Units, 2) + " m"
	}
	return measure.Decimal(nm/36, p.Units, 2) + " yd"
}

// quilts is for how many quilts the plan is.
func (p cutPage) quilts() string {
	if p.Copies == 1 {
		return "one quilt"
	}
	return plural(p.Copies, "quilt")
}

// cloth is the name of what a line is cut from.
func (p cutPage) cloth(line *cutting.Line) string {
	if line.Fabric >= 0 {
		return p.Fabrics[line.Fabric].Name
	}
	return "strip set " + p.SetName(line.Set)
}

// piece is what a line's pieces are called.
func (p cutPage) piece(line *cutting.Line) string {
	piece := &line.Piece
	switch {
	case piece.Shape == blocks.Strip && line.Border >= 0:
		return p.EdgingName(line)
	case piece.Shape == blocks.Square && line.Border >= 0:
		return "corner square, " + p.EdgingName(line)
	case piece.Shape == blocks.Strip:
		return "sash"
	case piece.Shape == blocks.Square && len(line.Patches) > 0 && piece.Role == "posts":
		return "post"
	case line.Reversed:
		return piece.Shape.String() + ", the other way round"
	case piece.Hand != cutting.Either:
		return piece.Shape.String() + ", " + piece.Hand.String()
	}
	return piece.Shape.String()
}

// finished is a piece's finished size in words: of wedges and tumblers the height, of triangles the short edges, of kites and
// stop pieces the block's side.
func (p cutPage) finished(piece *cutting.Piece) string {
	side := p.text(piece.SideFinished)
	switch piece.Shape {
	case blocks.Tumbler, blocks.HalfTumbler, blocks.Strip:
		return measure.Number(piece.SideFinished, p.Units) + " by " + p.text(piece.LengthFinished)
	}
	return side
}

// cut is what is cut for a piece, in words.
func (p cutPage) cut(line *cutting.Line) string {
	piece := &line.Piece
	size := p.text(piece.AlongCut)
	both := measure.Number(piece.AcrossCut, p.Units) + " by " + size
	switch piece.Method {
	case cutting.Nested:
		return "strips of " + p.text(piece.AcrossCut)
	case cutting.OnceOnDiagonal:
		return "squares of " + size + ", cut once"
	case cutting.TwiceOnDiagonal:
		return "squares of " + size + ", cut twice"
	case cutting.EndPairs:
		return both + ", cut in two"
	case cutting.Joined:
		return both + ", joined"
	case cutting.Lengthwise:
		return both + ", lengthwise"
	}
	if piece.AcrossCut == piece.AlongCut {
		return "squares of " + size
	}
	return both
}

// exact is the size that geometry asks for, where something else is cut.
func (p cutPage) exact(piece *cutting.Piece) string {
	if piece.AlongExact == piece.AlongCut {
		return "exact"
	}
	return measure.Decimal(piece.AlongExact, p.Units, 3)
}

// trim is what is trimmed after sewing.
func (p cutPage) trim(piece *cutting.Piece) string {
	if piece.TrimCut == 0 {
		return ""
	}
	return measure.Decimal(piece.TrimCut, p.Units, 2)
}

// hands says how many pieces are left-hand ones and right-hand ones, where it matters.
func (p cutPage) hands(line *cutting.Line) string {
	if line.Left+line.Right == 0 || line.Piece.Hand != cutting.Either {
		return ""
	}
	return fmt.Sprintf("%d left, %d right", line.Left, line.Right)
}

// rulers are the sizes that must be exact and that no line of a ruler shows, each with what would be on one.
func (p cutPage) rulers() []string {
	var list []string
	seen := map[measure.NM]bool{}
	add := func(what string, r cutting.Ruler) {
		if r.OnMark || seen[r.ExactCut] {
			return
		}
		seen[r.ExactCut] = true
		text := fmt.Sprintf("%s, %s cut, is on no line of a ruler: the lines beside it are %s and %s", what, p.text(r.ExactCut), measure.Number(r.BelowCut, p.Units), p.text(r.AboveCut))
		if r.BelowSideFinished > 0 {
			text += fmt.Sprintf("; blocks of %s and %s finished would be cut by them", p.text(r.BelowSideFinished), p.text(r.AboveSideFinished))
		}
		list = append(list, text)
	}
	for i := range p.Lines {
		line := &p.Lines[i]
		for n, r := range line.Piece.OnRuler {
			add(rulerOf(line, n), r)
		}
	}
	for i := range p.Sets {
		for _, b := range p.Sets[i].Bands {
			add(p.Fabrics[b.Fabric].Name+" in strip set "+p.SetName(i), b.OnRuler)
		}
	}
	return list
}

// rulerOf is what the size number n of a line's piece is.
func rulerOf(line *cutting.Line, n int) string {
	switch {
	case line.Piece.Method == cutting.Nested && n == 1:
		return "the line of a wedge rule for tumblers"
	case line.Piece.Method == cutting.Nested:
		return "the strip for " + line.Piece.Shape.String() + "s"
	case line.Piece.Shape == blocks.Strip && n == 1:
		return "the length of sashes"
	case line.Piece.Shape == blocks.Strip && line.Border < 0:
		return "the width of sashes"
	case line.Piece.Shape == blocks.Strip:
		return "the width of border strips"
	case line.Piece.Shape == blocks.HalfTumbler:
		return "the strip for end pieces"
	}
	return "the side of plain squares"
}
