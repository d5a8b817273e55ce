package cutting

import "eighthturn/internal/measure"

// Allowance is what is added to each fabric beyond what is cut from it.
type Allowance struct {
	SquareUp measure.NM `json:"square_up"` // for squaring up its ends
	Spare    measure.NM `json:"spare"`     // for slips; at the most, where it is a strip
	// OneStrip: for slips there is one more of the widest strip that is cut from the fabric, up to Spare; for a fabric of
	// which no strip is cut there is nothing.
	OneStrip bool `json:"spare_is_one_more_strip"`
}

// usualAllowance is what is added where neither the layout nor the options say. 2 in for squaring up is an inch at either
// end, where shops cut off the fold's line: common practice, no source. One more of the largest cut where it is above an
// eighth of a yard, and a quarter of a yard more at the most, are what publishers of patterns are reported to add
// (https://huntersdesignstudio.com/2014/04/02/the-quality-of-patterns-a-discussion/).
func usualAllowance(u measure.System) Allowance {
	if u == measure.Centimetres {
		return Allowance{SquareUp: 5 * measure.Centimetre, Spare: 25 * measure.Centimetre, OneStrip: true}
	}
	return Allowance{SquareUp: 2 * measure.Inch, Spare: measure.Yard / 4, OneStrip: true}
}

// allowance is what is added to each fabric: what the options say, else what the layout says, else what is usual.
func (p *planning) allowance() Allowance {
	a := usualAllowance(p.Units)
	o, said := &p.options, &p.top.CutFacts.Extra
	switch {
	case o.NoSquareUp:
		a.SquareUp = 0
	case o.SquareUp > 0:
		a.SquareUp = o.SquareUp
	case said.SquareUp != nil:
		a.SquareUp = *said.SquareUp
	}
	switch {
	case o.NoSpare:
		a.Spare, a.OneStrip = 0, false
	case o.Spare > 0:
		a.Spare, a.OneStrip = o.Spare, false
	case said.Spare != nil:
		a.Spare, a.OneStrip = *said.Spare, false
	}
	return a
}

// SpareOf is what is added to a fabric for slips. A backing has its overhang for that.
func (a *Allowance) SpareOf(f *Fabric) measure.NM {
	if !a.OneStrip {
		return a.Spare
	}
	widest := measure.NM(0)
	for i := range f.Strips {
		if f.Strips[i].OnSheet < 0 {
			widest = max(widest, f.Strips[i].WidthCut)
		}
	}
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			widest = max(widest, c.WidthCut)
		}
	}
	for i := range f.FromPrint {
		for _, s := range f.FromPrint[i].Strips {
			widest = max(widest, s.WidthCut)
		}
	}
	return min(widest, a.Spare)
}

// longer is how much longer than reckoned a line's strips are cut.
func (p *planning) longer(line *Line) measure.NM {
	if line.edging() && (line.Border >= 0 || line.Piece.Method == Joined) {
		return p.Longer
	}
	return 0
}
