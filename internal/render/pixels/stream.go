package pixels

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"hash/adler32"
	"hash/crc32"
	"io"
	"math"
	"runtime"
	"sync"
)

// WritePNG writes the print as a PNG file that says how many pixels an inch it has. Bands
// are made and packed several at a time and written in their order, so that the same print
// gives the same bytes however many processors there are, and no more than a few bands are
// in memory. The error is that of Check or of w.
func (p *Print) WritePNG(w io.Writer) error {
	if err := p.Check(); err != nil {
		return err
	}
	g := newPainting(p)
	f := &pngFile{w: w}
	f.begin(g)
	g.pack(f)
	f.block("IEND", nil)
	return f.err
}

// pngFile writes the blocks of a PNG file and remembers the first error (PNG Specification,
// third edition, section 5).
type pngFile struct {
	w   io.Writer
	err error
}

func (f *pngFile) write(b []byte) {
	if f.err == nil {
		_, f.err = f.w.Write(b)
	}
}

// block writes a block: length, name, data, check sum.
func (f *pngFile) block(name string, data []byte) {
	head := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	head = append(head, name...)
	sum := crc32.Update(crc32.ChecksumIEEE(head[4:]), crc32.IEEETable, data)
	f.write(head)
	f.write(data)
	f.write(binary.BigEndian.AppendUint32(nil, sum))
}

// Marker stands near the beginning of every PNG file of a print (PNG Specification, third
// edition, section 11.3.3: a keyword and what it says).
const Marker = "Software\x00eighthturn"

// begin writes what stands before the pixels: the header, that colours are sRGB, the size
// of a pixel, and the palette.
func (f *pngFile) begin(g *painting) {
	f.write([]byte("\x89PNG\r\n\x1a\n"))
	header := binary.BigEndian.AppendUint32(nil, uint32(g.Size.Width))
	header = binary.BigEndian.AppendUint32(header, uint32(g.Size.Height))
	kind := map[depth]byte{numbered: 3, grey: 0, colour: 2, opacity: 6}[g.depth]
	f.block("IHDR", append(header, 8, kind, 0, 0, 0))
	f.block("tEXt", []byte(Marker))
	f.credits(g.Credits)
	f.block("sRGB", []byte{0})
	perMetre := binary.BigEndian.AppendUint32(nil, uint32(math.Round(g.PerInch/metresAnInch)))
	f.block("pHYs", append(append(perMetre, perMetre...), 1))
	if g.depth == numbered {
		f.palette(g.inks.table)
	}
}

func (f *pngFile) palette(t *table) {
	var colours []byte
	clear := false
	for i, c := range t.colours {
		colours = append(colours, c.R, c.G, c.B)
		clear = clear || t.alpha[i] < 255
	}
	f.block("PLTE", colours)
	if clear {
		f.block("tRNS", t.alpha)
	}
}

// packed is a band ready to be written.
type packed struct {
	raw  []byte // filtered rows, for the check sum of the whole
	data bytes.Buffer
}

// pack makes, packs and writes all bands.
func (g *painting) pack(f *pngFile) {
	workers := max(1, min(runtime.GOMAXPROCS(0), g.bands()))
	done := make([]chan *packed, workers)
	free := make(chan *packed, 2*workers)
	stop := make(chan struct{})
	for range 2 * workers {
		free <- &packed{}
	}
	var wait sync.WaitGroup
	for n := range done {
		done[n] = make(chan *packed, 1)
		wait.Go(func() { g.work(n, workers, worker{free, done[n], stop}) })
	}
	g.collect(f, done, free)
	close(stop)
	wait.Wait()
}

// worker is what one of several has: empty bands, where full ones go, and word to stop.
type worker struct {
	free <-chan *packed
	done chan<- *packed
	stop <-chan struct{}
}

// work makes every so many bands.
func (g *painting) work(first, step int, k worker) {
	brush := g.newBrush()
	squeeze := g.newFlate()
	for band := first; band < g.bands(); band += step {
		var p *packed
		select {
		case p = <-k.free:
		case <-k.stop:
			return
		}
		p.raw = brush.paint(band, p.raw)
		filter(p.raw, 1+g.Size.Width*g.depth.bytes())
		p.data.Reset()
		squeeze.Reset(&p.data)
		_, _ = squeeze.Write(p.raw) // writing to memory cannot fail
		if band == g.bands()-1 {
			_ = squeeze.Close()
		} else {
			_ = squeeze.Flush()
		}
		select {
		case k.done <- p:
		case <-k.stop:
			return
		}
	}
}

// newFlate packs quickly. Photos of prints hardly repeat themselves byte by byte, and are packed without looking for what does.
func (g *painting) newFlate() *flate.Writer {
	level := flate.BestSpeed
	if g.cloths.photos() {
		level = flate.HuffmanOnly
	}
	w, _ := flate.NewWriter(nil, level) // fails only for a level that there is not
	return w
}

// collect writes the bands in their order as one stream (RFC 1950: two bytes, the packed
// data, and the check sum of what was packed).
func (g *painting) collect(f *pngFile, done []chan *packed, free chan<- *packed) {
	sum := adler32.New()
	for band := range g.bands() {
		p := <-done[band%len(done)]
		_, _ = sum.Write(p.raw)
		data := p.data.Bytes()
		if band == 0 {
			data = append([]byte{0x78, 0x01}, data...)
		}
		if band == g.bands()-1 {
			data = binary.BigEndian.AppendUint32(data, sum.Sum32())
		}
		f.block("IDAT", data)
		free <- p
		if f.err != nil {
			return
		}
	}
}

// filter writes each row of a band but its first as what differs from the row above, which
// for most of a quilt is nothing (PNG Specification, third edition, section 9: Up).
func filter(raw []byte, long int) {
	for at := len(raw) - long; at > 0; at -= long {
		row, above := raw[at:at+long], raw[at-long:at]
		row[0] = 2
		for i := 1; i < len(row); i++ {
			row[i] -= above[i]
		}
	}
}
