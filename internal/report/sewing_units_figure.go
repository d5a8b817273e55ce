package report

import (
	"fmt"
	"sync"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// overview is the units of a block in the order in which they are made, before its steps; nothing where there is one step.
func (s *sewer) overview(n int) []document.Block {
	if b := &s.Blocks[n]; b.Column || len(b.Steps) < 2 {
		return nil
	}
	return []document.Block{para("Make the units in the order shown."), document.Figure{Draw: sync.OnceValue(func() *diagram.Figure { return s.drawUnits(n) })}}
}

// drawUnits is the picture of it: a panel for each unit, right side up, with its number for a block.
func (s *sewer) drawUnits(block int) *diagram.Figure {
	b := &s.Blocks[block]
	f := &diagram.Figure{Title: fmt.Sprintf("%sthe units of block %s", SewingPictureTitle, b.Label)}
	f.Description = fmt.Sprintf("The units of block %s in the order in which the steps make them, right side up.", b.Label)
	shown := s.Shown(block)
	for n := range b.Steps {
		step := &b.Steps[n]
		d := &stepDrawing{sketch: sketch{Figure: f, plan: s.Plan, top: s.top}, shown: shown, seam: s.Seam, step: step, list: shown.Pieces}
		d.pick(b)
		corner := panelAt(n, 0)
		d.panel(fmt.Sprintf("Step %d: %s, %d for each block", n+1, step.Name, max(1, step.PerBlock)), corner)
		outer := d.outer(d.unit)
		d.place = fittedIn(outer, corner, panel, same)
		d.area(outer, white(), false, diagram.Frame)
		d.pieces(d.list, d.unit, false)
	}
	(&stepDrawing{sketch: sketch{Figure: f}}).framed()
	return f
}

// maxPictured is how many fabric placements of a block are shown one by one.
const maxPictured = 8

// placements is a picture of each fabric placement of a block; nothing where there is one, or too many.
func (s *sewer) placements(n int) []document.Block {
	if b := &s.Blocks[n]; b.Column || len(b.Variants) < 2 || len(b.Variants) > maxPictured {
		return nil
	}
	return []document.Block{document.Figure{Draw: sync.OnceValue(func() *diagram.Figure { return s.drawPlacements(n) })}}
}

// drawPlacements is that picture: a panel for each, finished, its top upward.
func (s *sewer) drawPlacements(block int) *diagram.Figure {
	b := &s.Blocks[block]
	f := &diagram.Figure{Title: fmt.Sprintf("%seach fabric placement of block %s", SewingPictureTitle, b.Label)}
	f.Description = fmt.Sprintf("Block %s in each of its %d fabric placements, finished, its top edge upward.", b.Label, len(b.Variants))
	for n := range b.Variants {
		shown := s.ShownAs(block, n)
		d := &stepDrawing{sketch: sketch{Figure: f, plan: s.Plan, top: s.top}, shown: shown, seam: s.Seam, list: shown.Pieces}
		corner := panelAt(n, 0)
		d.panel(fmt.Sprintf("%s: %s", b.VariantName(b.Variants[n].Number), measure.Count(len(b.Variants[n].Cells), "block")), corner)
		var corners []measure.Vec
		all := make([]int, len(d.list))
		for i := range d.list {
			all[i] = i
			corners = append(corners, vecsOf(d.list[i].Outline)...)
		}
		d.place = fittedIn(corners, corner, panel, same)
		d.pieces(d.list, all, false)
	}
	(&stepDrawing{sketch: sketch{Figure: f}}).framed()
	return f
}
