package sewing_test

import (
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
)

// checkEnds is the law of the ends of seams: the corners of both parts, how far they stand out as they are cut, what is taken off those
// that are sharp and not flat already, unless both are alike, and what is still over at the side that the seam ends on.
func checkEnds(p *sewing.Plan, block int, cuts *cutting.Plan) error {
	b := &p.Blocks[block]
	joins := joinsOf(b)
	for i, m := range joins {
		j := m.join
		for e, at := range [2]measure.Point{j.From, j.To} {
			want := sewing.End{Partial: slices.ContainsFunc(b.Rounds, func(r sewing.Round) bool { return r.Turns && r.At == at })}
			var blunt [2]measure.NM
			for part, pieces := range [2][]int{j.A, j.B} {
				if b.Column {
					pieces = pieces[len(pieces)-1:]
				}
				number := [2]int{j.MadeA, j.MadeB}[part]
				u := unitOf(p, block, pieces, cuts, trimmedIn(b, joins, number, false))
				u.end(vec([2]measure.Point{j.To, j.From}[e]), vec(at), part, &want, &blunt)
			}
			if want.Degrees[0] == want.Degrees[1] && want.Blunted[0] && want.Blunted[1] {
				want.Blunted, want.Off, blunt = [2]bool{}, [2]measure.NM{}, want.Reach
			}
			want.Lead, want.LeadBlunt = want.Reach[1]-want.Reach[0], blunt[1]-blunt[0]
			if !sameEnd(&j.Ends[e], &want) {
				return fmt.Errorf("block %s, join %d, end %d: %+v, not %+v", b.Label, i, e, j.Ends[e], want)
			}
		}
	}
	return nil
}

// end says what a part does at an end of a seam that comes from another point.
func (u *sewnUnit) end(from, at measure.Vec, part int, e *sewing.End, blunt *[2]measure.NM) {
	corner := slices.IndexFunc(u.corners, func(q measure.Vec) bool { return q.Minus(at).Length() < 3 })
	n := len(u.corners)
	out := at.Minus(from).Unit()
	before, behind := (corner+n-1)%n, corner // of the two sides at the corner one runs along the seam
	along, other := before, behind
	if math.Abs(u.side(behind, 0).way.Cross(out)) < 1e-4 {
		along, other = behind, before
	}
	into := u.side(behind, 0).way.Minus(u.side(before, 0).way).Unit()
	half := math.Acos(into.Dot(u.side(behind, 0).way))
	e.Degrees[part] = math.Round(half*360/math.Pi*2) / 2
	reach := func(l straightLine) measure.NM {
		return measure.NM(math.Round(u.side(along, 0).crosses(l).Minus(at).Dot(out)))
	}
	sharp := u.side(before, 0).crosses(u.side(behind, 0))
	flat := straightLine{at.Minus(into.Times(u.seam)), into.Quarter()}
	e.Reach[part] = reach(u.side(other, 0))
	blunt[part] = e.Reach[part]
	if flats, alone := u.flats(corner); len(flats) == 1 && alone {
		e.Reach[part] = reach(flat)
		blunt[part] = e.Reach[part]
	} else if e.Degrees[part] == 45 {
		e.Blunted[part] = true
		e.Off[part] = measure.NM(math.Round(sharp.Minus(at).Length() - u.seam))
		blunt[part] = reach(flat)
	}
	first := u.parts[other][0]
	if other == before {
		first = u.parts[other][len(u.parts[other])-1]
	}
	e.Spare[part] = measure.NM(math.Round(float64(first.most) / math.Sin(2*half)))
}

func sameEnd(a, b *sewing.End) bool {
	near := func(a, b measure.NM) bool { return (a == 0) == (b == 0) && a-b <= 3 && b-a <= 3 }
	for i := range 2 {
		if a.Degrees[i] != b.Degrees[i] || !near(a.Reach[i], b.Reach[i]) || a.Blunted[i] != b.Blunted[i] || !near(a.Off[i], b.Off[i]) || !near(a.Spare[i], b.Spare[i]) {
			return false
		}
	}
	return a.Partial == b.Partial && near(a.Lead, b.Lead) && near(a.LeadBlunt, b.LeadBlunt)
}
