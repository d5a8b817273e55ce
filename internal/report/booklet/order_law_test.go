package booklet

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/samples"
)

// unnumberedStrips are the numbers that a figure of borders whose caption speaks of them lacks on paper, of as many strips as the
// layout's borders have; and whether there is such a figure.
func unnumberedStrips(d document.Document, strips int, o render.Options) (missing []string, found bool) {
	p, zoom := o.Paper, o.Zoom()
	for _, f := range figuresIn(d.Print().Sections) {
		if !strings.Contains(f.Of.Title, "in the order numbered") {
			continue
		}
		found = true
		on := func(nm measure.NM) measure.NM { return measure.NM(float64(nm) / zoom) }
		var said []string
		for _, i := range diagram.Place(&f.Of, diagram.Options{Width: on(min(f.Width, p.Width-2*p.Margin)), Height: on(p.Height - 2*p.Margin - 2*measure.Inch)}).Items {
			if i.Label != nil {
				said = append(said, i.Label.Text)
			}
		}
		for n := range strips {
			if number := strconv.Itoa(n + 1); !slices.Contains(said, number) {
				missing = append(missing, number)
			}
		}
	}
	return missing, found
}

// TestBorderStripsAreNumbered: where a figure's caption says that strips are sewn on in the order numbered, each of them has its number
// on every paper, in large print too.
func TestBorderStripsAreNumbered(t *testing.T) {
	t.Parallel()
	figures := 0
	for _, s := range judges.Some(samples.All(), 5) {
		r := study(t, s.Text, cutting.Options{})
		strips := 0
		for i := range r.Sewing.Assembly.Stages {
			if stage := &r.Sewing.Assembly.Stages[i]; stage.Sort == sewing.BorderStage {
				strips += len(r.Sewing.BorderStrips(stage))
			}
		}
		for i := range 2 * len(render.Papers()) {
			p, large := render.Papers()[i/2], i%2 > 0
			missing, found := unnumberedStrips(Pattern(r, Options{Paper: p, Large: large}), strips, render.Options{Paper: p, Large: large})
			if len(missing) > 0 {
				t.Errorf("%s on %s, large %v: the strips %v have no number", s.Name, p.Name, large, missing)
			}
			if found {
				figures++
			}
		}
		if missing, found := unnumberedStrips(pattern(t, s.Text), strips+1, render.Options{Paper: render.Letter()}); found && len(missing) != 1 {
			t.Errorf("%s: a strip without a number is not noticed", s.Name)
		}
	}
	if figures == 0 {
		t.Error("no figure of borders")
	}
}
