package report

import (
	"strings"
	"testing"

	"eighthturn/internal/blocks"
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
