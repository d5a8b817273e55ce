//go:build judges

package render

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
)

// grounded is a document with a picture whose left half is red in pixels, and with a line over it.
func grounded(t *testing.T) document.Document {
	t.Helper()
	picture := image.NewNRGBA(image.Rect(0, 0, 40, 40))
	for y := range 40 {
		for x := range 40 {
			picture.SetNRGBA(x, y, color.NRGBA{R: 255, G: uint8(x / 20 * 255), B: uint8(x / 20 * 255), A: 255})
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, picture); err != nil {
		t.Fatal(err)
	}
	d := document.Drawing{Max: measure.Point{X: measure.Inch, Y: measure.Inch}, Ground: file.Bytes()}
	return document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{document.Picture{Of: d, Width: 4 * measure.Inch, Alternative: "half of it red"}}}}}
}

// reddish is the part of a picture that is red.
func reddish(p image.Image) float64 {
	b, n := p.Bounds(), 0
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if r, g, _, _ := p.At(x, y).RGBA(); r > 0xE000 && g < 0x2000 {
				n++
			}
		}
	}
	return float64(n) / float64(b.Dx()*b.Dy())
}

// What lies beneath a picture fills its frame: 2 by 4 inches of red on a page of 8 1/2 by 11, and half of an SVG file, as other
// programs draw them.
func TestGroundFillsTheFrame(t *testing.T) {
	rsvg, toppm := judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert"), judges.Program(t, "Debian's poppler-utils", "pdftoppm")
	printed, err := PDF(grounded(t), Options{})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, printed.File)
	output(t, toppm, "-r", "50", "-png", "-singlefile", path, path)
	file, err := os.ReadFile(path + ".png")
	if err != nil {
		t.Fatal(err)
	}
	page, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := reddish(page), 8/(8.5*11); got < want*0.97 || got > want*1.03 {
		t.Errorf("%.4f of the page is red, want %.4f", got, want)
	}
	files, err := Markdown(grounded(t), "law", Options{})
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(rsvg, "--width", "200", "--background-color", "white")
	run.Stdin = bytes.NewReader(files["law-1.svg"])
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	if got := reddish(picture); got < 0.44 || got > 0.51 {
		t.Errorf("%.3f of the file is red, want half", got)
	}
	if _, err := HTML(grounded(t)); err != nil {
		t.Error(err)
	}
}

// The last item of a list never stands alone at the head of a page.
func TestLastItemIsNotAlone(t *testing.T) {
	for n := 30; n < 60; n++ {
		l := document.List{}
		for range n {
			l.Items = append(l.Items, document.Item{Text: document.Plain("an item")})
		}
		_, pages := laid(t, document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{l}}}}, Options{Paper: HalfLetter()})
		if last := pages[len(pages)-1]; len(pages) > 1 && len(last.placed) == 1 {
			t.Errorf("of %d items one stands alone on page %d", n, len(pages))
		}
	}
}
