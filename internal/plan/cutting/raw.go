package cutting

import (
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// outwards is square to a side that runs clockwise on screen, away from its piece.
func outwards(a measure.Vec) measure.Vec { return measure.Vec{X: a.Y, Y: -a.X} }

// Allowances say how far beyond a finished outline its cut one lies, nanometres.
type Allowances struct {
	Sides func(side int) float64 // by side, from corner to corner
	Blunt func(corner int) bool  // corners that are cut off flat; nil for none
	Flat  float64                // how far beyond the finished corner these end
}

// RawOutline is the cut outline of a piece or a unit: each side of the finished one moved out by its own allowance. Corners are
// sharp but for the blunt ones, which are cut off square to the line through the finished corner and the sharp one; one
// that does not reach as far as that stays as it is. Clockwise on screen, the first corner not repeated.
func RawOutline(finished []measure.Vec, a Allowances) []measure.Vec {
	n := len(finished)
	var list []measure.Vec
	for i, at := range finished {
		before := (i + n - 1) % n
		in, out := at.Minus(finished[before]).Unit(), finished[(i+1)%n].Minus(at).Unit()
		corner := met(at.Plus(outwards(in).Times(a.Sides(before))), in, at.Plus(outwards(out).Times(a.Sides(i))), out)
		over := corner.Minus(at)
		back := over.Length() - a.Flat
		if a.Blunt == nil || !a.Blunt(i) || back <= 0 {
			list = append(list, corner)
			continue
		}
		middle := over.Unit()
		list = append(list, corner.Plus(in.Times(-back/in.Dot(middle))), corner.Plus(out.Times(-back/out.Dot(middle))))
	}
	return list
}

// met is where two lines meet: through a point along a way each. Of lines that run alike it is the first point.
func met(a, in, b, out measure.Vec) measure.Vec {
	turn := in.Cross(out)
	if math.Abs(turn) < 1e-9 {
		return a
	}
	return a.Plus(in.Times(b.Minus(a).Cross(out) / turn))
}

// TemplateOutline is the cut outline of a piece that is cut round a template: a seam allowance on every side, and sharp tips cut off a
// seam allowance beyond the finished ones.
func TemplateOutline(finished []measure.Vec, seam float64) []measure.Vec {
	n, blunt := len(finished), math.Cos(blocks.Tip()*math.Pi/180)
	return RawOutline(finished, Allowances{
		Sides: func(int) float64 { return seam },
		Blunt: func(i int) bool {
			in, out := finished[i].Minus(finished[(i+n-1)%n]).Unit(), finished[(i+1)%n].Minus(finished[i]).Unit()
			return -in.Dot(out) > blunt
		},
		Flat: seam,
	})
}
