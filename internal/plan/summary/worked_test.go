package summary

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/layout"
)

// worked are layouts with something of every sort that a summary tells.
func worked() []struct{ name, text string } {
	return []struct{ name, text string }{
		{"all edgings", "title \"All of it\"\nstrip 4\nbacking sand\nfabric cream #f4ead7 \"crackle\"\nfabric navy #1f3350\nfabric rust #b5532a\nfabric sand #d8c9a7\nfabric idle #333333\nstrip-set shore rust 2 navy rest\nblock R ring wedges shore reversed shore corners cream\nblock Q ring wedges navy corners cream\nblock P plain piece sand edge rust\n" +
			"grid\n  R Q P .\n  P R Q P\nsash 1 cream posts navy around\nborder 1 1/2 rust\nborder 4 navy corners cream\nbinding 2 1/4 navy\non-hand wedges shore 12\non-hand wedges reversed shore 3\non-hand corners cream 2\non-hand wedges sand 5\ncolorway dusk navy #334455 rust #777777\ncolorway dawn idle #ffffff\nsize throw across 8 down 4\nsize wide strip 5\n"},
		{"in centimeters", "units cm\nside 16 cm\nseam 0.75 cm\nfabric a #f4ead7\nfabric b #1f3350\nfabric c #b5532a\nstrip-set s a equal b equal c equal\nwebs s / reversed s\nblock W web kites c\nblock F floating background a\nblock R ring wedges a corners b\nblock T tumblers pieces a b about 9 cm\ngrid\n  F F F F R\n  F W W F T\n  F W W F T\n  F F F F .\nsash 2 cm a\nborder 3 cm b\n"},
		{"a hint", "side 6\nfabric a #f4ead7\nfabric b #1f3350\nfabric c #b5532a\nblock P plain piece a\nblock Q plain piece b\nblock W web wedges b kites c\nblock F floating wedges b background c\ngrid\n  P Q P Q\n  Q P Q P\n  P Q P Q\n"},
		{"floating in a frame", "side 6\nfabric a #f4ead7\nfabric b #1f3350\nblock W web wedges b kites a\nblock F floating wedges b background a\nblock S floating-star kites a wedges b background a\ngrid\n  F F F F F\n  F W W W F\n  F W W S F\n  F F F F F\n"},
	}
}

// TestWorkedSummaries: all that a summary tells, in full, of layouts with something of every sort; somebody has looked at it.
func TestWorkedSummaries(t *testing.T) {
	var b bytes.Buffer
	for _, c := range worked() {
		design, _, faults := layout.Read(c.text)
		if design == nil {
			t.Fatal(c.name, faults)
		}
		fmt.Fprintf(&b, "== %s\n", c.name)
		encoder := json.NewEncoder(&b)
		encoder.SetIndent("", " ")
		if err := encoder.Encode(Build(design, quilt.Lay(design))); err != nil {
			t.Fatal(err)
		}
	}
	golden.Text(t, "testdata/worked.txt", b.Bytes())
}
