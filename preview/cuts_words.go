package preview

import (
	"fmt"
	"strconv"
	"strings"

	"eighthturn/blocks"
	"eighthturn/cutting"
	"eighthturn/measure"
)

// cutWords puts a cutting plan into words.
type cutWords struct{ *cutting.Plan }

func (p cutWords) text(nm measure.NM) string { return measure.Text(nm, p.Units) }

// by is a size across and along.
func (p cutWords) by(across, along measure.NM) string {
	return measure.Number(across, p.Units) + " by " + p.text(along)
}

// shop is a length as shops sell it: yards, or metres.
func (p cutWords) shop(nm measure.NM) string {
	if p.Units == measure.Centimetres {
		return measure.Number(nm/100, p.Units) + " m"
	}
	return measure.Number(nm/36, p.Units) + " yd"
}

// shopExact is a length of cloth in yards or metres, as near as it is read.
func (p cutWords) shopExact(nm measure.NM) string {
	if p.Units == measure.Centimetres {
		return measure.Decimal(nm/100, p.Units, 2) + " m"
	}
	return measure.Decimal(nm/36, p.Units, 2) + " yd"
}

// unit is the unit's short name behind a decimal.
func unitName(u measure.System) string {
	if u == measure.Centimetres {
		return "cm"
	}
	return "in"
}

func (p cutWords) decimal(nm measure.NM, places int) string {
	return measure.Decimal(nm, p.Units, places) + " " + unitName(p.Units)
}

// cloth is the name of what a line is cut from.
func (p cutWords) cloth(line *cutting.Line) string {
	if line.Fabric >= 0 {
		return p.Fabrics[line.Fabric].Name
	}
	return "strip set " + p.SetName(line.Set)
}

// piece is what a line's pieces are called.
func (p cutWords) piece(line *cutting.Line) string {
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

// finished is a piece's finished size: of wedges and tumblers the height, of triangles the
// short edges, of kites and stop pieces the block's side.
func (p cutWords) finished(piece *cutting.Piece) string {
	switch piece.Shape {
	case blocks.Tumbler, blocks.HalfTumbler, blocks.Strip:
		return p.by(piece.SideFinished, piece.LengthFinished)
	}
	if side := p.decimal(piece.SideFinished, 2); len(side) < len(p.text(piece.SideFinished)) {
		return "about " + side // no fraction says it
	}
	return p.text(piece.SideFinished)
}

// cut is what is cut for a piece.
func (p cutWords) cut(line *cutting.Line) string {
	piece := &line.Piece
	size, both := p.text(piece.AlongCut), p.by(piece.AcrossCut, piece.AlongCut)
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

// more is what else there is to say of a line, in small letters.
func (p cutWords) more(line *cutting.Line) string {
	parts := []string{"from " + p.cloth(line)}
	if piece := &line.Piece; piece.AlongExact != piece.AlongCut {
		parts = append(parts, "exactly "+p.decimal(piece.AlongExact, 3)+" cut")
	}
	if line.Piece.TrimCut > 0 {
		parts = append(parts, p.decimal(line.Piece.TrimCut, 2)+" to trim after sewing")
	}
	if line.Left+line.Right > 0 && line.Piece.Hand == cutting.Either {
		parts = append(parts, fmt.Sprintf("%d left, %d right", line.Left, line.Right))
	}
	if line.Piece.RuleCut > 0 {
		parts = append(parts, "the rule of thumb says squares of "+p.text(line.Piece.RuleCut))
	}
	if kites := line.Piece.KitesCut; kites > 0 && kites != line.Piece.AlongCut {
		parts = append(parts, "by custom squares of "+p.text(kites)+", with more to trim")
	}
	return strings.Join(parts, "; ")
}

// onHand says how the cloth that there is compares with what is needed.
func (p cutWords) onHand(h *cutting.OnHand) string {
	if h.Enough {
		return "on hand " + p.shopExact(h.HaveCut) + ", enough"
	}
	return "on hand " + p.shopExact(h.HaveCut) + ", short by " + p.text(h.ShortCut)
}

// ways says what would make cloth on hand suffice.
func (p cutWords) ways(f *cutting.Fabric) string {
	var parts []string
	for _, w := range f.OnHand.WaysToFit {
		switch {
		case w.Border >= 0:
			parts = append(parts, fmt.Sprintf("border %d %s wide finished", w.Border+1, p.text(w.WidthFinished)))
		case w.StripCut > 0:
			parts = append(parts, fmt.Sprintf("strips of %s cut, for blocks of %s finished", p.text(w.StripCut), p.text(w.SideFinished)))
		default:
			parts = append(parts, fmt.Sprintf("blocks of %s finished", p.text(w.SideFinished)))
		}
	}
	if len(parts) == 0 {
		return "no narrower border and no smaller block of at least half the size makes that enough"
	}
	return "enough with " + strings.Join(parts, ", or with ")
}

// precuts says which precuts would do instead: fat quarters, and strips.
func (p cutWords) precuts(f *cutting.Fabric) string {
	var parts []string
	for _, c := range f.Precuts {
		metric := strings.HasPrefix(c.Name, "metric")
		if strings.HasSuffix(c.Name, "fat quarter") && metric == (p.Units == measure.Centimetres) || strings.HasSuffix(c.Name, "strip") {
			parts = append(parts, plural(c.Count, strings.TrimPrefix(c.Name, "metric ")))
			if size, ok := strings.CutSuffix(c.Name, " strip"); ok && size[0] >= '0' && size[0] <= '9' {
				parts[len(parts)-1] = plural(c.Count, "strip") + " of " + size
			}
		}
	}
	return strings.Join(parts, " or ")
}

// edges says what binding, backing and batting take.
func (p cutWords) edges() (list []string) {
	if b := p.Binding; b != nil {
		list = append(list, fmt.Sprintf("Binding: %s of %s cut, joined on the slant to at least %s: the quilt's edge and %s for corners and ends.",
			plural(b.Strips*p.Copies, "strip"), p.text(b.StripCut), p.text(b.Need), p.text(b.Need-b.Perimeter)))
	}
	if b := p.Backing; b != nil {
		way, names := b.Ways[b.Less], [2]string{"up and down", "across"}
		text := fmt.Sprintf("Backing: %s of %s, seams %s, takes %s; with seams %s it would take %s.", plural(way.Panels, "panel"), p.text(way.PanelCut),
			names[b.Less], p.text(way.LengthCut), names[1-b.Less], p.text(b.Ways[1-b.Less].LengthCut))
		if way.Panels == 1 {
			text = fmt.Sprintf("Backing: one length of %s, with no seam.", p.text(way.PanelCut))
		}
		if way.Cliff.Costs {
			text += fmt.Sprintf(" Measure the cloth first: %s less of usable width costs another panel.", p.text(way.Cliff.Step))
		}
		list = append(list, text)
	}
	if b := p.Batting; b != nil {
		list = append(list, "Batting: "+p.by(b.WidthCut, b.HeightCut)+" at the least.")
	}
	return list
}

// block is a block of lengthwise pieces.
func (p cutWords) block(b *cutting.Block) string {
	var parts []string
	for _, c := range b.Columns {
		parts = append(parts, fmt.Sprintf("%s (line %d)", p.by(c.WidthCut, c.LengthCut), c.Line+1))
	}
	return fmt.Sprintf("First cut off %s of the cloth, and from it lengthwise, side by side: %s.", p.text(b.LengthCut), strings.Join(parts, ", "))
}

// bounds says how near the plan is to what no plan beats.
func (p cutWords) bounds(f *cutting.Fabric) string {
	strips := plural(f.StripCount, "strip")
	switch {
	case f.LengthBound == f.LengthCut && (f.StripBound == f.StripCount || len(f.Blocks) > 0):
		return strips + "; of plans with these pieces, like ones in one row, none takes less cloth."
	case len(f.Blocks) > 0 || f.StripBound == f.StripCount:
		return fmt.Sprintf("%s; no plan takes less than %s of cloth.", strips, p.text(f.LengthBound))
	}
	return fmt.Sprintf("%s; no plan with as little cloth takes fewer than %d, and none less than %s of cloth.", strips, f.StripBound, p.text(f.LengthBound))
}

// unbroken keeps numbers and their unit on one line.
func unbroken(size string) string {
	return strings.NewReplacer(" by ", " by ", " in", "\u00a0in", " cm", "\u00a0cm", " 1/", "\u00a01/", " 3/", "\u00a03/", " 5/", "\u00a05/", " 7/", "\u00a07/").Replace(size)
}

// lineNumbers are lines as people count them.
func lineNumbers(list []int) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = strconv.Itoa(n + 1)
	}
	return strings.Join(words, ", ")
}

// plural is a number with its noun.
func plural(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "sh"), strings.HasSuffix(noun, "ch"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// begun says which wedge is cut first where a set gives one more of that kind than of the other.
func begun(r cutting.SetRun) string {
	switch {
	case r.Wedges%2 == 0:
		return ""
	case r.FirstReversed == 0:
		return "; begin with a wedge as the strips stand"
	case r.FirstReversed == r.Sets:
		return "; begin with a wedge the other way round"
	}
	return fmt.Sprintf("; begin %d of the sets with a wedge the other way round, the others with one as the strips stand", r.FirstReversed)
}
