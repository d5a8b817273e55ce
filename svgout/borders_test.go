package svgout

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
)

// lawBorders says that the layer of borders holds all of their pieces and nothing else.
func lawBorders(top *quilt.Top, svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	piece, want, within := regexp.MustCompile(`^border\d+p\d+(b\d+)?$`), 0, 0
	for i := range top.Faces {
		if top.Patches[top.Faces[i].Patch].Border >= 0 {
			want++
		}
	}
	for _, layer := range root.children {
		for n := range layer.all() {
			id := n.attr("id")
			switch inLayer := layer.attr("id") == "borders"; {
			case n.name != "path" || id == "":
			case inLayer != piece.MatchString(id):
				return fmt.Errorf("%s stands in the layer %s", id, layer.attr("id"))
			case inLayer:
				within++
			}
		}
	}
	if within != want {
		return fmt.Errorf("the layer of borders has %d pieces, the borders %d", within, want)
	}
	return nil
}

func bordersApart(p *sketched) error {
	if p.ByFabric {
		borders := strings.Contains(string(p.svg), `id="borders" inkscape:groupmode="layer"`)
		if want := p.top.Patches[len(p.top.Patches)-1].Border >= 0; borders != want {
			return fmt.Errorf("a layer of borders: %v, expected %v", borders, want)
		}
		return nil
	}
	return lawBorders(p.top, p.svg)
}

func TestBordersAreALayer(t *testing.T) {
	alone := lay(t, "side 6\nfabric a #102030\nfabric b #f0e0d0\nblock P plain piece a\n"+grid("P P")+"border 2 b\n") // a fabric of a border alone
	for _, o := range []Options{{}, {ByFabric: true}, {View: Line}} {
		if err := bordersApart(&sketched{t, alone, o, drawn(t, alone, o)}); err != nil {
			t.Errorf("%+v: %v", o, err)
		}
	}
	top := lapTop(t)
	law := func(bad []byte) error { return lawBorders(top, bad) }
	for _, svg := range [][]byte{drawn(t, top, Options{}), drawn(t, top, Options{View: Line})} {
		broken(t, law, svg, `<path id="border1p1"[^\n]*\n`, "")
		broken(t, law, svg, `id="border1p1"`, `id="r1c1p99"`)
		broken(t, law, svg, `id="r1c1p3"`, `id="border1p99"`)
	}
}
