package svgout

import "eighthturn/internal/measure"

// beneath draws what lies under the seams: the whole top in the colour of one fabric, and over it
// the region of each of the others, of all its faces together, without the seams between them.
//
// Programs that smooth edges cover the pixels of a seam twice in part, and the ground shows
// through by what is left. Here, under every seam of two fabrics, lie just these two: of the
// two regions the one that is painted first goes on under the other, so that what shows is a
// mixture of both colours and of nothing else. This is the one place that sees to it, for all
// pictures that are drawn outline by outline, SVG and PDF: a broad line along each seam in its
// place would reach past the ends of seams into a third fabric, and has a width that is wrong at
// some zoom; a shape from end to end within a face is right at all of them. A PNG is made by
// package pixels from all faces at once, where what covers a pixel adds up to the whole of it; it
// needs nothing beneath and leaves it out.
func (p *picture) beneath(shown []int) {
	l := Layer{ID: "beneath", Name: "beneath the seams", Part: Beneath}
	add := func(fabric int, outlines Outlines) {
		l.Items = append(l.Items, Item{Style: Style{Fill: Fill{Kind: FabricColour, Fabric: fabric}}, Outlines: outlines})
	}
	u := newUnderlay(p, shown)
	add(u.order[0], p.extent)
	for _, f := range u.order[1:] {
		add(f, u.region(f))
	}
	p.layer(l)
}

// full says whether something is everywhere inside the outer rectangle.
func (p *picture) full() bool {
	for i := range p.Cells {
		if p.Empty(i) {
			return false
		}
	}
	return true
}

// extent is the outlines of everything that is there: the whole top at once, or piece by
// piece where places with nothing in them would be covered.
func (p *picture) extent(yield func([]measure.Point) bool) {
	if p.full() {
		yield(cornersOf(p.Outer))
		return
	}
	for i := range p.Cells {
		if !p.Empty(i) && !yield(cornersOf(p.CellRect(i))) {
			return
		}
	}
	for i := range p.Patches {
		if p.Patches[i].Cell < 0 && !yield(p.Patches[i].Outline) {
			return
		}
	}
}
