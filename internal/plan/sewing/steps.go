package sewing

import (
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

func sizeOf(across, down float64) Size { return Size{rounded(across), rounded(down)} }

// unitSize is the size of a unit, its longer measure first: it has no way up.
func unitSize(points []measure.Vec, way measure.Vec) Size {
	along, across := extent(points, way), extent(points, way.Quarter())
	return sizeOf(max(along, across), min(along, across))
}

// stepsOf is the steps of a kind, with the number of units for so many blocks.
func (p *Plan) stepsOf(s *sewn, count int) []Step {
	var list []Step
	next := 0
	for _, recipe := range s.kind.Recipe.Steps {
		step := Step{Step: &recipe}
		for range recipe.Joins {
			step.Joins = append(step.Joins, p.joinOf(s, next))
			next++
		}
		if len(recipe.Joins) > 0 {
			p.measureStep(s, &step)
		}
		step.Make = step.PerBlock * count
		list = append(list, step)
	}
	return list
}

// measureStep finds how many units a step makes and how large they are.
func (p *Plan) measureStep(s *sewn, step *Step) {
	for _, j := range step.Joins {
		if !goesOn(step.Joins, j.Number) {
			step.PerBlock++
		}
	}
	made := &s.joins[step.Joins[len(step.Joins)-1].Number]
	way := ruler(made.unit)
	step.Form = formOf(made.unit)
	step.Finished = unitSize(vecsOf(made.unit), way)
	raw := s.rawOutline(made.all(), made.unit)
	step.Unfinished, step.CheckSizes = unitSize(raw, way), checkSizes(raw, way)
	if step.Trim == "" {
		if s.standsOut(made.all()) > 0 {
			exact, of := s.exactWay(made.all(), made.unit)
			step.CheckSizes = [2]CheckSize{checkSize(raw, exact)}
			step.CheckSizes[0].Of = of
		}
		return
	}
	before := unitSize(s.untrimmed(made.all(), made.unit), way)
	step.Before = &before
	step.CheckBefore = step.CheckSizes[0].Length + before.Across - step.Unfinished.Across
	step.StandsOut = s.standsOut(made.all())
}

// formOf is what a finished outline looks like.
func formOf(o outline) Form {
	square := 0
	for i := range o {
		if squareAt(o, i) {
			square++
		}
	}
	switch {
	case len(o) == 4 && square == 4:
		return Rectangle
	case len(o) == 3 && square == 1:
		return Triangle
	}
	return Slanted
}

// joinOf is one join of a kind.
func (p *Plan) joinOf(s *sewn, number int) Join {
	made := &s.joins[number]
	j := Join{Number: number, A: made.pieces[0], B: made.pieces[1], MadeA: -1, MadeB: -1, From: made.seam.from, To: made.seam.to, Choice: made.Press}
	if _, piece := made.A.Piece(); !piece {
		j.MadeA = made.A.Join()
	}
	if _, piece := made.B.Piece(); !piece {
		j.MadeB = made.B.Join()
	}
	j.Round = s.kind.Recipe.Pressing[made.Press].Round
	for i, at := range [2]point{j.From, j.To} {
		j.Ends[i] = p.endOf(s, made, at)
	}
	return j
}

// endOf is one end of a join's seam.
func (p *Plan) endOf(s *sewn, made *joined, at point) End {
	var e End
	var blunt [2]measure.NM
	for i, part := range made.parts {
		e.Degrees[i] = degreesAt(part, at)
		reach := Reach(e.Degrees[i], s.seam)
		blunt[i] = reach
		switch {
		case s.tip(made.pieces[i], at):
			reach = ReachBlunt(e.Degrees[i], s.seam)
			blunt[i] = reach
		case e.Degrees[i] < blocks.Tip():
			e.Blunted[i] = true
			e.Off[i] = rounded(float64(s.seam) * (1/math.Sin(e.Degrees[i]*math.Pi/360) - 1))
			blunt[i] = ReachBlunt(e.Degrees[i], s.seam)
		}
		e.Reach[i] = reach
		e.Spare[i] = s.spareAt(made, i, at)
	}
	if e.Blunted == [2]bool{true, true} { // tips are alike and need no trimming to match
		e.Blunted, e.Off, blunt = [2]bool{}, [2]measure.NM{}, e.Reach
	}
	e.Lead = e.Reach[1] - e.Reach[0]
	e.LeadBlunt = blunt[1] - blunt[0]
	return e
}

// degreesAt is the angle of a unit at one of its corners: a multiple of half a wedge's, as all angles of the pieces are.
func degreesAt(o outline, corner point) float64 {
	const half = 22.5
	return half * math.Round(angleAt(o, cornerAt(o, corner))/half)
}

// spareAt is how much further a part's raw corner stands out at an end of its seam where the piece there is trimmed only later:
// the seam line crosses that piece's side at a slant.
func (s *sewn) spareAt(made *joined, part int, at point) measure.NM {
	o := made.parts[part]
	slant := math.Sin(angleAt(o, cornerAt(o, at)) * math.Pi / 180)
	for _, p := range made.pieces[part] {
		if s.trimmedEarlier(p, made.all()) {
			continue
		}
		corner, sides := cornerAt(s.pieces[p], at), len(s.pieces[p])
		if corner >= 0 && (s.trimmedSide(p, corner) || s.trimmedSide(p, (corner+sides-1)%sides)) {
			return rounded(float64(s.cuts[p].StandsOut) / slant)
		}
	}
	return 0
}
