package palettes

import (
	"cmp"
	"math"
	"slices"
)

// InValueOrder returns the fabrics in a new list: by L*, darkest first, then by hue, then by name.
func InValueOrder(fabrics []Swatch) []Swatch {
	sorted := slices.Clone(fabrics)
	slices.SortStableFunc(sorted, compareValue)
	return sorted
}

func compareValue(a, b Swatch) int {
	l, m := a.Colour.Lab(), b.Colour.Lab()
	return cmp.Or(
		cmp.Compare(millionths(l.L), millionths(m.L)),
		cmp.Compare(millionths(l.hue()), millionths(m.hue())),
		cmp.Compare(a.Name, b.Name),
	)
}

// millionths keeps a comparison off the last digits, which may differ from one processor to another.
func millionths(v float64) float64 {
	return math.Round(v * 1e6)
}
