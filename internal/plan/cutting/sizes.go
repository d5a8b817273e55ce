package cutting

import (
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
)

// The angles of an eighth of a turn, and of half of it.
const (
	tan22 = math.Sqrt2 - 1         // tan 22.5 degrees
	cos22 = 0.92387953251128675613 // cos 22.5 degrees
)

// times is a length multiplied by a number, rounded to a whole nanometre.
func times(nm measure.NM, by float64) measure.NM {
	return measure.NM(math.Round(float64(nm) * by))
}

// HalfSquareExact is the side of the square that two half-square triangles of a finished short edge are cut from:
// the edge and (2 + sqrt 2) seam allowances.
func HalfSquareExact(edgeFinished, seam measure.NM) measure.NM {
	return edgeFinished + 2*seam + times(seam, math.Sqrt2)
}

// QuarterSquareExact is the side of the square that four quarter-square triangles of a finished long edge are cut from:
// the edge and 2 (1 + sqrt 2) seam allowances.
func QuarterSquareExact(longEdgeFinished, seam measure.NM) measure.NM {
	return longEdgeFinished + 2*seam + times(seam, 2*math.Sqrt2)
}

// Rules of thumb for a seam of a quarter of an inch: what is added to a triangle's short edge, and to its long one.
const (
	halfSquareRule    = 7 * measure.Inch / 8
	quarterSquareRule = 5 * measure.Inch / 4
)

// sizer works out cut sizes.
type sizer struct {
	units   measure.System
	seam    measure.NM
	side    measure.NM // of a block, finished
	strips  [blocks.Heights]measure.NM
	steps   sizes.Steps
	options Options
	charted map[measure.NM]sizes.Strip
}

// charted is what the chart says of a strip of one width; false where it has none that narrow or wide.
func (z *sizer) strip(cut measure.NM) (sizes.Strip, bool) {
	if s, ok := z.charted[cut]; ok {
		return s, true
	}
	c, err := sizes.Strips(sizes.Options{Units: z.units, Seam: z.seam, From: cut, To: cut})
	if err != nil {
		return sizes.Strip{}, false
	}
	z.charted[cut] = c.Strips[0]
	return c.Strips[0], true
}

// exact rounds a size up to what pieces that are not trimmed are cut by.
func (z *sizer) exact(nm measure.NM) measure.NM { return measure.RoundUp(nm, z.steps.Exact) }

// ruler says how a size that must be exact stands to a ruler's marks. sideOf is the block's side that gives a size, nil
// where it has no part in it.
func (z *sizer) ruler(exact measure.NM, sideOf func(measure.NM) measure.NM) Ruler {
	mark := z.steps.Mark
	near := measure.Nearest(exact, mark)
	if d := near - exact; d >= -1 && d <= 1 { // a third of an inch three times over is an inch
		return Ruler{ExactCut: exact, OnMark: true, BelowCut: exact, AboveCut: exact}
	}
	above := measure.RoundUp(exact, mark)
	r := Ruler{ExactCut: exact, BelowCut: above - mark, AboveCut: above}
	if sideOf != nil {
		r.BelowSideFinished, r.AboveSideFinished = max(0, sideOf(r.BelowCut)), max(0, sideOf(r.AboveCut))
	}
	return r
}

// sideOfSquare is the block's side that gives a plain square of a cut size.
func (z *sizer) sideOfSquare(cut measure.NM) measure.NM { return cut - 2*z.seam }

// square is a piece cut as the square or rectangle that it is.
func (z *sizer) square(p *Piece, sideOf func(measure.NM) measure.NM) {
	p.AcrossExact = p.SideFinished + 2*z.seam
	p.AcrossCut, p.AlongExact, p.AlongCut = p.AcrossExact, p.AcrossExact, p.AcrossExact
	p.OnRuler = []Ruler{z.ruler(p.AcrossExact, sideOf)}
}

// wedge is a wedge from a strip: exact, since the strip's width is its height.
func (z *sizer) wedge(p *Piece, height blocks.WedgeHeight) bool {
	cut := z.strips[height]
	s, ok := z.strip(cut)
	if !ok {
		return false
	}
	p.Method, p.SideFinished = Nested, s.WedgeFinished
	p.AcrossExact, p.AcrossCut = cut, cut
	p.WideCut, p.NarrowCut = s.WedgeBaseCut, s.WedgeTipCut
	p.AlongExact, p.AlongCut = s.WedgeBaseCut, s.WedgeBaseCut
	p.OnRuler = []Ruler{z.ruler(cut, func(c measure.NM) measure.NM { return height.Side(measure.Of(c - 2*z.seam)) })}
	return true
}

// trimmed fills in a square whose pieces are trimmed after sewing.
func (p *Piece) trimmed(exact, cut measure.NM) {
	p.AcrossExact, p.AlongExact, p.AcrossCut, p.AlongCut = exact, exact, cut, cut
	p.TrimCut = cut - exact
}

// kiteCut is the side of a kite's square to cut.
func (z *sizer) kiteCut(exact measure.NM) measure.NM {
	return measure.RoundUp(exact+z.steps.Spare, z.steps.Trimmed)
}

// beside is a kite or a stop piece, which follow from the strip of the wedges beside them.
func (z *sizer) beside(p *Piece) bool {
	s, ok := z.strip(z.strips[blocks.AlongDiagonal])
	if !ok {
		return false
	}
	p.SideFinished = z.side
	kite := z.kiteCut(s.Kite.Need)
	if p.Shape == blocks.Kite {
		p.trimmed(s.Kite.Need, kite)
		return true
	}
	p.Method = OnceOnDiagonal
	p.trimmed(s.Stop.Need, max(2*kite, s.Stop.Need))
	return true
}

// triangle is a half of a square, cut so that the edge that lies on the outside of its block is on the straight grain.
func (z *sizer) triangle(p *Piece, edgeFinished measure.NM) {
	p.SideFinished = edgeFinished
	exact, rule := HalfSquareExact(edgeFinished, z.seam), edgeFinished+halfSquareRule
	p.Method = OnceOnDiagonal
	if z.options.LongEdgesStraight {
		long := times(edgeFinished, math.Sqrt2)
		exact, rule = QuarterSquareExact(long, z.seam), long+quarterSquareRule
		p.Method = TwiceOnDiagonal
	}
	cut := z.exact(exact)
	p.trimmed(exact, cut)
	if z.units == measure.Inches && z.seam == measure.Inch/4 && z.exact(rule) != cut {
		p.RuleCut = z.exact(rule)
	}
}

// ringCorner is a triangle beside an octagon: exact, or by custom from the kite's square for the same strip.
func (z *sizer) ringCorner(p *Piece) bool {
	s, ok := z.strip(z.strips[blocks.ToMiddle])
	if !ok {
		return false
	}
	z.triangle(p, s.Corner.Need-HalfSquareExact(0, z.seam))
	if z.options.LongEdgesStraight {
		return true
	}
	if kite := z.kiteCut(s.Kite.Need); kite >= s.Corner.Need {
		p.KitesCut = kite
		if z.options.CornersByCustom {
			p.trimmed(s.Corner.Need, kite)
		}
	}
	return true
}

// tumbler is a whole piece of a column; its strip is the block's side and two seams.
func (z *sizer) tumbler(p *Piece, divided *blocks.Column) error {
	cut := z.side + 2*z.seam
	line := blocks.LineFor(divided.Mean, cut, z.seam)
	c, err := sizes.Tumblers(sizes.Options{Units: z.units, Seam: z.seam, StripCut: cut, From: line, To: line})
	if err != nil {
		return err
	}
	t := c.Tumblers[0]
	p.Method, p.SideFinished, p.LengthFinished = Nested, z.side, measure.NM(math.Round(divided.Mean))
	p.AcrossExact, p.AcrossCut = cut, cut
	p.WideCut, p.NarrowCut = t.WideCut, t.NarrowCut
	p.AlongExact, p.AlongCut = t.WideCut, t.WideCut
	p.OnRuler = []Ruler{z.ruler(cut, z.sideOfSquare), z.ruler(line, nil)}
	return nil
}

// endPiece is a piece at the end of a column: two of one hand from a rectangle cut on the slant.
func (z *sizer) endPiece(p *Piece, divided *blocks.Column) {
	cut := z.side + 2*z.seam
	middle := measure.NM(math.Round(divided.End+float64(z.seam)/cos22)) + z.seam
	lean := times(cut, tan22/2)
	p.Method, p.SideFinished, p.LengthFinished = EndPairs, z.side, measure.NM(math.Round(divided.End))
	p.AcrossExact, p.AcrossCut = cut, cut
	p.AlongExact = 2 * middle
	p.AlongCut = z.exact(p.AlongExact)
	more := (p.AlongCut - p.AlongExact) / 2
	p.WideCut, p.NarrowCut = middle+lean+more, middle-lean+more
	p.TrimCut = more
	p.OnRuler = []Ruler{z.ruler(cut, z.sideOfSquare)}
}

// edging is a strip of a border or a sash. Its width is exact; a border's length is up to the next step, since it is cut to
// the quilt's own measure.
func (z *sizer) edging(p *Piece, border bool) {
	p.AcrossExact, p.AcrossCut = p.SideFinished+2*z.seam, p.SideFinished+2*z.seam
	p.AlongExact, p.AlongCut = p.LengthFinished+2*z.seam, p.LengthFinished+2*z.seam
	p.OnRuler = []Ruler{z.ruler(p.AcrossExact, nil)}
	if border {
		p.AlongCut = z.exact(p.AlongExact)
		p.TrimCut = p.AlongCut - p.AlongExact
		return
	}
	var sideOf func(measure.NM) measure.NM
	if p.LengthFinished == z.side {
		sideOf = z.sideOfSquare
	}
	p.OnRuler = append(p.OnRuler, z.ruler(p.AlongExact, sideOf))
}
