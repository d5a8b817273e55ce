package report

import (
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/layout"
)

// The line that words shows for a kind is one that the language takes, without fault or warning but those of size.
func TestExampleOfEveryKind(t *testing.T) {
	for _, k := range blocks.Kinds() {
		line := strings.ReplaceAll("block A "+k.Name+" "+exampleRoles(k), "\u00a0", " ")
		row := "  A A A A\n"
		text := "side 6\nfabric navy #1f3350\nfabric cream #f3ead8\nfabric rust #b5532a\n" + line + "\ngrid\n" + strings.Repeat(row, 4) + "border 1 navy\nborder 1 cream\nborder 1 rust\n"
		if _, _, faults := layout.Read(text); len(faults) > 0 {
			t.Errorf("%q: %v", line, faults[0].Message)
		}
	}
}

func TestHowMany(t *testing.T) {
	for want, counts := range map[string][]int{
		"one fabric": {1}, "one or two fabrics": {1, 2}, "one, two, four or eight fabrics": {1, 2, 4, 8}, "one fabric or more": nil, "two or 12 fabrics": {2, 12},
	} {
		if got := howMany(counts); got != want {
			t.Errorf("%v: %q, want %q", counts, got, want)
		}
	}
}

// TestWordsSayWhatKindsHave: each role of a kind that is for the whole block stands once, with the roles for single sides that take its place; how
// many fabrics, strip sets, and what may be left out are said where it is so; statements of which there is one say that.
func TestWordsSayWhatKindsHave(t *testing.T) {
	sided := 0
	for _, k := range blocks.Kinds() {
		s := kindSection(k)
		items := itemsOf(s)
		n := 0
		for i := range k.Roles {
			r := &k.Roles[i]
			if r.Sides != 0 {
				continue
			}
			if n == len(items) {
				t.Fatalf("%s has %d roles, and only %d are said", k.Name, n+1, len(items))
			}
			said := items[n]
			n++
			var sides []string
			for j := range k.Roles {
				if k.Roles[j].Sides != 0 && k.Roles[j].Shown() == r.Name {
					sides = append(sides, k.Roles[j].Name)
				}
			}
			sided += len(sides)
			if !strings.HasPrefix(said, r.Letter+" "+r.Name+": ") || strings.Contains(said, "strip sets too") != r.Banded || strings.Contains(said, "may be omitted") != r.Outer ||
				strings.Contains(said, "; for one side alone: "+strings.Join(sides, ", ")) != (len(sides) > 0) || strings.Contains(said, "one side alone") != (len(sides) > 0) {
				t.Errorf("%s, %s with the sides %q: %q", k.Name, r.Name, sides, said)
			}
		}
		if n != len(items) {
			t.Errorf("%s: %d roles are said, it has %d", k.Name, len(items), n)
		}
	}
	if sided == 0 {
		t.Error("no kind has a role for one side")
	}
	list := layout.Statements()
	for i, section := range Words(Vocabulary{Statements: list}).Sections {
		if said := allText(document.Document{Sections: []document.Section{section}}); strings.Contains(said, "once in a layout") != list[i].Once || !strings.Contains(said, list[i].Summary) {
			t.Errorf("%s: %s", list[i].Word, said)
		}
	}
}
