package blocks

import "eighthturn/internal/measure"

// backgroundShape: a half-square triangle less one wedge. A square cut once gives two, each of either hand.
func backgroundShape() *Description {
	return &Description{
		Name: "background piece", FinishedAs: "the two sides of the square corner", Angles: [][]float64{{90, 45, 112.5, 112.5}}, Axis: 135, Point: -1, Blunt: -1, Grain: [2]int{0, 1}, Trimmed: []int{0, 3}, Edges: []int{0, 3}, Tools: []Tool{OwnTemplate},
		Shaped: true, CutTitle: "Background pieces",
		CutWords: "Cut each square once on the diagonal; the long edges are bias edges: handle them gently. Either triangle makes a left or a right background piece. " +
			"Align the left (or right) template with the long edge, fabric right side up, and slide it until fabric shows beyond both short edges. Trim the slanted edge only. " +
			"The short edges are oversize and are trimmed after sewing.",
		ByCustom: "these squares are generous (twice the kite square): %s; %s is the minimum",
		Lies:     rightAngle,
		Hand: func(o []Place) Hand { // from its square corner clockwise: the next corner lies to the right
			return handed(apart(o[0], o[1]) > apart(o[0], o[3]))
		},
		Cut:         cutBackground,
		Square:      backgroundSquare,
		SquareWords: "Background pieces: cut each square once on the diagonal for a left and a right one.",
	}
}

// BackgroundExact is the least square for two background pieces beside wedges from a strip of a cut width.
func BackgroundExact(stripCut, seam measure.NM) measure.NM {
	return HalfSquareExact(AlongDiagonal.Side(measure.Of(stripCut-2*seam)), seam)
}

// backgroundSquare is twice the kite's square, by custom.
func backgroundSquare(stripCut, seam measure.NM, units measure.System) StripSquare {
	return StripSquare{Need: BackgroundExact(stripCut, seam), Cut: 2 * kiteSquare(stripCut, seam, units).Cut}
}

// cutBackground is twice the kite's square, by custom.
func cutBackground(z *Sizing) (CutSize, []Exact, bool) {
	strip := z.StripsCut[AlongDiagonal]
	if !z.gives(strip) {
		return CutSize{}, nil, false
	}
	c := CutSize{Method: OnceOnDiagonal, SideFinished: z.SideFinished, Grain: [2]int{0, 1}}
	exact := BackgroundExact(strip, z.Seam)
	c.trimmed(exact, max(2*z.Steps.Square(KiteExact(strip, z.Seam)), exact))
	c.StandsOut, c.OutShared = c.TrimCut, true // its long edge is exact, so that its legs come to the square's side together
	return c, nil, true
}

// apart is the greater of two places' distances along the axes, which orders distances along them and along diagonals.
func apart(a, b Place) measure.NM {
	x, y := a.X-b.X, a.Y-b.Y
	return max(x, -x, y, -y)
}
