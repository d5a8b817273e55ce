package report

import (
	"fmt"
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
)

// setMap is a strip set with the wedges that are cut from it.
func (c *cuts) setMap(n int) *diagram.Figure {
	s := &c.Sets[n]
	run := s.Runs[0]
	lines := c.setLines(n)
	f := &diagram.Figure{
		Title:       fmt.Sprintf("%s, %s: %s wide, sewn", CuttingMapTitle, c.setName(n, false), c.length(s.WidthCut)),
		Description: fmt.Sprintf("%d wedges side by side, alternate wedges reversed, from a strip set of %d strips", run.Wedges, len(s.Bands)),
		Max:         measure.Point{X: run.LengthCut, Y: s.WidthCut},
		NoLegend:    true, // the caption says what is cut
	}
	f.Marks = append(f.Marks, diagram.Mark{Area: &diagram.Area{Outline: rectangle(0, 0, run.LengthCut, s.WidthCut), Clear: true, Edge: diagram.Cut}})
	outlines := c.Lines[lines[0]].Piece.Row(run.Wedges)
	low := s.WidthCut // the first band is at the wide ends of the wedges that stand upright
	for i, b := range s.Bands {
		high := low - b.WidthFinished
		if i == 0 {
			high -= c.Seam
		}
		if high = max(0, high); i == len(s.Bands)-1 {
			high = 0
		}
		f.Marks = append(f.Marks, diagram.Mark{Words: &diagram.Words{
			Text: c.Fabrics[b.Fabric].Name + " " + c.Units.Number(b.WidthCut), At: measure.Point{X: -run.LengthCut / 100, Y: (high + low) / 2}, Points: labelPoints, Anchor: diagram.End, Across: low - high, Optional: true,
		}})
		for _, outline := range outlines {
			f.Marks = append(f.Marks, diagram.Mark{Lit: lines, Area: &diagram.Area{Outline: moved(slice(outline, high, low), 0, 0), Fill: c.Fabrics[b.Fabric].Colour, Edge: diagram.Thin}})
		}
		low = high
	}
	return f
}

// slice is what lies between two heights of a wedge's outline.
func slice(o []measure.Point, high, low measure.NM) []measure.Point {
	on := func(a, b measure.Point, y measure.NM) measure.Point {
		along := float64(b.X-a.X) * float64(y-a.Y) / float64(b.Y-a.Y)
		return measure.Point{X: a.X + measure.NM(math.Round(along)), Y: y}
	}
	return []measure.Point{on(o[0], o[3], high), on(o[1], o[2], high), on(o[1], o[2], low), on(o[0], o[3], low)}
}
