package blocks

// ring: eight wedges round the middle of a square, and four corners.
func ring() *Kind {
	return &Kind{
		Name:    "ring",
		Summary: "eight wedges around the center and four corner triangles",
		Drawing: `
+----+-----+----+
| C.' \ W / '.C |
|.' W  \ /  W '.|
|'-._   |   _.-'|
| W  :--X--:  W |
|_.-'   |   '-._|
|'. W  / \  W .'|
| C'. / W \ .'C |
+----+-----+----+`,
		Roles: slicesOf([]Role{
			{
				Name: "wedges", Letter: "W", Summary: "the eight wedges around the center", Counts: []int{1, 2, 4, 8},
				Order: "clockwise from the top one, over and over", Dealing: InTurn, Banded: true,
			},
			{
				Name: "corners", Letter: "C", Summary: "the four corner triangles", Counts: []int{1, 2, 4},
				Order: "clockwise from the upper left one, over and over", Dealing: InTurn,
			},
		}, edges("wedges", true, allSides, 0)),
		Turning: Fixed,
		Height:  ToMiddle,
		Pieces:  slicesOf(ringWedges(), ringCorners()),
		Recipe:  eightAndFour(),
	}
}

// eightAndFour is how a ring is sewn: pairs, halves, the octagon, then its corners.
func eightAndFour() Recipe {
	const corner = 8 // the first of them
	first, second := []int{0, 2, 4, 6}, []int{1, 3, 5, 7}
	return Recipe{
		Steps: []Step{
			{
				Name: "pair",
				Do: "Place two wedges right sides together, tips matching, and sew one long edge from the wide end to the tip. " +
					"Right side up with the tips pointing down, the wedge that comes first going clockwise around the block is always on the left.",
				Named: []Named{{Words: "the wedge that comes first going clockwise around the block", By: "the %s wedge", Pieces: first, Others: second}},
				Check: "the tips form a 90-degree corner",
				Joins: []Join{{A: 0, B: 1}, {A: 2, B: 3}, {A: 4, B: 5}, {A: 6, B: 7}},
			},
			{
				Name:  "half octagon",
				Do:    "Right side up with the tips pointing down, sew the second pair to the right of the first.",
				Check: "the long edge is straight, and the seams meet in one point, one seam allowance inside it",
				Joins: []Join{{A: Made(0), B: Made(1)}, {A: Made(2), B: Made(3)}},
			},
			{
				Name:  "octagon",
				Do:    "Sew the two halves together. Pin at the center first, where the seam lines cross, then at the ends.",
				Check: "the octagon measures the same across each pair of opposite sides, and all eight tips meet in one point",
				Joins: []Join{{A: Made(4), B: Made(5)}},
			},
			{
				Name: "block",
				Do: "Sew the long edge of a corner triangle to the wide end of the second wedge of each pair: two opposite corners first, then the other two. " +
					"Center the triangle: it extends by the same amount at each end.",
				Named: []Named{{Words: "the second wedge of each pair", By: "each %s wedge", Pieces: second, Others: first}},
				Trim:  "center a square ruler on the octagon and square up the block.",
				Tools: []Tool{SquareRuler},
				Check: "each raw edge is " + HalfBlock + ", and the wedges beside a corner keep one seam allowance beyond their points",
				Joins: []Join{
					{A: Made(6), B: corner, Press: 1}, {A: Made(7), B: corner + 2, Press: 1},
					{A: Made(8), B: corner + 1, Press: 1}, {A: Made(9), B: corner + 3, Press: 1},
				},
			},
		},
		Pressing: []Pressing{turningRound(), {Ways: [2]string{"toward the corners", "toward the octagon"}}},
	}
}

// ringWedges go clockwise from the one that stands on the top side.
func ringWedges() []Piece {
	middle := Point{Mid, Mid}
	var pieces []Piece
	for quarters := range 4 {
		onSide := []Point{middle, Point{Short, Zero}.Turned(quarters), Point{Long, Zero}.Turned(quarters)}
		onCorner := []Point{middle, Point{Long, Zero}.Turned(quarters), Point{Full, Short}.Turned(quarters)}
		pieces = append(pieces, Piece{Wedge, 0, onSide}, Piece{Wedge, 0, onCorner})
	}
	return pieces
}

// ringCorners go clockwise from the upper left one.
func ringCorners() []Piece {
	var pieces []Piece
	for quarters := range 4 {
		pieces = append(pieces, Piece{RingCorner, 1, []Point{
			Point{Zero, Zero}.Turned(quarters), Point{Short, Zero}.Turned(quarters), Point{Zero, Short}.Turned(quarters),
		}})
	}
	return pieces
}
