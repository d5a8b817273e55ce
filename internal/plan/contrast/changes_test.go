package contrast

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
)

// studied are tops of all sorts with their studies: those judged, those of the table of sayings, the samples, and invented ones; a part of
// them in the plain run. They are studied once for all laws.
var studied = sync.OnceValue(func() map[string]studiedTop {
	texts := map[string]string{}
	for _, pattern := range []string{"judged", "layouts"} {
		files, _ := filepath.Glob("../../../testdata/values/" + pattern + "/*.quilt")
		for _, file := range judges.Some(files, 12) {
			text, _ := os.ReadFile(file)
			texts[filepath.Base(file)] = string(text)
		}
	}
	for _, s := range judges.Some(samples.All(), 2) {
		texts[s.Name] = s.Text
	}
	for seed := range uint64(judges.Of(4, 200)) {
		texts[fmt.Sprint("invented ", seed)] = invent.Layout(seed)
	}
	tops := map[string]studiedTop{}
	for name, text := range texts {
		if d, _, _ := layout.Read(text); d != nil {
			top := quilt.Lay(d)
			tops[name] = studiedTop{top, Study(top, Options{Palettes: palettes.All()})}
		}
	}
	return tops
})

// studiedTop is a top with its study.
type studiedTop struct {
	*quilt.Top
	report *Report
}

// keepsItsWord says what is wrong with a recoloring or a swap once it is made and the whole study is made again, "" for
// nothing: it clears what it says, and spoils nothing that it does not name.
func keepsItsWord(top *quilt.Top, before *Report, c *Change) string {
	var tries []Try
	at := func(name string) int {
		return slices.IndexFunc(top.Fabrics, func(f quilt.Fabric) bool { return f.Name == name })
	}
	for _, s := range c.Steps {
		colour, err := palettes.Parse(s.Colour)
		if err != nil {
			return err.Error()
		}
		tries = append(tries, Try{at(s.Fabric), colour})
	}
	if len(c.Swap) == 2 {
		a, b := at(c.Swap[0]), at(c.Swap[1])
		tries = append(tries, Try{a, top.Fabrics[b].Colour}, Try{b, top.Fabrics[a].Colour})
	}
	after := Study(Tried(top, tries), Options{})
	for _, n := range c.Clears {
		if slices.ContainsFunc(after.Losses, func(l Loss) bool { return l.Of == before.Losses[n].Of && l.Figure == before.Losses[n].Figure }) {
			return fmt.Sprintf("%+v leaves the loss %+v", c, before.Losses[n])
		}
	}
	for i := range after.Figures {
		was, is := before.Figures[i].Verdict, after.Figures[i].Verdict
		named := slices.ContainsFunc(c.Breaks, func(b Broken) bool { return b.Figure == i })
		if rank(is) > rank(was) && !named {
			return fmt.Sprintf("%+v lowers figure %d from %s to %s", c, i, was, is)
		}
	}
	return ""
}

// TestChangesKeepTheirWord over all tops that have losses and no stray scraps, whose removal is a change of its own.
func TestChangesKeepTheirWord(t *testing.T) {
	tried := 0
	for name, one := range studied() {
		top, r := one.Top, one.report
		for i := range r.Changes {
			c := &r.Changes[i]
			if len(r.Stray) > 0 || c.Of != Recolor && c.Of != SwapTwo {
				continue
			}
			tried++
			if fault := keepsItsWord(top, r, c); fault != "" {
				t.Errorf("%s: %s", name, fault)
			}
			spoilt := *c
			spoilt.Steps, spoilt.Swap = nil, nil
			if len(c.Clears) > 0 && keepsItsWord(top, r, &spoilt) == "" {
				t.Errorf("%s: a change that changes nothing goes unnoticed", name)
			}
		}
	}
	if tried < 5 {
		t.Errorf("only %d changes were tried", tried)
	}
}

// TestScrapsTakenOut and strip sets no longer reversed do what was said of them, written into the layout.
func TestScrapsTakenOut(t *testing.T) {
	for file, change := range map[string][2]string{
		"b3":  {"scraps lights l1 l2 l3 odd", "scraps lights l1 l2 l3"},
		"n12": {"scraps darks d1 d2 d3 pale", "scraps darks d1 d2 d3"},
		"b5":  {"webs s / reversed s", "webs s"},
	} {
		text := judgedText(t, file)
		before, after := Study(lay.Top(t, text), Options{}), Study(lay.Top(t, strings.Replace(text, change[0], change[1], 1)), Options{})
		first := before.Losses[before.Changes[0].Clears[0]].Of
		if slices.ContainsFunc(after.Losses, func(l Loss) bool { return l.Of == first }) {
			t.Errorf("%s: what was offered leaves a loss of a %s", file, first)
		}
	}
}

// TestOneValueNeverHelps: with the two fabrics of a figure and its ground given one value, it does not read.
func TestOneValueNeverHelps(t *testing.T) {
	for name, one := range studied() {
		top, r := one.Top, one.report
		for i := range r.Figures {
			f := &r.Figures[i]
			if len(f.Of) != 1 || len(f.Against) != 1 || !f.Sort.centred() || f.Of[0] == f.Against[0] {
				continue
			}
			a := slices.IndexFunc(top.Fabrics, func(x quilt.Fabric) bool { return x.Name == f.Of[0] })
			b := slices.IndexFunc(top.Fabrics, func(x quilt.Fabric) bool { return x.Name == f.Against[0] })
			colour := palettes.AtLightness(top.Fabrics[a].Colour, top.Fabrics[b].Colour.Lightness())
			after := Study(Tried(top, []Try{{a, colour}}), Options{})
			if after.Figures[i].Verdict != Lost {
				t.Errorf("%s: %s %d of one value with its ground: %s", name, f.Sort, i, after.Figures[i].Verdict)
			}
		}
	}
}
