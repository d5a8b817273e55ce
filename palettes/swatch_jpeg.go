package palettes

import (
	"bytes"
	"image/color"
)

const jpegBeginning = "\xff\xd8\xff"

// maxScans is how many passes over its picture a JPEG file may take. Ordinary programs write ten or so; each takes the time
// of a whole picture however few its bytes are. Our choice.
const maxScans = 100

// maxPassSamples is how many samples, one for each pixel and channel, a photo that is saved in passes may have: all are in memory at once, five
// bytes each, until the last pass. Our choice: 25 million pixels in color.
const maxPassSamples = 75_000_000

// Markers of JPEG files (ITU-T T.81, table B.1).
const (
	markerStuffed  = 0x00 // no marker: a byte 255 of the picture
	markerRestart  = 0xd0 // the first of eight
	markerEnd      = 0xd9
	markerScan     = 0xda
	markerPasses   = 0xc2 // the frame of a picture in passes, Huffman coded
	markerFill     = 0xff
	markersRestart = 8
)

// scans is how many passes over its picture a JPEG file takes (ITU-T T.81, section B.2): what stands inside other segments,
// such as small pictures that a camera adds, or behind the end of the picture, does not count.
func scans(file []byte) int {
	n := 0
	for marker := range segments(file) {
		if marker == markerScan {
			n++
		}
	}
	return n
}

// progressive says whether a file is a JPEG that is saved in passes.
func progressive(file []byte) bool {
	if !bytes.HasPrefix(file, []byte(jpegBeginning)) {
		return false
	}
	for marker := range segments(file) {
		if marker == markerPasses {
			return true
		}
	}
	return false
}

// channels is how many samples a JPEG has for each pixel.
func channels(m color.Model) int {
	switch m {
	case color.GrayModel:
		return 1
	case color.CMYKModel:
		return 4
	}
	return 3
}
