//go:build judges

package booklet

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
)

// The README's picture of a pattern is four of its pages as they are: cover, cutting, a block, the layout. A word that is another
// differs by more than another release of the renderer.
func TestReadmeShowsThePattern(t *testing.T) {
	mutool, pdftotext := judges.Program(t, "Debian's mupdf-tools", "mutool"), judges.Program(t, "Debian's poppler-utils", "pdftotext")
	printed, err := render.PDF(pattern(t, sampleText(t, "lanterns")), render.Options{})
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "pattern.pdf")
	if err := os.WriteFile(path, printed.File, 0o600); err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(output(t, pdftotext, "-layout", path, "-"), "\f")
	var shown []image.Image
	for _, words := range []string{"Quilt pattern", "Cutting map for A chalk", "\nStep 1, kite with ", "\nLaying out the blocks\n"} {
		for i, text := range pages {
			if !strings.Contains("\n"+text, words) {
				continue
			}
			file := filepath.Join(folder, strconv.Itoa(i)+".png")
			output(t, mutool, "draw", "-q", "-w", "375", "-h", "485", "-o", file, path, strconv.Itoa(i+1))
			b, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			page, err := png.Decode(bytes.NewReader(b))
			if err != nil {
				t.Fatal(err)
			}
			shown = append(shown, page)
			break
		}
	}
	if len(shown) != 4 {
		t.Fatalf("%d pages are found, want 4", len(shown))
	}
	all := image.NewRGBA(image.Rect(0, 0, 4*375, 485))
	draw.Draw(all, all.Rect, image.White, image.Point{}, draw.Src)
	for i, page := range shown {
		draw.Draw(all, page.Bounds().Add(image.Pt(375*i, 0)), page, image.Point{}, draw.Src)
	}
	golden.Picture(t, "../../../testdata/pictures/pattern.png", all, golden.Slack{StrongShare: 0.00005, MeanLevels: 0.5})
}
