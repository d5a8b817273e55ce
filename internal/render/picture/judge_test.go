//go:build judges

package picture

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"image"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/palettes"
	"eighthturn/samples"
	"eighthturn/svgout"
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

func svgAt(t testing.TB, top *quilt.Top, o svgout.Options, size image.Point) image.Image {
	t.Helper()
	convert := judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert")
	var svg, out bytes.Buffer
	if err := svgout.Draw(&svg, top, o); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(convert, "-w", strconv.Itoa(size.X), "-h", strconv.Itoa(size.Y))
	c.Stdin, c.Stdout = &svg, &out
	if err := c.Run(); err != nil {
		t.Fatal(err)
	}
	return decoded(t, out.Bytes())
}

// TestMiddlesAlike: in PNG, PDF and SVG the pixel at the middle of every face has its
// fabric's colour, on every sample in colours, and on one in greys and as other eyes see it.
func TestMiddlesAlike(t *testing.T) {
	for name, top := range tops(t) {
		perInch := 800 / inches(max(top.Outer.Width(), top.Outer.Height()))
		views := []svgout.View{svgout.Colour, svgout.Value, svgout.Deutan}
		if name != samples.All()[0].Name {
			views = views[:1]
		}
		for _, view := range views {
			o := svgout.Options{View: view}
			p := scened(t, top, o)
			colour := func(f int) palettes.Colour { return p.Paints[f].Colour }
			drawn := decoded(t, pngOf(t, p, Frame{Pixels: 800}))
			for kind, m := range map[string]image.Image{
				"PNG": drawn, "PDF": pageAt(t, pdfOf(t, p, Frame{}), 1, perInch), "SVG": svgAt(t, top, o, drawn.Bounds().Size()),
			} {
				wrong, looked := wrongMiddles(top, m, colour)
				if wrong > 0 || looked < len(top.Faces)*9/10 {
					t.Errorf("%s, %s, view %d: %d of %d middles are wrong, of %d faces", name, kind, view, wrong, looked, len(top.Faces))
				}
			}
		}
	}
}

// TestPDFWithoutFault: a checker finds nothing wrong with any kind of picture, its fonts are
// in the file, and the page is not to be scaled.
func TestPDFWithoutFault(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	file := saved(t, "a.pdf", pdfOf(t, scened(t, top, svgout.Options{}), Frame{}))
	if text := output(t, judges.Program(t, "Debian's qpdf", "qpdf"), "--json", "--json-key=qpdf", file); !strings.Contains(text, `"/PrintScaling": "/None"`) {
		t.Error("viewers may scale the page")
	}
	qpdf, fonts := judges.Program(t, "Debian's qpdf", "qpdf"), judges.Program(t, "Debian's poppler-utils", "pdffonts")
	for name, top := range tops(t) {
		for _, o := range []svgout.Options{{Legend: true, SeamLines: svgout.SeamsDrawn}, {View: svgout.Line, Legend: true}} {
			file := saved(t, "a.pdf", pdfOf(t, scened(t, top, o), Frame{Longest: 10 * measure.Inch, Bleed: measure.Inch / 8}))
			if text := output(t, qpdf, "--check", file); !strings.Contains(text, "No syntax or stream encoding errors") {
				t.Errorf("%s: %s", name, text)
			}
			for _, line := range strings.Split(strings.TrimSpace(output(t, fonts, file)), "\n")[2:] {
				if !strings.Contains(line, "CID TrueType") || strings.Fields(line[strings.Index(line, "Identity-H"):])[1] != "yes" {
					t.Errorf("%s: a font is not in the file: %s", name, line)
				}
			}
		}
	}
}

// TestRecordedResolution: another program reads back what a PNG says of itself, and an inch
// of the quilt is as many pixels.
func TestRecordedResolution(t *testing.T) {
	identify := judges.Program(t, "Debian's imagemagick", "identify")
	top := lay.Top(t, "side 1\nfabric red #b5532a\nfabric sea #204050\nblock P plain piece red\nblock Q plain piece sea\ngrid\n P Q\n Q P\n")
	for _, dpi := range []float64{72, 150, 300, 600, 1200} {
		file := saved(t, "a.png", pngOf(t, scened(t, top, svgout.Options{SeamLines: svgout.SeamsLeftOut}), Frame{PerInch: dpi}))
		var width, height int
		var x float64
		text := output(t, identify, "-units", "PixelsPerInch", "-format", "%w %h %x", file)
		if _, err := fmt.Sscanf(text, "%d %d %g", &width, &height, &x); err != nil || math.Abs(x-dpi) > 0.02 || width != int(2*dpi) || height != int(2*dpi) {
			t.Errorf("at %g an inch: %s", dpi, text)
		}
		content, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		m := decoded(t, content)
		if alike(m, 0, 0, int(dpi)-1, 0) && !alike(m, 0, 0, int(dpi), 0) {
			continue
		}
		t.Errorf("at %g an inch the first inch is not as many pixels", dpi)
	}
}

func alike(m image.Image, x, y, u, v int) bool { return m.At(x, y) == m.At(u, v) }

// TestInchOfPDF: an inch of the quilt is 300 pixels where MuPDF draws 300 an inch, to within
// one, and the page is as large as picture, margin and bleed, with the trim where it belongs.
func TestInchOfPDF(t *testing.T) {
	top := lay.Top(t, "side 1\nfabric red #b5532a\nfabric sea #204050\nblock P plain piece red\nblock Q plain piece sea\ngrid\n P Q P\n")
	pdf := pdfOf(t, scened(t, top, svgout.Options{SeamLines: svgout.SeamsLeftOut}), Frame{Margin: measure.Inch / 2, Bleed: measure.Inch / 4})
	m := pageAt(t, pdf, 1, 300)
	if b := m.Bounds(); b.Dx() != 1350 || b.Dy() != 750 {
		t.Errorf("the page is %v", b)
	}
	run, before := 0, m.At(0, 375)
	var runs []int
	for x := range m.Bounds().Dx() {
		if c := m.At(x, 375); c != before {
			if run > 1 { // a pixel of a mixture lies on the border
				runs = append(runs, run)
			}
			run, before = 0, c
		}
		run++
	}
	runs = append(runs, run)
	for i, want := range []int{225, 300, 300, 300, 225} {
		if len(runs) != 5 || runs[i] < want-1 || runs[i] > want+1 {
			t.Fatalf("the page has stretches of %v pixels", runs)
		}
	}
	info := output(t, judges.Program(t, "Debian's poppler-utils", "pdfinfo"), "-box", saved(t, "b.pdf", pdf))
	if !regexp.MustCompile(`TrimBox: +18.00 +18.00 +306.00 +162.00\n`).MatchString(info) {
		t.Errorf("the trim is elsewhere: %s", info)
	}
}

// TestRunsOnAlike: cloth that runs on into the bleed does so in the PDF as in the PNG.
func TestRunsOnAlike(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	p := scened(t, top, svgout.Options{})
	f := Frame{Longest: 10 * measure.Inch, PerInch: 60, Bleed: measure.Inch}
	a, b := decoded(t, pngOf(t, p, f)), pageAt(t, pdfOf(t, p, f), 1, 60)
	unlike, seen := 0, 0
	for y := range min(a.Bounds().Dy(), b.Bounds().Dy()) {
		for x := range min(a.Bounds().Dx(), b.Bounds().Dx()) {
			r, g, c, _ := a.At(x, y).RGBA()
			u, v, w, _ := b.At(x, y).RGBA()
			seen++
			if far(r, u) || far(g, v) || far(c, w) {
				unlike++
			}
		}
	}
	if seen < 400_000 || unlike > seen/50 {
		t.Errorf("%d of %d pixels differ", unlike, seen)
	}
}

func far(a, b uint32) bool { return int(a>>8)-int(b>>8) > 60 || int(b>>8)-int(a>>8) > 60 }

// TestLinesAlike: seam lines, and the line view with its letters, are in PNG and PDF where
// they are in the SVG; letters are of other faces, and edges mixed in another way, so that
// the two differ a little in the mean and nowhere over a broad place.
func TestLinesAlike(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	for _, o := range []svgout.Options{{SeamLines: svgout.SeamsDrawn}, {View: svgout.Line}} {
		p := scened(t, top, o)
		ours := decoded(t, pngOf(t, p, Frame{Pixels: 900}))
		theirs := svgAt(t, top, o, ours.Bounds().Size())
		page := pageAt(t, pdfOf(t, p, Frame{}), 1, 900/inches(max(top.Outer.Width(), top.Outer.Height())))
		for name, m := range map[string]image.Image{"PNG": ours, "PDF": page} {
			if mean := meanDifference(m, theirs); mean > 3 {
				t.Errorf("view %d, %s: the pictures differ by %.2f in the mean", o.View, name, mean)
			}
		}
		if other := (svgout.Options{View: svgout.Value - o.View/2}); meanDifference(ours, svgAt(t, top, other, ours.Bounds().Size())) < 3 {
			t.Errorf("view %d: another view was not noticed", o.View)
		}
	}
}

// meanDifference is by how much the greens of two pictures differ in the mean, in places of
// five by five pixels.
func meanDifference(a, b image.Image) float64 {
	const place = 5
	sum, count := 0.0, 0
	for y := 0; y+place <= min(a.Bounds().Dy(), b.Bounds().Dy()); y += place {
		for x := 0; x+place <= min(a.Bounds().Dx(), b.Bounds().Dx()); x += place {
			d := 0.0
			for i := range place * place {
				_, g, _, _ := a.At(x+i%place, y+i/place).RGBA()
				_, h, _, _ := b.At(x+i%place, y+i/place).RGBA()
				d += float64(g>>8) - float64(h>>8)
			}
			sum, count = sum+math.Abs(d)/(place*place), count+1
		}
	}
	return sum / float64(count)
}

// TestNothingShowsAtSeams: where all cloth is black, no light of the page shows at any seam of
// the PDF as MuPDF draws it at several zooms; it does where nothing lies beneath the seams.
func TestNothingShowsAtSeams(t *testing.T) {
	lightest := func(s *svgout.Scene, perInch float64) (most uint32) {
		for f := range s.Paints {
			s.Paints[f].Colour = palettes.Colour{}
		}
		m := pageAt(t, pdfOf(t, s, Frame{}), 1, perInch)
		for y := 2; y < m.Bounds().Dy()-2; y++ {
			for x := 2; x < m.Bounds().Dx()-2; x++ {
				_, g, _, _ := m.At(x, y).RGBA()
				most = max(most, g>>8)
			}
		}
		return most
	}
	top := lay.Top(t, samples.All()[0].Text)
	for _, perInch := range []float64{4, 7.3, 12} {
		if got := lightest(scened(t, top, svgout.Options{ByFabric: true, SeamLines: svgout.SeamsLeftOut}), perInch); got > 10 {
			t.Errorf("at %g an inch a pixel is as light as %d of 255", perInch, got)
		}
		bare := scened(t, top, svgout.Options{ByFabric: true, SeamLines: svgout.SeamsLeftOut})
		bare.Layers = slices.DeleteFunc(bare.Layers, func(l svgout.Layer) bool { return l.Part == svgout.Beneath })
		if got := lightest(bare, perInch); got < 40 {
			t.Errorf("at %g an inch the lightest pixel is %d of 255 without anything beneath, so this judge sees nothing", perInch, got)
		}
	}
}
