package render

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/document"
)

// TestWordsFillLines: the words of a cell take as many lines as they do when they are written one behind another, also where they fill a
// line exactly, and where one is wider than its line.
func TestWordsFillLines(t *testing.T) {
	v := rand.New(rand.NewPCG(5, 2))
	exact := 0
	for range 3000 {
		f := flow{beside: float64(v.IntN(3))}
		width := float64(4 + v.IntN(12))
		lines, used := 1, -1.0 // of the line, -1 for nothing on it
		blank := 0.0
		for range 1 + v.IntN(8) {
			w := [2]float64{float64(1 + v.IntN(6)), float64(v.IntN(3))}
			f.words = append(f.words, w)
			switch {
			case used < 0:
				used = w[0]
			case used+blank+w[0] <= width-f.beside:
				used += blank + w[0]
			default:
				lines, used = lines+1, w[0]
			}
			if used == width-f.beside {
				exact++
			}
			blank = w[1]
		}
		if got := f.lines(width); got != lines {
			t.Fatalf("%v in %g: %d lines, expected %d", f, width, got, lines)
		}
	}
	if exact < 1000 {
		t.Errorf("only %d lines are full", exact)
	}
}

// TestHighRowsWeighMore: a row counts by the square of its lines, and a cell of several lines by a little.
func TestHighRowsWeighMore(t *testing.T) {
	one, three := flow{words: [][2]float64{{5, 0}}}, flow{words: [][2]float64{{5, 0}, {5, 0}, {5, 0}}}
	for want, cells := range map[int][][]flow{
		0: nil, 10000: {{one, one}}, 90001: {{one, three}}, 90002: {{three, three}}, 100001: {{one, three}, {one}}, 180003: {{three}, {three, three}},
	} {
		if got := linesIn(cells, []float64{5, 5}); got != want {
			t.Errorf("%v: %d, expected %d", cells, got, want)
		}
	}
}

func same(a, b []float64) bool {
	return slices.EqualFunc(a, b, func(x, y float64) bool { return math.Abs(x-y) < 1e-9 })
}

// TestColumnsShareTheRoom: small cases, reckoned by hand, of how columns share the width of a page.
func TestColumnsShareTheRoom(t *testing.T) {
	for _, c := range []struct {
		asked, whole, want []float64
	}{
		{[]float64{0, 0}, []float64{5, 5}, nil}, {[]float64{-1, 0}, []float64{5, 5}, nil}, {[]float64{1, 3}, []float64{10, 30}, []float64{1, 3}},
		{[]float64{1, 3, 0, 0}, []float64{10, 30, 20, 40}, []float64{1, 3, 2, 4}}, {[]float64{0.5, 0}, []float64{10, 20}, []float64{0.5, 1}},
		{[]float64{-1, 2}, []float64{10, 20}, []float64{1, 2}}, {[]float64{2e6, 1e6}, []float64{1, 1}, []float64{1e6, 1e6}},
		{[]float64{1, 0}, []float64{0, 200}, []float64{1, 100}}, {[]float64{1, 0}, []float64{0, 20}, []float64{1, 20}},
	} {
		columns := make([]document.Column, len(c.asked))
		for i, w := range c.asked {
			columns[i].Width = w
		}
		if got := weights(columns, c.whole); !same(got, c.want) || (got == nil) != (c.want == nil) {
			t.Errorf("weights of %v and %v: %v, expected %v", c.asked, c.whole, got, c.want)
		}
	}
	lines := func([]float64) int { return 1 }
	for _, c := range []struct {
		least, whole, weight []float64
		room                 float64
		want                 []float64
	}{
		{[]float64{10, 10}, nil, []float64{1, 3}, 100, []float64{25, 75}}, {[]float64{40, 10}, nil, []float64{1, 3}, 100, []float64{40, 60}},
		{[]float64{50, 50}, nil, []float64{1, 1}, 100, []float64{50, 50}}, {[]float64{49.5, 50.5}, nil, []float64{1, 1}, 100, []float64{49.5, 50.5}},
		{[]float64{30, 10, 10}, nil, []float64{1, 1, 2}, 80, []float64{30, 17.5, 32.5}}, // of 40 above their least 10 are given up, each by its part
		{[]float64{1, 1}, []float64{30, 50}, nil, 100, []float64{40, 60}}, {[]float64{1, 1}, []float64{30, 50}, nil, 200, []float64{46, 66}},
		{[]float64{50, 50}, []float64{50, 50}, nil, 100, []float64{50, 50}}, {[]float64{10, 10}, []float64{20, 100}, nil, 65, []float64{14.5, 50.5}},
	} {
		if got := shared(c.least, c.whole, c.weight, c.room, lines); !same(got, c.want) {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// TestShortColumnsAreGivenTheirs: of the ways to give columns all that they ask for, one after the other, that with the fewest lines is
// taken, also where it leaves the others no more than their least.
func TestShortColumnsAreGivenTheirs(t *testing.T) {
	for _, c := range []struct{ room, first, second float64 }{{30, 20, 10}, {30.5, 20, 10.5}, {29.5, 10.975, 18.525}} {
		narrow := math.Inf(1)
		got := eased([]float64{10, 10}, []float64{20, 30}, c.room, func(widths []float64) int {
			narrow = min(narrow, widths[0], widths[1])
			if widths[0] == 20 {
				return 1
			}
			return 2
		})
		want := []float64{c.first, c.second}
		if c.room < 30 { // there is no room for all that the first one asks for
			want = []float64{10 + 10*(c.room-20)/30, 10 + 20*(c.room-20)/30}
		}
		if !same(got, want) || narrow < 10 {
			t.Errorf("room of %g: %v, expected %v; the narrowest is %g", c.room, got, want, narrow)
		}
	}
}

// TestWidthIsMoved: width goes to a column by 6, 18 or 36 points where that takes lines away, as long as the other keeps its least, and
// after so many tries no more.
func TestWidthIsMoved(t *testing.T) {
	for _, c := range []struct{ least, needs, first, second float64 }{{10, 66, 54, 66}, {54, 66, 54, 66}, {54.1, 66, 60, 60}, {10, 78, 42, 78}, {10, 79, 24, 96}, {10, 96, 24, 96}, {10, 97, 60, 60}, {24, 96, 24, 96}} {
		got := evened([]float64{60, 60}, []float64{c.least, 10}, func(widths []float64) int {
			if widths[1] >= c.needs {
				return 1
			}
			return 2
		}, 2)
		if !same(got, []float64{c.first, c.second}) {
			t.Errorf("%+v: %v", c, got)
		}
	}
	tries := 0
	evened([]float64{60, 60}, []float64{10, 10}, func([]float64) int { tries++; return -tries }, 0)
	if tries != maxWeighed {
		t.Errorf("%d ways are tried, expected %d", tries, maxWeighed)
	}
}

// TestLongRowsMayBeParted: a row of fewer than six lines stays whole, one of more but for its first and its last two lines.
func TestLongRowsMayBeParted(t *testing.T) {
	for lines, want := range map[int]string{2: "b", 5: "bbbb", 6: "bkkkb", 7: "bkkkkb"} {
		got := ""
		for i := 1; i < lines; i++ {
			got += map[tie]string{bound: "b", kept: "k"}[lineTie(i, lines)]
		}
		if got != want {
			t.Errorf("%d lines: %s, expected %s", lines, got, want)
		}
	}
}

// TestOneCellGoesAcross: a single cell goes across where there is more than one column.
func TestOneCellGoesAcross(t *testing.T) {
	for got, want := range map[string]bool{"1 of 1": false, "1 of 2": true, "2 of 2": false, "0 of 2": false} {
		var cells, columns int
		if _, err := fmt.Sscanf(got, "%d of %d", &cells, &columns); err != nil {
			t.Fatal(err)
		}
		if across(document.Row{Cells: make([]document.Cell, cells)}, columns) != want {
			t.Errorf("%s: across is %v", got, !want)
		}
	}
}
