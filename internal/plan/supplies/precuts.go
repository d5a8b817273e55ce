package supplies

import (
	"slices"

	"eighthturn/internal/measure"
)

// Precut is cloth that shops sell cut already.
type Precut struct {
	Name   string `json:"name"`
	Usable Size   `json:"usable"` // the least that real pieces measure: reckon with this
	Sold   Size   // as it is sold
	Source string // address, or how it is known
	Sort   PrecutSort
}

// PrecutSort is what sort of piece a precut is.
type PrecutSort uint8

const (
	FatQuarter       PrecutSort = iota // of a yard
	MetricFatQuarter                   // of a metre
	StripPrecut                        // from selvage to selvage, as wide as Usable is high
	FatEighth                          // of a yard
	SquarePrecut
)

// OwnPrecut is a precut by its sort and, of squares and strips, their size, for cloth of some usable width. A metric fat eighth is half
// of a metric fat quarter, from memory.
func OwnPrecut(sort PrecutSort, size, usableWidth measure.NM, units measure.System) Precut {
	list := Precuts()
	named := func(name string) Precut {
		return list[slices.IndexFunc(list, func(p Precut) bool { return p.Name == name })]
	}
	metric := units == measure.Centimetres
	switch {
	case sort == FatQuarter && metric:
		p := named("metric fat quarter")
		p.Name = "fat quarter"
		return p
	case sort == FatQuarter:
		return named("fat quarter")
	case sort == FatEighth && metric:
		half := Size{50 * measure.Centimetre, 25 * measure.Centimetre}
		return Precut{Name: "fat eighth", Usable: half, Sold: half, Sort: FatEighth}
	case sort == FatEighth:
		return named("fat eighth")
	case sort == StripPrecut:
		return Precut{Name: measure.Text(size, units) + " strip", Usable: Size{usableWidth, size}, Sold: Size{usableWidth, size}, Sort: StripPrecut}
	}
	return Precut{Name: measure.Text(size, units) + " square", Usable: Size{size, size}, Sold: Size{size, size}, Sort: SquarePrecut}
}

// SoldIn says whether shops of a system of measures have it: fat quarters come by the yard or by the metre, all else by inches
// everywhere.
func (p *Precut) SoldIn(units measure.System) bool {
	switch p.Sort {
	case FatQuarter:
		return units != measure.Centimetres
	case MetricFatQuarter:
		return units == measure.Centimetres
	}
	return true
}

// Precuts is what is sold cut in most shops. Pieces measure less than they are sold as: real fat quarters 18 by 20 to 18 by
// 22, of which 20 or 21 are clear of the selvage (common practice). The least is taken for usable; of a metric fat quarter
// it is 50 cm both ways, from memory; shops sell it as 50 by 53 to 50 by 55 cm (https://nzfabs.com/pages/metric-and-american-fabric-sizes
// has the lesser).
func Precuts() []Precut {
	const guide = "https://bloomeriefabrics.com/en-au/pages/a-practical-guide-to-pre-cut-fabric-sizes"
	inches := func(width, height int64) Size { return namedSize{"", width, height}.size() }
	strip := Size{40 * measure.Inch, 5 * measure.Inch / 2}
	return []Precut{
		{"fat quarter", inches(20, 18), inches(22, 18), guide, FatQuarter},
		{"metric fat quarter", Size{50 * measure.Centimetre, 50 * measure.Centimetre}, Size{55 * measure.Centimetre, 50 * measure.Centimetre},
			"https://www.echidnasewing.com.au/article/inspiring-and-educating/imperial-to-metric-conversion-guide/", MetricFatQuarter},
		{"fat eighth", inches(20, 9), inches(22, 9), guide, FatEighth},
		{"2 1/2 in strip", strip, Size{42 * measure.Inch, strip.Height}, guide, StripPrecut},
		{"10 in square", inches(10, 10), inches(10, 10), guide, SquarePrecut},
		{"5 in square", inches(5, 5), inches(5, 5), guide, SquarePrecut},
	}
}
