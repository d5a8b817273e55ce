package palettes

// ContrastRatio is the contrast of two colours as a ratio of luminances with flare added, 1 for alike to 21 for black and
// white (WCAG 2.1, contrast ratio). It knows nothing of hue.
func ContrastRatio(a, b Colour) float64 {
	y, z := a.Luminance(), b.Luminance()
	return (max(y, z) + 0.05) / (min(y, z) + 0.05)
}
