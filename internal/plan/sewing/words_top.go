package sewing

import (
	"fmt"
	"slices"
)

// Line is what blocks are sewn into first: row or column.
func (w Words) Line() string {
	if w.Assembly.ByColumns {
		return "column"
	}
	return "row"
}

// LinesLine is how the blocks of each row or column go together; "" where there is no seam
// between blocks of one.
func (w Words) LinesLine() string {
	rows, seams := 0, 0
	var size Size
	for _, s := range w.Assembly.Stages {
		if s.Sort != LineStage {
			continue
		}
		seams += s.Count
		if s.Number == 0 {
			continue
		}
		rows++
		if s.Size.Across.NM+s.Size.Down.NM > size.Across.NM+size.Down.NM {
			size = s.Size
		}
	}
	if seams == 0 {
		return ""
	}
	whole := ""
	if slices.ContainsFunc(w.Blocks, func(b Block) bool { return b.Column }) {
		whole = " Columns of tumblers are sewn already: where one fills a column of the layout there is nothing to do, and where it fills a part it counts as one block."
	}
	return fmt.Sprintf("Lay all blocks out by their places and turns. Sew the blocks of each %s together: %s, a whole one %s unfinished. Pin where seam lines meet, not cut corners.%s",
		w.Line(), counted(rows, w.Line()), w.Size(size), whole)
}

// SashesLine is how the sashes between rows or columns go together; "" where there are none.
func (w Words) SashesLine() string {
	sashes := 0
	for _, s := range w.Assembly.Stages {
		if s.Sort == LineStage && s.Number == 0 {
			sashes++
		}
	}
	if sashes == 0 {
		return ""
	}
	return fmt.Sprintf("Between them lie %s of sashes; sew those of several pieces together in the same way.", counted(sashes, w.Line()))
}

// StageLine is how rows or columns, or a border, are sewn together; "" for other stages.
func (w Words) StageLine(s *Stage) string {
	switch s.Sort {
	case LinesStage:
		return fmt.Sprintf("Sew the %ss together in their order, each to the one before: %s unfinished in all.", w.Line(), w.Size(s.Size))
	case BorderStage:
		how := "the strips at the two sides first, then those above and below across the whole width"
		if s.Count > 4 {
			how = "the strips at the two sides first; sew a square to both ends of the other two, and then those above and below"
		}
		return fmt.Sprintf("Border %d: %s; %s unfinished then.", s.Number, how, w.Size(s.Size))
	}
	return ""
}

// EdgeLine says how the edges of a block lie off the straight grain; "" where they do not.
func (w Words) EdgeLine(b *Block) string {
	names := [4]string{"top", "right", "bottom", "left"}
	var sides []string
	var edge EdgeGrain
	for n, e := range b.Edges {
		if e.OffGrain+e.Bias > 0 {
			sides, edge = append(sides, names[n]), e
		}
	}
	if len(sides) == 0 {
		return ""
	}
	off := edge.OffGrain + edge.Bias
	part := "all along their length"
	if edge.Straight > 0 {
		part = fmt.Sprintf("for %.0f %% of their length and straight for the rest", 100*float64(off)/float64(off+edge.Straight))
	}
	what := "edges are"
	if len(sides) == 1 {
		what = "edge is"
	}
	which := "the " + Listed(sides)
	if len(sides) == len(names) {
		which = "all"
	}
	return fmt.Sprintf("%s%s: %s %s %s %s.", b.Label, w.upright(b, len(sides)), which, what, offGrain(edge.Degrees), part)
}

// upright says how a block is held so that its sides can be named, unless all are alike.
func (w Words) upright(b *Block, sides int) string {
	if sides == 4 || b.Column {
		return ""
	}
	text := turnNames(0)
	if len(b.Variants) == 1 {
		text = w.TurnText(b, &b.Variants[0], 0)
	}
	if text == "" {
		return ""
	}
	return ", " + text
}

// offGrain is an angle off the straight grain in words.
func offGrain(degrees float64) string {
	switch degrees {
	case 45:
		return "on the bias (45 degrees off the grain)"
	case 22.5:
		return "22 1/2 degrees off the grain"
	}
	return fmt.Sprintf("%.3g degrees off the grain", degrees)
}

// OutsideLines is which edges off the grain lie on the outside of the field, and how to
// handle them.
func (w Words) OutsideLines() []Said {
	sides := map[string][]int{}
	for _, o := range w.Grain.Outside {
		sides[o.Side] = append(sides[o.Side], o.Cells...)
	}
	what := "Until the border is on, do not pull at these edges of the field, and sew them without stretching"
	if w.Grain.AtEdge {
		what = "These are edges of the top itself: sew a line just inside the seam allowance before you handle it, and do not pull"
	}
	var list []Said
	for _, side := range []string{"top", "right", "bottom", "left", "inside"} {
		cells := slices.Compact(slices.Sorted(slices.Values(sides[side])))
		if len(cells) == 0 {
			continue
		}
		where := "the " + side + " edges in "
		if side == "inside" {
			where = "edges beside empty places in "
		}
		list = append(list, Said{fmt.Sprintf("%s: %s%s.", what, where, w.Cells(cells, 0)), cells})
		what = "So too"
	}
	return list
}

// ThickLine says whether cloth grows thick anywhere, and what to do there.
func (w Words) ThickLine() string {
	switch b := &w.Bulk; {
	case b.Most == 0:
		return fmt.Sprintf("Nowhere do more than %d layers lie on each other.", b.Limit)
	case len(b.Thick) == 0:
		return fmt.Sprintf("Nowhere do more than %d layers lie on each other; the most is %d.", b.Limit, b.Most)
	default:
		return fmt.Sprintf("More than %d layers lie on each other at these points, as allowances are folded (counted, to within one). Trim dog ears there and sew slowly over them; where pressing the last seam open or turning all allowances one way round makes it less, that is said.", b.Limit)
	}
}

// ThickPointLine is one sort of thick points.
func (w Words) ThickPointLine(t *ThickPoint) string {
	text := fmt.Sprintf("%d layers where %d pieces meet, at %s, first at %s", t.Layers, t.Pieces, counted(t.Count, "point"), w.Where(t.At[0]))
	if t.Inside {
		return text
	}
	switch {
	case t.Open < t.Layers && t.Round < t.Layers:
		return text + fmt.Sprintf("; %d with the last seam pressed open, %d with all turned round", t.Open, t.Round)
	case t.Open < t.Layers:
		return text + fmt.Sprintf("; %d with the last seam pressed open", t.Open)
	case t.Round < t.Layers:
		return text + fmt.Sprintf("; %d with all turned round", t.Round)
	}
	return text + "; neither pressing open nor turning round makes it less"
}

// PointsLine says how many points of one shape keep their seam allowance.
func (w Words) PointsLine(s *Points) string {
	text := fmt.Sprintf("Points of %ss: %d of %d keep a seam allowance of cloth all round", s.Shape, s.Keep, s.Count)
	if s.AtEdge > 0 {
		text += fmt.Sprintf("; %d lie on the quilt's outside, right in the binding's seam", s.AtEdge)
	}
	return text + "."
}

// BluntedLine is points that the binding may blunt; "" for those on the outside itself.
func (w Words) BluntedLine(n *NearPoint) string {
	if n.Distance == 0 {
		return ""
	}
	lie := " lie"
	if n.Count == 1 {
		lie = " lies"
	}
	return fmt.Sprintf("%s%s only %s from the quilt's outside, less than a seam allowance: the binding may blunt them, first at %s.", counted(n.Count, "point"), lie, w.Text(n.Distance), w.Where(n.At[0]))
}
