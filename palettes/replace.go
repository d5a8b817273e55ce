package palettes

// The values, in L*, between which other cloth is looked for: cloth is hardly ever darker or lighter.
const (
	DarkestCloth  = 5
	LightestCloth = 95
)

// AtLightness is the color of the same hue, with no more chroma, whose CIE L* is the given one, cut off at 0 and 100.
// Rounding to eight bits moves L* by 0.3 at most.
func AtLightness(c Colour, lightness float64) Colour { return c.OKLCh().atLightness(lightness) }
