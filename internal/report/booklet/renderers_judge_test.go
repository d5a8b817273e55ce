//go:build judges

package booklet

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
)

// sheet is a page of a file, to be drawn.
type sheet struct {
	PDF     string  `json:"pdf"`
	Page    int     `json:"page"` // from 1
	PerInch float64 `json:"perInch"`
	PGM     string  `json:"pgm"`
}

// grayRead is a picture in PGM's binary form, with nothing but three numbers before its bytes.
func grayRead(t *testing.T, path string) image.Image {
	t.Helper()
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var kind string
	var wide, high, most int
	if _, err := fmt.Sscan(string(file[:min(len(file), 40)]), &kind, &wide, &high, &most); err != nil || kind != "P5" || most != 255 || len(file) < wide*high {
		t.Fatalf("%s is no gray picture: %v", path, err)
	}
	return &image.Gray{Pix: file[len(file)-wide*high:], Stride: wide, Rect: image.Rect(0, 0, wide, high)}
}

// drawnBy are programs that draw pages and have no code in common: Poppler, MuPDF and PDFium, which Chromium shows files with.
func drawnBy() map[string]func(t *testing.T, list []sheet) {
	each := func(t *testing.T, list []sheet, program string, arguments func(s sheet, page, perInch string) []string) {
		for _, s := range list {
			output(t, program, arguments(s, strconv.Itoa(s.Page), strconv.FormatFloat(s.PerInch, 'g', -1, 64))...)
		}
	}
	return map[string]func(t *testing.T, list []sheet){
		"Poppler": func(t *testing.T, list []sheet) {
			each(t, list, judges.Program(t, "Debian's poppler-utils", "pdftoppm"), func(s sheet, page, perInch string) []string {
				return []string{"-f", page, "-l", page, "-r", perInch, "-gray", "-singlefile", s.PDF, strings.TrimSuffix(s.PGM, ".pgm")}
			})
		},
		"MuPDF": func(t *testing.T, list []sheet) {
			each(t, list, judges.Program(t, "Debian's mupdf-tools", "mutool"), func(s sheet, page, perInch string) []string {
				return []string{"draw", "-q", "-r", perInch, "-c", "gray", "-F", "pgm", "-o", s.PGM, s.PDF, page}
			})
		},
		"PDFium": func(t *testing.T, list []sheet) {
			folder := filepath.Join("..", "..", "..", "testdata", "pdf")
			if _, err := os.Stat(filepath.Join(folder, "node_modules", "@hyzyla")); err != nil {
				t.Fatal("PDFium is not here: npm ci in testdata/pdf")
			}
			jobs, err := json.Marshal(list)
			if err != nil {
				t.Fatal(err)
			}
			c := exec.Command(judges.Program(t, "Debian's nodejs", "node"), "pdfium.mjs")
			c.Dir, c.Stdin = folder, bytes.NewReader(jobs)
			if said, err := c.CombinedOutput(); err != nil {
				t.Fatalf("%v: %s", err, said)
			}
		},
	}
}

// edgesBeside are how many pixels lie between the edges of a square left and right, and above and below, of a place in it, as far as a
// quarter of an inch from the word there; -1 where one is not seen.
func edgesBeside(picture image.Image, at image.Point, perInch float64) (across, down int) {
	off, reach := int(perInch/4), int(3*perInch/2)
	seen := func(from, step image.Point) int {
		for n := range reach {
			p := from.Add(step.Mul(n))
			if p.In(picture.Bounds()) && color.GrayModel.Convert(picture.At(p.X, p.Y)).(color.Gray).Y < 224 {
				return n
			}
		}
		return -1
	}
	between := func(a, b, apart int) int {
		if a < 0 || b < 0 {
			return -1
		}
		return a + b + apart
	}
	above, below := at.Sub(image.Pt(0, off)), at.Add(image.Pt(0, off))
	return between(seen(above, image.Pt(-1, 0)), seen(above, image.Pt(1, 0)), 0), between(seen(above, image.Pt(0, -1)), seen(below, image.Pt(0, 1)), 2*off)
}

// Test squares are seen whole on a screen, where a pixel is broader than their lines, by all three programs.
func TestSquaresAreSeenWhole(t *testing.T) {
	t.Parallel()
	path, _, _ := bookOf(t, sampleText(t, "lanterns"), render.Letter())
	pages := strings.SplitAfter(output(t, judges.Program(t, "Debian's poppler-utils", "pdftotext"), "-bbox", path, "-"), "</page>")
	last := len(pages) - 1 // behind the last page the list ends
	for name, draw := range drawnBy() {
		folder := t.TempDir()
		var list []sheet
		for _, perInch := range []float64{38, 44, 50, 57, 63, 72} {
			list = append(list, sheet{path, last, perInch, filepath.Join(folder, fmt.Sprint(perInch, ".pgm"))})
		}
		draw(t, list)
		for _, s := range list {
			picture := grayRead(t, s.PGM)
			for word, inches := range map[string]float64{"inch": 1, "centimeters": 30 / 25.4} {
				at := middleOf(pages[last-1], word)
				across, down := edgesBeside(picture, image.Pt(int(float64(at[0])*s.PerInch/300), int(float64(at[1])*s.PerInch/300)), s.PerInch)
				want := inches * s.PerInch // over the outer edges
				if wrong := func(n int) bool { return float64(n) < want-4 || float64(n) > want+1 }; wrong(across) || wrong(down) {
					t.Errorf("%s, %g an inch: the edges of the square of %s are %d and %d pixels apart, expected %.1f", name, s.PerInch, word, across, down, want)
				}
			}
		}
	}
}

// Three programs draw the square of an inch and that of three centimeters at their size, on the templates' last page; drawn a hundredth
// smaller each is wrong.
func TestThreeRenderersDrawAnInch(t *testing.T) {
	t.Parallel()
	path, _, _ := bookOf(t, sampleText(t, "lanterns"), render.Letter())
	pages := strings.SplitAfter(output(t, judges.Program(t, "Debian's poppler-utils", "pdftotext"), "-bbox", path, "-"), "</page>")
	last := len(pages) - 1 // behind the last page the list ends
	for name, draw := range drawnBy() {
		folder := t.TempDir()
		list := []sheet{{path, last, 300, filepath.Join(folder, "true.pgm")}, {path, last, 297, filepath.Join(folder, "smaller.pgm")}}
		draw(t, list)
		for _, s := range list {
			picture := grayRead(t, s.PGM)
			for word, want := range map[string]float64{"inch": 300, "centimeters": 30 / 25.4 * 300} {
				at := middleOf(pages[last-1], word)
				if at == nil {
					t.Fatalf("no square on page %d says %q", last, word)
				}
				w, h := squareIn(picture, image.Pt(int(float64(at[0])*s.PerInch/300), int(float64(at[1])*s.PerInch/300)))
				t.Logf("%s, %g an inch: the square of %s is %g by %g pixels", name, s.PerInch, word, w, h)
				if (math.Abs(w-want) <= 1 && math.Abs(h-want) <= 1) != (s.PerInch == 300) {
					t.Errorf("%s: the square of %s is %g by %g pixels at %g an inch, expected %.1f at 300", name, word, w, h, s.PerInch, want)
				}
			}
		}
	}
}
