package report

import (
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/samples"
)

// filed are the figures that are written as files of their own: cutting maps and the pictures of the steps.
func filed(p *Plans) []*diagram.Figure {
	var list []*diagram.Figure
	for _, m := range CuttingMaps(p) {
		list = append(list, m.Figure)
	}
	for _, s := range SewingPictures(p) {
		list = append(list, s.Figure)
	}
	return list
}

// TestWordsHaveRoomInAnyFace: programs that open files set their words in whatever face they have, and mostly pass over how long they
// are to be. With room for the widest of the usual faces no words of a figure stand over others, beyond the sheet or under a line.
func TestWordsHaveRoomInAnyFace(t *testing.T) {
	noticed := 0
	for _, n := range usualPlans()[:len(samples.All())] {
		for _, f := range filed(n.Plans) {
			for _, wrong := range diagram.Place(f, diagram.Options{AnyFace: true}).Illegible(1, 1) {
				t.Errorf("%s: %s", n.name, wrong)
			}
			noticed += len(widened(diagram.Place(f, diagram.Options{})).Illegible(1, 1))
		}
	}
	if noticed == 0 {
		t.Error("words that have no room in another face are not noticed")
	}
}

// widened is a sheet whose words are set in a face a fifth wider.
func widened(s *diagram.Sheet) *diagram.Sheet {
	for i := range s.Items {
		l := s.Items[i].Label
		if l == nil {
			continue
		}
		const more = 0.2
		along := [4]measure.Vec{{X: -1}, {Y: -1}, {X: 1}, {Y: 1}}[l.Quarters]
		back := l.Width * more * [3]float64{diagram.Middle: 0.5, diagram.End: 1}[l.Anchor]
		l.At = l.At.Plus(measure.Vec{X: along.X * back, Y: along.Y * back})
		l.Width *= 1 + more
	}
	return s
}
