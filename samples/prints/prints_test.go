// Package prints_test draws the prints of the layouts in this folder, and holds their files to what is drawn.
package prints_test

import (
	"os"
	"testing"

	"eighthturn/internal/quilttest/golden"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// TestPrints: the files are what is drawn here.
func TestPrints(t *testing.T) {
	golden.Picture(t, "garden.png", garden(), golden.Slack{})
}

// TestLayouts: each layout reads without a word beside its print, and is tidy.
func TestLayouts(t *testing.T) {
	text, err := os.ReadFile("garden.quilt")
	if err != nil {
		t.Fatal(err)
	}
	design, _, faults := layout.ReadWith(string(text), func(name string) (palettes.PhotoSample, error) {
		file, err := os.ReadFile(name)
		if err != nil {
			return palettes.PhotoSample{}, err
		}
		return palettes.ReadSwatch(nil, file)
	})
	if design == nil || len(faults) > 0 {
		t.Errorf("%v", faults)
	}
	if tidy, _ := layout.Tidy(string(text)); tidy != string(text) {
		t.Errorf("tidied it reads\n%s", tidy)
	}
}
