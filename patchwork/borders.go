package patchwork

import (
	"eighthturn/blocks"
	"eighthturn/layout"
)

// rim is what the next border is sewn to: the spans on each side, clockwise.
type rim [4][]span

// fieldRim is the outer spans of the blocks.
func (l *laying) fieldRim() rim {
	var r rim
	for x := range l.Columns {
		r[top] = l.side(r[top], x, top)
		r[bottom] = l.side(r[bottom], l.Columns*l.Rows-1-x, bottom)
	}
	for y := range l.Rows {
		r[right] = l.side(r[right], y*l.Columns+l.Columns-1, right)
		r[left] = l.side(r[left], (l.Rows-1-y)*l.Columns, left)
	}
	return r
}

// borders adds the borders from the inside out: the two sides first, then top and bottom
// across the whole width.
func (l *laying) borders() {
	if len(l.design.Borders) == 0 {
		return
	}
	inner, at := l.fieldRim(), l.Field
	for n, b := range l.design.Borders {
		inner, at = l.border(n, b, inner, at)
	}
}

// border adds one border round what is there, and returns the new rim and its rectangle.
func (l *laying) border(n int, b layout.Edging, inner rim, at Rect) (rim, Rect) {
	outer := Rect{Point{at.Min.X - b.Width, at.Min.Y - b.Width}, Point{at.Max.X + b.Width, at.Max.Y + b.Width}}
	leftStrip := l.strip(n, b, Rect{Point{outer.Min.X, at.Min.Y}, Point{at.Min.X, at.Max.Y}})
	rightStrip := l.strip(n, b, Rect{Point{at.Max.X, at.Min.Y}, Point{outer.Max.X, at.Max.Y}})
	l.join(inner[left], leftStrip[right])
	l.join(inner[right], rightStrip[left])
	topStrip := l.strip(n, b, Rect{outer.Min, Point{outer.Max.X, at.Min.Y}})
	bottomStrip := l.strip(n, b, Rect{Point{outer.Min.X, at.Max.Y}, outer.Max})
	l.join(concat(leftStrip[top], inner[top], rightStrip[top]), topStrip[bottom])
	l.join(concat(rightStrip[bottom], inner[bottom], leftStrip[bottom]), bottomStrip[top])
	return rim{
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

// strip adds one strip of a border and returns its spans, a side each.
func (l *laying) strip(n int, b layout.Edging, at Rect) rim {
	outline := l.outline([]Point{at.Min, {at.Max.X, at.Min.Y}, at.Max, {at.Min.X, at.Max.Y}}, Point{})
	face := int32(len(l.Faces))
	l.Faces = append(l.Faces, Face{outline, b.Fabric, len(l.Patches)})
	l.Patches = append(l.Patches, Patch{
		Outline: outline, Shape: blocks.Strip, Role: l.role("border", "B"), Cell: -1, Border: n,
		First: int(face), Count: 1, Place: b.Span,
	})
	var r rim
	for i := range r {
		r[i] = []span{{face, outline[i], outline[(i+1)%4]}}
	}
	return r
}
