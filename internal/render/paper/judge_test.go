package paper

import (
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Judges from outside: MuPDF, Poppler, qpdf, librsvg, ImageMagick.

// absent skips a test for want of a judge, or fails it where judges are required.
func absent(t testing.TB, message string) {
	t.Helper()
	if os.Getenv("EIGHTHTURN_JUDGES") == "required" {
		t.Fatal(message)
	}
	t.Skip(message)
}

// program is the path of a program that judges; what is how to have it.
func program(t testing.TB, name, what string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		absent(t, name+" is not here: "+what)
	}
	return path
}

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
	mutool := program(t, "mutool", "Debian's mupdf-tools")
	in := saved(t, "in.pdf", pdf)
	out := in + ".png"
	output(t, mutool, "draw", "-q", "-r", strconv.FormatFloat(perInch, 'g', -1, 64), "-o", out, in, strconv.Itoa(page))
	file, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return decoded(t, file)
}
