package blocks

// floating-star: a full half and a plain half; four make a four-pointed star that floats on
// plain background.
func floatingStar() *Kind {
	return &Kind{
		Name:    "floating-star",
		Summary: "one kite with its two wedges, and plain background for the other half; four blocks make a star that floats",
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
		Roles: slicesOf([]Role{
			{Name: "kites", Letter: "K", Summary: "the points of the star", Counts: []int{1}},
			{
				Name: "wedges", Letter: "W", Summary: "the wedges beside each point", Counts: []int{1, 2},
				Order: "two: upper wedge, lower wedge", Banded: true, OfWebs: true,
			},
			{Name: "background", Former: "ground", Letter: "G", Summary: "the plain half", Counts: []int{1}},
		}, edges("wedges and the background", false, allSides, 1, 2)),
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
	const kite, rightWedge, leftWedge, background = 0, 1, 2, 3
	return Recipe{
		Steps: []Step{
			{
				Name:  "kite with its first wedge",
				Do:    "Place a wedge on a kite, right sides together, and sew the wide end of the wedge to a long side of the kite. Always start with the same side: with the kite's square corner toward you, the left-hand side.",
				Named: []Named{{Words: "a wedge on a kite", By: "one %s wedge on a kite", Pieces: []int{leftWedge}, Others: []int{rightWedge}}},
				Check: "on the straight side the kite lies even with the wedge or extends past it, and nowhere stops short of it",
				Joins: []Join{{A: kite, B: leftWedge}},
			},
			{
				Name:  "half",
				Do:    "Sew the second wedge to the other long side of the kite in the same way.",
				Named: []Named{{Words: "the second wedge", By: "one %s wedge", Pieces: []int{rightWedge}, Others: []int{leftWedge}}},
				Trim:  "align the ruler with the raw edges of the two wedges and trim the kite even on both sides of its square corner.",
				Check: "the three pieces form a straight line along the long edge, and the kite's tip is one seam allowance inside it",
				Joins: []Join{{A: Made(0), B: rightWedge}},
			},
			{
				Name:  "block",
				Do:    "Sew the half to a half-square triangle along the long edges. Keep the half on top so that you can see the kite's tip and sew just past it.",
				Check: "each raw edge is " + HalfBlock + ", and the kite keeps its point",
				Joins: []Join{{A: Made(1), B: background, Press: 1}},
				Trim:  "align the ruler with the raw edges of the half and trim the half-square triangle even.",
			},
		},
		Pressing: []Pressing{
			{Round: true, About: Point{Mid, Mid}, Ways: turningRound().Ways},
			{Ways: [2]string{"toward the half-square triangle", "toward the half with the kite"}},
		},
	}
}
