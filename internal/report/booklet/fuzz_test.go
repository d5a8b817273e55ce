package booklet

import (
	"regexp"
	"slices"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/layout"
	"eighthturn/samples"
)

// FuzzPattern prints the pattern or the handout of any text that the language accepts, on any paper: nothing panics, every form can be
// written, and where names are plain words, which read as nothing else, an editor finds nothing.
func FuzzPattern(f *testing.F) {
	for _, s := range judges.Some(samples.All(), 1) {
		f.Add(s.Text, uint8(0))
	}
	for seed := range uint64(judges.Of(3, 12)) {
		f.Add(invent.Layout(seed), uint8(seed))
	}
	for i, text := range judges.Some(invent.Printed(), 1) {
		f.Add(text, uint8(40*i))
	}
	f.Add(odd()["tiny seams"], uint8(2))
	f.Fuzz(func(t *testing.T, text string, choice uint8) {
		if len(text) > 4000 {
			return
		}
		design, _, _ := layout.ReadWith(text, invent.Photo)
		if design == nil || design.Columns*design.Rows > 100 {
			return
		}
		top := quilt.Lay(design)
		if len(top.Patches) > 800 || len(top.Sizes) > 2 || slices.ContainsFunc(top.Sizes, func(s quilt.Size) bool { return len(s.Top(nil).Patches) > 800 }) {
			return // as many as a test has time for
		}
		r := Study(top, cutting.Options{LeastCloth: choice&1 > 0, CornersByCustom: choice&2 > 0})
		if len(r.Cuts.Faults) > 0 {
			return // the command refuses it
		}
		papers := render.Papers()
		o := render.Options{Paper: papers[int(choice>>2&7)%len(papers)], Large: choice&64 > 0}
		print := Pattern
		if choice&128 > 0 {
			print = Handout
		}
		d := print(r, Options{Paper: o.Paper, Large: o.Large, ValueStudy: choice&32 > 0})
		if _, err := render.PDF(d, o); err != nil {
			t.Errorf("PDF: %v\n%s", err, text)
		}
		if _, err := render.PaperHTML(d); err != nil {
			t.Errorf("HTML: %v\n%s", err, text)
		}
		if _, err := render.Markdown(d, "pattern", o); err != nil {
			t.Errorf("Markdown: %v\n%s", err, text)
		}
		if choice&(32|128) > 0 || len(top.Sizes) > 0 || o.Large || !plainlyNamed(top) {
			return
		}
		for _, wrong := range edited(d, r) {
			t.Errorf("%s\n%s", wrong, text)
		}
	})
}

var plainName = regexp.MustCompile(`^[a-z]{1,12}$`)

// plainlyNamed says whether names in a pattern cannot be taken for the pattern's own words.
func plainlyNamed(top *quilt.Top) bool {
	names := []string{}
	for i := range top.Fabrics {
		if names = append(names, top.Fabrics[i].Name); top.Fabrics[i].Print != "" {
			return false
		}
	}
	for i := range top.CutFacts.Sets {
		names = append(names, top.CutFacts.Sets[i].Name)
	}
	return !slices.ContainsFunc(names, func(name string) bool { return !plainName.MatchString(name) })
}
