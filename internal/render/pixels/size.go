// Package pixels turns a top into pixels: in colours, in luminance, face by face, or blurred
// as squinting eyes see it. Light is mixed in linear light, and every pixel is made of the
// pieces that cover it and of nothing else, so that no ground leaks through at a seam.
package pixels

import (
	"fmt"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// The greatest picture that is made.
const (
	mostASide = 30_000      // pixels
	mostInAll = 120_000_000 // pixels
)

// Size is a picture's measure in pixels. The picture covers the whole top, so that its
// pixels are square to within half a pixel over its whole width or height.
type Size struct{ Width, Height int }

// SizeOf is the size of a picture of the top whose longer side has so many pixels. A fault
// is a number of pixels below 1 or beyond the limits.
func SizeOf(t *quilt.Top, longerSide int) (Size, error) {
	if longerSide < 1 || longerSide > mostASide {
		return Size{}, fmt.Errorf("a picture of %d pixels a side, where 1 to %d can be had", longerSide, mostASide)
	}
	width, height := float64(t.Outer.Width()), float64(t.Outer.Height())
	scale := float64(longerSide) / max(width, height)
	s := Size{atLeastOne(width * scale), atLeastOne(height * scale)}
	if s.Width*s.Height > mostInAll {
		return Size{}, fmt.Errorf("a picture of %d by %d pixels, where %d million in all can be had", s.Width, s.Height, mostInAll/1_000_000)
	}
	return s, nil
}

func atLeastOne(pixels float64) int { return max(1, int(math.Round(pixels))) }

// perInch is how many pixels an inch of the finished top has, across and down.
func (s Size) perInch(t *quilt.Top) (across, down float64) {
	return float64(s.Width) / inches(t.Outer.Width()), float64(s.Height) / inches(t.Outer.Height())
}

func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }
