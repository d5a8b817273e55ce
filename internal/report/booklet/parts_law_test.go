package booklet

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// Pictures of the layout in parts, and what has room on a page.

// gridOf is a book of a top of so many places across and down, whose blocks of a side stand so far apart; some places are empty.
func gridOf(across, down int, side, step measure.NM, empty func(cell int) bool) *patternBuilder {
	top := &quilt.Top{Columns: across, Rows: down, SideFinished: side, StepFinished: step, Cells: make([]quilt.Cell, across*down)}
	for i := range top.Cells {
		if !empty(i) {
			top.Cells[i].Label, top.Cells[i].Count = "A", 1
		}
	}
	return &patternBuilder{Reports: Reports{Top: top, Sewing: &sewing.Plan{}}}
}

// TestPartsOfALayout: a layout is shown whole where it fits; else each part has room with a little of what is beside it, no fewer parts would
// do, they are as even as they come, every block is in one of them, and none is empty.
func TestPartsOfALayout(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 8))
	whole, divided := 0, 0
	for n := range 500 {
		across, down := 1+r.IntN(12), 1+r.IntN(12)
		side := measure.NM(1+r.IntN(12)) * measure.Inch
		step := side + measure.NM(r.IntN(3))*measure.Inch/2
		b := gridOf(across, down, side, step, func(int) bool { return r.IntN(3) == 0 })
		room, block := measure.Vec{X: 20 + 400*r.Float64(), Y: 20 + 400*r.Float64()}, 20+30*r.Float64()
		size := [2]measure.NM{measure.NM(across) * step, measure.NM(down) * step}
		points := func(nm float64) float64 { return nm / float64(side) * block }
		parts := b.partsOf(room, block, size, [2]measure.NM{step, step})
		if fits := points(float64(size[0])) <= room.X && points(float64(size[1])) <= room.Y; fits {
			if whole++; parts != nil {
				t.Fatalf("layout %d fits and has the parts %v", n, parts)
			}
			continue
		}
		divided++
		seen := make([]int, across*down)
		starts := [2][]int{}
		for _, w := range parts {
			some := false
			for row := w.FirstRow; row < w.EndRow; row++ {
				for column := w.FirstColumn; column < w.EndColumn; column++ {
					seen[row*across+column]++
					some = some || !b.Top.Empty(row*across+column)
				}
			}
			if !some {
				t.Fatalf("layout %d: part %v is empty", n, w)
			}
			starts[0], starts[1] = append(starts[0], w.FirstColumn, w.EndColumn), append(starts[1], w.FirstRow, w.EndRow)
		}
		for cell, times := range seen {
			if times > 1 || times == 0 && !b.Top.Empty(cell) {
				t.Fatalf("layout %d: place %d is in %d parts of %v", n, cell, times, parts)
			}
		}
		for way, count := range [2]int{across, down} {
			have, most := [2]float64{room.X, room.Y}[way], 1
			for points(float64(step)*(float64(most+1)+cutOff)) <= have {
				most++
			}
			for _, at := range starts[way] { // as even as they come: the n-th of k begins at n/k of all
				k := int(math.Ceil(float64(count) / float64(most)))
				even := false
				for i := range k + 1 {
					even = even || at == i*count/k
				}
				if !even {
					t.Fatalf("layout %d: of %d places parts of up to %d begin at %d", n, count, most, at)
				}
			}
		}
	}
	if whole < 50 || divided < 200 {
		t.Errorf("%d layouts are shown whole, %d are divided", whole, divided)
	}
}

// TestLabelsInParts: a block or column of tumblers has its label in a part where the first of its places is that lies in the part.
func TestLabelsInParts(t *testing.T) {
	const across, down = 4, 5
	b := gridOf(across, down, measure.Inch, measure.Inch, func(int) bool { return false })
	for first := range down {
		for end := first + 1; end <= down; end++ {
			w := report.Window{FirstRow: first, EndRow: end, FirstColumn: 1, EndColumn: 3}
			for cell := range across * down {
				for cells := 1; cell/across+cells <= down; cells++ {
					want, shown := 0, false
					for n := range cells {
						at := cell + n*across
						if row, column := at/across, at%across; !shown && row >= first && row < end && column >= 1 && column < 3 {
							want, shown = at, true
						}
					}
					if got, ok := b.shownAt(&sewing.Placed{Cell: cell, Cells: cells}, w); ok != shown || got != want {
						t.Fatalf("of %d places from %d in %v: %d, %v, expected %d, %v", cells, cell, w, got, ok, want, shown)
					}
				}
			}
		}
	}
}

// TestFramesOfParts: a part is shown with three twentieths of a block's step around it, as far as the top goes, and what lies outside is not
// drawn. The arrow of a block points up, right, down or left, and stands clear of the label.
func TestFramesOfParts(t *testing.T) {
	top := lay.Top(t, "side 4\n"+sixFabrics+"block A plain piece navy\ngrid\n A A A A\n A A A A\n A A A A\nborder 2 rust\nborder 1/4 teal\n")
	b := newBook(Study(top, cutting.Options{}), Options{})
	at := func(x, y float64) measure.Point {
		return measure.Point{X: measure.NM(math.Round(x * float64(measure.Inch))), Y: measure.NM(math.Round(y * float64(measure.Inch)))}
	}
	origin := top.CellRect(0).Min
	for _, c := range []struct {
		w         report.Window
		low, high measure.Point
	}{
		{report.Window{FirstRow: 0, EndRow: 3, FirstColumn: 0, EndColumn: 4}, at(-0.6, -0.6), at(16.6, 12.6)},
		{report.Window{FirstRow: 1, EndRow: 2, FirstColumn: 1, EndColumn: 3}, at(3.4, 3.4), at(12.6, 8.6)},
		{report.Window{FirstRow: 2, EndRow: 3, FirstColumn: 3, EndColumn: 4}, at(11.4, 7.4), at(16.6, 12.6)},
	} {
		got := b.frame(c.w)
		if got.Min != origin.Add(c.low) || got.Max != origin.Add(c.high) {
			t.Errorf("%v is shown in %v", c.w, got)
		}
		for _, l := range framed(document.Drawing{Layers: []document.Layer{{Paths: [][]measure.Point{box(got.Min, got.Max), box(at(900, 0), at(901, 1))}}, {Paths: [][]measure.Point{box(at(900, 0), at(901, 1))}}}}, got).Layers {
			if len(l.Paths) != 1 || l.Paths[0][0] != got.Min {
				t.Errorf("%v: drawn are %v", c.w, l.Paths)
			}
		}
	}
	narrow := *b
	edge := *top
	edge.Outer.Min, edge.Outer.Max = origin.Add(at(-0.5, -0.25)), origin.Add(at(16.25, 12.5))
	narrow.Top = &edge
	if got := narrow.frame(report.Window{EndRow: 3, EndColumn: 4}); got.Min != edge.Outer.Min || got.Max != edge.Outer.Max {
		t.Errorf("beyond the top is shown %v of %v", got, edge.Outer)
	}
	turned := &sewing.Block{Steps: make([]sewing.Step, 1)}
	for turns, way := range []measure.Point{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
		marks := b.cellMarks(turned, "A", 6, turns)
		middle := origin.Add(at(4*2+2, 4*1+2))
		ends := marks[1].Line.Points
		if words := marks[0].Words; words.At != middle || words.Text != "A" || words.Room != at(0.56*4, 0).X {
			t.Errorf("the label is %+v", words)
		}
		from, to := at(float64(way.X)*1.2, float64(way.Y)*1.2), at(float64(way.X)*1.88, float64(way.Y)*1.88)
		if !slices.Equal(ends, []measure.Point{middle.Add(from), middle.Add(to)}) {
			t.Errorf("turned %d times: an arrow from %v to %v around %v", turns, ends[0], ends[1], middle)
		}
	}
	if marks := b.cellMarks(&sewing.Block{}, "A", 6, 0); len(marks) != 1 {
		t.Errorf("a single piece has %d marks", len(marks))
	}
}

// TestRoomOnPages: what has room on a page of each size. Letter leaves 7.1 in by 9.6 in between its margins of 0.7 in, A4 174 mm by 261 mm,
// half-letter 4 1/2 in by 7 1/2 in, A5 124 mm by 186 mm; plates leave 1/8 in beside them, and 15/8 in for three lines of caption, 31/8 in for
// five in large print.
func TestRoomOnPages(t *testing.T) {
	const mm = measure.Millimetre
	for _, c := range []struct {
		paper         render.Paper
		large         bool
		across, down  measure.NM
		facts         int
		step          measure.NM
		captions      float64 // points
		usual, zoomed float64
	}{
		{render.Letter(), false, 71 * measure.Inch / 10, 96 * measure.Inch / 10, 160, 0, 30, 1, 1},
		{render.A4(), false, 174 * mm, 261 * mm, 160, 0, 30, 1, 1},
		{render.HalfLetter(), false, 9 * measure.Inch / 2, 15 * measure.Inch / 2, 70, 9 * measure.Inch / 2, 30, 1, 1},
		{render.A5(), false, 124 * mm, 186 * mm, 70, 124 * mm, 30, 1, 1},
		{render.Letter(), true, 71 * measure.Inch / 10, 96 * measure.Inch / 10, 70, 71 * measure.Inch / 10, 36, 1, 2.25},
		{render.HalfLetter(), true, 9 * measure.Inch / 2, 15 * measure.Inch / 2, 70, 9 * measure.Inch / 2, 36, 1, 2.25},
		{render.Paper{}, false, 71 * measure.Inch / 10, 96 * measure.Inch / 10, 160, 0, 30, 1, 1},
	} {
		b := &patternBuilder{Options: Options{Paper: c.paper, Large: c.large}}
		spare := 15 * measure.Inch / 8
		if c.large {
			spare = 31 * measure.Inch / 8
		}
		if got, want := b.plateRoom(), (measure.Point{X: c.across - measure.Inch/8, Y: c.down - spare}); got != want || b.wholeWidth() != c.across {
			t.Errorf("%s, large %v: %v for plates, expected %v; %d wide", c.paper.Name, c.large, got, want, b.wholeWidth())
		}
		if b.factsRoom() != c.facts || b.stepWidth() != c.step || b.zoom() != c.zoomed {
			t.Errorf("%s, large %v: %d letters, steps %d wide, words %v times as large", c.paper.Name, c.large, b.factsRoom(), b.stepWidth(), b.zoom())
		}
		inch := float64(measure.Inch)
		want := measure.Vec{X: float64(c.across)/inch*72/c.zoomed - 20, Y: (float64(c.down)/inch*72-72)/c.zoomed - c.captions - 20}
		if got := b.mapRoom(); math.Abs(got.X-want.X) > 1e-6 || math.Abs(got.Y-want.Y) > 1e-6 {
			t.Errorf("%s, large %v: %v for maps, expected %v", c.paper.Name, c.large, got, want)
		}
	}
}

// TestColumnsOfTumblersAreNotDivided: where some columns are tumblers from end to end, the picture of the rows is divided across alone, however
// many rows there are; without tumblers it is divided down too.
func TestColumnsOfTumblersAreNotDivided(t *testing.T) {
	for column, want := range map[string]bool{"T": false, "P": true} {
		row := " W W W W W W W W W W W W W W W W W " + column + "\n"
		text := "side 12\nfabric navy #1f3350\nfabric cream #f4ead7\nblock W web wedges navy kites cream\nblock P plain piece navy\nblock T tumblers pieces cream navy line 15\ngrid\n" + strings.Repeat(row, 19)
		parts := newBook(study(t, text, cutting.Options{}), Options{Paper: render.HalfLetter()}).rowParts()
		down := false
		for _, w := range parts {
			down = down || w.FirstRow > 0
		}
		if len(parts) < 2 || down != want {
			t.Errorf("with a last column of %s: %d parts, divided down: %v", column, len(parts), down)
		}
	}
}

// TestColoringPageHasItsLimit: a top of too many pieces and strips in all has no coloring page.
func TestColoringPageHasItsLimit(t *testing.T) {
	b := &patternBuilder{Reports: Reports{Top: &quilt.Top{Patches: make([]quilt.Patch, maxToColour-1), StripSeams: make([]quilt.Seam, 2)}}}
	if b.colouringPart(); len(b.parts) > 0 {
		t.Errorf("%d pieces and strips have a coloring page", maxToColour+1)
	}
}
