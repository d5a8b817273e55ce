package pdf

import (
	"bytes"
	"encoding/binary"
	"math"

	"github.com/carlos7ags/folio/font"
)

// embedded is a face as a PDF holds it. Its letters have no instructions for a screen's grid: with them a PDF must have the
// tables that they call (ISO 32000-1, 9.9), and the library leaves those out. Its heights are in thousandths of its size (9.8),
// where the library hands on the font's own units.
type embedded struct {
	font.Face
	file []byte
}

func (e embedded) RawData() []byte { return e.file }
func (e embedded) Ascent() int     { return e.thousandths(e.Face.Ascent()) }
func (e embedded) Descent() int    { return e.thousandths(e.Face.Descent()) }
func (e embedded) CapHeight() int  { return e.thousandths(e.Face.CapHeight()) }

func (e embedded) BBox() [4]int {
	box := e.Face.BBox()
	for i, v := range box {
		box[i] = e.thousandths(v)
	}
	return box
}

func (e embedded) thousandths(units int) int {
	return int(math.Round(float64(units) * 1000 / float64(e.UnitsPerEm())))
}

// letterHead is how many bytes of a letter of a TrueType font stand before the ends of its contours (OpenType 1.9, "glyf").
const letterHead = 10

// withoutHints is a TrueType font whose letters have lost their instructions; every letter keeps its place, and zeros fill up
// what it no longer needs. Its fonts are the program's own.
func withoutHints(file []byte) []byte {
	file = bytes.Clone(file)
	u16 := func(b []byte) int { return int(binary.BigEndian.Uint16(b)) }
	table := func(tag string) []byte {
		for entry := file[12:]; ; entry = entry[16:] {
			if string(entry[:4]) == tag {
				from, length := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
				return file[from : from+length]
			}
		}
	}
	places, letters := table("loca"), table("glyf")
	place := func(letter int) int { return 2 * u16(places[2*letter:]) } // the Go fonts' places are short, and no letter is made of others
	for i := range u16(table("maxp")[4:]) {
		if letter := letters[place(i):place(i+1)]; len(letter) > 0 {
			at := letterHead + 2*u16(letter)
			n := u16(letter[at:])
			letter[at], letter[at+1] = 0, 0
			clear(letter[at+2+copy(letter[at+2:], letter[at+2+n:]):])
		}
	}
	return file
}
