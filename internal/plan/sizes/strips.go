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
	Heights []Height // the columns of Strip.SidesFinished
	Strips  []Strip  // the narrowest first
}

// Height is one way in which wedges fit into a block, with the kinds that have it.
type Height struct {
	blocks.WedgeHeight
	Kinds []string // names, in the order of help
}

// Strip is what a strip of one width makes.
type Strip struct {
	StripCut          measure.NM
	WedgeFinished     measure.NM   // height of the wedges: the strip less two seam allowances
	SidesFinished     []measure.NM // of a block, one for each of the chart's heights
	Kite              Square       // for one kite: its right angle lies in a corner of the square
	Stop              Square       // for the two stop pieces of a block, one left and one right: cut once on the diagonal
	Corner            Corner       // for two corners of a ring: cut once on the diagonal
	WedgeBaseFinished measure.NM   // the wedge's wide end; the side of a ring's octagon
	WedgeBaseCut      measure.NM
	WedgeTipCut       measure.NM // the tip's flat end
	PitchCut          measure.NM // of strip that each wedge takes, the next one turned round
	Wedges            int        // from one strip of the usable width, its ends squared within it
}

// Square is a square that pieces are cut from.
type Square struct {
	Need measure.NM // the least side, exact to a nanometre
	Cut  measure.NM // the side to cut, by Steps
}

// Corner is the square for two corners of a ring.
type Corner struct {
	Square
	RuleCut  measure.NM // by the rule of thumb: the finished leg and 7/8 in, up to the next 1/8 in; 0 for another seam than 1/4 in or centimetres
	KitesCut measure.NM // the kite's square, which may be cut instead and leaves more to trim; 0 where it is too small
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
		if !has(kind, blocks.Wedge) {
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

func has(kind *blocks.Kind, shape blocks.Shape) bool {
	for _, p := range kind.Pieces {
		if p.Shape == shape {
			return true
		}
	}
	return false
}

func (c *StripChart) strip(cut measure.NM) Strip {
	q := c.Seam
	h := cut - 2*q
	s := Strip{
		StripCut: cut, WedgeFinished: h,
		WedgeBaseFinished: nearest(times(h, 2*tan22)),
		WedgeBaseCut:      nearest(times(h+q, 2*tan22) + times(q, 2*tan22/sin22)),
		WedgeTipCut:       nearest(times(q, 2*tan22/sin22) - times(q, 2*tan22)),
		PitchCut:          nearest(times(h, tan22) + times(q, 2*tan22/sin22)),
	}
	for _, height := range c.Heights {
		s.SidesFinished = append(s.SidesFinished, height.Side(measure.Of(h)))
	}
	s.Kite, s.Stop = c.kite(h), c.stop(h)
	s.Corner = c.corner(h, s.Kite.Cut)
	if left := c.UsableWidth - s.WedgeBaseCut; left >= 0 {
		s.Wedges = 1 + int(left/s.PitchCut)
	}
	return s
}

// kite is the square for a kite beside wedges of a finished height: to its sharp tip, up to the next step that leaves
// something to trim.
func (c *StripChart) kite(h measure.NM) Square {
	q, steps := c.Seam, StepsOf(c.Units)
	side := blocks.AlongDiagonal.Side(measure.Of(h))
	need := q + nearest(float64(side)/2+times(q, k/sin22))
	return Square{need, measure.RoundUp(need+steps.Spare, steps.Trimmed)}
}

// stop is the square for two stop pieces beside wedges of a finished height: twice the kite's, by custom.
func (c *StripChart) stop(h measure.NM) Square {
	side := blocks.AlongDiagonal.Side(measure.Of(h))
	return Square{side + halfSquareAdds(c.Seam), 2 * c.kite(h).Cut}
}

// corner is the square for two corners of a ring whose wedges have a finished height: exact, up to the next step.
func (c *StripChart) corner(h, kitesCut measure.NM) Corner {
	leg := nearest(times(blocks.ToMiddle.Side(measure.Of(h)), 1-k))
	step := StepsOf(c.Units).Exact
	need := leg + halfSquareAdds(c.Seam)
	corner := Corner{Square: Square{need, measure.RoundUp(need, step)}}
	if c.Units == measure.Inches && c.Seam == measure.Inch/4 {
		corner.RuleCut = measure.RoundUp(leg+7*measure.Inch/8, step)
	}
	if kitesCut >= need {
		corner.KitesCut = kitesCut
	}
	return corner
}

// halfSquareAdds is what seams add to the finished leg of a half-square triangle: (2 + sqrt 2) seam allowances.
func halfSquareAdds(seam measure.NM) measure.NM { return 2*seam + nearest(times(seam, 2*k)) }
