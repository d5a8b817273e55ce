package blocks

// halves: a square of two half-square triangles.
func halves() *Kind {
	return &Kind{
		Name:    "halves",
		Summary: "a square of two half-square triangles; :nw and the like say where the first one's corner lies",
		Drawing: `
+---------------+
|            .' |
|  H       .'   |
|        .'     |
|      .'       |
|    .'         |
|  .'        H  |
|.'             |
+---------------+`,
		Roles: slicesOf([]Role{{
			Name: "pieces", Letter: "H", Summary: "the two triangles", Counts: []int{1, 2},
			Order: "two: the one with the corner that is pointed at, the other", Dealing: InTurn,
		}}, edges("triangles", false, allSides, 0)),
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
				Do:    "Sew two triangles together along the long edges. These are bias edges: pin them and let the machine feed them without pulling.",
				Trim:  "align the diagonal line of a square ruler with the seam and square up the block.",
				Tools: []Tool{SquareRuler},
				Check: "the seam runs from corner to corner, and each raw edge is " + HalfBlock,
				Joins: []Join{{A: 0, B: 1}},
			}},
			Pressing: []Pressing{{Ways: [2]string{"toward the triangle at the lower right of its picture", "toward the triangle at the upper left of its picture"}}},
		},
	}
}
