package fit

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// TestChangesByLine: edits of any text, told by the lines that they are in, make the text that the edits make; edits of one line are one change, and
// no line without an edit is in one.
func TestChangesByLine(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 17))
	for range 3000 {
		end := []string{"\n", "\r\n", "\r"}[rng.IntN(3)]
		lines := make([]string, 2+rng.IntN(6))
		var starts []int
		var b strings.Builder
		for i := range lines {
			lines[i] = strings.Repeat("word ", 1+rng.IntN(3)) + fmt.Sprint("line", i)
			starts = append(starts, b.Len())
			if b.WriteString(lines[i]); i < len(lines)-1 || rng.IntN(2) == 0 {
				b.WriteString(end)
			}
		}
		text := b.String()
		f := &fitting{whole: text, text: text, lines: layout.NewSource(text)}
		if got := f.newline(); got != end && strings.Contains(text, end) {
			t.Fatalf("lines of %q end with %q", text, got)
		}
		var e edits
		var want [][2]int
		touch := func(first, last int) {
			if n := len(want); n > 0 && want[n-1][1] >= first {
				want[n-1][1] = max(want[n-1][1], last)
			} else {
				want = append(want, [2]int{first, last})
			}
		}
		for i := 0; i < len(lines); i++ {
			at := starts[i]
			switch rng.IntN(6) {
			case 3: // in front of the line
				if span := f.wholeLines(layout.Span{Start: at, End: at}); i+1 < len(lines) && span != (layout.Span{Start: at, End: starts[i+1]}) {
					t.Fatalf("in front of line %d of %q: %v", i, text, span)
				}
				e = append(e, edit{layout.Span{Start: at, End: at}, "first "})
				touch(i, i)
			case 0: // a word, and perhaps another one of the same line
				e = append(e, edit{layout.Span{Start: at, End: at + 4}, "other"})
				if rng.IntN(2) == 0 {
					e = append(e, edit{layout.Span{Start: at + len(lines[i]), End: at + len(lines[i])}, end + "more"})
				}
				touch(i, i)
			case 1: // the line
				span := f.wholeLines(layout.Span{Start: at + rng.IntN(3), End: at + len(lines[i]) - rng.IntN(3)})
				stop := len(text)
				if i+1 < len(lines) {
					stop = starts[i+1]
				}
				if span != (layout.Span{Start: at, End: stop}) || f.wholeLines(span) != span && stop < len(text) {
					t.Fatalf("line %d of %q is %v, and again %v", i, text, span, f.wholeLines(span))
				}
				if i == len(lines)-1 && !strings.HasSuffix(text, end) {
					continue // what is before it would keep its end
				}
				e = append(e, edit{span, ""})
				touch(i, i)
			case 2: // from one line into the next
				if i+1 < len(lines) {
					if rng.IntN(2) == 0 {
						e = append(e, edit{layout.Span{Start: at, End: at + 4}, "other"})
					}
					e = append(e, edit{layout.Span{Start: at + 5, End: starts[i+1] + 1 + rng.IntN(4)}, "joined"})
					touch(i, i+1)
					i++
				}
			}
		}
		rng.Shuffle(len(e), func(i, j int) {
			if e[i].Start != e[j].Start {
				e[i], e[j] = e[j], e[i]
			}
		})
		changes := f.changes(e)
		if got := written(text, changes); got != f.rewritten(e) {
			t.Fatalf("%q with %v: %q, want %q", text, e, got, f.rewritten(e))
		}
		var got [][2]int
		for _, c := range changes {
			got = append(got, [2]int{c.First - 1, c.Last - 1})
		}
		if !slices.Equal(got, want) {
			t.Fatalf("%q with %v: changes in lines %v, want %v", text, e, got, want)
		}
	}
}

// TestGridsOfAllSizes: a grid of so many blocks across and down goes on as it was written, in as few rows and columns as come back, and only the line of
// its repeat is another where the rows that are written do.
func TestGridsOfAllSizes(t *testing.T) {
	head := "side 4\nfabric a navy\nfabric b white\nblock P plain piece a\nblock Long plain piece b\nblock Ö plain piece a\n"
	for _, c := range []struct {
		rows   string
		repeat string
	}{
		{"  P\n", ""}, {"  P Long\n  Long P\n", ""}, {"  P Long\n  Long P\n", "repeat across 2 down 3\n"}, {"  P\n", "repeat across 4\n"}, {"  P Long Ö\n", "repeat down 2\n"}, {"  P P P\n  Ö Ö Ö\n", ""},
	} {
		text := head + "grid\n" + c.rows + c.repeat
		f := fittingOf(t, text, Options{})
		var written [][]string
		for _, row := range strings.Split(strings.TrimSuffix(c.rows, "\n"), "\n") {
			written = append(written, strings.Fields(row))
		}
		for columns := 1; columns < 8; columns++ {
			for rows := 1; rows < 8; rows++ {
				if !f.grows.Axes[across].Allows(columns) || !f.grows.Axes[down].Allows(rows) {
					continue
				}
				got := f.rewritten(f.gridEdits([2]int{columns, rows}))
				d, _, _ := layout.Read(got)
				if d == nil || d.Columns != columns || d.Rows != rows {
					t.Fatalf("%d by %d:\n%s", columns, rows, got)
				}
				for i, cell := range d.Cells {
					x, y := i%columns, i/columns
					if want := written[y%len(written)][x%len(written[0])]; d.Blocks[cell.Block].Label != want {
						t.Errorf("%d by %d: %s stands at %d, %d in\n%s", columns, rows, d.Blocks[cell.Block].Label, x, y, got)
					}
				}
				as := columns%len(written[0]) == 0 && rows%len(written) == 0
				if kept := strings.Contains(got, "grid\n"+c.rows); as != kept && !(kept && columns*rows == 1) {
					t.Errorf("%d by %d: the rows are kept: %v in\n%s", columns, rows, kept, got)
				}
				if once := as && columns == len(written[0]) && rows == len(written); once != !strings.Contains(got, "repeat") && as {
					t.Errorf("%d by %d: it is repeated or is not in\n%s", columns, rows, got)
				}
				if strings.Contains(got, " 1\n") || strings.HasSuffix(got, " 1") || strings.Contains(got, "across 1 ") {
					t.Errorf("%d by %d: it is laid once, and so it says in\n%s", columns, rows, got)
				}
			}
		}
	}
}

// TestTablesStandInColumns: cells of a table begin below one another, set in by two, and no line ends with a blank.
func TestTablesStandInColumns(t *testing.T) {
	f := &fitting{text: "side 4\r\n"}
	cells := [][]string{{"a", "größer", "b"}, {"long", "c", "網網"}, {"x", "y"}}
	if got, want := f.table(cells, "  "), "\r\n  a     größer  b\r\n  long  c       網網\r\n  x     y"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestLengthsAreWrittenExactly: what is written for a length reads as just that length, on a mark of the ruler or between two.
func TestLengthsAreWrittenExactly(t *testing.T) {
	rng := rand.New(rand.NewPCG(19, 23))
	between := 0
	for units, head := range map[measure.System]string{measure.Inches: "", measure.Centimetres: "units cm\n"} {
		f := fittingOf(t, head+"side 9\n"+plainRest, Options{})
		for n := range 400 {
			nm := 1 + measure.NM(rng.Int64N(int64(200*measure.Inch)))
			if n%2 == 0 {
				nm = nm / (measure.Inch / 64) * (measure.Inch / 64)
			}
			text := f.written(nm)
			between += strings.Count(text, " mm")
			if r, err := measure.Read(text); err != nil || r.In(units).Cmp(measure.Of(nm)) != 0 {
				t.Fatalf("%d is written %q, which is %v: %v", nm, text, r, err)
			}
		}
	}
	if got := fittingOf(t, "side 9\n"+plainRest, Options{}).written(4*measure.Inch + 1); got != "101.600001 mm" || between < 100 || between > 700 {
		t.Errorf("4 in and a nanometer are written %q; %d lengths in millimeters", got, between)
	}
}

// TestLinesOfEverySort: whatever ends the lines of a layout, its sizes are written out alike, and the same changes of the same lines are
// suggested.
func TestLinesOfEverySort(t *testing.T) {
	text := "strip 4\n" + ringRest + "on-hand wedges a 3\nsize named across 5 border 2\nsize last strip 5 border none\n"
	plain := func(s string) string {
		return strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u2028", "\n", "\u2029", "\n", "\u0085", "\n").Replace(s)
	}
	o := Options{Wanted: inches(30, 40)}
	want, err := Fit(text, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, end := range []string{"\r\n", "\r", "\u2028", "\u2029", "\u0085", "mixed"} {
		ended := strings.ReplaceAll(text, "\n", end)
		if end == "mixed" {
			ended = strings.Replace(strings.ReplaceAll(text, "\n", "\r\n"), "\r\n", "\n", 2)
		}
		for _, name := range []string{"named", "last"} {
			if got := plain(WrittenOut(ended, name, nil)); got != WrittenOut(text, name, nil) {
				t.Errorf("lines that end with %q: the size %s is\n%s", end, name, got)
			}
		}
		got, err := Fit(ended, o)
		if err != nil || len(got.Suggestions) != len(want.Suggestions) {
			t.Fatalf("lines that end with %q: %v", end, err)
		}
		for i, s := range got.Suggestions {
			if plain(s.Text) != want.Suggestions[i].Text || len(s.Changes) != len(want.Suggestions[i].Changes) {
				t.Fatalf("lines that end with %q:\n%s", end, plain(s.Text))
			}
			if written(ended, s.Changes) != s.Text {
				t.Fatalf("lines that end with %q: the changes of suggestion %d do not make its text", end, i+1)
			}
			for n, c := range s.Changes {
				w := want.Suggestions[i].Changes[n]
				if c.First != w.First || c.Last != w.Last || plain(c.Was) != w.Was || plain(c.Write) != w.Write {
					t.Errorf("lines that end with %q: %+v, expected %+v", end, c, w)
				}
			}
		}
	}
}
