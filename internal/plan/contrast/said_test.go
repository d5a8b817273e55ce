package contrast

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"
)

// Judges: what quilters say.

// saying is one row of the table of what a quilter would say.
type saying struct {
	file, figure  string
	number        int // of that sort, from 1
	said, why     string
	cameOut, note string
}

// sayings reads the table.
func sayings(t *testing.T) []saying {
	t.Helper()
	file, err := os.Open("../../../testdata/values/said.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	reader.FieldsPerRecord = -1
	reader.TrimLeadingSpace = true
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []saying
	for _, row := range rows {
		name, number, _ := strings.Cut(row[1], " ")
		n, _ := strconv.Atoi(number)
		s := saying{file: row[0], figure: name, number: max(1, n), said: row[2], why: row[3]}
		if len(row) > 5 {
			s.cameOut, s.note = row[4], row[5]
		}
		list = append(list, s)
	}
	return list
}

// short is a verdict in the table's words.
func short(v Verdict) string {
	switch v {
	case OutlineOnly:
		return "outline"
	case FromAfarOnly:
		return "afar"
	case RunsOn:
		return "runs on"
	case Faint: // the sayings know no more than sent back
		return "lost"
	}
	return string(v)
}

// TestWhatAQuilterSays holds every verdict against the table, whose sayings were written
// down before any layout was run. Where a verdict came out otherwise the table says so with
// the reason, and a verdict that changes either way fails.
func TestWhatAQuilterSays(t *testing.T) {
	reports := map[string]*Report{}
	list := sayings(t)
	for _, s := range list {
		if s.cameOut == s.said {
			t.Errorf("%s, %s %d came out as was said: take the exception out", s.file, s.figure, s.number)
		}
		if reports[s.file] == nil {
			reports[s.file] = Study(read(t, s.file), Options{})
		}
		n := 0
		found := false
		for _, f := range reports[s.file].Figures {
			if string(f.Sort) != s.figure {
				continue
			}
			if n++; n != s.number {
				continue
			}
			found = true
			want := s.said
			if s.cameOut != "" {
				want = s.cameOut
			}
			if short(f.Verdict) != want {
				t.Errorf("%s, %s %d: %s, expected %s (%s)\n%+v\n%+v", s.file, s.figure, s.number, f.Verdict, want, s.why, f.Outline, f.Mass)
			}
			if testing.Verbose() {
				mass := -1.0
				if f.Mass != nil {
					mass = f.Mass.Score
				}
				t.Logf("%-26s %-12s %d said %-8s is %-8s outline %3.0f (E %.2f P %.2f) mass %3.0f", s.file, s.figure, s.number, s.said, short(f.Verdict), f.Outline.Score, f.Outline.Edge, f.Outline.Polarity, mass)
			}
		}
		if !found {
			t.Errorf("%s has no %s %d", s.file, s.figure, s.number)
		}
	}
	if layouts, err := os.ReadDir("../../../testdata/values/layouts"); err != nil || len(reports) != len(layouts) || len(list) < len(layouts) {
		t.Errorf("%d sayings about %d of %d layouts: %v", len(list), len(reports), len(layouts), err)
	}
}
