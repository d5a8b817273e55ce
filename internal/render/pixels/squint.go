package pixels

import (
	"fmt"
	"image"
	"image/color"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Squint says how eyes and distance blur a top, and in how many steps of value it is drawn.
// The zero value is half-shut eyes across a room.
type Squint struct {
	Distance measure.NM // from eye to quilt; 0 for 10 feet
	Acuity   float64    // the smallest angle that the eyes still tell apart, minutes of arc; 0 for 10, as with half-shut eyes; 1 is good sight
	Blur     measure.NM // standard deviation of the blur on the quilt; 0 for what distance and acuity make
	Steps    int        // values that the picture is drawn in, 2 to 5; 0 for 3
	Relative bool       // cut where this quilt's own values part, and not at fixed ones; 2 and 4 steps are always cut so
}

const (
	usualDistance = 10 * 12 * measure.Inch
	usualAcuity   = 10  // minutes of arc: 20/200 sight, our choice for half-shut eyes
	blurOfAcuity  = 0.8 // sigma as a part of the smallest angle told apart: our choice between the published 0.5 and 1
	usualSteps    = 3
)

// Sigma is the standard deviation of the blur on the quilt: distance times the tangent of
// 0.8 of the smallest angle told apart. Beyond the eye's own blur what is told apart grows
// with sigma (Levi and Klein 1990, DOI 10.1016/0042-6989(90)90016-e), by a factor between
// 0.5 and 1; 0.8 is our choice.
func (q Squint) Sigma() measure.NM {
	if q.Blur > 0 {
		return q.Blur
	}
	distance, acuity := q.Distance, q.Acuity
	if distance == 0 {
		distance = usualDistance
	}
	if acuity == 0 {
		acuity = usualAcuity
	}
	return measure.NM(math.Round(float64(distance) * math.Tan(blurOfAcuity*acuity/60*math.Pi/180)))
}

// Faults of a Squint, each a sentence without a full stop.
func (q Squint) check() error {
	switch {
	case q.Distance < 0 || q.Blur < 0 || q.Acuity < 0:
		return fmt.Errorf("a distance or a blur below nothing")
	case q.Steps != 0 && (q.Steps < 2 || q.Steps > 5):
		return fmt.Errorf("%d steps of value, where 2 to 5 can be drawn", q.Steps)
	}
	return nil
}

// Squinted is a squint picture.
type Squinted struct {
	Picture *image.Paletted // one grey a step, see-through where nothing is
	Steps   []Step          // the darkest first
}

// Step is one step of value of a squint picture.
type Step struct {
	From      float64 // CIE L* at which it begins; 0 for the first
	Lightness float64 // CIE L* that it is drawn in: the mean of what fell into it, so that a flat quilt stays flat
	Share     float64 // of the picture, 0 to 1
}

// Squinting is the picture of a top as half-shut eyes see it: luminance, of a print that of the
// places that each piece shows, blurred in linear light, in a few steps, each drawn at its own mean L*. It is an aid and no model of one
// person's sight: real eyes blur by a disc more than by a Gaussian.
func Squinting(t *quilt.Top, s Size, q Squint) (*Squinted, error) {
	if err := q.check(); err != nil {
		return nil, err
	}
	return posterise(Blurred(t, s, q.Sigma(), nil).stretched(s), q), nil
}

// fineSigma is the sigma in pixels above which a coarser grid shows a blurred picture as
// well; it is then made with a sigma of half of that at the least.
const fineSigma = 8

// Blurred is a top's luminance seen through a Gaussian with the standard deviation sigma on
// the quilt, at the size asked for or, where the blur makes that needless, at a coarser one.
// Each fabric is in the colour that is asked for; nil for its own, and prints as pieces show them.
func Blurred(t *quilt.Top, s Size, sigma measure.NM, colour func(int) palettes.Colour) *Plane {
	s, pixels := blurredSize(t, s, sigma)
	return luminance(t, s, colour).blurred(belowPixels(pixels))
}

// blurredSize is the size at which a blurred top is made, and the blur's standard deviation in its pixels.
func blurredSize(t *quilt.Top, s Size, sigma measure.NM) (Size, float64) {
	across, _ := s.perInch(t)
	pixels := inches(sigma) * across
	if coarser := int(pixels / (fineSigma / 2)); pixels > fineSigma {
		s = Size{max(1, s.Width/coarser), max(1, s.Height/coarser)}
		across, _ = s.perInch(t)
		pixels = inches(sigma) * across
	}
	return s, pixels
}

// belowPixels is the sigma that is left to do: a pixel is itself a mean over a square with
// a variance of a twelfth.
func belowPixels(sigma float64) float64 { return math.Sqrt(max(0, sigma*sigma-1.0/12)) }

// stretched is the plane at another size, between its pixels in proportion.
func (p *Plane) stretched(s Size) *Plane {
	if p.Size == s {
		return p
	}
	to := &Plane{Size: s, Luminance: make([]float32, s.Width*s.Height)}
	if p.Covered != nil {
		to.Covered = make([]float32, len(to.Luminance))
	}
	columns := between(s.Width, p.Width)
	rows := between(s.Height, p.Height)
	inShares(s.Height, func(y0, y1 int) {
		for y := y0; y < y1; y++ {
			at, next := rows[y].at*p.Width, rows[y].next*p.Width
			stretchRow(to.Luminance[y*s.Width:], rowBetween{p.Luminance[at:], p.Luminance[next:], rows[y].part}, columns)
			if p.Covered != nil {
				stretchRow(to.Covered[y*s.Width:], rowBetween{p.Covered[at:], p.Covered[next:], rows[y].part}, columns)
			}
		}
	})
	return to
}

// place is where a pixel lies between two pixels of another grid.
type place struct {
	at, next int
	part     float32 // of the way from at to next
}

// between is where the middles of the pixels of one line lie on another.
func between(length, on int) []place {
	places := make([]place, length)
	for i := range places {
		x := min(max((float64(i)+0.5)*float64(on)/float64(length)-0.5, 0), float64(on-1))
		at := int(x)
		places[i] = place{at, min(at+1, on-1), float32(x - float64(at))}
	}
	return places
}

// rowBetween is a row that lies between two rows of another grid.
type rowBetween struct {
	above, below []float32
	part         float32 // of the way from above to below
}

func (r *rowBetween) at(x int) float32 {
	return r.above[x] + float32(r.part*(r.below[x]-r.above[x]))
}

// stretchRow fills one row, a pixel for each place.
func stretchRow(to []float32, row rowBetween, columns []place) {
	for x, c := range columns {
		left, right := row.at(c.at), row.at(c.next)
		to[x] = left + float32(c.part*(right-left))
	}
}

// fineSteps is how finely luminance is told apart when values are counted.
const fineSteps = 1 << 13

// posterise draws a plane in steps.
func posterise(p *Plane, q Squint) *Squinted {
	counts := count(p)
	of, steps := classes(counts, q)
	out := &Squinted{Steps: steps}
	colours := color.Palette{color.NRGBA{}}
	for _, step := range steps {
		y := palettes.LuminanceOf(step.Lightness)
		c := palettes.Linear{R: y, G: y, B: y}.Colour()
		colours = append(colours, color.NRGBA{c.R, c.G, c.B, 255})
	}
	out.Picture = image.NewPaletted(image.Rect(0, 0, p.Width, p.Height), colours)
	for i, y := range p.Luminance {
		if p.Covered == nil || p.Covered[i] >= 0.5 {
			out.Picture.Pix[i] = of[fine(y)] + 1
		}
	}
	return out
}

// fine is the fine step of a luminance.
func fine(y float32) int { return int(min(max(y, 0), 1)*(fineSteps-1) + 0.5) }

// count counts the covered pixels by the fine step of their luminance.
func count(p *Plane) []int {
	counts := make([]int, fineSteps)
	for i, y := range p.Luminance {
		if p.Covered == nil || p.Covered[i] >= 0.5 {
			counts[fine(y)]++
		}
	}
	return counts
}
