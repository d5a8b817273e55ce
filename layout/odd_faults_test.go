package layout

import (
	"fmt"
	"strings"
	"testing"
)

// TestWhatElseIsSaid: faults that come alone, one after the other, or not at all, whole.
func TestWhatElseIsSaid(t *testing.T) {
	const cloths = "side 6\nfabric navy #1f3350\nfabric cream #f4ead7\n"
	for name, c := range map[string]struct{ text, says string }{
		"a label where there is one block": {cloths + "block A plain piece navy\ngrid\n A Q\n", `"Q" no block is called "Q" | blocks are: A
`},
		"two labels that no block has, and a block without one": {cloths + "block plain piece navy\ngrid\n Q R\n", `"plain" expected a block's label, found "plain" | write the label in front of it
"R" no block is called "R" | define it: block R web wedges navy kites cream
`},
		"a fabric where none is": {"side 6\nblock A plain piece navy-2\ngrid\n A\n", `"navy-2" no fabric, pool or strip set is called "navy-2" | define it: fabric navy-2 and its color
`},
		"a word of the language where no fabric is": {"side 6\nblock A plain piece navy\nbacking web\ngrid\n A\n", `"navy" no fabric, pool or strip set is called "navy" | define it: fabric navy navy
"web" no fabric, pool or strip set is called "web" | define it: fabric web and its color
`},
		"a fabric that changes twice": {cloths + "fabric rust #a04020\ncolorway fall navy rust navy cream\nblock A halves pieces navy cream\ngrid\n A\n", `"navy" "navy" has another fabric in its place already | leave out navy cream
`},
		"a motif mirrored on stripes without any": {cloths + "fabric w stripes\nmotif rose w across 1 down 1 mirrored\nblock A ring wedges rose corners navy\ngrid\n A\n", `"" expected the colors of the stripes and their widths, found the end of the line | for example fabric w stripes navy 3/4 cream 1/2
`},
		"a motif with a fault": {cloths + "fabric w stripes navy 1 cream 1\nmotif rose w across 1 dwn 1\nblock A ring wedges rose corners navy\ngrid\n A\n", `"dwn" expected "across", "down", "pointing" or "mirrored", found "dwn" | did you mean "down"?
`},
		"a block like one that has a fault": {cloths + "block A web wedges navi kites cream\nblock B like A\ngrid\n A B\n", `"navi" no fabric, pool or strip set is called "navi" | did you mean "navy"?
`},
	} {
		var b strings.Builder
		for _, f := range Inspect(c.text, nil).Faults {
			fmt.Fprintf(&b, "%q %s | %s\n", c.text[f.Span.Start:f.Span.End], f.Message, f.Hint)
		}
		if got := b.String(); got != c.says {
			t.Errorf("%s:\n%s", name, got)
		}
	}
}
