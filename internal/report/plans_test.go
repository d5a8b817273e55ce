package report

import (
	"fmt"
	"strconv"
	"strings"
	"sync"
	"testing"

	"golang.org/x/tools/txtar"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
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

// planned is a top with its plans, and its name for messages.
type planned struct {
	name string
	*Plans
}

// everyPlan is the samples, the hundred layouts of the cutting plan and invented ones, each planned once as usual and once
// for three quilts with all that is added. Nobody changes them.
var everyPlan = sync.OnceValue(func() (list []planned) {
	add := func(name, text string) {
		top, err := layText(text)
		if err != nil {
			panic(err)
		}
		if len(top.Patches) > judges.Of(400, 2000) && !strings.HasPrefix(name, "sample") {
			return
		}
		for _, o := range []cutting.Options{{}, {Copies: 3, CornersByCustom: true, SquareUp: measure.Inch, Spare: 4 * measure.Inch}} {
			p := &Plans{Top: top, Cutting: o}
			p.Cuts()
			list = append(list, planned{fmt.Sprintf("%s, %d quilts", name, max(1, o.Copies)), p})
		}
	}
	for _, s := range samples.All() {
		add("sample "+s.Name, s.Text)
	}
	a, err := txtar.ParseFile("../../testdata/cutting/hundred.txtar")
	if err != nil {
		panic(err)
	}
	for _, f := range judges.Some(a.Files, 25) {
		add(f.Name, string(f.Data))
	}
	for seed := range uint64(judges.Of(30, 100)) {
		add("invented "+strconv.FormatUint(seed, 10), invent.Layout(5000+seed))
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
