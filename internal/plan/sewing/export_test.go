package sewing

// ArmAt is a seam that runs from a point, for tests from outside: its way in radians, clockwise from the right, when it is sewn, and
// whether it is pressed to its clockwise side.
type ArmAt struct {
	From      float64
	Order     int
	Clockwise bool
}

// LayersAt is the layers of cloth at each point of the grid round the point where seams meet: as they are pressed, with the last seam open,
// all of them open, and turned round. GridAt is where the points lie, across and down.
func LayersAt(arms []ArmAt) (list [4][gridLines][gridLines]uint8) {
	var made []arm
	for _, a := range arms {
		made = append(made, arm{a.From, a.Order, a.Clockwise})
	}
	g := junctionOf(made)
	for i, m := range [4]pressMode{whole, lastOpen, opened, round} {
		list[i] = *stackedOn(g.shapes(m))
	}
	return list
}

// GridAt is where a column and a row of the grid lie.
func GridAt(column, row int) (x, y float64) { return gridAt(column), rowAt(row) }

// Thickest is the most layers of a grid of which all points have the first number but so many, which have the second.
func Thickest(all, some uint8, points int) int {
	n := &sampleGrid{}
	for row := range n {
		for column := range n[row] {
			if n[row][column] = all; points > 0 {
				n[row][column] = some
				points--
			}
		}
	}
	return n.thickest()
}
