package cutting

import "math"

// Vec is a place or a way in nanometres, not rounded, y downwards.
type Vec struct{ X, Y float64 }

func (a Vec) plus(b Vec, times float64) Vec {
	return Vec{a.X + float64(b.X*times), a.Y + float64(b.Y*times)}
}
func (a Vec) minus(b Vec) Vec     { return Vec{a.X - b.X, a.Y - b.Y} }
func (a Vec) dot(b Vec) float64   { return float64(a.X*b.X) + float64(a.Y*b.Y) }
func (a Vec) cross(b Vec) float64 { return float64(a.X*b.Y) - float64(a.Y*b.X) }
func (a Vec) length() float64     { return math.Hypot(a.X, a.Y) }
func (a Vec) unit() Vec           { return Vec{}.plus(a, 1/a.length()) }
func (a Vec) outwards() Vec       { return Vec{a.Y, -a.X} } // of a side that runs clockwise on screen

// Allowances say how far beyond a finished outline its cut one lies, nanometres.
type Allowances struct {
	Sides func(side int) float64 // by side, from corner to corner
	Blunt func(corner int) bool  // corners that are cut off flat; nil for none
	Flat  float64                // how far beyond the finished corner these end
}

// RawOutline is the cut outline of a piece or a unit: each side of the finished one moved out by its own allowance. Corners are
// sharp but for the blunt ones, which are cut off square to the line through the finished corner and the sharp one; one
// that does not reach as far as that stays as it is. Clockwise on screen, the first corner not repeated.
func RawOutline(finished []Vec, a Allowances) []Vec {
	n := len(finished)
	list := make([]Vec, 0, n+2)
	for i, at := range finished {
		before := (i + n - 1) % n
		in, out := at.minus(finished[before]).unit(), finished[(i+1)%n].minus(at).unit()
		corner := met(at.plus(in.outwards(), a.Sides(before)), in, at.plus(out.outwards(), a.Sides(i)), out)
		over := corner.minus(at)
		back := over.length() - a.Flat
		if a.Blunt == nil || !a.Blunt(i) || back <= 0 {
			list = append(list, corner)
			continue
		}
		middle := over.unit()
		list = append(list, corner.plus(in, -back/in.dot(middle)), corner.plus(out, -back/out.dot(middle)))
	}
	return list
}

// met is where two lines meet: through a point along a way each. Of lines that run alike it is the first point.
func met(a, in, b, out Vec) Vec {
	turn := in.cross(out)
	if math.Abs(turn) < 1e-9 {
		return a
	}
	return a.plus(in, b.minus(a).cross(out)/turn)
}
