package svgout

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"slices"
	"strconv"

	"eighthturn/palettes"
)

// PrintMargin is how many pixels of the neighboring repeats a print's image has on each side, so that whoever smooths pixels sees
// no edge where one repeat ends.
const PrintMargin = 2

// Margined is a print's picture with a margin of the repeats beside it.
func (p *Print) Margined() *image.RGBA { return palettes.Margined(p.Picture, PrintMargin) }

// Size is how much of the cloth one repeat is, in user units.
func (p *Print) Size() (across, down float64) { return userUnits(p.Across), userUnits(p.Down) }

// in is the print in other colors.
func (p *Print) in(colours func(palettes.Colour) palettes.Colour) *Print {
	cloth := *p.Cloth
	if p.Stripes != nil {
		stripes := *p.Stripes
		stripes.List = slices.Clone(stripes.List)
		for i := range stripes.List {
			stripes.List[i].Colour = colours(stripes.List[i].Colour)
		}
		cloth.Stripes = &stripes
	}
	b := p.Picture.Bounds()
	picture, known := image.NewRGBA(b), map[color.RGBA]color.RGBA{}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			own := p.Picture.RGBAAt(x, y)
			other, ok := known[own]
			if !ok {
				c := colours(palettes.Colour{R: own.R, G: own.G, B: own.B})
				other = color.RGBA{c.R, c.G, c.B, own.A}
				known[own] = other
			}
			picture.SetRGBA(x, y, other)
		}
	}
	return &Print{&cloth, picture}
}

// Bands are the stripes of one repeat, in user units: each begins where it says and reaches to the end of the repeat, so that the
// next ones lie over it. It is nil for a print that is no stripes.
func (p *Print) Bands() (list []Band) {
	if p.Stripes == nil {
		return nil
	}
	across, down := p.Size()
	at := 0.0
	for _, s := range p.Stripes.List {
		b := Band{Box{X: at, Width: across - at, Height: down}, Fill{Kind: Flat, Colour: s.Colour}}
		if p.Stripes.Crosswise {
			b.Box = Box{Y: at, Width: across, Height: down - at}
		}
		list = append(list, b)
		at += userUnits(s.Width)
	}
	return list
}

// Band is one stripe, over those that come before it.
type Band struct {
	Box  Box
	Fill Fill
}

// Matrix is how the cloth of a face lies on the top, in user units: the columns of the matrix, and where the cloth's corner is.
func (s *Scene) Matrix(face int32) [6]float64 {
	at := &s.Places[face]
	cloth := s.Paints[s.Top.Faces[face].Fabric].Print
	cos, sin := at.Directions()
	x, y := reduced(userUnits(at.Cloth.X), userUnits(cloth.Across)), reduced(userUnits(at.Cloth.Y), userUnits(cloth.Down))
	return [6]float64{cos, sin, -sin, cos,
		userUnits(at.Top.X) - (float64(cos*x) - float64(sin*y)), userUnits(at.Top.Y) - (float64(sin*x) + float64(cos*y))}
}

// reduced is a place brought to the first repeat.
func reduced(v, repeat float64) float64 { return v - float64(math.Floor(v/repeat)*repeat) }

// prints defines the patterns of the fabrics that are painted with their prints, and of each face that shows one: the same cloth,
// turned as the piece is.
func (d *document) prints() {
	if d.Places == nil {
		return
	}
	fmt.Fprintln(d.out, "<defs>")
	for f := range d.Paints {
		if d.Paints[f].Print != nil {
			d.pattern(f, d.Paints[f].Print)
		}
	}
	for i := range d.Top.Faces {
		if f := d.Top.Faces[i].Fabric; d.Paints[f].Print != nil {
			d.turnedPattern(int32(i), int(f))
		}
	}
	fmt.Fprintln(d.out, "</defs>")
}

func (d *document) pattern(f int, p *Print) {
	width, height := p.Size()
	fmt.Fprintf(d.out, `<pattern id="%s" patternUnits="userSpaceOnUse" width="%s" height="%s">`+"\n", d.printID(f), rounded(width), rounded(height))
	for _, b := range p.Bands() {
		d.canvas.Rect(b.Box.X, b.Box.Y, b.Box.Width, b.Box.Height, d.paint(Style{Fill: b.Fill})...)
	}
	if p.Stripes == nil {
		b := p.Picture.Bounds()
		marginX, marginY := width*PrintMargin/float64(b.Dx()), height*PrintMargin/float64(b.Dy())
		fmt.Fprintf(d.out, `<image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" xlink:href="`,
			rounded(-marginX), rounded(-marginY), rounded(width+2*marginX), rounded(height+2*marginY))
		d.data(p.file())
		fmt.Fprintln(d.out, `"/>`)
	}
	fmt.Fprintln(d.out, `</pattern>`)
}

// Files of prints: above so many bytes a PNG is a JPEG of a quality, if that is less than half of it.
const (
	largePrint   = 300_000
	printQuality = 90
)

// file is a print's image, as a PNG or a JPEG file.
func (p *Print) file() []byte {
	var whole, less bytes.Buffer
	picture := p.Margined()
	_ = png.Encode(&whole, picture) // a picture can be encoded, and memory takes it
	if whole.Len() < largePrint {
		return whole.Bytes()
	}
	if _ = jpeg.Encode(&less, picture, &jpeg.Options{Quality: printQuality}); less.Len() < whole.Len()/2 {
		return less.Bytes()
	}
	return whole.Bytes()
}

func (d *document) printID(fabric int) string { return fmt.Sprintf("%sprint-%d", d.prefix, fabric+1) }

// appendFacePrint appends the id of the pattern of a face.
func (d *document) appendFacePrint(b []byte, face int32) []byte {
	b = append(append(b, d.prefix...), "print-"...)
	b = strconv.AppendInt(b, int64(d.Top.Faces[face].Fabric)+1, 10)
	return strconv.AppendInt(append(b, '-'), int64(face)+1, 10)
}

// turnedPattern is a fabric's pattern as a face shows it.
func (d *document) turnedPattern(face int32, fabric int) {
	b := d.appendFacePrint(append(d.out.bytes, `<pattern id="`...), face)
	b = append(append(append(b, `" xlink:href="#`...), d.printID(fabric)...), `" patternTransform="matrix(`...)
	for i, v := range d.Matrix(face) {
		if i > 0 {
			b = append(b, ' ')
		}
		b = strconv.AppendFloat(b, math.Round(v*1e6)/1e6, 'f', -1, 64)
	}
	d.out.bytes = append(b, ")\"/>\n"...)
	d.out.spill()
}

// facesShown are the faces that an item shows a print of, nil where it shows none.
func (d *document) facesShown(l *Layer, item *Item) []int32 {
	style := l.Styled(item)
	if d.Print(style.Fill) == nil {
		return nil
	}
	return item.Faces
}

// appendFacePaint appends what a face is filled with, where it shows a print.
func (d *document) appendFacePaint(b []byte, shown []int32, n int) []byte {
	if shown == nil {
		return b
	}
	return append(d.appendFacePrint(append(b, ` fill="url(#`...), shown[n]), `)"`...)
}

// kindOf is what an image file is called among media types (RFC 2046).
func kindOf(file []byte) string {
	if bytes.HasPrefix(file, []byte("\xff\xd8")) { // ITU-T T.81, table B.1
		return "jpeg"
	}
	return "png"
}
