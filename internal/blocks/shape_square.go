package blocks

// squareShape: a plain block, or where two strips meet.
func squareShape() *Description {
	return &Description{Name: "square", Angles: [][]float64{{90, 90, 90, 90}}, Sized: ByOutline, Point: -1, Blunt: -1, Grain: [2]int{0, 1}, ByRuler: true, Lies: rightAngle, Cut: cutSquare}
}

func cutSquare(z *Sizing) (CutSize, []Exact, bool) {
	cut := z.AcrossFinished + 2*z.Seam
	c := CutSize{SideFinished: z.AcrossFinished, AcrossExact: cut, AcrossCut: cut, AlongExact: cut, AlongCut: cut, Grain: [2]int{0, 1}}
	exact := Exact{What: "the side of plain squares", Cut: cut}
	if z.InBlock {
		exact.SideOf = z.sideOfSquare
	}
	return c, []Exact{exact}, true
}
