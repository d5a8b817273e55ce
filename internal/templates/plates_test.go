package templates

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/samples"
	"slices"
)

// usualRoom is about what a page of Letter paper has for plates, and usualMost what is printed.
var (
	usualRoom = measure.Point{X: 279 * measure.Inch / 40, Y: 8 * measure.Inch}
	usualMost = Most{OfPiece: 60, InAll: 1000}
)

func figuresOf(top *quilt.Top) []Piece {
	var list []Piece
	cloths := NewCloths(top)
	for _, p := range usual(top) {
		list = append(list, Piece{p.Name(), p.Figure(top, cloths)})
	}
	return list
}

// wrongPlate says what of a plate lies beyond its room, or pieces that lie on one another.
func wrongPlate(p *Plate) string {
	var cut [][]measure.Point
	for _, m := range p.Figure.Marks {
		var list []measure.Point
		switch {
		case m.Area != nil:
			list = m.Area.Outline
		case m.Line != nil:
			list = m.Line.Points
		}
		for _, q := range list {
			if q.X < 0 || q.Y < 0 || q.X > p.Figure.Max.X || q.Y > p.Figure.Max.Y {
				return fmt.Sprintf("a place lies at %v, the room is %v", q, p.Figure.Max)
			}
		}
		if m.Area == nil {
			continue
		}
		low, high := bounds(list)
		if m.Area.Edge == diagram.Cut || high.X-low.X == inchSquare || high.X-low.X == centimetreSquare {
			cut = append(cut, list)
		}
	}
	for i, a := range cut {
		for _, b := range cut[:i] {
			if onOneAnother(a, b) {
				return "two outlines lie on one another"
			}
		}
	}
	return ""
}

// leastApart is how far outlines on a plate are apart at the least.
const leastApart = float64(measure.Inch) / 10

// onOneAnother says whether two outlines cross, one holds the other, or they come nearer to each other than that.
func onOneAnother(a, b []measure.Point) bool {
	for i := range a {
		for k := range b {
			p, q, r, s := a[i], a[(i+1)%len(a)], b[k], b[(k+1)%len(b)]
			if area(p, q, r)*area(p, q, s) < 0 && area(r, s, p)*area(r, s, q) < 0 {
				return true
			}
			if min(toSide(p, r, s), toSide(q, r, s), toSide(r, p, q), toSide(s, p, q)) < leastApart {
				return true
			}
		}
	}
	return within(a[0], b) || within(b[0], a)
}

// area is twice the area of a triangle, with a sign for the way round.
func area(a, b, c measure.Point) float64 {
	return float64(b.X-a.X)*float64(c.Y-a.Y) - float64(b.Y-a.Y)*float64(c.X-a.X)
}

// toSide is how far a point is from a side.
func toSide(p, a, b measure.Point) float64 {
	x, y := float64(b.X-a.X), float64(b.Y-a.Y)
	along := 0.0
	if long := x*x + y*y; long > 0 {
		along = max(0, min(1, (float64(p.X-a.X)*x+float64(p.Y-a.Y)*y)/long))
	}
	return math.Hypot(float64(p.X-a.X)-along*x, float64(p.Y-a.Y)-along*y)
}

// within says whether a point lies in an outline: a line from it to the right crosses an odd number of sides.
func within(p measure.Point, outline []measure.Point) bool {
	inside := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && float64(p.X-a.X) < float64(b.X-a.X)*float64(p.Y-a.Y)/float64(b.Y-a.Y) {
			inside = !inside
		}
	}
	return inside
}

// TestPiecesShareAPlate: a wedge and a kite that stand side by side only between their slanted edges share a plate, and a wedge
// as high as the room has the test squares beside its tip; a law that looked for more room than there is would see it.
func TestPiecesShareAPlate(t *testing.T) {
	inch := func(x, y float64) measure.Point {
		return measure.Point{X: measure.NM(x * float64(measure.Inch)), Y: measure.NM(y * float64(measure.Inch))}
	}
	piece := func(name string, outline ...measure.Point) Piece {
		_, high := bounds(outline)
		return Piece{name, &diagram.Figure{TrueSize: true, Max: high, Marks: []diagram.Mark{{Area: &diagram.Area{Outline: outline, Edge: diagram.Cut}}}}}
	}
	wedge := piece("wedge", inch(0, 4.5), inch(1.875, 0), inch(2.1875, 0), inch(4.0625, 4.5))
	kite := piece("kite", inch(1.6, 0), inch(3.2, 1.6), inch(1.75, 5), inch(1.45, 5), inch(0, 1.6))
	for _, c := range []struct {
		pieces []Piece
		room   measure.Point
		plates int
	}{
		{[]Piece{wedge, kite}, inch(6.875, 7.625), 1},
		{[]Piece{wedge}, inch(4.375, 4.75), 1},
		{[]Piece{piece("left", inch(0, 0), inch(5, 0), inch(5, 0.94), inch(0, 3))}, inch(4.375, 5.625), 1},
		{[]Piece{piece("right", inch(0, 0), inch(5, 0), inch(5, 3), inch(0, 0.94))}, inch(4.375, 5.625), 1},
		{[]Piece{wedge, kite}, inch(4.375, 5.625), 2},
		{[]Piece{piece("strip", inch(0, 0), inch(5.4, 0), inch(5.4, 7.4), inch(0, 7.4)), piece("square", inch(0, 0), inch(1, 0), inch(1, 1), inch(0, 1))}, inch(6.875, 7.625), 1},
	} {
		plates, left := Plates(c.pieces, c.room, usualMost)
		if len(plates) != c.plates || len(left) > 0 || plates[0].Parts > 0 {
			t.Errorf("%d pieces take %d plates of %v, the first in %d parts", len(c.pieces), len(plates), c.room, plates[0].Parts)
		}
		for i := range plates {
			if wrong := wrongPlate(&plates[i]) + wrongSquares(&plates[i]); wrong != "" {
				t.Errorf("%d pieces: %s", len(c.pieces), wrong)
			}
		}
	}
}

// TestPlatesKeepToTheRoom: what is on a plate lies in its room, and neither pieces nor test
// squares on one another.
func TestPlatesKeepToTheRoom(t *testing.T) {
	count := 0
	for _, top := range append(inventedTops(t, 80), lay.Top(t, samples.All()[0].Text), lay.Top(t, hugeLayout)) {
		for _, room := range []measure.Point{usualRoom, {X: 9 * measure.Inch / 2, Y: 6 * measure.Inch}} {
			plates, _ := Plates(figuresOf(top), room, usualMost)
			for i := range plates {
				count++
				if wrong := wrongPlate(&plates[i]); wrong != "" {
					t.Fatalf("plate %d of %q: %s", i+1, top.Title, wrong)
				}
			}
		}
	}
	if count < 100 {
		t.Errorf("only %d plates were looked at", count)
	}
	plates, _ := Plates(figuresOf(lay.Top(t, samples.All()[0].Text)), usualRoom, usualMost)
	bad := plates[0]
	bad.Figure.Marks = append(slices.Clone(bad.Figure.Marks), moved(bad.Figure.Marks[0], measure.Point{X: 1}))
	if wrongPlate(&bad) == "" {
		t.Error("a piece that lies on itself was not noticed")
	}
	bad = plates[0]
	bad.Figure.Max.X = measure.Inch
	if wrongPlate(&bad) == "" {
		t.Error("a piece beyond the room was not noticed")
	}
}

// wrongSquares says which test square of a plate is missing or not true over its outer edges,
// the line along them included.
func wrongSquares(p *Plate) string {
	for _, side := range []measure.NM{inchSquare, centimetreSquare} {
		found := 0
		for _, m := range p.Figure.Marks {
			if m.Area == nil || len(m.Area.Outline) != 4 || m.Area.Fill.R > 100 || m.Area.Clear {
				continue
			}
			low, high := bounds(m.Area.Outline)
			pen := measure.NM(m.Area.Edge.Pen().Width / diagram.TrueScale)
			if high.X-low.X+pen == side && high.Y-low.Y+pen == side {
				found++
			}
		}
		if found != 1 {
			return fmt.Sprintf("%d squares are %d nm wide over their outer edges", found, side)
		}
	}
	return ""
}

// TestSquaresAreTrue: every plate has both test squares, true over their outer edges.
func TestSquaresAreTrue(t *testing.T) {
	plates, _ := Plates(figuresOf(lay.Top(t, hugeLayout)), usualRoom, usualMost)
	more, _ := Plates(figuresOf(lay.Top(t, samples.All()[0].Text)), usualRoom, usualMost)
	for _, p := range append(plates, more...) {
		if wrong := wrongSquares(&p); wrong != "" {
			t.Error(wrong)
		}
	}
	bad := more[0]
	bad.Figure.Marks = slices.Clone(bad.Figure.Marks)
	for i, m := range bad.Figure.Marks {
		if m.Area != nil && m.Area.Edge == diagram.NoStroke {
			area := *m.Area
			area.Edge = diagram.Cut // stands out by half of its breadth
			bad.Figure.Marks[i].Area = &area
		}
	}
	if wrongSquares(&bad) == "" {
		t.Error("a square that its line makes larger was not noticed")
	}
}

// TestPartsShowTheWholePiece: parts of a piece that is larger than the plate show all of its
// lines, each at its place.
func TestPartsShowTheWholePiece(t *testing.T) {
	outline := []measure.Point{{}, {X: 11 * measure.Inch}, {X: 7 * measure.Inch, Y: 13 * measure.Inch}, {Y: 4 * measure.Inch}}
	f := &diagram.Figure{Max: measure.Point{X: 11 * measure.Inch, Y: 13 * measure.Inch}, Marks: []diagram.Mark{{Area: &diagram.Area{Outline: outline, Edge: diagram.Cut}}}}
	l := &plating{room: measure.Point{X: 4 * measure.Inch, Y: 5 * measure.Inch}}
	parts := l.parts(Piece{"T1", f})
	if missing := unseenPoints(f, parts, l); missing != 0 {
		t.Errorf("%d points of the outline are on no plate", missing)
	}
	if missing := unseenPoints(f, parts[1:], l); missing == 0 {
		t.Error("a plate that is missing is not noticed")
	}
}

// unseenPoints is how many of some points along a figure's outline no page shows.
func unseenPoints(f *diagram.Figure, pages []Plate, l *plating) int {
	outline := f.Marks[0].Area.Outline
	missing := 0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		for n := range measure.NM(100) {
			at := measure.Point{X: p.X + (q.X-p.X)*n/100, Y: p.Y + (q.Y-p.Y)*n/100}
			if !shownAnywhere(at, f, pages, l) {
				missing++
			}
		}
	}
	return missing
}

// shownAnywhere says whether a point of a figure lies on a line of one of its pages; which window a page is of is found by
// trying all.
func shownAnywhere(at measure.Point, f *diagram.Figure, list []Plate, l *plating) bool {
	for row := range measure.NM(8) {
		for column := range measure.NM(8) {
			low := measure.Point{X: column * (l.room.X - overlap), Y: row * (l.room.Y - overlap)}
			w := window{low, measure.Point{X: low.X + l.room.X, Y: low.Y + l.room.Y}}
			if !w.holds(at) {
				continue
			}
			marks := w.clipped(f)
			for _, s := range list {
				if sameLines(s.Figure.Marks, marks) {
					return true
				}
			}
		}
	}
	return false
}

// sameLines says whether a page begins with the lines of a window.
func sameLines(page, lines []diagram.Mark) bool {
	if len(lines) == 0 || len(page) < len(lines) {
		return false
	}
	for i, m := range lines {
		if page[i].Line == nil || page[i].Line.Points[0] != m.Line.Points[0] || page[i].Line.Points[1] != m.Line.Points[1] {
			return false
		}
	}
	return true
}

const hugeLayout = "side 40\nfabric a #b5532a\nfabric b #204050\nblock W web wedges a b kites b\nblock F floating wedges a background b\ngrid\n W F\n F W\n"

// TestHugePiecesAreLeftOut and named, tiny ones are printed.
func TestHugePiecesAreLeftOut(t *testing.T) {
	if _, large := Plates(figuresOf(lay.Top(t, strings.Replace(hugeLayout, "40", "120", 1))), usualRoom, usualMost); len(large) == 0 || large[0].Plates <= usualMost.OfPiece {
		t.Errorf("left out are %v", large)
	}
	for _, text := range []string{
		strings.Replace(hugeLayout, "side 40", "side 1\nseam 1/16", 1), strings.Replace(hugeLayout, "side 40", "units cm\nside 3\nseam 0.1", 1),
	} {
		if plates, large := Plates(figuresOf(lay.Top(t, text)), usualRoom, usualMost); len(plates) == 0 || len(large) > 0 {
			t.Errorf("%d plates, left out are %v", len(plates), large)
		}
	}
}
