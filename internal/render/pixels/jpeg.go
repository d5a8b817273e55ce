package pixels

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/jpeg"
	"io"
	"math"
	"runtime"
	"sync"
	"sync/atomic"
)

// The greatest JPEG picture. Its encoder takes it whole, four bytes a pixel, and no side may be longer than two bytes tell.
const (
	MostJPEGASide = 1<<16 - 1   // pixels
	MostJPEGInAll = 100_000_000 // pixels
)

// No print is longer than a JPEG may be.
const _ = uint(MostJPEGASide - MostPrintedASide)

// JPEGMarker stands near the beginning of every JPEG file of a print, as a comment.
const JPEGMarker = "eighthturn picture"

// CheckJPEG says whether a print can be made as a JPEG; it allocates nothing.
func (p *Print) CheckJPEG() error {
	if err := p.Check(); err != nil {
		return err
	}
	if p.Size.Width*p.Size.Height > MostJPEGInAll {
		return fmt.Errorf("a JPEG of %d by %d pixels, where %d million in all can be had", p.Size.Width, p.Size.Height, MostJPEGInAll/1_000_000)
	}
	return nil
}

// WriteJPEG writes the print as a JPEG file of a quality from 1 to 100 that says how many pixels an inch it has, that its
// colours are sRGB, and its credits. The error is that of CheckJPEG or of w. The same print gives the same bytes.
func (p *Print) WriteJPEG(w io.Writer, quality int) error {
	if err := p.CheckJPEG(); err != nil {
		return err
	}
	opaque := *p
	opaque.Clear = false
	var file bytes.Buffer
	if err := jpeg.Encode(&file, opaque.Picture(), &jpeg.Options{Quality: quality}); err != nil {
		return err
	}
	const start = 2 // bytes of the mark that a file begins with; the standard library writes no segment about the picture
	for _, part := range [][]byte{file.Bytes()[:start], p.jpegHead(), file.Bytes()[start:]} {
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return nil
}

// Picture is the whole print as pixels, all of them opaque but for a background that is see-through.
func (p *Print) Picture() *image.RGBA {
	g := newPainting(p)
	g.as(opacity) // four bytes, of which the last is 255 everywhere
	m := image.NewRGBA(image.Rect(0, 0, p.Size.Width, p.Size.Height))
	var next atomic.Int64
	var wait sync.WaitGroup
	for range max(1, min(runtime.GOMAXPROCS(0), g.bands())) {
		wait.Go(func() {
			brush, long := g.newBrush(), 1+m.Stride
			var raw []byte
			for {
				band := int(next.Add(1)) - 1
				if band >= g.bands() {
					return
				}
				raw = brush.paint(band, raw)
				for row := range len(raw) / long {
					copy(m.Pix[(band*g.rows+row)*m.Stride:], raw[row*long+1:][:m.Stride])
				}
			}
		})
	}
	wait.Wait()
	return m
}

// jpegHead are the segments before the picture: the size of a pixel (JFIF 1.02), the marker, that its colours are sRGB
// (Exif 2.32), and the credits (ISO 16684-3, 1.1.3).
func (p *Print) jpegHead() []byte {
	perInch := binary.BigEndian.AppendUint16(nil, uint16(min(math.Round(p.PerInch), math.MaxUint16)))
	jfif := append(append(append([]byte("JFIF\x00\x01\x02\x01"), perInch...), perInch...), 0, 0)
	list := append(segment(0xe0, jfif), segment(0xfe, []byte(JPEGMarker))...)
	list = append(list, segment(0xe1, append([]byte("Exif\x00\x00"), p.exif()...))...)
	const most = 60_000 // bytes that a segment has room for; lines of a layout take a third of that at the most
	if packet := p.Credits.Packet(); p.Credits.Said() && len(packet) < most {
		list = append(list, segment(0xe1, append([]byte("http://ns.adobe.com/xap/1.0/\x00"), packet...))...)
	}
	return list
}

// segment is a segment of a JPEG file: its mark, its length with these two bytes, and what it holds (ITU-T T.81, B.1.1.4).
func segment(mark byte, holds []byte) []byte {
	return append(binary.BigEndian.AppendUint16([]byte{0xff, mark}, uint16(len(holds)+2)), holds...)
}

// exif is a directory of the picture's resolution, and in one of its own that its colours are sRGB (Exif 2.32, 4.6).
func (p *Print) exif() []byte {
	const (
		short, long, rational, undefined = 3, 4, 5, 7
		first                            = 8 // where the first directory stands
		entry, fixed                     = 12, 6
		values                           = first + fixed + 5*entry // the rational numbers, behind the first directory
		second                           = values + 2*8
	)
	b := append([]byte("MM\x00*"), 0, 0, 0, first)
	add := func(tag, kind uint16, count, value uint32) {
		b = binary.BigEndian.AppendUint16(binary.BigEndian.AppendUint16(b, tag), kind)
		if kind == short {
			value <<= 16 // short numbers stand at the left
		}
		b = binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(b, count), value)
	}
	b = append(b, 0, 5)
	add(0x011a, rational, 1, values)   // pixels across
	add(0x011b, rational, 1, values+8) // and down
	add(0x0128, short, 1, 2)           // an inch
	add(0x0213, short, 1, 1)           // colours are those of the middles of their pixels
	add(0x8769, long, 1, second)       // where the other directory stands
	b = append(b, 0, 0, 0, 0)
	for range 2 {
		b = binary.BigEndian.AppendUint32(b, uint32(math.Round(p.PerInch*100)))
		b = binary.BigEndian.AppendUint32(b, 100)
	}
	b = append(b, 0, 6)
	four := binary.BigEndian.Uint32
	add(0x9000, undefined, 4, four([]byte("0232")))     // the standard's version
	add(0x9101, undefined, 4, four([]byte{1, 2, 3, 0})) // brightness and two of colour
	add(0xa000, undefined, 4, four([]byte("0100")))     // of another standard, as this one wants
	add(0xa001, short, 1, 1)                            // sRGB
	add(0xa002, long, 1, uint32(p.Size.Width))
	add(0xa003, long, 1, uint32(p.Size.Height))
	return append(b, 0, 0, 0, 0)
}
