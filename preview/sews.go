package preview

import (
	"fmt"

	"eighthturn/figure"
	"eighthturn/sewing"
)

// sewingReport turns a sewing plan into a report: the blocks step by step, how they go
// together, pressing, and where cloth stretches or grows thick. A step lights up its patches.
func sewingReport(p *plans) report {
	plan := p.sewing()
	s := &sewRows{sewWords: sewWords{plan}, plans: p, report: report{Name: "Sewing",
		Says: "with seams of " + (sewWords{plan}).text(plan.Seam) + "; sizes are unfinished, from raw edge to raw edge, where nothing else is said; r2c5 is row 2, column 5"}}
	s.litBy = func(patches []int) []int { return patches }
	for i := range plan.Blocks {
		s.add(s.block(i))
	}
	s.add(s.assembly(), s.pressing(), s.grain(), s.bulk(), sentences("Take care", plan.Cautions))
	return s.report
}

// sewRows turns a sewing plan into rows.
type sewRows struct {
	sewWords
	*plans
	report
	between [][]int // seams of the top by seam of the assembly; nil until asked for
}

// patchesOf are the patches of some pieces of a block, at all of its places.
func (s *sewRows) patchesOf(b *sewing.Block, pieces []int) []int {
	var list []int
	for _, c := range b.Colourings {
		for _, at := range c.Cells {
			list = append(list, s.Patches(at.Cell, pieces)...)
		}
	}
	return list
}

// cellPatches are all patches of some cells.
func (s *sewRows) cellPatches(cells []int) []int {
	var list []int
	for _, n := range cells {
		c := &s.top.Cells[n]
		list = append(list, upTo(c.First, c.First+c.Count-1)...)
	}
	return list
}

// placedPatches are all patches of blocks where they are placed.
func placedPatches(list []sewing.Placed) []int {
	var all []int
	for _, at := range list {
		for _, n := range at.Patches {
			all = append(all, int(n))
		}
	}
	return all
}

// block is how the blocks of one label are made.
func (s *sewRows) block(n int) section {
	b := &s.Blocks[n]
	noun := "block"
	if b.Column {
		noun = "column"
	}
	out := section{Title: fmt.Sprintf("%s, %s: make %s", b.Label, b.Kind, plural(b.Count, noun))}
	if len(b.Steps) == 0 {
		out.Rows = append(out.Rows, row{Cells: []string{fmt.Sprintf("A piece of cloth, %s; nothing is sewn.", s.size(b.Unfinished))}, Patches: s.wholeBlock(b)})
	}
	for i := range b.Steps {
		step := &b.Steps[i]
		w := row{Cells: []string{fmt.Sprintf("%d. %s: make %d", i+1, step.Name, step.Make)}, Head: true, Under: s.step(b, step), Patches: s.stepPatches(b, step)}
		w.Diagram = s.diagram(func() *figure.Figure { return s.StepFigure(n, i) })
		out.Rows = append(out.Rows, w)
	}
	if b.Column {
		out.Rows = append(out.Rows, row{Cells: []string{fmt.Sprintf("The longest are about %s.", s.size(b.Unfinished))}})
	}
	for i := range b.Rounds {
		out.Rows = append(out.Rows, row{Cells: []string{s.round(&b.Rounds[i])}, Patches: s.patchesOf(b, b.Rounds[i].Pieces)})
	}
	out.Rows = append(out.Rows, s.ways(b)...)
	out.Rows = append(out.Rows, s.colourings(b)...)
	return out
}

func (s *sewRows) wholeBlock(b *sewing.Block) []int {
	var all []int
	for i := range b.Colourings {
		all = append(all, placedPatches(b.Colourings[i].Cells)...)
	}
	return all
}

// stepPatches are the patches that a step joins.
func (s *sewRows) stepPatches(b *sewing.Block, step *sewing.Step) []int {
	joined := map[int]bool{}
	var pieces []int
	for _, j := range step.Joins {
		for _, n := range append(append([]int{}, j.A...), j.B...) {
			if !joined[n] {
				joined[n] = true
				pieces = append(pieces, n)
			}
		}
	}
	return s.patchesOf(b, pieces)
}

// ways is how the seams of a block are pressed, place by place where that differs.
func (s *sewRows) ways(b *sewing.Block) []row {
	var list []row
	for group := range b.Ways {
		var cells [2][]int
		var patches [2][]int
		for _, c := range b.Colourings {
			for _, at := range c.Cells {
				way := s.Way(at.Cell, group)
				cells[way] = append(cells[way], at.Cell)
				patches[way] = append(patches[way], placedPatches([]sewing.Placed{at})...)
			}
		}
		for way, words := range b.Ways[group] {
			if len(cells[way]) == 0 {
				continue
			}
			text := fmt.Sprintf("Press %s %s", s.pressedSeams(b, group), words)
			if len(cells[1-way]) > 0 {
				text += " in " + s.places(cells[way])
			}
			list = append(list, row{Cells: []string{text + "."}, Patches: patches[way]})
		}
	}
	return list
}

// pressedSeams is which seams of a block follow one choice.
func (s *sewRows) pressedSeams(b *sewing.Block, group int) string {
	if len(b.Ways) == 1 {
		return "its seams"
	}
	var names []string
	named := map[string]bool{}
	for _, step := range b.Steps {
		for _, j := range step.Joins {
			if j.Choice == group && !named[step.Name] {
				named[step.Name] = true
				names = append(names, step.Name)
			}
		}
	}
	return "the seams of the " + listed(names)
}

// colourings is what blocks are sewn of, and where they go.
func (s *sewRows) colourings(b *sewing.Block) []row {
	noun := "block"
	if b.Column {
		noun = "column"
	}
	var list []row
	for i := range b.Colourings[:min(mostRows, len(b.Colourings))] {
		c := &b.Colourings[i]
		name, each := b.Label, ""
		if len(b.Colourings) > 1 {
			name += fmt.Sprint(c.Number)
		}
		if len(c.Cells) > 1 {
			each = " each"
		}
		text := fmt.Sprintf("%s: %s of %s%s", name, plural(len(c.Cells), noun), clothCounts(c.Cloths), each)
		if c.Leans != "" {
			text += ", its first slanted seam falling to the " + c.Leans
		}
		list = append(list, row{Cells: []string{text}, Under: []string{s.turned(c)}, Patches: placedPatches(c.Cells)})
	}
	if n := len(b.Colourings) - mostRows; n > 0 {
		list = append(list, row{Cells: []string{fmt.Sprintf("and %d more that differ in cloth; eighthturn sew --json lists them all", n)}})
	}
	return list
}
