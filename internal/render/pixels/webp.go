package pixels

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"

	"github.com/HugoSmits86/nativewebp"
)

// MostWebPASide is the longest side of a WebP picture (RFC 9649, section 3.4: 14 bits and one), and MostWebPInAll its most pixels: its
// encoder takes it whole.
const (
	MostWebPASide = 1 << 14 // pixels
	MostWebPInAll = 100_000_000
)

// webpMarker is the name of the chunk by which a WebP file of a print is known; readers pass over chunks that they do not know
// (RFC 9649, section 2.7.1.6).
const webpMarker = "8TRN"

// CheckWebP says whether a print can be made as a WebP; it allocates nothing.
func (p *Print) CheckWebP() error {
	if err := p.Check(); err != nil {
		return err
	}
	if p.Size.Width > MostWebPASide || p.Size.Height > MostWebPASide || p.Size.Width*p.Size.Height > MostWebPInAll {
		return fmt.Errorf("a WebP of %d by %d pixels, where %d a side and %d million in all can be had", p.Size.Width, p.Size.Height, MostWebPASide, MostWebPInAll/1_000_000)
	}
	return nil
}

// WriteWebP writes the print as a WebP file without loss that says how many pixels an inch it has, that its colors are sRGB, and
// its credits. The error is that of CheckWebP or of w. The same print gives the same bytes.
func (p *Print) WriteWebP(w io.Writer) error {
	if err := p.CheckWebP(); err != nil {
		return err
	}
	var file bytes.Buffer
	if err := nativewebp.Encode(&file, p.Picture(), nil); err != nil {
		return err
	}
	const head = 12 // bytes: RIFF, the length of the rest, WEBP
	picture := file.Bytes()[head:]
	const hasExif, hasXMP = 1 << 3, 1 << 2
	flags := byte(hasExif)
	if p.Credits.Said() {
		flags |= hasXMP
	}
	if p.Clear {
		flags |= 1 << 4 // pixels that are see-through
	}
	extended := append([]byte{flags, 0, 0, 0}, uint24(p.Size.Width-1)...)
	body := append([]byte("WEBP"), chunk("VP8X", append(extended, uint24(p.Size.Height-1)...))...)
	body = append(body, chunk(webpMarker, []byte(Marker))...)
	body = append(append(body, picture...), chunk("EXIF", p.exif())...)
	if p.Credits.Said() {
		body = append(body, chunk("XMP ", p.Credits.Packet())...)
	}
	_, err := w.Write(append(binary.LittleEndian.AppendUint32([]byte("RIFF"), uint32(len(body))), body...))
	return err
}

// uint24 is a number in three bytes, the least first.
func uint24(n int) []byte { return []byte{byte(n), byte(n >> 8), byte(n >> 16)} }

// chunk is a chunk of a WebP file: its name, its length, and what it holds, to an even number of bytes (RFC 9649, section 2.3).
func chunk(name string, holds []byte) []byte {
	b := append(binary.LittleEndian.AppendUint32([]byte(name), uint32(len(holds))), holds...)
	if len(holds)%2 == 1 {
		b = append(b, 0)
	}
	return b
}

// IsWebP says whether a file begins as the WebP files of this package do.
func IsWebP(head []byte) bool {
	return bytes.HasPrefix(head, []byte("RIFF")) && bytes.Contains(head, []byte(webpMarker)) && bytes.Contains(head, []byte(Marker))
}
