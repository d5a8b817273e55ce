package quilt

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// perimeter is what the next border is sewn to: the spans on each side, clockwise.
type perimeter [4][]span

// borders adds the borders from the inside out: the two sides first, then top and bottom
// across the whole width.
func (l *builder) borders(field perimeter) {
	inner, at := field, l.Field
	for n, b := range l.design.Borders {
		l.sign.Step(len(inner[top]) + len(inner[right]) + len(inner[bottom]) + len(inner[left]))
		if b.Corners >= 0 {
			inner, at = l.corneredBorder(n, b, inner, at)
		} else {
			inner, at = l.border(n, b, inner, at)
		}
	}
}

// border adds one border round what is there, and returns the new perimeter and its rectangle.
func (l *builder) border(n int, b layout.Edging, inner perimeter, at Rect) (perimeter, Rect) {
	outer := Rect{measure.Point{X: at.Min.X - b.Width, Y: at.Min.Y - b.Width}, measure.Point{X: at.Max.X + b.Width, Y: at.Max.Y + b.Width}}
	leftStrip := l.borderStrip(n, 1, b, Rect{measure.Point{X: outer.Min.X, Y: at.Min.Y}, measure.Point{X: at.Min.X, Y: at.Max.Y}})
	rightStrip := l.borderStrip(n, 2, b, Rect{measure.Point{X: at.Max.X, Y: at.Min.Y}, measure.Point{X: outer.Max.X, Y: at.Max.Y}})
	l.join(inner[left], leftStrip[right])
	l.join(inner[right], rightStrip[left])
	topStrip := l.borderStrip(n, 3, b, Rect{outer.Min, measure.Point{X: outer.Max.X, Y: at.Min.Y}})
	bottomStrip := l.borderStrip(n, 4, b, Rect{measure.Point{X: outer.Min.X, Y: at.Max.Y}, outer.Max})
	l.join(concat(leftStrip[top], inner[top], rightStrip[top]), topStrip[bottom])
	l.join(concat(rightStrip[bottom], inner[bottom], leftStrip[bottom]), bottomStrip[top])
	return perimeter{
		topStrip[top],
		concat(topStrip[right], rightStrip[right], bottomStrip[right]),
		bottomStrip[bottom],
		concat(bottomStrip[left], leftStrip[left], topStrip[left]),
	}, outer
}

func concat(lists ...[]span) []span {
	var all []span
	for _, list := range lists {
		all = append(all, list...)
	}
	return all
}

// corneredBorder adds a border with a square in each corner: four strips as long as the
// sides that they are sewn to.
func (l *builder) corneredBorder(n int, b layout.Edging, inner perimeter, at Rect) (perimeter, Rect) {
	outer := Rect{measure.Point{X: at.Min.X - b.Width, Y: at.Min.Y - b.Width}, measure.Point{X: at.Max.X + b.Width, Y: at.Max.Y + b.Width}}
	sides := [4]perimeter{
		l.borderStrip(n, 1, b, Rect{measure.Point{X: at.Min.X, Y: outer.Min.Y}, measure.Point{X: at.Max.X, Y: at.Min.Y}}),
		l.borderStrip(n, 2, b, Rect{measure.Point{X: at.Max.X, Y: at.Min.Y}, measure.Point{X: outer.Max.X, Y: at.Max.Y}}),
		l.borderStrip(n, 3, b, Rect{measure.Point{X: at.Min.X, Y: at.Max.Y}, measure.Point{X: at.Max.X, Y: outer.Max.Y}}),
		l.borderStrip(n, 4, b, Rect{measure.Point{X: outer.Min.X, Y: at.Min.Y}, measure.Point{X: at.Min.X, Y: at.Max.Y}}),
	}
	corners := [4]perimeter{
		l.cornerSquare(n, 5, b, Rect{outer.Min, at.Min}),
		l.cornerSquare(n, 6, b, Rect{measure.Point{X: at.Max.X, Y: outer.Min.Y}, measure.Point{X: outer.Max.X, Y: at.Min.Y}}),
		l.cornerSquare(n, 7, b, Rect{at.Max, outer.Max}),
		l.cornerSquare(n, 8, b, Rect{measure.Point{X: outer.Min.X, Y: at.Max.Y}, measure.Point{X: at.Min.X, Y: outer.Max.Y}}),
	}
	var around perimeter
	for side := range sides {
		opposite, before, after := (side+2)%4, (side+3)%4, (side+1)%4
		l.join(inner[side], sides[side][opposite])
		l.join(corners[side][after], sides[side][before])
		l.join(sides[side][after], corners[after][before])
		around[side] = concat(corners[side][side], sides[side][side], corners[after][side])
	}
	return around, outer
}

// borderStrip adds one strip of a border.
func (l *builder) borderStrip(n int, number int32, b layout.Edging, at Rect) perimeter {
	return l.rectangle(Patch{Shape: blocks.EdgingShape(false), Role: l.role("border", "B"), Border: int16(n), Number: number, Place: placeOf(b.Span)}, b.Fabric, nil, at)
}

// cornerSquare adds one corner square of a border.
func (l *builder) cornerSquare(n int, number int32, b layout.Edging, at Rect) perimeter {
	return l.rectangle(Patch{Shape: blocks.EdgingShape(true), Role: l.role("corner squares", "Q"), Border: int16(n), Number: number, Place: placeOf(b.Span)}, b.Corners, b.CornersCut, at)
}

// rectangle adds a patch of one fabric outside the blocks, cut from a place of it or as it comes, and returns its spans, a side
// each.
func (l *builder) rectangle(p Patch, fabric int, cut *layout.Cut, at Rect) perimeter {
	p.Outline = l.outline([]measure.Point{at.Min, {X: at.Max.X, Y: at.Min.Y}, at.Max, {X: at.Min.X, Y: at.Max.Y}}, measure.Point{})
	p.Cell, p.First, p.Count, p.Set = -1, int32(len(l.Faces)), 1, -1
	l.cutOf(&p, cut)
	l.Faces = append(l.Faces, Face{p.Outline, int32(fabric), int32(len(l.Patches))})
	l.Patches = append(l.Patches, p)
	return perimeterOf(p.First, p.Outline)
}

// perimeterOf is the spans of a face of four corners, a side each.
func perimeterOf(face int32, outline []measure.Point) perimeter {
	var r perimeter
	for i := range r {
		r[i] = []span{{face, outline[i], outline[(i+1)%4]}}
	}
	return r
}
