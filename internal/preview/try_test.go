package preview

import (
	"strings"
	"testing"

	"eighthturn/layout"
)

const twoFabrics = "side 6\nfabric rust #a84a2a\nfabric cream #f4ead7\nblock H halves pieces rust cream\ngrid\n H H\n"

// TestTriedColors: a fabric is shown in the color that is tried, also after a save in which only a color changed, and each
// time it is said; a fabric that is not there any more is told of, and the rest is drawn.
func TestTriedColors(t *testing.T) {
	made := toItsEnd(drawWith(nil, variant{}, "rust=#7a2f16"))
	first := made(twoFabrics, drawing{})
	again := made(strings.Replace(twoFabrics, "#f4ead7", "#ffffff", 1), first)
	for name, d := range map[string]drawing{"first": first, "again": again} {
		if got := d.top.Fabrics[0].Colour.Hex(); got != "#7a2f16" {
			t.Errorf("%s: rust is shown in %s", name, got)
		}
		if len(d.faults) != 1 || d.faults[0].Severity != layout.Warning || !strings.Contains(d.faults[0].Message, "rust is tried in #7a2f16") {
			t.Errorf("%s: said is %+v", name, d.faults)
		}
		if d.design.Fabrics[0].Colour.Hex() != "#a84a2a" {
			t.Errorf("%s: the layout's own color is gone", name)
		}
	}
	if again.top.Fabrics[1].Colour.Hex() != "#ffffff" {
		t.Error("the color that was saved does not show")
	}
	gone := made(strings.ReplaceAll(twoFabrics, "rust", "brick"), first)
	if gone.top == nil || len(gone.faults) != 1 || !strings.Contains(gone.faults[0].Message, `no fabric of the layout is called "rust"`) {
		t.Errorf("%+v", gone.faults)
	}
}
