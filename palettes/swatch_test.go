package palettes

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"runtime"
	"strings"
	"testing"
)

// painted is a PNG file whose pixels are the colours that at gives.
func painted(t testing.TB, width, height int, at func(x, y int) Colour) []byte {
	t.Helper()
	m := image.NewNRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			c := at(x, y)
			m.SetNRGBA(x, y, color.NRGBA{c.R, c.G, c.B, 255})
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// block is one block of a PNG file.
func block(name string, data []byte) []byte {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	b = append(append(b, name...), data...)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
}

// withBlock is a PNG file with a block behind its header.
func withBlock(file []byte, name string, data []byte) []byte {
	const header = 33
	return bytes.Join([][]byte{file[:header], block(name, data), file[header:]}, nil)
}

// profileBlock is the data of an iCCP block.
func profileBlock(profile []byte) []byte {
	b := bytes.NewBufferString("p\x00\x00")
	z := zlib.NewWriter(b)
	_, _ = z.Write(profile)
	_ = z.Close()
	return b.Bytes()
}

// noise is a number from -1 to 1 that is the same for the same place.
func noise(x, y int) float64 {
	n := uint32(x)*2654435761 + uint32(y)*2246822519
	n ^= n >> 15
	n *= 2654435761
	n ^= n >> 13
	return float64(n%2001)/1000 - 1
}

func TestPlainClothIsItself(t *testing.T) {
	for _, want := range []Colour{{31, 51, 80}, {244, 234, 215}, {0, 0, 0}, {255, 255, 255}, {181, 83, 42}} {
		c, err := ReadSwatch(nil, painted(t, 60, 40, func(int, int) Colour { return want }))
		if err != nil {
			t.Fatal(err)
		}
		if c.Colour != want || c.Spread > 1e-9 || len(c.Colours) != 1 || c.Colours[0] != (Part{want, 1}) {
			t.Errorf("%s came back as %+v", want.Hex(), c)
		}
	}
}

// TestCheckedClothMixesLight: black and white squares of one size make the grey of half the
// light, L* 76.07, and not the 53.4 of the mean of their bytes (CIE 15:2004, from Y 0.5).
func TestCheckedClothMixesLight(t *testing.T) {
	squares := func(x, y int) Colour {
		if (x/4+y/4)%2 == 0 {
			return Colour{240, 240, 240}
		}
		return Colour{}
	}
	c, err := ReadSwatch(nil, painted(t, 200, 200, squares))
	if err != nil {
		t.Fatal(err)
	}
	want := LightnessOf(Colour{240, 240, 240}.Luminance() / 2)
	near(t, "mean", c.Lightness, want, 0.05)
	if len(c.Colours) != 2 || math.Abs(c.Colours[0].Share-0.5) > 0.01 {
		t.Errorf("the colours are %v, expected two halves", c.Colours)
	}
	if c.Spread < 45 || c.Darkest > 1 || c.Lightest < 94 {
		t.Errorf("spread %.1f from %.1f to %.1f", c.Spread, c.Darkest, c.Lightest)
	}
}

// twoTone is a print with noise, light that falls off to one side, 3 in 100 glare and 2 in
// 100 creases.
func twoTone(x, y int) Colour {
	base := Colour{205, 133, 63}
	if (x/9+y/7)%3 == 0 {
		base = Colour{139, 60, 40}
	}
	switch n := noise(x/3+1000, y/3); {
	case n > 0.94:
		return Colour{255, 254, 252}
	case n < -0.96:
		return Colour{8, 6, 5}
	}
	l := base.Linear()
	light := (1.05 - 0.1*float64(x)/400) * (1 + 0.06*noise(x, y))
	return Linear{l.R * light, l.G * light, l.B * light}.Colour()
}

func TestGlareAndCreasesAreLeftOut(t *testing.T) {
	c, err := ReadSwatch(nil, painted(t, 400, 300, twoTone))
	if err != nil {
		t.Fatal(err)
	}
	a, b := Colour{205, 133, 63}.Linear(), Colour{139, 60, 40}.Linear()
	truth := Linear{(2*a.R + b.R) / 3, (2*a.G + b.G) / 3, (2*a.B + b.B) / 3}
	if d := c.Colour.Lab().difference(truth.lab()); d > 1 {
		t.Errorf("the mean is %s, %.2f from the truth %s", c.Colour.Hex(), d, truth.Colour().Hex())
	}
	if len(c.Colours) != 2 {
		t.Errorf("found the colours %v, expected two", c.Colours)
	}
}

// TestRareLightMotifIsKept: one square in ten is as white as glare; it is part of the print.
func TestRareMotifIsKept(t *testing.T) {
	c, err := ReadSwatch(nil, painted(t, 300, 300, func(x, y int) Colour {
		if x/10%5 == 0 && y/10%2 == 0 {
			return Colour{245, 245, 245}
		}
		return Colour{20, 30, 70}
	}))
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Colours) != 2 || math.Abs(c.Colours[1].Share-0.1) > 0.03 {
		t.Errorf("found the colours %v, expected a tenth of white", c.Colours)
	}
}

// TestSwatchIsTheSameEveryTime: nothing in it is left to chance.
func TestSwatchIsTheSameEveryTime(t *testing.T) {
	file := painted(t, 120, 90, twoTone)
	first, err := ReadSwatch(nil, file)
	if err != nil {
		t.Fatal(err)
	}
	for range 100 {
		c, _ := ReadSwatch(nil, file)
		if c.Colour != first.Colour || c.Spread != first.Spread || len(c.Colours) != len(first.Colours) {
			t.Fatalf("%+v, then %+v", first, c)
		}
	}
}

func TestPaletteOfAPhoto(t *testing.T) {
	cloths := []Colour{{244, 234, 215}, {31, 51, 80}, {181, 83, 42}, {128, 128, 128}, {47, 125, 131}}
	p, err := ReadSwatches(painted(t, 500, 100, func(x, _ int) Colour { return cloths[x/100] }), "windowsill", 5)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Fabrics) != 5 {
		t.Fatalf("found %v", p.Fabrics)
	}
	for i, f := range p.Fabrics {
		found := false
		for _, c := range cloths {
			found = found || f.Colour == c
		}
		if !found || f.Name == "" || i > 0 && f.Colour.Lightness() < p.Fabrics[i-1].Colour.Lightness() {
			t.Errorf("fabric %d is %v", i, f)
		}
	}
	if w := p.inWords(); w.Fabrics[0].Name != p.Fabrics[0].Name {
		t.Errorf("%q is not a name for a layout", p.Fabrics[0].Name)
	}
}

// header is the beginning of a PNG file of some size.
func header(width, height uint32) []byte {
	data := binary.BigEndian.AppendUint32(nil, width)
	data = binary.BigEndian.AppendUint32(data, height)
	return append([]byte(pngSignature), block("IHDR", append(data, 8, 2, 0, 0, 0))...)
}

// jpegHeader is the beginning of a JPEG file of some size.
func jpegHeader(width, height int) []byte {
	return []byte{
		0xff, 0xd8, 0xff, 0xc0, 0, 17, 8, byte(height >> 8), byte(height), byte(width >> 8), byte(width),
		3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1,
		0xff, 0xda, 0, 12, 3, 1, 0, 2, 0x11, 3, 0x11, 0, 63, 0,
	}
}

func TestPhotosThatAreRefused(t *testing.T) {
	good := painted(t, 8, 8, func(int, int) Colour { return Colour{90, 90, 90} })
	cut := append(bytes.Clone(good[:33]), 0xff, 0xff, 0xff, 0xff, 'e', 'X', 'I', 'f')
	for _, c := range []struct {
		name string
		file []byte
		says string
	}{
		{"nothing", nil, "empty"},
		{"text", []byte("a quilt"), "expected a JPEG or PNG"},
		{"HEIC", []byte("\x00\x00\x00\x18ftypheic----"), "HEIC"},
		{"200 megapixels, PNG", header(20_000, 10_000), "40 million"},
		{"200 megapixels, JPEG", jpegHeader(20_000, 10_000), "40 million"},
		{"a side without end", header(1<<31-1, 1), "40 million"},
		{"no side", header(0, 5), "header"},
		{"a block longer than the file", cut, "cut off"},
		{"a header alone", header(6000, 6000), "cannot be read"},
		{"a JPEG header alone", jpegHeader(6000, 6000), "cannot be read"},
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := ReadSwatch(nil, c.file)
		runtime.ReadMemStats(&after)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, expected something about %q", c.name, err, c.says)
		}
		if got := after.TotalAlloc - before.TotalAlloc; strings.Contains(c.says, "million") && got > 1<<20 {
			t.Errorf("%s: %d bytes were taken before it was refused", c.name, got)
		}
	}
}

// TestProfileThatUnpacksWithoutEnd: it is left out before anything unpacks it whole.
func TestProfileThatUnpacksWithoutEnd(t *testing.T) {
	file := painted(t, 40, 40, func(int, int) Colour { return Colour{10, 120, 60} })
	bomb := withBlock(file, "iCCP", profileBlock(make([]byte, 64<<20)))
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	c, err := ReadSwatch(nil, bomb)
	runtime.ReadMemStats(&after)
	if err != nil || c.Colour != (Colour{10, 120, 60}) {
		t.Errorf("%v, %v", c.Colour, err)
	}
	if got := after.TotalAlloc - before.TotalAlloc; got > 8<<20 {
		t.Errorf("%d MB were taken", got>>20)
	}
}

// TestShortColourSpaceBlock: the decoder reads four bytes of it without looking.
func TestShortColourSpaceBlock(t *testing.T) {
	file := painted(t, 40, 40, func(int, int) Colour { return Colour{10, 120, 60} })
	if c, err := ReadSwatch(nil, withBlock(file, "cICP", []byte{1})); err != nil || c.Colour != (Colour{10, 120, 60}) {
		t.Errorf("%v, %v", c.Colour, err)
	}
}

// Judges.

// fixed is a number as profiles write it: 16 bits before the point and 16 behind it (ICC.1:2010, section 4.6).
func fixed(v float64) []byte {
	return binary.BigEndian.AppendUint32(nil, uint32(int32(math.Round(v*65536))))
}

// xyz is a tag of a color, relative to D50.
func xyz(x, y, z float64) []byte {
	return bytes.Join([][]byte{[]byte("XYZ \x00\x00\x00\x00"), fixed(x), fixed(y), fixed(z)}, nil)
}

// profileTag is one entry of a profile.
type profileTag struct {
	name string
	data []byte
}

// srgbCurve is the curve of sRGB, as IEC 61966-2-1 has it.
func srgbCurve() []byte {
	curve := []byte("para\x00\x00\x00\x00\x00\x03\x00\x00")
	for _, v := range []float64{2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045} {
		curve = append(curve, fixed(v)...)
	}
	return curve
}

// profileOf is a monitor's profile (ICC.1:2010, section 7) of a space: "RGB " or "GRAY".
func profileOf(space string, tags ...profileTag) []byte {
	text := []byte("desc\x00\x00\x00\x00\x00\x00\x00\x02P\x00" + strings.Repeat("\x00", 78+4))
	tags = append([]profileTag{{"desc", text}, {"wtpt", xyz(0.9642, 1, 0.8249)}}, tags...)
	head := make([]byte, 128)
	copy(head[8:], "\x02\x40\x00\x00mntr"+space+"XYZ ")
	copy(head[36:], "acsp")
	copy(head[68:], append(append(fixed(0.9642), fixed(1)...), fixed(0.8249)...))
	table := binary.BigEndian.AppendUint32(nil, uint32(len(tags)))
	at := 128 + 4 + 12*len(tags)
	var body []byte
	for _, tag := range tags {
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
		table = append(table, tag.name...)
		table = binary.BigEndian.AppendUint32(table, uint32(at+len(body)))
		table = binary.BigEndian.AppendUint32(table, uint32(len(tag.data)))
		body = append(body, tag.data...)
	}
	profile := bytes.Join([][]byte{head, table, body}, nil)
	binary.BigEndian.PutUint32(profile, uint32(len(profile)))
	return profile
}

// displayP3 is a colour profile of the Display P3 primaries, brought to D50 as ICC.1:2010
// asks (the values that Apple publishes in its Display P3 profile), with the curve of sRGB.
func displayP3() []byte {
	curve := srgbCurve()
	return profileOf("RGB ",
		profileTag{"rXYZ", xyz(0.51512, 0.24120, -0.00105)}, profileTag{"gXYZ", xyz(0.29198, 0.69225, 0.04189)}, profileTag{"bXYZ", xyz(0.15710, 0.06657, 0.78407)},
		profileTag{"rTRC", curve}, profileTag{"gTRC", curve}, profileTag{"bTRC", curve})
}

// TestColourProfileIsHonoured against the matrices of CSS Color 4, section 18: Display P3 to
// XYZ and XYZ to sRGB, in linear light.
func TestColourProfileIsHonoured(t *testing.T) {
	for _, p3 := range []Colour{{234, 51, 35}, {120, 140, 90}, {60, 90, 160}, {200, 200, 200}} {
		l := p3.Linear()
		x := 0.4865709486482162*l.R + 0.26566769316909306*l.G + 0.1982172852343625*l.B
		y := 0.2289745640697488*l.R + 0.6917385218365064*l.G + 0.079286914093745*l.B
		z := 0.04511338185890264*l.G + 1.043944368900976*l.B
		want := Linear{
			3.2409699419045226*x - 1.537383177570094*y - 0.4986107602930034*z,
			-0.9692436362808796*x + 1.8759675015077202*y + 0.04155505740717559*z,
			0.05563007969699366*x - 0.20397695888897652*y + 1.0569715142428786*z,
		}.Colour()
		plain := painted(t, 40, 40, func(int, int) Colour { return p3 })
		for _, file := range [][]byte{withBlock(plain, "iCCP", profileBlock(displayP3())), withBlock(plain, "cICP", []byte{12, 13, 0, 1})} {
			c, err := ReadSwatch(nil, file)
			if err != nil {
				t.Fatal(err)
			}
			if d := Difference(c.Colour, want); d > 0.8 {
				t.Errorf("%s in Display P3 is read as %s, expected %s (%.2f off)", p3.Hex(), c.Colour.Hex(), want.Hex(), d)
			}
		}
		if c, err := ReadSwatch(nil, withBlock(plain, "cICP", []byte{1, 13, 0, 1})); err != nil || c.Colour != p3 {
			t.Errorf("%s said to be sRGB is read as %s, %v", p3.Hex(), c.Colour.Hex(), err)
		}
		if _, err := ReadSwatch(nil, withBlock(plain, "cICP", []byte{9, 16, 0, 1})); err == nil {
			t.Error("a photo of a high dynamic range is taken for an ordinary one")
		}
	}
}

// TestOrientationIsHonoured: a camera held on its side says so in the tag 0x0112 (Exif 2.32,
// section 4.6.4); 6 asks for a quarter turn.
func TestOrientationIsHonoured(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 64, 32))
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		t.Fatal(err)
	}
	note := []byte("Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00")
	segment := append([]byte{0xff, 0xe1, 0, byte(len(note) + 2)}, note...)
	file := bytes.Join([][]byte{b.Bytes()[:2], segment, b.Bytes()[2:]}, nil)
	turned, err := decoded(nil, file)
	if err != nil {
		t.Fatal(err)
	}
	if turned.Bounds().Dx() != 32 || turned.Bounds().Dy() != 64 {
		t.Errorf("the photo is %v, expected 32 by 64", turned.Bounds())
	}
}

// FuzzReadSwatch: whatever the bytes, there is cloth or a fault, and never a panic.
func FuzzReadSwatch(f *testing.F) {
	file := painted(f, 6, 5, twoTone)
	f.Add(file)
	f.Add(header(20_000, 10_000))
	f.Add(jpegHeader(20_000, 10_000))
	f.Add(withBlock(file, "iCCP", profileBlock(displayP3())))
	f.Add(withBlock(file, "eXIf", []byte("MM\x00\x2a\x00\x00\x00\x08")))
	var b bytes.Buffer
	_ = jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, 9, 9)), nil)
	f.Add(b.Bytes())
	f.Fuzz(func(t *testing.T, file []byte) {
		if len(file) > 1<<16 {
			t.Skip()
		}
		if w, h, ok := claimed(file); ok && w*h > 1<<20 && w*h <= MaxPhotoPixels {
			t.Skip() // takes its time, and is no other case
		}
		c, err := ReadSwatch(nil, file)
		if err == nil && (len(c.Colours) == 0 || math.IsNaN(c.Lightness) || c.Darkest > c.Lightest) {
			t.Errorf("%+v", c)
		}
		if err != nil && err.Error() == "" {
			t.Error("a fault without words")
		}
	})
}

// claimed is the size that a file says it has.
func claimed(file []byte) (w, h int, ok bool) {
	c, _, err := image.DecodeConfig(bytes.NewReader(file))
	return c.Width, c.Height, err == nil
}
