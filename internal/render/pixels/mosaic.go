package pixels

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Mosaic is which fabrics cover each pixel of a top, found once for all the colors that they may have.
type Mosaic struct {
	Size
	fabrics int
	holes   bool
	first   []cover    // by pixel: the fabric that was found first, weight 0 where nothing is
	more    [][]beside // by row: the other fabrics of pixels that have several
	blur    float64    // standard deviation that is left to do, pixels
}

// cover is a fabric and how many subpixels of a pixel it covers, of all its lines.
type cover struct{ fabric, weight uint16 }

// beside is a further fabric of a pixel.
type beside struct {
	x int32
	cover
}

// NewMosaic finds a top's mosaic for Blurred at the size asked for or, where the blur makes that needless, at a coarser one.
func NewMosaic(t *quilt.Top, s Size, sigma measure.NM) *Mosaic {
	s, blur := blurredSize(t, s, sigma)
	m := &Mosaic{Size: s, fabrics: len(t.Fabrics), holes: hasHoles(t), first: make([]cover, s.Width*s.Height), more: make([][]beside, s.Height), blur: belowPixels(blur)}
	newScanner(t, s, planeLines).rows(planeLines, func() func(int, [][]span) {
		several := layer{}
		return func(row int, spans [][]span) {
			several.line, several.more = m.first[row*m.Width:][:m.Width], several.more[:0]
			for _, line := range spans {
				for _, one := range line {
					several.lay(one, uint16(t.Faces[one.face].Fabric))
				}
			}
			m.more[row] = slices.Clone(several.more)
		}
	})
	return m
}

// layer is a row that is being laid.
type layer struct {
	line []cover
	more []beside
}

// lay adds a span.
func (l *layer) lay(s span, fabric uint16) {
	first, last := s.from/subpixels, s.to/subpixels
	head, tail := uint16(s.from%subpixels), uint16(s.to%subpixels)
	if first == last {
		l.put(first, cover{fabric, tail - head})
		return
	}
	l.put(first, cover{fabric, subpixels - head})
	for x := first + 1; x < last; x++ {
		l.put(x, cover{fabric, subpixels})
	}
	if tail > 0 {
		l.put(last, cover{fabric, tail})
	}
}

// put adds to one pixel.
func (l *layer) put(x int32, c cover) {
	switch at := &l.line[x]; {
	case at.weight == 0:
		*at = c
	case at.fabric == c.fabric:
		at.weight += c.weight
	default:
		l.more = append(l.more, beside{x, c})
	}
}

// Blurred is the luminance of the mosaic in some colors, blurred.
func (m *Mosaic) Blurred(colour func(fabric int) palettes.Colour) *Plane {
	return m.luminance(colour).blurred(m.blur)
}

// luminance is the relative luminance with each fabric in the color that is asked for.
func (m *Mosaic) luminance(colour func(fabric int) palettes.Colour) *Plane {
	light := make([]uint32, m.fabrics)
	for f := range light {
		light[f] = uint32(math.Round(colour(f).Luminance() * full))
	}
	p := &Plane{Size: m.Size, Luminance: make([]float32, len(m.first))}
	if m.holes {
		p.Covered = make([]float32, len(m.first))
	}
	inShares(m.Height, func(from, to int) {
		sums, covered := make([]uint32, m.Width), make([]uint32, m.Width)
		for row := from; row < to; row++ {
			m.add(row, light, sums, covered)
			p.fill(row, sums, covered)
		}
	})
	return p
}

// add adds up the light of a row's pixels, and how many of their subpixels are covered.
func (m *Mosaic) add(row int, light, sums, covered []uint32) {
	for x, c := range m.first[row*m.Width:][:m.Width] {
		sums[x], covered[x] = uint32(c.weight)*light[c.fabric], uint32(c.weight)
	}
	for _, c := range m.more[row] {
		sums[c.x] += uint32(c.weight) * light[c.fabric]
		covered[c.x] += uint32(c.weight)
	}
}
