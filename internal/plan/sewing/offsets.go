package sewing

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// Reach is how far a piece's raw corner stands out beyond the end of a seam line, along that
// line: the corner's angle is given in degrees, between 0 and 180, the seam allowance is the
// same on both of its sides. With half the angle a it is the allowance by the cotangent of a:
// the raw edges meet on the line that halves the corner.
func Reach(degrees float64, seam measure.NM) measure.NM {
	return rounded(float64(seam) / math.Tan(degrees*math.Pi/360))
}

// ReachBlunt is the same where the corner is cut off flat a seam allowance beyond the
// finished point, as the tips of wedges are. A corner whose raw point lies nearer than that
// loses nothing.
func ReachBlunt(degrees float64, seam measure.NM) measure.NM {
	half := degrees * math.Pi / 360
	return min(Reach(degrees, seam), rounded(float64(seam)*(1-math.Sin(half))/math.Cos(half)))
}

func rounded(x float64) measure.NM { return measure.NM(math.Round(x)) }

// vecOf is a point as a vector in nanometers.
func vecOf(p point) measure.Vec { return measure.Vec{X: float64(p.X), Y: float64(p.Y)} }

// vecsOf is an outline as vectors.
func vecsOf(o outline) []measure.Vec {
	list := make([]measure.Vec, len(o))
	for i, p := range o {
		list[i] = vecOf(p)
	}
	return list
}

// extent is how far points reach along a way.
func extent(points []measure.Vec, way measure.Vec) float64 {
	var at []float64
	for _, p := range points {
		at = append(at, p.Dot(way))
	}
	return slices.Max(at) - slices.Min(at)
}
