package blocks

// ring: eight wedges round the middle of a square, and four corners.
func ring() *Kind {
	return &Kind{
		Name:    "ring",
		Summary: "eight wedges round the middle and four corner triangles",
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
		Roles: []Role{
			{
				Name: "wedges", Letter: "W", Summary: "the eight wedges round the middle", Counts: []int{1, 2, 4, 8},
				Order: "clockwise from the top one, over and over", Dealing: InTurn, Banded: true,
			},
			{
				Name: "corners", Letter: "C", Summary: "the four corner triangles", Counts: []int{1, 2, 4},
				Order: "clockwise from the upper left one, over and over", Dealing: InTurn,
			},
			{
				Name: "edge", Letter: "E", Summary: "the wedges that face the outside of the quilt, so that a border may begin in them",
				Counts: []int{1}, Banded: true, Outer: true, OuterOf: 0,
			},
		},
		Turning: Fixed,
		Height:  ToMiddle,
		Pieces:  slicesOf(ringWedges(), ringCorners()),
		Recipe:  eightAndFour(),
	}
}

// eightAndFour is how a ring is sewn: pairs, halves, the octagon, then its corners.
func eightAndFour() Recipe {
	const corner = 8 // the first of them
	return Recipe{
		Steps: []Step{
			{
				Name: "pair",
				Do: "Lay two wedges right sides together, tips on each other, and sew one long side from the wide end to the tip. " +
					"In every pair the wedge that stands first clockwise lies on the same side.",
				Check: "the two wide ends make an even bend and the two tips one square corner",
				Joins: []Join{{A: 0, B: 1}, {A: 2, B: 3}, {A: 4, B: 5}, {A: 6, B: 7}},
			},
			{
				Name:  "half octagon",
				Do:    "Sew two pairs together, the second clockwise behind the first.",
				Check: "the long side is straight, and the seams end in one point a seam allowance inside it",
				Joins: []Join{{A: Made(0), B: Made(1)}, {A: Made(2), B: Made(3)}},
			},
			{
				Name:  "octagon",
				Do:    "Sew the two halves together. Pin the middle first, where the seam lines cross, then the two ends.",
				Check: "the octagon measures the same across each pair of sides, and eight tips meet in one point",
				Joins: []Join{{A: Made(4), B: Made(5)}},
			},
			{
				Name: "block",
				Do: "Sew the long side of a corner triangle to the wide end of the second wedge of each pair, two opposite corners first, then the other two. " +
					"The triangle sticks out by the same at both ends.",
				Trim:  "Lay a square ruler on the block, its middle on the middle of the ring, and cut the corners to size.",
				Tools: []Tool{SquareRuler},
				Check: "every edge is half the unfinished block from the middle, and the wedges beside a corner keep a seam allowance of cloth beyond their points",
				Joins: []Join{
					{A: Made(6), B: corner, Press: 1}, {A: Made(7), B: corner + 2, Press: 1},
					{A: Made(8), B: corner + 1, Press: 1}, {A: Made(9), B: corner + 3, Press: 1},
				},
			},
		},
		Pressing: []Pressing{turningRound(), {Ways: [2]string{"towards the corners", "towards the octagon"}}},
	}
}

// ringWedges go clockwise from the one that stands on the top side.
func ringWedges() []Piece {
	middle := Point{Mid, Mid}
	pieces := make([]Piece, 0, 8)
	for quarters := range 4 {
		onSide := []Point{middle, Point{Short, Zero}.Turned(quarters), Point{Long, Zero}.Turned(quarters)}
		onCorner := []Point{middle, Point{Long, Zero}.Turned(quarters), Point{Full, Short}.Turned(quarters)}
		pieces = append(pieces, Piece{Wedge, 0, onSide}, Piece{Wedge, 0, onCorner})
	}
	return pieces
}

// ringCorners go clockwise from the upper left one.
func ringCorners() []Piece {
	pieces := make([]Piece, 0, 4)
	for quarters := range 4 {
		pieces = append(pieces, Piece{RingCorner, 1, []Point{
			Point{Zero, Zero}.Turned(quarters), Point{Short, Zero}.Turned(quarters), Point{Zero, Short}.Turned(quarters),
		}})
	}
	return pieces
}
