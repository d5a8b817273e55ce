package preview

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// pictured is a layout with a photo beside it, and one in a folder below.
const pictured = `title   "Pictured"
strip   4
fabric  sea   swatch "sea.png"
fabric  foam  swatch "cloth/foam.png" across 8
block   A  web  wedges sea foam  kites foam
grid
  A A
  A A
`

// photo is a PNG file of one colour.
func photo(t testing.TB, c color.RGBA) string {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, 40, 40))
	for i := range 40 * 40 {
		m.SetRGBA(i%40, i/40, c)
	}
	var b bytes.Buffer
	must(t, png.Encode(&b, m))
	return b.String()
}

// TestPhotosAreFollowed: a photo that changes, goes and comes is shown without a save of the
// layout, in the colours of the photo, and a photo that nothing names any longer is not.
func TestPhotosAreFollowed(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	at := func(name string) string { return filepath.Join(folder, name) }
	must(t, os.Mkdir(at("cloth"), 0o755))
	put(t, at("sea.png"), photo(t, color.RGBA{20, 60, 120, 255}))
	put(t, at("cloth/foam.png"), photo(t, color.RGBA{220, 230, 225, 255}))
	put(t, at("quilt.quilt"), pictured)
	r := startOn(t, at("quilt.quilt"), Options{})
	colours := func(s shown) string {
		var list []string
		for _, f := range s.picture.top.Fabrics {
			list = append(list, f.Colour.Hex())
		}
		return strings.Join(list, " ")
	}
	if got := r.next(); got.errors != 0 || colours(got) != "#143c78 #dce6e1" {
		t.Fatalf("at first: %s", got.line(got.timings))
	}
	put(t, at("sea.png"), photo(t, color.RGBA{120, 20, 40, 255})+"\x00")
	if got := r.next(); colours(got) != "#781428 #dce6e1" || got.picture.top.Fabrics[0].Cloth == nil {
		t.Errorf("a photo changed: %s", colours(got))
	}
	must(t, os.Remove(at("cloth/foam.png")))
	if got := r.next(); got.errors == 0 || !strings.Contains(got.faults[0].Text, "foam.png") {
		t.Errorf("a photo went: %s", got.line(got.timings))
	}
	put(t, at("cloth/foam.png"), photo(t, color.RGBA{250, 240, 200, 255}))
	if got := r.next(); got.errors != 0 || colours(got) != "#781428 #faf0c8" {
		t.Errorf("a photo came: %s", got.line(got.timings))
	}
	put(t, at("quilt.quilt"), strings.Replace(pictured, `swatch "sea.png"`, "#102030", 1))
	if got := r.next(); colours(got) != "#102030 #faf0c8" {
		t.Errorf("a colour in place of a photo: %s", colours(got))
	}
	must(t, os.Remove(at("sea.png")))
	r.nothing(3 * pollEvery)
}

// TestPhotosElsewhereAreNotRead: nothing outside the layout's folder is ever opened.
func TestPhotosElsewhereAreNotRead(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	must(t, os.Mkdir(filepath.Join(folder, "in"), 0o755))
	put(t, filepath.Join(folder, "sea.png"), photo(t, color.RGBA{20, 60, 120, 255}))
	must(t, os.Symlink(filepath.Join(folder, "sea.png"), filepath.Join(folder, "in", "sea.png")))
	file := filepath.Join(folder, "in", "quilt.quilt")
	put(t, file, strings.Replace(pictured, `swatch "cloth/foam.png" across 8`, "#102030", 1))
	r := startOn(t, file, Options{})
	if got := r.next(); got.errors == 0 || got.picture != nil {
		t.Errorf("shown: %s", got.line(got.timings))
	}
}
