package palettes

import "math"

// The values, in L*, within which a replacement is looked for: cloth is hardly ever darker or lighter.
const (
	darkestCloth  = 5
	lightestCloth = 95
)

// searchStep is how finely, in L*, a replacement is looked for.
const searchStep = 0.25

// Darker finds the nearest darker colour of the same hue, with no more chroma, that stands at least step L* off from every
// neighbour, and whether there is one within L* 5 to 95. A colour that does so already is its own answer.
func Darker(c Colour, neighbours []Colour, step float64) (Colour, bool) {
	return replacement(c, -searchStep, standingOff(neighbours, step))
}

// Lighter finds the nearest lighter colour in the same way.
func Lighter(c Colour, neighbours []Colour, step float64) (Colour, bool) {
	return replacement(c, searchStep, standingOff(neighbours, step))
}

// standingOff returns the test whether an L* lies at least step from that of every neighbour.
func standingOff(neighbours []Colour, step float64) func(lightness float64) bool {
	values := make([]float64, len(neighbours))
	for i, n := range neighbours {
		values[i] = n.Lightness()
	}
	return func(lightness float64) bool {
		for _, v := range values {
			if !(math.Abs(lightness-v) >= step) {
				return false
			}
		}
		return true
	}
}

// replacement walks from the colour's own L* by the stride, and takes the first colour that, once rounded to eight bits,
// is good.
func replacement(c Colour, stride float64, good func(lightness float64) bool) (Colour, bool) {
	own, hue := c.Lightness(), c.OKLCh()
	if good(own) {
		return c, true
	}
	for l := own + stride; l >= darkestCloth && l <= lightestCloth; l += stride {
		if !good(l) {
			continue
		}
		if r := hue.atLightness(l); good(r.Lightness()) {
			return r, true
		}
	}
	return Colour{}, false
}
