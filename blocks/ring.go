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
