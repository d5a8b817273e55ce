package pixels

import (
	"image"
	"math"
	"sync"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// paintLines is how many scan lines a row of pixels has.
const paintLines = 8

// full is the light of one channel that is wholly on.
const full = 1<<16 - 1

// Paint is a picture of the top with each fabric in the colour that is asked for. Where the
// layout says that there is nothing the picture is see-through.
func Paint(t *quilt.Top, s Size, colour func(fabric int) palettes.Colour) *image.NRGBA {
	var channels [3][]uint32
	for f := range t.Fabrics {
		l := colour(f).Linear()
		for c, v := range [3]float64{l.R, l.G, l.B} {
			channels[c] = append(channels[c], uint32(math.Round(v*full)))
		}
	}
	picture := image.NewNRGBA(image.Rect(0, 0, s.Width, s.Height))
	encode := encoding()
	mix(mixing{t, s, paintLines, channels[:]}, func(row int, sums [][]uint32, covered []uint32) {
		line := picture.Pix[row*picture.Stride:][:4*s.Width]
		for x, weight := range covered {
			if weight == 0 {
				continue
			}
			for c := range sums {
				line[4*x+c] = encode[min((sums[c][x]+weight/2)/weight, full)]
			}
			line[4*x+3] = uint8(min((weight*255+subpixels*paintLines/2)/(subpixels*paintLines), 255))
		}
	})
	return picture
}

// encoding is the sRGB byte for each of the 65,536 steps of linear light.
var encoding = sync.OnceValue(func() []uint8 {
	table := make([]uint8, full+1)
	for i := range table {
		y := float64(i) / full
		table[i] = palettes.Linear{R: y, G: y, B: y}.Colour().R
	}
	return table
})

// mixing is what pixels are mixed of.
type mixing struct {
	top      *quilt.Top
	size     Size
	lines    int        // scan lines a row
	channels [][]uint32 // light, by channel and fabric
}

// mix adds up, for every pixel of a row, the light of the fabrics that cover it, weighted by
// the subpixels covered, and those subpixels. The lists are lent to done, which must only
// write what belongs to its row.
func mix(m mixing, done func(row int, sums [][]uint32, covered []uint32)) {
	newScanner(m.top, m.size, m.lines).rows(m.lines, func() func(int, [][]span) {
		covered := make([]uint32, m.size.Width)
		sums := make([][]uint32, len(m.channels))
		for c := range sums {
			sums[c] = make([]uint32, m.size.Width)
		}
		return func(row int, spans [][]span) {
			clear(covered)
			for c := range sums {
				clear(sums[c])
			}
			for _, line := range spans {
				for _, s := range line {
					fabric := m.top.Faces[s.face].Fabric
					add(covered, s, 1)
					for c := range sums {
						add(sums[c], s, m.channels[c][fabric])
					}
				}
			}
			done(row, sums, covered)
		}
	})
}

// add adds light to the pixels of a row by the subpixels of each that the span covers.
func add(row []uint32, s span, light uint32) {
	first, last := s.from/subpixels, s.to/subpixels
	head, tail := uint32(s.from%subpixels), uint32(s.to%subpixels)
	if first == last {
		row[first] += light * (tail - head)
		return
	}
	row[first] += light * (subpixels - head)
	for x := first + 1; x < last; x++ {
		row[x] += light * subpixels
	}
	if tail > 0 {
		row[last] += light * tail
	}
}
