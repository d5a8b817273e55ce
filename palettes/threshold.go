package palettes

import "math"

// The angles, in degrees, for which the model behind JustNoticeable was fitted.
const (
	smallestAngle = 1.0 / 3
	largestAngle  = 6
)

// VisualAngle is the angle in degrees under which a size is seen from a distance, both in one unit and above 0.
func VisualAngle(size, distance float64) float64 {
	return 2 * math.Atan2(size, 2*distance) * 180 / math.Pi
}

// JustNoticeable is the step in CIE L* that half of all viewers notice between two patches. The angle is that of the
// smaller patch's short side in degrees, cut off at 1/3 and 6; texture is a TextureFactor, 1 for plain cloth (Stone,
// Szafir and Setlur 2014, An Engineering Model for Color Difference as a Function of Size).
func JustNoticeable(angle, texture float64) float64 {
	a := min(max(angle, smallestAngle), largestAngle)
	return texture * 0.5 * (10.16 + 1.5/a)
}

// TextureFactor is how much a print raises the noticeable step, from the standard deviation of L* over the cloth: 1 for
// plain cloth, 1.5 for a tonal print, 2 for a busy one. That texture can nearly double it is published (Montag and Berns,
// on suprathreshold lightness tolerances); the two borders, 4 and 10, are our choice.
func TextureFactor(spread float64) float64 {
	switch {
	case spread < 4:
		return 1
	case spread <= 10:
		return 1.5
	}
	return 2
}
