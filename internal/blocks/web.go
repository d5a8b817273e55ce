package blocks

// web: two full halves, each two wedges and a kite.
func web() *Kind {
	return &Kind{
		Name:    "web",
		Summary: "two halves of two wedges and a kite; four blocks close a spider web, and webs run on",
		Drawing: `
o----------+----*
|'.   W   /  K  |
|  '.    /    _.+
|    '. / _.-'  |
| W    'X'   W  |
|  _.-' / '.    |
+.'    /    '.  |
|  K  /   W   '.|
*----+----------o`,
		Roles: slicesOf([]Role{
			halfWedges([]int{1, 2, 4}, "two: upper end, lower end; four: clockwise around the upper end's center, then the lower's"),
			{Name: "kites", Letter: "K", Summary: "the kites between the webs, the points of the stars", Counts: []int{1, 2}, Order: "two: upper kite, lower kite"},
		}, edges("wedges", true, allSides, 0)),
		Turning: OnWebCentres,
		Points:  NW,
		Height:  AlongDiagonal,
		Pieces:  slicesOf(upperWedges(), lowerWedges(), kites()),
		Recipe:  twoHalves(),
	}
}

// halfWedges is the role of the wedges of halves.
func halfWedges(counts []int, order string) Role {
	return Role{Name: "wedges", Letter: "W", Summary: "the wedges around the web centers", Counts: counts, Order: order, Banded: true, OfWebs: true}
}

// slicesOf is several groups in one list.
func slicesOf[T any](groups ...[]T) []T {
	var all []T
	for _, g := range groups {
		all = append(all, g...)
	}
	return all
}

// upperWedges are the two wedges with their tips at the upper left corner, clockwise.
func upperWedges() []Piece {
	return []Piece{
		{Wedge, 0, []Point{{Zero, Zero}, {Long, Zero}, {Mid, Mid}}},
		{Wedge, 0, []Point{{Zero, Zero}, {Mid, Mid}, {Zero, Long}}},
	}
}

// lowerWedges are the two wedges with their tips at the lower right corner, clockwise.
func lowerWedges() []Piece {
	return []Piece{
		{Wedge, 0, []Point{{Full, Full}, {Short, Full}, {Mid, Mid}}},
		{Wedge, 0, []Point{{Full, Full}, {Mid, Mid}, {Full, Short}}},
	}
}

// kites are the kites in the upper right and the lower left corner.
func kites() []Piece {
	return []Piece{
		{Kite, 1, []Point{{Full, Zero}, {Full, Short}, {Mid, Mid}, {Long, Zero}}},
		{Kite, 1, []Point{{Zero, Full}, {Zero, Long}, {Mid, Mid}, {Short, Full}}},
	}
}

// twoHalves is how two full halves are sewn: a wedge on each side of a kite, twice, and the
// two triangles along the diagonal.
func twoHalves() Recipe {
	const upperRight, lowerLeft = 4, 5 // kites
	return Recipe{
		Steps: []Step{
			{
				Name: "kite with its first wedge",
				Do: "Place a wedge on a kite, right sides together, and sew the wide end of the wedge to a long side of the kite. " +
					"Always start with the same side: with the kite's square corner toward you, the left-hand side.",
				Named: []Named{{Words: "a wedge on a kite", By: "one %s wedge on a kite", Pieces: []int{3, 1}, Others: []int{0, 2}}},
				Check: "on the straight side the kite lies even with the wedge or extends past it, and nowhere stops short of it",
				Joins: []Join{{A: upperRight, B: 3}, {A: lowerLeft, B: 1}},
			},
			{
				Name:  "half",
				Do:    "Sew the second wedge to the other long side of the kite in the same way.",
				Named: []Named{{Words: "the second wedge", By: "one %s wedge", Pieces: []int{0, 2}, Others: []int{3, 1}}},
				Trim:  "align the ruler with the raw edges of the two wedges and trim the kite even on both sides of its square corner.",
				Check: "the three pieces form a straight line along the long edge, and the kite's tip is one seam allowance inside it",
				Joins: []Join{{A: Made(0), B: 0}, {A: Made(1), B: 2}},
			},
			{
				Name:  "block",
				Do:    "Rotate one half 180 degrees and sew the halves together along the long edges. Pin at the center, where the seam lines cross, then at the ends.",
				Check: "each raw edge is " + HalfBlock + ", and the seam at each edge will line up with the next block's",
				Joins: []Join{{A: Made(2), B: Made(3)}},
			},
		},
		Pressing: []Pressing{turningRound()},
	}
}

// turningRound is the pressing of seams that meet in the block's middle and can all turn one
// way round it.
func turningRound() Pressing {
	return Pressing{Round: true, About: Point{Mid, Mid}, Ways: [2]string{"clockwise around the center", "counterclockwise around the center"}}
}
