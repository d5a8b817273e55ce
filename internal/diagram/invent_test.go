package diagram

import (
	"math"
	"math/rand/v2"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// invented is a figure by seed: mostly sensible, now and then wild.
func invented(seed uint64) (*Figure, Options) {
	r := rand.New(rand.NewPCG(seed, 7))
	wild := r.IntN(4) == 0
	point := func() measure.Point {
		if wild && r.IntN(3) == 0 {
			return measure.Point{X: measure.NM(r.Int64()) - 1<<62, Y: measure.NM(r.Int64()) - 1<<62}
		}
		return measure.Point{X: measure.NM(r.Int64N(int64(40 * measure.Inch))), Y: measure.NM(r.Int64N(int64(30 * measure.Inch)))}
	}
	points := func(most int) []measure.Point {
		var list []measure.Point
		for range r.IntN(most + 1) {
			list = append(list, point())
		}
		return list
	}
	f := &Figure{Title: text(r), Description: text(r), Min: point(), Max: point(), TrueSize: r.IntN(3) == 0}
	for range r.IntN(12) {
		f.Marks = append(f.Marks, mark(r, point, points))
	}
	o := Options{NoLegend: r.IntN(2) == 0, Inline: r.IntN(2) == 0, Units: measure.System(r.IntN(2))}
	if r.IntN(2) == 0 {
		o.Width = measure.NM(r.Int64N(int64(12 * measure.Inch)))
	}
	if r.IntN(3) == 0 {
		o.Height = measure.NM(r.Int64N(int64(12 * measure.Inch)))
	}
	return f, o
}

func mark(r *rand.Rand, point func() measure.Point, points func(int) []measure.Point) Mark {
	m := Mark{Lit: []int{r.IntN(9)}}
	stroke := func() Stroke { return Stroke(r.IntN(13)) }
	colour := palettes.Colour{R: uint8(r.IntN(256)), G: uint8(r.IntN(256)), B: uint8(r.IntN(256))}
	switch r.IntN(3) {
	case 0:
		m.Area = &Area{Outline: points(7), Fill: colour, Hatch: r.IntN(3) == 0, Clear: r.IntN(3) == 0, Edge: stroke()}
	case 1:
		m.Line = &Line{Points: points(4), Stroke: stroke(), Start: Ending(r.IntN(5)), End: Ending(r.IntN(5))}
	default:
		sizes := []float64{0, 6, 8, 12, 30, -1, math.NaN(), math.Inf(1), 1e300}
		m.Words = &Words{Text: text(r), At: point(), Points: sizes[r.IntN(len(sizes))], Anchor: Anchor(r.IntN(4)), Quarters: r.IntN(9) - 4, Bold: r.IntN(2) == 0, Halo: r.IntN(2) == 0}
		if r.IntN(3) == 0 {
			m.Words.Room = measure.NM(r.Int64N(int64(6*measure.Inch))) - measure.Inch
		}
		if r.IntN(3) == 0 {
			m.Words.Backing = &colour
		}
	}
	return m
}

func text(r *rand.Rand) string {
	list := []string{"", "sew here", "3 1/2 in", "a < b & \"c\" ]]> '", "bad \xff\x00\x1b bytes", "two\nlines", "赤い布", "cut ½ ⅛", "é́", "<script>alert(1)</script>",
		"a rather long line of words that goes on and on until it is wider than most of the drawings that it could stand in"}
	return list[r.IntN(len(list))]
}
