package palettes

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"
	"image/color"
	"math"
	"slices"

	"github.com/kovidgoyal/imaging/prism/meta/icc"
)

// view is a photo as it is meant to be seen: turned as its camera was held, its colors brought to sRGB where they are asked for.
type view struct {
	image.Image
	held int     // 1 to 8
	srgb convert // nil for colors that are sRGB already
}

// convert brings a color to sRGB, each part 0 to 1.
type convert func(color.Color) (r, g, b float64)

// seen is a decoded photo with what its camera noted.
func seen(picture image.Image, c camera) (image.Image, error) {
	v := view{picture, c.held, nil}
	switch {
	case c.code != nil:
		known := false
		if v.srgb, known = codedColours(c.code); !known {
			return nil, errors.New("the code of its colors is not known")
		}
	case c.profile != nil:
		var err error
		if v.srgb, err = profiled(picture, c.profile); err != nil {
			return nil, err
		}
	}
	if v.held == 1 && v.srgb == nil {
		return picture, nil
	}
	return v, nil
}

// profiled brings colors from an ICC profile to sRGB, relative to white, with black as dark as it can be.
func profiled(picture image.Image, file []byte) (convert, error) {
	if err := profileHolds(file); err != nil {
		return nil, err
	}
	profile, err := icc.NewProfileReader(bytes.NewReader(file)).ReadProfile()
	if err != nil || profile.IsSRGB() {
		return nil, err
	}
	channels, parts := 3, rgbParts
	if profile.Header.DataColorSpace == icc.ColorSpaceGray {
		channels, parts = 1, greyParts
	} else if _, inks := picture.(*image.CMYK); inks {
		channels, parts = 4, inkParts
	}
	pipeline, err := profile.CreateTransformerToSRGB(icc.RelativeColorimetricRenderingIntent, true, channels, true, true, true)
	if err != nil {
		return nil, err
	}
	return func(c color.Color) (r, g, b float64) {
		in, out := parts(c), [4]float64{}
		pipeline.TransformGeneral(out[:], in[:])
		return out[0], out[1], out[2]
	}, nil
}

// profileHolds says whether all that a profile's tag table names lies in the file (ICC.1:2022, 7.3: behind a header of 128 bytes the count of
// tags, then the signature, the place and the size of each): the reader of profiles makes room for what is named before it looks.
func profileHolds(file []byte) error {
	const header, entry = 128, 12
	wrong := errors.New("its color profile is not whole")
	if len(file) < header+4 {
		return wrong
	}
	table := file[header+4:]
	count := binary.BigEndian.Uint32(file[header:])
	if int64(count)*entry > int64(len(table)) {
		return wrong
	}
	for tag := range slices.Chunk(table[:count*entry], entry) {
		from, size := binary.BigEndian.Uint32(tag[4:]), binary.BigEndian.Uint32(tag[8:])
		if int64(from)+int64(size) > int64(len(file)) {
			return wrong
		}
	}
	return nil
}

// The parts of a color, 0 to 1, as profiles take them.
func rgbParts(c color.Color) [4]float64 {
	n := color.NRGBA64Model.Convert(c).(color.NRGBA64)
	return [4]float64{float64(n.R) / math.MaxUint16, float64(n.G) / math.MaxUint16, float64(n.B) / math.MaxUint16}
}

func greyParts(c color.Color) [4]float64 {
	return [4]float64{float64(color.Gray16Model.Convert(c).(color.Gray16).Y) / math.MaxUint16}
}

func inkParts(c color.Color) [4]float64 {
	n := color.CMYKModel.Convert(c).(color.CMYK)
	return [4]float64{float64(n.C) / math.MaxUint8, float64(n.M) / math.MaxUint8, float64(n.Y) / math.MaxUint8, float64(n.K) / math.MaxUint8}
}

// codedColours are colors by code points (ITU-T H.273; PNG Specification, third edition, section 11.3.2.6): sRGB, and Display P3
// with the curve of sRGB, which phones write.
func codedColours(code []byte) (to convert, known bool) {
	const srgb, displayP3, curve = 1, 12, 13
	if code[1] != curve || code[2] != 0 || code[3] != 1 || code[0] != srgb && code[0] != displayP3 {
		return nil, false
	}
	if code[0] == srgb {
		return nil, true
	}
	return fromDisplayP3, true
}

// fromDisplayP3 goes by linear light and XYZ, with the matrices of CSS Color 4, section 18, multiplied.
func fromDisplayP3(c color.Color) (red, green, blue float64) {
	parts := rgbParts(c)
	r, g, b := uncurved(parts[0]), uncurved(parts[1]), uncurved(parts[2])
	return curved(1.2249401762805598*r - 0.2249401762805597*g), curved(-0.0420569547096881*r + 1.0420569547096881*g),
		curved(-0.0196375545903344*r - 0.0786360455506319*g + 1.0982736001409663*b)
}

// uncurved and curved are the curve of sRGB (IEC 61966-2-1) and its inverse, 0 to 1.
func uncurved(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func curved(v float64) float64 {
	if v <= 0.0031308 {
		return max(0, v*12.92)
	}
	return min(1, 1.055*math.Pow(v, 1/2.4)-0.055)
}

// Bounds is what the photo fills, upright; held at 5 and above it was turned by a quarter.
func (v view) Bounds() image.Rectangle {
	b := v.Image.Bounds()
	if v.held >= 5 {
		return image.Rect(0, 0, b.Dy(), b.Dx())
	}
	return image.Rect(0, 0, b.Dx(), b.Dy())
}

func (v view) ColorModel() color.Model { return color.NRGBAModel }

// At is the color at a place of the upright photo.
func (v view) At(x, y int) color.Color {
	x, y = v.place(x, y)
	return v.colour(v.Image.At(x, y))
}

// place is where a pixel of the upright photo lies in the picture as it was taken.
func (v view) place(x, y int) (int, int) {
	b := v.Image.Bounds()
	right, lower := b.Dx()-1, b.Dy()-1
	switch v.held {
	case 2:
		x = right - x
	case 3:
		x, y = right-x, lower-y
	case 4:
		y = lower - y
	case 5:
		x, y = y, x
	case 6:
		x, y = y, lower-x
	case 7:
		x, y = right-y, lower-x
	case 8:
		x, y = right-y, x
	}
	return b.Min.X + x, b.Min.Y + y
}

func (v view) colour(of color.Color) color.Color {
	if v.srgb == nil {
		return of
	}
	r, g, b := v.srgb(of)
	_, _, _, a := of.RGBA()
	eight := func(x float64) uint8 { return uint8(math.Round(x * math.MaxUint8)) }
	return color.NRGBA{eight(r), eight(g), eight(b), uint8(a >> 8)}
}
