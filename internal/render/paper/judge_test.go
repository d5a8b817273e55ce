//go:build judges

package paper

import (
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// Judges from outside: MuPDF, Poppler, qpdf, librsvg, ImageMagick.

// output is what a program says, which must end well.
func output(t testing.TB, name string, arguments ...string) string {
	t.Helper()
	out, err := exec.Command(name, arguments...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", filepath.Base(name), strings.Join(arguments, " "), err, out)
	}
	return string(out)
}

// saved is a file of a test's.
func saved(t testing.TB, name string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// pageAt is a page of a PDF as MuPDF draws it.
func pageAt(t testing.TB, pdf []byte, page int, perInch float64) image.Image {
	t.Helper()
	mutool := judges.Program(t, "Debian's mupdf-tools", "mutool")
	in := saved(t, "in.pdf", pdf)
	out := in + ".png"
	output(t, mutool, "draw", "-q", "-r", strconv.FormatFloat(perInch, 'g', -1, 64), "-o", out, in, strconv.Itoa(page))
	file, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return decoded(t, file)
}
