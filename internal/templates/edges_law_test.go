package templates

import (
	"cmp"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
)

const inch = measure.Inch

// plainPiece is a figure of one outline with no line along it.
func plainPiece(name string, outline ...measure.Point) Piece {
	_, high := bounds(outline)
	return Piece{name, &diagram.Figure{TrueSize: true, Max: high, Marks: []diagram.Mark{{Area: &diagram.Area{Outline: outline}}}}}
}

// TestMatLimits: a piece lies on a mat that is as large as the piece and an eighth of an inch on each side, and on none that is a nanometer
// smaller; where it only fits turned by a quarter, it is, clockwise. Pieces share a row, and rows a mat, from the nanometer on at which they
// have room.
func TestMatLimits(t *testing.T) {
	top := lay.Top(t, "strip 4\nfabric a #fff\nfabric b #000\nblock R ring wedges a corners b\ngrid\n R\n")
	list := usual(top)
	wedge, triangle := list[0], list[1]
	_, high := bounds(wedge.Cut)
	_, other := bounds(triangle.Cut)
	w, h := high.X+2*matGap, high.Y+2*matGap
	if w >= h || wedge.Count != 8 {
		t.Fatal(w, h, wedge.Count)
	}
	laid := func(size measure.Point) ([]Mat, *TooLarge) {
		mats, err := Mats(top, []Template{wedge}, size)
		large := new(TooLarge)
		errors.As(err, &large)
		return mats, large
	}
	for _, c := range []struct {
		size   measure.Point
		turned bool
		fits   bool
	}{{measure.Point{X: w, Y: h}, false, true}, {measure.Point{X: w - 1, Y: h}, false, false}, {measure.Point{X: w, Y: h - 1}, false, false},
		{measure.Point{X: h, Y: w}, true, true}, {measure.Point{X: h - 1, Y: w}, true, false}, {measure.Point{X: h, Y: w - 1}, true, false}} {
		mats, large := laid(c.size)
		if !c.fits {
			if want := (measure.Point{X: w, Y: h}); mats != nil || large.Template == nil || large.Size != want || large.Enough != want || large.Error() != "T1 is larger than the mat" {
				t.Errorf("%v: %+v", c.size, large)
			}
			continue
		}
		if len(mats) != 1 || mats[0].Times != 8 || len(mats[0].pieces) != 1 || mats[0].pieces[0].at != (measure.Point{X: matGap, Y: matGap}) {
			t.Fatalf("%v: %+v", c.size, mats)
		}
		for i, p := range mats[0].pieces[0].Cut {
			want := wedge.Cut[i]
			if c.turned {
				want = measure.Point{X: high.Y - want.Y, Y: want.X}
			}
			if p != want {
				t.Errorf("%v: corner %d lies at %v, not at %v", c.size, i, p, want)
			}
		}
		for i, p := range mats[0].pieces[0].Grain {
			want := wedge.Grain[i]
			if c.turned {
				want = measure.Point{X: high.Y - want.Y, Y: want.X}
			}
			if p != want {
				t.Errorf("%v: the grain goes through %v, not %v", c.size, p, want)
			}
		}
	}
	if _, err := Mats(top, list, measure.Point{X: inch, Y: inch}); err.(*TooLarge).Enough != (measure.Point{X: max(w, other.X+2*matGap), Y: max(h, other.Y+2*matGap)}) {
		t.Errorf("enough for all is %+v", err)
	}
	tip, wide := wedge.Cut[1].X-wedge.Cut[0].X, high.X // two wedges, one of them half turned, lie with their slanted sides an eighth of an inch apart across
	two := (wide+tip)/2 + wide + 3*matGap
	for by, want := range map[measure.NM]int{-3: 1, 3: 2} {
		if mats, _ := laid(measure.Point{X: two + by, Y: h}); len(mats[0].pieces) != want || mats[0].Times != 8/want {
			t.Errorf("%d wedges share a row with %d nanometers to spare", len(mats[0].pieces), by)
		}
	}
	square := Template{Cut: box(measure.Point{}, measure.Point{X: inch, Y: inch})}
	for width, want := range map[measure.NM]int{3*inch + 2*matGap: 3, 3*inch + 2*matGap - 1: 2} {
		if row := rowOf(&square, 9, width); len(row) != want {
			t.Errorf("%d squares of an inch side by side in %d nm, expected %d", len(row), width, want)
		}
	}
	for by, want := range map[measure.NM]int{-1: 1, 0: 2} {
		if mats, _ := laid(measure.Point{X: w, Y: 2*high.Y + 3*matGap + by}); len(mats[0].pieces) != want || mats[0].Counts[0].Count != want {
			t.Errorf("%d rows share a mat with %d nanometers to spare", len(mats[0].pieces), by)
		}
	}
	for wanted := range 4 { // a row has as many as are wanted, and no more
		if row := rowOf(&wedge, wanted, inch*100); len(row) != max(1, wanted) {
			t.Errorf("%d of %d wedges in a row", len(row), wanted)
		}
	}
}

// TestHull: the hull of points is convex, goes round once, and has nothing outside; the points stay in their order.
func TestHull(t *testing.T) {
	v := rand.New(rand.NewPCG(7, 7))
	for range 300 {
		points := make([]measure.Vec, 1+v.IntN(12))
		for i := range points {
			points[i] = measure.Vec{X: float64(v.IntN(6)), Y: float64(v.IntN(6))}
		}
		kept := slices.Clone(points)
		hull := convex(points)
		if !slices.Equal(kept, points) {
			t.Fatal("the points were sorted in their own place")
		}
		for i, a := range hull {
			b, c := hull[(i+1)%len(hull)], hull[(i+2)%len(hull)]
			if len(hull) > 2 && turn(a, b, c) <= 0 || !slices.Contains(points, a) || slices.Index(hull, a) != i {
				t.Fatalf("the hull of %v is %v", points, hull)
			}
			for _, p := range points {
				if len(hull) > 2 && turn(a, b, p) < 0 {
					t.Fatalf("%v lies outside the hull %v", p, hull)
				}
			}
		}
		low, high := hull.bounds()
		for _, p := range points {
			if p.X < low.X || p.Y < low.Y || p.X > high.X || p.Y > high.Y {
				t.Fatalf("%v lies outside the bounds %v, %v", p, low, high)
			}
		}
		if !slices.ContainsFunc(points, func(p measure.Vec) bool { return p.X == low.X }) || !slices.ContainsFunc(points, func(p measure.Vec) bool { return p.Y == high.Y }) ||
			!slices.ContainsFunc(points, func(p measure.Vec) bool { return p.Y == low.Y }) || !slices.ContainsFunc(points, func(p measure.Vec) bool { return p.X == high.X }) {
			t.Fatalf("the bounds %v, %v of %v are too wide", low, high, points)
		}
	}
	if low, high := (shape{{X: -3, Y: -5}, {X: -2, Y: -4}}).bounds(); low != (measure.Vec{X: -3, Y: -5}) || high != (measure.Vec{X: -2, Y: -4}) {
		t.Error(low, high)
	}
}

// TestShapesApart: two squares are clear of each other from the gap on that is asked for, on each of their four sides, and at a corner as far as
// their nearest sides are apart; a side without length parts nothing.
func TestShapesApart(t *testing.T) {
	own := rectangle(10, 20, 4, 6)
	for _, c := range []struct {
		x, y, w, h measure.NM
		gap        float64
	}{{17, 20, 5, 5, 3}, {2, 20, 5, 5, 3}, {10, 29, 5, 5, 3}, {10, 12, 5, 5, 3}, {16, 40, 2, 2, 14}, {12, 22, 1, 1, -2}} {
		other := rectangle(c.x, c.y, c.w, c.h)
		for _, pair := range [][2]shape{{own, other}, {other, own}} {
			if !pair[0].clear(pair[1], c.gap) || pair[0].clear(pair[1], c.gap+0.001) {
				t.Errorf("%+v are not apart by that", c)
			}
		}
	}
	if point := (shape{{X: 1, Y: 1}, {X: 1, Y: 1}}); point.beside(own, 0) {
		t.Error("a point parts what lies beside it")
	}
	slanted := shape{{X: 0, Y: 0}, {X: 8, Y: 0}, {X: 0, Y: 6}} // its long side lies 4.8 from the corner, and 1.2 more to 5.76 along, 4.8 aside
	if beyond := slanted.moved(10, 10); !slanted.clear(shape{{X: 8, Y: 6}, {X: 9, Y: 6}, {X: 9, Y: 7}}, 4.8-1e-9) || slanted.clear(shape{{X: 8, Y: 6}, {X: 9, Y: 6}, {X: 9, Y: 7}}, 4.8+1e-9) || beyond[1] != (measure.Vec{X: 18, Y: 10}) {
		t.Error("a corner lies 4.8 from a slanted side")
	}
}

// TestStepsAndSquares: places for a piece are an eighth of an inch apart, with the last one; test squares stand in the room, clear of its rim and
// of each other.
func TestStepsAndSquares(t *testing.T) {
	for last, want := range map[measure.NM][]measure.NM{0: {0}, 1: {0, 1}, inch / 8: {0, inch / 8}, inch/8 + 1: {0, inch / 8, inch/8 + 1}} {
		if got := steps(last); !slices.Equal(got, want) {
			t.Errorf("up to %d: %v", last, got)
		}
	}
	room := measure.Point{X: 7 * inch, Y: 8 * inch}
	places := squarePlaces(room)
	for i, s := range places {
		for k, side := range []measure.NM{inchSquare, centimetreSquare} {
			if s[k].X < inch/20 || s[k].Y < inch/20 || s[k].X+side > room.X-inch/20 || s[k].Y+side > room.Y-inch/20 {
				t.Errorf("place %d: square %d stands at %v", i, k, s[k])
			}
		}
		if list := s.shapes(); !list[0].clear(list[1], float64(inch)/4) {
			t.Errorf("place %d: the squares are too near: %v", i, s)
		}
		for k := range i {
			if places[k] == s {
				t.Errorf("place %d is place %d", i, k)
			}
		}
	}
	rim := func(v measure.NM) bool { return v == inch/20 }
	for i, s := range places[2:] { // each pair has a square at the left or right rim, and one at the head or the foot
		left, right := rim(s[0].X), rim(room.X-s[1].X-centimetreSquare) || s[1].X == room.X-5*inch/4 || rim(room.X-s[0].X-inchSquare)
		head, foot := rim(s[0].Y), rim(room.Y-s[1].Y-centimetreSquare)
		if !left && !right || !head && !foot {
			t.Errorf("place %d stands in no corner: %v", i+2, s)
		}
	}
}

// TestPlateLimits: a piece in as many parts as are printed is printed, and not with one fewer, for itself and for all plates.
func TestPlateLimits(t *testing.T) {
	room := measure.Point{X: 4 * inch, Y: 5 * inch}
	large := plainPiece("large", measure.Point{}, measure.Point{X: 9 * inch}, measure.Point{X: 9 * inch, Y: 9 * inch}, measure.Point{Y: 9 * inch})
	small := plainPiece("small", measure.Point{}, measure.Point{X: inch}, measure.Point{X: inch, Y: inch}, measure.Point{Y: inch})
	all, _ := Plates([]Piece{large}, room, usualMost)
	n := len(all)
	for _, c := range []struct {
		most Most
		fits bool
	}{{Most{n, n + 1}, true}, {Most{n - 1, n + 1}, false}, {Most{n, n}, false}, {Most{n + 1, n + 2}, true}} {
		plates, left := Plates([]Piece{small, large}, room, c.most)
		if c.fits && (len(plates) != n+1 || left != nil) || !c.fits && (len(plates) != 1 || !slices.Equal(left, []Large{{"large", n}})) {
			t.Errorf("%+v of %d: %d plates, left %v", c.most, n, len(plates), left)
		}
	}
	for i := range all {
		if all[i].Part != i+1 || all[i].Parts != n || !slices.Equal(all[i].Shows, []string{"large"}) || !all[i].Figure.TrueSize || all[i].Figure.Max != room {
			t.Errorf("part %d is %d of %d", i+1, all[i].Part, all[i].Parts)
		}
	}
	for points, want := range map[float64]string{7.9: threeCentimetres, 8: threeCentimetres, 8.1: "3 cm"} { // test squares have words of 8 points
		p := all[0]
		p.Enlarge(points)
		if got := p.Figure.Marks[len(p.Figure.Marks)-1].Words; got.Text != want || got.Points != max(8, points) {
			t.Errorf("%g points: %q in %g", points, got.Text, got.Points)
		}
	}
}

// TestTiles: pages of a length reach half an inch over each other, and there is no page more than needed; of more than are printed none is
// drawn.
func TestTiles(t *testing.T) {
	const room = 4 * inch
	for n := 1; n < 6; n++ {
		reach := room + measure.NM(n-1)*(room-overlap)
		if a, b := tiles(reach, room), tiles(reach+1, room); a != n || b != n+1 {
			t.Errorf("%d and %d pages for the length of %d", a, b, n)
		}
	}
	if n := tiles(math.MaxInt32*inch, room); n != maxWindows+1 {
		t.Errorf("%d pages for what has no end", n)
	}
	line := func(pages measure.NM) Piece {
		to := measure.Point{X: room + (pages-1)*(room-overlap)}
		return Piece{"line", &diagram.Figure{Max: to, Marks: []diagram.Mark{{Line: &diagram.Line{Points: []measure.Point{{}, to}, Stroke: diagram.Cut}}}}}
	}
	l := &plating{room: measure.Point{X: room, Y: room}}
	if parts := l.parts(line(maxWindows)); len(parts) != maxWindows || parts[maxWindows-1].Part != maxWindows {
		t.Errorf("%d pages are drawn", len(parts))
	}
	if parts := l.parts(line(maxWindows + 1)); len(parts) != maxWindows || parts[0].Shows != nil {
		t.Errorf("%d pages of more than are printed", len(parts))
	}
}

// TestFramesMeet: the dotted line of a page is where the frame of the next one comes to lie, on each side that has a next one and on no other.
func TestFramesMeet(t *testing.T) {
	l := &plating{room: measure.Point{X: 4 * inch, Y: 5 * inch}}
	for at, want := range map[[2]int][][]measure.Point{
		{0, 0}: {{{X: 7 * inch / 2}, {X: 7 * inch / 2, Y: 5 * inch}}, {{Y: 9 * inch / 2}, {X: 4 * inch, Y: 9 * inch / 2}}},
		{2, 1}: {{{X: inch / 2}, {X: inch / 2, Y: 5 * inch}}, {{Y: inch / 2}, {X: 4 * inch, Y: inch / 2}}},
		{1, 0}: {{{X: inch / 2}, {X: inch / 2, Y: 5 * inch}}, {{X: 7 * inch / 2}, {X: 7 * inch / 2, Y: 5 * inch}}, {{Y: 9 * inch / 2}, {X: 4 * inch, Y: 9 * inch / 2}}},
	} {
		marks := l.register(at, [2]int{3, 2})
		if a := marks[0].Area; !slices.Equal(a.Outline, box(measure.Point{}, l.room)) || !a.Clear || a.Edge != diagram.PartFrame || len(marks) != len(want)+1 {
			t.Fatalf("%v: %d marks", at, len(marks))
		}
		for i, m := range marks[1:] {
			if m.Line.Stroke != diagram.NextFrame || !slices.Equal(m.Line.Points, want[i]) {
				t.Errorf("%v: a line %v, not %v", at, m.Line.Points, want[i])
			}
		}
	}
}

// TestSeenThroughAWindow: what a window shows of lines, dots, words and cloth, from its rim on, counted from its corner.
func TestSeenThroughAWindow(t *testing.T) {
	w := window{measure.Point{X: 10 * inch, Y: 20 * inch}, measure.Point{X: 14 * inch, Y: 25 * inch}}
	p := func(x, y measure.NM) measure.Point { return measure.Point{X: x * inch, Y: y * inch} }
	for _, c := range []struct {
		from, to measure.Point
		seen     []measure.Point
		start    diagram.Ending
		end      diagram.Ending
	}{
		{p(11, 21), p(13, 24), []measure.Point{p(1, 1), p(3, 4)}, diagram.Arrow, diagram.Dot}, {p(8, 22), p(12, 22), []measure.Point{p(0, 2), p(2, 2)}, diagram.Plain, diagram.Dot},
		{p(12, 22), p(18, 22), []measure.Point{p(2, 2), p(4, 2)}, diagram.Arrow, diagram.Plain}, {p(12, 30), p(12, 10), []measure.Point{p(2, 5), p(2, 0)}, diagram.Plain, diagram.Plain},
		{p(10, 20), p(10, 25), []measure.Point{p(0, 0), p(0, 5)}, diagram.Arrow, diagram.Dot}, {p(14, 25), p(10, 25), []measure.Point{p(4, 5), p(0, 5)}, diagram.Arrow, diagram.Dot},
		{p(9, 20), p(9, 25), nil, 0, 0}, {p(15, 20), p(15, 25), nil, 0, 0}, {p(10, 19), p(14, 19), nil, 0, 0}, {p(10, 26), p(14, 26), nil, 0, 0}, {p(8, 22), p(10, 22), nil, 0, 0}, {p(8, 22), p(12, 18), nil, 0, 0},
		{p(9, 21), p(13, 17), nil, 0, 0}, {p(8, 18), p(14, 24), []measure.Point{p(0, 0), p(4, 4)}, diagram.Plain, diagram.Dot},
	} {
		got := w.line(c.from, c.to, diagram.Line{Stroke: diagram.Sew, Start: diagram.Arrow, End: diagram.Dot})
		if c.seen == nil && got != nil || c.seen != nil && (got == nil || !slices.Equal(got.Points, c.seen) || got.Start != c.start || got.End != c.end || got.Stroke != diagram.Sew) {
			t.Errorf("of %v to %v: %+v", c.from, c.to, got)
		}
	}
	for _, c := range []struct {
		outline, seen []measure.Point
	}{
		{[]measure.Point{p(10, 20), p(14, 20), p(10, 25)}, []measure.Point{p(10, 20), p(14, 20), p(10, 25)}}, {[]measure.Point{p(14, 20), p(18, 20), p(14, 25)}, nil},
		{[]measure.Point{p(6, 20), p(14, 20), p(14, 25), p(6, 25)}, []measure.Point{p(10, 20), p(14, 20), p(14, 25), p(10, 25)}}, {[]measure.Point{p(1, 1), p(2, 1), p(2, 2)}, nil},
		{[]measure.Point{p(12, 19), p(16, 23), p(12, 27)}, []measure.Point{p(12, 20), p(13, 20), p(14, 21), p(14, 25), p(12, 25)}},
	} {
		got := w.outline(c.outline)
		if !slices.Equal(inOrder(got), inOrder(c.seen)) {
			t.Errorf("of %v: %v", c.outline, got)
		}
	}
	shown := func(m diagram.Mark) []diagram.Mark { return w.clipped(&diagram.Figure{Marks: []diagram.Mark{m}}) }
	for at, want := range map[measure.Point][2]int{p(12, 22): {1, 1}, p(10, 20): {1, 0}, p(14, 25): {1, 0}, {X: 10*inch - 1, Y: 22 * inch}: {0, 0}, {X: 14*inch + 1, Y: 22 * inch}: {0, 0}, {X: 12 * inch, Y: 20*inch - 1}: {0, 0}, {X: 12 * inch, Y: 25*inch + 1}: {0, 0},
		{X: 11 * inch, Y: 22 * inch}: {1, 1}, {X: 11*inch - 1, Y: 22 * inch}: {1, 0}, {X: 13 * inch, Y: 22 * inch}: {1, 1}, {X: 13*inch + 1, Y: 22 * inch}: {1, 0},
		{X: 12 * inch, Y: 41 * inch / 2}: {1, 1}, {X: 12 * inch, Y: 41*inch/2 - 1}: {1, 0}, {X: 12 * inch, Y: 49 * inch / 2}: {1, 1}, {X: 12 * inch, Y: 49*inch/2 + 1}: {1, 0}} {
		dot := shown(diagram.Mark{Line: &diagram.Line{Points: []measure.Point{at}, Start: diagram.Dot}})
		name := shown(diagram.Mark{Words: &diagram.Words{Text: "T1", At: at}})
		moved := measure.Point{X: at.X - w.min.X, Y: at.Y - w.min.Y}
		if len(dot) != want[0] || len(name) != want[1] || want[0] == 1 && dot[0].Line.Points[0] != moved || want[1] == 1 && name[0].Words.At != moved {
			t.Errorf("at %v: %d dots and %d names", at, len(dot), len(name))
		}
	}
}

// inOrder is each of some points once, from left to right.
func inOrder(list []measure.Point) []measure.Point {
	return slices.Compact(slices.SortedFunc(slices.Values(list), func(a, b measure.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) }))
}

// TestLinesOfPrints: edges of a print come again after each repeat, as far as they are asked for and no farther; a template has no more than
// sixty lines.
func TestLinesOfPrints(t *testing.T) {
	gather := func(e edge, place, within measure.NM) (list []measure.NM) {
		for at := range e.near(place, within) {
			list = append(list, at)
		}
		return list
	}
	for at := measure.NM(-7); at < 12; at++ {
		for place := measure.NM(-9); place < 9; place++ {
			var want []measure.NM
			for n := measure.NM(-99); n < 99; n++ {
				if x := at + 5*n; x >= place-8 && x <= place+8 {
					want = append(want, x)
				}
			}
			if got := gather(edge{at, 5}, place, 8); !slices.Equal(got, want) {
				t.Fatalf("edge %d near %d: %v, expected %v", at, place, got, want)
			}
		}
	}
	if got := gather(edge{3, 0}, 100, 8); !slices.Equal(got, []measure.NM{3}) {
		t.Errorf("an edge that is there once: %v", got)
	}
	if got := gather(edge{0, 1}, 0, 1000); len(got) != 4*mostLines || got[0] != -1000 {
		t.Errorf("%d of many lines", len(got))
	}
	cut := []xy{{0, 0}, {10, 0}, {10, 10}, {0, 10}}
	p := &Print{}
	for range mostLines + 5 {
		p.line(cut, xy{-5, 5}, xy{15, 5})
	}
	if len(p.Lines) != mostLines || p.Lines[mostLines-1] != [2]measure.Point{{Y: 5}, {X: 10, Y: 5}} {
		t.Errorf("%d lines, the last %v", len(p.Lines), p.Lines[len(p.Lines)-1])
	}
	for _, l := range []struct {
		from, to xy
		want     [][2]measure.Point
	}{{xy{-5, 12}, xy{15, 12}, nil}, {xy{5, -3}, xy{5, 4}, [][2]measure.Point{{{X: 5}, {X: 5, Y: 4}}}}, {xy{5, 4}, xy{5, 20}, [][2]measure.Point{{{X: 5, Y: 4}, {X: 5, Y: 10}}}}, {xy{-4, 0}, xy{4, -8}, nil}} {
		p := &Print{}
		if p.line(cut, l.from, l.to); !slices.Equal(p.Lines, l.want) {
			t.Errorf("of %v to %v: %v", l.from, l.to, p.Lines)
		}
	}
	stripes := &layout.Stripes{List: []layout.Stripe{{Width: 3}, {Width: 4}, {Width: 5}}}
	want := edges{{0, stripes.Repeat()}, {3, stripes.Repeat()}, {7, stripes.Repeat()}}
	if across, down := edgesOf(&quilt.Cloth{Stripes: stripes}); !slices.Equal(across, want) || down != nil {
		t.Errorf("stripes along the cloth: %v, %v", across, down)
	}
	stripes.Crosswise = true
	if across, down := edgesOf(&quilt.Cloth{Stripes: stripes}); !slices.Equal(down, want) || across != nil {
		t.Errorf("stripes across the cloth: %v, %v", across, down)
	}
	if across, down := edgesOf(&quilt.Cloth{Across: 5, Down: 7}); !slices.Equal(across, edges{{0, 5}}) || !slices.Equal(down, edges{{0, 7}}) {
		t.Errorf("repeats: %v, %v", across, down)
	}
}

// TestSamePiece: outlines are one piece, turned or begun at another corner, up to ten nanometers in a length; not mirrored, and not with a corner
// more.
func TestSamePiece(t *testing.T) {
	a := []xy{{0, 0}, {400, 0}, {0, 300}}
	longer := func(by float64) []xy { return []xy{{0, 0}, {400 + by, 0}, {0, 300}} }
	turned := []xy{{0, 300}, {0, -100}, {300, 300}} // a quarter turn
	for name, c := range map[string]struct {
		b     []xy
		shift int
		ok    bool
	}{
		"itself": {a, 0, true}, "begun later": {[]xy{a[2], a[0], a[1]}, 1, true}, "begun later still": {[]xy{a[1], a[2], a[0]}, 2, true}, "turned": {turned, 0, true}, "mirrored": {[]xy{a[0], a[2], a[1]}, 0, false},
		"as much longer as may be": {longer(sameSize), 0, true}, "longer": {longer(sameSize + 0.5), 0, false}, "a corner more": {append(slices.Clone(a), xy{-1, 100}), 0, false},
	} {
		if shift, ok := congruent(a, c.b); ok != c.ok || shift != c.shift {
			t.Errorf("%s: %v, begun %d later", name, ok, shift)
		}
	}
	if got := turnedTo([]xy{{10, 10}, {10, 410}, {-290, 10}}, xy{10, 10}, xy{10, 410}); distance(got[0], xy{0, 0}) > 1e-9 || distance(got[1], xy{400, 0}) > 1e-9 || distance(got[2], xy{0, 300}) > 1e-9 {
		t.Errorf("turned to the right it is %v", got)
	}
	if m := middleOf(xy{2, 10}, xy{6, 30}); m != (xy{4, 20}) {
		t.Errorf("the middle is %v", m)
	}
}
