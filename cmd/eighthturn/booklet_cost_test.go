package main

import (
	"testing"

	"eighthturn/internal/quilt"
)

// A pattern that takes long is said to, for pages and, larger, for a browser; a short one and a handout are not.
func TestCostNote(t *testing.T) {
	large := &quilt.Top{Faces: make([]quilt.Face, 120_000), Cells: []quilt.Cell{{Label: "W"}}}
	for _, c := range []struct {
		o    printedPattern
		top  *quilt.Top
		want string
	}{
		{printedPattern{output: "a.pdf"}, large, "note: a pattern of 120000 pieces and 1 labeled block takes about 3 seconds, and up to 9 MB\n"},
		{printedPattern{output: "a.html"}, large, "note: a pattern of 120000 pieces and 1 labeled block takes about 3 seconds, and up to 27 MB\n"},
		{printedPattern{handout: true}, large, ""},
		{printedPattern{}, &quilt.Top{Faces: make([]quilt.Face, 5000)}, ""},
	} {
		if got := c.o.costNote(c.top); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
