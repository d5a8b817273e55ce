package sewing

import (
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// at is a point in units of so many nanometers.
func at(x, y, unit measure.NM) point { return point{X: x * unit, Y: y * unit} }

// box is a rectangle of tenths of an inch, clockwise.
func box(left, top, right, bottom measure.NM) outline {
	const unit = measure.Inch / 10
	return outline{at(left, top, unit), at(right, top, unit), at(right, bottom, unit), at(left, bottom, unit)}
}

// TestNear: what two roundings can make does not tell points and lines apart, a nanometer more does: 2 nm are near, 3 are not.
func TestNear(t *testing.T) {
	line := [2]point{at(0, 0, 1), at(1000, 0, 1)}
	for p, want := range map[point]bool{
		{X: 500, Y: 2}: true, {X: 500, Y: -2}: true, {X: 500, Y: 3}: false, {X: 500, Y: -3}: false,
		{X: -2}: true, {X: -3}: false, {X: 1002}: true, {X: 1003}: false, {}: true, {X: 1000}: true,
	} {
		if along, on := onStretch(line[0], line[1], p); on != want || on && along != float64(p.X) {
			t.Errorf("%v lies on the line: %v, %g along", p, on, along)
		}
	}
	square := outline{at(0, 0, 1), at(1000, 0, 1), at(1000, 1000, 1), at(0, 1000, 1)}
	for p, want := range map[point]int{{X: 1002}: 1, {X: 1003}: -1, {X: -2}: 0, {X: 0, Y: 1002}: 3, {X: 0, Y: 1003}: -1} {
		if got := cornerAt(square, p); got != want {
			t.Errorf("%v is corner %d, not %d", p, got, want)
		}
	}
	side := stretch{line[0], line[1]}
	for _, c := range []struct {
		other, want stretch
		ok          bool
	}{
		{stretch{at(200, 2, 1), at(1200, 2, 1)}, stretch{at(200, 2, 1), at(1000, 0, 1)}, true},
		{stretch{at(-200, -2, 1), at(800, -2, 1)}, stretch{at(0, 0, 1), at(800, -2, 1)}, true},
		{stretch{at(200, 0, 1), at(700, 0, 1)}, stretch{at(200, 0, 1), at(700, 0, 1)}, true},
		{stretch{at(-5, 0, 1), at(1005, 0, 1)}, side, true},
		{stretch{at(200, 3, 1), at(700, 2, 1)}, stretch{}, false},
		{stretch{at(200, 2, 1), at(700, 3, 1)}, stretch{}, false},
		{stretch{at(700, 0, 1), at(200, 0, 1)}, stretch{}, false},
		{stretch{at(997, 0, 1), at(1500, 0, 1)}, stretch{at(997, 0, 1), at(1000, 0, 1)}, true},
		{stretch{at(998, 0, 1), at(1500, 0, 1)}, stretch{}, false},
		{stretch{at(-500, 0, 1), at(3, 0, 1)}, stretch{at(0, 0, 1), at(3, 0, 1)}, true},
		{stretch{at(-500, 0, 1), at(2, 0, 1)}, stretch{}, false},
	} {
		if got, ok := common(side, c.other); ok != c.ok || ok && got != c.want {
			t.Errorf("with %v it has %v, %v", c.other, got, ok)
		}
	}
}

// TestUnited: pieces that lie side by side make one outline, whatever their order, and wherever corners run into sides; corners that two
// roundings set apart are one.
func TestUnited(t *testing.T) {
	below := []outline{box(0, 10, 7, 20), box(7, 10, 12, 20), box(12, 10, 21, 20), box(21, 10, 30, 20)}
	for _, order := range [][]int{{0, 1, 2, 3}, {3, 2, 1, 0}, {2, 0, 3, 1}, {1, 3, 0, 2}} {
		pieces := []outline{box(0, 0, 30, 10)}
		for _, n := range order {
			pieces = append(pieces, below[n])
		}
		for range pieces {
			pieces = append(pieces[1:], pieces[0])
			if got := united(pieces); !sameRing(got, box(0, 0, 30, 20)) {
				t.Fatalf("%v", got)
			}
		}
	}
	for far, want := range map[measure.NM]bool{1: true, 2: true, 3: false, 4: false} {
		set := box(0, 10, 30, 20)
		for i := range set[:2] {
			set[i].Y += far
		}
		one := len(uncovered(append(sidesOf(box(0, 0, 30, 10)), sidesOf(set)...))) == 6
		if one != want {
			t.Errorf("pieces %d nm apart make one outline: %v", far, one)
		}
		chain := sidesOf(box(0, 0, 30, 10))
		chain[1].from.X += far
		if far < 3 && len(chained(chain)) != 4 {
			t.Errorf("sides %d nm apart make no outline", far)
		}
	}
	// A side no longer than two roundings is none.
	if got := divided(stretch{at(0, 0, 1), at(1000, 0, 1)}, []outline{{at(500, 0, 1), at(502, 0, 1)}, {at(900, 0, 1)}, {at(2, 0, 1)}, {at(998, 0, 1)}, {at(997, 1, 1)}}); !slices.Equal(got, []stretch{
		{at(0, 0, 1), at(500, 0, 1)}, {at(502, 0, 1), at(900, 0, 1)}, {at(900, 0, 1), at(997, 1, 1)}, {at(997, 1, 1), at(1000, 0, 1)},
	}) {
		t.Errorf("%v", got)
	}
}

func sidesOf(o outline) (list []stretch) {
	for i := range o {
		list = append(list, stretch{o[i], o[(i+1)%len(o)]})
	}
	return list
}

// sameRing says whether two outlines are the same, wherever they begin.
func sameRing(a, b outline) bool {
	i := slices.Index(a, b[0])
	return i >= 0 && slices.Equal(slices.Concat(a[i:], a[:i]), b)
}

// TestMirrored: two seams butt together where they end in one point of a later one as mirror images in it, and nowhere else.
func TestMirrored(t *testing.T) {
	line := &joined{seam: stretch{at(0, 0, 1000), at(1000, 0, 1000)}}
	to := func(x, y, endX, endY measure.NM) *joined {
		return &joined{seam: stretch{at(x, y, 1000), at(endX, endY, 1000)}}
	}
	up := to(500, 0, 700, -300)
	for name, c := range map[string]struct {
		other *joined
		want  bool
	}{
		"a mirror image":        {to(500, 0, 700, 300), true},
		"one the other way":     {to(700, 300, 500, 0), true},
		"beside it":             {to(501, 0, 701, 300), false},
		"straight on":           {to(500, 0, 300, 300), false},
		"at another slope":      {to(500, 0, 700, 301), false},
		"off the line":          {to(500, 1, 700, 301), false},
		"its own way":           {to(500, 0, 700, -300), false},
		"a mirror image, apart": {to(300, 0, 500, 300), false},
	} {
		s := &sewn{}
		if got := s.mirrored(up, c.other, line); got != c.want || s.mirrored(c.other, up, line) != got {
			t.Errorf("%s: %v", name, got)
		}
	}
	a, b := &joined{seam: stretch{at(500, 400, 1000), at(700, 100, 1000)}}, to(500, 400, 700, 700) // mirror images, but not in the line
	if (&sewn{}).mirrored(a, b, line) {
		t.Error("seams that do not end on the line butt together on it")
	}
	near := &joined{seam: stretch{point{X: 500_002, Y: 0}, point{X: 700_002, Y: 300_000}}}
	if !(&sewn{}).mirrored(up, near, line) {
		t.Error("seams whose ends two roundings set apart do not butt together")
	}
	if near.seam.from.X++; (&sewn{}).mirrored(up, near, line) {
		t.Error("seams whose ends lie 3 nm apart butt together")
	}
	for _, c := range []struct {
		a, b int64
		want bool
	}{{5, 5, true}, {5, 6, true}, {6, 5, true}, {5, 7, false}, {7, 5, false}} {
		if alike(c.a, c.b) != c.want {
			t.Errorf("slopes of %d and %d millionths are alike: %v", c.a, c.b, !c.want)
		}
	}
}

// TestShapeOfJunction: points have one shape where the same angles follow each other, wherever one begins and whichever way round, and no
// other points have.
func TestShapeOfJunction(t *testing.T) {
	of := func(angles ...int) string {
		g := &junction{}
		for _, a := range angles {
			g.corners = append(g.corners, corner{angle: float64(a) * 0.39269908169872414})
		}
		return g.shape()
	}
	lists := [][]int{{2, 2, 4, 8}, {2, 4, 2, 8}, {2, 8, 6}, {4, 4, 8}, {2, 2, 2, 2, 4, 4}, {2, 2, 4, 2, 2, 4}, {2, 2, 2, 4, 2, 4}, {2, 3, 1, 2, 3, 5}, {2, 3, 2, 1, 3, 5}, {1, 2, 3, 4, 6}, {1, 2, 4, 3, 6}, {1, 3, 2, 4, 6}}
	seen := map[string]int{}
	for n, list := range lists {
		want := of(list...)
		if other, ok := seen[want]; ok {
			t.Errorf("%v and %v have one shape", lists[other], list)
		}
		seen[want] = n
		for range 2 {
			for range list {
				list = append(list[1:], list[0])
				if of(list...) != want {
					t.Errorf("%v has another shape than %v", list, lists[n])
				}
			}
			list = slices.Clone(list)
			slices.Reverse(list)
		}
	}
}

// TestHeading: of a way along the grid, and of the parts beside it.
func TestHeading(t *testing.T) {
	for to, want := range map[point]int{{Y: -5}: top, {X: 5}: right, {Y: 5}: bottom, {X: -5}: left} {
		if got := heading(point{}, to); got != want {
			t.Errorf("to %v it goes to side %d", to, got)
		}
	}
	if blocks.Tip() != 46 {
		t.Errorf("corners below %g degrees are tips", blocks.Tip())
	}
}
