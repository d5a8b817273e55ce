package samples_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/samples/starters"
)

// Every starter is read without fault or warning, is tidy, lies flat and is explained line by line.
func TestStarters(t *testing.T) {
	files, err := filepath.Glob("starters/*.quilt")
	if err != nil || len(files) != len(starters.All()) || len(files) < 6 {
		t.Fatalf("%d files, %d starters, %v", len(files), len(starters.All()), err)
	}
	kinds := map[string]bool{}
	for _, s := range starters.All() {
		for _, wrong := range starterFaults(s) {
			t.Errorf("%s: %s", s.Name, wrong)
		}
		if design, _, _ := layout.Read(s.Text); design != nil {
			for _, b := range design.Blocks {
				kinds[b.Kind.Name] = true
			}
			if off := uncovered(quilt.Lay(design)); off > 1e-9 || off < -1e-9 {
				t.Errorf("%s leaves %g of its top uncovered", s.Name, off)
			}
		}
	}
	for _, k := range blocks.Kinds() {
		if !kinds[k.Name] {
			t.Errorf("no starter has a %s block", k.Name)
		}
	}
}

// starterFaults is what is amiss with a starter.
func starterFaults(s starters.Starter) []string {
	var list []string
	_, _, faults := layout.Read(s.Text)
	for _, f := range faults {
		list = append(list, f.Severity.String()+": "+f.Message)
	}
	if tidy, _ := layout.Tidy(s.Text); tidy != s.Text {
		list = append(list, "it is not tidy")
	}
	if s.About == "" || len(s.About) > 76 || strings.HasSuffix(s.About, ".") {
		list = append(list, "what it makes is not said in a line: "+s.About)
	}
	for i, line := range strings.Split(strings.TrimSuffix(s.Text, "\n"), "\n") {
		if len(line) > 120 {
			list = append(list, "a line is too long: "+line)
		}
		if line != "" && !strings.HasPrefix(line, " ") && !explained(strings.Split(s.Text, "\n")[:i+1]) {
			list = append(list, "nothing explains "+line)
		}
	}
	return list
}

// explained says whether the last line is a comment, has one, or follows one, maybe behind statements of its own sort.
func explained(lines []string) bool {
	last := lines[len(lines)-1]
	word, _, _ := strings.Cut(last, " ")
	if strings.HasPrefix(last, "#") || strings.Contains(last, "  # ") {
		return true
	}
	for _, before := range slices.Backward(lines[:len(lines)-1]) {
		if strings.HasPrefix(before, "# ") {
			return true
		}
		if !strings.HasPrefix(before, word+" ") || strings.Contains(before, "  # ") {
			return false
		}
	}
	return false
}

func TestStartersCatches(t *testing.T) {
	honest := starters.All()[0]
	if len(starterFaults(honest)) > 0 {
		t.Fatal("the first starter is not right to begin with")
	}
	for what, change := range map[string][2]string{
		"a fault":                  {"strip  ", "stirp  "},
		"a warning":                {"\nfabric", "\nfabric  spare   #123456\nfabric"},
		"columns out of line":      {"fabric  point", "fabric point"},
		"a line without a comment": {"title  \"My floating stars\"  # the quilt's name, for pictures and the printed pattern", "title  \"My floating stars\""},
		"a long line":              {"# The blocks", "# " + strings.Repeat("The blocks ", 12)},
	} {
		spoilt := honest
		spoilt.Text = strings.Replace(spoilt.Text, change[0], change[1], 1)
		if spoilt.Text == honest.Text {
			t.Fatalf("%s: nothing was changed", what)
		}
		if len(starterFaults(spoilt)) == 0 {
			t.Errorf("%s goes unseen", what)
		}
	}
}
