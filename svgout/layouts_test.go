package svgout

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/samples"
)

// fabrics are what the layouts of these tests are made of.
const fabrics = `strip 4
fabric cream #f4ead7 "cream crackle"
fabric rust #b5532a
fabric teal #2f7d83 "sea glass"
fabric navy #1f3350
strip-set shore rust 1 3/4 cream 1 1/2 teal 1 3/4
`

// layouts are small tops of every odd form.
func layouts() map[string]string {
	webs := fabrics + "webs shore / reversed shore\nblock W web kites cream\n"
	return map[string]string{
		"lap": `title "Harbour lanterns"` + "\n" + webs + "block F floating background navy\n" +
			grid("F F F F", "F W W F", "F W W F", "F F F F") + "border 1 1/2 rust\nborder 4 cream\n",
		"one":  fabrics + "block R ring wedges navy cream corners rust\n" + grid("R"),
		"wide": webs + grid(strings.Repeat("W ", 20)),
		"tall": webs + grid(slices.Repeat([]string{"W"}, 20)...),
		"holes": webs + "block P plain piece navy\n" +
			grid("W W . W", "W P W W", ". W W .") + "border 2 rust\n",
		"sashed": strings.Replace(fabrics, "strip 4", "side 5 1/2", 1) + "strip-set reef navy 2 teal rest\nblock W web wedges reversed reef kites cream\nblock T tumblers pieces navy rust about 3 1/2\nblock H halves pieces teal cream\n" +
			grid("W T . H", ". T W H") + "sash 3/4 cream posts rust around\nborder 1 rust corners teal\n",
		"mixed": strings.Replace(fabrics, "strip 4", "units cm\nside 16.3 cm", 1) +
			"strip-set reef navy 6 teal rest\nwebs reef\nblock W web kites cream\nblock R ring wedges rust navy corners cream teal\n" +
			"block S floating-star kites rust wedges teal background navy\nblock P plain piece rust\n" +
			grid("W R W P", "R S W R") + "border 3.7 cm teal\n",
	}
}

// grid is a grid of rows.
func grid(rows ...string) string { return "grid\n  " + strings.Join(rows, "\n  ") + "\n" }

// named is a top of these tests.
type named struct {
	name string
	*quilt.Top
}

// tops are the tops that every law and every judge is tried on: those here and every
// sample.
func tops(t testing.TB) []named {
	t.Helper()
	texts := layouts()
	for _, s := range samples.All() {
		texts[s.Name+".quilt"] = s.Text
	}
	var list []named
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		list = append(list, named{name, lay(t, texts[name])})
	}
	return list
}

// lay reads and lays out a layout that must be good.
func lay(t testing.TB, text string) *quilt.Top {
	t.Helper()
	design, source, faults := layout.Read(text)
	if design == nil {
		var b strings.Builder
		_ = layout.Report(&b, "layout", source, faults)
		t.Fatal(b.String())
	}
	return quilt.Lay(design)
}

// drawn is the picture of a top.
func drawn(t testing.TB, top *quilt.Top, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Draw(&b, top, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// allOptions is a picture of every sort: all views of a top by itself, both drawings, bare and
// with everything. Views that mark seams have the same parts.
func allOptions() []Options {
	var list []Options
	for view := range Line + 1 {
		for n := range 4 {
			more, seams := n&1 > 0, SeamsLeftOut
			if more {
				seams = SeamsDrawn
			}
			list = append(list, Options{View: view, ByFabric: n&2 > 0, SeamLines: seams, Legend: more})
		}
	}
	return list
}
