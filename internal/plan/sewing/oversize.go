package sewing

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// Pieces that are cut larger than they need to be stand out of a unit until a step trims them. Where a unit's side is made of
// several pieces, only those that are larger stand out of it.

// trimUnits is the pieces of every unit that some step trims.
func (s *sewn) trimUnits() [][]int {
	var list [][]int
	for i := range s.joins {
		goesOn := s.kind.Recipe.Steps[s.steps[i]].Trim == ""
		for j := i + 1; j < len(s.joins); j++ {
			goesOn = goesOn || s.steps[j] == s.steps[i] && within(s.joins[i].all(), s.joins[j].all())
		}
		if !goesOn {
			list = append(list, s.joins[i].all())
		}
	}
	return list
}

// within says whether all of some pieces are among others.
func within(some, others []int) bool {
	return !slices.ContainsFunc(some, func(p int) bool { return !slices.Contains(others, p) })
}

// trimmedEarlier says whether a piece of a unit was trimmed already in a smaller one.
func (s *sewn) trimmedEarlier(piece int, pieces []int) bool {
	return slices.ContainsFunc(s.trims, func(unit []int) bool {
		return len(unit) < len(pieces) && slices.Contains(unit, piece) && within(unit, pieces)
	})
}

// sidePart is a part of a unit's side: what one piece has of it.
type sidePart struct {
	stretch
	piece int
	out   measure.NM // by how much the piece stands out there, as it lies with as much over on either trimmed side; 0 if it does not
}

// partsOf is the parts of a unit's side, in the order in which they lie on it.
func (s *sewn) partsOf(pieces []int, side stretch) []sidePart {
	var list []sidePart
	for _, p := range pieces {
		o := s.pieces[p]
		for i := range o {
			both, on := common(side, stretch{o[i], o[(i+1)%len(o)]})
			if !on {
				continue
			}
			part := sidePart{stretch: both, piece: p}
			if s.trimmedSide(p, i) && !s.trimmedEarlier(p, pieces) {
				part.out = s.cuts[p].OutEach()
			}
			list = append(list, part)
		}
	}
	slices.SortFunc(list, func(a, b sidePart) int {
		return cmp.Compare(length(minus(a.from, side.from)), length(minus(b.from, side.from)))
	})
	return list
}

// sideParts is the parts of each of a unit's sides.
func (s *sewn) sideParts(pieces []int, unit outline) [][]sidePart {
	sides := make([][]sidePart, len(unit))
	for i := range unit {
		sides[i] = s.partsOf(pieces, stretch{unit[i], unit[(i+1)%len(unit)]})
	}
	return sides
}

// untrimmed is the raw outline of a unit with the cloth that is really there before it is trimmed: larger pieces stand out
// where they lie, and no other does.
func (s *sewn) untrimmed(pieces []int, unit outline) []measure.Vec {
	sides := s.sideParts(pieces, unit)
	var list []measure.Vec
	for i, parts := range sides {
		before := sides[(i+len(unit)-1)%len(unit)]
		list = append(list, s.cornerBetween(pieces, unit, i, cornerOut{before[len(before)-1].out, parts[0].out, true})...)
		for n := 1; n < len(parts); n++ {
			if parts[n].out != parts[n-1].out {
				list = append(list, s.outFrom(parts[n].from, &parts[n], parts[n-1].out), s.outFrom(parts[n].from, &parts[n], parts[n].out))
			}
		}
	}
	return list
}

// cornerOut is by how much the sides before and behind a corner stand out beyond their allowances, and whether a tip there is cut flat.
type cornerOut struct {
	before, behind measure.NM
	blunt          bool
}

// cornerBetween is the raw corner of a unit, one point or, where it is blunt, two.
func (s *sewn) cornerBetween(pieces []int, unit outline, corner int, out cornerOut) []measure.Vec {
	n := len(unit)
	last := (corner + n - 1) % n
	raw := cutting.RawOutline(vecsOf(unit), cutting.Allowances{
		Sides: func(side int) float64 {
			switch side {
			case last:
				return float64(s.seam + out.before)
			case corner:
				return float64(s.seam + out.behind)
			}
			return float64(s.seam)
		},
		Blunt: func(at int) bool { return out.blunt && at == corner && s.tip(pieces, unit[at]) },
		Flat:  float64(s.seam),
	})
	return raw[corner : corner+len(raw)-n+1]
}

// outFrom is a point of a side moved out to the raw edge, and by so much more.
func (s *sewn) outFrom(at point, side *sidePart, out measure.NM) measure.Vec {
	way := vecOf(side.to).Minus(vecOf(side.from)).Unit()
	return vecOf(at).Minus(way.Quarter().Times(float64(s.seam + out)))
}

// trimLines are the raw edges along which a unit is trimmed: their two ends, and where these lay before.
func (s *sewn) trimLines(pieces []int, unit outline) [][2][2]measure.Vec {
	sides := s.sideParts(pieces, unit)
	var list [][2][2]measure.Vec
	for i, parts := range sides {
		next := (i + 1) % len(unit)
		before := sides[(i+len(unit)-1)%len(unit)]
		for n := range parts {
			if parts[n].out == 0 {
				continue
			}
			line := [2][2]measure.Vec{
				{s.outFrom(parts[n].from, &parts[n], 0), s.outFrom(parts[n].to, &parts[n], 0)},
				{s.outFrom(parts[n].from, &parts[n], parts[n].out), s.outFrom(parts[n].to, &parts[n], parts[n].out)},
			}
			if n == 0 {
				line[0][0] = s.cornerBetween(pieces, unit, i, cornerOut{})[0]
				line[1][0] = s.cornerBetween(pieces, unit, i, cornerOut{before: before[len(before)-1].out, behind: parts[0].out})[0]
			}
			if n == len(parts)-1 {
				line[0][1] = s.cornerBetween(pieces, unit, next, cornerOut{})[0]
				line[1][1] = s.cornerBetween(pieces, unit, next, cornerOut{before: parts[n].out, behind: sides[next][0].out})[0]
			}
			list = append(list, line)
		}
	}
	return list
}
