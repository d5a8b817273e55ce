package diagram

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

func at(x, y float64) measure.Vec { return measure.Vec{X: x, Y: y} }

// sampled is which part of a stretch runs through a box, by many places of it.
func sampled(b box, p, q measure.Vec) float64 {
	const many = 20_000
	in := 0
	for i := range many {
		part := (float64(i) + 0.5) / many
		x, y := p.X+(q.X-p.X)*part, p.Y+(q.Y-p.Y)*part
		if x > b.min.X && x < b.max.X && y > b.min.Y && y < b.max.Y {
			in++
		}
	}
	return float64(in) / many
}

// TestLinesThroughBoxes: how much of a line runs through a box is what is counted along it, also of level and upright lines, and of those that
// only touch it.
func TestLinesThroughBoxes(t *testing.T) {
	v := rand.New(rand.NewPCG(4, 4))
	through := 0
	for range 400 {
		whole := func() float64 { return float64(v.IntN(9)) }
		b := box{at(2, 3), at(4+float64(v.IntN(3)), 5+float64(v.IntN(3)))}
		p, q := at(whole(), whole()), at(whole(), whole())
		if p.X == q.X && (p.X == b.min.X || p.X == b.max.X) || p.Y == q.Y && (p.Y == b.min.Y || p.Y == b.max.Y) {
			continue // along an edge
		}
		got, want := b.crossed(p, q), sampled(b, p, q)
		if want > 0 {
			through++
		}
		if math.Abs(got-want) > 0.001 {
			t.Fatalf("%v to %v through %v: %.4f, counted %.4f", p, q, b, got, want)
		}
	}
	if through < 100 {
		t.Errorf("only %d lines go through", through)
	}
	b := box{at(0, 0), at(10, 4)}
	for _, c := range []struct {
		p, q     measure.Vec
		quarters int
		want     float64
	}{{at(0, 1), at(40, 1), 0, 0.25}, {at(40, 9), at(0, 1), 2, 0.25}, {at(0, 1), at(5, 1), 0, 2}, {at(3, 0), at(3, 9), 0, math.Inf(1)}, {at(1, 0), at(1, 8), 1, 0.5}, {at(1, 8), at(5, 0), 3, 0.5}, {at(0, 1), at(9, 1), 1, math.Inf(1)}} {
		if got := b.long(c.p, c.q, c.quarters); got != c.want {
			t.Errorf("%+v: %g", c, got)
		}
	}
}

// TestWithinAnOutline: a place lies in an outline if it lies on the same side of all its corners in turn; of a frame, a triangle and an angle.
func TestWithinAnOutline(t *testing.T) {
	angle := []measure.Vec{at(0, 0), at(4, 0), at(4, 2), at(2, 2), at(2, 4), at(0, 4)}
	for place, want := range map[measure.Vec]bool{at(1, 1): true, at(3, 1): true, at(1, 3): true, at(3, 3): false, at(5, 1): false, at(-1, 1): false, at(1, -1): false, at(1, 5): false} {
		if within(angle, place) != want {
			t.Errorf("%v in an angle: %v", place, !want)
		}
	}
	slant := []measure.Vec{at(0, 0), at(10, 1), at(3, 9)}
	turned := []measure.Vec{slant[2], slant[1], slant[0]}
	for x := -1.53; x < 11; x++ {
		for y := -0.5; y < 10; y += 0.5 { // as high as corners, too
			side := func(p, q measure.Vec) bool { return (q.X-p.X)*(y-p.Y)-(q.Y-p.Y)*(x-p.X) > 0 }
			want := side(slant[0], slant[1]) && side(slant[1], slant[2]) && side(slant[2], slant[0])
			if within(slant, at(x, y)) != want || within(turned, at(x, y)) != want {
				t.Errorf("%g, %g in a triangle: %v", x, y, !want)
			}
		}
	}
}

// TestLabelsOverEachOther: words may reach into each other by 0.3 points either way, and no farther.
func TestLabelsOverEachOther(t *testing.T) {
	b := box{at(10, 20), at(50, 30)}
	for by, want := range map[float64]bool{-3: false, 0: false, 0.29: false, 0.31: true, 5: true} {
		for i, c := range []box{{at(50-by, 0), at(90, 99)}, {at(0, 0), at(10+by, 99)}, {at(0, 30-by), at(99, 99)}, {at(0, 0), at(99, 20+by)}} {
			if b.over(c) != want || c.over(b) != want {
				t.Errorf("by %g, side %d: %v", by, i, !want)
			}
		}
	}
}

// drawn is a sheet of 100 by 50 points on which words 40 wide stand between (30, 20) and (70, 27.3), with what lies beneath and over them.
func drawn(change func(l *Label), beneath, over []Shape) *Sheet {
	s := &Sheet{Width: 100, Height: 50}
	for i := range beneath {
		s.Items = append(s.Items, Item{Shape: &beneath[i]})
	}
	l := &Label{Text: "w", At: at(30, 27.3), Size: 10, Width: 40}
	change(l)
	s.Items = append(s.Items, Item{Label: l})
	for i := range over {
		s.Items = append(s.Items, Item{Shape: &over[i]})
	}
	return s
}

func frameOf(x, y, w, h float64) []measure.Vec {
	return []measure.Vec{at(x, y), at(x+w, y), at(x+w, y+h), at(x, y+h)}
}

// TestWordsThatCannotBeRead: each reason for which words cannot be read is told, from its bound on and not before.
func TestWordsThatCannotBeRead(t *testing.T) {
	as := func(*Label) {}
	halo := func(l *Label) { l.Halo, l.Rim = true, page() }
	pen := Pen{Width: 1}
	line := func(x, y, u, v float64) []Shape {
		return []Shape{{Points: []measure.Vec{at(x, y), at(u, v)}, Pen: pen}}
	}
	plate := Shape{Points: frameOf(25, 15, 50, 20), Closed: true, Filled: true, Fill: page()}
	dark := Shape{Points: frameOf(0, 0, 50.5, 50), Closed: true, Filled: true, Fill: palettes.Colour{R: 20, G: 20, B: 20}}
	left := Shape{Points: frameOf(0, 0, 49.5, 50), Closed: true, Filled: true, Fill: palettes.Colour{R: 20, G: 20, B: 20}}
	small := Shape{Points: frameOf(29, 15, 40.5, 20), Closed: true, Filled: true, Fill: page()}
	for name, c := range map[string]struct {
		s    *Sheet
		want string
	}{
		"plain": {drawn(as, nil, nil), ""}, "small": {drawn(func(l *Label) { l.Size = 3.99 }, nil, nil), "is set in 8.0 points"}, "as small as may be": {drawn(func(l *Label) { l.Size = 4 }, nil, nil), ""},
		"at the left edge": {drawn(func(l *Label) { l.At.X = 0 }, nil, nil), ""}, "beyond it": {drawn(func(l *Label) { l.At.X = -0.01 }, nil, nil), "is cut off"},
		"at the right edge": {drawn(func(l *Label) { l.At.X = 60 }, nil, nil), ""}, "beyond the right": {drawn(func(l *Label) { l.At.X = 60.01 }, nil, nil), "is cut off"},
		"at the head": {drawn(func(l *Label) { l.At.Y = 7.3 }, nil, nil), ""}, "beyond the head": {drawn(func(l *Label) { l.At.Y = 7.29 }, nil, nil), "is cut off"},
		"at the foot": {drawn(func(l *Label) { l.At.Y = 50 }, nil, nil), ""}, "beyond the foot": {drawn(func(l *Label) { l.At.Y = 50.01 }, nil, nil), "is cut off"},
		"turned": {drawn(func(l *Label) { l.Quarters, l.At = 1, at(10, 0) }, nil, nil), ""}, "turned beyond": {drawn(func(l *Label) { l.Quarters, l.At = 1, at(10, 10.01) }, nil, nil), "is cut off"},
		"turned back": {drawn(func(l *Label) { l.Quarters, l.At = 3, at(7.3, 40) }, nil, nil), ""}, "turned back beyond": {drawn(func(l *Label) { l.Quarters, l.At = 3, at(7.3, 39.99) }, nil, nil), "is cut off"},
		"upside down": {drawn(func(l *Label) { l.Quarters, l.At = 2, at(40, 42.7) }, nil, nil), ""}, "upside down beyond": {drawn(func(l *Label) { l.Quarters, l.At = 2, at(39.9, 42.7) }, nil, nil), "is cut off"},
		"gray": {drawn(func(l *Label) { l.Colour = palettes.Colour{R: 118, G: 118, B: 118} }, nil, nil), ""}, "pale": {drawn(func(l *Label) { l.Colour = palettes.Colour{R: 119, G: 119, B: 119} }, nil, nil), "has a contrast of 4.5"}, // #767676 is the palest gray with 4.5 on white (WebAIM)
		"on dark": {drawn(as, []Shape{dark}, nil), "has a contrast of 1.1"}, "beside dark": {drawn(as, []Shape{left}, nil), ""}, "on a plate on dark": {drawn(as, []Shape{dark, plate}, nil), ""},
		"on dark above": {drawn(as, []Shape{{Points: frameOf(0, 0, 100, 23.7), Filled: true}}, nil), "has a contrast of 1.0"}, "below dark": {drawn(as, []Shape{{Points: frameOf(0, 0, 100, 23.6), Filled: true}}, nil), ""},
		"on dark below": {drawn(as, []Shape{{Points: frameOf(0, 23.6, 100, 9), Filled: true}}, nil), "has a contrast of 1.0"}, "on dark to the right": {drawn(as, []Shape{{Points: frameOf(49.5, 0, 50, 50), Filled: true}}, nil), "has a contrast of 1.0"}, "on an outline": {drawn(as, []Shape{{Points: frameOf(0, 0, 100, 50)}}, nil), ""},
		"with a rim on dark": {drawn(halo, []Shape{dark}, nil), ""}, "on a dark rim": {drawn(func(l *Label) { l.Halo = true }, nil, nil), "has a contrast of 1.0"},
		"a line over it": {drawn(halo, nil, line(0, 24, 100, 24)), "is struck through"}, "a line beneath": {drawn(as, line(0, 24, 100, 24), nil), "is struck through"}, "a line beneath a rim, along": {drawn(halo, line(0, 24, 100, 24), nil), "is struck through"},
		"along a part": {drawn(halo, line(0, 24, 53, 24), nil), ""}, "along more of it": {drawn(halo, line(0, 24, 57, 24), nil), "is struck through"}, "across a rim": {drawn(halo, line(50, 0, 50, 50), nil), ""},
		"a line above it": {drawn(as, line(0, 20.2, 100, 20.2), nil), ""}, "a line below it": {drawn(as, line(0, 27.1, 100, 27.1), nil), ""}, "a line at its head": {drawn(as, line(0, 20.4, 100, 20.4), nil), "is struck through"}, "a line at its foot": {drawn(as, line(0, 26.9, 100, 26.9), nil), "is struck through"},
		"a line left of it": {drawn(as, line(30.2, 0, 30.2, 50), nil), ""}, "a line right of it": {drawn(as, line(69.8, 50, 69.8, 0), nil), ""}, "a line at its beginning": {drawn(as, line(30.4, 0, 30.4, 50), nil), "is struck through"}, "a line at its end": {drawn(as, line(69.6, 0, 69.6, 50), nil), "is struck through"},
		"covered to its edges": {drawn(as, nil, []Shape{{Points: frameOf(30.2, 20.2, 39.6, 6.9), Filled: true}}), "is struck through"}, "an outline round it": {drawn(as, nil, []Shape{{Points: frameOf(25, 15, 50, 20), Closed: true, Pen: pen}}), ""}, "a cover beside it": {drawn(as, nil, []Shape{{Points: frameOf(0, 0, 29, 50), Closed: true, Filled: true}}), ""},
		"a line under a plate": {drawn(as, append(line(0, 24, 100, 24), plate), nil), ""}, "under a smaller plate": {drawn(as, append(line(0, 24, 100, 24), small), nil), "is struck through"},
		"no line": {drawn(as, []Shape{{Points: []measure.Vec{at(0, 24), at(100, 24)}}}, nil), ""}, "covered": {drawn(as, nil, []Shape{plate}), "is struck through"},
		"an open bow": {drawn(as, []Shape{{Points: []measure.Vec{at(0, 24), at(0, 0), at(99, 0), at(99, 24)}, Pen: pen}}, nil), ""}, "a closed one": {drawn(as, []Shape{{Points: []measure.Vec{at(0, 24), at(0, 0), at(99, 0), at(99, 24)}, Pen: pen, Closed: true}}, nil), "is struck through"},
	} {
		var said []string
		for _, wrong := range c.s.Illegible(2, 8) {
			said = append(said, strings.TrimPrefix(wrong, `"w" `))
		}
		if got := strings.Join(said, ", "); got != c.want {
			t.Errorf("%s: %q, expected %q", name, got, c.want)
		}
	}
	for reach, want := range map[float64]int{40: 0, 39.71: 0, 39.69: 1, 0: 1} { // a second word that begins so far behind the first, which is 40 long
		s := drawn(as, nil, nil)
		s.Items = append(s.Items, Item{Label: &Label{Text: "v", At: at(30+reach, 27.3), Size: 10, Width: 20}})
		if got := s.Illegible(2, 8); len(got) != want || want == 1 && got[0] != fmt.Sprintf("%q stands over %q", "v", "w") {
			t.Errorf("a word %g behind another: %q", reach, got)
		}
	}
}

// TestStretchesAlongEdges: a level or upright stretch that runs along a box's very edge runs through it as one does a hair within, and one a hair
// beyond does not.
func TestStretchesAlongEdges(t *testing.T) {
	const hair = 1e-9
	b := box{measure.Vec{X: 0, Y: 0}, measure.Vec{X: 10, Y: 4}}
	for _, c := range []struct{ at, level, upright float64 }{{-hair, 0, 0}, {0, 0.5, 0.5}, {hair, 0.5, 0.5}, {4 - hair, 0.5, 0.5}, {4, 0.5, 0.5}, {4 + hair, 0, 0.5}, {10, 0, 0.5}, {10 + hair, 0, 0}} {
		if got := b.crossed(measure.Vec{X: -5, Y: c.at}, measure.Vec{X: 15, Y: c.at}); math.Abs(got-c.level) > 1e-6 {
			t.Errorf("level at %g: %g, want %g", c.at, got, c.level)
		}
		if got := b.crossed(measure.Vec{X: c.at, Y: 6}, measure.Vec{X: c.at, Y: -2}); math.Abs(got-c.upright) > 1e-6 {
			t.Errorf("upright at %g: %g, want %g", c.at, got, c.upright)
		}
	}
}
