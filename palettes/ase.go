package palettes

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/lucasb-eyer/go-colorful"
)

// Kinds of block in a Swatch Exchange file. There is no official description; the layout is that of
// https://carl.camera/default.aspx?section=color with the corrections of https://dotclue.org/archive/2013/06/004258/.
const (
	aseColour     = 0x0001
	aseGroupStart = 0xc001
	aseGroupEnd   = 0xc002
)

const (
	aseHeaderBytes = 12
	aseBlockBytes  = 6 // kind and length, before what the block holds
)

// readASE reads an Adobe Swatch Exchange file: RGB and grey colours as sRGB, Lab colours under D50, brought into sRGB with
// hue and value kept. CMYK colours, whose look depends on the press, and those of models that are not known are omitted. The first
// group's name becomes the palette's. A fault is a *fileError with the number of the block; a file of which all is omitted is one.
func readASE(r io.Reader) (Palette, error) {
	data, err := readWhole(r)
	if err != nil {
		return Palette{}, err
	}
	if len(data) < aseHeaderBytes || string(data[:4]) != "ASEF" {
		return Palette{}, &fileError{Message: "not a Swatch Exchange file, expected ASEF at its beginning"}
	}
	blocks := binary.BigEndian.Uint32(data[8:])
	data = data[aseHeaderBytes:]
	if room := len(data) / aseBlockBytes; uint64(blocks) > uint64(room) {
		return Palette{}, &fileError{Message: fmt.Sprintf("the file announces %d blocks, but has room for %d at most", blocks, room)}
	}
	return readBlocks(data, int(blocks))
}

func readBlocks(data []byte, announced int) (Palette, error) {
	var p Palette
	number := 0
	for len(data) > 0 {
		number++
		rest, err := p.readBlock(data)
		if err != nil {
			return Palette{}, &fileError{Block: number, Message: err.Error()}
		}
		data = rest
	}
	if number < announced {
		return Palette{}, &fileError{Message: fmt.Sprintf("the file announces %d blocks, but ends after %d", announced, number)}
	}
	switch {
	case len(p.Fabrics) == 0 && len(p.Omitted) > 0:
		return Palette{}, &fileError{Message: "the file has no color that can be shown; " + p.Omitted[0] + "; save the swatches as RGB or Lab"}
	case len(p.Fabrics) == 0:
		return Palette{}, &fileError{Message: "the file has no color in it"}
	}
	return p, nil
}

// readBlock reads the first block and returns what follows it.
func (p *Palette) readBlock(data []byte) (rest []byte, err error) {
	if len(data) < aseBlockBytes {
		return nil, fmt.Errorf("%d bytes are left, expected a block's kind and length", len(data))
	}
	kind, length := binary.BigEndian.Uint16(data), binary.BigEndian.Uint32(data[2:])
	data = data[aseBlockBytes:]
	if uint64(length) > uint64(len(data)) {
		return nil, fmt.Errorf("it says that it is %d bytes long, but only %d are left", length, len(data))
	}
	body, rest := data[:length], data[length:]
	switch kind {
	case aseColour:
		return rest, p.readASEColour(body)
	case aseGroupStart:
		return rest, p.readASEGroup(body)
	case aseGroupEnd:
		return rest, nil
	}
	return nil, fmt.Errorf("its kind is 0x%04x, expected a color (0x0001) or a group (0xc001, 0xc002)", kind)
}

func (p *Palette) readASEGroup(body []byte) error {
	name, _, err := aseName(body)
	if err == nil && p.Name == "" {
		p.Name = name
	}
	return err
}

func (p *Palette) readASEColour(body []byte) error {
	name, body, err := aseName(body)
	if err != nil {
		return err
	}
	if len(p.Fabrics)+len(p.Omitted) == maxFabrics {
		return fmt.Errorf("more than %d colors, far more than a palette needs", maxFabrics)
	}
	if len(body) < 4 {
		return fmt.Errorf("color %q ends before its model, expected RGB, LAB or Gray", name)
	}
	c, err := aseModel(string(body[:4]), body[4:])
	var other otherModel
	if errors.As(err, &other) {
		p.Omitted = append(p.Omitted, fmt.Sprintf("%q: %v", name, other))
		return nil
	}
	if err != nil {
		return fmt.Errorf("color %q: %w", name, err)
	}
	p.Fabrics = append(p.Fabrics, Swatch{name, c})
	return nil
}

// aseName reads a name, UTF-16 with its length in units and a 0 at its end, and returns what follows it.
func aseName(body []byte) (name string, rest []byte, err error) {
	if len(body) < 2 {
		return "", nil, fmt.Errorf("it ends before its name")
	}
	units := int(binary.BigEndian.Uint16(body))
	body = body[2:]
	if units > maxNameBytes {
		return "", nil, fmt.Errorf("a name of %d characters, expected at most %d", units, maxNameBytes)
	}
	if 2*units > len(body) {
		return "", nil, fmt.Errorf("its name is %d characters long, but the block has room for %d", units, len(body)/2)
	}
	text := make([]uint16, units)
	for i := range text {
		text[i] = binary.BigEndian.Uint16(body[2*i:])
	}
	name = tidyName(string(utf16.Decode(text)))
	if len(name) > maxNameBytes {
		return "", nil, fmt.Errorf("a name of %d bytes, expected at most %d", len(name), maxNameBytes)
	}
	return name, body[2*units:], nil
}

// otherModel is a colour of a model that cannot be shown: why.
type otherModel string

func (m otherModel) Error() string { return string(m) }

// aseModel is a colour of a model. An error is an otherModel, or what is wrong with its numbers.
func aseModel(model string, body []byte) (Colour, error) {
	switch model {
	case "RGB ":
		v, err := aseNumbers(body, 3)
		if err != nil {
			return Colour{}, err
		}
		return aseRGB(v[0], v[1], v[2])
	case "Gray", "GRAY":
		v, err := aseNumbers(body, 1)
		if err != nil {
			return Colour{}, err
		}
		return aseRGB(v[0], v[0], v[0])
	case "LAB ", "Lab ":
		v, err := aseNumbers(body, 3)
		if err != nil {
			return Colour{}, err
		}
		return aseLab(v[0], v[1], v[2])
	case "CMYK":
		return Colour{}, otherModel("CMYK, whose look depends on the press")
	}
	return Colour{}, otherModel(fmt.Sprintf("its model is %q, not RGB, LAB or Gray", model))
}

func aseNumbers(body []byte, count int) ([]float64, error) {
	if len(body) < 4*count {
		return nil, fmt.Errorf("%d bytes of numbers, expected %d", len(body), 4*count)
	}
	numbers := make([]float64, count)
	for i := range numbers {
		numbers[i] = float64(math.Float32frombits(binary.BigEndian.Uint32(body[4*i:])))
	}
	return numbers, nil
}

// aseSlack is how far a number may leave its range: other programs round.
const aseSlack = 1e-3

func within(v, low, high float64) bool {
	return v >= low-aseSlack && v <= high+aseSlack
}

func aseRGB(r, g, b float64) (Colour, error) {
	if !within(r, 0, 1) || !within(g, 0, 1) || !within(b, 0, 1) {
		return Colour{}, fmt.Errorf("channels %g, %g, %g, expected 0 to 1 each", r, g, b)
	}
	return Colour{eightBits(r), eightBits(g), eightBits(b)}, nil
}

// aseLab takes CIELAB under D50, L* as 0 to 1 and a* and b* as -128 to 128.
func aseLab(l, a, b float64) (Colour, error) {
	if !within(l, 0, 1) || !within(a, -128, 128) || !within(b, -128, 128) {
		return Colour{}, fmt.Errorf("lightness %g with %g and %g, expected 0 to 1 with -128 to 128 twice", l, a, b)
	}
	white := [3]float64{0.3457 / 0.3585, 1, 0.2958 / 0.3585} // D50 of CSS Color 4
	x, y, z := colorful.LabToXyzWhiteRef(unit(l), a/100, b/100, white)
	lr, lg, lb := colorful.XyzD50(x, y, z).LinearRgb()
	return Linear{lr, lg, lb}.okLab().oklCh().colour(), nil
}

// writeASE writes a file that readASE reads back with the same colours, and the same names but for blanks drawn together and for the
// ends of very long ones: one group under the palette's name, if it has one, and each fabric as RGB.
func writeASE(w io.Writer, p Palette) error {
	var blocks [][]byte
	if name := tidyName(p.Name); name != "" {
		blocks = append(blocks, aseBlockOf(aseGroupStart, aseNameOf(name)))
	}
	for _, f := range p.Fabrics {
		body := append(aseNameOf(f.Name), "RGB "...)
		for _, channel := range []uint8{f.Colour.R, f.Colour.G, f.Colour.B} {
			body = binary.BigEndian.AppendUint32(body, math.Float32bits(float32(channel)/255))
		}
		const normal = 2 // neither global nor a spot colour
		blocks = append(blocks, aseBlockOf(aseColour, binary.BigEndian.AppendUint16(body, normal)))
	}
	if tidyName(p.Name) != "" {
		blocks = append(blocks, aseBlockOf(aseGroupEnd, nil))
	}
	file := binary.BigEndian.AppendUint32([]byte("ASEF\x00\x01\x00\x00"), uint32(len(blocks)))
	return writeText(w, string(append(file, bytes.Join(blocks, nil)...)))
}

// aseBlockOf is a block: its kind, its length and what it holds.
func aseBlockOf(kind uint16, body []byte) []byte {
	b := binary.BigEndian.AppendUint16(nil, kind)
	return append(binary.BigEndian.AppendUint32(b, uint32(len(body))), body...)
}

// aseNameOf is a name as aseName reads it.
func aseNameOf(name string) []byte {
	name = shortName(tidyName(name))
	units := append(utf16.Encode([]rune(name)), 0)
	for len(units) > maxNameBytes {
		_, last := utf8.DecodeLastRuneInString(name)
		name = strings.TrimRight(name[:len(name)-last], " ")
		units = append(utf16.Encode([]rune(name)), 0)
	}
	b := binary.BigEndian.AppendUint16(nil, uint16(len(units)))
	for _, u := range units {
		b = binary.BigEndian.AppendUint16(b, u)
	}
	return b
}
