package blocks

import "eighthturn/internal/measure"

// wedgeShape: isosceles, 45 degrees at its tip; side by side in a strip, every other one turned round. The strip's edge
// leaves the tip blunt.
func wedgeShape() *Description {
	return &Description{
		Name: "wedge", FinishedAs: "height", Angles: [][]float64{{45, 67.5, 67.5}}, Sized: ByStrip, Gathers: WebCentre, Round: 45, Kept: true, Point: 0, Blunt: 0, Grain: [2]int{2, 1}, Tools: []Tool{WedgeRule},
		CutTitle: "Wedges",
		CutWords: "Square up the end of the strip. Place the wedge ruler (a 45-degree ruler) or the template across the strip from edge to edge and cut both sides. " +
			"Rotate the ruler 180 degrees after each cut, so that its wide end is where the tip was: each cut is shared by two wedges. Leave the tips blunt; the table gives their width.",
		Lies: func([]Place) (from, to int) { return 2, 1 }, // its tip up
		Cut:  cutWedge,
	}
}

// WedgeCut is the wide end of a wedge from a strip of a cut width, and its blunt tip.
func WedgeCut(stripCut, seam measure.NM) (wide, tip measure.NM) {
	h := stripCut - 2*seam
	return nearest(times(h+seam, 2*tan22) + times(seam, 2*tan22/sin22)), nearest(times(seam, 2*tan22/sin22) - times(seam, 2*tan22))
}

// cutWedge is exact, since the strip's width is the wedge's height.
func cutWedge(z *Sizing) (CutSize, []Exact, bool) {
	cut, height := z.StripsCut[z.Height], z.Height
	if !z.gives(cut) {
		return CutSize{}, nil, false
	}
	c := CutSize{Method: Nested, SideFinished: cut - 2*z.Seam, AcrossExact: cut, AcrossCut: cut, Grain: [2]int{2, 1}}
	c.WideCut, c.NarrowCut = WedgeCut(cut, z.Seam)
	c.AlongExact, c.AlongCut = c.WideCut, c.WideCut
	side := func(cut measure.NM) measure.NM { return height.Side(measure.Of(cut - 2*z.Seam)) }
	return c, []Exact{{"the strip for wedges", cut, side}}, true
}

// NestedIn is how many wedges or tumblers a strip of a length gives side by side.
func NestedIn(length, wide, narrow measure.NM) int {
	if length < wide {
		return 0
	}
	return 1 + int((length-wide)/((wide+narrow)/2))
}
