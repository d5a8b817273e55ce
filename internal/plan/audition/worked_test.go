package audition_test

import (
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

const bordered = "strip 4\nfabric navy #1f3350\nfabric rust #b5532a\nfabric cream #f4ead7\nfabric fog #7f8890\nblock R ring wedges navy corners cream\ngrid\n  R R\n  R R\nborder 2 rust\nbinding 2 1/2 navy\n"

// trialsOf are the trials of fabrics in a place of a layout.
func trialsOf(t *testing.T, text string, of layout.AuditionOf, values ...string) []layout.Trial {
	t.Helper()
	reading := layout.Inspect(text, nil)
	var list []layout.Trial
	for _, v := range values {
		trial, err := reading.Trial(of, v)
		if err != nil {
			t.Fatal(v, err)
		}
		trial.Name = v
		list = append(list, trial)
	}
	return list
}

// TestAlternativesComeAsAskedOrBest: alternatives come as they were asked for and keep their numbers; sorted, those that read better come first,
// and their ranks, in either order, are the places that they have then.
func TestAlternativesComeAsAskedOrBest(t *testing.T) {
	d, _ := read(bordered)
	top := quilt.Lay(d)
	values := []string{"fog", "cream", "navy", "rust"}
	trials := trialsOf(t, bordered, layout.AuditionOf{Role: "corners", Of: "R"}, values...)
	asked, err := audition.Build(top, trials, read, audition.Options{})
	if err != nil {
		t.Fatal(err)
	}
	best, err := audition.Build(top, trials, read, audition.Options{Sorted: true})
	if err != nil {
		t.Fatal(err)
	}
	ranks := asked.Ranks()
	for i, a := range asked.Alternatives {
		if a.Name != values[i] || a.Number != i+1 || !slices.Equal(a.Lines, trials[i].Lines) {
			t.Errorf("alternative %d is %d, %s", i, a.Number, a.Name)
		}
		if at := best.Alternatives[ranks[i]]; at.Number != a.Number {
			t.Errorf("%s has rank %d, where %s comes", a.Name, ranks[i], at.Name)
		}
	}
	for i := range best.Alternatives[1:] {
		if contrast.Better(best.Alternatives[i].Study, best.Alternatives[i+1].Study) > 0 {
			t.Errorf("%s comes before %s, which reads better", best.Alternatives[i].Name, best.Alternatives[i+1].Name)
		}
	}
	if got := best.Ranks(); !slices.Equal(got, []int{0, 1, 2, 3}) || !best.Sorted || asked.Sorted || slices.Equal(ranks, got) {
		t.Errorf("ranks of those in order are %v, of the others %v", got, ranks)
	}
	if none, err := audition.Build(top, nil, read, audition.Options{}); err != nil || len(none.Alternatives) != 0 {
		t.Errorf("of nothing that was asked for comes %v, %v", none, err)
	}
}

// TestBindingsAreSeen: where a binding is auditioned, it lies round the quilt as wide as it is seen, a seam allowance, beyond the borders that are
// there, also in a size; the layout's own borders stay as they are.
func TestBindingsAreSeen(t *testing.T) {
	text := strings.Replace(bordered, "border 2 rust\n", "border 2 rust\nsize large across 4\n", 1)
	trials := trialsOf(t, text, layout.AuditionOf{Role: "binding"}, "cream", "fog")
	d, _ := read(text)
	p, err := audition.Build(quilt.Lay(d), trials, read, audition.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, a := range p.Alternatives {
		borders := a.Top.CutFacts.Borders
		last := &a.Top.Patches[len(a.Top.Patches)-1]
		name := a.Top.Fabrics[a.Top.Faces[last.First].Fabric].Name
		if !trials[i].Bound || !a.Bound || len(borders) != 2 || borders[1].Width != measure.Inch/4 || borders[1].Corners >= 0 || name != trials[i].Name {
			t.Errorf("%s: borders %+v, the outermost of %s", a.Name, borders, name)
		}
		if a.Top.Outer.Width() != 2*7*measure.Inch+4*measure.Inch+measure.Inch/2 {
			t.Errorf("%s: the quilt is %d wide", a.Name, a.Top.Outer.Width())
		}
		if size := a.Top.Sizes[0].Top(nil); len(size.CutFacts.Borders) != 2 || size.CutFacts.Borders[1].Width != measure.Inch/4 {
			t.Errorf("%s: a size has the borders %+v", a.Name, size.CutFacts.Borders)
		}
	}
	if len(d.Borders) != 1 {
		t.Errorf("the layout has %d borders", len(d.Borders))
	}
}

// TestOneAlternative: one by itself is laid out and studied as well, and the steps of the first are those of laying it out and of studying it,
// however many follow.
func TestOneAlternative(t *testing.T) {
	d, _ := read(bordered)
	top := quilt.Lay(d)
	trials := trialsOf(t, bordered, layout.AuditionOf{Role: "corners", Of: "R"}, "fog", "rust", "navy")
	for n := 1; n <= len(trials); n++ {
		var p *audition.Plan
		steps := stop.Count(func(sign *stop.Sign) { p, _ = audition.Build(top, trials[:n], read, audition.Options{Sign: sign}) })
		first := stop.Count(func(sign *stop.Sign) {
			design, _ := read(trials[0].Text)
			(&contrast.Again{Sign: sign}).Of(quilt.LayUntil(sign, design))
		})
		if p == nil || len(p.Alternatives) != n || p.Alternatives[0].Study == nil || steps != first || first == 0 {
			t.Errorf("of %d asked for: %+v, in %d steps, not %d", n, p, steps, first)
		}
	}
}

// TestLayoutsStayAsTheyAre: a binding that is laid as a border is no border of the layout, nor of its sizes, that were read.
func TestLayoutsStayAsTheyAre(t *testing.T) {
	text := strings.Replace(bordered, "border 2 rust\n", "border 2 rust\nsize large across 4\n", 1)
	trials := trialsOf(t, text, layout.AuditionOf{Role: "binding"}, "cream", "fog")
	d, _ := read(text)
	once := func(string) (*layout.Design, []layout.Fault) { return d, nil }
	if _, err := audition.Build(quilt.Lay(d), trials, once, audition.Options{}); err != nil {
		t.Fatal(err)
	}
	if len(d.Borders) != 1 || len(d.Sizes) != 1 || len(d.Sizes[0].Design.Borders) != 1 {
		t.Errorf("the layout has the borders %+v, its size %+v", d.Borders, d.Sizes[0].Design.Borders)
	}
}
