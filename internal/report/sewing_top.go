package report

import (
	"fmt"
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// Parts of the section SewingTogether.
const (
	SewingLines = "lines"      // the rows or columns, by themselves
	SewingLong  = "long-seams" // the rows or columns sewn together
	SewingLoose = "loose"      // parts that hang together with nothing
)

// SewingBorder is the id of the section of a border, from 1.
func SewingBorder(number int) string { return fmt.Sprintf("border-%d", number) }

// together is how blocks, sashes and borders go together.
func (s *sewer) together() document.Section {
	out := document.Section{ID: SewingTogether, Title: "Blocks together"}
	add := func(id string, list sentences) {
		if len(list.Items) > 0 {
			out.Blocks = append(out.Blocks, document.Section{ID: id, Blocks: list.blocks()})
		}
	}
	var lines, loose sentences
	if text := s.linesText(); text != "" {
		item := lines.add(text, document.About{Seams: s.lineSeams()})
		item.Blocks = append(item.Blocks, s.linesFigure()...)
	}
	lines.add(s.sashesText(), document.About{})
	add(SewingLines, lines)
	for i := range s.Assembly.Stages {
		var list sentences
		switch stage := &s.Assembly.Stages[i]; stage.Sort {
		case sewing.LinesStage:
			text := fmt.Sprintf("Sew the %[1]ss together in their order, each to the one before. Pin at every joint; where seams lie opposite ways they nest. The %[1]ss together now measure %[2]s unfinished.", s.line(), s.size(stage.Size))
			item := list.add(text, document.About{Seams: s.seamsFrom(stage.First, stage.Count)})
			item.Blocks = append(item.Blocks, s.linesFigure()...)
			add(SewingLong, list)
		case sewing.BorderStage:
			about := document.About{Seams: s.seamsFrom(stage.First, stage.Count), Patches: s.borderPatches(stage.Number - 1)}
			item := list.add(s.borderText(stage), about)
			item.Blocks = append(item.Blocks, s.bordersFigure()...)
			add(SewingBorder(stage.Number), list)
		}
	}
	for n := range s.Assembly.Loose {
		loose.add(s.looseText(n), document.About{Patches: s.cellPatches(s.LooseCells(n))}).Tone = document.Doubtful
	}
	add(SewingLoose, loose)
	if len(out.Blocks) == 0 {
		out.Blocks = []document.Block{para("The top is one piece: there is nothing to sew together.")}
	}
	return out
}

// linesText is how the blocks of each row or column go together; "" where there is no seam between blocks of one.
func (s *sewer) linesText() string {
	rows, seams := 0, 0
	var size sewing.Size
	for _, stage := range s.Assembly.Stages {
		if stage.Sort != sewing.LineStage {
			continue
		}
		seams += stage.Count
		if stage.Number == 0 {
			continue
		}
		rows++
		if stage.Size.Across+stage.Size.Down > size.Across+size.Down {
			size = stage.Size
		}
	}
	columns := slices.ContainsFunc(s.Blocks, func(b sewing.Block) bool { return b.Column })
	switch {
	case seams == 0 && columns && rows > 1:
		return "The columns are whole: their tumblers are sewn one to the next already, with an end piece at each end. Lay them side by side in their order."
	case seams == 0:
		return ""
	}
	whole := ""
	if columns {
		whole = " Columns of tumblers are sewn already: where one fills a column of the layout there is nothing to do, and where it fills a part it counts as one block."
	}
	return fmt.Sprintf("Lay all blocks out by their places and turns. Sew the blocks of each %s together: %s, a whole one %s unfinished. Pin where seam lines meet, not cut corners.%s",
		s.line(), measure.Count(rows, s.line()), s.size(size), whole)
}

// sashesText is how the sashes between rows or columns go together; "" where there are none.
func (s *sewer) sashesText() string {
	sashes := 0
	for _, stage := range s.Assembly.Stages {
		if stage.Sort == sewing.LineStage && stage.Number == 0 {
			sashes++
		}
	}
	if sashes == 0 {
		return ""
	}
	return fmt.Sprintf("Between them lie %s of sashes; sew those of several pieces together in the same way.", measure.Count(sashes, s.line()))
}

// borderText is how a border is sewn on.
func (s *sewer) borderText(stage *sewing.Stage) string {
	how := "sew the strips to the two sides first, then those above and below across the whole width"
	if stage.Count > 4 {
		how = "sew the strips to the two sides first; sew a square to both ends of the other two, and then those above and below"
	}
	return fmt.Sprintf("Border %d: %s. The quilt then measures %s unfinished.", stage.Number, how, s.size(stage.Size))
}

// looseText is what to do about a part that hangs together with nothing else.
func (s *sewer) looseText(n int) string {
	list := s.LooseCells(n)
	if len(list) == 0 {
		return "A strip of sashes is joined to nothing: fill the places beside it, or leave it out."
	}
	what, verb := "The block in ", " is"
	if len(list) > 1 {
		what, verb = "The blocks in ", " are"
	}
	return what + cellPlaces(list, s.Columns) + verb +
		" joined to no other part of the top, since the places beside are empty: put blocks of plain cloth into them, or finish this part by itself."
}

// grain is which edges lie off the straight grain.
func (s *sewer) grain() document.Section {
	var list sentences
	for i := range s.Blocks {
		b := &s.Blocks[i]
		list.add(s.edges(b), document.About{Patches: s.wholeBlock(b)})
	}
	if len(list.Items) == 0 {
		list.add("All edges of blocks lie on the straight grain.", document.About{})
	}
	for _, side := range s.outside() {
		list.add(side.text, document.About{Patches: s.cellPatches(side.cells)})
	}
	return document.Section{ID: SewingGrain, Title: "Edges that stretch", Depth: document.Detail, Blocks: list.blocks()}
}

// edges says how the edges of a block lie off the straight grain; "" where they do not.
func (s *sewer) edges(b *sewing.Block) string {
	names := [4]string{"top", "right", "bottom", "left"}
	var sides []string
	var edge sewing.EdgeGrain
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
	which := "the " + measure.List(sides)
	if len(sides) == len(names) {
		which = "all"
	}
	return fmt.Sprintf("%s%s: %s %s %s %s.", b.Label, s.upright(b, len(sides)), which, what, offGrain(edge.Degrees), part)
}

// upright says how a block is held so that its sides can be named, unless all are alike.
func (s *sewer) upright(b *sewing.Block, sides int) string {
	if sides == 4 || b.Column {
		return ""
	}
	text := byPicture(0)
	if len(b.Variants) == 1 {
		text = s.turn(b, &b.Variants[0], 0)
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

// outside is which edges off the grain lie on the outside of the field, and how to handle them.
func (s *sewer) outside() []placed {
	sides := map[string][]int{}
	for _, o := range s.Grain.Outside {
		sides[o.Side] = append(sides[o.Side], o.Cells...)
	}
	what := "Until the border is on, do not pull at these edges of the field, and sew them without stretching"
	if s.Grain.AtEdge {
		what = "These are edges of the top itself: sew a line just inside the seam allowance before you handle it, and do not pull"
	}
	var list []placed
	for _, side := range []string{"top", "right", "bottom", "left", "inside"} {
		found := slices.Compact(slices.Sorted(slices.Values(sides[side])))
		if len(found) == 0 {
			continue
		}
		where := "the " + side + " edges in "
		if side == "inside" {
			where = "edges beside empty places in "
		}
		list = append(list, placed{fmt.Sprintf("%s: %s%s.", what, where, cellPlaces(found, s.Columns)), found})
		what = "So too"
	}
	return list
}

// bulk is where fabric grows thick, and what becomes of points: what asks for something.
func (s *sewer) bulk() document.Section {
	b := &s.Bulk
	var list sentences
	if len(b.Thick) > 0 {
		list.add(fmt.Sprintf("More than %d layers lie on each other at these points, as allowances are folded. Trim dog ears there and sew slowly over them; where pressing the last seam open or turning all allowances one way round makes it less, that is said.", b.Limit), document.About{})
	}
	for i := range b.Thick[:min(maxListed, len(b.Thick))] {
		list.add(s.thick(&b.Thick[i]), document.About{Patches: s.patchesAt(b.Thick[i].At)})
	}
	if len(b.Thick) > maxListed {
		list.add("And others with fewer layers.", document.About{})
	}
	for i := range b.Points {
		if p := &b.Points[i]; p.Keep < p.Count {
			list.add(points(p), document.About{})
		}
	}
	for i := range b.Blunted {
		list.add(s.blunted(&b.Blunted[i]), document.About{Patches: s.patchesAt(b.Blunted[i].At)})
	}
	return document.Section{ID: SewingBulk, Title: "Thick places and points", Depth: document.Detail, Blocks: list.blocks()}
}

// thick is one sort of thick points.
func (s *sewer) thick(t *sewing.ThickPoint) string {
	text := fmt.Sprintf("%d layers where %d pieces meet, at %s, first at %s", t.Layers, t.Pieces, measure.Count(t.Count, "point"), s.where(t.At[0]))
	switch {
	case t.Inside:
	case t.Open < t.Layers && t.Round < t.Layers:
		text += fmt.Sprintf("; %d with the last seam pressed open, %d with all turned round", t.Open, t.Round)
	case t.Open < t.Layers:
		text += fmt.Sprintf("; %d with the last seam pressed open", t.Open)
	case t.Round < t.Layers:
		text += fmt.Sprintf("; %d with all turned round", t.Round)
	default:
		text += "; neither pressing open nor turning round makes it less"
	}
	return text + "."
}

// points says how many points of one shape keep their seam allowance.
func points(p *sewing.Points) string {
	text := fmt.Sprintf("Points of %s: %d of %d keep a seam allowance of cloth all round", measure.Plural(p.Shape), p.Keep, p.Count)
	if p.AtEdge > 0 {
		text += fmt.Sprintf("; %d lie on the quilt's outside, right in the binding's seam", p.AtEdge)
	}
	return text + "."
}

// blunted is points that the binding may blunt; "" for those on the outside itself.
func (s *sewer) blunted(n *sewing.NearPoint) string {
	if n.Distance == 0 {
		return ""
	}
	lie := " lie"
	if n.Count == 1 {
		lie = " lies"
	}
	return fmt.Sprintf("%s%s only %s from the quilt's outside, less than a seam allowance: the binding may blunt them, first at %s.", measure.Count(n.Count, "point"), lie, s.units.Nearest(n.Distance), s.where(n.At[0]))
}
