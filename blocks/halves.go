package blocks

// halves: a square of two half-square triangles.
func halves() *Kind {
	return &Kind{
		Name:    "halves",
		Summary: "a square of two half-square triangles; :nw and the like say where the first one's corner lies",
		Drawing: `
+---------------+
|            .' |
|  P       .'   |
|        .'     |
|      .'       |
|    .'         |
|  .'        P  |
|.'             |
+---------------+`,
		Roles: []Role{{
			Name: "pieces", Letter: "P", Summary: "the two triangles", Counts: []int{1, 2},
			Order: "two: the one with the corner that is pointed at, the other", Dealing: InTurn,
		}},
		Turning: AsWritten,
		Points:  NW,
		Height:  NoWedges,
		Pieces: []Piece{
			{HalfSquare, 0, []Point{{Zero, Zero}, {Full, Zero}, {Zero, Full}}},
			{HalfSquare, 0, []Point{{Full, Full}, {Zero, Full}, {Full, Zero}}},
		},
	}
}
