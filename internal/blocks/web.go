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
		Roles:   []Role{halfWedges(2), halfKites(2)},
		Turning: OnWebCentres,
		Points:  NW,
		Height:  AlongDiagonal,
		Pieces:  slicesOf(upperWedges(), lowerWedges(), kites()),
		Recipe:  twoHalves(),
	}
}

// halfWedges is the role of the wedges in a kind whose halves put them at so many ends.
func halfWedges(ends int) Role {
	r := Role{
		Name: "wedges", Letter: "W", Summary: "the wedges round the web centres",
		Counts: []int{1, 2, 4}, Order: "two: upper end, lower end; four: clockwise round the upper end's centre, then the lower's",
		Banded: true, OfWebs: true,
	}
	if ends == 1 {
		r.Counts, r.Order = []int{1, 2}, "two: clockwise round the centre"
	}
	return r
}

// halfKites is the role of so many kites.
func halfKites(count int) Role {
	r := Role{Name: "kites", Letter: "K", Summary: "the kites between the webs, the points of the stars", Counts: []int{1}}
	if count == 2 {
		r.Counts, r.Order = []int{1, 2}, "two: upper kite, lower kite"
	}
	return r
}

// slicesOf is the pieces of several groups in one list.
func slicesOf(groups ...[]Piece) []Piece {
	var all []Piece
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
				Do: "Lay a wedge on a kite, right sides together, the wide end of the wedge along the side of the kite that runs to its sharp tip. " +
					"On every kite it is the same side: that on the left as you look from the square corner to the tip.",
				Check: "the long sides of wedge and kite make one straight line",
				Joins: []Join{{A: upperRight, B: 3}, {A: lowerLeft, B: 1}},
			},
			{
				Name:  "half",
				Do:    "Sew the second wedge to the other side of the kite in the same way.",
				Trim:  "Lay a ruler along the two wedges and cut off what stands out of the kite at its square corner, on both of its sides.",
				Check: "the long side is straight where the three pieces meet, and the kite's tip lies a seam allowance inside it",
				Joins: []Join{{A: Made(0), B: 0}, {A: Made(1), B: 2}},
			},
			{
				Name:  "block",
				Do:    "Turn one half round and sew the two along their long sides. Pin where the seam lines cross in the middle, then the two ends.",
				Check: "every edge is half the unfinished block from the middle, and a seam ends in each of them where the neighbour's will",
				Joins: []Join{{A: Made(2), B: Made(3)}},
			},
		},
		Pressing: []Pressing{turningRound()},
	}
}

// turningRound is the pressing of seams that meet in the block's middle and can all turn one
// way round it.
func turningRound() Pressing {
	return Pressing{Round: true, About: Point{Mid, Mid}, Ways: [2]string{"clockwise round the middle", "anticlockwise round the middle"}}
}
