package paper

import (
	"os"
	"path/filepath"
	"testing"
)

// TestLook leaves the samples' templates in a folder for whoever wants to look at them.
func TestLook(t *testing.T) {
	folder := os.Getenv("EIGHTHTURN_LOOK")
	if folder == "" {
		t.Skip("EIGHTHTURN_LOOK names no folder")
	}
	for name, top := range tops(t) {
		file, err := os.Create(filepath.Join(folder, name+".pdf"))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := TemplatesPDF(file, top, piecesOf(top), TemplateOptions{Foundations: true}); err != nil {
			t.Fatal(err)
		}
		if err := file.Close(); err != nil {
			t.Fatal(err)
		}
	}
}
