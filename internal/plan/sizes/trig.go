package sizes

import (
	"math"

	"eighthturn/internal/measure"
)

// The angles of an eighth of a turn.
const (
	tan22 = math.Sqrt2 - 1         // tan 22.5 degrees
	sin22 = 0.38268343236508977173 // sin 22.5 degrees = sqrt(2 - sqrt 2) / 2
)

// times is a length multiplied by a number, in nanometres. The product stands alone, so that no machine fuses it with a
// sum and rounds it otherwise than the next.
func times(nm measure.NM, by float64) float64 { return float64(float64(nm) * by) }

// nearest is a length of so many nanometres, rounded to a whole one.
func nearest(nm float64) measure.NM { return measure.NM(math.Round(nm)) }
