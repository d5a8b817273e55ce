package palettes

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"
	"iter"
)

// camera is what a photo's file notes beside the picture.
type camera struct {
	held    int    // how the camera was held, 1 to 8 (Exif 2.32, section 4.6.4, Orientation); 1 is upright
	profile []byte // the ICC profile of its colors, nil for sRGB
	code    []byte // the four bytes of a PNG's coding-independent code points, nil for none
}

// Segments of a JPEG file that hold notes (ITU-T T.81, table B.1), and how their content begins (Exif 2.32, section 4.7.2; ICC.1:2010,
// annex B.4).
const (
	markerExif    = 0xe1
	markerProfile = 0xe2
	exifBegins    = "Exif\x00\x00"
	profileBegins = "ICC_PROFILE\x00"
)

// jpegCamera reads what stands before the first pass over the picture.
func jpegCamera(file []byte) (camera, error) {
	c := camera{held: 1}
	var parts [256][]byte
	count := 0
	for marker, data := range segments(file) {
		if marker == markerScan {
			break
		}
		if rest, found := bytes.CutPrefix(data, []byte(exifBegins)); found && marker == markerExif {
			c.held = heldAs(rest)
		}
		if rest, found := bytes.CutPrefix(data, []byte(profileBegins)); found && marker == markerProfile && len(rest) > 2 {
			parts[rest[0]], count = rest[2:], int(rest[1])
		}
	}
	for i := range count {
		if parts[i+1] == nil {
			return c, fmt.Errorf("a part of the color profile is missing")
		}
		c.profile = append(c.profile, parts[i+1]...)
	}
	return c, nil
}

// pngCamera reads the blocks of a file that has nothing but what onlyPicture leaves.
func pngCamera(file []byte) (camera, error) {
	c := camera{held: 1}
	for rest := file[len(pngSignature):]; len(rest) >= 12; {
		length := int(binary.BigEndian.Uint32(rest))
		name, data := string(rest[4:8]), rest[8:8+length]
		rest = rest[length+12:]
		switch name {
		case "eXIf":
			c.held = heldAs(data)
		case "cICP":
			c.code = data
		case "iCCP":
			c.profile = unpacked(data)
		}
	}
	return c, nil
}

// unpacked is the profile of a block that unpacks says is whole.
func unpacked(data []byte) []byte {
	packed, _ := zlib.NewReader(bytes.NewReader(data[bytes.IndexByte(data, 0)+2:]))
	profile, _ := io.ReadAll(packed)
	return profile
}

// heldAs is how a camera was held, 1 where its notes do not say (TIFF 6.0, section 2: a header, then entries of twelve bytes).
func heldAs(notes []byte) int {
	var order binary.ByteOrder = binary.BigEndian
	if bytes.HasPrefix(notes, []byte("II")) {
		order = binary.LittleEndian
	}
	const orientation, short = 0x0112, 3
	if len(notes) < 8 {
		return 1
	}
	at := uint64(order.Uint32(notes[4:]))
	if at+2 > uint64(len(notes)) {
		return 1
	}
	entries := notes[at+2:]
	for range order.Uint16(notes[at:]) {
		if len(entries) < 12 {
			break
		}
		if order.Uint16(entries) == orientation && order.Uint16(entries[2:]) == short {
			if held := int(order.Uint16(entries[8:])); held >= 1 && held <= 8 {
				return held
			}
		}
		entries = entries[12:]
	}
	return 1
}

// segments are the segments of a JPEG file up to the end of its picture, each marker with what it holds.
func segments(file []byte) iter.Seq2[byte, []byte] {
	return func(yield func(byte, []byte) bool) {
		for at := 2; at+4 <= len(file); {
			marker := file[at+1]
			switch {
			case file[at] != 0xff, marker == markerStuffed, marker == markerFill, marker >= markerRestart && marker < markerRestart+markersRestart:
				at++
				continue
			case marker == markerEnd:
				return
			}
			end := at + 2 + int(binary.BigEndian.Uint16(file[at+2:]))
			if !yield(marker, file[min(at+4, len(file)):max(at+4, min(end, len(file)))]) {
				return
			}
			at = end
		}
	}
}
