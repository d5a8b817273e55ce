package palettes

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"
)

const pngSignature = "\x89PNG\r\n\x1a\n"

// Limits on what a PNG file may carry beside its picture.
const (
	mostProfile     = 4 << 20 // bytes of a colour profile, unpacked
	mostOrientation = 1 << 16 // bytes of what the camera noted
)

// onlyPicture is a PNG file with nothing but what its still picture needs: the picture, its
// colours, its profile and how the camera was held. What is left has lengths that were
// checked and a profile that does not unpack without end (PNG Specification, third edition,
// sections 5.3 and 11).
func onlyPicture(file []byte) ([]byte, error) {
	kept := bytes.NewBufferString(pngSignature)
	rest := file[len(pngSignature):]
	for len(rest) > 0 {
		if len(rest) < 12 || uint64(binary.BigEndian.Uint32(rest)) > uint64(len(rest)-12) {
			return nil, fmt.Errorf("the photo is cut off, expected a whole PNG file")
		}
		length := int(binary.BigEndian.Uint32(rest))
		block, name, data := rest[:length+12], string(rest[4:8]), rest[8:8+length]
		rest = rest[length+12:]
		if keeps(name, data) {
			kept.Write(block)
		}
		if name == "IEND" {
			break
		}
	}
	return kept.Bytes(), nil
}

// keeps says whether a block of a PNG file is needed and safe.
func keeps(name string, data []byte) bool {
	switch name {
	case "IHDR", "PLTE", "IDAT", "IEND", "tRNS", "sRGB", "gAMA", "cHRM":
		return true
	case "cICP":
		return len(data) == 4
	case "eXIf":
		return len(data) <= mostOrientation
	case "iCCP":
		return unpacks(data)
	}
	return false
}

// unpacks says whether a profile's block is whole and its profile within the limit.
func unpacks(data []byte) bool {
	end := bytes.IndexByte(data, 0)
	if end < 1 || end > 79 || len(data) < end+2 || data[end+1] != 0 {
		return false
	}
	profile, err := zlib.NewReader(bytes.NewReader(data[end+2:]))
	if err != nil {
		return false
	}
	n, err := io.Copy(io.Discard, io.LimitReader(profile, mostProfile+1))
	return err == nil && n <= mostProfile
}
