package summary

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// TestSetsAreOfTheirKinds: a strip set is told for the kinds of blocks whose wedges are its, be they the blocks' own, those that all webs have, or
// those of some webs; one for webs that `webs` gives their fabrics is told by that alone.
func TestSetsAreOfTheirKinds(t *testing.T) {
	const fabrics = "fabric a #111111\nfabric b #555555\nfabric c #eeeeee\nstrip-set one a 2 b rest\nstrip-set two b 2 c rest\nstrip-set idle a 2 c rest\n"
	const web, floating = "block W web kites c\n", "block F floating background c\n"
	const framed = "grid\n  F F F F\n  F W W F\n  F W W F\n  F F F F\n"
	for _, c := range []struct{ size, text, want string }{
		{"strip 4", "webs one\n" + web + "grid\n  W W\n  W W\n", "one [web]"},
		{"side 7", "webs a\n" + web + "block R ring wedges one a corners c\ngrid\n  W W R\n  W W R\n", "one [ring]"},
		{"strip 4", "webs one / reversed two\n" + web + floating + framed, "one [web floating], two [web floating]"},
		{"strip 4", "webs\n  one one\n  a\n  reversed two one\n" + web + floating + framed, "one [web floating], two [web floating]"},
		{"strip 4", "block W web wedges a kites c\nblock F floating wedges one background c\n" + framed, "one [floating]"},
		{"strip 4", "block W web wedges two kites c\nblock F floating wedges a background c\n" + framed, "two [web]"},
		{"side 7", "block W web wedges two kites c\nblock R ring wedges a one corners c\nblock Q ring wedges two corners b\ngrid\n  W W R Q\n  W W Q R\n", "one [ring], two [web] [ring]"},
		{"side 7", "block R ring wedges a corners c\nblock Q ring wedges two corners b\nblock P plain piece a\ngrid\n  R R .\n  R R P\n", ""},
		{"side 7", "block R ring wedges a corners c\nblock Q ring wedges one corners b\nblock W web wedges a two kites c\ngrid\n  W W .\n  W W Q\n", "one [ring], two [web]"},
	} {
		d, _, faults := layout.Read(c.size + "\n" + fabrics + c.text)
		if d == nil {
			t.Fatal(c.text, faults)
		}
		var told []string
		for _, set := range Build(d, quilt.Lay(d)).StripSets {
			text := set.Name
			for _, use := range set.Uses {
				text += fmt.Sprint(" ", use.Kinds)
			}
			told = append(told, text)
		}
		if got := strings.Join(told, ", "); got != c.want {
			t.Errorf("strip sets are told for %s, not %s:\n%s", got, c.want, c.text)
		}
	}
}

// TestHintsOfEachEdge: blocks that stay open are named from whichever edge of the quilt they lie on, be they the first of the layout.
func TestHintsOfEachEdge(t *testing.T) {
	for edge, place := range map[string][2]int{"upper": {1, 0}, "lower": {1, 4}, "left": {0, 1}, "right": {4, 1}, "corner": {0, 0}, "inside": {2, 2}, "last inside": {3, 3}} {
		for _, first := range []bool{false, true} {
			rows := ""
			for y := range 5 {
				for x := range 5 {
					rows += map[bool]string{true: " F", false: " W"}[[2]int{x, y} == place]
				}
				rows += "\n"
			}
			web, floating := "block W web wedges rust kites cream\n", "block F floating wedges rust background cream\n"
			if first {
				web, floating = floating, web
			}
			d, _, faults := layout.Read("strip 4\n" + cloth + web + floating + "grid\n" + rows)
			if d == nil {
				t.Fatal(faults)
			}
			want := "[{even-closes-edges floating [F]}]"
			if strings.Contains(edge, "inside") {
				want = "[]"
			}
			if got := fmt.Sprint(Build(d, quilt.Lay(d)).Hints); got != want {
				t.Errorf("a block at the %s: %s, not %s", edge, got, want)
			}
		}
	}
}

// TestHintsOfFirstBlocks: the blocks of a checkerboard are named, be they the first of the layout, in the order of the grid.
func TestHintsOfFirstBlocks(t *testing.T) {
	d, _, faults := layout.Read("strip 4\n" + cloth + "block R ring wedges rust corners cream\nblock Q ring wedges navy corners cream\ngrid\n Q R\n R Q\n")
	if d == nil {
		t.Fatal(faults)
	}
	if got := fmt.Sprint(Build(d, quilt.Lay(d)).Hints); got != "[{odd-matches-corners ring [Q R]}]" {
		t.Errorf("the hints are %s", got)
	}
}

// TestCentersInside are those that are closed and those that are open.
func TestCentersInside(t *testing.T) {
	if got := (&Centres{Closed: 3, Open: make([]Open, 2)}).Inside(); got != 5 {
		t.Errorf("3 closed ones and 2 open ones are %d", got)
	}
}
