package blocks

// stripShape: of a border or a sash.
func stripShape() *Description {
	return &Description{Name: "strip", Angles: [][]float64{{90, 90, 90, 90}}, Sized: ByOutline, Edging: true, Point: -1, Blunt: -1, Grain: [2]int{0, 1}, ByRuler: true, Lies: rightAngle, Cut: cutStrip}
}

// cutStrip has an exact width; a border's length is up to the next step, since it is cut to the quilt's own measure.
func cutStrip(z *Sizing) (CutSize, []Exact, bool) {
	across, along := z.AcrossFinished+2*z.Seam, z.AlongFinished+2*z.Seam
	c := CutSize{SideFinished: z.AcrossFinished, LengthFinished: z.AlongFinished, AcrossExact: across, AcrossCut: across, AlongExact: along, AlongCut: along, Grain: [2]int{0, 1}}
	if z.InBorder {
		c.AlongCut = z.exact(along)
		c.TrimCut = c.AlongCut - along
		return c, []Exact{{What: "the width of border strips", Cut: across}}, true
	}
	length := Exact{What: "the length of sashes", Cut: along}
	if z.AlongFinished == z.SideFinished {
		length.SideOf = z.sideOfSquare
	}
	return c, []Exact{{What: "the width of sashes", Cut: across}, length}, true
}
