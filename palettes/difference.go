package palettes

import "math"

// Difference is the CIEDE2000 colour difference of two colours, 0 for alike, 100 for black and white.
func Difference(a, b Colour) float64 {
	return a.Lab().difference(b.Lab())
}

// difference is the CIEDE2000 colour difference with all weights 1 (CIE 142-2001; Sharma, Wu and Dalal 2005,
// DOI 10.1002/col.20070).
func (l Lab) difference(m Lab) float64 {
	g := redShift((l.Chroma() + m.Chroma()) / 2)
	p, q := shifted(l, g), shifted(m, g)
	turn := hueTurn(p, q)
	hue := meanHue(p, q, turn)
	chroma := (p.chroma + q.chroma) / 2

	light := (m.L - l.L) / lightWeight((l.L+m.L)/2)
	colour := (q.chroma - p.chroma) / (1 + 0.045*chroma)
	tint := 2 * math.Sqrt(p.chroma*q.chroma) * sinDeg(turn/2) / (1 + 0.015*chroma*hueWeight(hue))
	return math.Sqrt(light*light + colour*colour + tint*tint + blueTurn(hue, chroma)*colour*tint)
}

// polar is a colour after CIEDE2000 has stretched its a axis: chroma, and hue in degrees.
type polar struct{ chroma, hue float64 }

func shifted(l Lab, g float64) polar {
	a := l.A * (1 + g)
	return polar{math.Hypot(a, l.B), hueAngle(a, l.B)}
}

// pow25to7 is 25 to the seventh power.
const pow25to7 = 6103515625

func seventhShare(chroma float64) float64 {
	p := math.Pow(chroma, 7)
	return math.Sqrt(p / (p + pow25to7))
}

// redShift is the factor G by which the a axis is stretched near grey.
func redShift(meanChroma float64) float64 {
	return 0.5 * (1 - seventhShare(meanChroma))
}

// hueTie is how far, in degrees, two hues may miss lying opposite and still count as opposite: rounding must not choose
// the side on which their mean falls.
const hueTie = 1e-9

// hueTurn is the shorter way from one hue to the other in degrees, -180 to 180; 0 where one of the two is grey.
func hueTurn(p, q polar) float64 {
	d := q.hue - p.hue
	switch {
	case p.chroma*q.chroma == 0:
		return 0
	case d > 180+hueTie:
		return d - 360
	case d < -180-hueTie:
		return d + 360
	}
	return d
}

// meanHue is the hue in the middle of the shorter way; where one of the two is grey, the hue of the other.
func meanHue(p, q polar, turn float64) float64 {
	if p.chroma*q.chroma == 0 {
		return p.hue + q.hue
	}
	if math.Abs(q.hue-p.hue) <= 180+hueTie {
		return (p.hue + q.hue) / 2
	}
	return fullTurn(p.hue + turn/2)
}

func lightWeight(meanLightness float64) float64 {
	d := (meanLightness - 50) * (meanLightness - 50)
	return 1 + 0.015*d/math.Sqrt(20+d)
}

func hueWeight(hue float64) float64 {
	return 1 - 0.17*cosDeg(hue-30) + 0.24*cosDeg(2*hue) + 0.32*cosDeg(3*hue+6) - 0.20*cosDeg(4*hue-63)
}

// blueTurn is the term RT, which bends the measure in the blues.
func blueTurn(hue, chroma float64) float64 {
	d := (hue - 275) / 25
	return -2 * seventhShare(chroma) * sinDeg(60*math.Exp(-d*d))
}

func sinDeg(degrees float64) float64 { return math.Sin(degrees * math.Pi / 180) }

func cosDeg(degrees float64) float64 { return math.Cos(degrees * math.Pi / 180) }
