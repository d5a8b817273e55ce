package motifs

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// colourful is a picture in which no two places are alike.
func colourful(width, height int) *image.RGBA {
	m, r := image.NewRGBA(image.Rect(0, 0, width, height)), rand.New(rand.NewPCG(3, 33))
	for y := range height {
		for x := range width {
			m.SetRGBA(x, y, color.RGBA{uint8(r.IntN(256)), uint8(60 + r.IntN(190)), uint8(r.IntN(200)), 255})
		}
	}
	return m
}

// TestWhatAWedgeShows: a cell's color is the mean of its points in lightness and both colors; the contrast is the root mean square of how far
// cells are from the mean of all, what lies within that of how far points are from the mean of their cell, and the share of light that of the
// points lighter than the middle of the print. All are worked out anew from the pixels that the points lie on.
func TestWhatAWedgeShows(t *testing.T) {
	picture := colourful(90, 60)
	cloth := &quilt.Cloth{Across: 3 * measure.Inch, Down: 2 * measure.Inch, Repeats: true}
	l := newLights(cloth, picture)
	lab := func(x, y float64) palettes.Lab {
		wrap := func(v float64, n int) int { return ((int(math.Floor(v)) % n) + n) % n }
		c := picture.RGBAAt(wrap(x*30/float64(measure.Inch), 90), wrap(y*30/float64(measure.Inch), 60))
		return palettes.Colour{R: c.R, G: c.G, B: c.B}.Lab()
	}
	var values []float64
	for y := range 60 {
		for x := range 90 {
			values = append(values, lab((float64(x)+0.5)*float64(measure.Inch)/30, (float64(y)+0.5)*float64(measure.Inch)/30).L)
		}
	}
	slices.Sort(values)
	if middle := (values[len(values)/20] + values[len(values)-1-len(values)/20]) / 2; math.Abs(l.middle-middle) > 1e-9 {
		t.Errorf("the middle is %g, expected %g", l.middle, middle)
	}
	for _, pointing := range []int{0, 45, 200, 315} {
		w := newWedge(measure.Inch, pointing)
		at := place{measure.Inch * 29 / 10, measure.Inch / 3, pointing}
		got := l.of(&w, at)
		var all [3]float64
		var means [cells][3]float64
		within, light := 0.0, 0
		for c := range cells {
			var points [][3]float64
			for _, p := range w.points[c*perCell : (c+1)*perCell] {
				q := lab(float64(at.across)+p.X, float64(at.down)+p.Y)
				points = append(points, [3]float64{q.L, q.A, q.B})
				if q.L > l.middle {
					light++
				}
			}
			for i := range 3 {
				for _, p := range points {
					means[c][i] += p[i] / perCell
				}
				all[i] += means[c][i] / cells
				for _, p := range points {
					within += (p[i] - means[c][i]) * (p[i] - means[c][i]) / perCell / cells
				}
			}
		}
		contrast := 0.0
		for c := range cells {
			for i, v := range [3]float32{got.cells[c].l, got.cells[c].a, got.cells[c].b} {
				if math.Abs(float64(v)-means[c][i]) > 1e-3 {
					t.Fatalf("cell %d has %v, expected %v", c, got.cells[c], means[c])
				}
				contrast += (means[c][i] - all[i]) * (means[c][i] - all[i]) / cells
			}
		}
		if math.Abs(got.contrast-math.Sqrt(contrast)) > 1e-3 || math.Abs(got.within-math.Sqrt(within)) > 1e-3 || math.Abs(got.share-float64(light)/(cells*perCell)) > 1e-9 || math.Abs(got.mean()-all[0]) > 1e-3 {
			t.Errorf("pointing %d: contrast %g, within %g, light %g, mean %g; expected %g, %g, %g and %g", pointing, got.contrast, got.within, got.share, got.mean(), math.Sqrt(contrast), math.Sqrt(within), float64(light)/(cells*perCell), all[0])
		}
	}
	one := colourful(1, 1)
	w := newWedge(measure.Inch, 0)
	if s := newLights(cloth, one).of(&w, place{}); s.contrast > 1e-4 || s.within > 1e-4 {
		t.Errorf("a single color has a contrast of %g, %g within", s.contrast, s.within)
	}
}

// TestLargePhotosAreLookedAtInSquares: of a photo of more than 512 pixels a side squares of pixels are looked at, as few pixels each as make no
// more than 512 of them.
func TestLargePhotosAreLookedAtInSquares(t *testing.T) {
	cloth := &quilt.Cloth{Across: measure.Inch, Down: measure.Inch, Repeats: true}
	for _, c := range [][4]int{{512, 3, 512, 3}, {513, 3, 257, 2}, {3, 1024, 2, 512}, {5, 1025, 2, 342}, {1, 1, 1, 1}} {
		l := newLights(cloth, image.NewRGBA(image.Rect(0, 0, c[0], c[1])))
		if l.width != c[2] || l.height != c[3] || len(l.lab) != c[2]*c[3] {
			t.Errorf("%d by %d pixels are %d by %d squares, expected %d by %d", c[0], c[1], l.width, l.height, c[2], c[3])
		}
	}
}

// TestPlacesLookedAt: places lie on marks of 1/8 in or 5 mm, so many marks apart as leave no more than 1,536 of a repeat; on a print they point
// eight ways, on stripes 24, and lie across the stripes alone. Each point that is looked at is a step.
func TestPlacesLookedAt(t *testing.T) {
	eighth := measure.Inch / 8
	stripes := func(crosswise bool, repeat measure.NM) *quilt.Cloth {
		return &quilt.Cloth{Across: repeat, Down: repeat, Repeats: true, Stripes: &layout.Stripes{Crosswise: crosswise}}
	}
	print := func(across, down measure.NM) *quilt.Cloth {
		return &quilt.Cloth{Across: across, Down: down, Repeats: true}
	}
	for _, c := range []struct {
		cloth       *quilt.Cloth
		units       measure.System
		step        measure.NM
		across, way int
		down        int
	}{
		{print(4*measure.Inch, 6*measure.Inch), measure.Inches, eighth, 32, 45, 48},                // 1,536 of them
		{print(4*measure.Inch+1, 6*measure.Inch), measure.Inches, 2 * eighth, 17, 45, 24},          // a row more
		{print(measure.Inch/8+1, measure.Inch/8), measure.Inches, eighth, 2, 45, 1},                //
		{print(10*measure.Centimetre, 5*measure.Centimetre), measure.Centimetres, 5e6, 20, 45, 10}, //
		{print(24*measure.Inch, 16*measure.Inch), measure.Inches, 4 * eighth, 48, 45, 32},          // 1,536 again
		{stripes(false, 2*measure.Inch), measure.Inches, eighth, 16, 15, 1}, {stripes(true, 2*measure.Inch), measure.Inches, eighth, 1, 15, 16},
	} {
		var s *search
		steps := stop.Count(func(sign *stop.Sign) {
			s = newSearch(c.cloth, colourful(30, 30), measure.Inch, c.units, Options{Count: 1, Sign: sign})
		})
		var want []place
		for y := range c.down {
			for x := range c.across {
				for turn := 0; turn < 360; turn += c.way {
					want = append(want, place{measure.NM(x) * c.step, measure.NM(y) * c.step, turn})
				}
			}
		}
		if !slices.Equal(s.places, want) || len(s.shown) != len(want) || steps != 96*len(want) { // 96 points of each
			t.Errorf("%+v: %d places are looked at, %d times in %d steps, expected %d", *c.cloth, len(s.places), len(s.shown), steps, len(want))
		}
	}
}

// TestBusyPlaces: a place is busy where its points are further from their cells than cells from their mean.
func TestBusyPlaces(t *testing.T) {
	for _, c := range []struct {
		within, contrast float64
		busy             bool
	}{{3, 2, true}, {2, 3, false}, {2, 2, false}} {
		s := &search{places: []place{{1, 2, 45}}, shown: []shown{{contrast: c.contrast, within: c.within, share: 0.25}}}
		if m := s.motif(0); m.Busy != c.busy || m.Across != 1 || m.Down != 2 || m.Pointing != 45 || m.Contrast != c.contrast || m.Share != 0.25 || m.Figure != Even || m.Light {
			t.Errorf("%+v: %+v", c, m)
		}
	}
}

// TestFiguresByCells: what a figure is called by its cells alone, ring by ring from the tip: parts lighter or darker than the rest by more than 8,
// of which rays count for more; of two the one that is told by more.
func TestFiguresByCells(t *testing.T) {
	of := func(value func(ring, lane int) float64) shown {
		var s shown
		for c := range cells {
			s.cells[c].l = float32(value(c/lanes, c%lanes))
		}
		return s
	}
	when := func(yes bool, v float64) float64 {
		if yes {
			return v
		}
		return 50
	}
	for name, c := range map[string]struct {
		value  func(ring, lane int) float64
		figure Figure
		light  bool
	}{
		"a tip":            {func(ring, _ int) float64 { return when(ring == 0, 70) }, Center, true},
		"a dark half":      {func(ring, _ int) float64 { return when(ring < 2, 30) }, Center, false},
		"an edge":          {func(ring, _ int) float64 { return when(ring == 3, 70) }, Rim, true},
		"between":          {func(ring, _ int) float64 { return when(ring == 1 || ring == 2, 30) }, Wreath, false},
		"a middle":         {func(_, lane int) float64 { return when(lane == 1 || lane == 2, 70) }, Starburst, true},
		"sides":            {func(_, lane int) float64 { return when(lane == 1 || lane == 2, 30) }, Spokes, true},
		"the left":         {func(_, lane int) float64 { return when(lane < 2, 70) }, Pinwheel, true},
		"the right":        {func(_, lane int) float64 { return when(lane >= 2, 70) }, Pinwheel, false},
		"a faint tip":      {func(ring, _ int) float64 { return when(ring == 0, 58) }, Even, false},
		"a tip just so":    {func(ring, _ int) float64 { return when(ring == 0, 58.1) }, Center, true},
		"a faint half":     {func(ring, _ int) float64 { return when(ring < 2, 58) }, Even, false},
		"a half just so":   {func(ring, _ int) float64 { return when(ring < 2, 41.9) }, Center, false},
		"a faint edge":     {func(ring, _ int) float64 { return when(ring == 3, 42) }, Even, false},
		"an edge just so":  {func(ring, _ int) float64 { return when(ring == 3, 58.1) }, Rim, true},
		"a faint middle":   {func(_, lane int) float64 { return when(lane == 1 || lane == 2, 55) }, Even, false},
		"a middle just so": {func(_, lane int) float64 { return when(lane == 1 || lane == 2, 55.1) }, Starburst, true},
		"a faint left":     {func(_, lane int) float64 { return when(lane < 2, 55) }, Even, false},
		"a left just so":   {func(_, lane int) float64 { return when(lane < 2, 55.1) }, Pinwheel, true},
		"a wreath just so": {func(ring, _ int) float64 { return when(ring == 1 || ring == 2, 58.1) }, Wreath, true},
		"a faint wreath":   {func(ring, _ int) float64 { return when(ring == 1 || ring == 2, 57.9) }, Even, false},
		"rays over a rim":  {func(ring, lane int) float64 { return when(lane == 1 || lane == 2, 60) + when(ring == 3, 62) - 50 }, Starburst, true},
		"a rim over rays":  {func(ring, lane int) float64 { return when(lane == 1 || lane == 2, 60) + when(ring == 3, 70) - 50 }, Rim, true},
	} {
		s := of(c.value)
		if figure, light := s.figure(); figure != c.figure || light != c.light {
			t.Errorf("%s: %v, light %v, expected %v, %v", name, figure, light, c.figure, c.light)
		}
	}
}
