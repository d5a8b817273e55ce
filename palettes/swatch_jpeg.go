package palettes

const jpegBeginning = "\xff\xd8\xff"

// maxScans is how many passes over its picture a JPEG file may take. Ordinary programs write ten or so; each takes the time
// of a whole picture however few its bytes are. Our choice.
const maxScans = 100

// Markers of JPEG files (ITU-T T.81, table B.1).
const (
	markerStuffed  = 0x00 // no marker: a byte 255 of the picture
	markerRestart  = 0xd0 // the first of eight
	markerEnd      = 0xd9
	markerScan     = 0xda
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
