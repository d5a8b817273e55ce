package palettes

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"testing"
)

// TestEveryOrientation: the side of the upright photo on which the first row and the first column of the file lie, as Exif 2.32,
// section 4.6.4, says for each value of the tag.
func TestEveryOrientation(t *testing.T) {
	sides := [9][2]string{{}, {"top", "left"}, {"top", "right"}, {"bottom", "right"}, {"bottom", "left"},
		{"left", "top"}, {"right", "top"}, {"right", "bottom"}, {"left", "bottom"}}
	opposite := map[string]string{"top": "bottom", "bottom": "top", "left": "right", "right": "left"}
	stored := image.NewGray(image.Rect(0, 0, 3, 2))
	copy(stored.Pix, []byte{10, 20, 30, 40, 50, 60})
	for held := 1; held <= 8; held++ {
		for shown := 1; shown <= 8; shown++ {
			v := view{Image: stored, held: shown}
			row, column := sides[held][0], sides[held][1]
			begins, ends := corner(v, row, column), corner(v, row, opposite[column])
			if right := begins == 10 && ends == 30; right != (held == shown) {
				t.Errorf("held %d and shown as %d: the first row goes from %d to %d", held, shown, begins, ends)
			}
		}
	}
	if n := len(heldNotes(binary.BigEndian, 6)); heldAs(heldNotes(binary.BigEndian, 6)[:n-5]) != 1 || heldAs(heldNotes(binary.LittleEndian, 8)) != 8 || heldAs(heldNotes(binary.BigEndian, 9)) != 1 {
		t.Error("notes that are cut off, in the other order of bytes or beyond the table are read wrongly")
	}
}

// corner is the gray at the corner of two sides.
func corner(v view, sides ...string) uint8 {
	b := v.Bounds()
	x, y := 0, 0
	for _, s := range sides {
		if s == "right" {
			x = b.Dx() - 1
		}
		if s == "bottom" {
			y = b.Dy() - 1
		}
	}
	return v.At(x, y).(color.Gray).Y
}

// heldNotes are a camera's notes with the one entry.
func heldNotes(order binary.AppendByteOrder, held uint16) []byte {
	notes := []byte("MM")
	if order == binary.AppendByteOrder(binary.LittleEndian) {
		notes = []byte("II")
	}
	notes = order.AppendUint32(order.AppendUint16(notes, 42), 8)
	for _, v := range []uint16{1, 0x0112, 3} {
		notes = order.AppendUint16(notes, v)
	}
	return append(order.AppendUint16(order.AppendUint32(notes, 1), held), 0, 0, 0, 0, 0, 0)
}

// TestProfileInParts: a JPEG file's profile may stand in several segments, in any order (ICC.1:2010, annex B.4); one that lacks a
// part is no photo that can be read.
func TestProfileInParts(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 40, 40))
	for i := range m.Pix {
		m.Pix[i] = []byte{234, 51, 35, 255}[i%4]
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	profile := displayP3()
	part := func(number byte, data []byte) []byte {
		data = append([]byte("ICC_PROFILE\x00"+string([]byte{number, 2})), data...)
		return append(binary.BigEndian.AppendUint16([]byte{0xff, markerProfile}, uint16(len(data)+2)), data...)
	}
	file := func(parts ...[]byte) []byte {
		return bytes.Join([][]byte{b.Bytes()[:2], bytes.Join(parts, nil), b.Bytes()[2:]}, nil)
	}
	plain, err := ReadSwatch(nil, file())
	if err != nil {
		t.Fatal(err)
	}
	wide, err := ReadSwatch(nil, file(part(2, profile[200:]), part(1, profile[:200])))
	if err != nil || Difference(plain.Colour, wide.Colour) < 1 {
		t.Errorf("%v, with the profile the color is %s, without it %s", err, wide.Colour.Hex(), plain.Colour.Hex())
	}
	if _, err := ReadSwatch(nil, file(part(1, profile[:200]))); err == nil {
		t.Error("a profile without its second part is taken")
	}
}

// TestProfilesThatNameMore: a profile whose tags lie beyond its end, or whose table does, is refused before room is made for what it names; one
// whose last tag ends with the file is read. A photo of a kilobyte had asked for 44 GB.
func TestProfilesThatNameMore(t *testing.T) {
	whole := displayP3()
	const count, table = 128, 132
	end := uint32(0) // of the tag that ends last, which is the first one that does
	last := 0
	for at := table; at < table+12*int(binary.BigEndian.Uint32(whole[count:])); at += 12 {
		if e := binary.BigEndian.Uint32(whole[at+4:]) + binary.BigEndian.Uint32(whole[at+8:]); e > end {
			end, last = e, at
		}
	}
	if err := profileHolds(whole[:end]); err != nil {
		t.Errorf("a profile that ends with its last tag: %v", err)
	}
	changed := func(at int, by uint32) []byte {
		file := bytes.Clone(whole[:end])
		binary.BigEndian.PutUint32(file[at:], binary.BigEndian.Uint32(file[at:])+by)
		return file
	}
	most := (end - table) / 12 // entries that fit into the file, all but some of them nonsense
	for name, file := range map[string][]byte{
		"no table":                     whole[:table-1],
		"no count":                     whole[:count],
		"a byte less":                  whole[:end-1],
		"a tag of one byte more":       changed(last+8, 1),
		"a tag one byte on":            changed(last+4, 1),
		"a place and a size as one":    changed(last+4, math.MaxUint32-end+1),
		"a table beyond the end":       changed(count, most),
		"a table of half of all there": changed(count, 1<<31),
	} {
		if err := profileHolds(file); err == nil {
			t.Errorf("%s: it is taken", name)
		}
		if len(file) > table {
			if _, err := profiled(image.NewRGBA(image.Rect(0, 0, 1, 1)), file); err == nil || err.Error() != "its color profile is not whole" {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	if err := profileHolds(make([]byte, table)); err != nil {
		t.Errorf("a profile without tags: %v", err)
	}
}
