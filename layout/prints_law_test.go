package layout_test

import (
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// ofPhoto reads a text with a photo of so many pixels.
func ofPhoto(text string, width, height int) (*layout.Design, []layout.Fault) {
	sample := palettes.PhotoSample{Colour: palettes.Colour{R: 90, G: 60, B: 30}, Width: width, Height: height}
	design, _, list := layout.ReadWith(text, func(string) (palettes.PhotoSample, error) { return sample, nil })
	return design, list
}

// TestPrintsOfPhotos: a photo must show a whole repeat and every motif, by the cloth that its pixels come to.
func TestPrintsOfPhotos(t *testing.T) {
	const text = "strip 4\nfabric garden swatch \"garden.jpg\" across 24 repeat across 24 down 12\nmotif rose garden across 24 down 12 pointing 30\n" +
		"block R ring wedges rose corners garden\ngrid\n  R\n"
	for _, c := range []struct {
		name, from, to string
		width, height  int
		says           string
	}{
		{"a whole repeat", "", "", 2000, 1000, ""},
		{"a repeat cut a thread short", "", "", 2000, 980, ""},
		{"half a repeat down", "", "", 2000, 500, "the photo shows 24 in across and 6 in down, less than one repeat"},
		{"half a repeat across", "across 24 repeat", "across 12 repeat", 1000, 1000, "the photo shows 12 in across and 12 in down, less than one repeat"},
		{"a motif beyond", "across 24 down 12 pointing", "across 24 down 12 1/8 pointing", 2000, 1000, "the photo shows 12 in down, and the motif lies at 12 1/8 in"},
		{"a repeat of nothing", "repeat across 24", "repeat across 0", 2000, 1000, "the repeat across must be above 0"},
		{"a repeat wider than the fabric", "across 24 repeat across 24", "across 60 repeat across 45", 2000, 1000, "the repeat across is 45 in, but must be 40 in or less"},
	} {
		design, list := ofPhoto(strings.Replace(text, c.from, c.to, 1), c.width, c.height)
		switch {
		case c.says == "" && (design == nil || len(list) > 0):
			t.Errorf("%s: %v", c.name, list)
		case c.says != "" && (len(list) == 0 || !strings.Contains(list[0].Message, c.says)):
			t.Errorf("%s: %v", c.name, list)
		}
	}
}

// TestStripesHaveTheirMean: a striped fabric's color is that of its cloth from afar. Equal parts of black and white give half of the
// light, which sRGB writes as 188 (IEC 61966-2-1).
func TestStripesHaveTheirMean(t *testing.T) {
	design, _, list := layout.Read(swap(small, "#1f3350", "stripes black 1/4 white 1/8 black 1/4 white 3/8 crosswise"))
	if design == nil {
		t.Fatal(list)
	}
	f := design.Fabrics[1]
	if f.Colour != (palettes.Colour{R: 188, G: 188, B: 188}) || f.Stripes.Repeat() != measure.Inch || !f.Stripes.Crosswise {
		t.Errorf("%+v, %s", f.Stripes, f.Colour.Hex())
	}
	if s := f.Stripes.Sample(); len(s.Colours) != 2 || s.Spread != 50 || s.Darkest != 0 || s.Lightest != 100 {
		t.Errorf("%+v", s)
	}
}
