package blocks

import (
	"math"

	"eighthturn/internal/measure"
)

// halfSquareShape: half of a square, its long edge sewn to its like.
func halfSquareShape() *Description {
	return &Description{
		Name: "half-square triangle", FinishedAs: "short sides", Angles: [][]float64{{90, 45, 45}}, Round: 90, Axis: 135, Point: -1, Blunt: -1, Grain: [2]int{0, 1}, Trimmed: []int{0, 2}, ByRuler: true, Lies: rightAngle,
		Cut: func(z *Sizing) (CutSize, []Exact, bool) { return z.triangle(z.SideFinished), nil, true },
	}
}

// HalfSquareExact is the side of the square that two half-square triangles of a finished short edge are cut from:
// the edge and (2 + sqrt 2) seam allowances.
func HalfSquareExact(edgeFinished, seam measure.NM) measure.NM {
	return edgeFinished + 2*seam + nearest(times(seam, math.Sqrt2))
}

// QuarterSquareExact is the side of the square that four quarter-square triangles of a finished long edge are cut from:
// the edge and 2 (1 + sqrt 2) seam allowances.
func QuarterSquareExact(longEdgeFinished, seam measure.NM) measure.NM {
	return longEdgeFinished + 2*seam + nearest(times(seam, 2*math.Sqrt2))
}

// Rules of thumb for a seam of a quarter of an inch: what is added to a triangle's short edge, and to its long one.
const (
	halfSquareRule    = 7 * measure.Inch / 8
	quarterSquareRule = 5 * measure.Inch / 4
)

// triangle is a half of a square with a short edge, cut so that the edges that lie on the outside of its block are on the
// straight grain, or so that its long one is.
func (z *Sizing) triangle(edgeFinished measure.NM) CutSize {
	c := CutSize{Method: OnceOnDiagonal, SideFinished: edgeFinished, Grain: [2]int{0, 1}}
	exact, rule := HalfSquareExact(edgeFinished, z.Seam), edgeFinished+halfSquareRule
	if z.LongEdgesStraight {
		long := nearest(times(edgeFinished, math.Sqrt2))
		exact, rule = QuarterSquareExact(long, z.Seam), long+quarterSquareRule
		c.Method, c.Grain = TwiceOnDiagonal, [2]int{1, 2}
	}
	c.trimmedTriangle(exact, z.exact(exact))
	if z.Units == measure.Inches && z.Seam == measure.Inch/4 && z.exact(rule) != c.AlongCut {
		c.RuleCut = z.exact(rule)
	}
	return c
}

// trimmedTriangle fills in the square of triangles that are sewn by the middle of their long edge: of what is to trim each
// short edge has half, or where the square was cut twice, half by the square root of 2.
func (c *CutSize) trimmedTriangle(exact, cut measure.NM) {
	c.trimmed(exact, cut)
	c.StandsOut = c.TrimCut / 2
	if c.Method == TwiceOnDiagonal {
		c.StandsOut = nearest(times(c.TrimCut, k/2))
	}
}
