package motifs

import (
	"image"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// A wedge is looked at in cells of one size: rings round its tip, and lanes from side to side.
const (
	rings    = 4
	lanes    = 4
	cells    = rings * lanes
	along    = 2 // points of a cell from its inner side to its outer one
	beside   = 3 // and across
	perCell  = along * beside
	ofHeight = 2.0 / 3 // how far from its tip the middle of a wedge lies, its center of gravity
)

// wedge is the points of a wedge that are looked at, cell by cell, from its middle on the cloth in nanometers.
type wedge struct {
	points [cells * perCell]measure.Vec
}

// newWedge is a wedge of a height that points by so many degrees clockwise.
func newWedge(height measure.NM, pointing int) (w wedge) {
	on := quilt.ClothPlace{Turn: float64(around - pointing)}
	for ring := range rings {
		for lane := range lanes {
			for n := range perCell {
				part := (float64(ring) + (float64(n/beside)+0.5)/along) / rings
				away := math.Sqrt(part) // rings of one area
				side := 2*(float64(lane)+(float64(n%beside)+0.5)/beside)/lanes - 1
				across, down := on.OnCloth(side*away*float64(height)*(math.Sqrt2-1), (away-ofHeight)*float64(height))
				w.points[(ring*lanes+lane)*perCell+n] = measure.Vec{X: across, Y: down}
			}
		}
	}
	return w
}

// lights are the colors of one repeat of a cloth in squares.
type lights struct {
	lab           []palettes.Lab
	width, height int
	across, down  float64 // squares for a nanometer
	middle        float64 // CIE L* halfway between what 5 of 100 squares lie below and above
}

// mostSquares is into how many squares a repeat is parted along its longer side, at the most.
const mostSquares = 512

func newLights(cloth *quilt.Cloth, picture *image.RGBA) *lights {
	b := picture.Bounds()
	step := max(1, (max(b.Dx(), b.Dy())+mostSquares-1)/mostSquares)
	means := palettes.Squares(picture, step)
	l := &lights{width: (b.Dx() + step - 1) / step, height: (b.Dy() + step - 1) / step, lab: make([]palettes.Lab, len(means))}
	l.across, l.down = float64(b.Dx())/float64(step)/float64(cloth.Across), float64(b.Dy())/float64(step)/float64(cloth.Down)
	values := make([]float64, len(means))
	for i, m := range means {
		l.lab[i] = m.Colour().Lab()
		values[i] = l.lab[i].L
	}
	slices.Sort(values)
	l.middle = (values[len(values)/20] + values[len(values)-1-len(values)/20]) / 2
	return l
}

// at is the color at a place of the cloth.
func (l *lights) at(across, down float64) palettes.Lab {
	wrap := func(v float64, n int) int { return ((int(math.Floor(v)) % n) + n) % n }
	return l.lab[wrap(across*l.across, l.width)+l.width*wrap(down*l.down, l.height)]
}

// shown is what a wedge shows.
type shown struct {
	cells    [cells]measured
	contrast float64 // of its cells from their mean
	within   float64 // of its points from the mean of their cell
	share    float64 // of its points that are light
}

// measured is a color as CIELAB.
type measured struct{ l, a, b float32 }

// of is what a wedge shows at a place.
func (l *lights) of(w *wedge, at place) (s shown) {
	var mean palettes.Lab
	for c := range cells {
		var sum, squares palettes.Lab
		for _, p := range w.points[c*perCell : (c+1)*perCell] {
			q := l.at(float64(at.across)+p.X, float64(at.down)+p.Y)
			sum = palettes.Lab{L: sum.L + q.L, A: sum.A + q.A, B: sum.B + q.B}
			squares = palettes.Lab{L: squares.L + float64(q.L*q.L), A: squares.A + float64(q.A*q.A), B: squares.B + float64(q.B*q.B)}
			if q.L > l.middle {
				s.share += 1.0 / (cells * perCell)
			}
		}
		m := palettes.Lab{L: sum.L / perCell, A: sum.A / perCell, B: sum.B / perCell}
		s.cells[c] = measured{float32(m.L), float32(m.A), float32(m.B)}
		mean = palettes.Lab{L: mean.L + m.L/cells, A: mean.A + m.A/cells, B: mean.B + m.B/cells}
		s.within += (squares.L+squares.A+squares.B)/perCell - (float64(m.L*m.L) + float64(m.A*m.A) + float64(m.B*m.B))
	}
	for _, c := range s.cells {
		s.contrast += c.squared(measured{float32(mean.L), float32(mean.A), float32(mean.B)})
	}
	s.contrast, s.within = math.Sqrt(s.contrast/cells), math.Sqrt(max(0, s.within)/cells)
	return s
}

// squared is the square of the distance of two colors (CIE 1976).
func (m measured) squared(n measured) float64 {
	l, a, b := float64(m.l-n.l), float64(m.a-n.a), float64(m.b-n.b)
	return float64(l*l) + float64(a*a) + float64(b*b)
}

// unlike is how far two figures are from each other, root mean square; from the mirror image where that is nearer, since it looks alike.
func (s *shown) unlike(t *shown) float64 {
	as, mirrored := 0.0, 0.0
	for c := range cells {
		as += s.cells[c].squared(t.cells[c])
		mirrored += s.cells[c].squared(t.cells[c-c%lanes+lanes-1-c%lanes])
	}
	return math.Sqrt(min(as, mirrored) / cells)
}

// mean is the CIE L* of the wedge in the mean of its cells.
func (s *shown) mean() (sum float64) {
	for _, c := range s.cells {
		sum += float64(c.l) / cells
	}
	return sum
}

// leastStep is from what difference of light on a part of the wedge stands out as a figure, in CIE L*; our choice.
const leastStep = 8

// raysCount is by how much more a step from side to side of the wedge counts than one from its tip to its edge: eight rays are seen first
// where rings are there too. Our choice, by eye.
const raysCount = 1.6

// figure is what stands out by its light most, and whether it is the lighter.
func (s *shown) figure() (figure Figure, light bool) {
	part := func(in func(ring, lane int) bool) float64 {
		var sums, counts [2]float64
		for c := range cells {
			side := 0
			if in(c/lanes, c%lanes) {
				side = 1
			}
			sums[side], counts[side] = sums[side]+float64(s.cells[c].l), counts[side]+1
		}
		return sums[1]/counts[1] - sums[0]/counts[0]
	}
	most := float64(leastStep)
	for _, f := range []struct {
		figure Figure
		counts float64
		in     func(ring, lane int) bool
	}{
		{Center, 1, func(ring, _ int) bool { return ring == 0 }},
		{Center, 1, func(ring, _ int) bool { return ring < rings/2 }},
		{Rim, 1, func(ring, _ int) bool { return ring == rings-1 }},
		{Wreath, 1, func(ring, _ int) bool { return ring > 0 && ring < rings-1 }},
		{Starburst, raysCount, func(_, lane int) bool { return lane > 0 && lane < lanes-1 }},
		{Pinwheel, raysCount, func(_, lane int) bool { return lane < lanes/2 }},
	} {
		if step := part(f.in) * f.counts; math.Abs(step) > most {
			most, figure, light = math.Abs(step), f.figure, step > 0
		}
	}
	if figure == Starburst && !light {
		return Spokes, true // the same, seen from the seams
	}
	if figure == Even && s.contrast > leastStep {
		figure = Mixed
	}
	return figure, light
}

// largeEnough refuses a photo on which a wedge is a few pixels high.
func largeEnough(cloth *quilt.Cloth, picture *image.RGBA, height measure.NM) error {
	if cloth.Stripes != nil {
		return nil
	}
	var size image.Point
	if picture != nil {
		size = picture.Bounds().Size()
	}
	across, down := float64(height)/float64(cloth.Across), float64(height)/float64(cloth.Down)
	pixels := int(min(float64(size.X)*across, float64(size.Y)*down))
	if pixels >= leastPixels {
		return nil
	}
	return &Unfit{Why: TooSmall, Pixels: pixels, NeededAcross: int(math.Ceil(leastPixels / across)), NeededDown: int(math.Ceil(leastPixels / down))}
}
