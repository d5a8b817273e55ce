package laws

import (
	"math"
	"math/big"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Outline is corners clockwise on screen, the first not repeated.
type Outline = []measure.Point

func minus(p, q measure.Point) measure.Point { return measure.Point{X: p.X - q.X, Y: p.Y - q.Y} }

// fits says whether the products of such numbers and their sums fit into 64 bits.
func fits(list ...measure.NM) bool {
	const most = 1 << 30
	for _, n := range list {
		if n > most || n < -most {
			return false
		}
	}
	return true
}

// cross is a.X b.Y - a.Y b.X, exactly: above 0 where b lies to the right of a on screen.
func cross(a, b measure.Point) *big.Int {
	one := new(big.Int).Mul(big.NewInt(int64(a.X)), big.NewInt(int64(b.Y)))
	other := new(big.Int).Mul(big.NewInt(int64(a.Y)), big.NewInt(int64(b.X)))
	return one.Sub(one, other)
}

// dotSign is the sign of a.X b.X + a.Y b.Y, exactly.
func dotSign(a, b measure.Point) int { return crossSign(a, measure.Point{X: -b.Y, Y: b.X}) }

// crossSign is the sign of cross.
func crossSign(a, b measure.Point) int {
	if !fits(a.X, a.Y, b.X, b.Y) {
		return cross(a, b).Sign()
	}
	switch n := a.X*b.Y - a.Y*b.X; {
	case n > 0:
		return 1
	case n < 0:
		return -1
	}
	return 0
}

// hand says where p lies from the way a to b: 1 to the right, -1 to the left, 0 on the line.
func hand(a, b, p measure.Point) int { return crossSign(minus(b, a), minus(p, a)) }

// doubleArea is twice the area of a simple outline in square nanometres, above 0 where it
// goes clockwise on screen.
func doubleArea(o Outline) *big.Int {
	sum := new(big.Int)
	for i := 1; i+1 < len(o); i++ {
		sum.Add(sum, cross(minus(o[i], o[0]), minus(o[i+1], o[0])))
	}
	return sum
}

// outlineOf is a rectangle's outline.
func outlineOf(r quilt.Rect) Outline {
	return Outline{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}}
}

// straight says whether the line from a to b runs along the grid or a diagonal of it, where
// whole nanometres can lie on it exactly.
func straight(a, b measure.Point) bool {
	d := minus(b, a)
	return d.X == 0 || d.Y == 0 || d.X == d.Y || d.X == -d.Y
}

// offLine is how far p lies from the endless line through a and b, in nanometres.
func offLine(a, b, p measure.Point) float64 {
	d, e := minus(b, a), minus(p, a)
	across := float64(d.X)*float64(e.Y) - float64(d.Y)*float64(e.X)
	return math.Abs(across) / math.Hypot(float64(d.X), float64(d.Y))
}

// onLine says whether p lies on the endless line through a and b: exactly where that can
// be, within Tolerance elsewhere.
func onLine(a, b, p measure.Point) bool {
	if straight(a, b) {
		return hand(a, b, p) == 0
	}
	return offLine(a, b, p) <= float64(Tolerance)
}

// onSide says whether p lies on the stretch from a to b, its ends included.
func onSide(a, b, p measure.Point) bool {
	if p == a || p == b {
		return true
	}
	return onLine(a, b, p) && dotSign(minus(b, a), minus(p, a)) >= 0 && dotSign(minus(a, b), minus(p, b)) >= 0
}

// distance is how far p lies from the stretch from a to b, in nanometres.
func distance(a, b, p measure.Point) float64 {
	switch {
	case dotSign(minus(b, a), minus(p, a)) <= 0:
		return length(minus(p, a))
	case dotSign(minus(a, b), minus(p, b)) <= 0:
		return length(minus(p, b))
	}
	return offLine(a, b, p)
}

func length(p measure.Point) float64 { return math.Hypot(float64(p.X), float64(p.Y)) }

// angle is the angle of an outline at corner i, in degrees, 0 to 360.
func angle(o Outline, i int) float64 {
	in := minus(o[(i+len(o)-1)%len(o)], o[i])
	out := minus(o[(i+1)%len(o)], o[i])
	turn := math.Atan2(float64(in.Y), float64(in.X)) - math.Atan2(float64(out.Y), float64(out.X))
	return math.Mod(turn*180/math.Pi+720, 360)
}

// angleError is how much rounding the corners may change the angle at corner i, in degrees.
func angleError(o Outline, i int) float64 {
	in := length(minus(o[(i+len(o)-1)%len(o)], o[i]))
	out := length(minus(o[(i+1)%len(o)], o[i]))
	return 2*(1/in+1/out)*180/math.Pi + 1e-9
}
