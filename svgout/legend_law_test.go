package svgout

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
)

// lawLegend says that a line view's legend tells each letter once, that no two read the same behind it, and that it tells every letter
// of the picture.
func lawLegend(svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	said, letter := map[string]string{}, ""
	for n := range root.layer("legend").all() {
		switch {
		case n.name != "text":
		case len(n.text) == 1:
			if letter = n.text; said[letter] != "" {
				return fmt.Errorf("the legend tells %s twice: %s", letter, said[letter])
			}
		default:
			said[letter] += n.text + " "
		}
	}
	read := map[string]string{}
	for letter, text := range said {
		if of := strings.ReplaceAll(text, letter, ""); read[of] != "" {
			return fmt.Errorf("%s and %s are both %s", letter, read[of], of)
		}
		read[strings.ReplaceAll(text, letter, "")] = letter
	}
	for n := range root.layer("letters").all() {
		if n.name == "text" && said[n.text[:1]] == "" {
			return fmt.Errorf("no letter of the legend is %s", n.text)
		}
	}
	return nil
}

func TestTheLegendTellsEachLetterOnce(t *testing.T) {
	o := Options{View: Line, Legend: true}
	for _, top := range tops(t) {
		if err := lawLegend(drawn(t, top.Top, o)); err != nil {
			t.Errorf("%s: %v", top.name, err)
		}
	}
	svg := drawn(t, lay(t, layouts()["sashed"]), o)
	broken(t, lawLegend, svg, `>T</text>(\s*<text[^>]*>pieces)`, `>H</text>$1`)
	broken(t, lawLegend, svg, `of tumblers`, `of halves`)
	broken(t, lawLegend, svg, `>S</text>(\s*<text[^>]*>sash)`, `>Y</text>$1`)
	spoiled := lay(t, layouts()["sashed"])
	spoiled.Roles = append([]quilt.Role(nil), spoiled.Roles...)
	spoiled.Roles[1].Letter = spoiled.Roles[0].Letter
	if lawLegend(drawn(t, spoiled, o)) == nil {
		t.Error("two roles of one letter are not noticed")
	}
}
