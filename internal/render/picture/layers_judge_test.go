//go:build judges

package picture

import (
	"image"
	"image/png"
	"os"
	"regexp"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
	"eighthturn/samples"
	"eighthturn/svgout"
)

// pixelsOf counts the pixels of a colour.
func pixelsOf(m image.Image, c palettes.Colour) int {
	n := 0
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			if r, g, b, _ := m.At(x, y).RGBA(); uint8(r>>8) == c.R && uint8(g>>8) == c.G && uint8(b>>8) == c.B {
				n++
			}
		}
	}
	return n
}

// A fabric is a layer, and what lies beneath its seams with it: where MuPDF hides it, no pixel of its colour is left.
func TestFabricsAreLayers(t *testing.T) {
	mutool := judges.Program(t, "Debian's mupdf-tools", "mutool")
	top := lay.Top(t, samples.All()[0].Text)
	in := saved(t, "layers.pdf", pdfOf(t, scened(t, top, svgout.Options{ByFabric: true}), Frame{}))
	numbers := map[string]string{} // of layers by name
	for _, found := range regexp.MustCompile(`layer ([0-9]+) \(on\): (.*)`).FindAllStringSubmatch(output(t, mutool, "draw", "-Y", "-o", os.DevNull, in), -1) {
		numbers[found[2]] = found[1]
	}
	drawn := func(hidden ...string) image.Image {
		arguments := []string{"draw", "-q", "-r", "20", "-o", in + ".png"}
		for _, layer := range hidden {
			if numbers[layer] == "" {
				t.Fatalf("no layer %q among %v", layer, numbers)
			}
			arguments = append(arguments, "-z", numbers[layer])
		}
		output(t, mutool, append(arguments, in, "1")...)
		file, err := os.Open(in + ".png")
		if err != nil {
			t.Fatal(err)
		}
		defer file.Close()
		m, err := png.Decode(file)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	whole := drawn()
	for _, f := range top.Fabrics {
		if n := pixelsOf(whole, f.Colour); n == 0 {
			t.Errorf("%s is not shown", f.Name)
		}
		if n := pixelsOf(drawn(f.Name), f.Colour); n > 0 {
			t.Errorf("%s is hidden, and %d pixels of it are left", f.Name, n)
		}
	}
	if pixelsOf(drawn("seam lines"), top.Fabrics[0].Colour) == 0 {
		t.Error("a fabric is hidden with the seams")
	}
}
