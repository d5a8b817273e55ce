//go:build judges

package render

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/quilttest/judges"
)

// pageNumbers is a document of so many pages, each of which but the first says its number.
func pageNumbers(n int) document.Document {
	d := document.Document{Title: "t"}
	for i := range n - 1 {
		d.Sections = append(d.Sections, document.Section{Title: "one", Alone: true, Blocks: []document.Block{document.Paragraph{Text: document.Plain(fmt.Sprintf("number%d", i+2))}}})
	}
	return d
}

// Sheets that are laid into each other and folded show their pages in order: the halves of a sheet's front and back, as Poppler
// finds their words, and each sheet within the one before.
func TestFoldedSheetsReadInOrder(t *testing.T) {
	pdftotext := judges.Program(t, "Debian's poppler-utils", "pdftotext")
	for _, paper := range []Paper{HalfLetter(), A5()} {
		const pages = 12
		printed, err := PDF(pageNumbers(pages), Options{Paper: paper, Imposed: true})
		if err != nil || printed.Pages != pages {
			t.Fatal(printed.Pages, err)
		}
		path := written(t, printed.File)
		wide := int(spread(Options{Paper: paper}.look()) / 2)
		half := func(side int, right bool) string {
			x := 0
			if right {
				x = wide
			}
			text := output(t, pdftotext, "-f", fmt.Sprint(side), "-l", fmt.Sprint(side), "-x", fmt.Sprint(x), "-y", "0", "-W", fmt.Sprint(wide), "-H", "2000", path, "-")
			for _, word := range strings.Fields(text) {
				if strings.HasPrefix(word, "number") {
					return strings.TrimPrefix(word, "number")
				}
			}
			return "none"
		}
		var read []string // the first half of the book, leaf by leaf: the front's right, then the back's left
		for sheet := range pages / 4 {
			read = append(read, half(2*sheet+1, true), half(2*sheet+2, false))
		}
		for sheet := pages/4 - 1; sheet >= 0; sheet-- {
			read = append(read, half(2*sheet+2, true), half(2*sheet+1, false))
		}
		if got := strings.Join(read, " "); got != "none 2 3 4 5 6 7 8 9 10 11 12" {
			t.Errorf("%s: the pages read %s", paper.Name, got)
		}
		if h := listen(t, path); strings.Index(h.words(), "number2\n") > strings.Index(h.words(), "number12") {
			t.Errorf("%s: they are read aloud in the order of the sheets", paper.Name)
		}
	}
	if _, err := PDF(pageNumbers(1), Options{Imposed: true}); err == nil {
		t.Error("Letter pages are imposed")
	}
}

// A page to cut by its marks has its trimmed size and a bleed of an eighth of an inch, and no mark in either (ISO 32000-1, 14.11.2).
func TestCropMarks(t *testing.T) {
	printed, err := PDF(pageNumbers(1), Options{Paper: HalfLetter(), CropMarks: true})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, printed.File)
	info := strings.Join(strings.Fields(output(t, judges.Program(t, "Debian's poppler-utils", "pdfinfo"), "-box", path)), " ")
	for _, want := range []string{"MediaBox: 0.00 0.00 468.00 684.00", "TrimBox: 36.00 36.00 432.00 648.00", "BleedBox: 27.00 27.00 441.00 657.00"} {
		if !strings.Contains(info, want) {
			t.Errorf("no %q in %s", want, info)
		}
	}
	page := rasters(t, path, 72)[0]
	dark := func(fromX, fromY, toX, toY int) (n int) {
		for y := fromY; y < toY; y++ {
			for x := fromX; x < toX; x++ {
				if page.at(x, y).R < 250 {
					n++
				}
			}
		}
		return n
	}
	if dark(0, 30, 26, 42) == 0 || dark(442, 30, 468, 42) == 0 || dark(30, 0, 42, 26) == 0 || dark(426, 658, 438, 684) == 0 {
		t.Error("a mark is missing")
	}
	if n := dark(28, 28, 440, 50); n > 0 {
		t.Errorf("%d dark pixels in the bleed and the margin", n)
	}
}
