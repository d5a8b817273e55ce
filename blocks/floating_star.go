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
	}
}
