package svgout

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"regexp"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// striped is a photo of cloth with upright stripes, so that the way it lies can be told.
func striped(t *testing.T) palettes.PhotoSample {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 200, 100))
	for y := range 100 {
		for x := range 200 {
			c := color.RGBA{20, 90, 120, 255}
			if x/20%2 == 1 {
				c = color.RGBA{220, 200, 60, 255}
			}
			picture.SetRGBA(x, y, c)
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, picture); err != nil {
		t.Fatal(err)
	}
	cloth, err := palettes.ReadSwatch(nil, file.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return cloth
}

func printed(t *testing.T) *quilt.Top {
	t.Helper()
	text := "side 6\nfabric sea swatch \"sea.png\" across 10\nfabric plain #ffffff\nblock P plain piece sea\nblock Q plain piece plain\n" + grid("P Q")
	design, _, faults := layout.ReadWith(text, func(string) (palettes.PhotoSample, error) { return striped(t), nil })
	if design == nil {
		t.Fatal(faults)
	}
	return quilt.Lay(design)
}

// TestPrints: the print stands only where it is asked for, once, and well formed.
func TestPrints(t *testing.T) {
	top := printed(t)
	for _, o := range []Options{{}, {View: Value}, {View: Line, Prints: true}} {
		if svg := drawn(t, top, o); bytes.Contains(svg, []byte("<image")) {
			t.Errorf("%+v: a print is shown", o)
		}
	}
	for _, o := range []Options{{Prints: true}, {Prints: true, View: Value}, {Prints: true, ByFabric: true, Legend: true, Prefix: "a-"}} {
		svg := drawn(t, top, o)
		if _, err := parse(svg); err != nil {
			t.Error(err)
		}
		if n := bytes.Count(svg, []byte("<image")); n != 1 {
			t.Errorf("%+v: %d prints", o, n)
		}
		if !bytes.Contains(svg, []byte(`fill="url(#`+o.Prefix+`print-1)"`)) {
			t.Errorf("%+v: the print covers nothing", o)
		}
	}
}

// TestNoPieceIsMirrored: every piece of a print has a pattern of its own, which is the fabric's, turned and moved and nothing else.
func TestNoPieceIsMirrored(t *testing.T) {
	design, _, faults := layout.ReadWith("side 6\nfabric sea swatch \"sea.png\" across 10 repeat across 10 down 5\nfabric awning stripes navy 1 white 1/2\nmotif shell sea across 3 down 2 pointing 75\n"+
		"block R ring wedges shell sea corners awning\nblock H halves pieces sea awning\nblock W web wedges awning lengthwise from 1/4 kites shell\ngrid\n  W W H\n  W W R\nborder 2 sea\n",
		func(string) (palettes.PhotoSample, error) { return striped(t), nil })
	if design == nil {
		t.Fatal(faults)
	}
	top := quilt.Lay(design)
	svg := drawn(t, top, Options{Prints: true})
	matrices := regexp.MustCompile(`<pattern id="print-\d+-(\d+)" xlink:href="#print-\d+" patternTransform="matrix\(([^)]*)\)"/>`).FindAllSubmatch(svg, -1)
	for _, m := range matrices {
		var a, b, c, d, e, f float64
		if _, err := fmt.Sscan(string(m[2]), &a, &b, &c, &d, &e, &f); err != nil {
			t.Fatal(err)
		}
		if det := a*d - b*c; math.Abs(det-1) > 1e-5 || math.Abs(a-d) > 1e-5 || math.Abs(b+c) > 1e-5 {
			t.Errorf("face %s lies by the matrix %s, with the determinant %g", m[1], m[2], det)
		}
		if !bytes.Contains(svg, []byte(`id="face-`+string(m[1])+`" fill="url(#`)) && !bytes.Contains(svg, []byte(`-`+string(m[1])+`)"`)) {
			t.Errorf("no path shows the pattern of face %s", m[1])
		}
	}
	if len(matrices) != len(top.Faces) {
		t.Errorf("%d patterns for %d faces", len(matrices), len(top.Faces))
	}
}
