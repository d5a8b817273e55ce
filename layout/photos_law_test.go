package layout_test

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/layout"
	"eighthturn/palettes"
)

// TestPhotosTogether: photos that have too many pixels or bytes together are refused once, at the first that is too much, whatever
// else is wrong with them, and none is looked at after it.
func TestPhotosTogether(t *testing.T) {
	const most = 40
	var b strings.Builder
	b.WriteString("strip 4\n")
	for i := range most {
		fmt.Fprintf(&b, "fabric f%d swatch \"f%d.jpg\"\n", i, i)
	}
	b.WriteString("block W web wedges f0 f1 kites f2\ngrid\n W\n")
	for _, c := range []struct {
		name   string
		each   palettes.PhotoSample
		fault  error
		looks  int
		faults int
	}{
		{"small", palettes.PhotoSample{Pixels: layout.MaxPhotosPixels / most, Bytes: layout.MaxPhotosBytes / most}, nil, most, 0},
		{"many pixels", palettes.PhotoSample{Pixels: layout.MaxPhotosPixels/10 + 1}, nil, 10, 1},
		{"many bytes", palettes.PhotoSample{Bytes: layout.MaxPhotosBytes/20 + 1}, nil, 20, 1},
		{"damaged", palettes.PhotoSample{Pixels: layout.MaxPhotosPixels/10 + 1}, fmt.Errorf("it is damaged"), 10, 10},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.each.Colours = []palettes.Part{{Share: 1}}
			looks := 0
			_, source, faults := layout.ReadWith(b.String(), func(string) (palettes.PhotoSample, error) {
				looks++
				return c.each, c.fault
			})
			errors, _ := layout.Count(faults)
			if looks != c.looks || errors != c.faults {
				t.Fatalf("%d photos are looked at and %d errors said, wanted %d and %d: %v", looks, errors, c.looks, c.faults, faults)
			}
			if errors == 0 {
				return
			}
			last := faults[len(faults)-1]
			if !strings.Contains(last.Message, "down to this one") || !strings.Contains(last.Hint, "1,000 pixels") || source.Line(last.Span.Start) != 1+c.looks {
				t.Errorf("line %d: %s (%s)", source.Line(last.Span.Start), last.Message, last.Hint)
			}
		})
	}
}
