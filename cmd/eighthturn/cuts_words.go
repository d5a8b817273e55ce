package main

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// cutPage is a plan on a page.
type cutPage struct{ cutting.Words }

func pageOf(plan *cutting.Plan) cutPage { return cutPage{cutting.Words{Plan: plan}} }

// exact is the size that geometry asks for, where something else is cut or no short number says it.
func (p cutPage) exact(piece *cutting.Piece) string {
	size := piece.AlongExact
	if piece.Method == cutting.Nested {
		size = piece.AcrossExact
	}
	if piece.AlongExact == piece.AlongCut && p.Length(size) == measure.Text(size, p.Units) {
		return "exact"
	}
	return p.Units.ExactNumber(size)
}

// trim is what is trimmed after sewing.
func (p cutPage) trim(piece *cutting.Piece) string {
	if piece.TrimCut == 0 {
		return ""
	}
	return p.Number(piece.TrimCut)
}
