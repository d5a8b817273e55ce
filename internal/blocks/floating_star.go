package blocks

// floating-star: a full half and a plain half; four make a four-pointed star that floats on
// plain ground.
func floatingStar() *Kind {
	return &Kind{
		Name:    "floating-star",
		Summary: "one kite with its two wedges, and plain ground for the other half; four blocks make a star that floats",
		Drawing: `
o----------+----*
|'.   W   /  K  |
|  '.    /    _.+
|    '. / _.-'  |
|      'X'   W  |
|        '.     |
|    G     '.   |
|            '. |
+--------------'o`,
		Roles: []Role{
			{Name: "kites", Letter: "K", Summary: "the points of the star", Counts: []int{1}},
			{
				Name: "wedges", Letter: "W", Summary: "the wedges beside each point", Counts: []int{1, 2},
				Order: "two: upper wedge, lower wedge", Banded: true, OfWebs: true,
			},
			{Name: "ground", Letter: "G", Summary: "the plain half", Counts: []int{1}},
		},
		Turning: ToStarCentre,
		Points:  NE,
		Height:  AlongDiagonal,
		Pieces: []Piece{
			{Kite, 0, kites()[0].Outline},
			{Wedge, 1, upperWedges()[0].Outline},
			{Wedge, 1, lowerWedges()[1].Outline},
			{HalfSquare, 2, []Point{{Zero, Full}, {Zero, Zero}, {Full, Full}}},
		},
		Recipe: fullAndPlain(),
	}
}

// fullAndPlain is how a full half and a triangle are sewn. The triangle has no corner in the
// middle, so the long seam cannot turn there.
func fullAndPlain() Recipe {
	const kite, rightWedge, leftWedge, ground = 0, 1, 2, 3
	return Recipe{
		Steps: []Step{
			{
				Name:  "kite with its first wedge",
				Do:    "Lay a wedge on a kite, right sides together, the wide end of the wedge along the side of the kite that runs to its sharp tip: that on the left as you look from the square corner to the tip.",
				Check: "the long sides of wedge and kite make one straight line",
				Joins: []Join{{A: kite, B: leftWedge}},
			},
			{
				Name:  "half",
				Do:    "Sew the second wedge to the other side of the kite in the same way.",
				Trim:  "Lay a ruler along the two wedges and cut off what stands out of the kite at its square corner, on both of its sides.",
				Check: "the long side is straight where the three pieces meet, and the kite's tip lies a seam allowance inside it",
				Joins: []Join{{A: Made(0), B: rightWedge}},
			},
			{
				Name:  "block",
				Do:    "Sew the half to a triangle of ground along the long sides, the half on top so that you see the kite's tip and sew just past it.",
				Check: "every edge is half the unfinished block from the middle, and the kite keeps its tip",
				Joins: []Join{{A: Made(1), B: ground, Press: 1}},
				Trim:  "Lay a ruler along the half and cut off what stands out of the triangle.",
			},
		},
		Pressing: []Pressing{
			{Round: true, About: Point{Mid, Mid}, Ways: turningRound().Ways},
			{Ways: [2]string{"towards the plain triangle", "away from the plain triangle, towards the half that has the kite"}},
		},
	}
}
