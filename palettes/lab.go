package palettes

import "math"

// Lab is CIELAB under D65: L 0 to 100, A towards red and away from green, B towards yellow and away from blue
// (CIE 15:2004). Its white is the white of sRGB itself, so every grey has A and B of 0.
type Lab struct{ L, A, B float64 }

// XYZ of linear sRGB under D65, the fractions of CSS Color 4, section 18; Y stands with Luminance.
const (
	redX, greenX, blueX = 506752.0 / 1228815, 87881.0 / 245763, 12673.0 / 70218
	redZ, greenZ, blueZ = 7918.0 / 409605, 87881.0 / 737289, 1001167.0 / 1053270
	whiteX              = redX + greenX + blueX
	whiteZ              = redZ + greenZ + blueZ
)

// Lab is the colour in CIELAB.
func (c Colour) Lab() Lab {
	return c.Linear().lab()
}

// lab is the light in CIELAB.
func (l Linear) lab() Lab {
	x := labCurve((redX*l.R + greenX*l.G + blueX*l.B) / whiteX)
	y := labCurve(l.Luminance())
	z := labCurve((redZ*l.R + greenZ*l.G + blueZ*l.B) / whiteZ)
	return Lab{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

// Chroma is how far the colour lies from grey, 0 to about 134 for sRGB.
func (l Lab) Chroma() float64 {
	return math.Hypot(l.A, l.B)
}

// greyChroma is the chroma below which a colour is a grey and its hue means nothing.
const greyChroma = 1e-6

// hue is the angle round the greys in degrees, from 0 (red) up to 360; 0 for a grey.
func (l Lab) hue() float64 {
	if l.Chroma() < greyChroma {
		return 0
	}
	return hueAngle(l.A, l.B)
}

// hueAngle is the direction of (a, b) in degrees, 0 or more and below 360.
func hueAngle(a, b float64) float64 {
	return fullTurn(math.Atan2(b, a) * 180 / math.Pi)
}

// fullTurn brings an angle in degrees to 0 or more and below 360.
func fullTurn(degrees float64) float64 {
	d := math.Mod(degrees, 360)
	if d < 0 {
		d += 360
	}
	if d >= 360 {
		return 0
	}
	return d
}
