package motifs

import (
	"image"
	"image/color"
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// Cloths of one inch, 160 pixels, on which a wedge of 1/2 in shows a figure, and the place it lies at.
const (
	clothPixels = 160
	high        = measure.Inch / 2
)

// painted is a cloth that is light where a wedge at its middle, which points by so many degrees, has the part: places of it are counted
// from its tip, away along its middle, 0 to 1, and aside, -1 to 1 from its left side to its right as its tip points up.
func painted(pointing int, inverted bool, part func(away, aside float64) bool) (*lights, place) {
	m := image.NewRGBA(image.Rect(0, 0, clothPixels, clothPixels))
	sin, cos := math.Sincos(float64(pointing) * math.Pi / 180)
	for y := range clothPixels {
		for x := range clothPixels {
			dx, dy := (float64(x)+0.5)/clothPixels-0.5, (float64(y)+0.5)/clothPixels-0.5 // inches from the middle of the wedge
			right, down := dx*cos+dy*sin, dy*cos-dx*sin
			away := down/0.5 + 2.0/3
			c := color.RGBA{40, 40, 40, 255}
			if part(away, right/0.5/away/math.Tan(math.Pi/8)) != inverted {
				c = color.RGBA{220, 220, 220, 255}
			}
			m.SetRGBA(x, y, c)
		}
	}
	cloth := &quilt.Cloth{Across: measure.Inch, Down: measure.Inch, Repeats: true}
	return newLights(cloth, m), place{measure.Inch / 2, measure.Inch / 2, pointing}
}

func shownOf(pointing int, inverted bool, part func(away, aside float64) bool) shown {
	l, at := painted(pointing, inverted, part)
	w := newWedge(high, pointing)
	return l.of(&w, at)
}

// TestFigures: what is painted into a wedge is what its figure is called, light or dark, however it is turned; its share of light is
// that of its area, of which a part up to so far from the tip covers the square.
func TestFigures(t *testing.T) {
	for name, c := range map[string]struct {
		part   func(away, aside float64) bool
		figure Figure
		share  float64
	}{
		"a small center": {func(away, _ float64) bool { return away < 0.5 }, Center, 0.25},
		"a center":       {func(away, _ float64) bool { return away < 0.7071 }, Center, 0.5},
		"a rim":          {func(away, _ float64) bool { return away > 0.866 }, Rim, 0.25},
		"a wreath":       {func(away, _ float64) bool { return away > 0.5 && away < 0.866 }, Wreath, 0.5},
		"a starburst":    {func(_, aside float64) bool { return math.Abs(aside) < 0.5 }, Starburst, 0.5},
		"a pinwheel":     {func(_, aside float64) bool { return aside < 0 }, Pinwheel, 0.5},
		"quarters":       {func(away, aside float64) bool { return (away*away < 0.5) == (aside < 0) }, Mixed, 0.5},
		"nothing":        {func(_, _ float64) bool { return true }, Even, 0},
	} {
		for _, pointing := range []int{0, 45, 135, 300} {
			for _, inverted := range []bool{false, true} {
				s := shownOf(pointing, inverted, c.part)
				figure, light := s.figure()
				wanted, share, lighter := c.figure, c.share, !inverted
				if inverted {
					share = 1 - share
				}
				switch {
				case c.figure == Starburst && inverted:
					wanted, lighter = Spokes, true
				case c.figure == Even:
					share, lighter = 0, false
				case c.figure == Pinwheel || c.figure == Mixed:
					lighter = light // which side is lighter nobody sees
				}
				if figure != wanted || light != lighter {
					t.Errorf("%s, pointing %d: it is a %v, light %v", name, pointing, figure, light)
				}
				if math.Abs(s.share-share) > 0.03 {
					t.Errorf("%s, pointing %d: %.2f of it is light, not %.2f", name, pointing, s.share, share)
				}
			}
		}
	}
}

// TestContrast: half of a wedge light and half dark is as far from the mean as each is, and nothing lies within its cells; small checks
// the other way round. Lightness of the two grays: CIE 15:2004.
func TestContrast(t *testing.T) {
	half := shownOf(0, false, func(_, aside float64) bool { return aside < 0 })
	const dark, light = 16.1, 87.6 // L* of sRGB bytes 40 and 220, worked out by hand from the standard
	if want := (light - dark) / 2; math.Abs(half.contrast-want) > 1 || half.within > 1 {
		t.Errorf("two halves have a contrast of %.1f, within their cells %.1f; wanted %.1f and 0", half.contrast, half.within, want)
	}
	if mean := half.mean(); math.Abs(mean-(dark+light)/2) > 1 {
		t.Errorf("two halves have L* %.1f in the mean", mean)
	}
	checks := shownOf(0, false, func(away, aside float64) bool {
		return (int(math.Floor(away*away*rings*along))+int(math.Floor((aside+1)/2*lanes*beside)))%2 == 0
	})
	if want := (light - dark) / 2; math.Abs(checks.within-want) > 2 || checks.contrast > 8 {
		t.Errorf("checks have a contrast of %.1f, within their cells %.1f; wanted little and %.1f", checks.contrast, checks.within, want)
	}
}

// TestUnlike: a figure is like itself and its mirror image, and unlike all others.
func TestUnlike(t *testing.T) {
	left := shownOf(0, false, func(_, aside float64) bool { return aside < 0 })
	right := shownOf(90, true, func(_, aside float64) bool { return aside < 0 })
	outer := shownOf(0, false, func(_, aside float64) bool { return aside > 0.5 })
	center := shownOf(0, false, func(away, _ float64) bool { return away < 0.5 })
	if a, b := left.unlike(&left), left.unlike(&right); a != 0 || b > 0.5 {
		t.Errorf("a pinwheel is off itself by %.2f, and by %.2f off its mirror image", a, b)
	}
	for name, s := range map[string]*shown{"a narrow pinwheel": &outer, "a center": &center} {
		if a, b := left.unlike(s), s.unlike(&left); a < 20 || a != b {
			t.Errorf("a pinwheel is off %s by %.2f, and that by %.2f", name, a, b)
		}
	}
}

// TestDifferent: places are apart on a cloth that comes again; on stripes those that are turned enough may lie together.
func TestDifferent(t *testing.T) {
	const mm = measure.Millimetre
	s := &search{cloth: &quilt.Cloth{Across: 100 * mm, Down: 60 * mm}, apart: 20 * mm}
	for _, c := range []struct {
		a, b    place
		between measure.NM
		striped bool
	}{
		{place{0, 0, 0}, place{30 * mm, 40 * mm, 0}, 36_055_512, true}, // 40 down is 20 up
		{place{95 * mm, 0, 0}, place{5 * mm, 0, 180}, 10 * mm, true},
		{place{95 * mm, 0, 45}, place{5 * mm, 0, 60}, 10 * mm, false},
		{place{95 * mm, 0, 345}, place{5 * mm, 0, 0}, 10 * mm, false},
		{place{95 * mm, 0, 330}, place{5 * mm, 0, 0}, 10 * mm, true},
		{place{0, 50 * mm, 0}, place{0, 10 * mm, 0}, 20 * mm, true},
	} {
		if got := s.between(c.a, c.b); max(got-c.between, c.between-got) > 1 || got != s.between(c.b, c.a) {
			t.Errorf("%v and %v are %d nm apart, not %d", c.a, c.b, got, c.between)
		}
		s.cloth.Stripes = nil
		if got := s.different(c.a, c.b); got != (c.between >= s.apart) {
			t.Errorf("%v and %v may both be chosen: %v", c.a, c.b, got)
		}
		s.cloth.Stripes = &layout.Stripes{}
		if got := s.different(c.a, c.b); got != c.striped {
			t.Errorf("on stripes %v and %v may both be chosen: %v", c.a, c.b, got)
		}
	}
}
