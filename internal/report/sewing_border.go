package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// border is the section of one border: what it is cut as, and how it is sewn on.
func (s *sewer) border(stage *sewing.Stage) document.Section {
	n := stage.Number - 1
	edging := &s.top.CutFacts.Borders[n]
	out := document.Section{ID: SewingBorder(stage.Number), Title: capital(s.plans.borderName(stage.Number))}
	out.Blocks = append(out.Blocks, para("This border finishes %s wide, of fabric %s. Measure the quilt through the center before you cut the strips to length; the lengths below are calculated%s.",
		s.units.Nearest(edging.Width), s.plans.called(edging.Fabric), s.roundedUp(n)))
	t := table(words("pieces"), words("cut to"))
	s.borderLines(n, func(line *cutting.Line) {
		r := row(s.borderPieces(line), s.units.Size(line.Piece.AcrossCut, line.Piece.AlongCut))
		r.About.Patches = line.Patches
		t.Rows = append(t.Rows, r)
	})
	about := document.About{Seams: s.seamsFrom(stage.First, stage.Count), Patches: s.borderPatches(n)}
	var list sentences
	item := list.add(s.borderText(stage), about)
	item.Blocks = append(item.Blocks, s.bordersFigure()...)
	s.borderPress(&list, stage)
	out.Blocks = append(append(out.Blocks, t), list.blocks()...)
	return out
}

// borderPieces counts the pieces of a line of a border, strips by the sides that they are for.
func (s *sewer) borderPieces(line *cutting.Line) string {
	if !line.Piece.Shape.Description().Edging {
		return s.plans.countedPieces(line.Pieces, line)
	}
	return measure.Count(line.Pieces, strings.TrimSpace(strings.TrimSuffix(borderSides(s.top, line), "s")+" strip"))
}

// borderSides is which sides of the quilt a line of a border's strips is for: "sides", "top and bottom", or "" for all of them.
func borderSides(top *quilt.Top, line *cutting.Line) string {
	beside := 0
	for _, n := range line.Patches {
		if a, b := top.Patches[n].Outline[0], top.Patches[n].Outline[2]; max(a.X, b.X) <= top.Field.Min.X || min(a.X, b.X) >= top.Field.Max.X { // opposite corners
			beside++
		}
	}
	switch {
	case line.Border < 0 || beside > 0 && beside < len(line.Patches):
		return ""
	case beside > 0:
		return "sides"
	}
	return "top and bottom"
}

// borderLines hands on the lines of one quilt's cutting plan that are for a border.
func (s *sewer) borderLines(border int, with func(*cutting.Line)) {
	plan := s.plans.One()
	for i := range plan.Lines {
		if plan.Lines[i].Border == border {
			with(&plan.Lines[i])
		}
	}
}

// roundedUp says that lengths of a border's strips are more than the quilt's, where a ruler has no mark for it.
func (s *sewer) roundedUp(border int) string {
	text := ""
	s.borderLines(border, func(line *cutting.Line) {
		if line.Piece.TrimCut > 0 {
			text = " and rounded up to the next ruler mark"
		}
	})
	return text
}

// lineSize is rows or columns that have the same size, and sashes between them.
type lineSize struct {
	numbers []int // none for sashes
	count   int
	size    sewing.Size
}

// lineSizes puts rows or columns together that differ in nothing but their number.
func (s *sewer) lineSizes() []lineSize {
	var list []lineSize
	for i := range s.Assembly.Stages {
		stage := &s.Assembly.Stages[i]
		if stage.Sort != sewing.LineStage {
			continue
		}
		at := slices.IndexFunc(list, func(l lineSize) bool { return l.size == stage.Size && (len(l.numbers) > 0) == (stage.Number > 0) })
		if at < 0 {
			at = len(list)
			list = append(list, lineSize{size: stage.Size})
		}
		list[at].count++
		if stage.Number > 0 {
			list[at].numbers = append(list[at].numbers, stage.Number)
		}
	}
	return list
}

// sashing is what the sashes between rows are called: rows of their own where they have posts.
func (s *sewer) sashing() string {
	if slices.ContainsFunc(s.Lines(), func(l sewing.Line) bool {
		return l.Number == 0 && slices.ContainsFunc(l.Tiles, func(t sewing.Tile) bool { return t.Post })
	}) {
		return "sashing row"
	}
	return "sash"
}

// linesTable is how large the rows or columns are, and the sashes between them, where they are not all alike.
func (s *sewer) linesTable() []document.Block {
	t := table(words(measure.Plural(s.line())), words("unfinished"))
	t.Named = true
	for _, l := range s.lineSizes() {
		name := measure.Count(l.count, s.sashing())
		if len(l.numbers) > 0 {
			name = everyOther(s.line(), l.numbers)
		}
		t.Rows = append(t.Rows, row(capital(name), s.size(l.size)))
	}
	if len(t.Rows) < 2 {
		return nil
	}
	return []document.Block{t}
}

// everyOther names numbers that rise; of many that are every other one, the first and the last, and whether they are odd or even.
func everyOther(what string, list []int) string {
	last := len(list) - 1
	if last < 5 {
		return numbered(what, list)
	}
	for i := range last {
		if list[i+1]-list[i] != 2 {
			return numbered(what, list)
		}
	}
	return fmt.Sprintf("%s %s %d to %d", [2]string{"even", "odd"}[list[0]%2], measure.Plural(what), list[0], list[last])
}
