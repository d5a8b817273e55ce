package pixels

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/png"
	"io"
	"math"

	"eighthturn/internal/quilt"
)

// metresAnInch turns pixels an inch into what a PNG file says.
const metresAnInch = 0.0254

// headerEnd is where the first block of a PNG file ends: 8 bytes of signature and 25 of
// header (PNG Specification, third edition, sections 5.2 and 11.2.1).
const headerEnd = 33

// WritePNG writes a picture of the top as a PNG file that says how large the top is: its
// pixels a metre across and down stand in the file's pHYs block. The same picture gives the
// same bytes.
func WritePNG(w io.Writer, t *quilt.Top, picture image.Image) error {
	var file bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := encoder.Encode(&file, picture); err != nil {
		return err
	}
	size := Size{picture.Bounds().Dx(), picture.Bounds().Dy()}
	for _, part := range [][]byte{file.Bytes()[:headerEnd], physicalSize(t, size), file.Bytes()[headerEnd:]} {
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return nil
}

// physicalSize is the pHYs block: length, name, pixels a metre across and down, the unit
// metre, and the check sum (PNG Specification, third edition, section 11.3.4.3).
func physicalSize(t *quilt.Top, s Size) []byte {
	across, down := s.perInch(t)
	block := binary.BigEndian.AppendUint32(nil, 9)
	block = append(block, "pHYs"...)
	block = binary.BigEndian.AppendUint32(block, uint32(math.Round(across/metresAnInch)))
	block = binary.BigEndian.AppendUint32(block, uint32(math.Round(down/metresAnInch)))
	block = append(block, 1)
	return binary.BigEndian.AppendUint32(block, crc32.ChecksumIEEE(block[4:]))
}
