package orders_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
)

// TestWorkedOrders: which layouts near one save strip sets, in full: of several strip sets the one of which most is left over first, what the
// line saves, and in a size and a colorway what it saves there. Somebody has looked at it.
func TestWorkedOrders(t *testing.T) {
	const fabrics = "strip 4\nfabric rust #b5532a\nfabric cream #f4ead7\nfabric teal #2f7d83\nfabric navy #1f3350\nstrip-set shore rust 1 3/4 cream rest\nstrip-set coast navy 2 teal rest\n"
	const rings = "block R ring wedges shore corners cream\nblock S ring wedges coast corners cream\n"
	var b bytes.Buffer
	for _, c := range []struct{ name, text, size, colorway string }{
		{"rings of two sets", fabrics + rings + "grid\n  R R R S S\n  R R R S S\n  R R R S S\n", "", ""},
		{"rings of two sets, more of the other", fabrics + rings + "grid\n  S R S S S\n  S R S S S\n  S R S S S\n", "", ""},
		{"a size", fabrics + rings + "grid\n  R R R S S\n  R R R S S\n  R R R S S\nsize large across 9 down 8\ncolorway dusk cream navy navy cream\n", "large", "dusk"},
		{"webs", fabrics + "block W web wedges shore kites cream\ngrid\n  W W W W\n  W W W W\n  W W W W\n  W W W W\n", "", ""},
		{"webs as they are", fabrics + "webs reversed coast\nblock W web kites cream\nblock R ring wedges shore corners teal\ngrid\n  W W W W W W\n  W W W W W W\n  W W W W W W\n  W W W W W W\n", "", ""},
		{"both ways already", fabrics + "block R ring wedges shore reversed shore corners cream\ngrid\n  R R R\n  R R R\n", "", ""},
		{"a colorway of narrower fabrics", "fabric slim #77ddaa usable-width 24\n" + fabrics + rings + "grid\n  R R R S S\n  R R R S S\n  R R R S S\ncolorway dusk rust slim slim rust\n", "", "dusk"},
		{"few", fabrics + rings + "grid\n  R\n", "", ""},
	} {
		design := read(t, c.text)
		if c.size != "" {
			design = design.InSize(c.size)
		}
		top := quilt.Lay(design)
		if c.colorway != "" {
			in, err := top.InNamed(c.colorway)
			if err != nil {
				t.Fatal(err)
			}
			top = in
		}
		top.Size = c.size
		plan := cutting.Build(nil, top, cutting.Options{})
		fmt.Fprintf(&b, "== %s\n", c.name)
		for _, better := range orders.Nearby(c.text, nil, top)(nil, plan, cutting.Options{}) {
			text, err := json.Marshal(better)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&b, "%s\n", text)
		}
	}
	golden.Text(t, "testdata/worked.txt", b.Bytes())
}
