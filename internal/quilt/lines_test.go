package quilt

import (
	"math"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/layout"
)

// laid is a layout laid out, which must be valid.
func laid(t testing.TB, text string) *Top {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatal(faults)
	}
	return Lay(d)
}

// TestLinesOfPlaces: two places of a quilt have the number of their row in common if they lie in one row, and so for columns and both
// diagonals; no line has another's number.
func TestLinesOfPlaces(t *testing.T) {
	for columns := 1; columns <= 4; columns++ {
		for rows := 1; rows <= 4; rows++ {
			l := &builder{Top: &Top{Columns: columns, Rows: rows}}
			type place struct{ x, y int32 }
			var places []place
			for y := range int32(2*rows + 1) {
				for x := range int32(2*columns + 1) {
					places = append(places, place{x, y})
				}
			}
			kindOf := map[int32]int{}
			for _, p := range places {
				lines := l.lines(p.x, p.y)
				for kind, n := range lines[:4] {
					if before, known := kindOf[n]; n < 1 || known && before != kind {
						t.Fatalf("%d by %d blocks: %v has the lines %v, one of them of another kind", columns, rows, p, lines)
					}
					kindOf[n] = kind
				}
				for _, q := range places {
					other := l.lines(q.x, q.y)
					for kind, same := range [4]bool{p.y == q.y, p.x == q.x, p.x-p.y == q.x-q.y, p.x+p.y == q.x+q.y} {
						if (lines[kind] == other[kind]) != same {
							t.Fatalf("%d by %d blocks: %v has the lines %v, %v has %v", columns, rows, p, lines, q, other)
						}
					}
				}
			}
			if last := l.lines(int32(2*columns), int32(2*rows)); last[4] != 0 {
				t.Errorf("a place without a web lies in %v", last)
			}
		}
	}
}

// TestHalvesOfPlaces: a block's corners lie at even halves and its middle at odd ones, whatever lies between the blocks.
func TestHalvesOfPlaces(t *testing.T) {
	for _, sash := range []measure.NM{0, measure.Inch, 3 * measure.Inch} {
		l := &builder{Top: &Top{Columns: 3, Rows: 3, SideFinished: 8 * measure.Inch, StepFinished: 8*measure.Inch + sash, FirstCell: measure.Point{X: 5 * measure.Inch, Y: 2 * measure.Inch}}}
		for cell := range 9 {
			r, x, y := l.CellRect(cell), int32(2*(cell%3)), int32(2*(cell/3))
			for _, c := range []struct {
				at   measure.Point
				x, y int32
			}{{r.Min, x, y}, {r.Max, x + 2, y + 2}, {measure.Point{X: r.Max.X, Y: r.Min.Y}, x + 2, y}} {
				if gotX, gotY := l.halves(c.at); gotX != c.x || gotY != c.y {
					t.Errorf("sashes of %d: %v of cell %d lies at %d, %d, not %d, %d", sash, c.at, cell, gotX, gotY, c.x, c.y)
				}
			}
		}
	}
}

// TestGatheredApart: every web, and every block that gathers nothing, is a line of its own, beyond all rows, columns and diagonals.
func TestGatheredApart(t *testing.T) {
	top := laid(t, "side 6\nfabric a #123\nfabric b #456\nfabric c #dde\nscraps s a b c\nblock W web wedges s kites s\nblock P plain piece s\ngrid\n W W P\n W W P\n P P P\n")
	d := &dealer{builder: &builder{Top: top}, centers: map[measure.Point]int32{}}
	type group struct {
		at   measure.Point
		cell int32
	}
	number, of := map[group]int32{}, map[int32]group{}
	for i := range top.Faces {
		p := &top.Patches[top.Faces[i].Patch]
		g := group{p.Outline[0], -1}
		if top.Roles[p.Role].Name != "wedges" && top.Roles[p.Role].Name != "kites" {
			g = group{cell: p.Cell}
		}
		n := d.gathered(int32(i))
		if before, known := number[g]; known && before != n {
			t.Errorf("%v has the numbers %d and %d", g, before, n)
		}
		if before, known := of[n]; known && before != g {
			t.Errorf("%v and %v have the number %d", before, g, n)
		}
		number[g], of[n] = n, g
		for x := range int32(2*top.Columns + 1) {
			for y := range int32(2*top.Rows + 1) {
				if lines := d.lines(x, y); lines != (scraps.Lines{lines[0], lines[1], lines[2], lines[3]}) || n <= max(lines[0], lines[1], lines[2], lines[3]) {
					t.Fatalf("%v has the number %d, which is a line's: %v", g, n, lines)
				}
			}
		}
	}
	if len(of) != 5+9 {
		t.Errorf("%d webs, stars and blocks have numbers", len(of))
	}
}

// TestFromTheMiddle: parts are looked for from the middle of the grid outward, of two cells as far away the first.
func TestFromTheMiddle(t *testing.T) {
	for columns := 1; columns <= 5; columns++ {
		for rows := 1; rows <= 5; rows++ {
			top := &Top{Columns: columns, Rows: rows, Cells: make([]Cell, columns*rows)}
			away := func(cell int) float64 {
				return math.Hypot(float64(cell%columns)+0.5-float64(columns)/2, float64(cell/columns)+0.5-float64(rows)/2)
			}
			list := top.fromTheMiddle()
			for i := 1; i < len(list); i++ {
				if a, b := away(list[i-1]), away(list[i]); a > b+1e-9 || a > b-1e-9 && list[i-1] > list[i] {
					t.Fatalf("%d by %d cells are looked through in the order %v", columns, rows, list)
				}
			}
			if slices.Sort(list); len(list) != columns*rows || len(slices.Compact(list)) != columns*rows {
				t.Errorf("%d by %d cells: %d are looked through", columns, rows, len(list))
			}
		}
	}
}
