package diagram

import (
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// TestClothGoesThereAndBack: the place of a cloth that a place of the sheet shows is shown there, however the cloth is turned; a quarter turn
// clockwise takes its right to below.
func TestClothGoesThereAndBack(t *testing.T) {
	for _, turn := range []float64{0, 30, 90, -45, 200} {
		c := &Cloth{At: at(7, -3), Turn: turn}
		for _, v := range []measure.Vec{at(0, 0), at(5, 2), at(-4, 11)} {
			there := c.OnSheet(v)
			if back := c.OnCloth(there); math.Hypot(back.X-v.X, back.Y-v.Y) > 1e-9 || math.Abs(math.Hypot(there.X-7, there.Y+3)-math.Hypot(v.X, v.Y)) > 1e-9 {
				t.Errorf("turned by %g: %v goes to %v and back to %v", turn, v, there, back)
			}
		}
	}
	if got := (&Cloth{Turn: 90}).OnSheet(at(1, 0)); math.Abs(got.X) > 1e-9 || math.Abs(got.Y-1) > 1e-9 {
		t.Errorf("to the right goes to %v", got)
	}
}

// TestPanelsInRows: as many panels stand in a row as there is room for at 96 points and 14 between them, rows are filled alike, and there is one at the
// least.
func TestPanelsInRows(t *testing.T) {
	for _, c := range []struct {
		panels int
		width  float64
		want   int
	}{{3, 20, 1}, {3, 96, 1}, {3, 205.9, 1}, {3, 206, 2}, {5, 316, 3}, {4, 316, 2}, {7, 426, 4}, {8, 426, 4}, {9, 426, 3}, {1, 900, 1}, {2, 900, 2}} {
		f := &Figure{Panels: make([]Panel, c.panels)}
		if got := f.across(c.width); got != c.want {
			t.Errorf("%d panels in %g: %d, expected %d", c.panels, c.width, got, c.want)
		}
		for _, asked := range []int{1, 5} {
			if f.Across = asked; f.across(c.width) != asked {
				t.Errorf("%d were asked for", asked)
			}
		}
	}
}

// TestRepeatsFillOutlines: the repeats of a print that fill an outline are those that it reaches into, row by row, of a cloth of 10 by 4 whose
// repeat begins at (3, 1); where it ends with one there is none beyond. Turned by a quarter, the rows go down.
func TestRepeatsFillOutlines(t *testing.T) {
	c := &Cloth{At: at(3, 1), Size: at(10, 4)}
	for _, f := range []struct {
		outline []measure.Vec
		want    []measure.Vec
	}{
		{frameOf(3, 1, 10, 4), []measure.Vec{at(0, 0)}}, {frameOf(3.5, 1.5, 9, 3), []measure.Vec{at(0, 0)}}, {frameOf(3, 1, 10.1, 4), []measure.Vec{at(0, 0), at(10, 0)}}, {frameOf(3, 1, 10, 4.1), []measure.Vec{at(0, 0), at(0, 4)}},
		{frameOf(2.9, 0.9, 9, 2), []measure.Vec{at(-10, -4), at(0, -4), at(-10, 0), at(0, 0)}}, {[]measure.Vec{at(40, 3), at(24, 2), at(30, 30)}, grid(20, 0, 2, 8)},
	} {
		same(t, c.Repeats(f.outline), f.want)
	}
	c.Turn = 90 // the cloth's right is the sheet's below
	same(t, c.Repeats(frameOf(-4.5, 1.5, 7, 19)), []measure.Vec{at(0, 0), at(10, 0), at(0, 4), at(10, 4)})
}

// grid are repeats of 10 by 4, so many across and down.
func grid(x, y float64, across, down int) (list []measure.Vec) {
	for n := range across * down {
		list = append(list, at(x+10*float64(n%across), y+4*float64(n/across)))
	}
	return list
}

func same(t *testing.T, got, want []measure.Vec) {
	t.Helper()
	if !together(got, want) {
		t.Errorf("%v, expected %v", got, want)
	}
}

// TestLinesAreAsFullAsTheyMayBe: words are put into a line as long as it is no wider than it may be, also where it is just as wide; a word that is wider stands by
// itself.
func TestLinesAreAsFullAsTheyMayBe(t *testing.T) {
	l := NewLettering()
	wide := l.Width("Sew the", 8, false)
	for _, c := range []struct {
		width float64
		want  string
	}{{wide, "Sew the|two|halves"}, {math.Nextafter(wide, 0), "Sew|the two|halves"}, {l.Width("two halves", 8, false), "Sew the|two halves"}, {1, "Sew|the|two|halves"}, {999, "Sew the two halves"}} {
		if got := strings.Join(l.wrapped(" Sew the\ntwo  halves ", 8, c.width), "|"); got != c.want {
			t.Errorf("%g wide: %s, expected %s", c.width, got, c.want)
		}
	}
}

// TestPanelsAreAsHighAsAsked: panels that are higher than wide take the height that was asked for, with their words and the legend, and none less than 56
// points each; without a height, and where there is more than enough of it, 0.85 of their width.
func TestPanelsAreAsHighAsAsked(t *testing.T) {
	f := &Figure{}
	for i := range 4 {
		f.Marks = append(f.Marks, Mark{Area: &Area{Outline: boxed(0, 0, 1, 9), Edge: Cut}})
		f.Panels = append(f.Panels, Panel{Caption: "Sew", Note: strings.Repeat("Press. ", 9*i), First: i, Count: 1, Max: pt(1, 9)})
	}
	for _, legend := range []bool{true, false} {
		for _, across := range []int{2, 4} {
			f.Across = across
			place := func(points float64) *Sheet {
				return Place(f, Options{Width: 400 * measure.Inch / 72, Height: measure.NM(points / TrueScale), NoLegend: legend})
			}
			wide := (396 - 14*float64(across-1)) / float64(across)
			rows := 4 / float64(across)
			most := place(0)
			if want := most.Words + rows*0.85*wide; math.Abs(most.Height-want) > 1e-3 || math.Abs(place(want+9).Height-want) > 1e-3 {
				t.Errorf("%d across: %g high, at the most %g, expected %g", across, most.Height, place(want+9).Height, want)
			}
			for _, less := range []float64{1, 10, 0.85*wide - 57} {
				want := most.Height - less*rows
				if s := place(want); math.Abs(s.Height-want) > 1e-3 || !near(s.Words, most.Words) {
					t.Errorf("%d across: %g high, expected %g", across, s.Height, want)
				}
			}
			if s, want := place(100), most.Words+rows*56; math.Abs(s.Height-want) > 1e-3 {
				t.Errorf("%d across: %g high, expected %g at the least", across, s.Height, want)
			}
		}
	}
}

// TestMovedItems: an item at another place is as large as before, words and shapes alike, and the item itself stays where it is.
func TestMovedItems(t *testing.T) {
	i := Item{Label: &Label{Text: "A", At: measure.Vec{X: 1, Y: 2}, Size: 9}, Shape: &Shape{Points: []measure.Vec{{X: 0, Y: 0}, {X: 4, Y: 1}}}}
	m := i.moved(measure.Vec{X: 10, Y: -3})
	if m.Label.At != (measure.Vec{X: 11, Y: -1}) || m.Label.Text != "A" || m.Label.Size != 9 || !slices.Equal(m.Shape.Points, []measure.Vec{{X: 10, Y: -3}, {X: 14, Y: -2}}) {
		t.Errorf("moved: %+v, %+v", m.Label, m.Shape)
	}
	if i.Label.At != (measure.Vec{X: 1, Y: 2}) || !slices.Equal(i.Shape.Points, []measure.Vec{{X: 0, Y: 0}, {X: 4, Y: 1}}) {
		t.Errorf("it is no longer where it was: %+v, %+v", i.Label, i.Shape)
	}
}

// TestRowsAsWideAsTheSheet: a figure whose rows stand one by one has as many panels in each as where it is drawn whole: what a sheet of that
// width has room for within its edges.
func TestRowsAsWideAsTheSheet(t *testing.T) {
	for _, width := range []float64{96, 205.5, 206.5, 315.5, 316.5, 426.5} {
		f := &Figure{Panels: make([]Panel, 9)}
		if got, want := Rows(f, Options{Width: nanometres(width + 2*edge)})[0].Across, f.across(width); got != want {
			t.Errorf("%g wide: %d in a row, %d in the whole", width, got, want)
		}
	}
}
