//go:build judges

package paper

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
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

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

func templatesOf(t testing.TB, top *quilt.Top, o TemplateOptions) ([]byte, *Printed) {
	t.Helper()
	var b bytes.Buffer
	made, err := TemplatesPDF(&b, top, piecesOf(top), o)
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes(), made
}

// popplerFoot is the foot of a page of a PDF as Poppler draws it, 300 an inch, in greys.
func popplerFoot(t testing.TB, file string, page int, paper Size) image.Image {
	t.Helper()
	toppm := judges.Program(t, "Debian's poppler-utils", "pdftoppm")
	out := filepath.Join(t.TempDir(), "page")
	output(t, toppm, "-r", "300", "-gray", "-png", "-singlefile", "-y", strconv.Itoa(int(paper.points().y/72*300)-600), "-H", "600", "-W", "1200", "-f", strconv.Itoa(page), "-l", strconv.Itoa(page), file, out)
	content, err := os.ReadFile(out + ".png")
	if err != nil {
		t.Fatal(err)
	}
	return decoded(t, content)
}

// squareAt is the first square of dark lines that a way from the left along a row meets: how
// many pixels it is wide and high over its outer edges.
func squareAt(m image.Image, from, row int) (left, wide, high int) {
	dark := func(x, y int) bool { r, _, _, _ := m.At(x, y).RGBA(); return r < 0x8000 }
	x := from
	for ; x < m.Bounds().Dx() && !dark(x, row); x++ {
	}
	up, down := row, row
	for ; dark(x+1, up-1); up-- {
	}
	for ; dark(x+1, down+1); down++ {
	}
	right := x
	for ; dark(right+1, up+1); right++ {
	}
	return x, right - x + 1, down - up + 1
}

// TestSquaresOnEveryPage: the squares to be measured are 300 pixels and 354 (3 cm) in
// Poppler's page at 300 an inch, to within one, on every page and on both papers; on every
// page stands that it is to be printed at 100 %.
func TestSquaresOnEveryPage(t *testing.T) {
	toText := judges.Program(t, "Debian's poppler-utils", "pdftotext")
	top := laid(t, samples.All()[0].Text)
	for _, paper := range []Size{Letter, A4} {
		pdf, made := templatesOf(t, top, TemplateOptions{Paper: paper, Foundations: true})
		file := saved(t, "t.pdf", pdf)
		if text := output(t, toText, file, "-"); strings.Count(text, "Print at 100 %.") != made.Pages {
			t.Errorf("not every page says how to print it: %s", text)
		}
		for page := 1; page <= made.Pages; page++ {
			m := popplerFoot(t, file, page, paper)
			row := m.Bounds().Dy() - int(math.Round((sheetEdge+20)/72*300))
			left, wide, high := squareAt(m, int(math.Round(sheetEdge/72*300))-20, row)
			if wide < 299 || wide > 301 || high < 299 || high > 301 {
				t.Errorf("paper %d, page %d: the inch is %d by %d pixels", paper, page, wide, high)
			}
			if _, wide, high = squareAt(m, left+wide+2, row); wide < 353 || wide > 355 || high < 353 || high > 355 {
				t.Errorf("paper %d, page %d: three centimetres are %d by %d pixels", paper, page, wide, high)
			}
		}
	}
}

// tracedPaths are the closed outlines that MuPDF finds in a page drawn with a line of a
// width, in points.
func tracedPaths(t testing.TB, file string, page int, width string) [][]xy {
	t.Helper()
	mutool := judges.Program(t, "Debian's mupdf-tools", "mutool")
	out, err := exec.Command(mutool, "draw", "-F", "trace", file, strconv.Itoa(page)).Output()
	if err != nil {
		t.Fatal(err)
	}
	type place struct {
		X float64 `xml:"x,attr"`
		Y float64 `xml:"y,attr"`
	}
	var list [][]xy
	reader := xml.NewDecoder(bytes.NewReader(regexp.MustCompile(`unicode="[^"]*"`).ReplaceAll(out, nil)))
	for {
		token, err := reader.Token()
		if err != nil {
			return list
		}
		e, ok := token.(xml.StartElement)
		if !ok || e.Name.Local != "stroke_path" || attribute(e, "linewidth") != width {
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
		outline := []xy{{path.Move.X, -path.Move.Y}}
		for _, p := range path.Line {
			outline = append(outline, xy{p.X, -p.Y})
		}
		if len(path.Ends) == 1 {
			list = append(list, outline)
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// asLarge says whether an outline in points is one in nanometres at true size: all corners
// as far apart, to a five-thousandth of an inch, and the same way round.
func asLarge(traced []xy, cut []diagram.Point) bool {
	if len(traced) != len(cut) {
		return false
	}
	want := points(cut)
	for i := range traced {
		for j := range i {
			if math.Abs(distance(traced[i], traced[j])/72-distance(want[i], want[j])/float64(measure.Inch)) > 0.0002 {
				return false
			}
		}
	}
	return areaOf(traced) > 0
}

// TestCornersAreWhereTheGeometrySays: another program's reading of the pages has every
// template that fits on one, once, its corners as far apart as in the template.
func TestCornersAreWhereTheGeometrySays(t *testing.T) {
	for name, top := range tops(t) {
		pdf, made := templatesOf(t, top, TemplateOptions{})
		file := saved(t, "t.pdf", pdf)
		var traced [][]xy
		for page := 1; page <= made.Pages; page++ {
			traced = append(traced, tracedPaths(t, file, page, "1.4")...)
		}
		for _, p := range usual(top) {
			found := 0
			for _, outline := range traced {
				found += bit(asLarge(outline, p.Cut))
			}
			if found != 1 {
				t.Errorf("%s: template %s is on the pages %d times", name, p.Name(), found)
			}
		}
		if len(made.Tiled) == 0 && len(traced) != made.Templates {
			t.Errorf("%s: %d outlines are on the pages, %d templates", name, len(traced), made.Templates)
		}
		larger := append([]diagram.Point(nil), usual(top)[0].Cut...)
		larger[0].X += measure.Inch / 1000
		for _, outline := range traced {
			if asLarge(outline, larger) {
				t.Errorf("%s: a thousandth of an inch was not noticed", name)
			}
		}
	}
}

// TestTemplatesWithoutFault: a checker finds no fault in any sample's pages, and all fonts
// are in the file.
func TestTemplatesWithoutFault(t *testing.T) {
	qpdf, fonts := judges.Program(t, "Debian's qpdf", "qpdf"), judges.Program(t, "Debian's poppler-utils", "pdffonts")
	list := tops(t)
	list["huge"] = laid(t, hugeLayout)
	for name, top := range list {
		pdf, _ := templatesOf(t, top, TemplateOptions{Foundations: true})
		file := saved(t, "t.pdf", pdf)
		if text := output(t, qpdf, "--check", file); !strings.Contains(text, "No syntax or stream encoding errors") {
			t.Errorf("%s: %s", name, text)
		}
		for _, line := range strings.Split(strings.TrimSpace(output(t, fonts, file)), "\n")[2:] {
			if strings.Fields(line[strings.Index(line, "Identity-H"):])[1] != "yes" {
				t.Errorf("%s: a font is not in the file: %s", name, line)
			}
		}
	}
}

// TestTemplateSVGIsAsLarge: opened by librsvg at 300 an inch, a template is as many pixels as
// it is large, and its black line reaches from edge to edge of the cut piece, within one.
func TestTemplateSVGIsAsLarge(t *testing.T) {
	convert := judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert")
	for _, text := range []string{samples.All()[0].Text, "units cm\nside 10\nfabric a #fff\nfabric b #000\nblock W web wedges a kites b\ngrid\n W\n"} {
		top := laid(t, text)
		for _, p := range usual(top) {
			var svg, out bytes.Buffer
			if err := p.SVG(&svg, top); err != nil {
				t.Fatal(err)
			}
			c := exec.Command(convert, "--dpi-x=300", "--dpi-y=300", "--background-color=#ffffff")
			c.Stdin, c.Stdout = &svg, &out
			if err := c.Run(); err != nil {
				t.Fatal(err)
			}
			low, high := darkBounds(decoded(t, out.Bytes()))
			_, size := bounds(p.Cut)
			if wide, want := high.X-low.X+1, inches(size.X)*300; math.Abs(float64(wide)-want) > 2.6 { // with half the line on either side
				t.Errorf("%s is %d pixels wide, expected %.1f", p.Name(), wide, want)
			}
			if tall, want := high.Y-low.Y+1, inches(size.Y)*300; math.Abs(float64(tall)-want) > 2.6 {
				t.Errorf("%s is %d pixels high, expected %.1f", p.Name(), tall, want)
			}
		}
	}
}

func darkBounds(m image.Image) (low, high image.Point) {
	low, high = m.Bounds().Max, m.Bounds().Min
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			if r, _, b, _ := m.At(x, y).RGBA(); r < 0x9000 && b < 0x9000 {
				low = image.Pt(min(low.X, x), min(low.Y, y))
				high = image.Pt(max(high.X, x), max(high.Y, y))
			}
		}
	}
	return low, high
}

// readDXF is a program for Python with ezdxf: of each file the outlines on the layer CUT, and
// what its auditor complains of.
const readDXF = `import ezdxf, json, sys
def read(path):
  doc = ezdxf.readfile(path)
  audit = doc.audit()
  cut = [[[p.dxf.location.x, p.dxf.location.y] for p in e.vertices] for e in doc.modelspace().query('POLYLINE[layer=="CUT"]') if e.is_closed]
  return {"version": doc.dxfversion, "units": doc.header.get("$INSUNITS"), "faults": len(audit.errors) + len(audit.fixes), "cut": cut,
    "sew": len(doc.modelspace().query('POLYLINE[layer=="SEW"]')), "names": [e.dxf.text for e in doc.modelspace().query('TEXT')]}
print(json.dumps([read(path) for path in sys.argv[1:]]))
`

// dxfRead is what another reader finds in a drawing.
type dxfRead struct {
	Version            string
	Units, Faults, Sew int
	Cut                [][][2]float64
	Names              []string
}

// TestDXFAgainstAnotherReader: ezdxf (Debian's python3-ezdxf) reads the drawing without a
// complaint, and finds the same outlines.
func TestDXFAgainstAnotherReader(t *testing.T) {
	python := judges.Program(t, "Debian's python3-ezdxf", "python3")
	if exec.Command(python, "-c", "import ezdxf").Run() != nil {
		if python = "/usr/bin/python3"; exec.Command(python, "-c", "import ezdxf").Run() != nil {
			t.Fatal("ezdxf is not here: Debian's python3-ezdxf")
		}
	}
	var list []*quilt.Top
	for _, top := range tops(t) {
		list = append(list, top)
	}
	list = append(list, laid(t, "units cm\nside 10\nfabric a #fff\nfabric b #000\nblock W web wedges a kites b\ngrid\n W\n"))
	arguments := []string{saved(t, "read.py", []byte(readDXF))}
	for _, top := range list {
		var b bytes.Buffer
		if err := TemplatesDXF(&b, top, usual(top)); err != nil {
			t.Fatal(err)
		}
		arguments = append(arguments, saved(t, "t.dxf", b.Bytes()))
	}
	var read []dxfRead
	text := output(t, python, arguments...)
	if err := json.Unmarshal([]byte(text[strings.Index(text, `[{"version`):]), &read); err != nil || len(read) != len(list) {
		t.Fatalf("%v: %s", err, text)
	}
	for i, top := range list {
		compareDXF(t, top, &read[i])
	}
}

func compareDXF(t *testing.T, top *quilt.Top, read *dxfRead) {
	t.Helper()
	templates := usual(top)
	unit, code := measure.Inch, 1
	if top.Units == measure.Centimetres {
		unit, code = measure.Millimetre, 4
	}
	if read.Version != "AC1009" || read.Units != code || read.Faults != 0 || read.Sew != len(templates) || len(read.Cut) != len(templates) || len(read.Names) != len(templates) {
		t.Errorf("%s: %+v", top.Title, read)
		return
	}
	for i, p := range templates {
		outline := make([]xy, len(read.Cut[i]))
		for n, q := range read.Cut[i] {
			outline[n] = xy{q[0] * float64(unit), -q[1] * float64(unit)}
		}
		if !closeTo(outline, points(p.Cut), 60) || read.Names[i] != p.Name() {
			t.Errorf("%s: template %s has another outline: %v", top.Title, p.Name(), outline)
		}
	}
}

// closeTo says whether the corners of two outlines are equally far apart, in nanometres.
func closeTo(a, b []xy, slack float64) bool {
	if len(a) != len(b) || areaOf(a) <= 0 {
		return false
	}
	for i := range a {
		for j := range i {
			if math.Abs(distance(a[i], a[j])-distance(b[i], b[j])) > slack {
				return false
			}
		}
	}
	return true
}

// foreign is a layout with names that the fonts lack in part, one of them beyond the signs of two bytes.
const foreign = "title \"夜\"\nstrip 4\nfabric rouge #802020\nfabric أزرق #204060\nfabric bee𠮷 #f0e8d8\nblock W web wedges rouge bee𠮷 kites أزرق\ngrid\n W\n"

// TestMissingSigns: a file of templates says which signs its letters lack, and is sound by another program all the same.
func TestMissingSigns(t *testing.T) {
	pdftotext, qpdf := judges.Program(t, "Debian's poppler-utils", "pdftotext"), judges.Program(t, "Debian's qpdf", "qpdf")
	file, made := templatesOf(t, laid(t, foreign), TemplateOptions{Foundations: true})
	if want := []rune("أرزق夜𠮷"); !slices.Equal(made.Missing, want) {
		t.Errorf("missing are %q, expected %q", made.Missing, want)
	}
	path := saved(t, "foreign.pdf", file)
	text := strings.Join(strings.Fields(output(t, pdftotext, "-enc", "UTF-8", path, "-")), " ")
	for _, want := range []string{"U+20BB7", "U+591C", "\uFFFD stands in their place", "bee\uFFFD"} {
		if !strings.Contains(text, want) {
			t.Errorf("the file does not say %q", want)
		}
	}
	output(t, qpdf, "--check", path)
}
