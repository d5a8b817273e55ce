package motifs_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/plan/motifs"
)

// TestWhatPlansTell: a plan tells of its print what the layout says, as many places as are usual unless others are asked for, numbered in their
// order; the mirror lines of stripes from the edge of a repeat on.
func TestWhatPlansTell(t *testing.T) {
	for name, text := range prints() {
		asked, count := 2, 2
		if name == "small" {
			asked, count = 0, 12
		}
		top := laid(t, "title \"A print\"\n"+text+fmt.Sprintf(ringOf, "cloth"))
		p, err := motifs.Build(top, 0, motifs.Options{Count: asked})
		if err != nil {
			t.Fatal(err)
		}
		cloth := top.Fabrics[0].Cloth
		lines := cloth.MirrorLines()
		slices.Sort(lines.Lengthwise)
		slices.Sort(lines.Crosswise)
		if p.Title != "A print" || p.Fabric != "cloth" || p.WedgeFinished != top.WedgeFinished(0) || p.RepeatAcross != cloth.Across || p.RepeatDown != cloth.Down ||
			p.Striped != (cloth.Stripes != nil) || p.Asked != count || len(p.Motifs) != count || p.Mirrored ||
			!slices.Equal(p.Lengthwise, lines.Lengthwise) || !slices.Equal(p.Crosswise, lines.Crosswise) || p.AnyLengthwise != lines.AnyLengthwise || p.AnyCrosswise != lines.AnyCrosswise {
			t.Errorf("%s: the plan tells %+v", name, p)
		}
		for n, m := range p.Motifs {
			if m.Name != fmt.Sprint("cloth-", n+1) {
				t.Errorf("%s: motif %d is called %s", name, n+1, m.Name)
			}
		}
	}
}

// TestWhyNoMotifs: a fabric that gives none is refused with the first reason there is.
func TestWhyNoMotifs(t *testing.T) {
	for name, c := range map[string]struct {
		text     string
		fabric   int
		mirrored bool
		why      motifs.Why
	}{
		"one color":               {prints()["large"] + fmt.Sprintf(ringOf, "cloth"), 1, false, motifs.OneColor},
		"one color, mirrored":     {prints()["large"] + fmt.Sprintf(ringOf, "cloth"), 1, true, motifs.OneColor},
		"a photo without repeat":  {"strip 4\nfabric cloth swatch \"a.png\" across 24\n" + sand + fmt.Sprintf(ringOf, "cloth"), 0, false, motifs.NoRepeat},
		"no wedges":               {"side 6\nfabric cloth stripes navy 1 white 1\nblock P plain piece cloth\ngrid\n  P\n", 0, false, motifs.NoWedges},
		"a small photo":           {"strip 1 1/2\nfabric cloth swatch \"a.png\" across 40 repeat across 40 down 26\n" + sand + fmt.Sprintf(ringOf, "cloth"), 0, false, motifs.TooSmall},
		"a small photo, mirrored": {"strip 1 1/2\nfabric cloth swatch \"a.png\" across 40 repeat across 40 down 26\n" + sand + fmt.Sprintf(ringOf, "cloth"), 0, true, motifs.TooSmall},
		"no mirror line":          {prints()["large"] + fmt.Sprintf(ringOf, "cloth"), 0, true, motifs.NoMirror},
	} {
		p, err := motifs.Build(laid(t, c.text), c.fabric, motifs.Options{Mirrored: c.mirrored})
		var unfit *motifs.Unfit
		if p != nil || !errors.As(err, &unfit) || unfit.Why != c.why {
			t.Errorf("%s: %v, %v", name, p, err)
		}
	}
}
