package palettes

// Deficiency is a kind of colour-vision deficiency.
type Deficiency int

const (
	Protan Deficiency = iota // weak or missing long-wave cones: reds darken
	Deutan                   // weak or missing middle-wave cones, the most common kind
	Tritan                   // weak or missing short-wave cones, rare
)

// SeenBy is the colour as someone with the deficiency sees it, cut off at the gamut. Severity runs from 0, normal sight,
// to 1, a missing kind of cone, and is cut off there. Greys stay as they are.
func (c Colour) SeenBy(d Deficiency, severity float64) Colour {
	return c.Linear().seenBy(d, severity).Colour()
}

// seenBy is the light as someone with the deficiency sees it, after Machado, Oliveira and Fernandes 2009 (A
// Physiologically-based Model for Simulation of Color Vision Deficiency, DOI 10.1109/TVCG.2009.113), in linear light.
// Between the published steps of a tenth the matrices are interpolated. Channels may leave 0 to 1.
func (l Linear) seenBy(d Deficiency, severity float64) Linear {
	steps := machado(d)
	place := unit(severity) * float64(len(steps)-1)
	below := min(int(place), len(steps)-2)
	part := place - float64(below)
	v := vector{l.R, l.G, l.B}
	a, b := steps[below].times(v), steps[below+1].times(v)
	for i := range a {
		a[i] += part * (b[i] - a[i])
	}
	return Linear{a[0], a[1], a[2]}
}

// machado gives the matrices for severities 0 to 1 in steps of a tenth.
func machado(d Deficiency) [11]matrix {
	switch d {
	case Protan:
		return protan()
	case Deutan:
		return deutan()
	}
	return tritan()
}
