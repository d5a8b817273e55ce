// Package sizes turns a range of strip widths, block sides or lines of a wedge rule into what each one makes: block sides,
// squares to cut, wedges from a strip, tumblers. It needs no layout.
//
// Lengths are whole nanometres, cut or finished as their names say.
package sizes

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// StripChart is what strips of several widths make.
type StripChart struct {
	Options          // as they were filled in
	Heights []Height `json:"heights"` // the columns of Strip.SidesFinished
	Shapes  []string `json:"shapes"`  // the columns of Strip.Squares: what is cut from a square beside wedges
	Strips  []Strip  `json:"strips"`  // the narrowest first
}

// Height is one way in which wedges fit into a block, with the kinds that have it.
type Height struct {
	blocks.WedgeHeight `json:"-"`
	Kinds              []string `json:"kinds"` // names, in the order of help
}

// Strip is what a strip of one width makes.
type Strip struct {
	StripCut          measure.NM           `json:"strip_cut"`
	WedgeFinished     measure.NM           `json:"wedge_finished"`      // height of the wedges: the strip less two seam allowances
	SidesFinished     []measure.NM         `json:"sides_finished"`      // of a block, one for each of the chart's heights
	Squares           []blocks.StripSquare `json:"squares"`             // to cut pieces beside the wedges from, one for each of the chart's shapes
	WedgeBaseFinished measure.NM           `json:"wedge_base_finished"` // the wedge's wide end; the side of a ring's octagon
	WedgeBaseCut      measure.NM           `json:"wedge_base_cut"`
	WedgeTipCut       measure.NM           `json:"wedge_tip_cut"` // the tip's flat end
	PitchCut          measure.NM           `json:"pitch_cut"`     // of strip that each wedge takes, the next one turned round
	Wedges            int                  `json:"wedges"`        // from one strip of the usable width, its ends squared within it
}

// Strips charts cut strip widths: 1 1/2 to 8 by 1/2 in, or 4 to 20 by 1 cm, if the options do not say.
func Strips(o Options) (*StripChart, error) {
	o = o.withCloth()
	own := rows{3 * measure.Inch / 2, 8 * measure.Inch, measure.Inch / 2}
	if o.Units == measure.Centimetres {
		own = rows{4 * measure.Centimetre, 20 * measure.Centimetre, measure.Centimetre}
	}
	o, err := o.filled("strip", own)
	if err != nil {
		return nil, err
	}
	if o.From <= 2*o.Seam {
		return nil, fmt.Errorf("a strip of %s is all seam allowance, expected more than %s", o.text(o.From), o.text(2*o.Seam))
	}
	c := &StripChart{Options: o, Heights: heights()}
	for _, shape := range squared() {
		c.Shapes = append(c.Shapes, shape.String())
	}
	for _, cut := range o.over() {
		c.Strips = append(c.Strips, c.strip(cut))
	}
	return c, nil
}

// squared is every shape whose square follows from the strip.
func squared() []blocks.Shape {
	return slices.DeleteFunc(slices.Clone(blocks.Shapes()), func(s blocks.Shape) bool { return s.Description().Square == nil })
}

// heights is every height of wedge that kinds have, in the order of help.
func heights() []Height {
	var list []Height
	at := map[blocks.WedgeHeight]int{}
	for _, kind := range blocks.Kinds() {
		if kind.Height == blocks.NoWedges || kind.Column {
			continue
		}
		i, seen := at[kind.Height]
		if !seen {
			i = len(list)
			at[kind.Height] = i
			list = append(list, Height{WedgeHeight: kind.Height})
		}
		list[i].Kinds = append(list[i].Kinds, kind.Name)
	}
	return list
}

func (c *StripChart) strip(cut measure.NM) Strip {
	q := c.Seam
	h := cut - 2*q
	s := Strip{
		StripCut: cut, WedgeFinished: h,
		WedgeBaseFinished: nearest(times(h, 2*tan22)),
		PitchCut:          nearest(times(h, tan22) + times(q, 2*tan22/sin22)),
	}
	s.WedgeBaseCut, s.WedgeTipCut = blocks.WedgeCut(cut, q)
	for _, height := range c.Heights {
		s.SidesFinished = append(s.SidesFinished, height.Side(measure.Of(h)))
	}
	for _, shape := range squared() {
		s.Squares = append(s.Squares, shape.Description().Square(cut, q, c.Units))
	}
	if left := c.UsableWidth - s.WedgeBaseCut; left >= 0 {
		s.Wedges = 1 + int(left/s.PitchCut)
	}
	return s
}
