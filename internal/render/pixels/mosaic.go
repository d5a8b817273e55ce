package pixels

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Mosaic is which shades cover each pixel of a top, found once for all the lights that they may have.
type Mosaic struct {
	Size
	shades int
	holes  bool
	first  []cover    // by pixel: the shade that was found first, weight 0 where nothing is
	more   [][]beside // by row: the other shades of pixels that have several
	blur   float64    // standard deviation that is left to do, pixels
}

// Shades are faces put together that have one light, whatever their fabrics' colors are.
type Shades struct {
	Of    []uint16 // by face
	Count int
}

// cover is a shade and how many subpixels of a pixel it covers, of all its lines.
type cover struct{ shade, weight uint16 }

// beside is a further shade of a pixel.
type beside struct {
	x int32
	cover
}

// NewMosaic finds a top's mosaic at the size asked for or, where the blur makes that needless, at a coarser one.
func NewMosaic(t *quilt.Top, s Size, sigma measure.NM, shades Shades) *Mosaic {
	s, blur := blurredSize(t, s, sigma)
	m := &Mosaic{Size: s, shades: shades.Count, holes: hasHoles(t), first: make([]cover, s.Width*s.Height), more: make([][]beside, s.Height), blur: belowPixels(blur)}
	newScanner(t, s, planeLines).rows(planeLines, func() func(int, [][]span) {
		several := layer{}
		return func(row int, spans [][]span) {
			several.line, several.more = m.first[row*m.Width:][:m.Width], several.more[:0]
			for _, line := range spans {
				for _, one := range line {
					several.lay(one, shades.Of[one.face])
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
func (l *layer) lay(s span, shade uint16) {
	first, last := s.from/subpixels, s.to/subpixels
	head, tail := uint16(s.from%subpixels), uint16(s.to%subpixels)
	if first == last {
		l.put(first, cover{shade, tail - head})
		return
	}
	l.put(first, cover{shade, subpixels - head})
	for x := first + 1; x < last; x++ {
		l.put(x, cover{shade, subpixels})
	}
	if tail > 0 {
		l.put(last, cover{shade, tail})
	}
}

// put adds to one pixel.
func (l *layer) put(x int32, c cover) {
	switch at := &l.line[x]; {
	case at.weight == 0:
		*at = c
	case at.shade == c.shade:
		at.weight += c.weight
	default:
		l.more = append(l.more, beside{x, c})
	}
}

// Blurred is the luminance of the mosaic, with each shade in the relative luminance that is asked for, blurred.
func (m *Mosaic) Blurred(of func(shade int) float64) *Plane {
	return m.luminance(of).blurred(m.blur)
}

// luminance is the same before it is blurred.
func (m *Mosaic) luminance(of func(shade int) float64) *Plane {
	light := make([]uint32, m.shades)
	for f := range light {
		light[f] = uint32(math.Round(of(f) * full))
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
		sums[x], covered[x] = uint32(c.weight)*light[c.shade], uint32(c.weight)
	}
	for _, c := range m.more[row] {
		sums[c.x] += uint32(c.weight) * light[c.shade]
		covered[c.x] += uint32(c.weight)
	}
}
