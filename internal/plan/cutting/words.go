package cutting

import (
	"strconv"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// Words say a plan in words and numbers, for whoever shows it to a person.
type Words struct{ *Plan }

// Finest marks that words name: lengths between them are rounded up, rounded down, or said as about so much.
const (
	sixteenth = measure.Inch / 16
	eighth    = measure.Inch / 8
	tenthOfCM = measure.Centimetre / 10
	nearMark  = 20 // nanometres off a mark that arithmetic leaves
)

// Length is a length that must be as it is: exactly, or to two decimals with the word about where nothing shorter says it.
func (w Words) Length(nm measure.NM) string {
	if w.plain(nm) {
		return measure.Text(nm, w.Units)
	}
	return "about " + w.Decimal(nm, 2)
}

// plain says whether a length is written exactly as a fraction or with two decimals.
func (w Words) plain(nm measure.NM) bool {
	_, decimals, _ := strings.Cut(measure.Number(nm, w.Units), ".")
	return len(decimals) <= 2
}

// Number is a length without its unit, to two decimals where nothing shorter says it.
func (w Words) Number(nm measure.NM) string {
	if w.plain(nm) {
		return measure.Number(nm, w.Units)
	}
	return measure.Decimal(nm, w.Units, 2)
}

// Decimal is a length with so many decimals and its unit.
func (w Words) Decimal(nm measure.NM, places int) string {
	if w.Units == measure.Centimetres {
		return measure.Decimal(nm, w.Units, places) + " cm"
	}
	return measure.Decimal(nm, w.Units, places) + " in"
}

// By is a size across and along, each as it must be.
func (w Words) By(across, along measure.NM) string {
	if w.plain(across) && w.plain(along) {
		return measure.Number(across, w.Units) + " by " + measure.Text(along, w.Units)
	}
	return "about " + w.Number(across) + " by " + strings.TrimPrefix(w.Length(along), "about ")
}

// AtLeast is a length of which more does no harm, rounded up to what can be measured: an eighth of an inch, or a tenth of a
// centimetre. Whole sixteenths stay as they are.
func (w Words) AtLeast(nm measure.NM) string { return measure.Text(w.up(nm), w.Units) }

func (w Words) up(nm measure.NM) measure.NM {
	mark := sixteenth
	if w.Units == measure.Centimetres {
		mark = tenthOfCM
	}
	if near := measure.Nearest(nm, mark); near-nm <= nearMark && nm-near <= nearMark {
		return near
	}
	return measure.RoundUp(nm, w.step())
}

// step is what lengths are rounded to that may be longer or shorter.
func (w Words) step() measure.NM {
	if w.Units == measure.Centimetres {
		return tenthOfCM
	}
	return eighth
}

// AtMost is a length of which less does no harm, such as a left-over, rounded down to what can be measured.
func (w Words) AtMost(nm measure.NM) string { return measure.Text(w.down(nm), w.Units) }

func (w Words) down(nm measure.NM) measure.NM {
	up := w.up(nm)
	if up > nm+nearMark {
		return up - w.step()
	}
	return up
}

// Shop is a length as shops sell it: yards, or metres.
func (w Words) Shop(nm measure.NM) string {
	if w.Units == measure.Centimetres {
		return measure.Number(nm/100, w.Units) + " m"
	}
	return measure.Number(nm/36, w.Units) + " yd"
}

// ShopExact is a length of cloth in yards or metres to two decimals.
func (w Words) ShopExact(nm measure.NM) string {
	if w.Units == measure.Centimetres {
		return measure.Decimal(nm/100, w.Units, 2) + " m"
	}
	return measure.Decimal(nm/36, w.Units, 2) + " yd"
}

// ShopHad is a length of cloth that there is: as shops sell it where they could have cut it so, by eighths of a yard or
// tenths of a metre, and to two decimals where not.
func (w Words) ShopHad(nm measure.NM) string {
	if step := (supplies.Buying{Units: w.Units}).Step(); nm%step == 0 {
		return w.Shop(nm)
	}
	return w.ShopExact(nm)
}

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
	case piece.Shape == blocks.Strip && line.Border >= 0:
		return w.EdgingName(line)
	case piece.Shape == blocks.Square && line.Border >= 0:
		return "corner square, " + w.EdgingName(line)
	case piece.Shape == blocks.Strip:
		return "sash"
	case piece.Shape == blocks.Square && len(line.Patches) > 0 && piece.Role == "posts":
		return "post"
	case piece.Hand != Either:
		return piece.Shape.String() + ", " + piece.Hand.String()
	}
	return piece.Shape.String()
}

// FinishedSize is a piece's finished size: of wedges and tumblers the height, of triangles the short edges, of kites and stop
// pieces the block's side.
func (w Words) FinishedSize(piece *Piece) string {
	switch piece.Shape {
	case blocks.Tumbler, blocks.HalfTumbler, blocks.Strip:
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
