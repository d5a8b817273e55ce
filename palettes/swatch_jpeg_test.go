package palettes_test

import (
	"bytes"
	"image"
	"image/png"
	"slices"
	"strings"
	"testing"

	"eighthturn/palettes"
)

// progressive is a grey JPEG file of 8 by 8 pixels in so many passes, the first for the mean and the others for what varies
// (ITU-T T.81, annexes B, F and G). Each table has the one code 0, so that a byte is a pass.
func progressive(passes int, extra []byte) []byte {
	file := slices.Concat([]byte("\xff\xd8"), extra,
		[]byte("\xff\xdb\x00\x43\x00"), bytes.Repeat([]byte{1}, 64),
		[]byte("\xff\xc2\x00\x0b\x08\x00\x08\x00\x08\x01\x01\x11\x00"),
		[]byte("\xff\xc4\x00\x14\x00\x01"), make([]byte, 16),
		[]byte("\xff\xc4\x00\x14\x10\x01"), make([]byte, 16),
		[]byte("\xff\xda\x00\x08\x01\x01\x00\x00\x00\x00\x7f"))
	for range passes - 1 {
		file = append(file, "\xff\xda\x00\x08\x01\x01\x00\x01\x3f\x00\x7f"...)
	}
	return append(file, "\xff\xd9"...)
}

// A file of a few bytes a pass could keep the program busy for minutes: it is refused before it is decoded.
func TestPhotosInManyPasses(t *testing.T) {
	scan := "\xff\xda\x00\x08\x01\x01\x00\x01\x3f\x00\x7f"
	small := slices.Concat([]byte("\xff\xe1\x08\x9a"), bytes.Repeat([]byte(scan), 200)) // a camera's small picture
	for name, file := range map[string][]byte{
		"one pass":                progressive(1, nil),
		"a hundred passes":        progressive(100, nil),
		"passes inside a segment": progressive(2, small),
		"passes behind the end":   append(progressive(2, nil), bytes.Repeat([]byte(scan), 200)...),
	} {
		if c, err := palettes.ReadSwatch(nil, file); err != nil || c.Colour != (palettes.Colour{R: 128, G: 128, B: 128}) {
			t.Errorf("%s: %v, %v", name, c.Colour, err)
		}
	}
	for name, file := range map[string][]byte{
		"saved in 101 passes":  progressive(101, nil),
		"saved in 9000 passes": progressive(9000, nil),
		"saved in 150 passes":  bytes.ReplaceAll(progressive(150, nil), []byte("\xff\xda"), []byte("\xff\xff\xda")),
	} {
		if _, err := palettes.ReadSwatch(nil, file); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestPixelsOfPhotos: what a photo costs is told with it, passes and all, whether it can be read or not.
func TestPixelsOfPhotos(t *testing.T) {
	var drawn bytes.Buffer
	if err := png.Encode(&drawn, image.NewGray(image.Rect(0, 0, 30, 20))); err != nil {
		t.Fatal(err)
	}
	damaged := bytes.Replace(progressive(25, nil), []byte("\xff\xc4"), []byte("\xff\xe5"), 1)
	for _, c := range []struct {
		name   string
		file   []byte
		pixels int
	}{
		{"one pass", progressive(1, nil), 64},
		{"nine passes", progressive(9, nil), 64},
		{"ten passes", progressive(10, nil), 128},
		{"a hundred passes", progressive(100, nil), 11 * 64},
		{"a PNG", drawn.Bytes(), 600},
		{"damaged", damaged, 3 * 64},
		{"no photo", []byte("no photo"), 0},
	} {
		if s, err := palettes.ReadSwatch(nil, c.file); s.Pixels != c.pixels || s.Bytes != len(c.file) || err != nil && c.name != "damaged" && c.name != "no photo" {
			t.Errorf("%s: %d pixels, %d bytes of %d, wanted %d pixels: %v", c.name, s.Pixels, s.Bytes, len(c.file), c.pixels, err)
		}
	}
}

// What is in memory at once while a photo in passes is decoded is bounded by its header (ITU-T T.81, B.2.2, tables B.1 to B.3): an ordinary
// photo as large is read.
func TestLargePhotosInPasses(t *testing.T) {
	header := func(frame byte, width, height, channels int) []byte {
		b := []byte{0xff, 0xd8, 0xff, frame, 0, byte(8 + 3*channels), 8, byte(height >> 8), byte(height), byte(width >> 8), byte(width), byte(channels)}
		for c := range channels {
			b = append(b, byte(c+1), 0x11, 0)
		}
		return append(b, 0xff, 0xda, 0, 2)
	}
	const ordinary, passes = 0xc0, 0xc2
	for _, c := range []struct {
		frame                   byte
		width, height, channels int
		refused                 bool
	}{
		{passes, 6000, 4000, 3, false}, {passes, 6300, 6300, 3, true}, {passes, 6300, 6300, 1, false}, {passes, 9000, 9000, 1, true}, {passes, 5000, 4000, 4, true},
		{ordinary, 6300, 6300, 3, false}, {ordinary, 6300, 6300, 4, false},
	} {
		_, err := palettes.ReadSwatch(nil, header(c.frame, c.width, c.height, c.channels)) // there is no picture behind the header
		most := map[int]string{1: "up to 75 million", 3: "up to 25 million", 4: "up to 18 million"}[c.channels]
		if err == nil || strings.Contains(err.Error(), "progressive") != c.refused || c.refused && !strings.Contains(err.Error(), most) {
			t.Errorf("%+v: got %v", c, err)
		}
	}
}
