package blocks

import "eighthturn/internal/measure"

// ringCornerShape: half of a square beside an octagon.
func ringCornerShape() *Description {
	return &Description{
		Name: "corner triangle", FinishedAs: "short sides", Angles: [][]float64{{90, 45, 45}}, Round: 90, Axis: 135, Point: -1, Blunt: -1, Grain: [2]int{0, 1}, Trimmed: []int{0, 2}, Kept: true, Lies: rightAngle, Cut: cutRingCorner,
		Square:      ringCornerSquare,
		SquareWords: "Corner triangles: cut each square once on the diagonal for two; cut it as listed, the next %s above the exact need, or %s larger and trim.",
	}
}

// RingCornerFinished is the short edge of the corners beside an octagon of wedges from a strip of a cut width.
func RingCornerFinished(stripCut, seam measure.NM) measure.NM {
	return nearest(times(ToMiddle.Side(measure.Of(stripCut-2*seam)), 1-k))
}

// RingCornerRule is the square for two of them by the rule of thumb, 0 where there is no rule.
func RingCornerRule(edgeFinished, seam measure.NM, units measure.System) measure.NM {
	if units != measure.Inches || seam != measure.Inch/4 {
		return 0
	}
	return measure.RoundUp(edgeFinished+halfSquareRule, StepsOf(units).Exact)
}

// ringCornerSquare is the next step, with the rule of thumb and the kite's square where these serve.
func ringCornerSquare(stripCut, seam measure.NM, units measure.System) StripSquare {
	edge := RingCornerFinished(stripCut, seam)
	need := HalfSquareExact(edge, seam)
	s := StripSquare{Need: need, Cut: measure.RoundUp(need, StepsOf(units).Exact), RuleCut: RingCornerRule(edge, seam, units)}
	if kite := kiteSquare(stripCut, seam, units).Cut; kite >= need {
		s.KitesCut = kite
	}
	return s
}

// cutRingCorner is exact, or by custom from the kite's square for the same strip.
func cutRingCorner(z *Sizing) (CutSize, []Exact, bool) {
	strip := z.StripsCut[ToMiddle]
	if !z.gives(strip) {
		return CutSize{}, nil, false
	}
	edge := RingCornerFinished(strip, z.Seam)
	c := z.triangle(edge)
	if z.LongEdgesStraight {
		return c, nil, true
	}
	need := HalfSquareExact(edge, z.Seam)
	if kite := z.Steps.Square(KiteExact(strip, z.Seam)); kite >= need {
		c.KitesCut = kite
		if z.CornersByCustom {
			c.trimmedTriangle(need, kite)
		}
	}
	return c, nil, true
}
