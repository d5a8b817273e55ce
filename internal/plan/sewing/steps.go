package sewing

import (
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

func sizeOf(across, down float64) Size { return Size{rounded(across), rounded(down)} }

// unitSize is the size of a unit, its longer measure first: it has no way up.
func unitSize(points []measure.Vec, way measure.Vec) Size {
	along, across := extent(points, way)
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
	step.Finished = unitSize(grown(made.unit, make([]measure.NM, len(made.unit)), make([]bool, len(made.unit)), 0), way)
	raw := s.rawOutline(made.all(), made.unit)
	step.Unfinished, step.CheckSizes = unitSize(raw, way), checkSizes(raw, way)
	if exact, of, larger := s.exactWay(made.all(), made.unit); larger {
		step.CheckSizes = [2]CheckSize{checkSize(raw, exact)}
		step.CheckSizes[0].Of = of
	}
	if step.Trim == "" {
		return
	}
	before := unitSize(s.untrimmed(made.all(), made.unit), way)
	step.Before = &before
	step.CheckBefore = step.CheckSizes[0].Length + before.Across - step.Unfinished.Across
	for i := range made.unit {
		out := s.spareAlong(made.all(), stretch{made.unit[i], made.unit[(i+1)%len(made.unit)]}, false)
		step.StandsOut = max(step.StandsOut, out)
	}
}

// formOf is what a finished outline looks like.
func formOf(o outline) Form {
	square := 0
	for i := range o {
		if math.Abs(angleAt(o, i)-90) < 0.01 {
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
		case s.tip(made.near[i], at):
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
	if e.Degrees[0] == e.Degrees[1] && e.Blunted == [2]bool{true, true} { // equal corners need no trimming to match
		e.Blunted, e.Off, blunt = [2]bool{}, [2]measure.NM{}, [2]measure.NM{e.Reach[0], e.Reach[1]}
	}
	e.Lead = e.Reach[1] - e.Reach[0]
	e.LeadBlunt = blunt[1] - blunt[0]
	return e
}

// degreesAt is the angle of a unit at a point of its outline, to a millionth of a degree; all
// angles of the pieces are known to be multiples of half a wedge's.
func degreesAt(o outline, at point) float64 {
	i := cornerAt(o, at)
	if i < 0 {
		return 180
	}
	const part = 22.5
	angle := angleAt(o, i)
	if exact := part * math.Round(angle/part); math.Abs(exact-angle) < 0.01 {
		return exact
	}
	return math.Round(angle*1e6) / 1e6
}

// spareAt is how much further a part's raw corner stands out at an end of its seam since a
// side of it there is trimmed only later: the seam line crosses that side at a slant.
func (s *sewn) spareAt(made *joined, part int, at point) measure.NM {
	o := made.parts[part]
	i := cornerAt(o, at)
	if i < 0 {
		return 0
	}
	for _, side := range [2]int{i, (i + len(o) - 1) % len(o)} {
		from, to := o[side], o[(side+1)%len(o)]
		if _, along := common(stretch{made.seam.from, made.seam.to}, stretch{from, to}); along {
			continue
		}
		if _, along := common(stretch{made.seam.to, made.seam.from}, stretch{from, to}); along {
			continue
		}
		if out := s.spareAlong(made.near[part], stretch{from, to}, true); out > 0 {
			return rounded(float64(out) / math.Sin(angleAt(o, i)*math.Pi/180))
		}
	}
	return 0
}
