package cutting

import (
	"strconv"
	"strings"

	"eighthturn/internal/measure"
)

// Words say a plan in words and numbers, for whoever shows it to a person.
type Words struct{ *Plan }

// Length is a length as people read it.
func (w Words) Length(nm measure.NM) string { return w.Units.Nearest(nm) }

// Number is Length without its unit.
func (w Words) Number(nm measure.NM) string { return w.Units.Number(nm) }

// Exact is a length as it stands under the word "exactly".
func (w Words) Exact(nm measure.NM) string { return w.Units.Exact(nm) }

// By is a size across and along.
func (w Words) By(across, along measure.NM) string { return w.Units.By(across, along) }

// AtLeast is a length of which more does no harm.
func (w Words) AtLeast(nm measure.NM) string { return w.Units.AtLeast(nm) }

// AtMost is a length of which less does no harm, such as a left-over.
func (w Words) AtMost(nm measure.NM) string { return w.Units.AtMost(nm) }

// Shop is a length of cloth as shops sell it: yards, or metres.
func (w Words) Shop(nm measure.NM) string { return w.Units.Shop(nm) }

// Quilts says for how many quilts the plan is.
func (w Words) Quilts() string {
	if w.Copies == 1 {
		return "one quilt"
	}
	return plural(w.Copies, "quilt")
}

// Cloth is the name of what a line is cut from: a fabric, or a strip set, and whether its wedges are turned.
func (w Words) Cloth(line *Line) string {
	if line.Fabric >= 0 {
		return w.Fabrics[line.Fabric].Name
	}
	return "strip set " + w.WedgesName(line.Set, line.Reversed)
}

// PieceName is what a line's pieces are called.
func (w Words) PieceName(line *Line) string {
	piece := &line.Piece
	switch {
	case line.edging() && line.Border >= 0:
		return w.EdgingName(line)
	case line.Border >= 0:
		return "corner square, " + w.EdgingName(line)
	case line.edging():
		return "sash"
	case piece.Role == "posts":
		return "post"
	case piece.Hand != Either:
		return piece.Shape.String() + ", " + piece.Hand.String()
	}
	return piece.Shape.String()
}

// FinishedSize is a piece's finished size: of wedges and tumblers the height, of triangles the short edges, of kites and stop
// pieces the block's side.
func (w Words) FinishedSize(piece *Piece) string {
	if piece.LengthFinished > 0 {
		return w.By(piece.SideFinished, piece.LengthFinished)
	}
	return w.Length(piece.SideFinished)
}

// CutSize is what is cut for a piece.
func (w Words) CutSize(line *Line) string {
	piece := &line.Piece
	size, both := w.Length(piece.AlongCut), w.By(piece.AcrossCut, piece.AlongCut)
	switch piece.Method {
	case Nested:
		return "strips of " + w.Length(piece.AcrossCut)
	case OnceOnDiagonal:
		return "squares of " + size + ", cut once"
	case TwiceOnDiagonal:
		return "squares of " + size + ", cut twice"
	case EndPairs:
		return both + ", cut in two"
	case Joined:
		return both + ", joined"
	case Lengthwise:
		return both + ", lengthwise"
	}
	if piece.AcrossCut == piece.AlongCut {
		return "squares of " + size
	}
	return both
}

// Hands says how many pieces are left-hand ones and right-hand ones, "" where it does not matter.
func (w Words) Hands(line *Line) string {
	if line.Left+line.Right == 0 || line.Piece.Hand != Either {
		return ""
	}
	return strconv.Itoa(line.Left) + " left, " + strconv.Itoa(line.Right) + " right"
}

// LineNumbers are lines as people count them.
func LineNumbers(list []int, between string) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = strconv.Itoa(n + 1)
	}
	return strings.Join(words, between)
}

// capital is a sentence's beginning in place of words'.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
