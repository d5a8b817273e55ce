package cutting

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
)

// ShapeNotes says how pieces are cut whose shape no size tells, a sentence or two for each shape that occurs, and why a
// square for stop pieces is larger than need be.
func (w Words) ShapeNotes() []string {
	var list []string
	if w.has(blocks.Kite) {
		list = append(list, "A kite is cut from its square: draw a line from corner to corner, lay the middle of a wedge rule of 45 degrees on it, with the point where the rule's sides "+
			"meet in one corner of the square, and cut along both sides. The square corner opposite is trimmed after sewing.")
	}
	if w.has(blocks.StopGround) {
		list = append(list, "A square cut once gives two triangles, and each of them serves as a left or a right stop piece. To give it its slanted side, lay the template for its hand on the triangle, "+
			"the cloth right side up and long edge on long edge, and cut along the template's slanted side alone. The short edges stay large and are trimmed after sewing.")
	}
	for i := range w.Lines {
		if p := &w.Lines[i].Piece; p.Shape == blocks.StopGround && p.AlongCut > p.AlongExact {
			list = append(list, fmt.Sprintf("Line %d: by custom stop pieces are cut from squares twice as large as those for kites, here %s, with more to trim; squares of %s would do.",
				i+1, w.Length(p.AlongCut), w.AtLeast(p.AlongExact)))
		}
	}
	return list
}

// has says whether pieces of a shape are cut.
func (w Words) has(shape blocks.Shape) bool {
	return slices.ContainsFunc(w.Lines, func(l Line) bool { return l.Piece.Shape == shape })
}
