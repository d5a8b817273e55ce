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

// What a letter of a TrueType font is made of (OpenType 1.9, "glyf"): bytes before the ends of its contours, and the flags of
// a part of a letter that is made of others.
const (
	letterHead      = 10 // bytes
	wordArguments   = 0x0001
	oneScale        = 0x0008
	morePartsFollow = 0x0020
	twoScales       = 0x0040
	matrixOfFour    = 0x0080
	hasInstructions = 0x0100
)

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
	places, letters, long := table("loca"), table("glyf"), u16(table("head")[50:]) != 0
	place := func(letter int) int {
		if long {
			return int(binary.BigEndian.Uint32(places[4*letter:]))
		}
		return 2 * u16(places[2*letter:])
	}
	for i := range u16(table("maxp")[4:]) {
		letter := letters[place(i):place(i+1)]
		switch {
		case len(letter) == 0:
		case letter[0] < 0x80:
			at := letterHead + 2*u16(letter)
			n := u16(letter[at:])
			letter[at], letter[at+1] = 0, 0
			clear(letter[at+2+copy(letter[at+2:], letter[at+2+n:]):])
		default:
			clearParts(letter[letterHead:])
		}
	}
	return file
}

// clearParts takes the instructions from a letter that is made of others.
func clearParts(parts []byte) {
	for {
		flags := binary.BigEndian.Uint16(parts)
		binary.BigEndian.PutUint16(parts, flags&^hasInstructions)
		length := 6
		if flags&wordArguments != 0 {
			length = 8
		}
		switch {
		case flags&oneScale != 0:
			length += 2
		case flags&twoScales != 0:
			length += 4
		case flags&matrixOfFour != 0:
			length += 8
		}
		parts = parts[length:]
		if flags&morePartsFollow == 0 {
			clear(parts)
			return
		}
	}
}
