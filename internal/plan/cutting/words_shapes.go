package cutting

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
)

// ShapeNotes says how pieces are cut whose shape no size tells, a sentence or two for each shape that occurs, and why a
// square is larger than need be by custom.
func (w Words) ShapeNotes() []string {
	var list []string
	for _, s := range blocks.Shapes() {
		if d := s.Description(); d.Shaped && w.Cuts(s) {
			list = append(list, d.CutTitle+". "+d.CutWords)
		}
	}
	for i := range w.Lines {
		p := &w.Lines[i].Piece
		if d := p.Shape.Description(); d.ByCustom != "" && p.AlongCut > p.AlongExact {
			list = append(list, fmt.Sprintf("Line %d: "+d.ByCustom+".", i+1, w.Length(p.AlongCut), w.AtLeast(p.AlongExact)))
		}
	}
	return list
}

// Cuts says whether pieces of a shape are cut.
func (p *Plan) Cuts(shape blocks.Shape) bool {
	return slices.ContainsFunc(p.Lines, func(l Line) bool { return l.Piece.Shape == shape })
}
