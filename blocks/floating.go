package blocks

// floating: two stop halves; the web at one end only, plain ground at the other, so that a
// web stops before the border.
func floating() *Kind {
	return &Kind{
		Name:    "floating",
		Summary: "wedges at one end only and plain ground at the other, so that a web stops before the border",
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
			{Name: "ground", Letter: "G", Summary: "the plain ground beyond the web", Counts: []int{1}},
		},
		Turning: ToWebCentre,
		Points:  NW,
		Height:  AlongDiagonal,
		Pieces: slicesOf(upperWedges(), []Piece{
			{StopGround, 1, []Point{{Full, Zero}, {Full, Full}, {Mid, Mid}, {Long, Zero}}},
			{StopGround, 1, []Point{{Zero, Full}, {Zero, Long}, {Mid, Mid}, {Full, Full}}},
		}),
	}
}
