package report

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"slices"
	"sync"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// planned is a top with its plans, and its name for messages.
type planned struct {
	name string
	*Plans
}

// everyPlan is the samples, the hundred layouts of the cutting plan and invented ones, each planned once as usual, and the samples
// and every third of the others for three quilts with all that is added too. Nobody changes them.
var everyPlan = sync.OnceValue(func() (list []planned) {
	tops := slices.Concat(lay.Samples(), judges.Some(lay.Hundred(), 25), lay.Invented(5000, judges.Of(30, 100), judges.Of(400, 2000)))
	for i, n := range tops {
		for _, o := range []cutting.Options{{}, {Copies: 3, CornersByCustom: true, SquareUp: measure.Inch, Spare: 4 * measure.Inch, LeastCloth: true}} {
			if o.Copies > 1 && i >= len(samples.All()) && i%3 != 0 {
				continue
			}
			p := &Plans{Top: n.Top, Cutting: o}
			p.Cuts()
			list = append(list, planned{fmt.Sprintf("%s, %d quilts", n.Name, max(1, o.Copies)), p})
		}
	}
	return list
})

// usualPlans are those of one quilt without options.
func usualPlans() (list []planned) {
	for _, p := range everyPlan() {
		if p.Cutting == (cutting.Options{}) {
			list = append(list, p)
		}
	}
	return list
}
