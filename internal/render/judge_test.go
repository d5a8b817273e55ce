//go:build judges

package render

import (
	"bytes"
	"fmt"
	"image/color"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/palettes"
)

func written(t testing.TB, file []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "law.pdf")
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func output(t testing.TB, name string, arguments ...string) string {
	t.Helper()
	out, err := exec.Command(name, arguments...).CombinedOutput()
	if err != nil {
		t.Errorf("%s: %v\n%s", filepath.Base(name), err, out)
	}
	return string(out)
}

// pdfText is the text of a PDF in the order of its pages' content, without heads and feet.
func pdfText(t testing.TB, path string, o Options) string {
	l := o.look()
	whole := func(v float64) string { return strconv.Itoa(int(v)) }
	return output(t, judges.Program(t, "Debian's poppler-utils", "pdftotext"), "-raw", "-enc", "UTF-8",
		"-x", "0", "-y", whole(l.top-2), "-W", whole(l.wide+1), "-H", whole(l.room()+5), path, "-")
}

func TestPDFHoldsTheText(t *testing.T) {
	qpdf := judges.Program(t, "Debian's qpdf", "qpdf")
	judged := 0
	for seed := range uint64(16) {
		d, v := invent(seed)
		o := v.paperFor()
		d.Copyright = "All rights with the maker"
		printed, err := PDF(d, o)
		if err != nil {
			t.Fatal(err)
		}
		if printed.Pages > 50 || splitRow(t, d, o) {
			continue
		}
		judged++
		path := written(t, printed.File)
		text := pdfText(t, path, o)
		if wrong := missedWaiting(text, d, v.heads); wrong != "" {
			t.Errorf("seed %d, %v: %s", seed, o, wrong)
		}
		words := strings.Fields(text)
		whole := slices.IndexFunc(words, func(w string) bool { return wordShape.FindString(w) == w && !v.heads[w] }) // on one line
		if whole >= 0 && missedWaiting(strings.Join(slices.Delete(words, whole, whole+1), "\n"), d, v.heads) == "" {
			t.Errorf("seed %d: a word that is missing goes unnoticed", seed)
		}
		if out := output(t, qpdf, "--check", path); !strings.Contains(out, "No syntax or stream encoding errors") {
			t.Errorf("seed %d: %s", seed, out)
		}
	}
	if judged < 9 { // the others have more than 50 pages, or a row higher than a page
		t.Errorf("only %d documents were judged", judged)
	}
}

// splitRow says whether a row of a table is higher than a page, and so read in parts.
func splitRow(t *testing.T, d document.Document, o Options) bool {
	_, pages := laid(t, d, o)
	last := 0
	for _, p := range pages {
		for i, s := range p.placed {
			if s.again || s.row == 0 {
				continue
			}
			if s.row == last && (i == 0 || p.placed[i-1].again) {
				return true
			}
			last = s.row
		}
	}
	return false
}

func TestPDFTextCatches(t *testing.T) {
	d, v := invent(4)
	printed, err := PDF(d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	more := said(d) + " q999999az"
	if missed(pdfText(t, written(t, printed.File), Options{}), more, v.heads) == "" {
		t.Error("a word that is not printed is not noticed")
	}
}

// raster is a page as its pixels.
type raster struct {
	wide, high int
	pixels     []byte
}

func (r raster) at(x, y int) color.RGBA {
	i := 3 * (y*r.wide + x)
	return color.RGBA{r.pixels[i], r.pixels[i+1], r.pixels[i+2], 255}
}

// rasters are the pages of a PDF at so many pixels an inch.
func rasters(t testing.TB, path string, dpi int) []raster {
	t.Helper()
	base := filepath.Join(t.TempDir(), "page")
	output(t, judges.Program(t, "Debian's poppler-utils", "pdftoppm"), "-r", strconv.Itoa(dpi), path, base)
	names, _ := filepath.Glob(base + "*.ppm")
	var list []raster
	for _, name := range names {
		file, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var r raster
		var most int
		if _, err := fmt.Sscanf(string(file[:min(len(file), 40)]), "P6\n%d %d\n%d\n", &r.wide, &r.high, &most); err != nil {
			t.Fatal(err)
		}
		r.pixels = file[len(file)-3*r.wide*r.high:]
		list = append(list, r)
	}
	return list
}

// beyond says whether something is painted outside a margin of so many pixels.
func (r raster) beyond(margin int) bool {
	for y := range r.high {
		for x := range r.wide {
			inside := x >= margin && y >= margin && x < r.wide-margin && y < r.high-margin
			if !inside && r.at(x, y) != (color.RGBA{255, 255, 255, 255}) {
				return true
			}
		}
	}
	return false
}

// colours are all colours of a page.
func (r raster) colours() map[palettes.Colour]bool {
	all := map[palettes.Colour]bool{}
	for i := 0; i+2 < len(r.pixels); i += 3 {
		all[palettes.Colour{R: r.pixels[i], G: r.pixels[i+1], B: r.pixels[i+2]}] = true
	}
	return all
}

// undrawn are the illustrations of which no page shows all four corners.
func undrawn(pages []raster, figures int) []int {
	left := map[int]bool{}
	for n := range figures {
		left[n] = true
	}
	for _, p := range pages {
		seen := p.colours()
		for n := range left {
			whole := true
			for _, c := range corners(n) {
				whole = whole && seen[c]
			}
			if whole {
				delete(left, n)
			}
		}
	}
	var list []int
	for n := range figures {
		if left[n] {
			list = append(list, n)
		}
	}
	return list
}

func TestPDFShowsAllWithinMargins(t *testing.T) {
	const dpi = 72
	for seed := range uint64(8) {
		d, v := invent(seed)
		o := v.paperFor()
		printed, err := PDF(d, o)
		if err != nil || printed.Pages > 30 {
			continue
		}
		pages := rasters(t, written(t, printed.File), dpi)
		if len(pages) != printed.Pages {
			t.Errorf("seed %d: %d pages, want %d", seed, len(pages), printed.Pages)
		}
		for i, p := range pages {
			if p.beyond(int(points(o.paper().Margin)) - 2) { // a j at the beginning of a large line reaches a point beyond it
				t.Errorf("seed %d: page %d has something outside the margins", seed, i+1)
			}
		}
		if list := undrawn(pages, v.figures); list != nil {
			t.Errorf("seed %d: the illustrations %v of %d are not shown whole", seed, list, v.figures)
		}
	}
}

func TestPDFPicturesCatch(t *testing.T) {
	one := document.Picture{Of: document.Drawing{Max: measure.Point{X: measure.Inch, Y: measure.Inch}}, Alternative: "a picture"}
	for i, outline := range quarters(measure.Inch, measure.Inch) {
		fill := corners(0)[i]
		one.Of.Layers = append(one.Of.Layers, document.Layer{Fill: &fill, Paths: [][]measure.Point{outline}})
	}
	d := document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{one}}}}
	printed, err := PDF(d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	pages := rasters(t, written(t, printed.File), 72)
	if list := undrawn(pages, 2); len(list) != 1 || list[0] != 1 {
		t.Errorf("undrawn are %v, want the second of two", list)
	}
	if !pages[0].beyond(60) {
		t.Error("text beyond a wider margin is not noticed")
	}
}

func TestPDFProperties(t *testing.T) {
	printed, err := PDF(sample(), Options{Paper: HalfLetter()})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, printed.File)
	info := output(t, judges.Program(t, "Debian's poppler-utils", "pdfinfo"), path)
	for _, want := range []string{`Title: +Still Pond`, `Author: +Maren Holt`, `Subject: +A lap quilt`, `Page size: +396 x 612 pts`, `Pages: +` + strconv.Itoa(printed.Pages)} {
		if !regexp.MustCompile(want).MatchString(info) {
			t.Errorf("no %q in\n%s", want, info)
		}
	}
	if strings.Contains(info, "Date:") {
		t.Errorf("the file names a date:\n%s", info)
	}
	catalogue := output(t, judges.Program(t, "Debian's mupdf-tools", "mutool"), "show", path, "trailer/Root")
	for _, want := range []string{"/PrintScaling /None", "/DisplayDocTitle true"} {
		if !strings.Contains(catalogue, want) {
			t.Errorf("no %q in %s", want, catalogue)
		}
	}
	fonts := output(t, judges.Program(t, "Debian's poppler-utils", "pdffonts"), path)
	for _, line := range strings.Split(strings.TrimSpace(fonts), "\n")[2:] {
		if !regexp.MustCompile(`Identity-H +yes +yes +yes`).MatchString(line) {
			t.Errorf("a font is not embedded with the used letters alone, or its text not found: %s", line)
		}
	}
	outline := output(t, judges.Program(t, "Debian's mupdf-tools", "mutool"), "show", path, "outline")
	for _, want := range []string{"Still Pond", "Before you begin", "Words used", "Cutting", "Colour it yourself"} {
		if !strings.Contains(outline, want) {
			t.Errorf("no bookmark %q in\n%s", want, outline)
		}
	}
}

// A figure of true size is as large on paper as its subject: a square inch at 300 dots an inch
// is 300 by 300 pixels, as another renderer draws it.
func TestTrueSize(t *testing.T) {
	fill := palettes.Colour{R: 200, G: 0, B: 100}
	square := diagram.Figure{Title: "square", Description: "One inch.", TrueSize: true, Max: measure.Point{X: measure.Inch, Y: measure.Inch}}
	square.Marks = []diagram.Mark{{Area: &diagram.Area{Outline: []measure.Point{{}, {X: measure.Inch}, square.Max, {Y: measure.Inch}}, Fill: fill}}}
	for _, o := range []Options{{Paper: HalfLetter()}, {Paper: HalfLetter(), Large: true}} {
		printed, err := PDF(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{document.Figure{Of: square}}}}}, o)
		if err != nil {
			t.Fatal(err)
		}
		page := rasters(t, written(t, printed.File), 300)[0]
		across, down := map[int]bool{}, map[int]bool{}
		for y := range page.high {
			for x := range page.wide {
				if page.at(x, y) == (color.RGBA{200, 0, 100, 255}) {
					across[x], down[y] = true, true
				}
			}
		}
		if a, b := len(across), len(down); a < 299 || a > 301 || b < 299 || b > 301 {
			t.Errorf("the square is %d by %d pixels, want 300", a, b)
		}
	}
	square.Max.X = 9 * measure.Inch
	_, err := PDF(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{document.Figure{Of: square}}}}}, Options{})
	if err == nil || !strings.Contains(err.Error(), "true size") {
		t.Errorf("a figure larger than the page gives %v", err)
	}
}

// Every fraction, and signs that the fonts lack, are found as text.
func TestFractionsAreFound(t *testing.T) {
	d := document.Document{Title: "赤い é", Sections: []document.Section{{Title: "赤い é", Blocks: []document.Block{document.Paragraph{Text: document.Plain("cut 3 1/2 in, 1/4, 3/4, 1/8, 3/8, 5/8, 7/8, 11/16 and 2 1/3 yd; 赤い é 👩‍🎨")}}}}}
	printed, err := PDF(d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	text := pdfText(t, written(t, printed.File), Options{})
	for _, want := range []string{"3½ in", "¼", "¾", "⅛", "⅜", "⅝", "⅞", "¹¹⁄₁₆", "2¹⁄₃ yd", "赤い é", "👩‍🎨"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
	if len(printed.Warnings) != 1 || printed.Warnings[0].Kind != MissingSign || !strings.Contains(printed.Warnings[0].Message, "赤 (U+8D64)") {
		t.Errorf("warnings are %v", printed.Warnings)
	}
	info := output(t, judges.Program(t, "Debian's poppler-utils", "pdfinfo"), written(t, printed.File))
	if !strings.Contains(info, "赤い é") {
		t.Errorf("the title is lost: %s", info)
	}
}

// Each picture is well-formed, alone and within the page.
func TestPicturesAreWellFormed(t *testing.T) {
	xmllint := judges.Program(t, "Debian's libxml2-utils", "xmllint")
	d := sample()
	d.Title, d.Cover.Picture.Alternative = "<&]]>", "a \"picture\" <b> & ]]> 赤\x00\uFFFF"
	files, err := Markdown(d, "law", Options{})
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	for name, file := range files {
		if strings.HasSuffix(name, ".svg") {
			if err := os.WriteFile(filepath.Join(dir, name), file, 0o600); err != nil {
				t.Fatal(err)
			}
		}
	}
	names, _ := filepath.Glob(filepath.Join(dir, "*.svg"))
	if len(names) != len(files)-1 || len(names) < 6 {
		t.Fatalf("%d pictures of %d files", len(names), len(files))
	}
	if out := output(t, xmllint, append([]string{"--nonet", "--noout"}, names...)...); out != "" {
		t.Error(out)
	}
	page, err := HTML(d)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(page, []byte("<b> &")) || !bytes.Contains(page, []byte("&lt;&amp;]]&gt;")) {
		t.Error("text of the document is not escaped")
	}
}

// captions are the captions of a document's illustrations, which may wait for the page after.
func captions(list []document.Block) []string {
	var all []string
	for _, block := range list {
		switch v := block.(type) {
		case document.Figure:
			all = append(all, shapeOf(v).caption.String())
		case document.Picture:
			all = append(all, shapeOf(v).caption.String())
		case document.Gallery:
			for _, p := range v.Pictures {
				all = append(all, shapeOf(p).caption.String())
			}
		case document.Box:
			all = append(all, captions(v.Blocks)...)
		case document.Together:
			all = append(all, captions(v.Blocks)...)
		case document.Section:
			all = append(all, captions(v.Blocks)...)
		case document.List:
			for _, i := range v.Items {
				all = append(all, captions(i.Blocks)...)
			}
		}
	}
	return all
}

// longerThanALine is the letters of a word that is broken wherever a line ends, and so by an illustration that had waited too.
const longerThanALine = 60

// emptyColumn says whether a head stands only over columns with nothing in them, which rows that are stacked leave out.
func emptyColumn(list []document.Block, head string) bool {
	for _, block := range list {
		switch v := block.(type) {
		case document.Table:
			for n, c := range v.Columns {
				full := slices.ContainsFunc(v.Rows, func(r document.Row) bool { return n < len(r.Cells) && r.Cells[n].Text.String() != "" })
				if strings.Contains(c.Title, head) && full {
					return false
				}
			}
		case document.Section:
			if !emptyColumn(v.Blocks, head) {
				return false
			}
		case document.Box:
			if !emptyColumn(v.Blocks, head) {
				return false
			}
		case document.Together:
			if !emptyColumn(v.Blocks, head) {
				return false
			}
		case document.List:
			for _, i := range v.Items {
				if !emptyColumn(i.Blocks, head) {
					return false
				}
			}
		}
	}
	return true
}

// missedWaiting says what is wrong with a text in which every word of a document stands in its order, but that illustrations
// may have waited: each of their captions is whole, and nothing is there twice.
func missedWaiting(text string, d document.Document, heads map[string]bool) string {
	waiting := map[string]bool{}
	got, gotTops := wordsOf(text, heads)
	want, wantTops := wordsOf(said(d), heads)
	joined := " " + strings.Join(got, " ") + " "
	var sections []document.Block
	for _, p := range d.Sections {
		sections = append(sections, p)
	}
	count := func(list []string, of string) (n int) {
		for _, w := range list {
			if w == of {
				n++
			}
		}
		return n
	}
	for _, caption := range captions(sections) {
		list, _ := wordsOf(caption, heads)
		for _, w := range list {
			if count(got, w) != count(want, w) {
				return fmt.Sprintf("%q stands there %d times, want %d", w, count(got, w), count(want, w))
			}
		}
		if len(list) > 0 && !strings.Contains(joined, " "+strings.Join(list, " ")+" ") {
			return fmt.Sprintf("the caption %q is not whole", caption)
		}
		for _, w := range list {
			waiting[w] = true
		}
	}
	others := func(list []string) []string {
		return slices.DeleteFunc(slices.Clone(list), func(w string) bool { return waiting[w] || len(w) > longerThanALine })
	}
	switch {
	case !slices.Equal(others(got), others(want)):
		return "words stand in another order"
	}
	for _, top := range wantTops {
		if !slices.Contains(gotTops, top) && !emptyColumn(sections, top) {
			return fmt.Sprintf("the head %q is missing", top)
		}
	}
	return ""
}
