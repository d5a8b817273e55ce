package booklet

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/patchwork"
	"eighthturn/sewing"
)

// unitForm is what kind of shape a sewn unit has.
type unitForm uint8

const (
	rectangular unitForm = iota
	triangular           // with a square corner, in which its short sides meet
	slanted              // anything else
)

// formOf is the form of the unit that a step makes, by its first block.
func (b *book) formOf(k *sewing.Block, s *sewing.Step) unitForm {
	if len(s.Joins) == 0 || k.Column {
		return rectangular
	}
	patches := k.Colourings[0].Cells[0].Patches
	last := &s.Joins[len(s.Joins)-1]
	var corners []patchwork.Point
	for _, piece := range slices.Concat(last.A, last.B) {
		corners = append(corners, b.Top.Patches[patches[piece]].Outline...)
	}
	return formOfHull(hull(corners))
}

// formOfHull is the form of a shape by its corners, which go round it.
func formOfHull(corners []patchwork.Point) unitForm {
	square := 0
	for i, p := range corners {
		if isSquare(corners[(i+len(corners)-1)%len(corners)], p, corners[(i+1)%len(corners)]) {
			square++
		}
	}
	switch {
	case len(corners) == 4 && square == 4:
		return rectangular
	case len(corners) == 3 && square == 1:
		return triangular
	}
	return slanted
}

// Angles are those of whole nanometres: a corner is straight or square within this part of its sides' product.
const sameAngle = 1e-5

func isSquare(before, at, after patchwork.Point) bool {
	ax, ay, bx, by := float64(at.X-before.X), float64(at.Y-before.Y), float64(after.X-at.X), float64(after.Y-at.Y)
	return math.Abs(float64(ax*bx)+float64(ay*by)) < sameAngle*math.Hypot(ax, ay)*math.Hypot(bx, by)
}

// hull is the corners of the convex outline round points (A. M. Andrew, Another efficient algorithm for convex hulls in two
// dimensions, 1979; from memory); those on a straight side are left out.
func hull(list []patchwork.Point) []patchwork.Point {
	slices.SortFunc(list, func(a, b patchwork.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	list = slices.Compact(list)
	var whole []patchwork.Point
	for range 2 {
		var side []patchwork.Point
		for _, p := range list {
			for len(side) > 1 && !bends(side[len(side)-2], side[len(side)-1], p) {
				side = side[:len(side)-1]
			}
			side = append(side, p)
		}
		whole = append(whole, side[:max(0, len(side)-1)]...)
		slices.Reverse(list)
	}
	return whole
}

// bends says whether a way bends clockwise at a point, by more than rounding does.
func bends(a, b, c patchwork.Point) bool {
	ux, uy, vx, vy := float64(b.X-a.X), float64(b.Y-a.Y), float64(c.X-b.X), float64(c.Y-b.Y)
	return float64(ux*vy)-float64(uy*vx) > sameAngle*math.Hypot(ux, uy)*math.Hypot(vx, vy)
}

// formSize is the size of a unit, said as its form is measured.
func (b *book) formSize(form unitForm, s sewing.Size) string {
	size := b.markSize(s)
	switch {
	case form == rectangular:
		return size
	case form == slanted && s.Across.Nearest == s.Down.Nearest:
		return "fits in a square of " + b.mark(longer(s))
	case form == slanted:
		return "fits in a rectangle of " + size
	case s.Across.Nearest == s.Down.Nearest:
		return "short sides of " + b.mark(longer(s))
	}
	return "short sides of " + b.mark(s.Across) + " and " + b.mark(s.Down)
}

// longer is the longer side of a size.
func longer(s sewing.Size) sewing.Length {
	if s.Down.NM > s.Across.NM {
		return s.Down
	}
	return s.Across
}

// sizes is the sizes of a step's unit: sewn, trimmed and finished.
func (b *book) sizes(k *sewing.Block, s *sewing.Step) string {
	form := b.formOf(k, s)
	unfinished := b.formSize(form, s.Unfinished)
	text := unfinished + " unfinished"
	if s.Before != nil && b.formSize(form, *s.Before) != unfinished {
		text = "before trimming, " + b.formSize(form, *s.Before) + "; trimmed, " + text
	}
	return text + "; " + b.formSize(form, s.Finished) + " finished"
}
