package render

import (
	"math"

	"eighthturn/internal/measure"
)

// Round a page with marks to cut by, in points: what is printed beyond its edges (1/8 in), and the marks with the room that they
// lie in. Common practice, no source.
const (
	bleed    = 9.0
	cropMark = 18.0
	cropRoom = 36.0
)

// sheets makes room for pages: one for each, or one for two of them where they are folded.
func (p *painter) sheets(pages int, l look, o Options) {
	switch {
	case o.Imposed:
		p.Sheets(pages/2, spread(l), l.high)
	case o.CropMarks:
		p.Sheets(pages, l.wide+2*cropRoom, l.high+2*cropRoom)
	default:
		p.Sheets(pages, l.wide, l.high)
	}
}

// spread is the width of a sheet that is folded in the middle: twice a page, or A4, which is a millimeter longer than two A5.
func spread(l look) float64 {
	if a4 := points(A4().Height); math.Abs(a4-2*l.wide) < 4 {
		return a4
	}
	return 2 * l.wide
}

// begin begins a page, by its index and how many there are.
func (p *painter) begin(page [2]int, l look, o Options) {
	switch {
	case o.Imposed:
		side, right := folded(page[0], page[1])
		corner := measure.Vec{X: spread(l)/2 - l.wide}
		if right {
			corner.X = spread(l) / 2
		}
		p.On(side, corner, l.wide, l.high)
	case o.CropMarks:
		p.On(page[0], measure.Vec{X: cropRoom, Y: cropRoom}, l.wide, l.high)
		p.Marks(bleed, cropMark)
	default:
		p.On(page[0], measure.Vec{}, l.wide, l.high)
	}
}

// folded is where the i-th of so many pages stands, a multiple of four, when the sheets are printed on both sides, laid into each
// other, folded and stapled: the side of a sheet, fronts and backs in turn from the outermost sheet on, and whether at the right.
func folded(i, pages int) (side int, right bool) {
	if i < pages/2 {
		return i, i%2 == 0
	}
	return pages - 1 - i, i%2 == 0
}
