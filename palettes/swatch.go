package palettes

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"math"
	"slices"

	"eighthturn/internal/stop"
)

// The largest photo that is read.
const (
	MaxPhotoBytes  = 64 << 20
	MaxPhotoPixels = 40_000_000
)

// PhotoSample is what a photo tells of a fabric. Its values are estimates: what a camera and the
// light of a room make of a colour may be off by 5 L* (our guess); the order of fabrics in
// one photo is surer than any of their values.
type PhotoSample struct {
	Colour    Colour  // the mean, in linear light: what the cloth looks like from afar
	Lightness float64 // CIE L* of the mean light, not rounded to eight bits
	Spread    float64 // standard deviation of CIE L* over the cloth
	Darkest   float64 // CIE L* that 5 of 100 points lie below
	Lightest  float64 // CIE L* that 5 of 100 points lie above
	Colours   []Part  // one to four, the largest first
	Width     int     // of the photo as it is seen, in pixels; 0 for none
	Height    int
	Pixels    int         // that were decoded, counted once more for every ten passes; 0 where the header was refused
	Bytes     int         // of its file
	Tile      *image.RGBA // the photo, up to maxTilePixels long and wide, opaque
}

// Part is a colour of a print with its part of the cloth, 0 to 1.
type Part struct {
	Colour Colour
	Share  float64
}

// ReadSwatch reads a photo of one fabric, a JPEG or PNG file. It is turned as its camera
// held it and brought from its colour profile to sRGB; the outer tenth on each side, glare
// and creases are left out. Photos beyond the limits are refused before they are decoded. A
// fault is one sentence that says what is there and what was wanted. A sign ends the work; nil for none.
func ReadSwatch(sign *stop.Sign, file []byte) (sample PhotoSample, err error) {
	defer damaged(&err)
	sample.Bytes = len(file)
	pixels, err := checkPhoto(file)
	if err != nil {
		return sample, err
	}
	sample.Pixels = pixels
	picture, points, err := readPoints(sign, file)
	if err != nil {
		return sample, err
	}
	sample.look(sign, points)
	size := picture.Bounds().Size()
	sample.Width, sample.Height = size.X, size.Y
	sample.Tile = tile(sign, picture)
	return sample, nil
}

// ReadSwatches reads a photo of several fabrics side by side and gives their colours, up to
// so many of them, 2 to 24, in value order: fewer where the photo does not hold so many.
func ReadSwatches(file []byte, name string, most int) (p Palette, err error) {
	defer damaged(&err)
	if most < 2 || most > maxRungs {
		return Palette{}, fmt.Errorf("a palette of %d colors from a photo, expected 2 to %d", most, maxRungs)
	}
	if _, err := checkPhoto(file); err != nil {
		return Palette{}, err
	}
	_, points, err := readPoints(nil, file)
	if err != nil {
		return Palette{}, err
	}
	fabrics := []Swatch{}
	for _, p := range parts(nil, points, most) {
		fabrics = append(fabrics, Swatch{"", p.Colour})
	}
	return Palette{Name: name, Fabrics: byHueAndValue(InValueOrder(fabrics))}, nil
}

// byHueAndValue names fabrics after their hue and L*; a name that comes again gets a number.
func byHueAndValue(fabrics []Swatch) []Swatch {
	seen := map[string]int{}
	for i := range fabrics {
		c := fabrics[i].Colour
		l := Ladder{}
		if c.Lab().Chroma() < plainChroma {
			l.Scheme = Greys
		}
		name := fmt.Sprintf("%s-%.0f", l.word(c.OKLCh().Hue), c.Lightness())
		if seen[name]++; seen[name] > 1 {
			name = fmt.Sprintf("%s-%d", name, seen[name])
		}
		fabrics[i].Name = name
	}
	return fabrics
}

// plainChroma is the CIELAB chroma below which a colour is called a grey; our choice.
const plainChroma = 6

// readPoints decodes a photo whose header was checked and takes the points of it that are cloth.
func readPoints(sign *stop.Sign, file []byte) (image.Image, []Linear, error) {
	picture, err := decoded(sign, file)
	if err != nil {
		return nil, nil, err
	}
	points := sampled(sign, picture)
	if len(points) == 0 {
		return nil, nil, fmt.Errorf("the photo shows nothing: all of it is see-through")
	}
	return picture, clothOnly(points), nil
}

// TooLarge says of a photo of more than MaxPhotoBytes, so many bytes, how large it is, rounded up.
func TooLarge(size int64) error {
	return fmt.Errorf("the photo has %d MB, expected up to %d", (size-1)>>20+1, MaxPhotoBytes>>20)
}

// checkPhoto looks at a photo's header and passes alone, and counts the pixels that decoding it takes.
func checkPhoto(file []byte) (pixels int, err error) {
	config, size, passes := png.DecodeConfig, len(file), 0
	switch {
	case size == 0:
		return 0, fmt.Errorf("the photo is empty")
	case size > MaxPhotoBytes:
		return 0, TooLarge(int64(size))
	case bytes.HasPrefix(file, []byte(jpegBeginning)):
		config, passes = jpeg.DecodeConfig, scans(file)
		if passes > maxScans {
			return 0, fmt.Errorf("the photo is saved in %d passes, expected up to %d; save it again as an ordinary JPEG", passes, maxScans)
		}
	case len(file) > 12 && string(file[4:8]) == "ftyp":
		return 0, fmt.Errorf("this is a HEIC or AVIF photo, expected JPEG or PNG; save it again as one of those")
	case !bytes.HasPrefix(file, []byte(pngSignature)):
		return 0, fmt.Errorf("this is no photo that can be read, expected a JPEG or PNG file")
	}
	c, err := config(bytes.NewReader(file))
	switch {
	case err != nil:
		return 0, fmt.Errorf("the photo's header cannot be read, expected a whole JPEG or PNG file")
	case c.Width < 1 || c.Height < 1:
		return 0, fmt.Errorf("the photo is %d by %d pixels, expected at least one", c.Width, c.Height)
	case c.Width*c.Height*channels(c.ColorModel) > maxPassSamples && progressive(file):
		return 0, fmt.Errorf("the photo is %d by %d pixels and saved in passes (progressive), expected up to %d million in all; save it again as an ordinary JPEG, or smaller",
			c.Width, c.Height, maxPassSamples/channels(c.ColorModel)/1_000_000)
	case c.Width > MaxPhotoPixels/c.Height:
		return 0, fmt.Errorf("the photo is %d by %d pixels, expected up to %d million in all; make it smaller first", c.Width, c.Height, MaxPhotoPixels/1_000_000)
	}
	return c.Width * c.Height * (1 + passes/passesCounted), nil
}

// passesCounted is how many passes over a picture, each of a part of its data, count as decoding it once more; our choice.
const passesCounted = 10

// damaged turns a panic behind a stranger's file into a fault: the decoders are others'.
func damaged(err *error) {
	switch r := recover(); {
	case r == nil:
	case stop.Ended(r):
		panic(r)
	default:
		*err = errors.New("the photo cannot be read: it is damaged")
	}
}

// decoded decodes a photo whose header was checked, upright and in sRGB. No other program is ever run for it.
func decoded(sign *stop.Sign, file []byte) (picture image.Image, err error) {
	decode, note := jpeg.Decode, jpegCamera
	if bytes.HasPrefix(file, []byte(pngSignature)) {
		decode, note = png.Decode, pngCamera
		if file, err = onlyPicture(file); err != nil {
			return nil, err
		}
	}
	unknown := errors.New("the photo cannot be read: it is damaged, or saved in a way that is not known here; save it again as JPEG or PNG")
	c, err := note(file)
	if err != nil {
		return nil, unknown
	}
	if picture, err = decode(sign.Reader(bytes.NewReader(file))); err != nil {
		return nil, unknown
	}
	if picture, err = seen(picture, c); err != nil {
		return nil, unknown
	}
	return picture, nil
}

// maxPoints is how many points of a photo are looked at.
const maxPoints = 160_000

// sampled takes points of the inner four fifths of a picture at even distances, row by row,
// those that are see-through left out.
func sampled(sign *stop.Sign, picture image.Image) []Linear {
	inner := innerPart(picture.Bounds())
	step := max(1, int(math.Ceil(math.Sqrt(float64(inner.Dx())*float64(inner.Dy())/maxPoints))))
	decode := decoding()
	var points []Linear
	for y := inner.Min.Y + step/2; y < inner.Max.Y; y += step {
		sign.Step(inner.Dx() / step)
		for x := inner.Min.X + step/2; x < inner.Max.X; x += step {
			r, g, b, a := picture.At(x, y).RGBA()
			if a < 0xff00 {
				continue
			}
			points = append(points, Linear{decode[r>>8], decode[g>>8], decode[b>>8]})
		}
	}
	return points
}

// decoding is the linear light of each sRGB byte.
func decoding() [256]float64 {
	var table [256]float64
	for i := range table {
		table[i] = Colour{uint8(i), 0, 0}.Linear().R
	}
	return table
}

// What of a photo is no cloth; our choices.
const (
	glare       = 250 // a channel from this byte on is glare
	mostGlare   = 0.1 // part of the photo; where more is so light it is the cloth
	inTail      = 20  // one point of so many
	tail        = 1.0 / inTail
	outOfTheWay = 8 // L* beyond the tail at which a point is glare or a crease
)

// clothOnly leaves out glare and creases: points with a channel at its limit, if they are
// few, and then those that lie well beyond what 5 of 100 points lie beyond. A motif that
// takes 5 of 100 or more is never left out.
func clothOnly(points []Linear) []Linear {
	limit := Colour{R: glare}.Linear().R
	dull := slices.DeleteFunc(slices.Clone(points), func(p Linear) bool { return max(p.R, p.G, p.B) >= limit })
	if float64(len(points)-len(dull)) <= mostGlare*float64(len(points)) {
		points = dull
	}
	values := sortedLightness(points)
	few := (len(values) + inTail - 1) / inTail
	low, high := values[few-1]-outOfTheWay, values[len(values)-few]+outOfTheWay
	return slices.DeleteFunc(slices.Clone(points), func(p Linear) bool {
		l := LightnessOf(p.Luminance())
		return l < low || l > high
	})
}

func sortedLightness(points []Linear) []float64 {
	values := make([]float64, len(points))
	for i, p := range points {
		values[i] = LightnessOf(p.Luminance())
	}
	slices.Sort(values)
	return values
}

// quantile is the value below which the part of sorted values lies.
func quantile(values []float64, part float64) float64 {
	return values[min(int(part*float64(len(values))), len(values)-1)]
}

// look sums points up.
func (c *PhotoSample) look(sign *stop.Sign, points []Linear) {
	mean := meanOf(points)
	values := sortedLightness(points)
	c.Colour, c.Lightness, c.Spread = mean.Colour(), LightnessOf(mean.Luminance()), deviation(values)
	c.Darkest, c.Lightest = quantile(values, tail), quantile(values, 1-tail)
	for k := 1; k <= mostParts; k++ {
		c.Colours = parts(sign, points, k)
		if meanDistance(points, c.Colours) < closeEnough {
			break
		}
	}
}

func meanOf(points []Linear) Linear {
	var sum Linear
	for _, p := range points {
		sum.R += p.R
		sum.G += p.G
		sum.B += p.B
	}
	n := float64(len(points))
	return Linear{sum.R / n, sum.G / n, sum.B / n}
}

func deviation(values []float64) float64 {
	mean, squares := 0.0, 0.0
	for _, v := range values {
		mean += v / float64(len(values))
	}
	for _, v := range values {
		squares += float64((v - mean) * (v - mean))
	}
	return math.Sqrt(squares / float64(len(values)))
}
