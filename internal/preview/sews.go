package preview

import (
	"fmt"

	"eighthturn/internal/diagram"
	"eighthturn/internal/plan/sewing"
)

// sewingReport turns a sewing plan into a report: the blocks step by step, how they go
// together, pressing, and where cloth stretches or grows thick. A step lights up its patches.
func sewingReport(p *plans) reportTab {
	plan := p.sewing()
	words := sewing.Words{Plan: plan}
	s := &sewRows{Words: words, plans: p, reportTab: reportTab{Name: "Sewing",
		Says: "with seams of " + words.Text(plan.Seam) + "; sizes are unfinished, from cut edge to cut edge with the seam allowances; rows are counted from the top, columns from the left"}}
	s.litBy = func(patches []int) []int { return patches }
	for i := range plan.Blocks {
		s.add(s.block(i))
	}
	s.add(s.assembly(), s.pressing(), s.grain(), s.bulk(), sentences("Take care", plan.Cautions))
	return s.reportTab
}

// sewRows turns a sewing plan into rows.
type sewRows struct {
	sewing.Words
	*plans
	reportTab
	between [][]int // seams of the top by seam of the assembly; nil until asked for
}

// patchesOf are the patches of some pieces of a block, at all of its places.
func (s *sewRows) patchesOf(b *sewing.Block, pieces []int) []int {
	var list []int
	for _, c := range b.Variants {
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
	out := section{Title: s.BlockHead(b)}
	if len(b.Steps) == 0 {
		out.Rows = append(out.Rows, row{Cells: []string{fmt.Sprintf("A piece of cloth, %s unfinished; nothing is sewn.", s.Size(b.Unfinished))}, Patches: s.wholeBlock(b)})
	}
	for i := range b.Steps {
		step := &b.Steps[i]
		w := row{Cells: []string{s.StepHead(b, i)}, Head: true, Under: s.StepLines(b, step), Patches: s.stepPatches(b, step)}
		w.Diagram = s.diagram(func() *diagram.Figure { return s.StepFigure(n, i) })
		out.Rows = append(out.Rows, w)
	}
	if b.Column {
		out.Rows = append(out.Rows, row{Cells: []string{s.LongestLine(b)}})
	}
	for i := range b.Rounds {
		out.Rows = append(out.Rows, row{Cells: []string{s.RoundLine(&b.Rounds[i])}, Patches: s.patchesOf(b, b.Rounds[i].Pieces)})
	}
	for group := range b.Ways {
		for _, said := range s.PressLines(b, group) {
			out.Rows = append(out.Rows, row{Cells: []string{said.Text}, Patches: s.cellPatches(said.Cells)})
		}
	}
	out.Rows = append(out.Rows, s.colourings(b)...)
	return out
}

func (s *sewRows) wholeBlock(b *sewing.Block) []int {
	var all []int
	for i := range b.Variants {
		all = append(all, placedPatches(b.Variants[i].Cells)...)
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

// mostPlaces is how many groups of places a text lists; the picture lights all of them up.
const mostPlaces = 12

// colourings is what blocks are sewn of, and where they go.
func (s *sewRows) colourings(b *sewing.Block) []row {
	var list []row
	for i := range b.Variants[:min(mostRows, len(b.Variants))] {
		c := &b.Variants[i]
		w := row{Cells: []string{s.VariantLine(b, c)}, Patches: placedPatches(c.Cells)}
		for _, said := range s.PlaceLines(b, c, mostPlaces) {
			w.Under = append(w.Under, said.Text)
		}
		list = append(list, w)
	}
	if n := len(b.Variants) - mostRows; n > 0 {
		list = append(list, row{Cells: []string{fmt.Sprintf("and %d more that differ in cloth; eighthturn sew --json lists them all", n)}})
	}
	return list
}

// mostRows is how many rows a section has that may have very many.
const mostRows = 40

// upTo are the numbers from the first to the last.
func upTo(first, last int) []int {
	var list []int
	for n := first; n <= last; n++ {
		list = append(list, n)
	}
	return list
}
