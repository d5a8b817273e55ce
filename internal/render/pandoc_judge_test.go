//go:build judges

package render

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/quilttest/judges"
)

// pandocRead is what pandoc makes of Markdown, as far as it is looked at.
type pandocRead struct {
	Blocks []struct {
		Kind    string          `json:"t"`
		Content json.RawMessage `json:"c"`
	}
}

// TestPandocMakesTables: where pandoc is installed it makes a table of every table, no picture a figure with its own caption, and a
// DOCX, an ODT and an EPUB that hold every picture.
func TestPandocMakesTables(t *testing.T) {
	pandoc, err := exec.LookPath("pandoc")
	if err != nil {
		t.Skip("pandoc is not installed: it does not judge")
	}
	files, folder := markedSample(t)
	run := func(arguments ...string) []byte {
		c := exec.Command(pandoc, append([]string{"law.md"}, arguments...)...)
		c.Dir = folder
		out, err := c.Output()
		if err != nil {
			t.Fatalf("%v: %s", arguments, err)
		}
		return out
	}
	var read pandocRead
	text := run("-t", "json")
	if err := json.Unmarshal(text, &read); err != nil {
		t.Fatal(err)
	}
	for _, b := range read.Blocks {
		var inlines []struct {
			Kind string `json:"t"`
		}
		if b.Kind == "Para" && json.Unmarshal(b.Content, &inlines) == nil && len(inlines) == 1 && inlines[0].Kind == "Image" {
			t.Errorf("a picture is a figure: %s", b.Content)
		}
	}
	if tables, rules := bytes.Count(text, []byte(`"t":"Table"`)), len(regexp.MustCompile(`\n\| :?-`).FindAll(files["law.md"], -1)); tables == 0 || tables != rules {
		t.Errorf("%d tables are found, %d written", tables, rules)
	}
	for _, kind := range []string{"docx", "odt", "epub"} {
		made := filepath.Join(folder, "made."+kind)
		run("-o", made)
		if pictures := picturesIn(t, made); pictures != len(files)-1 {
			t.Errorf("%s: %d pictures, expected %d", kind, pictures, len(files)-1)
		}
	}
}

// markedSample is the sample as Markdown, in a folder.
func markedSample(t *testing.T) (files map[string][]byte, folder string) {
	t.Helper()
	files, err := Markdown(sample(), "law", Options{})
	if err != nil {
		t.Fatal(err)
	}
	folder = t.TempDir()
	for name, content := range files {
		if err := os.WriteFile(filepath.Join(folder, name), content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return files, folder
}

// madePages is the resolution that documents are looked at, in pixels an inch, and how broad the margin is that nothing reaches into.
const madePages, madeClear = 60, madePages / 2

// lawMade says that nothing on pages reaches into their margins, and that all colors of swatches are seen, each in a square of a few pixels.
func lawMade(pages []image.Image, swatches []string) error {
	seen := map[string]int{}
	for n, page := range pages {
		b := page.Bounds()
		for y := b.Min.Y; y < b.Max.Y; y++ {
			for x := b.Min.X; x < b.Max.X; x++ {
				c := color.NRGBAModel.Convert(page.At(x, y)).(color.NRGBA)
				seen[fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)]++
				if !image.Pt(x, y).In(b.Inset(madeClear)) && c.R < 0xf0 {
					return fmt.Errorf("page %d has something in its margin, at %d, %d", n+1, x, y)
				}
			}
		}
	}
	for _, s := range swatches {
		if seen[s] < 12 {
			return fmt.Errorf("%d pixels have the swatch's color %s", seen[s], s)
		}
	}
	return nil
}

// TestPandocDocumentsOnPaper: where pandoc and LibreOffice are installed, the DOCX and the ODT made of the Markdown as it is are printed by
// LibreOffice with all that they show on their pages.
func TestPandocDocumentsOnPaper(t *testing.T) {
	pandoc, err := exec.LookPath("pandoc")
	office, err2 := exec.LookPath("soffice")
	if err != nil || err2 != nil {
		t.Skip("pandoc or LibreOffice is not installed: they do not judge")
	}
	toPixels := judges.Program(t, "Debian's poppler-utils", "pdftoppm")
	files, folder := markedSample(t)
	var swatches []string
	for name := range files {
		if hex, ok := strings.CutPrefix(strings.TrimSuffix(name, pictureEnding), "law-"); ok && len(hex) == 6 {
			swatches = append(swatches, "#"+hex)
		}
	}
	run := func(program string, arguments ...string) {
		c := exec.Command(program, arguments...)
		c.Dir = folder
		if out, err := c.CombinedOutput(); err != nil {
			t.Fatalf("%v: %v: %s", arguments, err, out)
		}
	}
	for _, kind := range []string{"docx", "odt"} {
		run(pandoc, "law.md", "-o", kind+"."+kind)
		run(office, "-env:UserInstallation=file://"+filepath.Join(folder, "profile"), "--headless", "--convert-to", "pdf", kind+"."+kind)
		run(toPixels, "-r", strconv.Itoa(madePages), "-png", kind+".pdf", kind)
		list, err := filepath.Glob(filepath.Join(folder, kind+"-*.png"))
		if err != nil || len(list) < 3 || len(swatches) == 0 {
			t.Fatalf("%s: %d pages, %d swatches, %v", kind, len(list), len(swatches), err)
		}
		var pages []image.Image
		for _, name := range list {
			file, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			page, err := png.Decode(bytes.NewReader(file))
			if err != nil {
				t.Fatal(err)
			}
			pages = append(pages, page)
		}
		if err := lawMade(pages, swatches); err != nil {
			t.Errorf("%s: %v", kind, err)
		}
		if lawMade(pages, []string{"#010203"}) == nil {
			t.Errorf("%s: a swatch that is not there is not noticed", kind)
		}
		if lawMade([]image.Image{pages[0].(interface {
			SubImage(r image.Rectangle) image.Image
		}).SubImage(pages[0].Bounds().Inset(2 * madePages))}, nil) == nil {
			t.Errorf("%s: a page that ends in what it shows is not noticed", kind)
		}
	}
}

// TestPandocKnowsTheBook: where pandoc is installed a book made of the Markdown has the document's title, author, copyright notice and language,
// in the words of Dublin Core, and a chapter for each chapter.
func TestPandocKnowsTheBook(t *testing.T) {
	pandoc, err := exec.LookPath("pandoc")
	if err != nil {
		t.Skip("pandoc is not installed: it does not judge")
	}
	for _, d := range []document.Document{fronted(), {Title: "& <b> `c` #_d_", Author: "e | f", Copyright: "[g](h) ~i~ © 2027"}} {
		files, err := Markdown(d, "law", Options{})
		if err != nil {
			t.Fatal(err)
		}
		folder := t.TempDir()
		for name, content := range files {
			if err := os.WriteFile(filepath.Join(folder, name), content, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		c := exec.Command(pandoc, "law.md", "-o", "made.epub")
		c.Dir = folder
		if out, err := c.CombinedOutput(); err != nil || len(out) > 0 {
			t.Fatalf("%v: %s", err, out)
		}
		book := unpacked(t, filepath.Join(folder, "made.epub"))
		var read struct {
			Metadata struct {
				Title    string `xml:"title"`
				Creator  string `xml:"creator"`
				Rights   string `xml:"rights"`
				Language string `xml:"language"`
			} `xml:"metadata"`
		}
		if err := xml.Unmarshal(book["EPUB/content.opf"], &read); err != nil {
			t.Fatal(err)
		}
		if m := read.Metadata; strings.NewReplacer("“", `"`, "”", `"`).Replace(m.Title) != d.Title || // it sets quotation marks as printers do
			m.Creator != d.Author || m.Rights != d.Copyright || m.Language != "en-US" {
			t.Errorf("the book says %+v", m)
		}
		if at := fmt.Sprintf("EPUB/text/ch%03d.xhtml", len(d.Sections)+1); len(d.Sections) > 0 && book[at] == nil { // what is on the cover comes first
			t.Errorf("%d chapters, and no %s", len(d.Sections), at)
		}
	}
}

// unpacked is what a zip file holds.
func unpacked(t *testing.T, path string) map[string][]byte {
	t.Helper()
	z, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	held := map[string][]byte{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if held[f.Name], err = io.ReadAll(r); err != nil {
			t.Fatal(err)
		}
	}
	return held
}

// picturesIn is how many SVG pictures a document's file holds, like ones once.
func picturesIn(t *testing.T, path string) int {
	t.Helper()
	seen := map[string]bool{}
	for name, text := range unpacked(t, path) {
		if strings.HasSuffix(name, ".svg") {
			seen[string(text)] = true
		}
	}
	return len(seen)
}
