package sewing_test

import (
	"os"
	"path/filepath"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/plan/sewing"
	"eighthturn/samples"
)

// TestLook leaves the pictures of the samples in a folder for whoever wants to look at them.
func TestLook(t *testing.T) {
	folder := os.Getenv("EIGHTHTURN_LOOK")
	if folder == "" {
		t.Skip("EIGHTHTURN_LOOK names no folder")
	}
	for _, s := range samples.All() {
		for _, p := range planOf(topOf(t, s.Text), sewing.Options{}).Pictures() {
			file, err := os.Create(filepath.Join(folder, s.Name+"-"+p.Name+".svg"))
			if err != nil {
				t.Fatal(err)
			}
			if err := diagram.SVG(file, p.Figure, diagram.Options{}); err != nil {
				t.Fatal(err)
			}
			if err := file.Close(); err != nil {
				t.Fatal(err)
			}
		}
	}
}
