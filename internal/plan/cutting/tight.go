package cutting

import (
	"slices"

	"eighthturn/internal/measure"
)

// TightEnd is the one rule of when a fabric is tight: of no strip that pieces are cut from is as much left at its end. Whoever then
// spoils a piece needs one strip more. Common practice, no source.
func TightEnd(u measure.System) measure.NM {
	if u == measure.Centimetres {
		return 8 * measure.Centimetre
	}
	return 3 * measure.Inch
}

// isTight says whether every strip of yardage that pieces or strip sets are cut from is used to within what the rule says.
func (f *Fabric) isTight(u measure.System) bool {
	longest := measure.NM(-1)
	for i := range f.Strips {
		s := &f.Strips[i]
		if s.OnSheet < 0 && slices.ContainsFunc(s.Cuts, func(c Cut) bool { return c.Use == ForPieces || c.Use == ForSet }) {
			longest = max(longest, s.EndLeftCut)
		}
	}
	return longest >= 0 && longest < TightEnd(u)
}
