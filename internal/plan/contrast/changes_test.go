package contrast

import (
	"fmt"
	"maps"
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
	for seed := range uint64(judges.Of(4, 100)) {
		texts[fmt.Sprint("invented ", seed)] = invent.Layout(seed)
	}
	tops := map[string]studiedTop{}
	for name, text := range texts {
		if d, _, _ := layout.Read(text); d != nil {
			top := quilt.Lay(d)
			s := newStudy(nil, top, Options{})
			tops[name] = studiedTop{top, Study(top, Options{Palettes: palettes.All()}), s, s.figures()}
		}
	}
	return tops
})

// studiedTop is a top with its study.
type studiedTop struct {
	*quilt.Top
	report  *Report
	study   *study
	figures []Figure
}

// halfOf are the names of the tops, in order, but for every other one that is invented.
func halfOf(tops map[string]studiedTop) []string {
	n := 0
	return slices.DeleteFunc(slices.Sorted(maps.Keys(tops)), func(name string) bool {
		if !strings.HasPrefix(name, "invented") {
			return false
		}
		n++
		return n%2 == 0
	})
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

// leaves says whether a layout that was written anew still has a loss of the sort that the first change of its study clears.
func leaves(t *testing.T, text, anew string) bool {
	before, after := Study(lay.Top(t, text), Options{}), Study(lay.Top(t, anew), Options{})
	first := before.Losses[before.Changes[0].Clears[0]].Of
	return slices.ContainsFunc(after.Losses, func(l Loss) bool { return l.Of == first })
}

// TestScrapsTakenOut and strip sets no longer reversed do what was said of them, written into the layout; where the wrong scrap is
// taken out, or the wrong strip set turned, that is noticed.
func TestScrapsTakenOut(t *testing.T) {
	for file, change := range map[string][3]string{
		"b3":  {"scraps lights l1 l2 l3 odd", "scraps lights l1 l2 l3", "scraps lights l1 l2 odd"},
		"n12": {"scraps darks d1 d2 d3 pale", "scraps darks d1 d2 d3", "scraps darks d1 d2 pale"},
		"m21": {"scraps darks d1 d2 d3 stone", "scraps darks d1 d2 d3", "scraps darks d1 d2 stone"},
		"b5":  {"webs s / reversed s", "webs s", "webs reversed s"},
		"m02": {"webs s / reversed s", "webs s", "webs reversed s"},
	} {
		text := judgedText(t, file)
		if leaves(t, text, strings.Replace(text, change[0], change[1], 1)) {
			t.Errorf("%s: what was offered leaves what it was to clear", file)
		}
		if !leaves(t, text, strings.Replace(text, change[0], change[2], 1)) {
			t.Errorf("%s: another change goes unnoticed", file)
		}
	}
}

// twoFabrics are the fabrics of a figure that has one on either side, ok for no other.
func twoFabrics(top *quilt.Top, f *Figure) (a, b int, ok bool) {
	names := slices.Concat(f.Of, f.Against)
	if len(names) != 2 || f.Sort.centred() && len(f.Of) != 1 || names[0] == names[1] {
		return 0, 0, false
	}
	at := func(name string) int {
		return slices.IndexFunc(top.Fabrics, func(x quilt.Fabric) bool { return x.Name == name })
	}
	a, b = at(names[0]), at(names[1])
	return a, b, top.Fabrics[a].Cloth == nil && top.Fabrics[b].Cloth == nil // a print shows by its own lights and darks
}

// helped says which figures of two fabrics show once the one is as light as the other, by so much more.
func helped(one studiedTop, more float64) (faults []string, tried int) {
	for i := range one.report.Figures {
		f := &one.report.Figures[i]
		a, b, ok := twoFabrics(one.Top, f)
		if !ok {
			continue
		}
		tried++
		t := *one.Top
		t.Fabrics = slices.Clone(one.Fabrics)
		t.Fabrics[a].Colour = palettes.AtLightness(one.Fabrics[a].Colour, one.Fabrics[b].Colour.Lightness()+more)
		after := (&Report{Figures: one.study.recoloured(&t).figures()}).Twin(f)
		if after != nil && after.Verdict != Lost && after.Verdict != RunsOn {
			faults = append(faults, fmt.Sprintf("%s %d of %v and %v: %s", f.Sort, i, f.Of, f.Against, after.Verdict))
		}
	}
	return faults, tried
}

// TestOneValueNeverHelps: with both fabrics of a figure of two given one value, whatever its sort, it is lost; a border or sashes may
// then pass for what they go on from. Given values far apart, they are noticed.
func TestOneValueNeverHelps(t *testing.T) {
	tried, noticed, turn, spoilt := 0, 0, 0, 0
	all := studied()
	for _, name := range halfOf(all) {
		one := all[name]
		faults, n := helped(one, 0)
		tried += n
		for _, fault := range faults {
			t.Errorf("%s, of one value: %s", name, fault)
		}
		if turn++; n > 0 && turn%4 == 0 {
			spoilt += n
			up := 50.0
			if slices.Max(one.study.lightness) > 50 {
				up = -50
			}
			apart, _ := helped(one, up)
			noticed += len(apart)
		}
	}
	t.Logf("%d figures of two fabrics; %d of %d show with values far apart", tried, noticed, spoilt)
	if tried < judges.Of(15, 60) || spoilt == 0 || noticed < spoilt/2 {
		t.Errorf("%d figures were tried, and %d of %d were noticed", tried, noticed, spoilt)
	}
}
