package palettes

import "math"

// The bend of the L* curve: cubes above epsilon, a straight line below it (CIE 15:2004, with the exact fractions).
const (
	labEpsilon = 216.0 / 24389
	labKappa   = 24389.0 / 27
)

// What each primary of sRGB adds to the relative luminance under D65; together they are 1. The fractions follow from the
// chromaticities in IEC 61966-2-1 and are those of CSS Color 4, section 18.
const (
	luminanceR = 87098.0 / 409605
	luminanceG = 175762.0 / 245763
	luminanceB = 12673.0 / 175545
)

// Luminance is the relative luminance Y, 0 for black to 1 for white.
func (l Linear) Luminance() float64 {
	return luminanceR*l.R + luminanceG*l.G + luminanceB*l.B
}

// Luminance is the relative luminance Y of the colour, 0 for black to 1 for white.
func (c Colour) Luminance() float64 {
	return c.Linear().Luminance()
}

// Lightness is the value of the colour: CIE L*, D65, 0 for black to 100 for white (CIE 15:2004).
func (c Colour) Lightness() float64 {
	return LightnessOf(c.Luminance())
}

// LightnessOf is the CIE L*, 0 to 100, of a relative luminance of 0 to 1.
func LightnessOf(luminance float64) float64 {
	return 116*labCurve(luminance) - 16
}

// LuminanceOf is the relative luminance, 0 to 1, of a CIE L* of 0 to 100.
func LuminanceOf(lightness float64) float64 {
	return labUncurve((lightness + 16) / 116)
}

// Grey is the grey with the colour's luminance: how the colour looks in a picture without colour.
func (c Colour) Grey() Colour {
	y := c.Luminance()
	return Linear{y, y, y}.Colour()
}

func labCurve(t float64) float64 {
	if t > labEpsilon {
		return math.Cbrt(t)
	}
	return (labKappa*t + 16) / 116
}

func labUncurve(f float64) float64 {
	if t := f * f * f; t > labEpsilon {
		return t
	}
	return (116*f - 16) / labKappa
}
