// Package sizes turns a range of strip widths, block sides or lines of a wedge rule into what each one makes: block sides,
// squares to cut, wedges from a strip, tumblers. It needs no layout.
//
// Lengths are whole nanometres, cut or finished as their names say.
package sizes

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// StripChart is what strips of several widths make.
type StripChart struct {
	Options          // as they were filled in
	Heights []Height `json:"heights"` // the columns of Strip.SidesFinished
	Strips  []Strip  `json:"strips"`  // the narrowest first
}

// Height is one way in which wedges fit into a block, with the kinds that have it.
type Height struct {
	blocks.WedgeHeight `json:"-"`
	Kinds              []string `json:"kinds"` // names, in the order of help
}

// Strip is what a strip of one width makes.
type Strip struct {
	StripCut          measure.NM   `json:"strip_cut"`
	WedgeFinished     measure.NM   `json:"wedge_finished"`      // height of the wedges: the strip less two seam allowances
	SidesFinished     []measure.NM `json:"sides_finished"`      // of a block, one for each of the chart's heights
	Kite              Square       `json:"kite_square"`         // for one kite: its right angle lies in a corner of the square
	Stop              Square       `json:"background_square"`   // for the two background pieces of a block, one left and one right: cut once on the diagonal
	Corner            Corner       `json:"corner_square"`       // for two corners of a ring: cut once on the diagonal
	WedgeBaseFinished measure.NM   `json:"wedge_base_finished"` // the wedge's wide end; the side of a ring's octagon
	WedgeBaseCut      measure.NM   `json:"wedge_base_cut"`
	WedgeTipCut       measure.NM   `json:"wedge_tip_cut"` // the tip's flat end
	PitchCut          measure.NM   `json:"pitch_cut"`     // of strip that each wedge takes, the next one turned round
	Wedges            int          `json:"wedges"`        // from one strip of the usable width, its ends squared within it
}

// Square is a square that pieces are cut from.
type Square struct {
	Need measure.NM `json:"need"` // the least side, exact to a nanometre
	Cut  measure.NM `json:"cut"`  // the side to cut, by Steps
}

// Corner is the square for two corners of a ring.
type Corner struct {
	Square
	RuleCut  measure.NM `json:"rule_cut,omitempty"`  // by the rule of thumb: the finished leg and 7/8 in, up to the next 1/8 in; 0 for another seam than 1/4 in or centimetres
	KitesCut measure.NM `json:"kites_cut,omitempty"` // the kite's square, which may be cut instead and leaves more to trim; 0 where it is too small
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
	for _, cut := range o.over() {
		c.Strips = append(c.Strips, c.strip(cut))
	}
	return c, nil
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
	s.squares(c)
	if left := c.UsableWidth - s.WedgeBaseCut; left >= 0 {
		s.Wedges = 1 + int(left/s.PitchCut)
	}
	return s
}

// squares is the squares for pieces beside the wedges: a kite's up to the next step that leaves something to trim, a stop
// piece's twice that, by custom, a corner's up to the next step.
func (s *Strip) squares(c *StripChart) {
	steps := blocks.StepsOf(c.Units)
	kite, stop := blocks.KiteExact(s.StripCut, c.Seam), blocks.BackgroundExact(s.StripCut, c.Seam)
	s.Kite = Square{kite, steps.Square(kite)}
	s.Stop = Square{stop, 2 * s.Kite.Cut}
	edge := blocks.RingCornerFinished(s.StripCut, c.Seam)
	corner := blocks.HalfSquareExact(edge, c.Seam)
	s.Corner = Corner{Square: Square{corner, measure.RoundUp(corner, steps.Exact)}, RuleCut: blocks.RingCornerRule(edge, c.Seam, c.Units)}
	if s.Kite.Cut >= corner {
		s.Corner.KitesCut = s.Kite.Cut
	}
}
