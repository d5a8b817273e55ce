package blocks

import (
	"math"

	"eighthturn/internal/measure"
)

// halfTumblerShape: the piece at the end of a column, square at its outer end. Its outline begins in its upper left corner;
// where its upper side is level, that is its square end.
func halfTumblerShape() *Description {
	return &Description{
		Name: "end piece", FinishedAs: "height by width at the middle", Angles: [][]float64{{90, 90, 67.5, 112.5}, {90, 90, 112.5, 67.5}, {67.5, 112.5, 90, 90}, {112.5, 67.5, 90, 90}}, Sized: ByColumn, Point: -1, Blunt: -1, Grain: [2]int{1, 2},
		Marked: true, CutTitle: "End pieces",
		CutWords: "Cut the rectangle. Fabric right side up, measure from its left end: the first mark in the table goes on one edge of the strip (the top edge for right end pieces, the bottom edge for left end pieces), the second mark on the opposite edge. " +
			"Cut between the marks: each half is an end piece. To cut left and right at once, fold the strip right sides together and cut through both layers. " +
			"Or use the wedge ruler: mark the ruler line in the table with tape, align the tape with the edge of the strip and the ruler's center line with the square end, and cut along the slanted side.",
		Lies: func(o []Place) (from, to int) { // its square end up
			if o[0].Y == o[1].Y {
				return 0, 1
			}
			return 2, 3
		},
		Hand: func(o []Place) Hand {
			left, right := o[3].Y-o[0].Y, o[2].Y-o[1].Y
			return handed((left > right) == (o[0].Y == o[1].Y)) // the square end away, which may be the lower one
		},
		OneHanded: true,
		LengthIn:  func(c *Column) float64 { return c.End },
		Cut:       cutHalfTumbler,
	}
}

// cutHalfTumbler is two of one hand from a rectangle cut on the slant.
func cutHalfTumbler(z *Sizing) (CutSize, []Exact, bool) {
	cut := z.SideFinished + 2*z.Seam
	middle := nearest(z.Divided.End+float64(z.Seam)/cos22) + z.Seam
	lean := nearest(times(cut, tan22/2))
	c := CutSize{Method: EndPairs, SideFinished: z.SideFinished, LengthFinished: nearest(z.Divided.End), AcrossExact: cut, AcrossCut: cut, AlongExact: 2 * middle, Grain: [2]int{1, 2}}
	c.AlongCut = z.exact(c.AlongExact)
	c.TrimCut = (c.AlongCut - c.AlongExact) / 2
	c.WideCut, c.NarrowCut = middle+lean+c.TrimCut, middle-lean+c.TrimCut
	c.Slanted = slantOf(&c, z)
	return c, []Exact{{"the strip for end pieces", cut, z.sideOfSquare}}, true
}

// SlantCut is the cut that makes two end pieces of a rectangle.
type SlantCut struct {
	WideMark   measure.NM `json:"wide_mark"`   // on one edge of the strip, from the square end of a piece
	NarrowMark measure.NM `json:"narrow_mark"` // on the other, from the same end
	RulerLine  measure.NM `json:"ruler_line"`  // of a wedge ruler, on the strip's edge, its center line on the square end
}

// slantOf is where the slanted cut goes: by the marks of a ruler that come nearest to the middle, as long as they leave what
// both pieces need.
func slantOf(c *CutSize, z *Sizing) *SlantCut {
	enough := func(wide measure.NM) bool { return wide >= c.WideCut-c.TrimCut && wide <= c.WideCut+c.TrimCut }
	s := SlantCut{WideMark: measure.Nearest(c.WideCut, z.Units.SlantMark())}
	if !enough(s.WideMark) {
		s.WideMark = c.WideCut
	}
	s.NarrowMark = c.AlongCut - s.WideMark
	s.RulerLine = measure.Nearest(centeredLine(s.WideMark, z.Seam), z.Units.Mark())
	if !enough(halfWidth(s.RulerLine, z.Seam)) {
		s.RulerLine = centeredLine(c.WideCut, z.Seam)
	}
	return &s
}

// halfWidth is how far a wedge ruler's side lies from its center line at a line of it.
func halfWidth(line, seam measure.NM) measure.NM {
	wide, _ := TumblerCut(line, line, seam)
	return wide / 2
}

// centeredLine is the line of a wedge ruler at which its side lies so far from its center line.
func centeredLine(half, seam measure.NM) measure.NM {
	return nearest(float64(half)/tan22 - times(seam, 1/sin22) + float64(seam))
}

func (p Place) distance(q Place) float64 { return math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)) }
