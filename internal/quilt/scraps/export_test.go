package scraps

// Uneasy is so many places of two pools in rows, with fabrics barred, in lines up to a number.
var Uneasy = uneasy

// Spent is what a deal takes of its budgets: the steps of searches, of evening out and of spreading along lines of columns.
func Spent(places []Place, number int) (searched, evened, spread int) {
	t := newSolver(places, number)
	t.assign()
	t.balance()
	s := t.inLines(maxSpreadSteps)
	for s.sweep() {
	}
	return maxSearchSteps - t.left, maxEvenSteps - t.even, maxSpreadSteps - s.left
}
