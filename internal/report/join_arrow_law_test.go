package report

import (
	"fmt"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// wrongJoinArrow is what is wrong with the arrow across a seam of a block in the picture of the rows: it points to the side to which
// the seam is pressed, or clockwise round the point that the seam turns, and lies on the seam.
func wrongJoinArrow(s *sewer, block int, cell int, j *sewing.Join) error {
	d := &topDrawing{sketch: sketch{Figure: &diagram.Figure{}, plan: s.Plan, top: s.top, place: same}}
	d.joinArrow(cell, &s.Blocks[block], j)
	points := d.Marks[0].Line.Points
	tip, foot := vecOf(points[1]), vecOf(points[0])
	from, to := vecOf(s.InBlock(cell, j.From)), vecOf(s.InBlock(cell, j.To))
	middle := tip.Plus(foot).Times(0.5)
	if off := from.Minus(middle).Length() + to.Minus(middle).Length() - from.Minus(to).Length(); off > 4 {
		return fmt.Errorf("it lies %.0f nm beside the seam", off)
	}
	right := to.Minus(from).Quarter()
	if j.Round {
		right = middle.Minus(vecOf(s.InBlock(cell, s.Shown(block).About(j)))).Quarter()
	}
	if side := tip.Minus(foot).Dot(right); side > 0 != (s.Way(cell, j.Choice) == 0) || side == 0 {
		return fmt.Errorf("it points the wrong way, from %v to %v", points[0], points[1])
	}
	return nil
}

// TestJoinArrows: see wrongJoinArrow, over the samples and invented layouts.
func TestJoinArrows(t *testing.T) {
	outwards, inwards, plain := 0, 0, 0
	for name, s := range sewers() {
		for b := range s.Blocks {
			k := &s.Blocks[b]
			if k.Spins() || k.Column {
				continue
			}
			about := func(p measure.Point) bool { return len(k.Rounds) > 0 && p == k.Rounds[0].At }
			for _, v := range k.Variants {
				for _, step := range k.Steps {
					for i := range step.Joins {
						j := &step.Joins[i]
						switch {
						case !j.Round:
							plain++
						case about(j.From):
							outwards++
						case about(j.To):
							inwards++
						}
						if err := wrongJoinArrow(s, b, v.Cells[0].Cell, j); err != nil {
							t.Errorf("%s, block %s, join %d: %v", name, k.Label, j.Number, err)
						}
					}
				}
			}
		}
	}
	if outwards < 20 || inwards < 5 || plain < 20 {
		t.Errorf("only %d seams away from a point, %d towards one and %d others", outwards, inwards, plain)
	}
}
