package preview

import (
	"fmt"
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// To be replaced: what a patch measures, finished and cut, belongs to the cutting plan. Until
// that plan can be asked about a single patch, this file works it out from the outline.

// sizes says what a convex patch measures: finished, and cut, which is its outline grown by
// the seam allowance with mitred corners.
func sizes(outline []quilt.Point, shape blocks.Shape, seam measure.NM, u measure.System) (finished, cut string) {
	corners := make([]spot, len(outline))
	for i, p := range outline {
		corners[i] = spot{float64(p.X - outline[0].X), float64(p.Y - outline[0].Y)}
	}
	grown := grow(corners, float64(seam))
	text := func(nm float64) string { return measureText(nm, u) }
	switch {
	case shape == blocks.Wedge && len(corners) == 3:
		return wedgeSizes(corners, float64(seam), text)
	case isRectangle(corners):
		return rectangleSize(corners, text), rectangleSize(grown, text)
	case len(corners) == 3:
		return triangleSize(corners, text), triangleSize(grown, text)
	case shape == blocks.Kite && len(corners) == 4:
		return kiteSize(corners, text), kiteSize(grown, text)
	}
	return sidesSize(corners, text), sidesSize(grown, text)
}

// spot is a point in nanometres.
type spot struct{ x, y float64 }

func distance(a, b spot) float64 { return math.Hypot(b.x-a.x, b.y-a.y) }

func side(corners []spot, i int) float64 {
	n := len(corners)
	return distance(corners[i%n], corners[(i+1)%n])
}

// grow moves every side of a convex outline, clockwise on screen, outwards and finds where
// neighbours meet.
func grow(corners []spot, by float64) []spot {
	grown := make([]spot, len(corners))
	for i, at := range corners {
		before, after := corners[(i+len(corners)-1)%len(corners)], corners[(i+1)%len(corners)]
		ax, ay := outwards(before, at)
		bx, by2 := outwards(at, after)
		scale := by / (1 + ax*bx + ay*by2) // both are of length 1: the mitre lies along their sum
		grown[i] = spot{at.x + (ax+bx)*scale, at.y + (ay+by2)*scale}
	}
	return grown
}

// outwards is the direction, of length 1, away from the patch across its side from a to b.
func outwards(a, b spot) (x, y float64) {
	length := distance(a, b)
	return (b.y - a.y) / length, -(b.x - a.x) / length
}

// wedgeSizes: a wedge is cut from a strip, its tip cut off where the strip's raw edge is, a
// seam allowance above the finished tip.
func wedgeSizes(c []spot, seam float64, text func(float64) string) (finished, cut string) {
	base := side(c, 1)
	height := distance(c[0], spot{(c[1].x + c[2].x) / 2, (c[1].y + c[2].y) / 2})
	half := math.Atan2(base/2, height)
	toSharpTip := seam / math.Sin(half)
	cutBase := 2 * math.Tan(half) * (height + seam + toSharpTip)
	cutTip := 2 * math.Tan(half) * (toSharpTip - seam)
	return fmt.Sprintf("%s high, base %s", text(height), text(base)),
		fmt.Sprintf("from a strip of %s, base %s, tip %s", text(height+2*seam), text(cutBase), text(cutTip))
}

func isRectangle(c []spot) bool {
	if len(c) != 4 {
		return false
	}
	for i := range c {
		a, b, d := c[i], c[(i+1)%4], c[(i+2)%4]
		if math.Abs((b.x-a.x)*(d.x-b.x)+(b.y-a.y)*(d.y-b.y)) > 4*distance(a, b) { // off square by more than nanometres
			return false
		}
	}
	return true
}

func rectangleSize(c []spot, text func(float64) string) string {
	a, b := text(side(c, 0)), text(side(c, 1))
	if a == b {
		return a + " square"
	}
	return a + " × " + b
}

// triangleSize tells a right triangle by its legs, which meet in the first corner.
func triangleSize(c []spot, text func(float64) string) string {
	a, b, long := text(side(c, 0)), text(side(c, 2)), text(side(c, 1))
	if a == b {
		return fmt.Sprintf("triangle, legs %s, long side %s", a, long)
	}
	return fmt.Sprintf("triangle, sides %s, %s, %s", a, long, b)
}

// kiteSize tells a kite by the two sides at its first corner, the square one, and the two
// that meet opposite.
func kiteSize(c []spot, text func(float64) string) string {
	return fmt.Sprintf("short sides %s, long sides %s", text(side(c, 0)), text(side(c, 1)))
}

func sidesSize(c []spot, text func(float64) string) string {
	list := "sides "
	for i := range c {
		if i > 0 {
			list += ", "
		}
		list += text(side(c, i))
	}
	return list
}

// measureText writes a length that was worked out with roots.
func measureText(nm float64, u measure.System) string { return u.Nearest(measure.NM(math.Round(nm))) }
