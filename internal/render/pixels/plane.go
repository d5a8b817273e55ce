package pixels

import (
	"math"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// planeLines is how many scan lines a row of a plane has; a plane is there to be blurred.
const planeLines = 4

// Plane is the light of a top, a pixel each, row by row.
type Plane struct {
	Size
	Luminance []float32 // relative, 0 for black to 1 for white; 0 where nothing is
	Covered   []float32 // the part of each pixel that cloth covers, 0 to 1; nil where all is covered
}

// luminance is the relative luminance of the top with each fabric in the colour that is
// asked for; nil for its own, and prints as pieces show them.
func luminance(t *quilt.Top, s Size, colour func(fabric int) palettes.Colour) *Plane {
	light := make([]uint32, len(t.Fabrics))
	for f := range light {
		c := t.Fabrics[f].Colour
		if colour != nil {
			c = colour(f)
		}
		light[f] = uint32(math.Round(c.Luminance() * full))
	}
	p := &Plane{Size: s, Luminance: make([]float32, s.Width*s.Height)}
	if hasHoles(t) {
		p.Covered = make([]float32, s.Width*s.Height)
	}
	if colour == nil {
		if prints := litOf(t, s, light); prints != nil {
			prints.fill(p)
			return p
		}
	}
	mix(mixing{t, s, planeLines, [][]uint32{light}}, func(row int, sums [][]uint32, covered []uint32) {
		p.fill(row, sums[0], covered)
	})
	return p
}

// fill fills a row with the light of its pixels, added up over their subpixels, and how many of them are covered.
func (p *Plane) fill(row int, sums, covered []uint32) {
	line := p.Luminance[row*p.Width:][:p.Width]
	for x, weight := range covered {
		if weight > 0 {
			line[x] = float32(sums[x]) / float32(weight*full)
		}
	}
	if p.Covered != nil {
		for x, weight := range covered {
			p.Covered[row*p.Width+x] = float32(min(weight, subpixels*planeLines)) / (subpixels * planeLines)
		}
	}
}

// hasHoles says whether the layout leaves places empty.
func hasHoles(t *quilt.Top) bool {
	for i := range t.Cells {
		if t.Empty(i) {
			return true
		}
	}
	return false
}

// FaceAt is the face under the middle of each pixel, row by row; -1 where nothing is.
func FaceAt(t *quilt.Top, s Size) []int32 {
	faces := make([]int32, s.Width*s.Height)
	newScanner(t, s, 1).rows(1, func() func(int, [][]span) {
		return func(row int, spans [][]span) {
			line := faces[row*s.Width:][:s.Width]
			for x := range line {
				line[x] = -1
			}
			for _, span := range spans[0] {
				from, to := (span.from+subpixels/2-1)/subpixels, (span.to+subpixels/2-1)/subpixels
				for x := from; x < to; x++ {
					line[x] = span.face
				}
			}
		}
	})
	return faces
}
