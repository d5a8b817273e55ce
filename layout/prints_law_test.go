package layout_test

import (
	"image"
	"image/color"
	"slices"
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

// TestMirroredMotifs: a motif is mirrored at a line of its photo's print, and refused where the photo has none or says no repeat.
func TestMirroredMotifs(t *testing.T) {
	const text = "strip 4\nfabric garden swatch \"garden.jpg\" across 24 repeat across 24 down 12\nmotif rose garden across 4 down 3 mirrored\n" +
		"block R ring wedges rose corners garden\ngrid\n  R\n"
	tile := func(folded bool) *image.RGBA {
		m := image.NewRGBA(image.Rect(0, 0, 48, 24))
		for i := range 48 * 24 {
			x, y := i%48, i/48
			if folded && y >= 12 {
				y = 23 - y
			}
			m.SetRGBA(i%48, i/48, color.RGBA{uint8(40 + x*x*7%180), uint8(30 + (x*y+3*y*y)%190), uint8(200 - 6*y), 255})
		}
		return m
	}
	for _, c := range []struct {
		name, from, to string
		folded         bool
		says, hint     string
	}{
		{"a line across", "", "", true, "", ""},
		{"no line", "", "", false, `the print of "garden" has no mirror line, so no two places of it are each other's mirror image`, "leave out mirrored"},
		{"no repeat", " repeat across 24 down 12", "", true, `the layout does not say after how much fabric the print of "garden" comes again, so no mirror line can be found`, "write it behind the photo, for example repeat across 24 down 12"},
		{"not asked for", " mirrored", "", false, "", ""},
	} {
		sample := palettes.PhotoSample{Colour: palettes.Colour{R: 90}, Width: 48, Height: 24, Tile: tile(c.folded)}
		design, _, list := layout.ReadWith(strings.Replace(text, c.from, c.to, 1), func(string) (palettes.PhotoSample, error) { return sample, nil })
		switch {
		case c.says != "":
			if len(list) != 1 || list[0].Message != c.says || list[0].Hint != c.hint {
				t.Errorf("%s: %v", c.name, list)
			}
		case design == nil:
			t.Errorf("%s: %v", c.name, list)
		case c.folded:
			line := design.Motifs[0].Mirror
			if off := (line.At + measure.Inch/8) % (6 * measure.Inch); !line.Crosswise || off > measure.Inch/4 {
				t.Errorf("%s: mirrored at %+v", c.name, line)
			}
		}
	}
}

// TestMirrorLinesOfStripes: stripes are mirrored anywhere across them, and along them where the stripes on both sides of one are alike, as
// they are read off by hand.
func TestMirrorLinesOfStripes(t *testing.T) {
	const in = measure.Inch
	for _, c := range []struct {
		stripes string
		lines   []measure.NM
	}{
		{"black 1 white 1/2", []measure.NM{in / 2, 5 * in / 4}},
		{"black 1 white 1/2 #ff0000 1/4", nil},
		{"black 3/4 white 1/4 #ff0000 1/2 white 1/4", []measure.NM{3 * in / 8, 5 * in / 4}},
		{"black 3/4 white 1/4 #ff0000 1/2 white 3/8", nil},
		{"white 1/4 black 1 white 1/4", []measure.NM{0, 3 * in / 4}}, // the outer two are one stripe
		{"black 1/4 black 1/4 white 1", []measure.NM{in / 4, in}},
		{"black 1 white 1 black 2 white 1", []measure.NM{in / 2, 3 * in}},
	} {
		for _, way := range []string{"", " crosswise"} {
			design, _, list := layout.Read(swap(small, "#1f3350", "stripes "+c.stripes+way))
			if design == nil {
				t.Fatal(list)
			}
			got := design.Fabrics[1].Stripes.MirrorLines()
			lines, other, all, none := got.Lengthwise, got.Crosswise, got.AnyCrosswise, got.AnyLengthwise
			if way != "" {
				lines, other, all, none = other, lines, none, all
			}
			if !slices.Equal(lines, c.lines) || len(other) > 0 || !all || none {
				t.Errorf("stripes %s%s: %+v", c.stripes, way, got)
			}
		}
	}
}
