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
		Recipe: Recipe{
			Steps: []Step{{
				Name:  "block",
				Do:    "Sew two triangles along their long sides. These are on the bias: pin them and let the machine feed them, without pulling.",
				Trim:  "Lay a square ruler with its diagonal on the seam and cut the block to size.",
				Tools: []Tool{SquareRuler},
				Check: "the seam runs from corner to corner, and every edge is half the unfinished block from its middle",
				Joins: []Join{{A: 0, B: 1}},
			}},
			Pressing: []Pressing{{Ways: [2]string{"towards the triangle that its picture shows at the lower right", "towards the triangle that its picture shows at the upper left"}}},
		},
	}
}
