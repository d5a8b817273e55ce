package blocks_test

import (
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// mirroredOver is an outline mirrored over a line through the middle of its corners, so many degrees clockwise from upright, about that middle.
func mirroredOver(o outline, degrees float64) outline {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	x, y := sin, -cos // along the line
	var mirrored outline
	for _, p := range aboutMiddle(o) {
		along := p[0]*x + p[1]*y
		mirrored = append(mirrored, [2]float64{2*along*x - p[0], 2*along*y - p[1]})
	}
	return mirrored
}

// aboutMiddle is an outline about the middle of its corners.
func aboutMiddle(o outline) (moved outline) {
	var x, y float64
	for _, p := range o {
		x, y = x+p[0]/float64(len(o)), y+p[1]/float64(len(o))
	}
	for _, p := range o {
		moved = append(moved, [2]float64{p[0] - x, p[1] - y})
	}
	return moved
}

// sameCorners says whether outlines have the same corners, whichever comes first.
func sameCorners(a, b outline) bool {
	return len(a) == len(b) && !slices.ContainsFunc(a, func(p [2]float64) bool {
		return !slices.ContainsFunc(b, func(q [2]float64) bool { return near(p[0], q[0], 1e-9) && near(p[1], q[1], 1e-9) })
	})
}

// TestShapesAreMirroredOverTheirAxis: pieces that meet round a point, and those that are left and right, are as their template lies their own
// mirror image over their axis, or that of the piece of the other hand; over a line an eighth of a turn further on they are not.
func TestShapesAreMirroredOverTheirAxis(t *testing.T) {
	places := func(o outline) (list []blocks.Place) {
		for _, p := range o {
			list = append(list, blocks.Place{X: measure.NM(math.Round(p[0] * 1e9)), Y: measure.NM(math.Round(p[1] * 1e9))})
		}
		return list
	}
	lying := func(s shaped) outline {
		from, to := s.Description().Lies(places(s.outline))
		return aboutMiddle(outline(outlined(s.outline).laid(from, to)))
	}
	tried := map[string]bool{}
	all := everyOutline()
	for _, s := range all {
		d := s.Description()
		if d.Hand == nil && d.Round == 0 {
			continue
		}
		tried[d.Name] = true
		others := []outline{lying(s)}
		if d.Hand != nil {
			others = nil
			for _, o := range all {
				if o.Shape == s.Shape && d.Hand(places(o.outline)) != d.Hand(places(s.outline)) {
					others = append(others, lying(o))
				}
			}
		}
		for _, off := range []float64{0, 45} {
			mirrored := mirroredOver(lying(s), float64(d.Axis)+off)
			if found := slices.ContainsFunc(others, func(o outline) bool { return sameCorners(mirrored, o) }); found != (off == 0) {
				t.Errorf("a %s is its mirror image over %g degrees: %v", d.Name, float64(d.Axis)+off, found)
			}
		}
	}
	if len(tried) < 5 {
		t.Errorf("only %v", tried)
	}
}

// TestShapesMeetRoundAPoint: pieces whose first corners meet round a point fill it, without a gap and without a piece upon another.
func TestShapesMeetRoundAPoint(t *testing.T) {
	for _, s := range everyOutline() {
		d := s.Description()
		for _, angles := range d.Angles {
			if d.Round != 0 && (float64(d.Round) != angles[0] || 360%d.Round != 0) {
				t.Errorf("%s: from one to the next are %d°, their first corner has %v°", s, d.Round, angles[0])
			}
		}
	}
}

// TestNestedIn: a strip gives one wedge more from just that length on at which, head to tail, it has room.
func TestNestedIn(t *testing.T) {
	for _, c := range [][2]measure.NM{{3, 1}, {1001, 1}, {40 * measure.Millimetre, 12 * measure.Millimetre}, {7, 7}} {
		wide, narrow := c[0], c[1]
		length := wide
		for n := 1; n < 12; n++ {
			if least := blocks.NestedIn(length-1, wide, narrow); least != n-1 {
				t.Errorf("%d of %d and %d in %d, wanted %d", least, wide, narrow, length-1, n-1)
			}
			if got := blocks.NestedIn(length, wide, narrow); got != n {
				t.Errorf("%d of %d and %d in %d, wanted %d", got, wide, narrow, length, n)
			}
			length += (wide + narrow) / 2
		}
	}
}
