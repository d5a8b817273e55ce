//go:build judges

package booklet

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/samples"
)

func output(t testing.TB, name string, arguments ...string) string {
	t.Helper()
	out, err := exec.Command(name, arguments...).CombinedOutput()
	if err != nil {
		t.Errorf("%s: %v\n%s", filepath.Base(name), err, out)
	}
	return string(out)
}

// form is a size of page and of letters.
type form struct {
	name string
	render.Options
}

func forms() []form {
	var list []form
	for _, p := range render.Papers() {
		list = append(list, form{p.Name, render.Options{Paper: p}})
	}
	return append(list, form{"large print", render.Options{Paper: render.Letter(), Large: true}})
}

// unspaced is a text without its blanks: where one stands depends on how a program reads a page.
func unspaced(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, text)
}

// spoken are the lengths and numbers of a cutting plan as the page has them, with true fractions, as Unicode spells those out.
func spoken(r Reports) []string {
	var list []string
	say := func(text string) { list = append(list, strings.ReplaceAll(text, "/", "⁄")) }
	for i := range r.Cuts.Fabrics {
		f := &r.Cuts.Fabrics[i]
		say(r.Cuts.Units.Shop(f.Purchase.Buy))
		for _, s := range f.AsCut() {
			say(strconv.Itoa(s.Times) + " " + r.Cuts.Units.Nearest(s.WidthCut)) // a row of the table of strips
		}
		for _, n := range f.Lines {
			say(strconv.Itoa(r.Cuts.Lines[n].Pieces))
			say(r.Cuts.Units.Number(r.Cuts.Lines[n].Piece.AcrossCut))
		}
	}
	for i := range r.Cuts.Sets {
		for _, band := range r.Cuts.Sets[i].Bands {
			say(r.Cuts.Units.Nearest(band.WidthCut))
		}
	}
	return list
}

func TestTheFileIsSound(t *testing.T) {
	t.Parallel()
	qpdf := judges.Program(t, "Debian's qpdf", "qpdf")
	pdffonts, pdftotext := judges.Program(t, "Debian's poppler-utils", "pdffonts"), judges.Program(t, "Debian's poppler-utils", "pdftotext")
	embedded := regexp.MustCompile(`Identity-H +yes yes yes`)
	for i, s := range samples.All() {
		r := study(t, s.Text, cutting.Options{})
		for n, f := range forms() {
			if f.Large && i%3 != 0 || !f.Large && (i+n)%2 != 0 {
				continue
			}
			printed, err := typeset(t, s.Text, f.Options)
			if err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(t.TempDir(), "pattern.pdf")
			if err := os.WriteFile(path, printed.File, 0o600); err != nil {
				t.Fatal(err)
			}
			if out := output(t, qpdf, "--check", path); !strings.Contains(out, "No syntax or stream encoding errors") {
				t.Errorf("%s, %s: %s", s.Name, f.name, out)
			}
			for _, line := range strings.Split(strings.TrimSpace(output(t, pdffonts, path)), "\n")[2:] {
				if !embedded.MatchString(line) {
					t.Errorf("%s, %s: a font is not embedded: %s", s.Name, f.name, line)
				}
			}
			text := unspaced(norm.NFKC.String(output(t, pdftotext, "-raw", "-enc", "UTF-8", path, "-")))
			for _, want := range spoken(r) {
				if !strings.Contains(text, unspaced(norm.NFKC.String(want))) {
					t.Errorf("%s, %s: %q is not found in the file", s.Name, f.name, want)
				}
			}
			for _, wrong := range outside(output(t, pdftotext, "-bbox", path, "-"), f.Options) {
				t.Errorf("%s, %s: %s", s.Name, f.name, wrong)
			}
		}
	}
}

var (
	wordBox = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">(.*)</word>`)
)

// outside are words that reach beyond the margins, as another program finds them. The boxes of words are as high as their
// font, which may be a little more than the letters.
func outside(boxes string, o render.Options) []string {
	const slack = 3.5
	inch := float64(measure.Inch)
	m, w, h := float64(o.Paper.Margin)/inch*72, float64(o.Paper.Width)/inch*72, float64(o.Paper.Height)/inch*72
	var wrong []string
	for _, b := range wordBox.FindAllStringSubmatch(boxes, -1) {
		var at [4]float64
		for i := range at {
			at[i], _ = strconv.ParseFloat(b[i+1], 64)
		}
		if at[0] < m-slack || at[1] < m-slack || at[2] > w-m+slack || at[3] > h-m+slack {
			wrong = append(wrong, "the word "+b[5]+" stands outside the margins")
		}
	}
	return wrong
}

func TestOutsideCatches(t *testing.T) {
	o := render.Options{Paper: render.Letter()}
	if outside(`<word xMin="20.0" yMin="100" xMax="60" yMax="110">far</word>`, o) == nil || outside(`<word xMin="100" yMin="100" xMax="160" yMax="110">in</word>`, o) != nil {
		t.Error("a word beyond the margin is not told from one within")
	}
}

// The square of an inch on a page of templates is 300 pixels wide and high at 300 dots an inch, over the outer edges of its
// lines, as another program draws it.
func TestTheTestSquareIsTrue(t *testing.T) {
	t.Parallel()
	lanterns := sampleText(t, "lanterns")
	for _, f := range forms() {
		printed, err := typeset(t, lanterns, f.Options)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "pattern.pdf")
		if err := os.WriteFile(path, printed.File, 0o600); err != nil {
			t.Fatal(err)
		}
		if plates, wrong := squaresOf(t, path, printed.Pages); plates < 2 || len(wrong) > 0 {
			t.Errorf("%s: %d pages of templates; %v", f.name, plates, wrong)
		}
	}
}

// middleOf is the middle of a word on a page at 300 dots an inch, below its letters; nil if it is not there.
func middleOf(boxes, word string) []int {
	list := wordBox.FindAllStringSubmatch(boxes, -1)
	slices.Reverse(list)
	for _, b := range list {
		if b[5] == word {
			x, _ := strconv.ParseFloat(b[1], 64)
			y, _ := strconv.ParseFloat(b[4], 64)
			return []int{int(x * 300 / 72), int(y*300/72) + 12}
		}
	}
	return nil
}

// squareAround is how wide and high a square is that surrounds a place of a page, in pixels at 300 an inch as Poppler draws
// it, over the outer edges of its lines.
func squareAround(t *testing.T, path string, page int, at []int) (w, h float64) {
	if at == nil {
		return 0, 0
	}
	window := filepath.Join(t.TempDir(), "window")
	n, left, top := strconv.Itoa(page), max(at[0]-squareReach, 0), max(at[1]-squareReach, 0)
	output(t, judges.Program(t, "Debian's poppler-utils", "pdftoppm"), "-f", n, "-l", n, "-r", "300", "-png", "-gray", "-singlefile",
		"-x", strconv.Itoa(left), "-y", strconv.Itoa(top), "-W", strconv.Itoa(2*squareReach), "-H", strconv.Itoa(2*squareReach), path, window)
	file, err := os.ReadFile(window + ".png")
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return squareIn(picture, image.Pt(at[0]-left, at[1]-top))
}

// squareReach is how far from its middle a square is looked for, in pixels.
const squareReach = 420

// squareIn is how wide and high a square is that surrounds a place of a picture, in pixels over the outer edges of its lines.
func squareIn(picture image.Image, at image.Point) (w, h float64) {
	dark := func(x, y int) bool {
		return image.Pt(x, y).In(picture.Bounds()) && color.GrayModel.Convert(picture.At(x, y)).(color.Gray).Y < 128
	}
	line := func(dx, dy int) float64 {
		for n := range squareReach {
			if dark(at.X+n*dx, at.Y+n*dy) {
				end := n
				for dark(at.X+end*dx, at.Y+end*dy) {
					end++
				}
				return float64(end - 1)
			}
		}
		return 1e9
	}
	return line(1, 0) + line(-1, 0) + 1, line(0, 1) + line(0, -1) + 1
}

var (
	htmlError = regexp.MustCompile(`(?m)^.*: HTML parser error : (.*)$`)
	newTag    = regexp.MustCompile(`^Tag (?:main|header|footer|nav|section|aside|figure|figcaption|svg|image|title|desc|defs|pattern|path|text|g|rect|tspan|clipPath|circle|line|polygon|polyline) invalid$`)
)

// illFormed is what another parser finds wrong with a page, but for elements that it does not know.
func illFormed(xmllint, path string) []string {
	out, _ := exec.Command(xmllint, "--html", "--noout", "--memory", path).CombinedOutput() // it fails for each of those
	var wrong []string
	for _, m := range htmlError.FindAllStringSubmatch(string(out), -1) {
		if !newTag.MatchString(m[1]) {
			wrong = append(wrong, m[1])
		}
	}
	return wrong
}

func TestIllFormedCatches(t *testing.T) {
	path := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(path, []byte("<!DOCTYPE html>\n<html><body><main><p>one <b>two</p></main></body></html>"), 0o600); err != nil {
		t.Fatal(err)
	}
	if illFormed(judges.Program(t, "Debian's libxml2-utils", "xmllint"), path) == nil {
		t.Error("an element that is not closed is not noticed")
	}
}

// The page is well-formed by another parser, which knows no element that came after HTML 4.
func TestThePageIsWellFormed(t *testing.T) {
	t.Parallel()
	xmllint := judges.Program(t, "Debian's libxml2-utils", "xmllint")
	for _, s := range samples.All() {
		page, err := render.HTML(pattern(t, s.Text))
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "page.html")
		if err := os.WriteFile(path, page, 0o600); err != nil {
			t.Fatal(err)
		}
		for _, wrong := range illFormed(xmllint, path) {
			t.Errorf("%s: %s", s.Name, wrong)
		}
	}
}
