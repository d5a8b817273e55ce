package booklet

import (
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
)

// shorts are the pages of a printed document that are less than half full though no chapter ends there, and pages that do not
// come in fours where sheets are folded.
func shorts(t *testing.T, d document.Document, o render.Options) []string {
	t.Helper()
	printed, err := render.PDF(d, o)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, w := range printed.Warnings {
		if w.Kind == render.ShortPage {
			list = append(list, "page "+numeral(w.Page)+": "+w.Message)
		}
	}
	if o.Paper.Fold && printed.Pages%4 != 0 {
		list = append(list, numeral(printed.Pages)+" pages, which are no fours")
	}
	return list
}

// TestPagesAreFull: no page of a pattern is less than half full unless a chapter ends there.
func TestPagesAreFull(t *testing.T) {
	turn := 0
	judgedDocuments(t, func(t *testing.T, r Reports, _ document.Document) {
		for _, p := range render.Papers() {
			for _, large := range []bool{false, true} {
				if turn++; !judges.On && turn%5 != 0 || strings.Contains(t.Name(), "invented") && turn%7 > 1 || strings.HasSuffix(t.Name(), "hundred") {
					continue
				}
				list := shorts(t, Pattern(r, Options{Paper: p, Large: large}), render.Options{Paper: p, Large: large})
				for _, wrong := range list {
					t.Errorf("%s, large %v: %s", p.Name, large, wrong)
				}
			}
		}
	})
}

// TestPagesAreFullCatches: a picture that is wanted as high as a page after a few lines, in a box that it cannot leave, is seen;
// so are folded sheets whose pages are no fours.
func TestPagesAreFullCatches(t *testing.T) {
	d := pattern(t, sampleText(t, "lanterns"))
	high := *d.Cover.Picture
	high.Width, high.Least = 7*measure.Inch, 7*measure.Inch
	d.Sections = []document.Section{{Title: "Cutting", Blocks: []document.Block{paragraph("Cut."), document.Box{Blocks: []document.Block{high}}, paragraph("Sew.")}}}
	if list := shorts(t, d, render.Options{}); len(list) != 1 {
		t.Errorf("a page with one line is found %d times: %q", len(list), list)
	}
	paper, fours := render.HalfLetter(), 0
	paper.Fold = false
	for _, name := range []string{"beacon", "compass", "nets"} {
		printed, err := render.PDF(Pattern(study(t, sampleText(t, name), cutting.Options{}), Options{Paper: paper}), render.Options{Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		if printed.Pages%4 == 0 {
			fours++
		}
	}
	if fours == 3 {
		t.Error("pages come in fours even where sheets are not folded")
	}
}
