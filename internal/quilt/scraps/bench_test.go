package scraps_test

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/layout"
)

// king is a king-size layout of 24 by 24 web blocks: a pool of 40 fabrics for the wedges and
// one of 12 for the kites, dealt as the option says.
func king(by string) string {
	var b strings.Builder
	b.WriteString("strip 3 1/2\n")
	darks, lights := "scraps darks", "scraps lights"
	for i := range 40 {
		fmt.Fprintf(&b, "fabric d%d #%02x%02x60\n", i, 16+2*i, 90-2*i)
		darks += fmt.Sprintf(" d%d", i)
	}
	for i := range 12 {
		fmt.Fprintf(&b, "fabric l%d #f0%02xe0\n", i, 180+5*i)
		lights += fmt.Sprintf(" l%d", i)
	}
	fmt.Fprintf(&b, "%s by %s\n%s by %s\nblock W web wedges darks kites lights\ngrid\n W\nrepeat across 24 down 24\n", darks, by, lights, by)
	return b.String()
}

// BenchmarkKing deals a king-size quilt, its places as package quilt makes them.
func BenchmarkKing(b *testing.B) {
	for _, by := range []string{"piece", "block", "web"} {
		b.Run(by, func(b *testing.B) {
			places := placesOf(b, read(b, king(by)))
			b.ReportMetric(float64(len(places)), "places")
			for b.Loop() {
				scraps.Deal(nil, places, 0)
			}
		})
	}
}

// BenchmarkKingLaid lays the same quilt out, dealing and all.
func BenchmarkKingLaid(b *testing.B) {
	d := read(b, king("piece"))
	for b.Loop() {
		quilt.Lay(d)
	}
}

// read is a layout that must be valid.
func read(t testing.TB, text string) *layout.Design {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatalf("%+v in\n%s", faults, text)
	}
	return d
}
