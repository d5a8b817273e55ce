package palettes

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"slices"
	"strings"
	"testing"
)

// photoFile is a photo put together so that what it holds is looked at, whatever that is: its checksums and its lengths are right. The kind
// says whether it is a PNG and of which sort, or a JPEG; notes, profile and code are a camera's.
func photoFile(kind, width, height uint8, pixels, notes, profile, code []byte) []byte {
	if kind&1 == 1 {
		return jpegFile(kind, width, height, pixels, notes, profile)
	}
	sort := [...]struct{ depth, colour byte }{{8, 2}, {8, 6}, {8, 0}, {1, 3}, {16, 2}, {4, 3}, {2, 0}, {8, 4}}[kind>>1&7]
	head := binary.BigEndian.AppendUint32(nil, uint32(width))
	head = binary.BigEndian.AppendUint32(head, uint32(height))
	file := append([]byte(pngSignature), block("IHDR", append(head, sort.depth, sort.colour, 0, 0, kind>>4&1))...)
	add := func(name string, data []byte) {
		if len(data) > 0 {
			file = append(file, block(name, data)...)
		}
	}
	add("cICP", code)
	if len(profile) > 0 {
		add("iCCP", profileBlock(profile))
	}
	if sort.colour == 3 {
		add("PLTE", []byte{1, 2, 3, 240, 200, 100, 90, 20, 30, 250, 251, 252})
		if kind>>5&1 == 1 {
			add("tRNS", []byte{0, 255, 128})
		}
	}
	add("eXIf", notes)
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	_, _ = z.Write(pixels)
	_ = z.Close()
	add("IDAT", packed.Bytes())
	return append(file, block("IEND", nil)...)
}

// jpegFile has its notes and its profile, in two parts, between the beginning and the picture.
func jpegFile(kind, width, height uint8, pixels, notes, profile []byte) []byte {
	at := func(x, y int) color.RGBA {
		var c [3]byte
		if n := len(pixels); n > 0 {
			for i := range c {
				c[i] = pixels[(3*(y*int(width)+x)+i)%n]
			}
		}
		return color.RGBA{c[0], c[1], c[2], 255}
	}
	var m image.Image
	if size := image.Rect(0, 0, int(width), int(height)); kind>>1&1 == 1 {
		gray := image.NewGray(size)
		for i := range gray.Pix {
			gray.Pix[i] = at(i%int(width), i/int(width)).R
		}
		m = gray
	} else {
		rgb := image.NewRGBA(size)
		for i := range int(width) * int(height) {
			rgb.SetRGBA(i%int(width), i/int(width), at(i%int(width), i/int(width)))
		}
		m = rgb
	}
	var b bytes.Buffer
	if jpeg.Encode(&b, m, &jpeg.Options{Quality: 60 + int(kind>>4)}) != nil {
		return nil
	}
	segment := func(marker byte, parts ...[]byte) []byte {
		data := slices.Concat(parts...)
		return append(binary.BigEndian.AppendUint16([]byte{0xff, marker}, uint16(len(data)+2)), data...)
	}
	file := bytes.Clone(b.Bytes()[:2])
	if len(notes) > 0 {
		file = append(file, segment(markerExif, []byte(exifBegins), notes)...)
	}
	if half := len(profile) / 2; half > 0 {
		file = append(file, segment(markerProfile, []byte(profileBegins), []byte{2, 2}, profile[half:])...)
		file = append(file, segment(markerProfile, []byte(profileBegins), []byte{1, 2}, profile[:half])...)
	}
	return append(file, b.Bytes()[2:]...)
}

// wrongSample says what of a photo's sample cannot be of a photo of that size.
func wrongSample(c *PhotoSample, width, height int) error {
	if (c.Width != width || c.Height != height) && (c.Width != height || c.Height != width) {
		return fmt.Errorf("it is %d by %d, the header says %d by %d", c.Width, c.Height, width, height)
	}
	shares := 0.0
	for i, p := range c.Colours {
		if shares += p.Share; p.Share <= 0 || i > 0 && p.Share > c.Colours[i-1].Share {
			return fmt.Errorf("the colors are %v", c.Colours)
		}
	}
	if n := len(c.Colours); n < 1 || n > mostParts || shares > 1+1e-9 || shares < 1-leastShare*(mostParts-1) { // those of few points are left out
		return fmt.Errorf("the colors are %v", c.Colours)
	}
	if !(c.Lightness >= 0 && c.Lightness <= 100.001 && c.Darkest >= 0 && c.Darkest <= c.Lightest && c.Lightest <= 100.001 && c.Spread >= 0 && c.Spread <= 50.001) {
		return fmt.Errorf("L* %g, %g to %g, spread %g", c.Lightness, c.Darkest, c.Lightest, c.Spread)
	}
	size := c.Tile.Bounds().Size()
	if size.X < 1 || size.Y < 1 || max(size.X, size.Y) > maxTilePixels || !c.Tile.Opaque() {
		return fmt.Errorf("the tile is %v, opaque: %v", size, c.Tile.Opaque())
	}
	return nil
}

// FuzzPhoto reads photos of every sort that are whole, with anything that a camera may have noted: what is read is a photo of that size, the
// same each time, and its palette can be kept in a file; what is refused says so in a sentence.
func FuzzPhoto(f *testing.F) {
	pixels := slices.Repeat([]byte{0, 1, 20, 200, 255, 90}, 20)
	for kind := range uint8(16) {
		f.Add(kind<<1, uint8(5), uint8(4), pixels, []byte(nil), []byte(nil), []byte(nil))
	}
	for held := range uint16(10) {
		f.Add(uint8(held)<<4+uint8(held)%2, uint8(5), uint8(4), pixels, heldNotes(binary.BigEndian, held), []byte(nil), []byte(nil))
	}
	f.Add(uint8(0), uint8(5), uint8(4), pixels, heldNotes(binary.LittleEndian, 6), displayP3(), []byte{12, 13, 0, 1})
	f.Add(uint8(1), uint8(5), uint8(4), pixels, []byte(nil), displayP3(), []byte(nil))
	f.Add(uint8(0), uint8(5), uint8(4), pixels, []byte(nil), displayP3(), []byte(nil))
	f.Fuzz(func(t *testing.T, kind, width, height uint8, pixels, notes, profile, code []byte) {
		if width == 0 || height == 0 || int(width)*int(height) > 2000 || len(pixels)+len(notes)+len(profile)+len(code) > 20_000 {
			return // larger is no other case
		}
		file := photoFile(kind, width, height, pixels, notes, profile, code)
		c, err := ReadSwatch(nil, file)
		again, fault := ReadSwatch(nil, file)
		p, noPalette := ReadSwatches(file, "stash", 2+int(kind>>4))
		if (err == nil) != (fault == nil) || (err == nil) != (noPalette == nil) {
			t.Fatalf("%v, then %v, then %v", err, fault, noPalette)
		}
		if err != nil {
			if len(err.Error()) < 20 || err.Error() != fault.Error() {
				t.Errorf("refused with %q, then %q", err, fault)
			}
			return
		}
		if wrong := wrongSample(&c, int(width), int(height)); wrong != nil {
			t.Error(wrong)
		}
		if c.Colour != again.Colour || c.Spread != again.Spread || !slices.Equal(c.Colours, again.Colours) || !bytes.Equal(c.Tile.Pix, again.Tile.Pix) {
			t.Errorf("%v, then %v", c, again)
		}
		if len(p.Fabrics) < 1 || len(p.Fabrics) > 2+int(kind>>4) || InValueOrder(slices.Clone(p.Fabrics))[0] != p.Fabrics[0] {
			t.Errorf("the palette is %v", p.Fabrics)
		}
		if wrong := readsBack(Formats()[0], p); wrong != nil {
			t.Error(wrong)
		}
	})
}

// TestWrongSampleIsNoticed: another size, colors that are more than all of it, a tile that is see-through.
func TestWrongSampleIsNoticed(t *testing.T) {
	for i, broken := range []func(c *PhotoSample){
		func(c *PhotoSample) {}, func(c *PhotoSample) { c.Width++ }, func(c *PhotoSample) { c.Colours[0].Share += 0.1 }, func(c *PhotoSample) { c.Spread = math.NaN() },
		func(c *PhotoSample) { c.Tile.Pix[3] = 9 }, func(c *PhotoSample) { c.Darkest = c.Lightest + 1 }, func(c *PhotoSample) { c.Colours = nil },
	} {
		c, err := ReadSwatch(nil, photoFile(0, 5, 4, make([]byte, 64), nil, nil, nil))
		if err != nil {
			t.Fatal(err)
		}
		if broken(&c); (wrongSample(&c, 5, 4) != nil) != (i > 0) {
			t.Errorf("breakage %d: %v", i, wrongSample(&c, 5, 4))
		}
	}
}

// FuzzPrints makes of any small picture what prints are shown with: parts of it, joined softly, mirrored, coarser, paler, with margins.
func FuzzPrints(f *testing.F) {
	f.Add([]byte{1, 2, 3, 255, 200, 0}, uint8(3), uint8(2), uint8(1), 0.5, 0.7)
	f.Add([]byte{9}, uint8(1), uint8(1), uint8(0), 0.0, 2.0)
	f.Fuzz(func(t *testing.T, pixels []byte, width, height, by uint8, across, down float64) {
		m := image.NewRGBA(image.Rect(0, 0, 1+int(width%40), 1+int(height%40)))
		for i := range m.Pix {
			m.Pix[i] = 255
			if i%4 != 3 && len(pixels) > 0 {
				m.Pix[i] = pixels[(i-i/4)%len(pixels)]
			}
		}
		if !(across >= 0 && down >= 0) {
			return
		}
		if err := wrongPrints(FirstPart(m, across, down), int(by)); err != nil {
			t.Error(err)
		}
	})
}

// wrongPrints says what of a picture is not as its makers promise.
func wrongPrints(m *image.RGBA, by int) error {
	size := m.Bounds().Size()
	aside := OnItsSide(m)
	if back := OnItsSide(aside); !bytes.Equal(back.Pix, Margined(m, 0).Pix) || aside.Bounds().Dx() != size.Y {
		return errors.New("turned over its diagonal twice it is another")
	}
	for _, lines := range [][]float64{MirrorLines(m), MirrorLines(aside)} {
		for _, at := range lines {
			if !(at >= 0 && at <= 0.5) {
				return fmt.Errorf("mirror lines at %v", lines)
			}
		}
	}
	most := 1 + by%50
	small, wide := Coarser(m, most), Margined(m, by%30)
	if b := small.Bounds(); b.Dx() < 1 || b.Dy() < 1 || max(b.Dx(), b.Dy()) > most || !small.Opaque() {
		return fmt.Errorf("made coarser it is %v, %d were asked for", b, most)
	}
	if b := wide.Bounds(); b.Dx() != size.X+2*(by%30) || !wide.Opaque() || wide.RGBAAt(by%30, by%30) != m.RGBAAt(0, 0) {
		return fmt.Errorf("with margins of %d it is %v", by%30, b)
	}
	joined := JoinedSoftly(m)
	if b := joined.Bounds(); b.Dx() != max(1, int(math.Round(float64(size.X)*JoinedPart))) || !joined.Opaque() {
		return fmt.Errorf("joined it is %v", b)
	}
	pale := Margined(Paler(m, by%101), 0)
	for i, v := range Margined(m, 0).Pix {
		if v > pale.Pix[i] || i%4 < 3 && pale.Pix[i] != uint8((int(v)*(100-by%101)+255*(by%101)+50)/100) {
			return errors.New("paler is no mixture with white")
		}
	}
	for _, l := range Squares(m, most) {
		if !(l.R >= 0 && l.R <= 1.000001 && l.G >= 0 && l.B <= 1.000001) {
			return fmt.Errorf("a square has the light %v", l)
		}
	}
	return nil
}

// FuzzWrite keeps fabrics of any names and colors in files of every format: all colors come back, and what cannot be kept is refused.
func FuzzWrite(f *testing.F) {
	f.Add("stash", "navy", "\u00a0", uint32(0x1f3350))
	f.Add(strings.Repeat("é", 127), strings.Repeat("w ", 200), strings.Repeat("//x", 90), uint32(7))
	f.Add("a\nb", "*/ ; } { \\", "\x00\xff赤 #", uint32(0xffffff))
	f.Fuzz(func(t *testing.T, title, first, second string, colours uint32) {
		p := Palette{Name: title, About: second, Fabrics: []Swatch{{first, Colour{uint8(colours), uint8(colours >> 8), uint8(colours >> 16)}}, {second, Colour{uint8(colours >> 24), 0, uint8(colours)}}, {first, Colour{}}}}
		for _, format := range Formats() {
			var b bytes.Buffer
			if format.Write == nil || format.Write(&b, p) != nil {
				continue
			}
			text := b.String()
			got, err := format.Read(&b)
			if err != nil {
				t.Errorf("%s: %v\n%q", format.Name, err, text)
				continue
			}
			for i := range got.Fabrics {
				got.Fabrics[i].Name = ""
			}
			if err := sameFabrics(got.Fabrics, []Swatch{{"", p.Fabrics[0].Colour}, {"", p.Fabrics[1].Colour}, {}}); err != nil {
				t.Errorf("%s: %v\n%q", format.Name, err, text)
			}
		}
	})
}
