package blocks

// floating: two halves of wedge and background; the web at one end only, plain background at the other, so that a
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
		Roles: slicesOf([]Role{
			halfWedges([]int{1, 2}, "two: clockwise around the center"),
			{Name: "background", Former: "ground", Letter: "G", Summary: "the plain background beyond the web", Counts: []int{1, 2}, Order: "two: upper piece, lower piece"},
		}, edges("pieces", false, allSides, 0, 1)),
		Turning: ToWebCentre,
		Points:  NW,
		Height:  AlongDiagonal,
		Pieces: slicesOf(upperWedges(), []Piece{
			{Background, 1, []Point{{Full, Zero}, {Full, Full}, {Mid, Mid}, {Long, Zero}}},
			{Background, 1, []Point{{Zero, Full}, {Zero, Long}, {Mid, Mid}, {Full, Full}}},
		}),
		Recipe: twoBackgrounds(),
	}
}

// twoBackgrounds is how two halves of wedge and background are sewn. They are mirror images.
func twoBackgrounds() Recipe {
	const leftWedge, rightWedge, leftBackground, rightBackground = 0, 1, 2, 3
	const aWedge, oneNamed = "a wedge", "one %s wedge"
	const aBackground = "a %s background piece"
	half := "Sew the wide end of " + aWedge + " to the slanted edge of " + aBackground + ", right sides together."
	trim := "align the ruler with the wedge's raw edges and trim the background piece even on both short sides."
	check := "the wedge and the background piece form a straight line along the long edge"
	return Recipe{
		Steps: []Step{
			{
				Name: "left half", Do: worded(half, "left"), Trim: trim, Joins: []Join{{A: leftBackground, B: leftWedge}},
				Named: []Named{
					{Words: aWedge, By: oneNamed, Pieces: []int{leftWedge}, Others: []int{rightWedge}},
					{Words: worded(aBackground, "left"), By: "a left %s background piece", Pieces: []int{leftBackground}, Others: []int{rightBackground}},
				},
				Check: check + "; right side up with the wedge's tip toward you, the long edge is on the right",
			},
			{
				Name: "right half", Do: worded(half, "right"), Trim: trim, Joins: []Join{{A: rightBackground, B: rightWedge}},
				Named: []Named{
					{Words: aWedge, By: oneNamed, Pieces: []int{rightWedge}, Others: []int{leftWedge}},
					{Words: worded(aBackground, "right"), By: "a right %s background piece", Pieces: []int{rightBackground}, Others: []int{leftBackground}},
				},
				Check: check + "; right side up with the wedge's tip toward you, the long edge is on the left",
			},
			{
				Name:  "block",
				Do:    "Sew a left half and a right half together along the long edges, both wedge tips at the same end. Pin at the center, where the seam lines cross, then at the ends.",
				Check: "each raw edge is " + HalfBlock + ", and the two wedges end in one point",
				Joins: []Join{{A: Made(0), B: Made(1)}},
			},
		},
		Pressing: []Pressing{turningRound()},
	}
}
