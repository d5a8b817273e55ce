package blocks

// floating: two stop halves; the web at one end only, plain ground at the other, so that a
// web stops before the border.
func floating() *Kind {
	return &Kind{
		Name:    "floating",
		Summary: "wedges at one end only and plain background at the other, so that a web stops before the border",
		Drawing: `
o----------+----+
|'.   W   /     |
|  '.    /      |
|    '. /   G   |
| W    'X       |
|  _.-'  '.     |
+.'   G    '.   |
|            '. |
+--------------'+`,
		Roles: []Role{
			halfWedges(1),
			{Name: "ground", Letter: "G", Summary: "the plain background beyond the web", Counts: []int{1}},
		},
		Turning: ToWebCentre,
		Points:  NW,
		Height:  AlongDiagonal,
		Pieces: slicesOf(upperWedges(), []Piece{
			{StopGround, 1, []Point{{Full, Zero}, {Full, Full}, {Mid, Mid}, {Long, Zero}}},
			{StopGround, 1, []Point{{Zero, Full}, {Zero, Long}, {Mid, Mid}, {Full, Full}}},
		}),
		Recipe: twoStops(),
	}
}

// twoStops is how two stop halves are sewn. They are mirror images.
func twoStops() Recipe {
	const leftWedge, rightWedge, leftGround, rightGround = 0, 1, 2, 3
	half := "Sew the wide end of a wedge to the slanted edge of a %s stop piece, right sides together."
	trim := "Align the ruler with the wedge's raw edges and trim the stop piece even on all three sides."
	check := "the wedge and the stop piece form a straight line along the long edge"
	return Recipe{
		Steps: []Step{
			{
				Name: "left half", Do: worded(half, "left"), Trim: trim, Joins: []Join{{A: leftGround, B: leftWedge}},
				Check: check + "; right side up with the wedge's tip toward you, the long edge is on the right",
			},
			{
				Name: "right half", Do: worded(half, "right"), Trim: trim, Joins: []Join{{A: rightGround, B: rightWedge}},
				Check: check + "; right side up with the wedge's tip toward you, the long edge is on the left",
			},
			{
				Name:  "block",
				Do:    "Sew a left half and a right half together along the long edges, both wedge tips at the same end. Pin at the center, where the seam lines cross, then at the ends.",
				Check: "each raw edge is half the unfinished block size from the center, and the two wedges end in one point",
				Joins: []Join{{A: Made(0), B: Made(1)}},
			},
		},
		Pressing: []Pressing{turningRound()},
	}
}
