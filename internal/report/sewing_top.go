package report

import (
	"fmt"
	"slices"
	"strconv"

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

// SewingBorder is the id of the section of a border, from 1; it begins with SewingBorders.
func SewingBorder(number int) string { return SewingBorders + strconv.Itoa(number) }

// SewingBorders begins the ids of the sections of all borders.
const SewingBorders = "border-"

// together is how blocks, sashes and borders go together, and how they are pressed, in the order of the work.
func (s *sewer) together() document.Section {
	out := document.Section{ID: SewingTogether, Title: "Joining the " + measure.Plural((Grid{s.top, s.Plan}).Noun()), Depth: document.Detail}
	add := func(part document.Section) {
		if len(part.Blocks) > 0 {
			out.Blocks = append(out.Blocks, part)
		}
	}
	add(s.inLines())
	before := []document.Section{s.bulk(), s.grain()} // what is to be known of the center before borders cover its edges
	if len(s.Assembly.Seams) == 0 {
		before = nil
	}
	for i := range s.Assembly.Stages {
		switch stage := &s.Assembly.Stages[i]; stage.Sort {
		case sewing.LinesStage:
			add(s.joined(stage))
		case sewing.BorderStage:
			for _, part := range before {
				add(part)
			}
			before = nil
			out.Blocks = append(out.Blocks, s.border(stage))
		}
	}
	for _, part := range before {
		add(part)
	}
	var loose sentences
	for n := range s.Assembly.Loose {
		loose.add(s.looseText(n), document.About{Patches: s.cellPatches(s.LooseCells(n))}).Tone = document.Doubtful
	}
	add(document.Section{ID: SewingLoose, Blocks: loose.blocks()})
	if len(out.Blocks) == 0 {
		out.Blocks = []document.Block{para("The top is a single piece; no sewing is needed.")}
	}
	return out
}

// inLines is how the blocks and sashes of each row or column go together.
func (s *sewer) inLines() document.Section {
	var list sentences
	if text := s.linesText(); text != "" {
		item := list.add(text, document.About{Seams: s.lineSeams()})
		item.Blocks = append(item.Blocks, s.linesFigure()...)
	}
	list.add(s.sashesText(), document.About{})
	for _, way := range s.lineWays() {
		list.add(way.text, document.About{Seams: s.stageSeams(way.stages)})
	}
	if len(list.Items) == 0 {
		return document.Section{}
	}
	return document.Section{ID: SewingLines, Title: capital(measure.Plural(s.line())), Blocks: append(list.blocks(), s.linesTable()...)}
}

// joined is how the rows or columns are sewn together.
func (s *sewer) joined(stage *sewing.Stage) document.Section {
	var list sentences
	what := measure.Plural(s.line()) + " together in order"
	if s.Sashed() {
		what = "rows and the " + measure.Plural(s.sashing()) + " together in order"
	}
	text := fmt.Sprintf("Sew the %s. Pin at every intersection, nesting the seams. The quilt center should measure %s unfinished.", what, s.size(stage.Size))
	item := list.add(text, document.About{Seams: s.seamsFrom(stage.First, stage.Count)})
	item.Blocks = append(item.Blocks, s.linesFigure()...)
	s.longPress(&list, stage)
	return document.Section{ID: SewingLong, Title: "Joining the " + measure.Plural(s.line()), Blocks: list.blocks()}
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
		return "The columns are complete: their tumblers and end pieces are already sewn. Lay them side by side in order."
	case seams == 0:
		return ""
	}
	whole := ""
	if columns {
		whole = " Columns of tumblers are already sewn: one that fills a column of the layout is complete; one that fills part of it counts as one block."
	}
	which := "each"
	if slices.ContainsFunc(s.lineSizes(), func(l lineSize) bool { return len(l.numbers) > 0 && l.size != size }) {
		which = "the longest"
	}
	return fmt.Sprintf("Sew the blocks of each %s together%s to make %s, %s %s unfinished. Pin where seam lines meet, not at trimmed corners.%s",
		s.line(), s.sashesWithin(), measure.Count(rows, s.line()), which, s.size(size), whole)
}

// sashesWithin says where the sashes of each row go, and how many one takes where all take as many; "" where there are none.
func (s *sewer) sashesWithin() string {
	ends, least, most := false, len(s.Assembly.Parts), 0
	for _, line := range s.Lines() {
		if line.Number == 0 || len(line.Tiles) == 0 {
			continue
		}
		n := 0
		for _, t := range line.Tiles {
			if s.Assembly.Parts[t.Part].Cell < 0 {
				n++
			}
		}
		ends = ends || s.Assembly.Parts[line.Tiles[0].Part].Cell < 0
		least, most = min(least, n), max(most, n)
	}
	if most == 0 {
		return ""
	}
	text := ", with a sash between blocks"
	if ends {
		text += " and at both ends"
	}
	if least == most {
		text += fmt.Sprintf(" (%s in each %s)", measure.Count(most, "sash"), s.line())
	}
	return text + ","
}

// sashesText is how the sashes between rows go together; "" where there are none.
func (s *sewer) sashesText() string {
	rows, posts, sashes, first := 0, 0, 0, "sash"
	for _, line := range s.Lines() {
		if line.Number > 0 || len(line.Tiles) == 0 {
			continue
		}
		rows++
		posts, sashes = 0, 0
		for i, t := range line.Tiles {
			if t.Post {
				posts++
			} else {
				sashes++
			}
			if i == 0 && posts > 0 {
				first = "post"
			}
		}
	}
	switch {
	case rows == 0:
		return ""
	case posts == 0:
		return singular(rows, "The sash between the rows is one long strip.", fmt.Sprintf("Each of the %d sashes between the rows is one long strip.", rows))
	}
	return fmt.Sprintf("Make %s of %s and %s, starting with a %s.", measure.Count(rows, "sashing row"), measure.Count(sashes, "sash"), measure.Count(posts, "post"), first)
}

// borderText is how a border is sewn on.
func (s *sewer) borderText(stage *sewing.Stage) string {
	how := "Sew the side borders on first, then the top and bottom across the full width"
	if stage.Count > 4 {
		how = "Sew the side borders on first; sew a square to each end of the other two, then sew on the top and bottom"
	}
	return fmt.Sprintf("%s. The quilt should measure %s unfinished.", how, s.size(stage.Size))
}

// looseText is what to do about a part that hangs together with nothing else.
func (s *sewer) looseText(n int) string {
	list := s.LooseCells(n)
	if len(list) == 0 {
		return "A strip of sashing is joined to nothing: fill the places beside it, or omit it."
	}
	what, verb := "The block in ", " is"
	if len(list) > 1 {
		what, verb = "The blocks in ", " are"
	}
	return what + cellPlaces(list, s.Columns) + verb +
		" not joined to the rest of the top, because the places around are empty: fill them with plain blocks, or finish this part by itself."
}

// grain is which edges lie off the straight grain.
func (s *sewer) grain() document.Section {
	var list sentences
	for i := range s.Blocks {
		b := &s.Blocks[i]
		list.add(s.edges(b), document.About{Patches: s.wholeBlock(b)})
	}
	if len(list.Items) == 0 {
		list.add("All "+(Grid{s.top, s.Plan}).Noun()+" edges are on the straight grain.", document.About{})
	}
	for _, side := range s.outside() {
		list.add(side.text, document.About{Patches: s.cellPatches(side.cells)})
	}
	return document.Section{ID: SewingGrain, Title: "Bias edges", Depth: document.Detail, Blocks: list.blocks()}
}

// edges says which edges of a block lie off the straight grain; "" where none do.
func (s *sewer) edges(b *sewing.Block) string { return s.edgeWords(b, false) }

// edgeWords says which edges of a block lie off the straight grain, or how far off exactly; "" where none do.
func (s *sewer) edgeWords(b *sewing.Block, exactly bool) string {
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
	which, what := "the "+measure.List(sides), "edges are"
	switch {
	case len(sides) == len(names):
		which = "all"
	case len(sides) == 1:
		what = "edge is"
	}
	text := fmt.Sprintf("%s%s: %s %s ", b.Label, s.upright(b, len(sides)), which, what)
	if !exactly && edge.Straight > 0 {
		return text + "partly off the straight grain."
	} else if !exactly {
		return text + "off the straight grain."
	}
	whose := singular(len(sides), "its", "their")
	part := "along " + whose + " full length"
	if off := edge.OffGrain + edge.Bias; edge.Straight > 0 {
		part = fmt.Sprintf("for %.0f%% of %s length and on the straight grain for the rest", 100*float64(off)/float64(off+edge.Straight), whose)
	}
	return text + offGrain(edge.Degrees) + " " + part + "."
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

// outside is how to handle the outer edges of the field that lie off the grain, and where they are; nothing where none do.
func (s *sewer) outside() []placed {
	var sides []string
	var cells []int
	beside := false
	for _, side := range []string{"top", "right", "bottom", "left", "inside"} {
		found := false
		for _, o := range s.Grain.Outside {
			if o.Side == side {
				found, cells = true, append(cells, o.Cells...)
			}
		}
		switch {
		case found && side == "inside":
			beside = true
		case found:
			sides = append(sides, side)
		}
	}
	if len(cells) == 0 {
		return nil
	}
	of := "quilt center"
	if s.Grain.AtEdge {
		of = "quilt"
	}
	which := "All four outer edges of the " + of + " are"
	switch len(sides) {
	case 0:
		which = "The edges beside empty places are"
	case 1:
		which = "The " + sides[0] + " edge of the " + of + " is"
	case 2, 3:
		which = "The " + measure.List(sides) + " edges of the " + of + " are"
	}
	if beside && len(sides) > 0 {
		which += ", like those beside empty places,"
	}
	where := "just inside the seam allowance"
	if near := s.Grain.Staystitch; near > 0 && near < s.Seam {
		where = s.units.Nearest(near) + " from the raw edge"
	}
	text := fmt.Sprintf("%s at least partly on the bias: do not stretch them; staystitch %s.", which, where)
	return []placed{{text, slices.Compact(slices.Sorted(slices.Values(cells)))}}
}
