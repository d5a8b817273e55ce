//go:build judges

package report

import (
	"os"
	"os/exec"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"eighthturn/internal/diagram"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// installedFace is the face that programs set words in here where the Go fonts are asked for: fontconfig's answer, as librsvg and Inkscape ask it.
func installedFace(t *testing.T, style string) *sfnt.Font {
	t.Helper()
	match := judges.Program(t, "Debian's fontconfig", "fc-match")
	path, err := exec.Command(match, "--format=%{file}", "Go,Helvetica,Arial,sans-serif"+style).Output()
	if err != nil {
		t.Fatal(err)
	}
	file, err := os.ReadFile(string(path))
	if err != nil {
		t.Fatal(err)
	}
	face, err := sfnt.Parse(file)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	t.Logf("%s", path)
	return face
}

// faceWidth is how wide a text stands in a face of a size; false where the face lacks a sign.
func faceWidth(face *sfnt.Font, text string, size float64) (float64, bool) {
	const unit = 2048
	var buffer sfnt.Buffer
	sum := 0.0
	for _, r := range text {
		index, err := face.GlyphIndex(&buffer, r)
		if err != nil || index == 0 {
			return 0, false
		}
		wide, err := face.GlyphAdvance(&buffer, index, fixed.I(unit), font.HintingNone)
		if err != nil {
			return 0, false
		}
		sum += float64(wide) / 64 / unit
	}
	return sum * size, true
}

// TestWordsFitInTheFaceThatIsHere: no words of the samples' maps and pictures are wider in the installed face than the room that is left for
// them, and most would be wider than in the Go fonts.
func TestWordsFitInTheFaceThatIsHere(t *testing.T) {
	faces := map[bool]*sfnt.Font{false: installedFace(t, ""), true: installedFace(t, ":bold")}
	words, wide := 0, 0
	for _, n := range usualPlans()[:len(samples.All())] {
		for _, f := range filed(n.Plans) {
			for any := range 2 {
				for _, i := range diagram.Place(f, diagram.Options{AnyFace: any == 1}).Items {
					l := i.Label
					if l == nil || strings.TrimSpace(l.Text) == "" {
						continue
					}
					is, has := faceWidth(faces[l.Bold], l.Text, l.Size)
					switch {
					case !has || any == 0 && is <= l.Width:
					case any == 0:
						wide++
					case is > l.Width:
						t.Errorf("%s: %q is %.1f points wide, has room for %.1f", n.name, l.Text, is, l.Width)
					default:
						words++
					}
				}
			}
		}
	}
	if t.Logf("%d words, %d of them wider than in the Go fonts", words, wide); words == 0 {
		t.Error("no words are measured")
	}
}
