package samples_test

import (
	"encoding/xml"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/samples"
	"eighthturn/svgout"
)

var contact = flag.Bool("contact", false, "draw contact.png again; needs rsvg-convert")

// Sizes of the sheet in pixels: each sample has a cell with its two pictures and two lines
// of text.
const (
	sheetColumns = 2
	cellWidth    = 600
	cellHeight   = 470
	cellGap      = 14 // between the pictures of a pair
	textHeight   = 64
	sheetMargin  = 30
)

// TestContactSheet draws every sample in colour and in value on one sheet.
func TestContactSheet(t *testing.T) {
	if !*contact {
		t.Skip("go test ./samples -run ContactSheet -contact draws the sheet again")
	}
	dir := t.TempDir()
	var cells strings.Builder
	list := samples.All()
	for i, s := range list {
		cell(t, dir, &cells, s, i)
	}
	rows := (len(list) + sheetColumns - 1) / sheetColumns
	width, height := 2*sheetMargin+sheetColumns*cellWidth, 2*sheetMargin+rows*cellHeight
	sheet := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%d" font-family="DejaVu Sans, sans-serif"><rect width="100%%" height="100%%" fill="#ffffff"/>%s</svg>`,
		width, height, cells.String())
	path := filepath.Join(dir, "sheet.svg")
	if err := os.WriteFile(path, []byte(sheet), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("rsvg-convert", path, "-o", "contact.png").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
}

// cell draws one sample's pictures into files and writes its part of the sheet.
func cell(t *testing.T, dir string, b *strings.Builder, s samples.Sample, i int) {
	design, _, _ := layout.Read(s.Text)
	if design == nil {
		t.Fatalf("%s.quilt has no design", s.Name)
	}
	top := quilt.Lay(design)
	x, y := float64(sheetMargin+i%sheetColumns*cellWidth), float64(sheetMargin+i/sheetColumns*cellHeight)
	width, height, stacked := fitted(units(top.Outer.Width()), units(top.Outer.Height()))
	for n, view := range []svgout.View{svgout.Colour, svgout.Value} {
		file := fmt.Sprintf("%s-%d.svg", s.Name, n)
		drawInto(t, filepath.Join(dir, file), top, view)
		left, upper := x, y+textHeight
		if n == 1 && stacked {
			upper += height + cellGap
		} else if n == 1 {
			left += width + cellGap
		}
		fmt.Fprintf(b, `<image href="%s" x="%.2f" y="%.2f" width="%.2f" height="%.2f"/>`, file, left, upper, width, height)
	}
	fmt.Fprintf(b, `<text x="%.2f" y="%.2f" font-size="24" font-weight="bold" fill="#222222">%s</text>`, x, y+24, s.Name)
	fmt.Fprintf(b, `<text x="%.2f" y="%.2f" font-size="16" fill="#555555">%s, %s by %s</text>`, x, y+48, escaped(design.Title),
		rounded(top.Outer.Width(), design.Units), rounded(top.Outer.Height(), design.Units))
}

// fitted is the size at which two pictures of a shape fill a cell best, side by side or
// one above the other.
func fitted(width, height float64) (w, h float64, stacked bool) {
	room := [2]float64{cellWidth - 2*cellGap, cellHeight - textHeight - 2*cellGap}
	beside := min((room[0]-cellGap)/2/width, room[1]/height)
	above := min(room[0]/width, (room[1]-cellGap)/2/height)
	scale := max(beside, above)
	return width * scale, height * scale, above > beside
}

func drawInto(t *testing.T, path string, top *quilt.Top, view svgout.View) {
	file, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := svgout.Draw(file, top, svgout.Options{View: view, ByFabric: true}); err != nil {
		t.Fatal(err)
	}
}

func escaped(text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // writing to memory cannot fail
	return b.String()
}

// rounded is a length to the nearest half unit.
func rounded(nm measure.NM, units measure.System) string {
	return measure.Text(measure.Nearest(nm, units.Unit()/2), units)
}
