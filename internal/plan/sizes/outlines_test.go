package sizes

import (
	"math"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// Pieces built of points and grown by the seam with mitred corners: what is measured on them is what the formulas say.

type point struct{ x, y float64 }

// grown is a convex outline, clockwise with y upwards, moved outwards by q with mitred corners.
func grown(outline []point, q float64) []point {
	n := len(outline)
	out := make([]point, n)
	for i, b := range outline {
		a, c := outline[(i+n-1)%n], outline[(i+1)%n]
		nx1, ny1 := normal(a, b)
		nx2, ny2 := normal(b, c)
		scale := q / (1 + nx1*nx2 + ny1*ny2)
		out[i] = point{b.x + (nx1+nx2)*scale, b.y + (ny1+ny2)*scale}
	}
	return out
}

// normal points out of a clockwise outline.
func normal(a, b point) (x, y float64) {
	dx, dy := b.x-a.x, b.y-a.y
	length := math.Hypot(dx, dy)
	return -dy / length, dx / length
}

// box is how wide and high an outline is.
func box(outline []point) (wide, high float64) {
	left, right, low, up := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range outline {
		left, right, low, up = min(left, p.x), max(right, p.x), min(low, p.y), max(up, p.y)
	}
	return right - left, up - low
}

// at is a point so far from the origin, by an angle in degrees.
func at(far, degrees float64) point {
	return point{far * math.Cos(degrees*math.Pi/180), far * math.Sin(degrees*math.Pi/180)}
}

// widthAt is how wide a grown wedge, tip up, is at a height.
func widthAt(outline []point, y float64) float64 {
	left, right := math.Inf(1), math.Inf(-1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.y-y)*(b.y-y) < 0 {
			x := a.x + (b.x-a.x)*(y-a.y)/(b.y-a.y)
			left, right = min(left, x), max(right, x)
		}
	}
	return right - left
}

func TestOutlines(t *testing.T) {
	for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
		for _, seam := range []measure.NM{measure.Inch / 4, 6 * measure.Millimetre, 7500000, measure.Inch / 2} {
			c, err := Strips(Options{Units: units, Seam: seam, From: measure.Inch * 3 / 2, To: 12 * measure.Inch, Step: 7 * measure.Inch / 16})
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range c.Strips {
				compare(t, s, inches(seam))
			}
		}
	}
}

// compare measures one strip's pieces on their outlines. A hundredth of a thousandth of an inch is a quarter of a
// thousandth of a millimetre.
func compare(t *testing.T, s Strip, q float64) {
	t.Helper()
	h := inches(s.StripCut) - 2*q
	for what, pair := range map[string][2]float64{
		"kite":   {inches(s.Squares[kite].Need), kiteSquare(h, q)},
		"stop":   {inches(s.Squares[stop].Need), stopSquare(h, q)},
		"corner": {inches(s.Squares[corner].Need), cornerSquare(h, q)},
		"base":   {inches(s.WedgeBaseCut), widthAt(wedge(h, q), -q+1e-9)},
		"tip":    {inches(s.WedgeTipCut), widthAt(wedge(h, q), h+q)},
		"pitch":  {inches(s.PitchCut), widthAt(wedge(h, q), h/2)},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-5 {
			t.Errorf("strip %g, seam %g: %s %.6f, on the outline %.6f", inches(s.StripCut), q, what, pair[0], pair[1])
		}
	}
	if room := inches(s.Squares[stop].Cut) - stopSquare(h, q); room < 0 {
		t.Errorf("strip %g, seam %g: background pieces do not fit, by %g", inches(s.StripCut), q, room)
	}
}

// wedge stands on its base, its tip up.
func wedge(h, q float64) []point {
	half := h * math.Tan(math.Pi/8)
	return grown([]point{{-half, 0}, {0, h}, {half, 0}}, q)
}

// leg is the wedge's leg: half the diagonal of a block.
func leg(h float64) float64 { return h / math.Cos(math.Pi/8) }

// kiteSquare is the square that a kite takes, its right angle in the square's corner: from there its sides go along the
// axes, and its sharp tip lies in the middle of the block.
func kiteSquare(h, q float64) float64 {
	side := leg(h) * math.Sqrt2
	short := side - leg(h)
	wide, high := box(grown([]point{{0, 0}, {0, short}, {side / 2, side / 2}, {short, 0}}, q))
	return max(wide, high)
}

// stopSquare is the square of which a background piece takes half: its long sides are a side of the block and half a diagonal.
func stopSquare(h, q float64) float64 {
	side := leg(h) * math.Sqrt2
	wide, high := box(grown([]point{{0, 0}, {0, side}, {side, 0}}, q))
	return max(wide, high)
}

// cornerSquare is the square of which a ring's corner takes half: the octagon cuts it off its own square.
func cornerSquare(h, q float64) float64 {
	rim := h / math.Cos(math.Pi/8)
	a, b := at(rim, 22.5), at(rim, 67.5)
	wide, high := box(grown([]point{{h, h}, a, b}, q))
	if high > wide {
		wide = high
	}
	return wide
}

func TestOutlinesCatches(t *testing.T) {
	honest := stripOf(t, Options{}, 4*measure.Inch)
	for what, spoil := range map[string]func(*Strip){
		"a kite without its sharp tip":                       func(s *Strip) { s.Squares[kite].Need -= inch(0.1670) },
		"a corner by half a rule":                            func(s *Strip) { s.Squares[corner].Need += measure.Inch / 8 },
		"a finished base for a cut one":                      func(s *Strip) { s.WedgeBaseCut = s.WedgeBaseFinished },
		"a background piece with a square's sum":             func(s *Strip) { s.Squares[stop].Need -= inch(0.3536) },
		"a background square as large as needed for nothing": func(s *Strip) { s.Squares[stop].Cut = s.Squares[kite].Cut },
	} {
		spoilt := honest
		spoilt.Squares = slices.Clone(spoilt.Squares)
		spoil(&spoilt)
		watch := &testing.T{}
		compare(watch, spoilt, 0.25)
		if !watch.Failed() {
			t.Errorf("%s goes unseen", what)
		}
	}
}
