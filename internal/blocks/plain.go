package blocks

// plain: one square of one fabric.
func plain() *Kind {
	return &Kind{
		Name:    "plain",
		Summary: "one square of one fabric",
		Drawing: `
+---------------+
|               |
|               |
|               |
|       P       |
|               |
|               |
|               |
+---------------+`,
		Roles:   slicesOf([]Role{{Name: "piece", Letter: "P", Summary: "the square", Counts: []int{1}}}, edges("squares", false, allSides, 0)),
		Turning: Fixed,
		Height:  NoWedges,
		Pieces:  []Piece{{Square, 0, []Point{{Zero, Zero}, {Full, Zero}, {Full, Full}, {Zero, Full}}}},
		Recipe:  Recipe{}, // nothing to sew
	}
}
