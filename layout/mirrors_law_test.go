package layout

import (
	"image"
	"image/color"
	"reflect"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// TestMirrorLinesThatAreTaken: a place is mirrored at any line along the selvages, else at any from selvage to selvage, else at the clearest of
// those along them, else at the clearest of the others; and a print has none where none of the four is there.
func TestMirrorLinesThatAreTaken(t *testing.T) {
	for n := range 16 {
		l := &MirrorLines{AnyLengthwise: n&1 != 0, AnyCrosswise: n&2 != 0}
		if n&4 != 0 {
			l.Lengthwise = []measure.NM{30, 70}
		}
		if n&8 != 0 {
			l.Crosswise = []measure.NM{40, 90}
		}
		var want *MirrorLine
		switch {
		case n&1 != 0:
			want = &MirrorLine{At: 5}
		case n&2 != 0:
			want = &MirrorLine{Crosswise: true, At: 6}
		case n&4 != 0:
			want = &MirrorLine{At: 30}
		case n&8 != 0:
			want = &MirrorLine{Crosswise: true, At: 40}
		}
		if got := l.Line(5, 6); !reflect.DeepEqual(got, want) || l.None() != (want == nil) {
			t.Errorf("%+v is mirrored at %+v, expected %+v; none: %v", l, got, want, l.None())
		}
	}
}

// TestMirrorLinesOfAPhoto: a print that is drawn as its own mirror image at a quarter of its repeat is found so there and half a repeat further
// on, across and down, each as a length of the cloth; what lies beyond the first repeat plays no part.
func TestMirrorLinesOfAPhoto(t *testing.T) {
	const in = measure.Inch
	tile := image.NewRGBA(image.Rect(0, 0, 80, 60))
	for y := range 60 {
		for x := range 80 {
			c := color.RGBA{200, 30, 90, 255}
			if x < 40 && y < 30 {
				across := (x + 30) % 40 // from the line at 10 on
				c = color.RGBA{uint8(12 * min(across, 39-across)), uint8(8 * (y * 7 % 30)), uint8(5 * y), 255}
			}
			tile.SetRGBA(x, y, c)
		}
	}
	p := &Photo{PhotoSample: palettes.PhotoSample{Width: 80, Height: 60, Tile: tile}, Across: 8 * in, Repeat: &Repeat{Across: 4 * in, Down: 3 * in}}
	if got, want := p.MirrorLines(), (MirrorLines{Lengthwise: []measure.NM{in, 3 * in}}); !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, expected %+v", got, want)
	}
	p = &Photo{PhotoSample: palettes.PhotoSample{Width: 60, Height: 80, Tile: palettes.OnItsSide(tile)}, Across: 6 * in, Repeat: &Repeat{Across: 3 * in, Down: 4 * in}}
	if got, want := p.MirrorLines(), (MirrorLines{Crosswise: []measure.NM{in, 3 * in}}); !reflect.DeepEqual(got, want) {
		t.Errorf("on its side %+v, expected %+v", got, want)
	}
	for name, without := range map[string]*Photo{"a repeat": {PhotoSample: p.PhotoSample, Across: p.Across}, "a photo that was read": {Across: p.Across, Repeat: p.Repeat}} {
		if got := without.MirrorLines(); !got.None() {
			t.Errorf("without %s: %+v", name, got)
		}
	}
}
