package render

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/document"
)

// TestShortTextsStayWhole: in a table that is too wide for its page, no column is narrower than its longest word, all of them take the
// room and no more, and there are no more lines than where every column gives up the same part. Columns of short texts are given theirs.
func TestShortTextsStayWhole(t *testing.T) {
	for _, c := range []struct {
		least, whole []float64
		room         float64
		shortWhole   int // columns that have all that they ask for
	}{
		{[]float64{20, 40, 50, 30, 20}, []float64{20, 90, 300, 60, 25}, 380, 4},
		{[]float64{20, 20}, []float64{100, 100}, 150, 0},
		{[]float64{50, 50, 50}, []float64{60, 400, 400}, 400, 0},
	} {
		row := make([]flow, len(c.whole)) // as many words as the widest needs
		for i := range row {
			for n := math.Floor(c.whole[i] / c.least[i]); n > 0; n-- {
				row[i].words = append(row[i].words, [2]float64{c.whole[i] / math.Floor(c.whole[i]/c.least[i])})
			}
		}
		cells := [][]flow{row, row}
		lines := func(widths []float64) int { return linesIn(cells, widths) }
		got := eased(c.least, c.whole, c.room, lines)
		same, whole := make([]float64, len(got)), 0
		for i := range got {
			same[i] = c.least[i] + (c.whole[i]-c.least[i])*(c.room-sum(c.least))/(sum(c.whole)-sum(c.least))
			if got[i] < c.least[i]-1e-6 {
				t.Errorf("%v: column %d is %.1f wide", c.least, i, got[i])
			}
			if got[i] >= c.whole[i]-1e-6 {
				whole++
			}
		}
		if d := sum(got) - c.room; d > 1e-6 || d < -1e-6 {
			t.Errorf("%v: %.1f wide, not %.1f", got, sum(got), c.room)
		}
		if lines(got) > lines(same) {
			t.Errorf("%v: %d lines, and %d where all give up the same part", got, lines(got), lines(same))
		}
		if whole < c.shortWhole {
			t.Errorf("%v of %v: %d columns have all that they ask for, expected %d", got, c.whole, whole, c.shortWhole)
		}
	}
}

// TestColumnsGiveWay: a column that has more than its texts need gives width to one whose rows come lower by it, and no column is
// narrower than its longest word.
func TestColumnsGiveWay(t *testing.T) {
	of := func(words ...float64) (f flow) {
		for _, w := range words {
			f.words = append(f.words, [2]float64{w, 4})
		}
		return f
	}
	cells := [][]flow{{of(20, 20, 20), of(20), of(20)}, {of(20, 20, 20), of(30), of(20)}}
	least := []float64{20, 30, 20}
	was := []float64{30, 60, 60}
	lines := func(widths []float64) int { return linesIn(cells, widths) }
	got := evened([]float64{30, 60, 60}, least, lines, lines(was))
	if math.Abs(sum(got)-sum(was)) > 1e-6 {
		t.Errorf("%v: %g wide, not %g", got, sum(got), sum(was))
	}
	for i := range got {
		if got[i] < least[i] {
			t.Errorf("%v: column %d is narrower than %g", got, i, least[i])
		}
	}
	if n := cells[0][0].lines(got[0]); n != 1 {
		t.Errorf("%v: the first column has %d lines", got, n)
	}
}

// TestNumbersStayWithTheirWords: no line ends between the word Figure or Step and its number.
func TestNumbersStayWithTheirWords(t *testing.T) {
	for before, after := range map[string]string{"See Figure ": "7.", "as in Figure ": "12, and", "Step ": "3, half", "about 5 3/8 ": "in square"} {
		if !holds(before, after) {
			t.Errorf("%q and %q are parted", before, after)
		}
	}
	for before, after := range map[string]string{"See the Figure ": "below", "row ": "3", "Figures ": "and"} {
		if holds(before, after) {
			t.Errorf("%q and %q are not parted", before, after)
		}
	}
}

// TestWhatAnnouncesStays: no page ends with a paragraph that announces what follows, wherever the page's end comes to lie.
func TestWhatAnnouncesStays(t *testing.T) {
	announces := 0
	for lines := range 60 {
		var blocks []document.Block
		for n := range lines {
			blocks = append(blocks, document.Paragraph{Text: document.Plain(fmt.Sprint("Line ", n, "."))})
		}
		blocks = append(blocks, document.Paragraph{Text: document.Plain("Join the strips:")}, document.List{Items: []document.Item{{Text: document.Plain("three for the sides")}, {Text: document.Plain("two for the top")}}})
		_, pages := laid(t, document.Document{Title: "A quilt", Sections: []document.Section{{Title: "Cutting", Blocks: blocks}}}, Options{})
		for _, p := range pages {
			for i, s := range p.placed {
				if strings.Contains(shownOn(s.slice), "Join") {
					announces++
					if i == len(p.placed)-1 {
						t.Errorf("%d lines before it: a page ends with what announces a list", lines)
					}
				}
			}
		}
	}
	if announces < 60 {
		t.Errorf("found on %d pages", announces)
	}
}

// shownOn is the words of a slice's marks.
func shownOn(s slice) string {
	var words []string
	for _, m := range s.marks {
		if v, ok := m.(text); ok {
			words = append(words, v.shown)
		}
	}
	return strings.Join(words, " ")
}
