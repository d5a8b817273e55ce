package blocks

import "math"

// halfTumblerShape: the piece at the end of a column, square at its outer end. Its outline begins in its upper left corner;
// where its upper side is level, that is its square end.
func halfTumblerShape() *Description {
	return &Description{
		Name: "end piece", Angles: [][]float64{{90, 90, 67.5, 112.5}, {90, 90, 112.5, 67.5}, {67.5, 112.5, 90, 90}, {112.5, 67.5, 90, 90}}, Sized: ByColumn, Point: -1, Blunt: -1, Grain: [2]int{1, 2},
		CutTitle: "End pieces",
		CutWords: "Cut the rectangle, then cut it in two at an angle, from the longer edge of one piece to the shorter edge of the other. Left and right end pieces are mirror images: cut all of them with the fabric right side up.",
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
	return c, []Exact{{"the strip for end pieces", cut, z.sideOfSquare}}, true
}

func (p Place) distance(q Place) float64 { return math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)) }
