package picture

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image/jpeg"
	"io"
	"path/filepath"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/readpdf"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// smallQuilt has a web, a border and sashes, and is wider than high.
const smallQuilt = `side 4
fabric night #1f3350
fabric oat #e9dfc9
fabric rust #b5552b
block W web wedges night rust kites oat
block R ring wedges rust corners oat
grid
  W R R
border 1/2 oat
border 1 rust
`

// stripedQuilt has a striped fabric, which runs across in one border and along in the other.
const stripedQuilt = `side 4
fabric awning stripes #1f3350 3/4 #e9dfc9 1/2
fabric rust #b5552b
block P plain piece awning
block H halves pieces awning rust
grid
  P H
border 1 awning lengthwise
`

// faintQuilt has seams that vanish, some of them wholly.
const faintQuilt = `side 4
fabric night #1f3350
fabric dusk #24395a
fabric slate #3a5070
block W web wedges night dusk kites slate
block R ring wedges dusk night corners slate
grid
  W R
  R W
`

// smallCanvas is a canvas with pictures that stand together, and words.
func smallCanvas(t *testing.T, parts int) *Canvas {
	t.Helper()
	top := lay.Top(t, smallQuilt)
	p := &Poster{Width: 320, Height: 250, PerInch: 100, Margin: -1, Ground: palettes.Colour{R: 250, G: 240, B: 230}, Title: "Tide", Lines: []string{"by hand"}, Says: "Quilt top", Description: "Two pictures.",
		Groups: []Group{{Name: "As written", Parts: []Part{{Scene: plainScene(t, top, svgout.Colour, "a-")}, {Scene: plainScene(t, top, svgout.Value, "b-"), Size: 0.5}}}}}
	p.Groups[0].Parts = p.Groups[0].Parts[:parts]
	p.Credits.Author, p.Credits.Copyright = "Mara Ellery", "© Mara Ellery"
	c, err := p.Arrange()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestSpecimenCanvases: where pictures and words stand on canvases of every sort, as somebody has looked at them.
func TestSpecimenCanvases(t *testing.T) {
	top := lay.Top(t, smallQuilt)
	var out bytes.Buffer
	for seed := range uint64(24) {
		p := inventedPoster(t, top, seed)
		c, err := p.Arrange()
		fmt.Fprintf(&out, "poster %d, %d by %d, letters %g, %d groups: ", seed, p.Width, p.Height, p.Letters, len(p.Groups))
		if err != nil {
			fmt.Fprintln(&out, err)
			continue
		}
		fmt.Fprintf(&out, "%d by %d, ink %s, unit %.2f, rim %v, lacks %q\n", c.Width, c.Height, c.Ink.Hex(), c.unit, c.hairline(), string(c.Lacks))
		for _, p := range c.Panels {
			fmt.Fprintf(&out, "  picture %v\n", p.At)
		}
		for _, w := range c.Words {
			fmt.Fprintf(&out, "  %.2f %.2f size %g bold %v in %.2f %.2f %.2f by %.2f %.40q\n", w.X, w.Y, w.Size, w.Bold, w.Box.X, w.Box.Y, w.Box.Width, w.Box.Height, w.Text.Text)
		}
	}
	golden.Text(t, filepath.Join("testdata", "specimen", "canvases.txt"), out.Bytes())
}

// TestSpecimenPapers: pictures as PDF, operator by operator.
func TestSpecimenPapers(t *testing.T) {
	small, printed, striped := lay.Top(t, smallQuilt), printedBy(t, gardens, 40, 30), lay.Top(t, stripedQuilt)
	teal := palettes.Colour{R: 20, G: 120, B: 120}
	for name, c := range map[string]struct {
		scene *svgout.Scene
		f     Frame
	}{
		"color": {scened(t, small, svgout.Options{Legend: true}), Frame{Margin: measure.Inch, Bleed: measure.Inch / 4}}, "line": {scened(t, small, svgout.Options{View: svgout.Line}), Frame{Longest: 4 * measure.Inch, Clear: true}},
		"runs-on": {scened(t, small, svgout.Options{ByFabric: true, SeamLines: svgout.SeamsLeftOut}), Frame{Longest: 6 * measure.Inch, Bleed: measure.Inch / 8, Background: &teal}},
		"prints":  {scened(t, printed, svgout.Options{Prints: true}), Frame{Longest: 5 * measure.Inch}}, "stripes": {scened(t, striped, svgout.Options{Prints: true}), Frame{Bleed: measure.Inch / 2}}, "squint": {scened(t, small, svgout.Options{View: svgout.Squint}), Frame{}}, "vanishing": {scened(t, lay.Top(t, faintQuilt), svgout.Options{View: svgout.Vanishing}), Frame{Longest: 3 * measure.Inch}},
	} {
		text, err := readpdf.Text(pdfOf(t, c.scene, c.f))
		if err != nil {
			t.Fatal(err)
		}
		golden.Text(t, filepath.Join("testdata", "specimen", name+".txt"), []byte(text))
	}
	var file bytes.Buffer
	if err := smallCanvas(t, 2).PDF(&file); err != nil {
		t.Fatal(err)
	}
	text, err := readpdf.Text(file.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	golden.Text(t, filepath.Join("testdata", "specimen", "canvas.txt"), []byte(text))
}

// chunks are the parts of a PNG file but for its pixels, by their names and bytes (ISO/IEC 15948, 5.3).
func chunks(file []byte) string {
	var out bytes.Buffer
	for at := 8; at+12 <= len(file); {
		n := int(binary.BigEndian.Uint32(file[at:]))
		name, body := file[at+4:at+8], file[at+8:at+8+n]
		if string(name) == "IDAT" {
			fmt.Fprintf(&out, "IDAT\n")
		} else {
			fmt.Fprintf(&out, "%s %q\n", name, body[:min(n, 300)])
		}
		at += 12 + n
	}
	return out.String()
}

// TestSpecimenPixels: pictures in pixels, and what their files say of themselves.
func TestSpecimenPixels(t *testing.T) {
	small, printed, striped := lay.Top(t, smallQuilt), printedBy(t, gardens, 40, 30), lay.Top(t, stripedQuilt)
	teal := palettes.Colour{R: 20, G: 120, B: 120}
	var said bytes.Buffer
	for _, c := range []struct {
		name  string
		scene *svgout.Scene
		f     Frame
	}{
		{"color", scened(t, small, svgout.Options{Legend: true}), Frame{Pixels: 150, MarginPixels: 5}}, {"line", scened(t, small, svgout.Options{View: svgout.Line}), Frame{Pixels: 150, Clear: true, Margin: measure.Inch / 8, Bleed: measure.Inch / 8}},
		{"value", scened(t, small, svgout.Options{View: svgout.Value}), Frame{Longest: 2 * measure.Inch, PerInch: 50, TrueColour: true}},
		{"runs-on", scened(t, small, svgout.Options{ByFabric: true, SeamLines: svgout.SeamsLeftOut}), Frame{Pixels: 120, Bleed: measure.Inch / 2, Background: &teal}},
		{"prints", scened(t, printed, svgout.Options{Prints: true}), Frame{Pixels: 120}}, {"stripes", scened(t, striped, svgout.Options{Prints: true, SeamLines: svgout.SeamsDrawn}), Frame{Pixels: 80, Bleed: measure.Inch / 4}}, {"squint", scened(t, small, svgout.Options{View: svgout.Squint}), Frame{Pixels: 120}}, {"vanishing", scened(t, lay.Top(t, faintQuilt), svgout.Options{View: svgout.Vanishing}), Frame{Pixels: 120}},
		{"clear", scened(t, lay.Top(t, "side 4\nfabric a #b5532a\nblock R ring wedges a corners a\ngrid\n  . R\n  R .\n"), svgout.Options{}), Frame{Pixels: 60, Clear: true}},
	} {
		file := pngOf(t, c.scene, c.f)
		golden.Picture(t, filepath.Join("testdata", "specimen", c.name+".png"), decoded(t, file), golden.Slack{})
		size, perInch, err := PNGSize(c.scene, c.f)
		fmt.Fprintf(&said, "%s: %v, %g an inch, %v\n%s", c.name, size, perInch, err, chunks(file))
		if c.name == "color" {
			c.f.Quality = 60
			photo := jpegOf(t, c.scene, c.f)
			end := bytes.Index(photo, []byte{0xff, 0xdb}) // behind what it says of itself come its tables (ITU-T T.81, B.2.4.1)
			m, err := jpeg.Decode(bytes.NewReader(photo))
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&said, "JPEG of %v: %q\n", m.Bounds(), photo[:min(end, 3000)])
		}
	}
	var canvas bytes.Buffer
	if err := smallCanvas(t, 1).PNG(io.Discard); err != nil {
		t.Fatal(err)
	}
	if err := smallCanvas(t, 2).PNG(&canvas); err != nil {
		t.Fatal(err)
	}
	golden.Picture(t, filepath.Join("testdata", "specimen", "canvas.png"), decoded(t, canvas.Bytes()), golden.Slack{})
	fmt.Fprintf(&said, "canvas\n%s", chunks(canvas.Bytes()))
	golden.Text(t, filepath.Join("testdata", "specimen", "files.txt"), said.Bytes())
}

// TestSpecimenVector: a canvas as SVG, its words as outlines.
func TestSpecimenVector(t *testing.T) {
	var file bytes.Buffer
	if err := smallCanvas(t, 2).SVG(&file); err != nil {
		t.Fatal(err)
	}
	golden.Text(t, filepath.Join("testdata", "specimen", "canvas.svg"), file.Bytes())
}
