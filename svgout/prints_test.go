package svgout

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
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
	for _, o := range []Options{{}, {View: Value, Prints: true}, {View: Line, Prints: true}} {
		if svg := drawn(t, top, o); bytes.Contains(svg, []byte("<image")) {
			t.Errorf("%+v: a print is shown", o)
		}
	}
	for _, o := range []Options{{Prints: true}, {Prints: true, ByFabric: true, Legend: true, Prefix: "a-"}} {
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
