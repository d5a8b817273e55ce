package report

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"slices"
	"strings"
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
	tops := slices.Concat(lay.Samples(), seldom(), lay.Reference(), judges.Some(lay.Hundred(), 25), lay.Invented(5000, judges.Of(30, 100), judges.Of(400, 2000)))
	for i, n := range tops {
		for _, o := range []cutting.Options{{}, {Copies: 3, CornersByCustom: true, SquareUp: measure.Inch, Spare: 4 * measure.Inch, LeastCloth: true}} {
			if o.Copies > 1 && i >= len(samples.All())+len(seldom()) && i%3 != 0 {
				continue
			}
			p := &Plans{Top: n.Top, Cutting: o}
			p.Cuts()
			list = append(list, planned{fmt.Sprintf("%s, %d quilts", n.Name, max(1, o.Copies)), p})
		}
	}
	return list
})

// seldom are layouts with what the others seldom have together: precuts, pieces on hand, sets that are dealt, blocks and columns side by side,
// sashes all round, several borders with corners, places without a block.
var seldom = sync.OnceValue(func() (list []lay.Named) {
	const fabrics = "fabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric plum #4b2440\nfabric moss #5d6433\nfabric cream #f4ead7\n"
	for name, text := range map[string]string{
		"precuts": strings.Replace(strings.Replace(fabrics, "#1f3350", "#1f3350 from 3 fat-quarters", 1), "#b5532a", "#b5532a from 20 squares 10", 1) +
			"strip 4\nblock W web wedges navy kites rust\ngrid\n W W W W\n W W W W\n W W W W\nborder 2 cream\nbinding 2 1/2 moss\n",
		"cut already": "strip 4\n" + fabrics + "strip-set shore rust 1 3/4 cream rest\non-hand wedges reversed shore 8\non-hand kites cream 12\non-hand wedges navy 5\nblock W web wedges shore reversed shore kites cream\nblock V web wedges navy teal kites cream\ngrid\n W V W V\n V W V W\n",
		"dealt":       "strip 4\n" + fabrics + "scraps darks navy rust teal plum moss by set\nstrip-set drift darks 1 3/4 darks 1 1/2 darks 1 3/4 sets 5\nwebs drift / reversed drift\nblock W web kites cream\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\n",
		"sashes":      "side 6\n" + fabrics + "block R ring wedges rust teal corners cream\nblock P plain piece plum\nblock H halves pieces navy cream\ngrid\n R P H .\n P R . H\n H R P R\nsash 1 moss posts rust around\nborder 1 navy\nborder 2 teal corners plum\nborder 3 rust\nbinding 2 1/2 navy\nbacking moss\nbatting\n",
		"columns":     "units cm\nside 13\n" + fabrics + "block W web wedges navy kites cream\nblock T tumblers pieces teal rust line 15\ngrid\n W W T W W\n W W T W W\nborder 6 plum lengthwise\nbinding 6 navy\nbacking cream\n",
	} {
		top, err := lay.Read(text)
		if err != nil {
			panic(err)
		}
		list = append(list, lay.Named{Name: name, Top: top})
	}
	slices.SortFunc(list, func(a, b lay.Named) int { return strings.Compare(a.Name, b.Name) })
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
