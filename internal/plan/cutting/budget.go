package cutting

import "eighthturn/internal/stop"

// maxPlanSteps is how many steps the planning of all fabrics together may take: a step is a small piece of work, such as one
// more item tried in a strip. They are counted, and no clock is asked, so that a plan is the same everywhere.
const maxPlanSteps = 30_000_000

// The same for how long strip sets are best, for what precuts would do, and for what makes cloth on hand suffice.
const (
	maxTrialSteps  = 10_000_000
	maxPrecutSteps = 10_000_000
	maxWaySteps    = 40_000_000
	maxFitSteps    = 200_000 // of what is fitted into prints
	maxFit         = 20_000  // of them for so many lines that are fitted together
	linesAFit      = 6
)

// purse is steps that are shared out: what one leaves goes to those after it.
type purse struct {
	left, sharers int
	sign          *stop.Sign
}

// share is the budget of the next one.
func (p *purse) share() *budget { return newBudget(max(0, p.left)/max(1, p.sharers), p.sign) }

// back takes what a share left.
func (p *purse) back(b *budget) { p.left, p.sharers = p.left-b.used(), p.sharers-1 }

// budget is how many steps the planning of one fabric may still take; nil is without end. Once it is spent no search goes
// on: the best plan so far stands, and bounds are those that are known without a search, which hold all the same.
type budget struct {
	given, left int
	sign        *stop.Sign // ends the whole work; nil for never
}

func newBudget(steps int, sign *stop.Sign) *budget { return &budget{steps, steps, sign} }

// spend takes steps away and says whether there were as many.
func (b *budget) spend(steps int) bool {
	if b == nil {
		return true
	}
	b.sign.Step(steps)
	b.left -= steps
	return b.left >= 0
}

// used is how many steps were taken.
func (b *budget) used() int { return b.given - b.left }

// spent says whether nothing is left.
func (b *budget) spent() bool { return b != nil && b.left < 0 }
