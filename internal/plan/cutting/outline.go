package cutting

import (
	"eighthturn/internal/measure"
)

// PieceOutlines are the outlines of the pieces that a stretch of strip is cut into, from its upper left corner, right sides
// up.
func (p *Plan) PieceOutlines(c *Cut) [][]measure.Point {
	piece := &Piece{}
	if c.Use == ForPieces && len(c.Lines) == 1 {
		piece = &p.Lines[c.Lines[0]].Piece
	}
	var list [][]measure.Point
	for n := range c.Units {
		if piece.Method == Nested {
			list = append(list, nestedOutline(piece, n))
			continue
		}
		for _, outline := range piece.divided(measure.NM(n/c.Rows)*c.AlongCut, c) {
			for i := range outline {
				outline[i].Y += measure.NM(n%c.Rows) * c.AcrossCut
			}
			list = append(list, outline)
		}
	}
	return list
}

func rectangle(x, y, width, height measure.NM) []measure.Point {
	return []measure.Point{{X: x, Y: y}, {X: x + width, Y: y}, {X: x + width, Y: y + height}, {X: x, Y: y + height}}
}

// Row is the outlines of so many wedges or tumblers side by side.
func (p *Piece) Row(count int) [][]measure.Point {
	var list [][]measure.Point
	for n := range count {
		list = append(list, nestedOutline(p, n))
	}
	return list
}

// nestedOutline is the outline of wedge or tumbler number n of a row. The first has its wide end below.
func nestedOutline(piece *Piece, n int) []measure.Point {
	wide, narrow, high := piece.WideCut, piece.NarrowCut, piece.AcrossCut
	from := measure.NM(n) * (wide + narrow) / 2 // of the wide end
	inner := from + (wide-narrow)/2
	upper, lower := measure.NM(0), high
	if n%2 == 1 {
		upper, lower = lower, upper
	}
	outline := []measure.Point{{X: inner, Y: upper}, {X: inner + narrow, Y: upper}, {X: from + wide, Y: lower}, {X: from, Y: lower}}
	if n%2 == 1 { // clockwise still
		outline[0], outline[1], outline[2], outline[3] = outline[3], outline[2], outline[1], outline[0]
	}
	return outline
}

// divided is the pieces that what is cut off a strip is divided into; it begins at a place along the strip.
func (p *Piece) divided(at measure.NM, c *Cut) [][]measure.Point {
	left, right, low := at, at+c.AlongCut, c.AcrossCut
	nw, ne, se, sw := measure.Point{X: left}, measure.Point{X: right}, measure.Point{X: right, Y: low}, measure.Point{X: left, Y: low}
	switch p.Method {
	case OnceOnDiagonal:
		return [][]measure.Point{{nw, ne, sw}, {ne, se, sw}}
	case TwiceOnDiagonal:
		middle := measure.Point{X: (left + right) / 2, Y: low / 2}
		return [][]measure.Point{{nw, ne, middle}, {ne, se, middle}, {se, sw, middle}, {sw, nw, middle}}
	case EndPairs:
		upper, lower := p.WideCut, p.NarrowCut
		if p.Hand == Left {
			upper, lower = lower, upper
		}
		high, deep := measure.Point{X: left + upper}, measure.Point{X: left + lower, Y: low}
		return [][]measure.Point{{nw, high, deep, sw}, {high, ne, se, deep}}
	}
	return [][]measure.Point{{nw, ne, se, sw}}
}

// PieceOutline is the outline of one piece as it is cut, right side up, clockwise on screen. A kite comes as its square, a
// background piece as its triangle, since both are trimmed after sewing; of a wedge the tip points up.
func (p *Piece) PieceOutline() []measure.Point {
	w, l := p.AcrossCut, p.AlongCut
	switch {
	case p.Method == Nested:
		return nestedOutline(p, 0)
	case p.Method == OnceOnDiagonal:
		return []measure.Point{{X: 0, Y: 0}, {X: w, Y: 0}, {X: 0, Y: w}}
	case p.Method == TwiceOnDiagonal:
		return []measure.Point{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w / 2, Y: w / 2}}
	case p.Method == EndPairs:
		upper, lower := p.WideCut, p.NarrowCut
		if p.Hand == Left { // the square end to the left, which is away when turned by a quarter
			upper, lower = lower, upper
		}
		return []measure.Point{{X: 0, Y: 0}, {X: upper, Y: 0}, {X: lower, Y: w}, {X: 0, Y: w}}
	}
	return rectangle(0, 0, l, w)
}
