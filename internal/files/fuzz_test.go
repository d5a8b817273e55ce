//go:build unix

package files

import (
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// FuzzNames asks an album for photos by any name: it shows what lies in the layout's own folder and below it and nothing else, by whatever
// links and dots, and what it refuses it refuses in a sentence.
func FuzzNames(f *testing.F) {
	for _, name := range []string{"sea.png", "cloth/sea.png", "./cloth/../sea.png", "../secret.png", "out/secret.png", "link.png", "loop", "/etc/passwd", "", "cloth", "sea.png/", "nul", "a\x00b", `cloth\sea.png`} {
		f.Add(name)
	}
	top := f.TempDir()
	folder := filepath.Join(top, "quilt")
	write(f, filepath.Join(folder, "sea.png"), plain(f, color.RGBA{47, 125, 131, 255}))
	write(f, filepath.Join(folder, "cloth", "sea.png"), plain(f, color.RGBA{47, 125, 131, 255}))
	write(f, filepath.Join(top, "secret.png"), plain(f, color.RGBA{200, 0, 0, 255}))
	for name, to := range map[string]string{"out": "..", "link.png": "../secret.png", "loop": "loop", "in.png": "cloth/sea.png"} {
		if err := os.Symlink(to, filepath.Join(folder, name)); err != nil {
			f.Fatal(err)
		}
	}
	f.Fuzz(func(t *testing.T, name string) {
		a := In(folder)
		cloth, err := a.Cloth(name)
		switch {
		case err == nil && cloth.Colour.Hex() != "#2f7d83":
			t.Errorf("%q shows %s, which lies elsewhere", name, cloth.Colour.Hex())
		case err != nil && (len(err.Error()) < 20 || strings.Contains(err.Error(), "\n") || strings.Contains(err.Error(), top)):
			t.Errorf("%q is refused with %q", name, err)
		}
		if a.Changed() {
			t.Errorf("%q: nothing changed", name)
		}
		again, known, fault := a.Kept(name)
		if !known || again.Colour != cloth.Colour || (fault == nil) != (err == nil) {
			t.Errorf("%q is kept as %v, %v, %v", name, again.Colour, known, fault)
		}
		IsFileName(name)
	})
}
