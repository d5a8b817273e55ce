// Package picture turns a scene of a top into a picture in pixels and into a PDF of one page, with what is
// round it on paper, and several scenes with words into one picture.
package picture

import (
	"bytes"
	"fmt"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/render/pdf"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// Frame says how large a picture is on paper and what is round it. The zero value is the
// picture at the top's true size and nothing round it.
type Frame struct {
	Longest      measure.NM       // the longer side of the picture, without what is round it; 0 for true size
	Pixels       int              // the same in pixels, for a PNG; 0 for what Longest and PerInch give
	PerInch      float64          // pixels an inch of paper, for a PNG; 0 for 300, or with Pixels and no Longest for what gives true size
	Margin       measure.NM       // of background on every side, on paper; 0 for none
	MarginPixels int              // the same in pixels, not for a PDF; 0 for Margin
	Bleed        measure.NM       // beyond that on every side, to be trimmed off: background, or where there is no margin the cloth running on; 0 for none
	Background   *palettes.Colour // nil for white
	Clear        bool             // no background: a PNG is see-through beside the cloth, a PDF has none, a JPEG has it all the same
	TrueColour   bool             // every pixel of a PNG says its color itself, not by a number in a palette
	Quality      int              // of a JPEG, 1 to 100; 0 for UsualQuality
}

// UsualQuality is the quality of a JPEG of which nothing else is said: edges of cloth show no stains at reading distance.
const UsualQuality = 92

// usualPerInch is the pixels an inch of what is printed at its best.
const usualPerInch = 300

// TooLarge says that a picture would have more pixels than can be had, and what can.
type TooLarge struct {
	Width, Height int // pixels
	Reason        string
	PerInch       int // the most that can be had at this size, 0 for none
	Longest       int // the same as pixels of the picture's longer side
}

func (e *TooLarge) Error() string {
	return fmt.Sprintf("the picture would be %d by %d pixels, %s", e.Width, e.Height, e.Reason)
}

// side is the measures of a picture along one axis, in user units of the scene, 96 an inch of
// the quilt.
type side struct{ whole, quilt float64 }

// sides are a picture's measures.
type sides struct{ across, down side }

// sidesOf are those of a scene.
func sidesOf(s *svgout.Scene) sides {
	return sides{side{userUnits(s.Width), userUnits(s.Top.Outer.Width())}, side{userUnits(s.Height), userUnits(s.Top.Outer.Height())}}
}

const unitsPerInch = svgout.PixelsPerInch

func userUnits(nm measure.NM) float64 { return float64(nm) * unitsPerInch / float64(measure.Inch) }

func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// longest is the longer side in inches of the quilt.
func (s sides) longest() float64 { return max(s.across.whole, s.down.whole) / unitsPerInch }

// perInch is the pixels an inch of paper.
func (f *Frame) perInch(s sides) float64 {
	switch {
	case f.PerInch > 0:
		return f.PerInch
	case f.Pixels > 0 && f.Longest > 0:
		return float64(f.Pixels) / inches(f.Longest)
	case f.Pixels > 0:
		return float64(f.Pixels) / s.longest()
	}
	return usualPerInch
}

// scale is how many pixels a user unit of the picture has.
func (f *Frame) scale(s sides) float64 {
	switch {
	case f.Pixels > 0:
		return float64(f.Pixels) / (s.longest() * unitsPerInch)
	case f.Longest > 0:
		return inches(f.Longest) * f.perInch(s) / (s.longest() * unitsPerInch)
	}
	return f.perInch(s) / unitsPerInch
}

// background is the colour beside the cloth.
func (f *Frame) background() palettes.Colour {
	if f.Background != nil {
		return *f.Background
	}
	return palettes.Colour{R: 255, G: 255, B: 255}
}

// whole is a number of pixels, 1 at least. What is beyond all bounds becomes a number that
// is too, and not a small one.
func whole(pixels float64) int { return int(max(1, math.Round(min(pixels, 1e8)))) }

// marker stands near the beginning of every PDF that this package writes.
const marker = "eighthturn picture"

// IsOurs says whether a file begins as the PDF, PNG, JPEG and WebP pictures of this package do.
func IsOurs(head []byte) bool {
	return pdf.Marked(head, marker) || pixels.IsWebP(head) || bytes.HasPrefix(head, []byte("\x89PNG")) && bytes.Contains(head, []byte(pixels.Marker)) ||
		bytes.HasPrefix(head, []byte("\xff\xd8\xff")) && bytes.Contains(head, []byte(pixels.JPEGMarker))
}

// xy is a place in user units.
type xy struct{ x, y float64 }
