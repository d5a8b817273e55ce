package measure

import "math"

// Vec is a place or a way in the plane in whatever unit its owner says, y downwards. Products are rounded one by one, so that
// every machine gives the same bits.
type Vec struct{ X, Y float64 }

// Plus is a + b.
func (a Vec) Plus(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y} }

// Minus is a - b.
func (a Vec) Minus(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y} }

// Times is a, f times as long.
func (a Vec) Times(f float64) Vec { return Vec{float64(a.X * f), float64(a.Y * f)} }

// Dot is the scalar product.
func (a Vec) Dot(b Vec) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) }

// Cross is the vector product's third component: above 0 where b lies clockwise of a on screen.
func (a Vec) Cross(b Vec) float64 { return float64(a.X*b.Y) - float64(a.Y*b.X) }

// Length is how long a is.
func (a Vec) Length() float64 { return math.Hypot(a.X, a.Y) }

// Unit is a at the length of 1; a must not be nothing.
func (a Vec) Unit() Vec { return a.Times(1 / a.Length()) }

// Quarter is a turned by a quarter, clockwise on screen.
func (a Vec) Quarter() Vec { return Vec{-a.Y, a.X} }

// Clipped is the part of a convex outline that lies at least so far along a way.
func Clipped(o []Vec, way Vec, least float64) []Vec {
	var out []Vec
	for i, p := range o {
		q := o[(i+1)%len(o)]
		a, b := p.Dot(way)-least, q.Dot(way)-least
		if a >= 0 {
			out = append(out, p)
		}
		if a < 0 && b > 0 || a > 0 && b < 0 {
			out = append(out, p.Plus(q.Minus(p).Times(a/(a-b))))
		}
	}
	return out
}

// Reflected is a reflected in the line through the origin along a unit way.
func (a Vec) Reflected(way Vec) Vec { return way.Times(2 * a.Dot(way)).Minus(a) }
