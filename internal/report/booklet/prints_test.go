package booklet

import (
	"bytes"
	"image/png"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
)

// TestValueStudyShowsPrintsInGray: the picture of a printed value study shows stripes where pieces have them, all in gray, and none where
// every fabric is plain.
func TestValueStudyShowsPrintsInGray(t *testing.T) {
	picture := func(fabric string) document.Drawing {
		r := study(t, "strip 4\nfabric awning "+fabric+"\nfabric sand #e8d9b0\nblock R ring wedges awning corners sand\ngrid\n  R\n", cutting.Options{})
		for _, b := range partOf(Pattern(r, Options{ValueStudy: true}), "Value study") {
			if p, ok := b.(document.Picture); ok {
				return p.Of
			}
		}
		t.Fatal("the value study has no picture")
		return document.Drawing{}
	}
	if picture("navy").Ground != nil {
		t.Error("plain fabrics are shown in pixels")
	}
	m, err := png.Decode(bytes.NewReader(picture("stripes navy 1/2 white 1/2").Ground))
	if err != nil {
		t.Fatal(err)
	}
	dark, light := 0, 0
	const each = 40 // pixels
	across := m.Bounds().Dx() / each
	for i := range across * across {
		r, g, b, _ := m.At(i%across*each, i/across*each).RGBA()
		switch {
		case r != g || g != b:
			t.Fatalf("pixel %d is no gray", i)
		case r>>8 < 60:
			dark++
		case r>>8 > 250:
			light++
		}
	}
	if least := across * across / 5; dark < least || light < least {
		t.Errorf("%d places are as dark as navy and %d as light as white", dark, light)
	}
}
