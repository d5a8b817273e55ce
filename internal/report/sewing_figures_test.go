package report

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
)

// TestPicturesAreSound: every picture of every layout can be drawn, has a name of its own that sorts in the order of the
// work, a title that begins as all do, a description, and marks that stand for patches of the top.
func TestPicturesAreSound(t *testing.T) {
	for name, s := range sewers() {
		var names []string
		for _, p := range SewingPictures(s.plans) {
			names = append(names, p.Name)
			if !strings.HasPrefix(p.Figure.Title, SewingPictureTitle) || p.Figure.Description == "" {
				t.Errorf("%s: %s has no title or description", name, p.Name)
			}
			for _, m := range p.Figure.Marks {
				for _, lit := range m.Lit {
					if lit < 0 || lit >= len(s.top.Patches) {
						t.Fatalf("%s: %s lights patch %d", name, p.Name, lit)
					}
				}
			}
			var b bytes.Buffer
			if err := diagram.SVG(&b, p.Figure, diagram.Options{}); err != nil {
				t.Fatal(err)
			}
			if folder := os.Getenv("EIGHTHTURN_LOOK"); folder != "" { // for whoever wants to look at them
				if err := os.WriteFile(filepath.Join(folder, name+"-"+p.Name+".svg"), b.Bytes(), 0o666); err != nil {
					t.Fatal(err)
				}
			}
		}
		if !slices.IsSorted(names) || len(slices.Compact(slices.Clone(names))) != len(names) {
			t.Errorf("%s: the names of the pictures do not sort: %v", name, names)
		}
	}
}
