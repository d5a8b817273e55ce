package render

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/readpdf"
)

// TestHeadsAreCutOff: a running head that has room stands whole; else as many of its letters as leave room for the dots, without signs and
// blanks before them, and nothing where not even these fit.
func TestHeadsAreCutOff(t *testing.T) {
	b := newBuilder(Options{}.look())
	st := typed(9, false, grey())
	for _, said := range []string{"Quiet harbor", "Tide, and wind; more", "a", "Ab赤い and more letters", strings.Repeat("long ", 60), strings.Repeat("m", 249), strings.Repeat("m", 250)} {
		whole := b.width(b.piece(said, st).shown, st)
		dots := b.width("…", st)
		for width := 0.5; width < min(whole+30, 400); width += 0.7 {
			l := b.cut(said, width, st)
			shown, sum := "", 0.0
			for _, p := range l.pieces {
				if p.meant != "" {
					shown += p.meant
				} else {
					shown += p.shown
				}
				sum += b.width(p.shown, st)
			}
			head, cut := strings.CutSuffix(shown, "…")
			switch {
			case math.Abs(sum-l.width) > 1e-6 || sum > width+1e-6:
				t.Fatalf("%.20q in %.1f: %q is %.2f wide, said to be %.2f", said, width, shown, sum, l.width)
			case (whole <= width && len(said) < 250) != (shown == said):
				t.Fatalf("%.20q of %.2f in %.2f: %q", said, whole, width, shown)
			case shown == said || shown == "" && width < dots+b.width(said[:1], st):
			case !cut || !strings.HasPrefix(said, head) || head != strings.TrimRight(head, " .,;:"):
				t.Fatalf("%.20q in %.1f: %q", said, width, shown)
			default: // one letter more would be too many, but for what is trimmed
				next := strings.TrimLeft(said[len(head):], " .,;:")
				more := said[:len(said)-len(next)] + string([]rune(next)[:min(1, len([]rune(next)))])
				if next != "" && b.width(b.piece(more, st).shown, st)+dots < width-0.01 {
					t.Fatalf("%.20q in %.1f: %q, but %q has room", said, width, shown, more)
				}
			}
		}
	}
	exact := b.width("Quiet", st)
	if l := b.cut("Quiet", exact, st); len(l.pieces) != 1 || l.pieces[0].shown != "Quiet" {
		t.Error("what fits exactly is cut off")
	}
}

// TestTrueSizeFitsOrIsRefused: a figure of true size is refused where the page is narrower or lower, and told of with both sizes; of others
// it is told where they are smaller than was asked for.
func TestTrueSizeFitsOrIsRefused(t *testing.T) {
	figure := func(true_ bool, least measure.NM) (*sheet, *shape) {
		s := shapeOf(document.Figure{Of: diagram.Figure{Title: "Plate", Description: "a plate", TrueSize: true_}, Least: least})
		return &sheet{&diagram.Sheet{Width: 144, Height: 72}, &s, 1}, &s
	}
	for _, c := range []struct {
		w, h  float64
		true_ bool
		least measure.NM
		want  string
	}{
		{144, 72, true, 0, ""}, {143.9905, 71.9905, true, 0, ""}, {143.989, 72, true, 0, `the figure "Plate" is 2 by 1 in at true size, but the page has room for 2 by 1 in`},
		{144, 71.989, true, 0, `the figure "Plate" is 2 by 1 in at true size, but the page has room for 2 by 1 in`}, {108, 72, false, 0, ""},
		{108, 72, true, 0, `the figure "Plate" is 2 by 1 in at true size, but the page has room for 1.5 by 1 in`},
		{144, 72, true, 3 * measure.Inch, ""}, {144, 72, false, 2 * measure.Inch, ""}, {144, 72, false, 2*measure.Inch + 3300, ""},
		{144, 72, false, 2*measure.Inch + 4200, `the illustration "a plate" is 2 in wide, but at least 2 in was asked for`}, {144, 72, false, 5 * measure.Inch / 2, `the illustration "a plate" is 2 in wide, but at least 2.5 in was asked for`},
	} {
		b := newBuilder(Options{}.look())
		placed, s := figure(c.true_, c.least)
		fits, said := b.fits(placed, s, rect{w: c.w, h: c.h}), ""
		if b.err != nil {
			said = b.err.Error()
		}
		if fits != (b.err == nil) {
			t.Errorf("%+v: it fits: %v, %v", c, fits, b.err)
		}
		for _, w := range b.warnings {
			said += w.Message
			if w.Kind != TooSmall {
				t.Errorf("%+v: %+v", c, w)
			}
		}
		if said != c.want {
			t.Errorf("%+v: %s", c, said)
		}
	}
}

// TestSheetsAreFolded: the pages of folded sheets, laid into each other and stapled, read on from front to back. The outermost sheet of eight
// pages has 8 and 1 on its front, 2 and 7 on its back (common practice).
func TestSheetsAreFolded(t *testing.T) {
	want := map[int]string{4: "4 1, 2 3", 8: "8 1, 2 7, 6 3, 4 5", 12: "12 1, 2 11, 10 3, 4 9, 8 5, 6 7"}
	for pages, sides := range want {
		laid := make([][2]int, pages/2)
		for i := range pages {
			side, right := folded(i, pages)
			if at := map[bool]int{true: 1}[right]; laid[side][at] == 0 {
				laid[side][at] = i + 1
			}
		}
		var list []string
		for _, l := range laid {
			list = append(list, fmt.Sprintf("%d %d", l[0], l[1]))
		}
		if got := strings.Join(list, ", "); got != sides {
			t.Errorf("%d pages: %s, expected %s", pages, got, sides)
		}
	}
	for name, c := range map[string]struct {
		paper Paper
		wide  float64 // millimeters
	}{"A5": {A5(), 297}, "half-letter": {HalfLetter(), 11 * 25.4}, "4 points less": {Paper{Width: A4().Height/2 - 2*measure.Inch/72 - 1000, Height: 9 * measure.Inch}, 297 - 4*25.4/72}, "less than 4 points": {Paper{Width: A4().Height/2 - 2*measure.Inch/72 + 1000, Height: 9 * measure.Inch}, 297}} {
		if got := spread(Options{Paper: c.paper}.look()) / 72 * 25.4; math.Abs(got-c.wide) > 0.005 {
			t.Errorf("%s: a sheet is %.3f mm wide, expected %.3f", name, got, c.wide)
		}
	}
}

// TestNoColumnIsNothing: what is set further in keeps a point of width.
func TestNoColumnIsNothing(t *testing.T) {
	for want, got := range map[column]column{{14, 53}: column{10, 60}.inset(4, 3), {14, 1}: column{10, 7}.inset(4, 3), {15, 1}: column{10, 6}.inset(5, 3)} {
		if got != want {
			t.Errorf("%v, expected %v", got, want)
		}
	}
}

// TestStackedTablesAreNoTables: a table that is set row by row is read aloud as paragraphs.
func TestStackedTablesAreNoTables(t *testing.T) {
	for columns, want := range map[int]string{2: "/S /Table", 24: "/S /Div"} {
		printed, err := PDF(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{crowded(columns)}}}}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		text, err := readpdf.Text(printed.File)
		if err != nil || !strings.Contains(text, want) || strings.Contains(text, "/S /Table") != (columns == 2) {
			t.Errorf("%d columns: no %s, %v", columns, want, err)
		}
	}
}
