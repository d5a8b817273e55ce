package sizes

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// TumblerChart is the tumblers that lines of a wedge rule give from a strip of one width.
type TumblerChart struct {
	Options            // as they were filled in; rows are lines
	Tumblers []Tumbler `json:"tumblers"`
}

// Tumbler is the piece that one line gives. Line n of a wedge rule is where the rule is as high as a strip of width n.
type Tumbler struct {
	LineCut        measure.NM `json:"line_cut"`
	WideCut        measure.NM `json:"wide_cut"`   // the longer of the parallel sides
	NarrowCut      measure.NM `json:"narrow_cut"` // the shorter one
	WideFinished   measure.NM `json:"wide_finished"`
	NarrowFinished measure.NM `json:"narrow_finished"`
	MeanFinished   measure.NM `json:"mean_finished"` // half-way between: what a piece adds to its column
	Pieces         int        `json:"pieces"`        // from one strip of the usable width, wide and narrow in turn, its ends squared within it
	Slim           bool       `json:"slim"`          // the narrow side finishes below two seam allowances
}

// Tumblers charts lines of a wedge rule laid on the strip's edge, for strips StripCut wide: from the first line that is not
// slim on, twelve by 1/2 in or 1 cm, if the options do not say.
func Tumblers(o Options) (*TumblerChart, error) {
	o = o.withCloth()
	step := measure.Inch / 2
	if o.Units == measure.Centimetres {
		step = measure.Centimetre
	}
	slim := nearest(float64(o.Seam) / tan22)
	from := measure.RoundUp(o.StripCut+slim, step)
	if o.From != 0 {
		from = o.From
	}
	if o.Step != 0 {
		step = min(o.Step, MaxLength)
	}
	o, err := o.filled("line", rows{from, min(from+11*step, MaxLength), step})
	switch {
	case err != nil:
		return nil, err
	case o.StripCut <= 2*o.Seam:
		return nil, fmt.Errorf("a strip of %s is all seam allowance, expected more than %s", o.text(o.StripCut), o.text(2*o.Seam))
	case o.From <= o.StripCut:
		return nil, fmt.Errorf("line %s on a strip of %s leaves no narrow side, expected a line above the strip's width", o.text(o.From), o.text(o.StripCut))
	}
	c := &TumblerChart{Options: o}
	for _, line := range o.over() {
		c.Tumblers = append(c.Tumblers, c.tumbler(line))
	}
	return c, nil
}

func (c *TumblerChart) tumbler(line measure.NM) Tumbler {
	q, w := c.Seam, c.StripCut
	t := Tumbler{
		LineCut:        line,
		WideFinished:   nearest(times(line-2*q, 2*tan22)),
		NarrowFinished: nearest(times(line-w, 2*tan22)),
		MeanFinished:   nearest(blocks.MeanByLine(line, w, q)),
	}
	t.WideCut, t.NarrowCut = blocks.TumblerCut(line, w, q)
	if left := c.UsableWidth - t.WideCut; left >= 0 {
		t.Pieces = 1 + int(2*left/(t.WideCut+t.NarrowCut))
	}
	t.Slim = t.NarrowFinished < 2*q
	return t
}
