package motifs

import (
	"image"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// TestPointsOfAWedge: the points of a wedge that are looked at lie in four rings of one area and four lanes of one width at each height, two by
// three in each cell, evenly; a wedge is 22 1/2 degrees wide on either side of its middle line, of which a third lies beyond its center of
// gravity. Turned, all go round that.
func TestPointsOfAWedge(t *testing.T) {
	const height = 4 * measure.Inch
	for _, pointing := range []int{0, 45, 90, 160, 315} {
		w := newWedge(height, pointing)
		sin, cos := math.Sincos(float64(pointing) * math.Pi / 180)
		for c := range cells {
			for n, p := range w.points[c*perCell : (c+1)*perCell] {
				x, y := p.X*cos+p.Y*sin, p.Y*cos-p.X*sin // with the tip up
				away := y/float64(height) + 2.0/3
				aside := x / (away * float64(height) * math.Tan(math.Pi/8))
				area, lane := float64(2*(c/lanes)+n/beside), float64(3*(c%lanes)+n%beside)
				if want := math.Sqrt((area + 0.5) / 8); math.Abs(away-want) > 1e-9 {
					t.Fatalf("pointing %d, cell %d, point %d: it lies %g of the height from the tip, not %g", pointing, c, n, away, want)
				}
				if want := (lane+0.5)/6 - 1; math.Abs(aside-want) > 1e-9 {
					t.Fatalf("pointing %d, cell %d, point %d: it lies %g aside, not %g", pointing, c, n, aside, want)
				}
			}
		}
	}
}

// chosenPlainly are the places that should be chosen: again and again the first of those that add most to what is there, their contrast and how
// unlike those before they are, up to that; no two that are the same place nearly, and none that is its own mirror image.
func chosenPlainly(s *search, count int, alike func(place) bool) (list []int) {
	for len(list) < count {
		best, most := -1, 0.0
		for i, at := range s.places {
			if alike(at) || slices.ContainsFunc(list, func(j int) bool { return !s.different(at, s.places[j]) }) {
				continue
			}
			unlike := s.shown[i].contrast
			for _, j := range list {
				unlike = min(unlike, s.shown[i].unlike(&s.shown[j]))
			}
			if worth := s.shown[i].contrast + unlike; best < 0 || worth > most {
				best, most = i, worth
			}
		}
		if best < 0 {
			return list
		}
		list = append(list, best)
	}
	return list
}

// TestChosenAddMost: each place that is chosen adds most to those before it, over many small prints with places that are worth as much.
func TestChosenAddMost(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 15))
	fewer, refused := 0, 0
	for range 400 {
		s := &search{cloth: &quilt.Cloth{Across: 40, Down: 30}, apart: measure.NM(r.IntN(14))}
		if r.IntN(2) == 0 {
			s.cloth.Stripes = &layout.Stripes{}
		}
		alike := func(place) bool { return false }
		if r.IntN(2) == 0 {
			alike = func(at place) bool { return at.across%4 == 0 }
			s.alike = alike
		}
		for range 12 {
			s.places = append(s.places, place{measure.NM(r.IntN(40)), measure.NM(r.IntN(30)), 15 * r.IntN(24)})
			one := shown{contrast: float64(r.IntN(4))}
			for c := range one.cells {
				one.cells[c] = measured{float32(r.IntN(3)), float32(r.IntN(2)), 0}
			}
			s.shown = append(s.shown, one)
		}
		count := 1 + r.IntN(8)
		var got []int
		steps := stop.Count(func(sign *stop.Sign) { s.sign = sign; got = s.chosen(count) })
		want := chosenPlainly(s, count, alike)
		if !slices.Equal(got, want) || steps != len(want)*len(s.places)*16 { // each is held to 16 cells of all
			t.Fatalf("of %v %v are chosen in %d steps, not %v", s.places, got, steps, want)
		}
		if len(got) < count {
			fewer++
		}
		if s.alike != nil {
			refused++
		}
	}
	if fewer < 20 || refused < 100 {
		t.Errorf("%d prints have fewer places than asked for, of %d some are their own mirror image", fewer, refused)
	}
}

// TestUnlikeByCells: how unlike two figures are is the root mean square over their cells, lane against lane or against the other lane from the
// other side, whichever is less.
func TestUnlikeByCells(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 23))
	for range 50 {
		var a, b shown
		for c := range cells {
			a.cells[c] = measured{float32(r.IntN(9)), float32(r.IntN(9)), float32(r.IntN(9))}
			b.cells[c] = measured{float32(r.IntN(9)), float32(r.IntN(9)), float32(r.IntN(9))}
		}
		var sums [2]float64
		for ring := range 4 {
			for lane := range 4 {
				p := a.cells[4*ring+lane]
				for i, q := range []measured{b.cells[4*ring+lane], b.cells[4*ring+3-lane]} {
					sums[i] += math.Pow(float64(p.l-q.l), 2) + math.Pow(float64(p.a-q.a), 2) + math.Pow(float64(p.b-q.b), 2)
				}
			}
		}
		if got, want := a.unlike(&b), math.Sqrt(min(sums[0], sums[1])/16); math.Abs(got-want) > 1e-9 {
			t.Fatalf("%v and %v are unlike by %g, not %g", a.cells, b.cells, got, want)
		}
	}
}

// TestPhotosLargeEnough: a wedge must be 12 pixels high both ways; a smaller photo is refused with the pixels of a repeat that it needs. Stripes
// need none.
func TestPhotosLargeEnough(t *testing.T) {
	const in = measure.Inch
	for _, c := range []struct {
		across, down  measure.NM
		width, height int
		want          *Unfit
	}{
		{10 * in, 5 * in, 120, 60, nil}, {10 * in, 5 * in, 119, 60, &Unfit{TooSmall, 11, 120, 60}}, {10 * in, 5 * in, 120, 59, &Unfit{TooSmall, 11, 120, 60}},
		{in / 2, in / 4, 6, 3, nil}, {in / 2, in / 4, 5, 3, &Unfit{TooSmall, 10, 6, 3}}, {25 * in / 8, 5 * in / 2, 0, 0, &Unfit{TooSmall, 0, 38, 30}},
	} {
		var picture *image.RGBA
		if c.width > 0 {
			picture = image.NewRGBA(image.Rect(0, 0, c.width, c.height))
		}
		cloth := &quilt.Cloth{Across: c.across, Down: c.down}
		switch err, _ := largeEnough(cloth, picture, in).(*Unfit); {
		case (err == nil) != (c.want == nil), err != nil && *err != *c.want:
			t.Errorf("%d by %d pixels: %+v, not %+v", c.width, c.height, err, c.want)
		}
		cloth.Stripes = &layout.Stripes{}
		if err := largeEnough(cloth, picture, in); err != nil {
			t.Errorf("stripes are refused: %v", err)
		}
	}
}

// TestMixedFigures: what has no one thing that stands out, and parts more than 8 from their mean, is mixed.
func TestMixedFigures(t *testing.T) {
	for contrast, want := range map[float64]Figure{8: Even, math.Nextafter(8, 9): Mixed} {
		s := shown{contrast: contrast}
		if got, light := s.figure(); got != want || light {
			t.Errorf("with a contrast of %g it is %v, light %v", contrast, got, light)
		}
	}
}

// TestNamesAreNumbered: a motif is called by its fabric and its number, and by one number more, from 1 on, while the layout has that name; eight
// letters are left for both.
func TestNamesAreNumbered(t *testing.T) {
	long := strings.Repeat("é", layout.MaxNameChars)
	for _, c := range []struct {
		fabric string
		taken  []string
		want   string
	}{
		{"moss", nil, "moss-3"}, {"moss", []string{}, "moss-3"}, {"moss", []string{"moss-3"}, "moss-3-1"}, {"moss", []string{"moss-3", "moss-3-1", "moss-3-3"}, "moss-3-2"},
		{long, nil, long[:2*(layout.MaxNameChars-8)] + "-3"}, {long[:2*(layout.MaxNameChars-8)], nil, long[:2*(layout.MaxNameChars-8)] + "-3"},
	} {
		var taken func(string) bool
		if c.taken != nil {
			taken = func(name string) bool { return slices.Contains(c.taken, name) }
		}
		if got := NameOf(c.fabric, 3, taken); got != c.want {
			t.Errorf("where %v are taken a motif of %s is called %s, not %s", c.taken, c.fabric, got, c.want)
		}
	}
}

// TestLinesInOrder: mirror lines come from the edge of a repeat on, and the print's own stay as they are.
func TestLinesInOrder(t *testing.T) {
	own := []measure.NM{5, 1, 3}
	if got := inOrder(own); !slices.Equal(got, []measure.NM{1, 3, 5}) || own[0] != 5 {
		t.Errorf("%v of %v", got, own)
	}
	if inOrder(nil) == nil {
		t.Error("no lines are no list")
	}
}

// TestRoomForAll: on stripes places are half as far apart as so many share the repeat, on a print half the side of the square that each has.
func TestRoomForAll(t *testing.T) {
	s := &search{cloth: &quilt.Cloth{Across: 2400, Down: 600}}
	if got := s.farEnough(4); got != 300 {
		t.Errorf("on a print they are %d apart", got)
	}
	s.cloth.Stripes = &layout.Stripes{}
	if got := s.farEnough(4); got != 300 {
		t.Errorf("on stripes they are %d apart", got)
	}
	if got := s.farEnough(12); got != 100 {
		t.Errorf("on stripes 12 are %d apart", got)
	}
}
