package pixels

import (
	"image/color"
	"math"

	"eighthturn/palettes"
)

// depth is how the pixels of a file are written.
type depth uint8

const (
	numbered depth = iota // a byte, of a palette
	grey                  // a byte
	colour                // three bytes
	opacity               // four bytes
)

func (d depth) bytes() int { return [...]int{1, 1, 3, 4}[d] }

// bandBytes is about how much of a picture is made at a time.
const bandBytes = 1 << 18

// painting is what stays the same while a print is made.
type painting struct {
	*Print
	inks   *inks
	faces  *laidFaces
	cloths *cloths // nil where all is plain
	layers []*layerSpots
	depth  depth
	rows   int // of a band
}

func newPainting(p *Print) *painting {
	g := &painting{Print: p, inks: p.newInks()}
	if p.Image == nil {
		g.faces = p.placed()
	}
	g.cloths = p.newCloths(len(g.inks.colours))
	for i := range p.Over {
		g.layers = append(g.layers, newLayerSpots(&p.Over[i]))
	}
	g.as(g.chosen())
	return g
}

// as chooses how pixels are written, and so how many rows a band has.
func (g *painting) as(d depth) {
	g.depth = d
	g.rows = min(g.Size.Height, max(16, bandBytes/(g.Size.Width*d.bytes())))
}

// chosen is the least depth that holds the picture.
func (g *painting) chosen() depth {
	switch {
	case g.TrueColour && !g.Clear:
		return colour
	case g.TrueColour:
		return opacity
	case g.inks.table != nil && g.Image == nil:
		return numbered
	case g.Clear:
		return opacity
	case g.Image == nil && len(g.Tiles) == 0 && g.allGrey():
		return grey
	}
	return colour
}

func (g *painting) allGrey() bool {
	isGrey := func(c palettes.Colour) bool { return c.R == c.G && c.G == c.B }
	for _, c := range g.inks.colours {
		if !isGrey(c) {
			return false
		}
	}
	for i := range g.Over {
		if !isGrey(g.Over[i].Colour) {
			return false
		}
	}
	return true
}

func (g *painting) bands() int { return (g.Size.Height + g.rows - 1) / g.rows }

// brush makes bands, one after another.
type brush struct {
	*painting
	cells *cells
	sweep *sweep
	over  *overlay
	one   [4]byte
	line  []byte // the row of an image that was painted last, and which of the image's it was
	lineY int
}

func (g *painting) newBrush() *brush {
	paints := len(g.inks.colours)
	if g.cloths != nil {
		paints += len(g.cloths.faces)
	}
	b := &brush{painting: g, cells: newCells(g.rows), sweep: newSweep(paints)}
	if len(g.layers) > 0 {
		b.over = newOverlay(g)
	}
	return b
}

// paint is the band of that number: for each row a filter byte of 0, and its pixels. The
// buffer is used if it is large enough.
func (b *brush) paint(band int, buffer []byte) []byte {
	first := band * b.rows
	rows := min(b.rows, b.Size.Height-first)
	long := 1 + b.Size.Width*b.depth.bytes()
	if cap(buffer) < rows*long {
		buffer = make([]byte, b.rows*long)
	}
	buffer = buffer[:rows*long]
	b.cells.begin(first, rows)
	if b.Image == nil {
		b.gather(first, rows)
	}
	for row := range rows {
		line := buffer[row*long:][:long]
		line[0] = 0
		if b.Image != nil {
			b.imageRow(line[1:], first+row)
			continue
		}
		b.clothRow(line[1:], row, first+row)
	}
	if b.over != nil {
		b.over.draw(buffer, first, rows)
	}
	return buffer
}

// gather finds the cells of the faces that reach into a band.
func (b *brush) gather(first, rows int) {
	last := int32(first + rows - 1)
	for i, reach := range b.faces.rows {
		if reach[0] <= last && reach[1] >= int32(first) {
			b.cells.outline(b.faces.outline[i], b.cloths.paint(i, b.Top.Faces[i].Fabric))
		}
	}
}

// clothRow paints a row of the band with cloth; y is its row of the picture.
func (b *brush) clothRow(line []byte, row, y int) {
	size := b.depth.bytes()
	b.sweep.row(b.cells.inOrder(row), int32(b.Size.Width), func(from, to int32, list shares) {
		if b.cloths != nil && b.cloths.shows(list) {
			b.clothRun(line, from, to, list, int32(y))
			return
		}
		value := b.value(list)
		fill(line[int(from)*size:int(to)*size], value)
	})
}

// value is the bytes of a pixel that is covered so.
func (b *brush) value(list shares) []byte {
	plain := len(list) == 1 && list[0].cover >= whole-hairline
	if b.depth == numbered {
		if plain {
			b.one[0] = uint8(list[0].paint)
		} else {
			b.one[0] = b.inks.number(b.inks.completed(list))
		}
		return b.one[:1]
	}
	if plain {
		return b.pixel(b.inks.colours[list[0].paint], 255)
	}
	return b.pixel(b.inks.mixed(b.inks.completed(list)))
}

// pixel is a colour as the file's bytes.
func (b *brush) pixel(c palettes.Colour, alpha uint8) []byte {
	b.one = [4]byte{c.R, c.G, c.B, alpha}
	return b.one[:b.depth.bytes()]
}

// fill repeats a value.
func fill(line, value []byte) {
	if len(value) == 1 {
		for i := range line {
			line[i] = value[0]
		}
		return
	}
	for n := copy(line, value); n < len(line); n *= 2 {
		copy(line[n:], line[:n])
	}
}

// imageRow paints a row of the image that stands in place of the cloth. Where cloth would
// run on, its outermost pixels do.
func (b *brush) imageRow(line []byte, row int) {
	size, bounds := b.depth.bytes(), b.Image.Bounds()
	fill(line, b.background())
	if row < b.Quilt.Min.Y-b.RunOn || row >= b.Quilt.Max.Y+b.RunOn {
		return
	}
	within := func(at, from, to, pixels int) int {
		return (2*(min(max(at, from), to-1)-from) + 1) * pixels / (2 * (to - from))
	}
	y := bounds.Min.Y + within(row, b.Quilt.Min.Y, b.Quilt.Max.Y, bounds.Dy())
	if b.line != nil && y == b.lineY {
		copy(line, b.line)
		return
	}
	defer func() { b.line, b.lineY = append(b.line[:0], line...), y }()
	for x := max(0, b.Quilt.Min.X-b.RunOn); x < min(b.Size.Width, b.Quilt.Max.X+b.RunOn); x++ {
		at := bounds.Min.X + within(x, b.Quilt.Min.X, b.Quilt.Max.X, bounds.Dx())
		c := color.NRGBAModel.Convert(b.Image.At(at, y)).(color.NRGBA)
		if c.A > 0 {
			copy(line[x*size:], b.pixel(palettes.Colour{R: c.R, G: c.G, B: c.B}, c.A))
		}
	}
}

func (b *brush) background() []byte {
	if b.Clear {
		return b.pixel(palettes.Colour{}, 0)
	}
	return b.pixel(b.Background, 255)
}

// layerSpots is a layer's outlines in parts of a pixel.
type layerSpots struct {
	*Layer
	outlines [][]spot
	rows     [][2]int32
	ink      [3]uint32 // linear, of full
}

// beyond is how far from the picture's corner places are kept, in pixels.
const beyond = 1 << 21

func newLayerSpots(l *Layer) *layerSpots {
	linear := l.Colour.Linear()
	s := &layerSpots{Layer: l, ink: [3]uint32{light(linear.R), light(linear.G), light(linear.B)}}
	for _, outline := range l.Outlines {
		if len(outline) < 3 {
			continue
		}
		list := make([]spot, len(outline))
		for i, q := range outline {
			list[i] = spot{parts(q.X), parts(q.Y)}
		}
		s.outlines, s.rows = append(s.outlines, list), append(s.rows, rowsOf(list))
	}
	return s
}

func parts(v float64) int32 { return int32(math.Round(min(max(v, -beyond), beyond) * part)) }

// overlay draws layers over a band.
type overlay struct {
	*painting
	cells  *cells
	sweep  *sweep
	linear [256]uint32 // the light of a byte, of full
}

func newOverlay(g *painting) *overlay {
	o := &overlay{painting: g, cells: newCells(g.rows), sweep: newSweep(1)}
	for i := range o.linear {
		v := uint8(i)
		o.linear[i] = light(palettes.Colour{R: v, G: v, B: v}.Linear().R)
	}
	return o
}

func (o *overlay) draw(buffer []byte, first, rows int) {
	long := 1 + o.Size.Width*o.depth.bytes()
	for _, l := range o.layers {
		o.cells.begin(first, rows)
		for i, reach := range l.rows {
			if reach[0] < int32(first+rows) && reach[1] >= int32(first) {
				o.cells.outline(l.outlines[i], 0)
			}
		}
		for row := range rows {
			if list := o.cells.inOrder(row); len(list) > 0 {
				o.layerRow(buffer[row*long+1:][:long-1], list, l)
			}
		}
	}
}

// layerRow draws a layer over a row.
func (o *overlay) layerRow(line []byte, list []cell, l *layerSpots) {
	size := o.depth.bytes()
	o.sweep.row(list, int32(o.Size.Width), func(from, to int32, covered shares) {
		if len(covered) == 0 {
			return
		}
		part := uint32(math.Round(float64(min(covered[0].cover, whole)) * l.Opacity * full / whole))
		for at := int(from) * size; at < int(to)*size; at += size {
			o.blend(line[at:at+size], l, part)
		}
	})
}

// blend covers a part of a pixel, of full, with a layer's ink.
func (o *overlay) blend(pixel []byte, l *layerSpots, part uint32) {
	under := uint64(full - part)
	if len(pixel) == 4 {
		under = under * uint64(pixel[3]) / 255
	}
	all := under + uint64(part)
	if all == 0 {
		return
	}
	for c := range min(len(pixel), 3) {
		pixel[c] = o.inks.encode[min((uint64(o.linear[pixel[c]])*under+uint64(l.ink[c])*uint64(part)+all/2)/all, full)]
	}
	if len(pixel) == 4 {
		pixel[3] = uint8(min((all*255+full/2)/full, 255))
	}
}
