package templates

import (
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/lay"
)

// plating of a room, for pieces that are put on it one by one.
func platingOf(room measure.Point) *plating {
	return &plating{whole: room.Add(measure.Point{Y: squaresHigh}), room: room, shapes: map[int][]shape{}, squares: map[int]twoSquares{}}
}

// standing is where the pieces of a plate begin, by the first corner of each.
func standing(p Plate) (list []measure.Point) {
	for _, m := range p.Figure.Marks {
		list = append(list, m.Area.Outline[0])
	}
	return list
}

// TestShelves: pieces stand side by side, three twentieths of an inch apart, in rows as high as their highest piece and as far apart, up to the nanometer; what has no room on a plate
// begins the next one, and what is larger than a plate none.
func TestShelves(t *testing.T) {
	const gap = 3 * inch / 20
	square := plainPiece("square", measure.Point{}, measure.Point{X: inch}, measure.Point{X: inch, Y: inch}, measure.Point{Y: inch})
	flat := plainPiece("flat", measure.Point{}, measure.Point{X: inch}, measure.Point{X: inch, Y: inch / 2}, measure.Point{Y: inch / 2})
	by, w, h := placed(square)
	_, _, low := placed(flat)
	at := func(x, y measure.NM) measure.Point { return measure.Point{X: x + by.X, Y: y + by.Y} }
	for _, c := range []struct {
		room   measure.Point
		pieces []Piece
		want   [][]measure.Point
	}{
		{measure.Point{X: 2*w + gap, Y: 2*h + gap}, []Piece{square, square, square, square, square}, [][]measure.Point{{at(0, 0), at(w+gap, 0), at(0, h+gap), at(w+gap, h+gap)}, {at(0, 0)}}},
		{measure.Point{X: 2*w + gap - 1, Y: 2*h + gap}, []Piece{square, square, square}, [][]measure.Point{{at(0, 0), at(0, h+gap)}, {at(0, 0)}}},
		{measure.Point{X: 2*w + gap, Y: 2*h + gap - 1}, []Piece{square, square, square}, [][]measure.Point{{at(0, 0), at(w+gap, 0)}, {at(0, 0)}}},
		{measure.Point{X: 2*w + gap, Y: h + low + gap}, []Piece{flat, square, flat, square}, [][]measure.Point{{at(0, 0), at(w+gap, 0), at(0, h+gap)}, {at(0, 0)}}},
		{measure.Point{X: 2*w + gap, Y: low + h + 2*gap + low}, []Piece{flat, flat, square, flat, flat}, [][]measure.Point{{at(0, 0), at(w+gap, 0), at(0, low+gap), at(w+gap, low+gap), at(0, low+gap+h+gap)}}},
		{measure.Point{X: w, Y: h}, []Piece{square}, [][]measure.Point{{at(0, 0)}}}, {measure.Point{X: w - 1, Y: h}, []Piece{square}, nil}, {measure.Point{X: w, Y: h - 1}, []Piece{square}, nil},
	} {
		l := platingOf(c.room)
		for _, p := range c.pieces {
			if !l.place(p, false) {
				l.place(p, true)
			}
		}
		if len(l.plates) != len(c.want) {
			t.Errorf("room %v: %d plates, expected %d", c.room, len(l.plates), len(c.want))
			continue
		}
		for i := range l.plates {
			if got := standing(l.plates[i]); !slices.Equal(got, c.want[i]) || len(l.plates[i].Shows) != len(got) || len(l.shapes[i]) != len(got) {
				t.Errorf("room %v, plate %d: %v, expected %v", c.room, i+1, got, c.want[i])
			}
		}
	}
	l := platingOf(measure.Point{X: w, Y: h})
	if l.place(square, false) || len(l.plates) != 0 || !l.place(square, true) || l.place(square, false) || len(l.plates) != 1 {
		t.Errorf("%d plates of one square", len(l.plates))
	}
}

// TestPlatesThatAreLookedAt: a piece that has no place on a shelf is tried on the last two plates of whole pieces, the last one first, and where it gets one, it stands clear of what is there; the plate is
// then closed for shelves.
func TestPlatesThatAreLookedAt(t *testing.T) {
	square := plainPiece("square", measure.Point{}, measure.Point{X: inch}, measure.Point{X: inch, Y: inch}, measure.Point{Y: inch})
	room := measure.Point{X: 5 * inch, Y: 5 * inch}
	full := rectangle(0, 0, room.X, room.Y+squaresHigh)
	for _, c := range []struct {
		plates, full, parts []int
		want                int
	}{{[]int{0}, nil, nil, 0}, {[]int{0, 1}, nil, nil, 1}, {[]int{0, 1, 2}, []int{2}, nil, 1}, {[]int{0, 1, 2}, []int{1, 2}, nil, -1}, {[]int{0, 1, 2}, nil, []int{2}, 1}, {[]int{0, 1}, []int{1}, []int{0}, -1}, {nil, nil, nil, -1}} {
		l := platingOf(room)
		l.plates = make([]Plate, len(c.plates))
		for _, i := range c.plates {
			l.open = append(l.open, shelf{plate: i})
		}
		for _, i := range c.full {
			l.shapes[i] = []shape{full}
		}
		for _, i := range c.parts {
			l.plates[i].Parts = 2
		}
		got := -1
		if l.nest(square, false) {
			got = slices.IndexFunc(l.plates, func(p Plate) bool { return len(p.Shows) > 0 })
			if slices.ContainsFunc(l.open, func(s shelf) bool { return s.plate == got }) || len(l.open) != len(c.plates)-1 || len(l.shapes[got]) != 1 {
				t.Errorf("%+v: the shelves %v are left, %d shapes", c, l.open, len(l.shapes[got]))
			}
		}
		if got != c.want {
			t.Errorf("%+v: on plate %d", c, got)
		}
	}
}

// TestPlacesBesideOthers: a piece stands at the first place, by eighths of an inch, that is three twentieths of an inch clear of what is there, row by row; the test squares stay at the foot where they have room there, and
// else go to the right side. Where what is left of the plate is too narrow or too low, it has none.
func TestPlacesBesideOthers(t *testing.T) {
	square := plainPiece("square", measure.Point{}, measure.Point{X: 5 * inch / 4}, measure.Point{X: 5 * inch / 4, Y: 5 * inch / 4}, measure.Point{Y: 5 * inch / 4})
	by, _, _ := placed(square)
	room := measure.Point{X: 5 * inch, Y: 6 * inch}
	foot, side := squaresAtFoot(room), squaresAtSide(room)
	for _, c := range []struct {
		there   []shape
		x, y    measure.NM // of an eighth of an inch, below 0 for none
		squares twoSquares
	}{
		{[]shape{rectangle(0, 0, 2*inch, 4*inch)}, 17, 0, foot}, {[]shape{rectangle(0, 0, 5*inch, 2*inch)}, 0, 17, foot}, {[]shape{rectangle(2*inch, 0, 3*inch, 4*inch)}, 0, 0, foot}, {[]shape{rectangle(0, 5*inch, 3*inch, inch)}, 0, 0, side},
		{[]shape{rectangle(0, 0, 39*inch/10, 9*inch/2), rectangle(27*inch/10, 23*inch/5, 23*inch/10, 7*inch/5)}, -1, -1, foot}, {[]shape{rectangle(0, 0, 5*inch, 229*inch/50)}, -1, -1, foot},
	} {
		l := platingOf(measure.Point{X: room.X, Y: room.Y - squaresHigh})
		l.plates, l.shapes[0] = make([]Plate, 1), c.there
		if found := l.nest(square, false); !found || c.x < 0 {
			if found != (c.x >= 0) {
				t.Errorf("beside %v: %v", c.there, found)
			}
			continue
		}
		want := measure.Point{X: c.x*inch/8 + by.X, Y: c.y*inch/8 + by.Y}
		if got := standing(l.plates[0])[0]; got != want || l.squares[0] != c.squares {
			t.Errorf("beside %v: at %v, squares %v, expected %v", c.there, got, l.squares[0], want)
		}
	}
}

// TestPiecesAsLargeAsAPlate: a triangle as large as a plate has it for itself, with the test squares in the corner that it leaves; one that is a nanometer wider or higher than the plate does not, and no plate is begun for
// it.
func TestPiecesAsLargeAsAPlate(t *testing.T) {
	triangle := plainPiece("triangle", measure.Point{}, measure.Point{X: 6 * inch}, measure.Point{Y: 6 * inch})
	_, w, h := placed(triangle)
	for _, c := range []struct {
		w, h measure.NM
		fits bool
	}{{w, h, true}, {w - 1, h, false}, {w, h - 1, false}} {
		l := platingOf(measure.Point{X: c.w, Y: c.h - squaresHigh})
		if l.nest(triangle, true) != c.fits || len(l.plates) != map[bool]int{true: 1}[c.fits] {
			t.Errorf("%v by %v: %d plates", c.w, c.h, len(l.plates))
		}
	}
}

// TestShapesOfPieces: a piece takes the room of its outlines where nothing of it, words or lines, reaches more than half the gap between pieces beyond them, on each of its
// sides; else the rectangle of all of it.
func TestShapesOfPieces(t *testing.T) {
	const most = measure.NM(3 * inch / 40)
	figure := func(left, upper, right, lower measure.NM) Piece {
		low, high := measure.Point{X: left, Y: upper}, measure.Point{X: 2*inch - right, Y: 2*inch - lower}
		return Piece{"piece", &diagram.Figure{TrueSize: true, Max: measure.Point{X: 2 * inch, Y: 2 * inch}, Marks: []diagram.Mark{{Area: &diagram.Area{Outline: []measure.Point{low, {X: high.X, Y: low.Y}, {X: low.X, Y: high.Y}}}}}}}
	}
	by, w, h := placed(figure(0, 0, 0, 0))
	right, lower := most-(w-by.X-2*inch), most-(h-by.Y-2*inch)
	for _, c := range []struct {
		p    Piece
		hull bool
	}{
		{figure(0, 0, 0, 0), true}, {figure(most-by.X, 0, 0, 0), true}, {figure(most-by.X+1, 0, 0, 0), false}, {figure(0, most-by.Y, 0, 0), true}, {figure(0, most-by.Y+1, 0, 0), false},
		{figure(0, 0, right, 0), true}, {figure(0, 0, right+1, 0), false}, {figure(0, 0, 0, lower), true}, {figure(0, 0, 0, lower+1), false},
	} {
		got := shapeOf(c.p)
		if corners := map[bool]int{true: 3, false: 4}[c.hull]; len(got) != corners {
			t.Errorf("%v: %v", c.p.Figure.Marks[0].Area.Outline, got)
		}
		if low, high := got.bounds(); !c.hull && (low != (measure.Vec{}) || high != (measure.Vec{X: float64(w), Y: float64(h)})) {
			t.Errorf("the rectangle of %v is %v to %v", c.p.Figure.Marks[0].Area.Outline, low, high)
		}
	}
	lines := Piece{"line", &diagram.Figure{TrueSize: true, Max: measure.Point{X: 2 * inch, Y: 2 * inch}, Marks: []diagram.Mark{{Line: &diagram.Line{Points: []measure.Point{{}, {X: 2 * inch, Y: 2 * inch}}, Stroke: diagram.Cut}}}}}
	if got := shapeOf(lines); len(got) != 4 {
		t.Errorf("a line alone takes %v", got)
	}
	lines.Figure.Marks[0].Line.Points = []measure.Point{{}, {X: 2 * inch, Y: 2 * inch}, {Y: 2 * inch}}
	if got := shapeOf(lines); len(got) != 3 {
		t.Errorf("a bent line takes %v", got)
	}
}

// TestSeamsAlongPieces: a stretch borders on an outline where a side of it runs along the stretch, either way, for more than a tenth of a micrometer and no farther aside than that.
func TestSeamsAlongPieces(t *testing.T) {
	const near = measure.NM(10 * sameSize)
	p, q := measure.Point{X: 1000, Y: 1000}, measure.Point{X: 9000, Y: 1000}
	side := func(from, to, aside, tilt measure.NM) []measure.Point {
		return []measure.Point{{X: from, Y: 1000 + aside}, {X: to, Y: 1000 + aside + tilt}, {X: 5000, Y: 99_000}}
	}
	for _, c := range []struct {
		outline []measure.Point
		want    bool
	}{
		{side(1000, 9000, 0, 0), true}, {side(9000, 1000, 0, 0), true}, {side(-5000, 20_000, 0, 0), true}, {side(3000, 4000, 0, 0), true}, {side(20_000, -5000, 0, 0), true},
		{side(-500, 1000+near+1, 0, 0), true}, {side(-500, 1000+near, 0, 0), false}, {side(9000-near-1, 12_000, 0, 0), true}, {side(9000-near, 12_000, 0, 0), false}, {side(9000, 12_000, 0, 0), false}, {side(-5000, 1000, 0, 0), false}, {side(-5000, 900, 0, 0), false}, {side(9100, 12_000, 0, 0), false},
		{side(3000, 3000+near+1, 0, 0), true}, {side(3000, 3000+near, 0, 0), false},
		{side(1000, 9000, near-1, 0), true}, {side(1000, 9000, near, 0), false}, {side(1000, 9000, 1-near, 0), true}, {side(1000, 9000, -near, 0), false}, {side(1000, 9000, 0, near), false}, {side(1000, 9000, 0, -near), false}, {side(1000, 9000, 0, 1-near), true},
		{side(1000, 9000, near, -near), false}, {side(1000, 9000, near-1, 1-near), true}, {side(1000, 9000, -near, near), false},
	} {
		turned := func(list ...measure.Point) []measure.Point {
			out := make([]measure.Point, len(list))
			for i, v := range list {
				out[i] = measure.Point{X: -v.Y, Y: v.X}
			}
			return out
		}
		upright := turned(p, q)
		if later := append(slices.Clone(c.outline[1:]), c.outline[0]); borders(later, p, q) != c.want {
			t.Errorf("%v: %v", later, !c.want)
		}
		if borders(c.outline, p, q) != c.want || borders(c.outline, q, p) != c.want || borders(turned(c.outline...), upright[0], upright[1]) != c.want {
			t.Errorf("%v: %v", c.outline, !c.want)
		}
	}
}

// TestSlantedSeams: the same of a slanted stretch.
func TestSlantedSeams(t *testing.T) {
	p, q := measure.Point{X: 1000}, measure.Point{X: 4000, Y: 4000}
	for _, c := range []struct {
		outline []measure.Point
		want    bool
	}{
		{[]measure.Point{q, p, {Y: 9000}}, true}, {[]measure.Point{p, q, {X: 9000}}, true}, {[]measure.Point{{X: 700, Y: -400}, {X: 2500, Y: 2000}, {X: 9000}}, true},
		{[]measure.Point{{X: 1000, Y: 400}, {X: 4000, Y: 4400}, {Y: 9000}}, false}, {[]measure.Point{{X: 4000}, {X: 1000, Y: 4000}, {Y: 9000}}, false}, {[]measure.Point{{X: 4000, Y: 4000}, {X: 7000, Y: 8000}, {X: 9000}}, false},
		{[]measure.Point{p, {X: 4000}, q, {X: 1000, Y: 4000}}, false}, {[]measure.Point{{}, p, q, {Y: 4000}}, true},
	} {
		if borders(c.outline, p, q) != c.want {
			t.Errorf("%v: %v", c.outline, !c.want)
		}
	}
}

// TestCornersOfHalves: the corners of a right triangle that points fill are told clockwise, the square one between the ends of the long side, whichever way round and in whatever order the points come, also where others lie on its sides and
// within.
func TestCornersOfHalves(t *testing.T) {
	square, end, other := xy{500, 340}, xy{500, 300}, xy{540, 340}
	all := []xy{square, end, other, {520, 340}, {500, 330}, {520, 320}, {510, 335}}
	for shift := range all {
		for _, back := range []bool{false, true} {
			list := append(slices.Clone(all[shift:]), all[:shift]...)
			if back {
				slices.Reverse(list)
			}
			from, middle, to := corners(list)
			if middle != square || from != other || to != end {
				t.Errorf("%v: %v, %v, %v", list, from, middle, to)
			}
		}
	}
}

// TestSidesThatPart: a place is clear of a triangle by its distance from a side, to the last digit, whichever way round the triangle goes.
func TestSidesThatPart(t *testing.T) {
	triangle := shape{{X: 0, Y: 0}, {X: 8, Y: 0}, {X: 0, Y: 6}}
	back := slices.Clone(triangle)
	slices.Reverse(back)
	for at, gap := range map[measure.Vec]float64{{X: 4, Y: -3}: 3, {X: -2, Y: 1}: 2, {X: 8, Y: 6}: 4.8, {X: 1, Y: 1}: -1} {
		point := shape{at, at}
		for _, s := range []shape{triangle, back} {
			if !s.clear(point, gap) || s.clear(point, gap+1e-9) || !point.clear(s, gap) {
				t.Errorf("%v is not %g away", at, gap)
			}
		}
	}
}

// TestCutByARuler: what a ruler alone cuts needs no template, but where it shows a print alike, of whichever place of the quilt.
func TestCutByARuler(t *testing.T) {
	for _, shape := range []blocks.Shape{blocks.Wedge, blocks.Square} {
		for print, plain := range map[int]bool{-1: true, 0: false, 3: false} {
			want := plain && shape == blocks.Square
			if g := (gathered{shape: shape, print: print}); g.byRuler() != want {
				t.Errorf("%v, print %d: %v", shape, print, !want)
			}
		}
		if one, other := (Template{Shape: shape}), (Template{Shape: shape, Print: &Print{}}); one.ByRuler() != (shape == blocks.Square) || other.ByRuler() {
			t.Errorf("a template of a %v", shape)
		}
	}
}

// TestOrderOfTemplates: templates of what a ruler cuts as well come last; before and after that, one shape follows the other, of one shape the larger first, and the left before its right, which share a letter; letters go up by one.
func TestOrderOfTemplates(t *testing.T) {
	top := lay.Top(t, "side 9\nfabric a #1f3350\nfabric b #f4ead7\nblock P plain piece a\nblock H halves pieces a b\nblock R ring wedges a corners b\nblock W web wedges a kites b\nblock T tumblers pieces a b line 15\ngrid\n P W H\n R T P\n")
	list, ruled := usual(top), 0
	for i := range list {
		b := &list[i]
		ruled += bit(b.ByRuler())
		if i == 0 {
			continue
		}
		a := &list[i-1]
		large, small := areaOf(points(a.Finished)), areaOf(points(b.Finished))
		if a.ByRuler() && !b.ByRuler() || a.ByRuler() == b.ByRuler() && (a.Shape > b.Shape || a.Shape == b.Shape && (large < small*(1-1e-6) || a.Hand > b.Hand && large < small*(1+1e-6))) {
			t.Errorf("%s, a %s, comes before %s, a %s", a.Name(), a.Piece(), b.Name(), b.Piece())
		}
		pair := a.Hand == "left" && b.Hand == "right" && a.Shape == b.Shape && math.Abs(large-small) < small/1e6
		if (a.Letter == b.Letter) != pair {
			t.Errorf("%s and %s", a.Name(), b.Name())
		}
	}
	if ruled != 2 || len(list) < 5 || top.Patches[0].Shape != blocks.Square || list[0].Letter != "T1" {
		t.Errorf("%d of %d templates are cut by a ruler", ruled, len(list))
	}
}

// TestPlacesOfTestSquares: the squares of an inch and of 3 cm stand a quarter of an inch apart, and the larger one's far edges are less than an
// eighth of an inch from the plate's, so that pieces have the rest.
func TestPlacesOfTestSquares(t *testing.T) {
	room := measure.Point{X: 5 * inch, Y: 6 * inch}
	foot, side := squaresAtFoot(room), squaresAtSide(room)
	for what, gap := range map[string]measure.NM{"foot": foot[1].X - foot[0].X - inchSquare, "side": side[1].Y - side[0].Y - inchSquare} {
		if gap != inch/4 {
			t.Errorf("at the %s the squares stand %d apart", what, gap)
		}
	}
	if want := (measure.Point{X: inch / 20, Y: room.Y - 5*inch/4}); foot[0] != want {
		t.Errorf("at the foot the squares begin at %v, not %v", foot[0], want)
	}
	if want := (measure.Point{X: room.X - 5*inch/4, Y: inch / 20}); side[0] != want {
		t.Errorf("at the side the squares begin at %v, not %v", side[0], want)
	}
	for by, want := range map[measure.NM]bool{0: true, -1: false} { // a piece stands the least gap from the square of an inch, or a hair nearer
		beside := rectangle(side[0].X-inch-plateGap-by, side[0].Y, inch, inch)
		if squaresClear(append([]shape{beside}, side.shapes()...)) != want {
			t.Errorf("a piece %d nm from a test square is clear of it: %v", plateGap+by, !want)
		}
	}
	if foot[0].Y != foot[1].Y || side[0].X != side[1].X {
		t.Errorf("the squares stand askew: %v, %v", foot, side)
	}
	for what, left := range map[string]measure.NM{"foot": room.Y - foot[1].Y - centimetreSquare, "side": room.X - side[1].X - centimetreSquare} {
		if left < 0 || left > inch/8 {
			t.Errorf("at the %s %d nm are left", what, left)
		}
	}
}

// TestLeftForRight: mirrored pieces lie between the same sides.
func TestLeftForRight(t *testing.T) {
	if got := mirrored([]xy{{0, 0}, {4, 1}, {3, 2}}); !slices.Equal(got, []xy{{4, 0}, {0, 1}, {1, 2}}) {
		t.Errorf("mirrored: %v", got)
	}
}

// TestLinesThatOnlyTouch: a line of a print that touches a piece's corner is no line on it.
func TestLinesThatOnlyTouch(t *testing.T) {
	square := []xy{{0, 0}, {10, 0}, {10, 10}, {0, 10}}
	for line, want := range map[[2]xy]int{{{-5, 5}, {5, -5}}: 0, {{-5, 6}, {6, -5}}: 1, {{-5, 5}, {15, 5}}: 1, {{-5, 4}, {4, -5}}: 0, {{-5, 0}, {15, 0}}: 1, {{15, 0}, {-5, 0}}: 1} {
		p := &Print{}
		if p.line(square, line[0], line[1]); len(p.Lines) != want {
			t.Errorf("%v: %d lines", line, len(p.Lines))
		}
		for _, l := range p.Lines {
			for _, q := range l {
				if q.X < 0 || q.X > 10 || q.Y < 0 || q.Y > 10 {
					t.Errorf("%v: it runs to %v", line, q)
				}
			}
		}
	}
}

// TestEnlargedPlatesAreTheirOwn: setting a plate's words larger leaves the marks of others that share them.
func TestEnlargedPlatesAreTheirOwn(t *testing.T) {
	marks := []diagram.Mark{{Words: &diagram.Words{Text: threeCentimetres, Points: 8}}, {Words: &diagram.Words{Text: "T1", Points: 20}}}
	p := Plate{Figure: diagram.Figure{Marks: marks}}
	p.Enlarge(12)
	if marks[0].Words.Points != 8 || marks[0].Words.Text != threeCentimetres {
		t.Errorf("the others' words are %+v", marks[0].Words)
	}
	if got := p.Figure.Marks; got[0].Words.Points != 12 || got[0].Words.Text != "3 cm" || got[1].Words.Points != 20 {
		t.Errorf("enlarged: %+v, %+v", got[0].Words, got[1].Words)
	}
}

// TestNamesOfSmallTemplates: a name on a template is 26 points high at most, and on a small one as much less as its place is.
func TestNamesOfSmallTemplates(t *testing.T) {
	small, usualSize := 0, 0
	for _, strip := range []string{"1", "1 1/2", "2", "6"} {
		top := lay.Top(t, "strip "+strip+"\nfabric a #fff\nfabric b #000\nblock R ring wedges a corners b\ngrid\n R\n")
		list := usual(top)
		for i := range list {
			f := list[i].Figure(top, NewCloths(top))
			for _, m := range f.Marks {
				if m.Words == nil {
					continue
				}
				at := xy{float64(m.Words.At.X), float64(m.Words.At.Y)}
				reach := roomAt(floats(list[i].Finished), at, endless) * 72 / float64(inch) // to the nearest seam line, in points
				want := min(26, reach*1.28)
				if math.Abs(m.Words.Points-want) > 0.01 {
					t.Errorf("strip %s, %s: %g points, expected %g", strip, list[i].Name(), m.Words.Points, want)
				}
				if want < 26 {
					small++
				} else {
					usualSize++
				}
			}
		}
	}
	if small < 2 || usualSize < 2 {
		t.Errorf("only %d small names and %d usual ones", small, usualSize)
	}
}
