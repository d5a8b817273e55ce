package sewing

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// CheckSize is what a ruler measures of a unit one way: along a raw edge, from one end of it to the other, or from one
// raw edge across to its opposite. Without a length it can be measured neither way.
type CheckSize struct {
	Length   measure.NM `json:"length"`
	Opposite bool       `json:"between_opposite_edges"`
	Of       []int      `json:"of,omitempty"` // the piece of the kind that has the whole edge, where it is measured before the unit is trimmed
}

// checkSizes are what a ruler measures of a unit along a way and across it, the longer first; not the extent to a corner that
// is cut off flat, where a ruler finds no edge.
func checkSizes(raw []measure.Vec, way measure.Vec) [2]CheckSize {
	sizes := [2]CheckSize{checkSize(raw, way), checkSize(raw, way.Quarter())}
	if sizes[1].Length > sizes[0].Length {
		sizes[0], sizes[1] = sizes[1], sizes[0]
	}
	return sizes
}

// checkSize is what a ruler measures of a raw outline along a way.
func checkSize(raw []measure.Vec, way measure.Vec) CheckSize {
	across := way.Quarter()
	var longest float64
	var at []float64
	for i, p := range raw {
		side := raw[(i+1)%len(raw)].Minus(p)
		if math.Abs(side.Dot(across)) <= near {
			longest = max(longest, math.Abs(side.Dot(way)))
		}
		at = append(at, p.Dot(way))
	}
	least, most := slices.Min(at), slices.Max(at)
	flat := func(end float64) bool {
		for i := range at {
			if math.Abs(at[i]-end) <= near && math.Abs(at[(i+1)%len(at)]-end) <= near {
				return true
			}
		}
		return false
	}
	if flat(least) && flat(most) {
		return CheckSize{Length: rounded(most - least), Opposite: true}
	}
	return CheckSize{Length: rounded(longest)}
}

// exactWay is the way of a unit's longest side that is exact from end to end, where pieces of it are still to be trimmed in a later step,
// and the piece that alone has it, if one has.
func (s *sewn) exactWay(pieces []int, unit outline) (way measure.Vec, of []int) {
	sides := s.sideParts(pieces, unit)
	var most float64
	for i, parts := range sides {
		before, next := sides[(i+len(unit)-1)%len(unit)], sides[(i+1)%len(unit)]
		along := slices.Concat(before[len(before)-1:], parts, next[:1])
		side := vecOf(unit[(i+1)%len(unit)]).Minus(vecOf(unit[i]))
		if side.Length() > most && !slices.ContainsFunc(along, func(p sidePart) bool { return p.out != 0 }) {
			way, most, of = side.Unit(), side.Length(), nil
			if len(parts) == 1 {
				of = []int{parts[0].piece}
			}
		}
	}
	return way, of
}
