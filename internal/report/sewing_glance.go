package report

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// SewingGlance is the id of the section that tells at a glance what is made in which order, and how large it must be.
const SewingGlance = "at-a-glance"

// glance is the blocks, the lines and the borders in the order in which they are sewn, each with its unfinished size.
func (s *sewer) glance() document.Section {
	t := document.Table{Named: true, Columns: []document.Column{words("make"), words("unfinished, with " + s.units.Nearest(s.Seam) + " seams")}}
	add := func(what, size string, about document.About) {
		r := row(number(len(t.Rows)+1)+". "+what, size)
		r.About = about
		t.Rows = append(t.Rows, r)
	}
	for i := range s.Blocks[:min(len(s.Blocks), maxListed)] {
		b := &s.Blocks[i]
		size := s.units.Size(b.Unfinished.Across, b.Unfinished.Down)
		if b.Column {
			size = "up to " + size
		}
		add(fmt.Sprintf("%s %s (%s)", measure.Count(b.Count, noun(b)), b.Label, b.Kind), size, document.About{Patches: s.wholeBlock(b)})
	}
	if more := len(s.Blocks) - maxListed; more > 0 {
		add(fmt.Sprintf("%d more sorts of block", more), "", document.About{})
	}
	lines := 0
	for i := range s.Assembly.Stages {
		stage := &s.Assembly.Stages[i]
		about := document.About{Seams: s.seamsFrom(stage.First, stage.Count)}
		switch stage.Sort {
		case sewing.LineStage:
			if stage.Number > 0 {
				lines++
			}
		case sewing.LinesStage:
			add(fmt.Sprintf("quilt center, from %s", measure.Count(lines, s.line())), s.size(stage.Size), about)
		case sewing.BorderStage:
			about.Patches = s.borderPatches(stage.Number - 1)
			add("with "+s.plans.borderName(stage.Number), s.size(stage.Size), about)
		}
	}
	out := section(SewingGlance, "At a glance"+s.forEach(), document.Answer)
	out.Blocks = []document.Block{t}
	return out
}
