package fit

import (
	"slices"
	"strings"
	"testing"
)

// grown is a row of letters grown by a way to a length.
func grown(letters string, w way, count int) string {
	a := axisOf(letters)
	a.way = w
	var b strings.Builder
	for _, p := range a.places(count) {
		b.WriteByte(letters[p])
	}
	return b.String()
}

func axisOf(letters string) axis {
	return newAxis(len(letters), len(letters), false, func(i int) string { return letters[i : i+1] })
}

func TestGrowing(t *testing.T) {
	for _, c := range []struct {
		letters string
		first   way
		least   int
		count   int
		want    string
	}{
		{"aaaaa", way{0, 5, 1}, 1, 8, "aaaaaaaa"},
		{"abbbba", way{1, 5, 1}, 3, 8, "abbbbbba"},
		{"abbbba", way{1, 5, 1}, 3, 3, "aba"},
		{"ababa", way{0, 5, 2}, 3, 9, "ababababa"},
		{"abab", way{0, 4, 2}, 2, 6, "ababab"},
		{"01232345", way{2, 6, 2}, 6, 10, "0123232345"},
		{"0110220", way{0, 7, 6}, 7, 13, "0110220110220"},
		{"abc", way{0, 3, 3}, 3, 9, "abcabcabc"},
		{"a", way{0, 1, 1}, 1, 4, "aaaa"},
	} {
		a := axisOf(c.letters)
		a.way = a.ways(false)[0]
		if a.way != c.first || a.least() != c.least {
			t.Errorf("%s grows by %+v, at the least %d; want %+v, %d", c.letters, a.way, a.least(), c.first, c.least)
		}
		if got := grown(c.letters, c.first, c.count); got != c.want || !a.allows(c.count) {
			t.Errorf("%s grows to %s, want %s", c.letters, got, c.want)
		}
	}
}

// Whatever grows: the frame stays, a stretch keeps its period, and what has the layout's own length is the layout.
func TestGrowingLaws(t *testing.T) {
	for _, letters := range []string{"a", "ab", "aba", "abba", "abcabc", "aabbaabbaa", "xababay", "xyzzyx", "abcdefgh", "aaaaaaaab"} {
		a := axisOf(letters)
		for _, w := range a.ways(false) {
			a.way = w
			if got := grown(letters, w, len(letters)); got != letters {
				t.Errorf("%s by %+v of its own length is %s", letters, w, got)
			}
			for count := 1; count < 40; count++ {
				if !a.allows(count) {
					continue
				}
				got := grown(letters, w, count)
				if !strings.HasPrefix(got, letters[:w.start]) || !strings.HasSuffix(got, letters[w.end:]) {
					t.Errorf("%s by %+v: the frame of %s is another", letters, w, got)
				}
				inner := axisOf(got[w.start : count-len(letters)+w.end])
				if !periodic(inner.ids, w.period) {
					t.Errorf("%s by %+v: %s has lost its period", letters, w, got)
				}
			}
		}
	}
}

func TestTile(t *testing.T) {
	for letters, want := range map[string]int{"a": 1, "aaaa": 1, "abab": 2, "ababa": 5, "abcabc": 3, "aab": 3} {
		if got := tile(axisOf(letters).ids); got != want {
			t.Errorf("the tile of %s is %d long, want %d", letters, got, want)
		}
	}
}

// A table of webs grows by whole pairs, so that web centres stay web centres.
func TestGrowingWithTable(t *testing.T) {
	a := axisOf("abbbba")
	list := a.ways(true)
	if !slices.Contains(list, way{1, 5, 2}) {
		t.Errorf("with a table it grows by %+v", list)
	}
	for _, w := range list {
		if w.period%2 != 0 {
			t.Errorf("with a table it grows by %d", w.period)
		}
	}
	if list := axisOf("ab"); len(list.ways(true)) != 0 {
		t.Error("two blocks with a table grow, but have no corner between two periods")
	}
}

// What the table says of a web grows with the blocks beside it.
func TestTableGrows(t *testing.T) {
	r, err := Fit(sample(t, "tide"), Options{Wanted: inches(60, 90), From: 4 * 25_400_000, To: 4 * 25_400_000})
	if err != nil {
		t.Fatal(err)
	}
	s := r.Suggestions[0]
	i := slices.IndexFunc(s.Changes, func(c Change) bool { return strings.HasPrefix(c.Was, "webs") })
	if i < 0 {
		t.Fatalf("of %d by %d blocks the table stays", s.Columns, s.Rows)
	}
	old, rows := strings.Split(s.Changes[i].Was, "\n"), strings.Split(s.Changes[i].Write, "\n")
	if len(rows) != s.Rows {
		t.Errorf("the table has %d rows for %d rows of blocks", len(rows)-1, s.Rows)
	}
	for y := 1; y < len(rows); y++ {
		if n := len(strings.Fields(rows[y])); n != (s.Columns-1+y%2)/2 {
			t.Errorf("row %d has %d webs", y, n)
		}
	}
	if got, want := strings.Fields(rows[1])[0], strings.Fields(old[1])[0]; got != want {
		t.Errorf("the first web is %s, was %s", got, want)
	}
}
