package cutting

import (
	"eighthturn/internal/quilttest/lay"
	"math"
	"slices"
	"sync"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
)

// named is a top with its name, for messages, and the options that laws are tried with.
type named struct {
	name     string
	variants []Options
	*quilt.Top
}

// tops are the samples, the hundred layouts that were written down before the planner was, and invented ones, those with
// many thousand patches left out. They are laid out once.
var tops = sync.OnceValue(func() (list struct{ samples, hundred, prints, invented []named }) {
	turn := 0
	with := func(tops []lay.Named, all bool) (list []named) {
		for _, top := range tops {
			turn++
			n := named{top.Name, []Options{variants()[0], variants()[1+turn%2]}, top.Top}
			if all {
				n.variants = variants()
			}
			list = append(list, n)
		}
		return list
	}
	list.samples = with(lay.Samples(), true)
	list.hundred = with(judges.Some(lay.Hundred(), 25), false)
	list.prints = with(printTops(judges.Of(12, 60)), false)
	list.invented = with(lay.Invented(5000, judges.Of(30, 150), judges.Of(400, 2000)), false)
	return list
})

func sampleTops() []named { return tops().samples }

// everyTop is all tops, but no more than so many invented ones.
func everyTop(most int) []named {
	return slices.Concat(tops().samples, tops().hundred, tops().prints, invented(most))
}

// invented is up to so many invented ones.
func invented(most int) []named { return tops().invented[:min(most, len(tops().invented))] }

// variants are the options that laws are tried with, the usual ones first: all of them on samples, on other tops the usual ones
// and one of the others in turn.
func variants() []Options {
	return []Options{
		{},
		{Copies: 3, LongEdgesStraight: true, DiagonalBorders: true, LeastCloth: true},
		{Copies: 3, CornersByCustom: true, Quarters: true, SquareUp: measure.Inch, Spare: 4 * measure.Inch},
	}
}

// made holds the plans that laws share: each top is planned once with each of the options. Nobody changes them.
var made = struct {
	sync.Mutex
	plans map[*quilt.Top]map[Options]*Plan
}{plans: map[*quilt.Top]map[Options]*Plan{}}

// planned is the plan of a top that all tests share, not to be changed.
func planned(top *quilt.Top, o Options) *Plan {
	made.Lock()
	defer made.Unlock()
	if made.plans[top] == nil {
		made.plans[top] = map[Options]*Plan{}
	}
	if made.plans[top][o] == nil {
		made.plans[top][o] = Build(nil, top, o)
	}
	return made.plans[top][o]
}

// usual is a top's plan without options.
func usual(n named) *Plan { return planned(n.Top, Options{}) }

// least is a top's plan that takes the least cloth.
func least(n named) *Plan { return planned(n.Top, Options{LeastCloth: true}) }

// inch is a length of so many inches; inches a length in them.
func inch(n float64) measure.NM { return measure.NM(math.Round(n * float64(measure.Inch))) }

func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// near fails unless two figures agree to half a digit of the last of so many decimals.
func near(t *testing.T, what string, got, want float64, decimals int) {
	t.Helper()
	if math.Abs(got-want) > 0.5000001*math.Pow10(-decimals) {
		t.Errorf("%s: got %.6f, want %g", what, got, want)
	}
}
