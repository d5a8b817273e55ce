package blocks

import "eighthturn/internal/measure"

// tumblerShape: a trapezoid whose slanted sides lean 22.5 degrees; its strip is the block's side and two seams.
func tumblerShape() *Description {
	return &Description{
		Name: "tumbler", FinishedAs: "height by width at the middle", Angles: [][]float64{{67.5, 112.5, 112.5, 67.5}, {112.5, 67.5, 67.5, 112.5}}, Sized: ByColumn, Point: -1, Blunt: -1, Grain: [2]int{1, 2}, Tools: []Tool{WedgeRule},
		CutTitle: "Tumblers",
		CutWords: "Square up the end of the strip. Align the wedge ruler (a 45-degree ruler) with the edge of the strip at the ruler line in the table, or use the template, and cut both sides. Rotate the ruler 180 degrees after each cut.",
		Lies: func(o []Place) (from, to int) { // from its upper left corner clockwise: its parallel sides run down; the wide one down
			if o[2].distance(o[1]) > o[0].distance(o[3]) {
				return 2, 1
			}
			return 0, 3
		},
		LengthIn: func(c *Column) float64 { return c.Mean },
		Cut:      cutTumbler,
	}
}

// TumblerCut is the parallel sides of a tumbler, wide and narrow, by the line of a wedge rule laid on the edge of a strip.
func TumblerCut(line, stripCut, seam measure.NM) (wide, narrow measure.NM) {
	grown := times(seam, 2*tan22/sin22)
	return nearest(times(line-seam, 2*tan22) + grown), nearest(times(line-stripCut-seam, 2*tan22) + grown)
}

func cutTumbler(z *Sizing) (CutSize, []Exact, bool) {
	cut := z.SideFinished + 2*z.Seam
	line := LineFor(z.Divided.Mean, cut, z.Seam)
	if !z.gives(cut) || line <= cut || line > MaxCut {
		return CutSize{}, nil, false
	}
	c := CutSize{Method: Nested, SideFinished: z.SideFinished, LengthFinished: nearest(z.Divided.Mean), AcrossExact: cut, AcrossCut: cut, Grain: [2]int{1, 2}}
	c.WideCut, c.NarrowCut = TumblerCut(line, cut, z.Seam)
	c.AlongExact, c.AlongCut = c.WideCut, c.WideCut
	return c, []Exact{{"the strip for tumblers", cut, z.sideOfSquare}, {"the line of a wedge ruler for tumblers", line, nil}}, true
}
