package palettes

// gamutSlack is how far a linear channel may leave 0 to 1 and still count as inside: a tenth of an eight-bit step in the
// darkest colours, far less elsewhere.
const gamutSlack = 3e-5

func (l Linear) inGamut() bool {
	const low, high = -gamutSlack, 1 + gamutSlack
	return l.R >= low && l.G >= low && l.B >= low && l.R <= high && l.G <= high && l.B <= high
}

// colour is the nearest eight-bit colour. Where sRGB does not reach, hue and value are kept and chroma gives way.
func (o OKLCh) colour() Colour {
	l := o.okLab().linear()
	if l.inGamut() {
		return l.Colour()
	}
	return o.atLightness(LightnessOf(unit(l.Luminance())))
}

// atLightness is the colour of this hue, and of this chroma as far as sRGB has it, whose CIE L* is the given one, cut off
// at 0 and 100. The L of the receiver is not read. Rounding to eight bits moves L* by 0.3 at most.
func (o OKLCh) atLightness(lightness float64) Colour {
	return o.linearAt(lightness).Colour()
}

// bisections halve an interval of 1 to below the rounding of a float64 near it.
const bisections = 48

// linearAt finds the light of the wanted L* by bisection: of OKLab's L at a chroma, and of the chroma where sRGB does not
// reach. The grey of that L* is always inside, so there is always an answer.
func (o OKLCh) linearAt(lightness float64) Linear {
	y := LuminanceOf(100 * unit(lightness/100))
	if l, ok := o.withLuminance(o.Chroma, y); ok {
		return l
	}
	best := Linear{y, y, y}
	inside, outside := 0.0, o.Chroma
	for range bisections {
		chroma := (inside + outside) / 2
		if l, ok := o.withLuminance(chroma, y); ok {
			best, inside = l, chroma
		} else {
			outside = chroma
		}
	}
	return best
}

// luminanceSlack is how far the luminance found may miss the one wanted.
const luminanceSlack = 1e-9

// withLuminance finds the light of this hue and the given chroma with relative luminance y, and whether sRGB has it.
func (o OKLCh) withLuminance(chroma, y float64) (Linear, bool) {
	dark, light := 0.0, 1.0
	var l Linear
	for range bisections {
		middle := (dark + light) / 2
		l = OKLCh{middle, chroma, o.Hue}.okLab().linear()
		if l.Luminance() < y {
			dark = middle
		} else {
			light = middle
		}
	}
	miss := l.Luminance() - y
	return l, l.inGamut() && miss < luminanceSlack && miss > -luminanceSlack
}
