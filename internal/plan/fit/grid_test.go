package fit

import (
	"slices"
	"strings"
	"testing"
)

// lettersOf are letters as numbers.
func lettersOf(letters string) []int {
	var ids []int
	for _, r := range letters {
		ids = append(ids, int(r))
	}
	return ids
}

func TestTile(t *testing.T) {
	for letters, want := range map[string]int{"a": 1, "aaaa": 1, "abab": 2, "ababa": 5, "abcabc": 3, "aab": 3} {
		if got := tile(lettersOf(letters)); got != want {
			t.Errorf("the tile of %s is %d long, want %d", letters, got, want)
		}
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
