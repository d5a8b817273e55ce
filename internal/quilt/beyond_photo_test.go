package quilt_test

import (
	"image"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// TestMotifsBeyondTheirPhoto: a motif whose pieces do not lie within a photo is told, once, where no repeat is said.
func TestMotifsBeyondTheirPhoto(t *testing.T) {
	const text = "strip 4 1/2\nfabric navy navy\nfabric cream ivory\nscraps bits navy cream garden\nfabric garden swatch \"garden.jpg\" across 12\nmotif rose garden across 6 down 4\nblock R ring wedges rose corners bits\ngrid\n  R R\n"
	for _, c := range []struct {
		from, to string
		warned   bool
	}{
		{"", "", false},
		{"down 4", "down 2 1/2", true},
		{"across 6", "across 1", true},
		{"across 12", "across 12 repeat across 12 down 8", false},
		{"down 4", "down 4 pointing 180", false},
		// A wedge 4 in high reaches 2/3 of that above its middle and 1/3 below it, and 4 tan 22.5 = 1.657 in to either side; 1/4 in for seams.
		{"down 4", "down 2.92", false}, {"down 4", "down 2.91", true}, {"down 4", "down 6.41", false}, {"down 4", "down 6.42", true},
		{"across 6", "across 1.91", false}, {"across 6", "across 1.90", true}, {"across 6", "across 10.09", false}, {"across 6", "across 10.1", true},
	} {
		sample := palettes.PhotoSample{Width: 300, Height: 200, Tile: image.NewRGBA(image.Rect(0, 0, 30, 20))}
		design, _, faults := layout.ReadWith(strings.Replace(text, c.from, c.to, 1), func(string) (palettes.PhotoSample, error) { return sample, nil })
		if design == nil {
			t.Fatal(faults)
		}
		told := 0
		for _, w := range quilt.Lay(design).Warnings {
			if w.Message == `pieces of "rose" reach beyond what the photo of garden shows` && strings.HasPrefix(w.Hint, "move the motif") {
				told++
			}
		}
		if told > 1 || told == 1 != c.warned {
			t.Errorf("%s in place of %q: told %d times", c.to, c.from, told)
		}
	}
}
