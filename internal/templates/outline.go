package templates

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// Outlines here are in nanometres, y downwards, clockwise on screen, the first corner not
// repeated.

// endless is farther than anything lies.
const endless = math.MaxFloat64

// xy is a place in nanometres.
type xy struct{ x, y float64 }

func floats(outline []measure.Point) []xy {
	list := make([]xy, len(outline))
	for i, p := range outline {
		list[i] = xy{float64(p.X), float64(p.Y)}
	}
	return list
}

func rounded(outline []xy) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = measure.Point{X: measure.NM(math.Round(p.x)), Y: measure.NM(math.Round(p.y))}
	}
	return list
}

func distance(a, b xy) float64 { return math.Hypot(b.x-a.x, b.y-a.y) }

// sameSize is how far two lengths of one piece may lie apart, in nanometres: what rounding the corners of both can make, and
// drawing the piece turned.
const sameSize = float64(10 * measure.Tolerance)

// congruent says whether one outline is the other, turned and moved but not mirrored, and by
// how many corners the second begins later.
func congruent(a, b []xy) (shift int, ok bool) {
	if len(a) != len(b) {
		return 0, false
	}
	for shift := range a {
		if congruentFrom(a, b, shift) {
			return shift, true
		}
	}
	return 0, false
}

func congruentFrom(a, b []xy, shift int) bool {
	n := len(a)
	for i := range n {
		for j := range i {
			if math.Abs(distance(a[i], a[j])-distance(b[(i+shift)%n], b[(j+shift)%n])) > sameSize {
				return false
			}
		}
	}
	return true
}

// turnedTo is an outline turned so that the way from one place to another points to the
// right, with its upper left bounds at (0, 0).
func turnedTo(outline []xy, from, to xy) []xy {
	long := distance(from, to)
	cos, sin := (to.x-from.x)/long, (to.y-from.y)/long
	list := make([]xy, len(outline))
	low := xy{endless, endless}
	for i, p := range outline {
		list[i] = xy{float64(p.x*cos) + float64(p.y*sin), float64(p.y*cos) - float64(p.x*sin)}
		low = xy{min(low.x, list[i].x), min(low.y, list[i].y)}
	}
	for i := range list {
		list[i] = xy{list[i].x - low.x, list[i].y - low.y}
	}
	return list
}

// cutOutline is a finished outline with its seam allowance, and tips cut off.
func cutOutline(finished []xy, seam float64) []xy {
	corners := make([]measure.Vec, len(finished))
	for i, p := range finished {
		corners[i] = measure.Vec{X: p.x, Y: p.y}
	}
	raw := cutting.TemplateOutline(corners, seam)
	list := make([]xy, len(raw))
	for i, p := range raw {
		list[i] = xy{p.X, p.Y}
	}
	return list
}

// unitOf is the way from one place to another, of length 1.
func unitOf(a, b xy) xy {
	long := distance(a, b)
	return xy{(b.x - a.x) / long, (b.y - a.y) / long}
}

// bounds are the least and the greatest of an outline.
func bounds(outline []measure.Point) (low, high measure.Point) {
	low, high = outline[0], outline[0]
	for _, p := range outline {
		low = measure.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = measure.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}

func middleOf(a, b xy) xy { return xy{(a.x + b.x) / 2, (a.y + b.y) / 2} }
