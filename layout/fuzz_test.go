package layout_test

import (
	"maps"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// FuzzRead reads any bytes: without a panic, with every place inside the file, twice with the
// same result; and what is drawn is laid out and tidied as the laws say. What it finds goes
// into testdata/fuzz/FuzzRead and is read by every run of the tests from then on.
//
//	nice -n 19 go test ./layout -run '^$' -fuzz '^FuzzRead$' -fuzztime 10m -parallel 1
func FuzzRead(f *testing.F) {
	for _, c := range allCases(f) {
		f.Add([]byte(c.text()))
	}
	heavy := heaviest(300)
	for _, name := range slices.Sorted(maps.Keys(heavy)) {
		f.Add([]byte(heavy[name]))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		text := string(data)
		sound(t, text)
		if first, again := told(text), told(text); !slices.Equal(first, again) {
			t.Errorf("told %q, then %q", first, again)
		}
		design, _, _ := layout.ReadWith(text, everyPhoto)
		tidy, _ := layout.Tidy(text)
		switch {
		case design == nil && tidy != text:
			t.Errorf("a faulty layout is changed to\n%s", tidy)
		case design == nil:
		case len(design.Cells) > 2000:
			if again, _ := layout.Tidy(tidy); again != tidy {
				t.Error("tidied again it changes")
			}
		default:
			quilt.Lay(design)
			if seen, _, _ := layout.Read(text); seen == nil {
				return // it wants photos, and drawings cannot be compared
			}
			for _, wrong := range untidy(text, tidy) {
				t.Errorf("%s\n%s", wrong, tidy)
			}
		}
	})
}
