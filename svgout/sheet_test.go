package svgout

import (
	"bytes"
	"fmt"
	"testing"

	"eighthturn/internal/credits"
	"eighthturn/palettes"
)

// TestSheet: a sheet has its size, its words and each scene in its place with a line round it, and what it is called and says.
func TestSheet(t *testing.T) {
	var scenes [2]*Scene
	for i, o := range []Options{{Prefix: "a-", ByFabric: true, Prints: true}, {Prefix: "b-", ByFabric: true, OnePaint: true}} {
		s, err := NewScene(printed(t), o)
		if err != nil {
			t.Fatal(err)
		}
		scenes[i] = s
	}
	sheet := &Sheet{Width: 800, Height: 400, PerInch: 200, Ground: palettes.Colour{R: 250, G: 240, B: 230}, Ink: palettes.Colour{R: 1, G: 2, B: 3}, Title: "Two <of> one",
		Description: "Side by side.", Credits: credits.Credits{Author: "Ida"}, Line: 1.5, LineOpacity: 0.25,
		Pictures: []Placed{{scenes[0], Box{10, 20, 300, 150}, Box{9, 19, 302, 152}}, {scenes[1], Box{410, 20, 300, 150}, Box{409, 19, 302, 152}}},
		Words:    []Outlined{{`Ida's "sea"`, "M0 0L1 1Z"}}}
	var b bytes.Buffer
	if err := sheet.SVG(&b); err != nil {
		t.Fatal(err)
	}
	root, err := parse(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	has := func(n *node, want ...string) {
		t.Helper()
		for i := 0; i < len(want); i += 2 {
			if got := n.attr(want[i]); got != want[i+1] {
				t.Errorf("<%s %s=%q>, expected %q", n.name, want[i], got, want[i+1])
			}
		}
	}
	has(root, "width", "4.0000in", "height", "2.0000in", "viewBox", "0 0 800 400")
	var names []string
	for _, c := range root.children {
		names = append(names, c.name)
	}
	if want := "[title desc metadata rect svg rect svg rect g]"; fmt.Sprint(names) != want {
		t.Fatalf("a sheet has %v, expected %s", names, want)
	}
	if root.children[0].text != "Two <of> one" || root.children[1].text != "Side by side." {
		t.Errorf("it is called %q and says %q", root.children[0].text, root.children[1].text)
	}
	has(root.children[3], "x", "0.0000", "y", "0.0000", "width", "800.0000", "height", "400.0000", "fill", "#faf0e6")
	for i, s := range scenes {
		place, rim := root.children[4+2*i], root.children[5+2*i]
		has(place, "x", fmt.Sprintf("%d.00", 10+400*i), "y", "20.00", "width", "300.00", "height", "150.00", "viewBox", "0 0 1152 576", "preserveAspectRatio", "none")
		has(rim, "x", fmt.Sprintf("%d.0000", 9+400*i), "y", "19.0000", "width", "302.0000", "height", "152.0000", "fill", "none", "stroke", "#010203", "stroke-opacity", "0.25", "stroke-width", "1.50")
		var alone bytes.Buffer
		if err := s.SVG(&alone); err != nil {
			t.Fatal(err)
		}
		of, err := parse(alone.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		// The library writes no title, description or metadata within; all else is as in a file of its own.
		if got, want := fmt.Sprint(sketch(place)), fmt.Sprint(sketch(of)[2:]); got != want {
			t.Errorf("scene %d is drawn\n%s\nalone\n%s", i, got, want)
		}
	}
	words := root.children[8]
	has(words, "fill", "#010203")
	has(words.children[0], "role", "img", "aria-label", `Ida's "sea"`, "d", "M0 0L1 1Z")
}

// sketch are the elements in a document, with what they have.
func sketch(n *node) (list []string) {
	for _, c := range n.children {
		if c.name != "metadata" {
			list = append(list, fmt.Sprint(c.name, c.attrs, sketch(c)))
		}
	}
	return list
}
