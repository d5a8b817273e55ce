package quilt_test

import (
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// TestOneWayPrints: pieces in which a print stands on its head are counted where the layout says that it has a head. Wedges come head up
// and head down by turns, half of them each; squares all stand upright; the two triangles of a square stand opposite ways; and of a motif
// all point one way. Counted by hand.
func TestOneWayPrints(t *testing.T) {
	const text = "side 6\nfabric awning stripes navy 3/4 #c9503c 1/2 white 1/4 one-way\nfabric sand #e8d9b0\nmotif rose awning across 3/8 down 1\n" +
		"block R ring wedges awning corners sand\nblock M ring wedges rose corners sand\nblock P plain piece awning\nblock H halves pieces awning\ngrid\n  R P\n  M P\n"
	for _, c := range []struct{ from, to, told string }{
		{"", "", `the print of "awning" stands on its head in 4 of 18 pieces: 4 wedges`},
		{"  R P\n  M P\n", "  R R R\n", `the print of "awning" stands on its head in 12 of 24 pieces: 12 wedges`},
		{"  R P\n  M P\n", "  M P\n", ""},
		{"  R P\n  M P\n", "  H:nw R\n", `the print of "awning" stands on its head in 5 of 10 pieces: 1 half-square triangle and 4 wedges`},
		{"  R P\n  M P\n", "  H:nw P\n", `the print of "awning" stands on its head in 1 of 3 pieces: 1 half-square triangle`},
		{" one-way", "", ""},
	} {
		if told := toldOf(t, strings.Replace(text, c.from, c.to, 1)); told != c.told {
			t.Errorf("%q: told %q, not %q", c.to, told, c.told)
		}
	}
}

// toldOf is what is warned of when a layout is laid out.
func toldOf(t *testing.T, text string) (told string) {
	t.Helper()
	design, _, faults := layout.Read(text)
	if design == nil {
		t.Fatal(faults)
	}
	for _, w := range quilt.Lay(design).Warnings {
		told += w.Message
	}
	return told
}
