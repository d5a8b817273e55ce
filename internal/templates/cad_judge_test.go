//go:build judges

package templates

import (
	"bytes"
	"image"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// squares is a top whose only template finishes as a square of an inch.
const squares = "side 1\nfabric a #ffffff\nfabric b #204050\nblock P plain piece b\nblock Q plain piece a\ngrid\n P Q\n Q P\n"

// installed is the path of a program; a test is skipped where there is none.
func installed(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skip(name + " is not installed: it does not judge")
	}
	return path
}

// inkBounds is how far the pixels of a color reach, in pixels: wide and high, the breadth of the line with it.
func inkBounds(m image.Image, ink func(r, g, b uint32) bool) (wide, high int) {
	low, far := m.Bounds().Max, m.Bounds().Min.Sub(image.Pt(1, 1))
	for y := m.Bounds().Min.Y; y < m.Bounds().Max.Y; y++ {
		for x := m.Bounds().Min.X; x < m.Bounds().Max.X; x++ {
			if r, g, b, a := m.At(x, y).RGBA(); a > 0x8000 && ink(r>>8, g>>8, b>>8) {
				low, far = image.Pt(min(low.X, x), min(low.Y, y)), image.Pt(max(far.X, x), max(far.Y, y))
			}
		}
	}
	return far.X - low.X + 1, far.Y - low.Y + 1
}

func blue(r, g, b uint32) bool { return b > 0xc0 && r < 0x80 && g < 0x80 }

// drawnSquares are the squares as a drawing, larger by a factor.
func drawnSquares(t *testing.T, larger string) string {
	t.Helper()
	top := lay.Top(t, strings.Replace(squares, "side 1\n", "side "+larger+"\n", 1))
	var b bytes.Buffer
	if err := DXF(&b, top, usual(top)); err != nil {
		t.Fatal(err)
	}
	return saved(t, "squares.dxf", b.Bytes())
}

// asInch says whether a side is 300 pixels, but for three: the line's own breadth and what a program rounds.
func asInch(pixels int) bool { return math.Abs(float64(pixels)-300) <= 3 }

// TestLibreCADPrintsAnInch: the seam line of a square of an inch is 300 pixels in the PDF that LibreCAD makes of the drawing, at 300 an
// inch, and of one that is a sixteenth larger 319, each within two and the line's breadth.
func TestLibreCADPrintsAnInch(t *testing.T) {
	cad, pdftoppm := installed(t, "librecad"), program(t, "pdftoppm", "Debian's poppler-utils")
	for side, want := range map[string]float64{"1": 300, "1 1/16": 318.75} {
		drawing := drawnSquares(t, side)
		c := exec.Command(cad, "dxf2pdf", filepath.Base(drawing))
		c.Dir = filepath.Dir(drawing) // where it puts the PDF
		c.Env = append(os.Environ(), "QT_QPA_PLATFORM=offscreen", "HOME="+t.TempDir(), "XDG_RUNTIME_DIR="+t.TempDir())
		if said, err := c.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		picture := filepath.Join(t.TempDir(), "page")
		output(t, pdftoppm, "-r", "300", "-png", "-singlefile", strings.TrimSuffix(drawing, ".dxf")+".pdf", picture)
		file, err := os.ReadFile(picture + ".png")
		if err != nil {
			t.Fatal(err)
		}
		wide, high := inkBounds(decoded(t, file), blue)
		t.Logf("side %s: %d by %d pixels", side, wide, high)
		if math.Abs(float64(wide)-1-want) > 2 || math.Abs(float64(high)-1-want) > 2 {
			t.Errorf("side %s: %d by %d pixels, expected %g", side, wide, high, want)
		}
	}
}

// inkscapeImport is the program by which Inkscape opens drawings, in Debian's package.
const inkscapeImport = "/usr/share/inkscape/extensions/dxf_input.py"

// TestInkscapeOpensAnInch: Inkscape exports the SVG template of a square of an inch, its seam line 300 pixels at 300 an inch; and
// opens the drawing with the seam line an inch of 96 units, where it reads the unit from the file.
func TestInkscapeOpensAnInch(t *testing.T) {
	inkscape := installed(t, "inkscape")
	top := lay.Top(t, squares)
	var svg bytes.Buffer
	if err := usual(top)[0].SVG(&svg, top); err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]bool{svg.String(): true, strings.Replace(svg.String(), `width="1.7500in" height="1.7500in"`, `width="1.85in" height="1.85in"`, 1): false} {
		out := filepath.Join(t.TempDir(), "square.png")
		if said, err := exec.Command(inkscape, saved(t, "square.svg", []byte(text)), "--export-type=png", "--export-dpi=300", "--export-background=#ffffff", "--export-filename="+out).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		file, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		wide, high := inkBounds(decoded(t, file), blue)
		t.Logf("SVG: %d by %d pixels", wide, high)
		if (asInch(wide) && asInch(high)) != want {
			t.Errorf("SVG: %d by %d pixels, expected 300: %v", wide, high, want)
		}
	}
	if _, err := os.Stat(inkscapeImport); err != nil {
		t.Skip("Inkscape's extensions are not installed: what it makes of drawings is not judged")
	}
	for side, want := range map[string]bool{"1": true, "1 1/16": false} {
		opened, err := exec.Command("/usr/bin/python3", inkscapeImport, "--scalemethod=file", drawnSquares(t, side)).Output()
		if err != nil {
			t.Skip("Inkscape's import lacks modules of Python: " + err.Error())
		}
		sew := regexp.MustCompile(`inkscape:label="SEW"><path d="M ([\d.]+),[\d.]+ L ([\d.]+),`).FindSubmatch(opened)
		if sew == nil {
			t.Fatalf("no seam line: %.2000s", opened)
		}
		from, _ := strconv.ParseFloat(string(sew[1]), 64)
		to, _ := strconv.ParseFloat(string(sew[2]), 64)
		t.Logf("DXF, side %s: %g units", side, to-from)
		if (math.Abs(to-from-96) < 0.01) != want {
			t.Errorf("DXF, side %s: %g units, expected 96: %v", side, to-from, want)
		}
	}
}
