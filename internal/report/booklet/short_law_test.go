package booklet

import (
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
	"eighthturn/samples"
)

func TestShortPages(t *testing.T) {
	for _, s := range samples.All() {
		r := study(t, s.Text, cutting.Options{})
		for _, p := range render.Papers() {
			for _, large := range []bool{false, true} {
				printed, err := render.PDF(Pattern(r, Options{Paper: p, Large: large}), render.Options{Paper: p, Large: large})
				if err != nil {
					t.Fatal(err)
				}
				for _, w := range printed.Warnings {
					if w.Kind == render.ShortPage {
						t.Errorf("%s, %s, large %v: page %d of %d: %s", s.Name, p.Name, large, w.Page, printed.Pages, w.Message)
					}
				}
			}
		}
	}
}
