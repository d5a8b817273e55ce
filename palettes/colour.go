package palettes

import (
	"fmt"

	"github.com/lucasb-eyer/go-colorful"
)

// Colour is an sRGB colour, eight bits a channel (IEC 61966-2-1).
type Colour struct{ R, G, B uint8 }

// Hex writes the colour as "#rrggbb" in small letters.
func (c Colour) Hex() string {
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}

// Linear is linear light in the primaries of sRGB, each channel 0 to 1 inside the gamut: twice the number is twice the
// light. Colours are mixed and blurred in it, never in the encoded bytes.
type Linear struct{ R, G, B float64 }

// Linear decodes the colour to linear light.
func (c Colour) Linear() Linear {
	r, g, b := c.encoded().LinearRgb()
	return Linear{r, g, b}
}

func (c Colour) encoded() colorful.Color {
	return colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}
}

// Colour encodes the light to the nearest eight-bit colour; a channel outside 0 to 1 is cut off there.
func (l Linear) Colour() Colour {
	c := colorful.LinearRgb(unit(l.R), unit(l.G), unit(l.B))
	return Colour{eightBits(c.R), eightBits(c.G), eightBits(c.B)}
}

// unit cuts v off at 0 and 1; what is not a number is 0.
func unit(v float64) float64 {
	if v > 0 {
		return min(v, 1)
	}
	return 0
}

func eightBits(v float64) uint8 {
	return uint8(unit(v)*255 + 0.5)
}

// MarshalText is the colour as #rrggbb. It never fails.
func (c Colour) MarshalText() ([]byte, error) { return []byte(c.Hex()), nil }
