package blocks

import "eighthturn/internal/measure"

// kiteShape: 90 degrees at the block's corner, 45 at its middle. It is cut from a square, and trimmed at its square corner.
func kiteShape() *Description {
	return &Description{
		Name: "kite", FinishedAs: "long sides", Angles: [][]float64{{90, 112.5, 45, 112.5}}, Gathers: StarCentre, Round: 90, Point: 2, Blunt: -1, Grain: [2]int{1, 0}, Trimmed: []int{0, 3}, Edges: []int{1}, Tools: []Tool{WedgeRule},
		Kept: true, Shaped: true, Marked: true, CutTitle: "Kites",
		CutWords: "Draw a diagonal line on the square. Align the center line of the wedge ruler (a 45-degree ruler) with it, with the point where the ruler's sides meet at a corner of the square, and cut along both sides. " +
			"The kite is slightly oversize at its square corner and is trimmed after sewing. Or align the square corner of the template with a corner of the square, and cut around the template: that kite needs no trimming.",
		Lies:        func([]Place) (from, to int) { return 3, 1 }, // its square corner up
		Cut:         cutKite,
		Square:      kiteSquare,
		SquareWords: "Kites: cut one from each square, its right angle in a corner; trim after sewing.",
	}
}

// KiteExact is the least square for a kite beside wedges from a strip of a cut width: to its sharp tip, its right angle in a
// corner of the square.
func KiteExact(stripCut, seam measure.NM) measure.NM {
	side := AlongDiagonal.Side(measure.Of(stripCut - 2*seam))
	return seam + nearest(float64(side)/2+times(seam, k/sin22))
}

// Square is the side to cut of a square whose pieces are trimmed after sewing: the next step that leaves something to trim.
func (s Steps) Square(exact measure.NM) measure.NM { return measure.RoundUp(exact+s.Spare, s.Trimmed) }

// kiteSquare is the next step that leaves something to trim.
func kiteSquare(stripCut, seam measure.NM, units measure.System) StripSquare {
	need := KiteExact(stripCut, seam)
	return StripSquare{Need: need, Cut: StepsOf(units).Square(need)}
}

func cutKite(z *Sizing) (CutSize, []Exact, bool) {
	strip := z.StripsCut[AlongDiagonal]
	if !z.gives(strip) {
		return CutSize{}, nil, false
	}
	c := CutSize{SideFinished: z.SideFinished, Grain: [2]int{1, 0}}
	exact := KiteExact(strip, z.Seam)
	c.trimmed(exact, z.Steps.Square(exact))
	c.StandsOut = c.TrimCut
	return c, nil, true
}
