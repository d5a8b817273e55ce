package cutting

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"golang.org/x/tools/txtar"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// topOf lays out a layout without faults.
func topOf(t testing.TB, text string) *quilt.Top {
	t.Helper()
	top, err := layText(text)
	if err != nil {
		t.Fatal(err)
	}
	return top
}

func layText(text string) (*quilt.Top, error) {
	d, _, faults := layout.Read(text)
	if errors, _ := layout.Count(faults); errors > 0 || d == nil {
		return nil, fmt.Errorf("%v\n%s", faults, text)
	}
	return quilt.Lay(d), nil
}

// named is a top with its name, for messages, and the options that laws are tried with.
type named struct {
	name     string
	variants []Options
	*quilt.Top
}

// tops are the samples, the hundred layouts that were written down before the planner was, and invented ones, those with
// many thousand patches left out. They are laid out once.
var tops = sync.OnceValue(func() (list struct{ samples, hundred, invented []named }) {
	turn := 0
	lay := func(name, text string) named {
		top, err := layText(text)
		if err != nil {
			panic(err)
		}
		turn++
		return named{name, []Options{variants()[0], variants()[1+turn%2]}, top}
	}
	for _, s := range samples.All() {
		n := lay(s.Name, s.Text)
		n.variants = variants()
		list.samples = append(list.samples, n)
	}
	a, err := txtar.ParseFile("../../../testdata/cutting/hundred.txtar")
	if err != nil || len(a.Files) != 100 {
		panic(fmt.Sprintf("%d layouts: %v", len(a.Files), err))
	}
	for _, f := range judges.Some(a.Files, 25) {
		list.hundred = append(list.hundred, lay(strings.TrimSuffix(f.Name, ".quilt"), string(f.Data)))
	}
	for seed := uint64(5000); len(list.invented) < judges.Of(30, 150); seed++ {
		n := lay("invented "+strconv.FormatUint(seed, 10), invent.Layout(seed))
		if len(n.Patches) < judges.Of(400, 2000) {
			list.invented = append(list.invented, n)
		}
	}
	return list
})

func sampleTops() []named { return tops().samples }

// everyTop is all tops, but no more than so many invented ones.
func everyTop(most int) []named {
	return slices.Concat(tops().samples, tops().hundred, invented(most))
}

// invented is up to so many invented ones.
func invented(most int) []named { return tops().invented[:min(most, len(tops().invented))] }

// variants are the options that laws are tried with, the usual ones first: all of them on samples, on other tops the usual ones
// and one of the others in turn.
func variants() []Options {
	return []Options{
		{},
		{Copies: 3, LongEdgesStraight: true, DiagonalBorders: true},
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
		made.plans[top][o] = Build(top, o)
	}
	return made.plans[top][o]
}

// usual is a top's plan without options.
func usual(n named) *Plan { return planned(n.Top, Options{}) }

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
