package quilt_test

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
)

// wedgesOf is a layout whose wedges come from a strip set, with pieces on hand.
func wedgesOf(value string, rest ...string) string {
	return "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\n" +
		"strip-set shore rust 2 teal rest\nstrip-set coast teal rest rust 2\nblock W web wedges " + value + " kites cream\ngrid\n  W W\n  W W\n" + strings.Join(rest, "\n") + "\n"
}

// fits says of the pieces on hand of a top, in their order, which fit a patch.
func fits(top *quilt.Top) string {
	var list []string
	for _, o := range top.CutFacts.OnHand {
		name := o.Cloth
		if o.Reversed {
			name += " reversed"
		}
		list = append(list, fmt.Sprintf("%d %s %s %v", o.Count, name, o.Role, o.Patch >= 0))
	}
	return strings.Join(list, ", ")
}

// TestPiecesOnHandFit: pieces fit patches of their shape and their fabrics, wedges also only from their strip, with their fabrics in
// their order. A strip set that is another one turned around gives the same wedges.
func TestPiecesOnHandFit(t *testing.T) {
	for _, c := range []struct{ value, line, want string }{
		{"shore", "on-hand wedges shore 8", "8 shore wedges true"},
		{"shore", "on-hand wedges reversed shore 8", "8 shore reversed wedges false"},
		{"reversed shore", "on-hand wedges reversed shore 8", "8 shore reversed wedges true"},
		{"shore coast", "on-hand wedges reversed shore 8", "8 shore reversed wedges true"},
		{"shore", "on-hand wedges coast 8", "8 coast wedges false"},
		{"shore", "on-hand wedges rust 8", "8 rust wedges false"},
		{"rust", "on-hand wedges rust 8", "8 rust wedges true"},
		{"rust", "on-hand wedges rust 8 strip 3", "8 rust wedges false"},
		{"rust", "on-hand kites rust 8", "8 rust kites false"},
		{"rust", "on-hand kites cream 8", "8 cream kites true"},
		{"rust", "on-hand corners cream 8", "8 cream corners false"},
	} {
		top := lay(t, wedgesOf(c.value, c.line))
		if got := fits(top); got != c.want {
			t.Errorf("%s where wedges are %s: %s, expected %s", c.line, c.value, got, c.want)
		}
		if warned := len(top.Warnings) > 0; warned != strings.HasSuffix(c.want, "false") {
			t.Errorf("%s where wedges are %s: warnings %v", c.line, c.value, top.Warnings)
		}
	}
}

// TestPiecesOnHandKeepTheirCloth: in a colorway pieces are of the fabrics that they were cut from, wherever these stand there.
func TestPiecesOnHandKeepTheirCloth(t *testing.T) {
	onHand := []string{"on-hand wedges shore 8", "on-hand kites cream 4"}
	for _, c := range []struct{ colorway, want string }{
		{"colorway c rust #123456", "8 shore wedges false, 4 cream kites true"},
		{"colorway c cream #123456", "8 shore wedges true, 4 cream kites false"},
		{"colorway c rust teal teal rust", "8 shore wedges false, 4 cream kites true"},
		{"colorway c cream navy", "8 shore wedges true, 4 cream kites false"},
	} {
		if got := fits(lay(t, wedgesOf("shore", append(onHand, c.colorway)...)).In(0)); got != c.want {
			t.Errorf("%s: %s, expected %s", c.colorway, got, c.want)
		}
	}
	swapped := lay(t, strings.Replace(wedgesOf("rust", "on-hand wedges rust 8", "on-hand wedges teal 8", "colorway c rust teal teal rust"), "kites cream", "kites rust", 1))
	if got := fits(swapped) + " and " + fits(swapped.In(0)); got != "8 rust wedges true, 8 teal wedges false and 8 rust wedges false, 8 teal wedges true" {
		t.Error(got)
	}
}

// TestPiecesOnHandOfASize: a size with other blocks has no use for pieces of the layout's own; one with more blocks has.
func TestPiecesOnHandOfASize(t *testing.T) {
	top := lay(t, wedgesOf("shore", "on-hand wedges shore 8", "size other across 4", "size larger strip 5"))
	for i, want := range []string{"8 shore wedges true", ""} {
		if got := fits(top.Sizes[i].Top(nil)); got != want {
			t.Errorf("%s: %q, expected %q", top.Sizes[i].Name, got, want)
		}
	}
}

// TestPiecesOnHandKnowTheirPrint: pieces of a motif serve no other, nor do those that come as they are cut; what is written in their
// place is said.
func TestPiecesOnHandKnowTheirPrint(t *testing.T) {
	const text = "side 8\nfabric navy #1f3350\nfabric awning stripes navy 1 white 1/2\nmotif rose awning across 1 down 2\nmotif bud awning across 2 down 1\n" +
		"block A ring wedges bud corners navy\nblock B ring wedges rose corners navy\nblock C ring wedges awning lengthwise corners navy\ngrid\n A B C\non-hand wedges %s 8\n"
	for value, want := range map[string]struct {
		cell int
		hint string
	}{
		"rose": {cell: 1}, "bud": {cell: 0}, "awning lengthwise": {cell: 2},
		"awning":           {-1, "write bud in place of awning"},
		"awning crosswise": {-1, "write bud in place of awning crosswise"},
		"navy":             {-1, "leave the line out"},
	} {
		top := lay(t, fmt.Sprintf(text, value))
		if patch := top.CutFacts.OnHand[0].Patch; want.cell < 0 && patch >= 0 || want.cell >= 0 && (patch < 0 || int(top.Patches[patch].Cell) != want.cell) {
			t.Errorf("%s: given to patch %d", value, patch)
		}
		if want.cell < 0 && (len(top.Warnings) != 1 || !strings.Contains(top.Warnings[0].Hint, want.hint)) {
			t.Errorf("%s: %v", value, top.Warnings)
		}
	}
}
