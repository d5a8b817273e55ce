package palettes_test

import (
	"bytes"
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
