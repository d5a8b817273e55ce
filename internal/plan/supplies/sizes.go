package supplies

import (
	"cmp"

	"eighthturn/internal/measure"
)

// Size is a width and a height, or a bed's length.
type Size struct {
	Width  measure.NM `json:"width"`
	Height measure.NM `json:"height"`
}

// compare orders sizes by their area, then by their width.
func (s Size) compare(t Size) int {
	return cmp.Or(cmp.Compare(s.area(), t.area()), cmp.Compare(s.Width, t.Width))
}

// area is in square nanometres: sizes of one area have the same.
func (s Size) area() float64 { return float64(s.Width) * float64(s.Height) }

// namedSize is a line of a published list, in inches.
type namedSize struct {
	name          string
	width, height int64
}

func (s namedSize) size() Size {
	return Size{measure.NM(s.width) * measure.Inch, measure.NM(s.height) * measure.Inch}
}
