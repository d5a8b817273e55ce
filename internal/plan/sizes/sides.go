package sizes

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// SideChart is which strips blocks of several sides need.
type SideChart struct {
	Options          // as they were filled in
	Heights []Height `json:"heights"` // the columns of Side.Strips
	Sides   []Side   `json:"sides"`   // the smallest first
}

// Side is the strips for blocks of one side.
type Side struct {
	SideFinished measure.NM  `json:"side_finished"`
	Strips       []SideStrip `json:"strips"` // one for each of the chart's heights
	Near         bool        `json:"near"`   // all sides that the strips at marks make are within Near of this one
}

// SideStrip is the strip that one height of wedge needs.
type SideStrip struct {
	StripCut          measure.NM `json:"strip_cut"`           // exact to a nanometre
	MarkCut           measure.NM `json:"mark_cut"`            // the mark of a cutter's ruler that is nearest to it, by Steps
	SideErrorFinished measure.NM `json:"side_error_finished"` // how much larger the block's side is with a strip cut at the mark; below 0, smaller
}

// Sides charts finished block sides: 4 to 16 by 1/2 in, or 10 to 40 by 1 cm, if the options do not say.
func Sides(o Options) (*SideChart, error) {
	o = o.withCloth()
	own := rows{4 * measure.Inch, 16 * measure.Inch, measure.Inch / 2}
	if o.Units == measure.Centimetres {
		own = rows{10 * measure.Centimetre, 40 * measure.Centimetre, measure.Centimetre}
	}
	o, err := o.filled("side", own)
	if err != nil {
		return nil, err
	}
	if least := 2 * o.Seam; o.From < least {
		return nil, fmt.Errorf("a block of %s is less than two seam allowances, expected at least %s", o.text(o.From), o.text(least))
	}
	c := &SideChart{Options: o, Heights: heights()}
	for _, side := range o.over() {
		c.Sides = append(c.Sides, c.side(side))
	}
	return c, nil
}

func (c *SideChart) side(side measure.NM) Side {
	s := Side{SideFinished: side, Near: true}
	mark := blocks.StepsOf(c.Units).Mark
	for _, height := range c.Heights {
		cut := height.Finished(side) + 2*c.Seam
		at := measure.Nearest(cut, mark)
		off := height.Side(measure.Of(at-2*c.Seam)) - side
		s.Strips = append(s.Strips, SideStrip{cut, at, off})
		s.Near = s.Near && off <= Near && off >= -Near
	}
	return s
}
