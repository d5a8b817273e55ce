package laws

import (
	"fmt"
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Outlines: every outline has area, goes clockwise on screen, never touches or crosses
// itself and does not repeat its first corner.
func Outlines(t *quilt.Top) error {
	for i := range t.Patches {
		if err := simple(t.Patches[i].Outline); err != nil {
			return fmt.Errorf("patch %d: %w", i, err)
		}
	}
	for i := range t.Faces {
		if err := simple(t.Faces[i].Outline); err != nil {
			return fmt.Errorf("face %d: %w", i, err)
		}
	}
	return nil
}

func simple(o Outline) error {
	if len(o) < 3 {
		return fmt.Errorf("%d corners: %v", len(o), o)
	}
	for i := range o {
		before, here, after := o[(i+len(o)-1)%len(o)], o[i], o[(i+1)%len(o)]
		if here == after {
			return fmt.Errorf("corner %v stands twice: %v", here, o)
		}
		if hand(before, here, after) == 0 && dotSign(minus(here, before), minus(after, here)) < 0 {
			return fmt.Errorf("it turns back at %v: %v", here, o)
		}
	}
	if a, b := touching(o); a >= 0 {
		return fmt.Errorf("sides %d and %d meet: %v", a, b, o)
	}
	if doubleArea(o).Sign() <= 0 {
		return fmt.Errorf("it does not go clockwise: %v", o)
	}
	return nil
}

// touching finds two sides of an outline that have no corner in common and meet all the
// same, -1 where there are none.
func touching(o Outline) (int, int) {
	for i := range o {
		for j := i + 2; j < len(o); j++ {
			if i == 0 && j == len(o)-1 {
				continue
			}
			if meet(o[i], o[i+1], o[j], o[(j+1)%len(o)]) {
				return i, j
			}
		}
	}
	return -1, -1
}

// meet says whether the stretches ab and cd have a point in common.
func meet(a, b, c, d measure.Point) bool {
	h, k, m, n := hand(a, b, c), hand(a, b, d), hand(c, d, a), hand(c, d, b)
	if h == 0 && k == 0 {
		return within(a, b, c) || within(a, b, d) || within(c, d, a)
	}
	return h*k <= 0 && m*n <= 0
}

// within says whether p, on the line through a and b, lies between them.
func within(a, b, p measure.Point) bool { return dotSign(minus(a, p), minus(b, p)) <= 0 }

// ShapeAngles is the angles that a shape may have, in degrees from the corner that its
// outline begins with, one way round or the other; none for shapes of which none are known.
func ShapeAngles(s blocks.Shape) [][]float64 {
	return s.Description().Angles
}

// isSquare says whether all sides of a shape are of one length.
func isSquare(s blocks.Shape) bool {
	d := s.Description()
	return d.Sized == blocks.ByOutline && !d.Edging
}

// Angles: each patch has the angles of its shape, as nearly as rounded corners can; corner
// squares, posts and plain squares are as wide as high.
func Angles(t *quilt.Top) error {
	for i := range t.Patches {
		p := &t.Patches[i]
		known := ShapeAngles(p.Shape)
		if known != nil && !hasOneOf(p.Outline, known) {
			return fmt.Errorf("patch %d is no %s: %v", i, p.Shape, p.Outline)
		}
		if box := boxOf(p.Outline, 0); isSquare(p.Shape) && box.Width() != box.Height() {
			return fmt.Errorf("patch %d is %d wide and %d high, no square", i, box.Width(), box.Height())
		}
	}
	return nil
}

// hasOneOf says whether an outline has one of several lists of angles.
func hasOneOf(o Outline, known [][]float64) bool {
	for _, want := range known {
		if hasAngles(o, want, 1) || hasAngles(o, want, len(want)-1) {
			return true
		}
	}
	return false
}

// hasAngles compares an outline's angles with a list that is read in so many steps.
func hasAngles(o Outline, want []float64, step int) bool {
	if len(o) != len(want) {
		return false
	}
	for i := range o {
		if math.Abs(angle(o, i)-want[i*step%len(want)]) > angleError(o, i) {
			return false
		}
	}
	return true
}
