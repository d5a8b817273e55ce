package palettes

import "math"

// OKLab is Ottosson's perceptual space with the white of CSS Color 4, section 9: L 0 to 1, A and B within about 0.4.
// Its L is not the value of a fabric (it differs from L*/100 by up to 0.14): it serves to keep a hue, not to judge light.
type OKLab struct{ L, A, B float64 }

// OKLCh is OKLab as chroma, 0 to about 0.32 for sRGB, and hue in degrees.
type OKLCh struct{ L, Chroma, Hue float64 }

type vector [3]float64

type matrix [3]vector

func (m matrix) times(v vector) vector {
	var w vector
	for i, row := range m {
		w[i] = row[0]*v[0] + row[1]*v[1] + row[2]*v[2]
	}
	return w
}

// conesOfLinear takes linear sRGB to the three cone responses: the matrix of CSS Color 4, section 18, times the fractions
// of sRGB.
func conesOfLinear() matrix {
	return matrix{
		{0.412221469470763, 0.5363325372617348, 0.0514459932675022},
		{0.2119034958178252, 0.6806995506452344, 0.1073969535369406},
		{0.0883024591900564, 0.2817188391361215, 0.6299787016738222},
	}
}

// linearOfCones is the inverse of conesOfLinear, worked out in fractions and rounded once.
func linearOfCones() matrix {
	return matrix{
		{4.07674163607595749, -3.30771153925806148, 0.23096990318210463},
		{-1.26843797328503143, 2.60975734928768836, -0.34131937600265742},
		{-0.00419607613867542, -0.70341861793593627, 1.70761469407461166},
	}
}

// labOfCones takes the cube roots of the cone responses to OKLab.
func labOfCones() matrix {
	return matrix{
		{0.210454268309314, 0.7936177747023054, -0.0040720430116193},
		{1.9779985324311684, -2.4285922420485799, 0.450593709617411},
		{0.0259040424655478, 0.7827717124575296, -0.8086757549230774},
	}
}

// conesOfLab is the inverse of labOfCones, worked out in fractions and rounded once.
func conesOfLab() matrix {
	return matrix{
		{1.00000000000000014, 0.39633777737617495, 0.21580375730991360},
		{0.99999999999999984, -0.10556134581565855, -0.06385417282581333},
		{0.99999999999999985, -0.08948417752981182, -1.29148554801940935},
	}
}

// okLab is the colour in OKLab.
func (c Colour) okLab() OKLab {
	return c.Linear().okLab()
}

// okLab is the light in OKLab.
func (l Linear) okLab() OKLab {
	cones := conesOfLinear().times(vector{l.R, l.G, l.B})
	for i := range cones {
		cones[i] = math.Cbrt(cones[i])
	}
	lab := labOfCones().times(cones)
	return OKLab{lab[0], lab[1], lab[2]}
}

// linear is the light of the colour; its channels leave 0 to 1 where sRGB does not reach.
func (o OKLab) linear() Linear {
	cones := conesOfLab().times(vector{o.L, o.A, o.B})
	for i, c := range cones {
		cones[i] = c * c * c
	}
	l := linearOfCones().times(cones)
	return Linear{l[0], l[1], l[2]}
}

// OKLCh is the colour as lightness, chroma and hue of OKLab.
func (c Colour) OKLCh() OKLCh {
	return c.okLab().oklCh()
}

// oklCh is the same colour by chroma and hue; the hue of a grey is 0.
func (o OKLab) oklCh() OKLCh {
	chroma := math.Hypot(o.A, o.B)
	if chroma < greyChroma {
		return OKLCh{L: o.L}
	}
	return OKLCh{o.L, chroma, hueAngle(o.A, o.B)}
}

// okLab is the same colour by its two axes.
func (o OKLCh) okLab() OKLab {
	return OKLab{o.L, o.Chroma * cosDeg(o.Hue), o.Chroma * sinDeg(o.Hue)}
}
