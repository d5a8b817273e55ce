package files

import (
	"os"
	"strings"
	"testing"

	"eighthturn/palettes"
)

// TestPhotoTime: a photo that takes longer than it may is refused in a sentence, at once where it is asked for again, until its file is
// another.
func TestPhotoTime(t *testing.T) {
	folder := t.TempDir()
	a := In(folder)
	if _, err := a.clothWithin(0, "sea.jpg"); err == nil || !strings.Contains(err.Error(), "too long") {
		t.Errorf("%v", err)
	}
	if _, err := a.Cloth("sea.jpg"); err == nil || strings.Contains(err.Error(), "too long") {
		t.Errorf("%v of a photo that is not there", err)
	}
	path := put(t, folder, "sea.jpg", "no photo\n")
	if c, err := a.clothWithin(0, "sea.jpg"); err == nil || !strings.Contains(err.Error(), "too long") || c.Pixels != palettes.MaxPhotoPixels {
		t.Errorf("%v, counted as %d pixels", err, c.Pixels)
	}
	if c, err := a.Cloth("sea.jpg"); err == nil || !strings.Contains(err.Error(), "too long") || c.Pixels != palettes.MaxPhotoPixels {
		t.Errorf("%v of a photo that took too long before, counted as %d pixels", err, c.Pixels)
	}
	if err := os.WriteFile(path, []byte("still no photo\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := a.Cloth("sea.jpg"); err == nil || strings.Contains(err.Error(), "too long") {
		t.Errorf("%v of a photo that is another", err)
	}
}
