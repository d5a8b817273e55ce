package palettes

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
)

// TestFaultsDeepInFiles: faults that show late in a file, or within a word of it, are told with their place.
func TestFaultsDeepInFiles(t *testing.T) {
	grays := func(n int) []byte {
		return aseFile(n, slices.Repeat([][]byte{aseBlock(aseColour, aseBody("x", "Gray", 0.5))}, n)...)
	}
	if p, err := readASE(bytes.NewReader(grays(maxFabrics))); err != nil || len(p.Fabrics) != maxFabrics {
		t.Errorf("%d colors, %v", len(p.Fabrics), err)
	}
	if _, err := readHexList(strings.NewReader(strings.Repeat("#123456\n", maxFabrics))); err != nil {
		t.Error(err)
	}
	for _, row := range []struct {
		read        func(io.Reader) (Palette, error)
		file        string
		line, block int
		want        string
	}{
		{readASE, string(grays(maxFabrics + 1)), 0, maxFabrics + 1, "more than 4096 colors, far more than a palette needs"},
		{readASE, string(aseFile(1, aseBlock(aseColour, aseBody("x", "Gray")))), 0, 1, `color "x": 2 bytes of numbers, expected 4`},
		{readASE, string(aseFile(1, aseBlock(aseColour, aseBody("x", "LAB ", 1, 2)))), 0, 1, `color "x": 10 bytes of numbers, expected 12`},
		{readASE, string(aseFile(1, aseBlock(aseGroupStart, []byte{0}))), 0, 1, "it ends before its name"},
		{readASE, string(aseFile(1, aseBlock(aseColour, aseBody("x", "RGB ", -0.002, 0, 0)))), 0, 1, "expected 0 to 1 each"},
		{readASE, string(aseFile(1, aseBlock(aseColour, aseBody("x", "RGB ", 0, -0.002, 0)))), 0, 1, "expected 0 to 1 each"},
		{readASE, string(aseFile(1, aseBlock(aseColour, aseBody("x", "RGB ", 0, 0, -0.002)))), 0, 1, "expected 0 to 1 each"},
		{readCSS, "a {}\n'b", 2, 0, "a string begins with ' and does not end on its line"},
		{readCSS, "a\n\"b", 2, 0, "a string begins with \" and does not end on its line"},
		{readCSS, "a {\n--x: red /* \n\n", 2, 0, "a comment begins with /* and does not end, expected */"},
		{readCSS, "a {\n--x: \"red\\", 2, 0, "a string begins with \" and does not end on its line"},
	} {
		_, err := row.read(strings.NewReader(row.file))
		var fault *fileError
		if !errors.As(err, &fault) || fault.Line != row.line || fault.Block != row.block || !strings.Contains(fault.Message, row.want) {
			t.Errorf("%.30q gives %v, expected line %d, block %d: %s", row.file, err, row.line, row.block, row.want)
		}
	}
	p, err := readCSS(strings.NewReader(`a { --s: "a\"; --no: red;"; --t: teal; --u: 'x\\'; --v: navy }`))
	if err != nil {
		t.Fatal(err)
	}
	holds(t, sameFabrics(p.Fabrics, []Swatch{{"t", Colour{0, 128, 128}}, {"v", Colour{0, 0, 128}}}))
}

// TestSlackOfNumbers: numbers that other programs have rounded beyond their range by a little are taken for its ends.
func TestSlackOfNumbers(t *testing.T) {
	for _, c := range []struct {
		model   string
		numbers []float32
		want    Colour
	}{
		{"RGB ", []float32{-0.0009, 1.0009, 0.5}, Colour{0, 255, 128}},
		{"Gray", []float32{1.0009}, Colour{255, 255, 255}},
		{"LAB ", []float32{1.0009, 0, 0}, Colour{255, 255, 255}},
		{"LAB ", []float32{-0.0009, 0, 0}, Colour{0, 0, 0}},
	} {
		p, err := readASE(bytes.NewReader(aseFile(1, aseBlock(aseColour, aseBody("x", c.model, c.numbers...)))))
		if err != nil || p.Fabrics[0].Colour != c.want {
			t.Errorf("%s %v: %v, %v", c.model, c.numbers, p.Fabrics, err)
		}
	}
}

// TestLongWords: a word for a layout is cut so that a number behind it still has room, and ends with a letter of the name.
func TestLongWords(t *testing.T) {
	for _, name := range []string{strings.Repeat("a", 400), strings.Repeat("ab ", 200), strings.Repeat("é", 200)} {
		got := word(name)
		plain := strings.ReplaceAll(name, " ", "-")
		if len(got) < maxWordBytes || len(got) > maxWordBytes+2 || !strings.HasPrefix(plain, got) || strings.HasSuffix(got, "-") {
			t.Errorf("%.6q becomes %d bytes, %q", name, len(got), got)
		}
	}
}

// TestFabricsOfAPhotoAreTold: each by its hue and its value, a gray as one, and a name that comes again with a number.
func TestFabricsOfAPhotoAreTold(t *testing.T) {
	gray := Colour{100, 100, 100}
	list := []Swatch{{"", gray}, {"", Colour{101, 100, 100}}, {"", Colour{31, 51, 80}}, {"", Colour{100, 100, 101}}}
	if got := strings.Join(fabricNames(Palette{Fabrics: byHueAndValue(list)}), " "); got != "grey-42 grey-42-2 blue-21 grey-42-3" {
		t.Errorf("they are called %s", got)
	}
	var clear bytes.Buffer
	if err := png.Encode(&clear, image.NewNRGBA(image.Rect(0, 0, 20, 20))); err != nil {
		t.Fatal(err)
	}
	for says, file := range map[string][]byte{"the photo is empty": nil, "the photo shows nothing: all of it is see-through": clear.Bytes()} {
		if _, err := ReadSwatches(file, "p", 3); err == nil || err.Error() != says {
			t.Errorf("a palette of it: %v, expected %q", err, says)
		}
		if _, err := ReadSwatch(nil, file); err == nil || err.Error() != says {
			t.Errorf("%v, expected %q", err, says)
		}
	}
}

// TestProfilesOfPhotos: one of sRGB changes nothing, one of grays whose numbers are the light itself makes half of it half of the light
// (L* 76.07 from Y 0.5, CIE 15:2004), a block that is no profile is left out, and a broken profile is a fault of the photo.
func TestProfilesOfPhotos(t *testing.T) {
	plain := painted(t, 20, 20, func(int, int) Colour { return Colour{234, 51, 35} })
	curve := srgbCurve()
	srgb := profileOf("RGB ", profileTag{"rXYZ", xyz(0.43607, 0.22249, 0.01392)}, profileTag{"gXYZ", xyz(0.38515, 0.71687, 0.09708)}, profileTag{"bXYZ", xyz(0.14307, 0.06061, 0.71410)},
		profileTag{"rTRC", curve}, profileTag{"gTRC", curve}, profileTag{"bTRC", curve}) // D50 primaries of sRGB, as the ICC publishes them
	for name, file := range map[string][]byte{
		"of sRGB":    withBlock(plain, "iCCP", profileBlock(srgb)),
		"not packed": withBlock(plain, "iCCP", []byte("p\x00\x00no profile")),
		"of no name": withBlock(plain, "iCCP", append([]byte{0, 0}, profileBlock(srgb)[3:]...)),
		"cut off":    withBlock(plain, "iCCP", profileBlock(srgb)[:20]),
	} {
		if s, err := ReadSwatch(nil, file); err != nil || s.Colour != (Colour{234, 51, 35}) {
			t.Errorf("%s: %s, %v", name, s.Colour.Hex(), err)
		}
	}
	if _, err := ReadSwatch(nil, withBlock(plain, "iCCP", profileBlock([]byte("no profile at all, and not a short one")))); err == nil || !strings.Contains(err.Error(), "cannot be read") {
		t.Errorf("a profile that is none: %v", err)
	}
	m := image.NewGray(image.Rect(0, 0, 20, 20))
	for i := range m.Pix {
		m.Pix[i] = 128
	}
	linear := profileOf("GRAY", profileTag{"kTRC", []byte("curv\x00\x00\x00\x00\x00\x00\x00\x00")})
	s, err := ReadSwatch(nil, withBlock(asPNG(t, m), "iCCP", profileBlock(linear)))
	if err != nil || math.Abs(s.Lightness-LightnessOf(128.0/255)) > 0.3 || s.Colour.R != s.Colour.G || s.Colour.G != s.Colour.B {
		t.Errorf("half of the light is %s, L* %.2f, expected %.2f: %v", s.Colour.Hex(), s.Lightness, LightnessOf(128.0/255), err)
	}
	if got := inkParts(color.CMYK{255, 0, 51, 102}); got != [4]float64{1, 0, 0.2, 0.4} {
		t.Errorf("inks are taken for %v", got)
	}
	if got := rgbParts(color.NRGBA64{65535, 0, 13107, 65535}); got != [4]float64{1, 0, 0.2} {
		t.Errorf("a color is taken for %v", got)
	}
	if (view{}).ColorModel() != color.NRGBAModel {
		t.Error("colors of a photo are of another model")
	}
}

// TestInksOfPhotos: the inks of a press come to what its profile says of them (ICC.1:2010, 10.9: tables of bytes, Lab with L* of 255 for 100).
// This press has a black ink that is as dark as its amount, and three others that nobody sees.
func TestInksOfPhotos(t *testing.T) {
	same := make([]byte, 256) // a table that changes nothing
	for i := range same {
		same[i] = byte(i)
	}
	table := append([]byte("mft1\x00\x00\x00\x00"), 4, 3, 2, 0) // four inks to three numbers by a grid of two points for each ink
	for i := range 9 {
		table = append(table, fixed(float64(1-min(1, i%4)))...)
	}
	table = append(table, slices.Repeat(same, 4)...)
	table = append(table, slices.Repeat([]byte{255, 128, 128, 0, 128, 128}, 8)...) // the last ink is the one that changes first
	table = append(table, slices.Repeat(same, 3)...)
	press := profileOf("CMYK", profileTag{"A2B0", table}, profileTag{"A2B1", table})
	copy(press[12:], "prtr")
	copy(press[20:], "Lab ")
	to, err := profiled(image.NewCMYK(image.Rect(0, 0, 1, 1)), press)
	if err != nil || to == nil {
		t.Fatal(err)
	}
	for _, black := range []byte{0, 51, 102, 204, 255} {
		r, g, b := to(color.CMYK{90, 10, 200, black})
		want := 100 - float64(black)/255*100
		seen := Colour{uint8(math.Round(255 * r)), uint8(math.Round(255 * g)), uint8(math.Round(255 * b))}
		if got := seen.Lightness(); math.Abs(got-want) > 0.5 || math.Abs(r-g) > 0.01 || math.Abs(g-b) > 0.01 {
			t.Errorf("black of %d is %v %v %v, L* %.2f, expected %.2f", black, r, g, b, got, want)
		}
	}
}

// TestMirrorLinesInOrder: a print that is the same twice across, and its own mirror image, has two lines, the clearest first.
func TestMirrorLinesInOrder(t *testing.T) {
	// twice is a band of two like hills, with a stain of some strength on both sides of one place: mirrored there, and less so elsewhere.
	twice := func(stain int, at int) *image.RGBA {
		const width = 128
		m := image.NewRGBA(image.Rect(0, 0, width, 4))
		for y := range 4 {
			for x := range width {
				v := 128 + 90*math.Cos(4*math.Pi*(float64(x)+0.5)/width)
				if d := (x - at + width) % width; d > 4 && d < 12 || d > width-13 && d < width-5 {
					v -= float64(stain)
				}
				m.SetRGBA(x, y, color.RGBA{uint8(v), uint8(v), uint8(v), 255})
			}
		}
		return m
	}
	near := func(got []float64, want ...float64) bool {
		return len(got) == len(want) && !slices.ContainsFunc(want, func(w float64) bool {
			return math.Abs(math.Remainder(got[slices.Index(want, w)]-w, 0.5)) > 0.006
		})
	}
	if got := MirrorLines(twice(0, 0)); !near(got, 0, 0.25) {
		t.Errorf("without a stain the lines are at %v", got)
	}
	if got := MirrorLines(twice(25, 0)); !near(got, 0, 0.25) {
		t.Errorf("stained beside the first the lines are at %v", got)
	}
	if got := MirrorLines(twice(25, 32)); !near(got, 0.25, 0) {
		t.Errorf("stained beside the second the lines are at %v", got)
	}
}

// TestNearlyTheSameAlong: a print that changes by less than so much from place to place counts as the same all along, and one that changes by
// a little more has its line where it is its own mirror image.
func TestNearlyTheSameAlong(t *testing.T) {
	const wide, at = 80, 0.1
	for _, rms := range []float64{1.2, 1.4, 1.6, 2} {
		m := image.NewRGBA(image.Rect(0, 0, wide, 40))
		for y := range 40 {
			for x := range wide {
				lightness := 50 + rms*math.Sqrt2*math.Cos(2*math.Pi*((float64(x)+0.5)/wide-at))
				level := math.Round(255*encoded(LuminanceOf(lightness)) + [...]float64{-0.375, 0.125, -0.125, 0.375}[y%4]) // so that four rows come to the level between
				m.SetRGBA(x, y, color.RGBA{uint8(level), uint8(level), uint8(level), 255})
			}
		}
		lines := MirrorLines(m)
		if want := map[bool]float64{true: 0, false: at}[rms < sameAlong]; len(lines) == 0 || math.Abs(lines[0]-want) > 0.02 {
			t.Errorf("a change of %.1f: lines at %v, want %.2f", rms, lines, want)
		}
	}
}

// encoded is a part of light as a part of a byte of sRGB (IEC 61966-2-1).
func encoded(y float64) float64 {
	if y <= 0.0031308 {
		return 12.92 * y
	}
	return 1.055*math.Pow(y, 1/2.4) - 0.055
}

// TestNearlyOpaquePoints: a point that a monitor shows as if it were opaque is cloth, and one that is a step of a byte less is not.
func TestNearlyOpaquePoints(t *testing.T) {
	for alpha, want := range map[uint16]bool{0xffff: true, 0xff00: true, 0xfeff: false} {
		m := image.NewNRGBA64(image.Rect(0, 0, 20, 20))
		for y := range 20 {
			for x := range 20 {
				m.SetNRGBA64(x, y, color.NRGBA64{0x8000, 0x4000, 0x2000, alpha})
			}
		}
		if got := sampled(nil, m); (len(got) > 0) != want {
			t.Errorf("points of %#x are %d points of cloth", alpha, len(got))
		}
	}
}

// TestFirstOfTheNearest: a point that is as near to one center as to another is the first one's.
func TestFirstOfTheNearest(t *testing.T) {
	of := []int{9, 9, 9}
	if !settle(of, []OKLab{{L: 0.5}, {L: 0.2}, {L: 0.9}}, []OKLab{{L: 0.25}, {L: 0.75}}) || !slices.Equal(of, []int{0, 0, 1}) {
		t.Errorf("points are given to %v", of)
	}
	if settle(of, []OKLab{{L: 0.5}, {L: 0.2}, {L: 0.9}}, []OKLab{{L: 0.25}, {L: 0.75}}) {
		t.Error("the same again is a change")
	}
}
