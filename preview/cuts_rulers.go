package preview

import (
	"fmt"

	"eighthturn/blocks"
	"eighthturn/cutting"
	"eighthturn/measure"
)

// rulers are the sizes that must be exact and that no line of a ruler shows, each with what
// would be on one.
func (p cutWords) rulers() []string {
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
		list = append(list, text+".")
	}
	for i := range p.Lines {
		for n, r := range p.Lines[i].Piece.OnRuler {
			add(rulerOf(&p.Lines[i], n), r)
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
	switch shape := line.Piece.Shape; {
	case line.Piece.Method == cutting.Nested && n == 1:
		return "The line of a wedge rule for tumblers"
	case line.Piece.Method == cutting.Nested:
		return "The strip for " + shape.String() + "s"
	case shape == blocks.Strip && n == 1:
		return "The length of sashes"
	case shape == blocks.Strip:
		return "The width of border strips"
	case shape == blocks.HalfTumbler:
		return "The strip for end pieces"
	}
	return "The side of plain squares"
}
