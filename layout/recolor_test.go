package layout_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
)

// TestRecolored: a fabric's statement gets the color and stays as it is written otherwise; a fabric of a palette gets a
// statement of its own.
func TestRecolored(t *testing.T) {
	const rest = "\nblock H halves pieces rust cream\ngrid\n H H\n"
	for name, c := range map[string]struct{ before, after string }{
		"a number":      {"fabric rust #a84a2a # warm\nfabric cream #f4ead7", "fabric rust #123456 # warm\nfabric cream #f4ead7"},
		"a name":        {"fabric  RUST   navy  \"night sky\" on-hand 2 yd\nfabric cream #fff", "fabric  RUST   #123456  \"night sky\" on-hand 2 yd\nfabric cream #fff"},
		"a photo":       {"fabric rust swatch \"a b.png\" across 6 in \"leaves\"\nfabric cream #fff", "fabric rust #123456 \"leaves\"\nfabric cream #fff"},
		"a photo alone": {"fabric rust swatch \"a.png\"\nfabric cream #fff", "fabric rust #123456\nfabric cream #fff"},
		"a repeat":      {"fabric rust swatch \"a.png\" across 6 \"leaves\" repeat down 4 across 3 on-hand 2 yd\nfabric cream #fff", "fabric rust #123456 \"leaves\" on-hand 2 yd\nfabric cream #fff"},
		"stripes":       {"fabric rust stripes navy 1 white 1/2 \"awning\" crosswise # x\nfabric cream #fff", "fabric rust #123456 \"awning\" # x\nfabric cream #fff"},
		"a print first": {"fabric rust swatch \"a.png\" \"across\" across 6 # x\nfabric cream #fff", "fabric rust #123456 \"across\" # x\nfabric cream #fff"},
	} {
		r := layout.Inspect("side 6\n"+c.before+rest, func(string) (palettes.PhotoSample, error) { return palettes.PhotoSample{}, errors.New("no photo") })
		if got := layout.Apply(r.Source.Text, r.Recolored("rust", palettes.Colour{R: 0x12, G: 0x34, B: 0x56})); got != "side 6\n"+c.after+rest {
			t.Errorf("%s: became\n%s", name, got)
		}
		if edits := r.Recolored("plum", palettes.Colour{}); edits != nil {
			t.Errorf("%s: a fabric that is not there is written at %v", name, edits)
		}
	}
}

// TestRecoloredIsReadAgain: in samples, invented layouts and one with a palette each fabric can be given another color; it then
// has it, and the others have theirs.
func TestRecoloredIsReadAgain(t *testing.T) {
	texts := []string{
		"palette tidewater\nside 6\nblock H halves pieces slate foam\ngrid\n H H\n",
		"\ufeffpalette tidewater\r\nside 6\r\nblock H halves pieces slate foam\r\ngrid\r\n H H\r\n",
	}
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(20) {
		texts = append(texts, invent.Layout(seed))
	}
	colour := palettes.Colour{R: 0x12, G: 0x34, B: 0x57}
	for _, text := range texts {
		r := layout.Inspect(text, nil)
		if r.Design == nil {
			t.Fatalf("%v in\n%s", r.Faults, text)
		}
		for _, f := range r.Design.Fabrics {
			edits := r.Recolored(f.Name, colour)
			if f.Stripes != nil {
				if edits != nil {
					t.Errorf("%s, from whose stripes pieces are cut, is written as one color: %v", f.Name, edits)
				}
				continue
			}
			after := layout.Inspect(layout.Apply(text, edits), nil)
			if after.Design == nil {
				t.Fatalf("%s: %v in\n%s", f.Name, after.Faults, after.Source.Text)
			}
			now := map[string]palettes.Colour{}
			for _, g := range after.Design.Fabrics {
				now[g.Name] = g.Colour
			}
			for _, g := range r.Design.Fabrics {
				want := g.Colour
				if g.Name == f.Name {
					want = colour
				}
				if now[g.Name] != want && g.Stripes == nil { // whose stripes go with the fabrics that they have their colors from
					t.Errorf("%s recolored: %s is %s, not %s", f.Name, g.Name, now[g.Name].Hex(), want.Hex())
				}
			}
			if a, b := strings.Count(text, "\r\n"), strings.Count(after.Source.Text, "\n"); a > 0 && b != strings.Count(after.Source.Text, "\r\n") {
				t.Errorf("%s recolored: the lines end otherwise: %q", f.Name, after.Source.Text)
			}
		}
	}
}

// TestRecoloredInAColorway: in layouts with colorways each fabric can be given another color in each; it then has that there, whatever
// else the colorway shows stays, and so does the quilt as it is written.
func TestRecoloredInAColorway(t *testing.T) {
	const quilt = "side 6\nfabric rust #a84a2a\nfabric cream #f4ead7\nfabric plum #4a2a5a\nblock H halves pieces rust cream\nblock K halves pieces plum cream\ngrid\n H K\n"
	texts := []string{
		quilt + "colorway dusk rust #102030 # late\n",
		quilt + "colourway dusk rust plum plum rust\r\ncolorway dawn cream white\n",
		quilt + "fabric slate #556270\ncolorway dusk rust slate",
	}
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(20) {
		texts = append(texts, invent.Layout(seed))
	}
	// spare says of a fabric that it is not in the quilt: another takes its place only because it takes that one's.
	spare := func(c *layout.Colorway, f int) bool {
		return slices.ContainsFunc(c.Changes, func(o layout.Change) bool { return o.Takes == f }) && !slices.ContainsFunc(c.Changes, func(o layout.Change) bool { return o.Fabric == f })
	}
	colours := func(d *layout.Design, c *layout.Colorway) (list []palettes.Colour) {
		for i, f := range d.Fabrics {
			if c == nil || !spare(c, i) {
				list = append(list, f.Colour)
			} else {
				list = append(list, palettes.Colour{})
			}
		}
		return list
	}
	colour, tried := palettes.Colour{R: 0x12, G: 0x34, B: 0x57}, 0
	for _, text := range texts {
		r := layout.Inspect(text, nil)
		if r.Design == nil {
			t.Fatalf("%v in\n%s", r.Faults, text)
		}
		for w := range r.Design.Colorways {
			c := &r.Design.Colorways[w]
			before := r.Design.In(c)
			for f := range before.Fabrics {
				if spare(c, f) {
					continue
				}
				tried++
				after := layout.Inspect(layout.Apply(text, r.RecoloredIn(c.Name, before.Fabrics[f].Name, colour)), nil)
				if after.Design == nil {
					t.Fatalf("%s: %v in\n%s", before.Fabrics[f].Name, after.Faults, after.Source.Text)
				}
				want := colours(before, c)
				want[f] = colour
				if got := colours(after.Design.In(&after.Design.Colorways[w]), c); !slices.Equal(got, want) {
					t.Errorf("%s recolored in a colorway: the colors are %v, not %v, in\n%s", before.Fabrics[f].Name, got, want, after.Source.Text)
				}
				if !slices.Equal(colours(after.Design, nil), colours(r.Design, nil)) {
					t.Errorf("%s recolored in a colorway: the quilt as it is written changed", before.Fabrics[f].Name)
				}
			}
		}
		if edits := r.RecoloredIn("nowhere", "rust", colour); edits != nil {
			t.Errorf("a colorway that is not there is written at %v", edits)
		}
	}
	if tried < 30 {
		t.Errorf("only %d fabrics were tried", tried)
	}
}
