package palettes

// luminanceOfMunsell is the relative luminance, 0 to 1, of a Munsell value, cut off at 0 and 10 (the polynomial of ASTM
// D1535, whose white is the perfect diffuser).
func luminanceOfMunsell(value float64) float64 {
	v := 10 * unit(value/10)
	return v * (1.1914 + v*(-0.22533+v*(0.23352+v*(-0.020484+v*0.00081939)))) / 100
}

// MunsellValue is the Munsell value, 0 to 10, of a relative luminance of 0 to 1: the inverse of luminanceOfMunsell, to
// 1e-12 of a step. L*/10 exceeds it by 0.11 of a step at most.
func MunsellValue(luminance float64) float64 {
	y := unit(luminance)
	low, high := 0.0, 10.0
	for range bisections {
		middle := (low + high) / 2
		if luminanceOfMunsell(middle) < y {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
