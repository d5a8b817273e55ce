//go:build judges

package pixels

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/binary"
	"fmt"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Judges: another renderer and another program's blur.

// program finds a program that answers to an option with a word, in any folder of PATH: a
// folder may hold a file of the same name that is something else.
func program(t *testing.T, name, option, answer string) string {
	t.Helper()
	for _, dir := range filepath.SplitList(os.Getenv("PATH")) {
		path := filepath.Join(dir, name)
		if out, err := exec.Command(path, option).CombinedOutput(); err == nil && strings.Contains(string(out), answer) {
			return path
		}
	}
	t.Fatalf("%s (%s) is not installed, and this test compares with it", name, answer)
	return ""
}

// drawn is a top as another renderer paints it, a PNG file: polygon by polygon, no pixel in part.
func drawn(t *testing.T, top *quilt.Top, s Size) []byte {
	t.Helper()
	rsvg := program(t, "rsvg-convert", "--version", "rsvg")
	var picture bytes.Buffer
	fmt.Fprintf(&picture, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" shape-rendering="crispEdges">`, top.Outer.Width(), top.Outer.Height())
	for i := range top.Faces {
		fmt.Fprintf(&picture, `<polygon fill="%s" points="`, top.Fabrics[top.Faces[i].Fabric].Colour.Hex())
		for _, p := range top.Faces[i].Outline {
			fmt.Fprintf(&picture, "%d,%d ", p.X, p.Y)
		}
		fmt.Fprint(&picture, `"/>`)
	}
	fmt.Fprint(&picture, `</svg>`)
	cmd := exec.Command(rsvg, "-w", fmt.Sprint(s.Width), "-h", fmt.Sprint(s.Height))
	cmd.Stdin = &picture
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestPaintAgainstAnotherRenderer: well inside a face both give the very same bytes.
func TestPaintAgainstAnotherRenderer(t *testing.T) {
	top := lay.Top(t, webs(4, 3))
	s := sized(t, top, 640)
	other, err := png.Decode(bytes.NewReader(drawn(t, top, s)))
	if err != nil {
		t.Fatal(err)
	}
	if b := other.Bounds(); b.Dx() != s.Width || b.Dy() != s.Height {
		t.Fatalf("the other picture is %v, ours %v", b, s)
	}
	ours, faces := Paint(top, s, own(top)), FaceAt(top, s)
	compared := 0
	for y := 1; y < s.Height-1; y++ {
		for x := 1; x < s.Width-1; x++ {
			if !alone(faces, s, x, y) {
				continue
			}
			compared++
			r, g, b, _ := other.At(x, y).RGBA()
			if c := ours.NRGBAAt(x, y); uint32(c.R) != r>>8 || uint32(c.G) != g>>8 || uint32(c.B) != b>>8 {
				t.Fatalf("%d, %d is %v, expected %d %d %d", x, y, c, r>>8, g>>8, b>>8)
			}
		}
	}
	if compared < s.Width*s.Height/2 {
		t.Errorf("only %d pixels were compared", compared)
	}
}

// TestSquintAgainstAnotherBlur: the same top painted by another renderer at four times the
// size, brought down and blurred by ImageMagick in linear light. The renderer mixes the
// pixels along seams in encoded bytes, and its edge is handled otherwise; so a band along
// the edge is left out and a small difference allowed.
func TestSquintAgainstAnotherBlur(t *testing.T) {
	magick := program(t, "convert", "-version", "ImageMagick")
	top := lay.Top(t, webs(4, 3))
	s := sized(t, top, 500)
	for _, sigma := range []float64{2, 5, 11} {
		theirs := blurredElsewhere(t, magick, top, s, sigma)
		ours := luminance(top, s, own(top)).blurred(sigma)
		var differences []float64
		edge := int(3*sigma) + 1
		for y := edge; y < s.Height-edge; y++ {
			for x := edge; x < s.Width-edge; x++ {
				d := palettes.LightnessOf(float64(ours.Luminance[y*s.Width+x])) - palettes.LightnessOf(theirs[y*s.Width+x])
				differences = append(differences, math.Abs(d))
			}
		}
		slices.Sort(differences)
		middle, worst := differences[len(differences)/2], differences[len(differences)*999/1000]
		t.Logf("sigma %g: median %.3f L*, 999 of 1000 within %.3f", sigma, middle, worst)
		if middle > 0.15 || worst > 1 {
			t.Errorf("sigma %g: the two blurs are %.3f L* apart at the median, %.3f at 999 of 1000", sigma, middle, worst)
		}
	}
}

// blurredElsewhere is the luminance of each pixel, 0 to 1, by other programs.
func blurredElsewhere(t *testing.T, magick string, top *quilt.Top, s Size, sigma float64) []float64 {
	t.Helper()
	cmd := exec.Command(magick, "png:-", "-alpha", "off", "-depth", "16", "-colorspace", "RGB",
		"-scale", fmt.Sprintf("%dx%d!", s.Width, s.Height), "-blur", fmt.Sprintf("0x%g", sigma), "-colorspace", "sRGB", "-endian", "MSB", "-depth", "16", "rgb:-")
	cmd.Stdin = bytes.NewReader(drawn(t, top, Size{4 * s.Width, 4 * s.Height}))
	var out, complaints bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil {
		t.Fatalf("%v: %s", err, complaints.String())
	}
	raw := out.Bytes()
	if len(raw) != 6*s.Width*s.Height {
		t.Fatalf("%d bytes came back, expected %d", len(raw), 6*s.Width*s.Height)
	}
	list := make([]float64, s.Width*s.Height)
	for i := range list {
		channel := func(n int) float64 { return decoded(float64(binary.BigEndian.Uint16(raw[6*i+2*n:])) / 65535) }
		list[i] = 0.2126*channel(0) + 0.7152*channel(1) + 0.0722*channel(2) // the weights of IEC 61966-2-1
	}
	return list
}

// decoded is the linear light of an sRGB channel of 0 to 1 (IEC 61966-2-1).
func decoded(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}
