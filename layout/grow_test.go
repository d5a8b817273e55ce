package layout

import (
	"slices"
	"strings"
	"testing"
)

// grown is a row of letters grown by a way to a length.
func grown(letters string, w Way, count int) string {
	a := axisOf(letters)
	a.Way = w
	var b strings.Builder
	for _, p := range a.Places(count) {
		b.WriteByte(letters[p])
	}
	return b.String()
}

func axisOf(letters string) Axis {
	return newAxis(len(letters), len(letters), func(i int) string { return letters[i : i+1] })
}

func TestGrowing(t *testing.T) {
	for _, c := range []struct {
		letters string
		first   Way
		least   int
		count   int
		want    string
	}{
		{"aaaaa", Way{0, 5, 1}, 1, 8, "aaaaaaaa"},
		{"abbbba", Way{1, 5, 1}, 3, 8, "abbbbbba"},
		{"abbbba", Way{1, 5, 1}, 3, 3, "aba"},
		{"ababa", Way{0, 5, 2}, 3, 9, "ababababa"},
		{"abab", Way{0, 4, 2}, 2, 6, "ababab"},
		{"01232345", Way{2, 6, 2}, 6, 10, "0123232345"},
		{"0110220", Way{0, 7, 6}, 7, 13, "0110220110220"},
		{"abc", Way{0, 3, 3}, 3, 9, "abcabcabc"},
		{"a", Way{0, 1, 1}, 1, 4, "aaaa"},
	} {
		a := axisOf(c.letters)
		a.Way = a.ways(false)[0]
		if a.Way != c.first || a.Least() != c.least {
			t.Errorf("%s grows by %+v, at the least %d; want %+v, %d", c.letters, a.Way, a.Least(), c.first, c.least)
		}
		if got := grown(c.letters, c.first, c.count); got != c.want || !a.Allows(c.count) {
			t.Errorf("%s grows to %s, want %s", c.letters, got, c.want)
		}
	}
}

// Whatever grows: the frame stays, a stretch keeps its period, and what has the layout's own length is the layout.
func TestGrowingLaws(t *testing.T) {
	for _, letters := range []string{"a", "ab", "aba", "abba", "abcabc", "aabbaabbaa", "xababay", "xyzzyx", "abcdefgh", "aaaaaaaab"} {
		a := axisOf(letters)
		for _, w := range a.ways(false) {
			a.Way = w
			if got := grown(letters, w, len(letters)); got != letters {
				t.Errorf("%s by %+v of its own length is %s", letters, w, got)
			}
			for count := 1; count < 40; count++ {
				if !a.Allows(count) {
					continue
				}
				got := grown(letters, w, count)
				if !strings.HasPrefix(got, letters[:w.Start]) || !strings.HasSuffix(got, letters[w.End:]) {
					t.Errorf("%s by %+v: the frame of %s is another", letters, w, got)
				}
				inner := axisOf(got[w.Start : count-len(letters)+w.End])
				if !slices.Equal(inner.IDs[w.Period:], inner.IDs[:len(inner.IDs)-w.Period]) {
					t.Errorf("%s by %+v: %s has lost its period", letters, w, got)
				}
			}
		}
	}
}

// A table of webs grows by whole pairs, so that web centres stay web centres.
func TestGrowingWithTable(t *testing.T) {
	a := axisOf("abbbba")
	list := a.ways(true)
	if !slices.Contains(list, Way{1, 5, 2}) {
		t.Errorf("with a table it grows by %+v", list)
	}
	for _, w := range list {
		if w.Period%2 != 0 {
			t.Errorf("with a table it grows by %d", w.Period)
		}
	}
	if list := axisOf("ab"); len(list.ways(true)) != 0 {
		t.Error("two blocks with a table grow, but have no corner between two periods")
	}
}
