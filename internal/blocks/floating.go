package blocks

// floating: two stop halves; the web at one end only, plain ground at the other, so that a
// web stops before the border.
func floating() *Kind {
	return &Kind{
		Name:    "floating",
		Summary: "wedges at one end only and plain ground at the other, so that a web stops before the border",
		Drawing: `
o----------+----+
|'.   W   /     |
|  '.    /      |
|    '. /   G   |
| W    'X       |
|  _.-'  '.     |
+.'   G    '.   |
|            '. |
+--------------'+`,
		Roles: []Role{
			halfWedges(1),
			{Name: "ground", Letter: "G", Summary: "the plain ground beyond the web", Counts: []int{1}},
		},
		Turning: ToWebCentre,
		Points:  NW,
		Height:  AlongDiagonal,
		Pieces: slicesOf(upperWedges(), []Piece{
			{StopGround, 1, []Point{{Full, Zero}, {Full, Full}, {Mid, Mid}, {Long, Zero}}},
			{StopGround, 1, []Point{{Zero, Full}, {Zero, Long}, {Mid, Mid}, {Full, Full}}},
		}),
		Recipe: twoStops(),
	}
}

// twoStops is how two stop halves are sewn. They are mirror images.
func twoStops() Recipe {
	const leftWedge, rightWedge, leftGround, rightGround = 0, 1, 2, 3
	half := "Sew the wide end of a wedge to the slanted side of a %s stop piece, right sides together."
	trim := "Lay a ruler along the wedge and cut off what stands out of the stop piece at its square corner, on both of its sides, and beyond the long side."
	check := "the wedge and the stop piece make one straight long side"
	return Recipe{
		Steps: []Step{
			{
				Name: "left half", Do: worded(half, "left"), Trim: trim, Joins: []Join{{A: leftGround, B: leftWedge}},
				Check: check + "; right side up and with the wedge's tip towards you, the long side is on your right",
			},
			{
				Name: "right half", Do: worded(half, "right"), Trim: trim, Joins: []Join{{A: rightGround, B: rightWedge}},
				Check: check + "; right side up and with the wedge's tip towards you, the long side is on your left",
			},
			{
				Name:  "block",
				Do:    "Sew a left and a right half along their long sides, the two wedge tips at the same end. Pin where the seam lines cross in the middle, then the two ends.",
				Check: "every edge is half the unfinished block from the middle, and the two wedges end in one tip",
				Joins: []Join{{A: Made(0), B: Made(1)}},
			},
		},
		Pressing: []Pressing{turningRound()},
	}
}
