package sewing

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
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

// vec is a place or a way in nanometres, not rounded.
type vec struct{ x, y float64 }

func vecOf(p point) vec             { return vec{float64(p.X), float64(p.Y)} }
func (a vec) plus(b vec) vec        { return vec{a.x + b.x, a.y + b.y} }
func (a vec) minus(b vec) vec       { return vec{a.x - b.x, a.y - b.y} }
func (a vec) times(f float64) vec   { return vec{float64(a.x * f), float64(a.y * f)} }
func (a vec) dot(b vec) float64     { return float64(a.x*b.x) + float64(a.y*b.y) }
func (a vec) cross(b vec) float64   { return float64(a.x*b.y) - float64(a.y*b.x) }
func (a vec) length() float64       { return math.Hypot(a.x, a.y) }
func (a vec) unit() vec             { return a.times(1 / a.length()) }
func (a vec) quarter() vec          { return vec{-a.y, a.x} }                     // turned clockwise on screen
func (a vec) reflected(way vec) vec { return way.times(2 * a.dot(way)).minus(a) } // in the line through the origin along a unit way

// grown is the raw outline of a unit: each side moved out by its own allowance, corners
// sharp but for those that are blunt, which are cut off flat by the allowance flat beyond
// the finished corner.
func grown(o outline, allowance []measure.NM, blunt []bool, flat measure.NM) []vec {
	finished := make([]cutting.Vec, len(o))
	for i, p := range o {
		finished[i] = cutting.Vec{X: float64(p.X), Y: float64(p.Y)}
	}
	raw := cutting.RawOutline(finished, cutting.Allowances{
		Sides: func(side int) float64 { return float64(allowance[side]) },
		Blunt: func(corner int) bool { return blunt[corner] },
		Flat:  float64(flat),
	})
	list := make([]vec, len(raw))
	for i, p := range raw {
		list[i] = vec{p.X, p.Y}
	}
	return list
}

// extent is how far points reach along a way and across it.
func extent(points []vec, way vec) (along, across float64) {
	least, most := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		for i, x := range [2]float64{p.dot(way), p.dot(way.quarter())} {
			least[i], most[i] = min(least[i], x), max(most[i], x)
		}
	}
	return most[0] - least[0], most[1] - least[1]
}
