//go:build judges

package booklet

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/internal/templates"
	"eighthturn/samples"
)

// plateWords end the caption of every plate, and stand nowhere else.
var plateWords = regexp.MustCompile(`>100%\.</word>`)

// someMeasured are as many pages of a file as are measured where they are all alike, from its end.
const someMeasured = 2

// squaresOf measures the test squares on the last pages of a PDF that have them: how many pages were measured, at most as many
// as asked for, and what is wrong.
func squaresOf(t *testing.T, path string, most int) (pages int, wrong []string) {
	t.Helper()
	pdftotext := judges.Program(t, "Debian's poppler-utils", "pdftotext")
	for page, boxes := range slices.Backward(strings.Split(output(t, pdftotext, "-bbox", path, "-"), "</page>")) {
		if pages == most {
			break
		}
		if !plateWords.MatchString(boxes) {
			continue
		}
		pages++
		for word, want := range map[string]float64{"inch": 300, "centimeters": 30 / 25.4 * 300} {
			at := middleOf(boxes, word)
			if at == nil && word == "centimeters" {
				at = middleOf(boxes, "cm") // where the words are large
			}
			if w, h := squareAround(t, path, page+1, at); math.Abs(w-want) > 1 || math.Abs(h-want) > 1 {
				wrong = append(wrong, fmt.Sprintf("page %d: the square of %s is %v by %v pixels", page+1, word, w, h))
			}
		}
	}
	return pages, wrong
}

// printedPage is a page for a browser as Chromium prints it on a paper.
func printedPage(t *testing.T, page []byte, paper string) string {
	t.Helper()
	chromium := judges.Program(t, "Debian's chromium", "chromium", "chromium-browser", "google-chrome")
	dir := t.TempDir()
	in, out := filepath.Join(dir, "page.html"), filepath.Join(dir, "page.pdf")
	page = bytes.Replace(page, []byte("</head>"), []byte("<style>@page { size: "+paper+"; }</style></head>"), 1)
	if err := os.WriteFile(in, page, 0o600); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(chromium, "--headless=new", "--no-sandbox", "--disable-gpu", "--user-data-dir="+filepath.Join(dir, "profile"), "--no-pdf-header-footer", "--print-to-pdf="+out, in)
	if said, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	return out
}

// metricPattern is a small pattern in centimeters.
const metricPattern = "units cm\nside 14\nfabric a #ffffff\nfabric b #204050\nblock W web wedges a kites b\nblock P plain piece b\ngrid\n W P\n P W\nborder 3 a\n"

// Templates are as large on paper from the page for a browser as from the PDF: the test squares are true over their outer
// edges, printed on Letter and on A4, of one pattern in inches that is laid for the one and one in centimeters laid for the other.
func TestThePageIsPrintedTrue(t *testing.T) {
	for name, c := range map[string]struct {
		text      string
		laidFor   render.Paper
		printedOn []string
	}{"lanterns": {sampleText(t, "lanterns"), render.Letter(), []string{"letter", "A4"}}, "metric": {metricPattern, render.A4(), []string{"letter"}}} {
		d := Pattern(study(t, c.text, cutting.Options{}), Options{Paper: c.laidFor})
		page, err := render.HTML(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, paper := range c.printedOn {
			printed := printedPage(t, page, paper)
			for _, heading := range parted(t, d, printed) {
				t.Errorf("%s on %s: the heading %q is the last line of a page", name, paper, heading)
			}
			pages, wrong := squaresOf(t, printed, someMeasured)
			if pages == 0 || len(wrong) > 0 {
				t.Errorf("%s, laid for %s, on %s: %d pages have squares; %v", name, c.laidFor.Name, paper, pages, wrong)
			}
		}
		if name != "lanterns" {
			continue
		}
		shrunk := bytes.ReplaceAll(page, []byte(`class="plate true"`), []byte(`class="plate"`))
		shrunk = bytes.ReplaceAll(shrunk, []byte("</h3>"), []byte(`</h3><div style="break-before: page"></div>`))
		printed := printedPage(t, shrunk, "letter")
		if _, wrong := squaresOf(t, printed, someMeasured); len(wrong) == 0 {
			t.Error("templates that are made smaller are not noticed")
		}
		if len(parted(t, d, printed)) == 0 {
			t.Error("headings that are parted from what follows are not noticed")
		}
	}
}

// Templates of a pattern as Markdown are pages at true size beside the text.
func TestTemplatesOfMarkdownAreTrue(t *testing.T) {
	for _, paper := range render.Papers() {
		files, err := render.Markdown(Pattern(study(t, sampleText(t, "lanterns"), cutting.Options{}), Options{Paper: paper}), "pattern", render.Options{Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), render.TrueSizeFile)
		if err := os.WriteFile(path, files[render.TrueSizeFile], 0o600); err != nil {
			t.Fatal(err)
		}
		if pages, wrong := squaresOf(t, path, someMeasured); pages != someMeasured || len(wrong) > 0 {
			t.Errorf("%s: %d pages have squares; %v", paper.Name, pages, wrong)
		}
	}
}

// parted are the headings of a document that end a page of a file, as Poppler reads it.
func parted(t *testing.T, d document.Document, path string) []string {
	t.Helper()
	headings := map[string]bool{}
	for _, s := range d.Print().Sections {
		headings[s.Title] = true
		for _, b := range s.Blocks {
			if h, ok := b.(document.Heading); ok {
				headings[h.Text] = true
			}
		}
	}
	var list []string
	for _, page := range strings.Split(output(t, judges.Program(t, "Debian's poppler-utils", "pdftotext"), "-layout", path, "-"), "\f") {
		lines := strings.Split(strings.TrimSpace(page), "\n")
		if last := strings.TrimSpace(lines[len(lines)-1]); last != "" && headings[last] {
			list = append(list, last)
		}
	}
	return list
}

// bookOf is the templates of a sample by themselves, as a file.
func bookOf(t *testing.T, text string, paper render.Paper) (path string, book *TemplateBook, list []templates.Template) {
	t.Helper()
	top := lay.Top(t, text)
	cuts := cutting.Pieces(top, cutting.Options{})
	book, err := Templates(top, cuts, Options{Name: "Sample", Paper: paper}, true)
	if err != nil {
		t.Fatal(err)
	}
	printed, err := render.PDF(book.Document, render.Options{Paper: paper})
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "templates.pdf")
	if err := os.WriteFile(path, printed.File, 0o600); err != nil {
		t.Fatal(err)
	}
	return path, book, templates.Build(top, cuts)
}

// The squares on every plate of templates by themselves are true, on both papers, and so are those that are too large for one.
func TestSquaresOnEveryPlate(t *testing.T) {
	const huge = "side 40\nfabric a #b5532a\nfabric b #204050\nblock W web wedges a b kites b\nblock F floating wedges a background b\ngrid\n W F\n F W\n"
	for _, paper := range []render.Paper{render.Letter(), render.A4()} {
		for _, text := range []string{sampleText(t, "beacon"), huge} {
			path, book, _ := bookOf(t, text, paper)
			pages, wrong := squaresOf(t, path, someMeasured)
			if pages < 2 || len(wrong) > 0 {
				t.Errorf("%s, %s: %d pages have squares; %v", book.Title, paper.Name, pages, wrong)
			}
			if text == huge && len(book.Tiled) == 0 {
				t.Error("nothing is in parts")
			}
		}
	}
}

// A checker finds no fault in the templates of any sample.
func TestTemplatesAreSound(t *testing.T) {
	qpdf := judges.Program(t, "Debian's qpdf", "qpdf")
	for _, s := range samples.All() {
		path, _, _ := bookOf(t, s.Text, render.Letter())
		if text := output(t, qpdf, "--check", path); !strings.Contains(text, "No syntax or stream encoding errors") {
			t.Errorf("%s: %s", s.Name, text)
		}
	}
}

// traced are the closed outlines that MuPDF finds in a file drawn with a line of a width, in points, y upwards.
func traced(t *testing.T, path, width string) [][]measure.Vec {
	t.Helper()
	type place struct {
		X float64 `xml:"x,attr"`
		Y float64 `xml:"y,attr"`
	}
	out, err := exec.Command(judges.Program(t, "Debian's mupdf-tools", "mutool"), "draw", "-F", "trace", path).Output()
	if err != nil {
		t.Fatal(err)
	}
	var list [][]measure.Vec
	reader := xml.NewDecoder(bytes.NewReader(regexp.MustCompile(`unicode="[^"]*"`).ReplaceAll(out, nil)))
	for {
		token, err := reader.Token()
		if err != nil {
			return list
		}
		e, ok := token.(xml.StartElement)
		if !ok || e.Name.Local != "stroke_path" || attributeOf(e, "linewidth") != width {
			continue
		}
		var path struct {
			Move place   `xml:"moveto"`
			Line []place `xml:"lineto"`
			Ends []place `xml:"closepath"`
		}
		if err := reader.DecodeElement(&path, &e); err != nil {
			t.Fatal(err)
		}
		outline := []measure.Vec{{X: path.Move.X, Y: path.Move.Y}}
		for _, p := range path.Line {
			outline = append(outline, measure.Vec{X: p.X, Y: p.Y})
		}
		if len(path.Ends) == 1 {
			list = append(list, outline)
		}
	}
}

func attributeOf(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// asLarge says whether an outline in points is one in nanometres at true size: all corners as far apart, to a
// five-thousandth of an inch.
func asLarge(points []measure.Vec, cut []measure.Point) bool {
	if len(points) != len(cut) {
		return false
	}
	for i := range points {
		for j := range i {
			got := math.Hypot(points[i].X-points[j].X, points[i].Y-points[j].Y) / 72
			want := math.Hypot(float64(cut[i].X-cut[j].X), float64(cut[i].Y-cut[j].Y)) / float64(measure.Inch)
			if math.Abs(got-want) > 0.0002 {
				return false
			}
		}
	}
	return true
}

// Another program's reading of the pages has every template that fits on one, its corners as far apart as in the template.
func TestCornersAreWhereTheGeometrySays(t *testing.T) {
	for _, s := range samples.All() {
		path, book, list := bookOf(t, s.Text, render.Letter())
		outlines := traced(t, path, "1.4")
		for i := range list {
			tiled := false
			for _, name := range book.Tiled {
				tiled = tiled || name == list[i].Name()
			}
			found := 0
			for _, o := range outlines {
				if asLarge(o, list[i].Cut) {
					found++
				}
			}
			if found == 0 && !tiled {
				t.Errorf("%s: template %s is on no page", s.Name, list[i].Name())
			}
		}
		larger := append([]measure.Point(nil), list[0].Cut...)
		larger[0].X += measure.Inch / 1000
		for _, o := range outlines {
			if asLarge(o, larger) {
				t.Errorf("%s: a thousandth of an inch is not noticed", s.Name)
			}
		}
	}
}
