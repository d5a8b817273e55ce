package cutting

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
)

// TestWaysToFit: a change that would make cloth on hand suffice is written into the layout; the plan of that layout needs
// what the change was said to need, and has enough.
func TestWaysToFit(t *testing.T) {
	web, webRoles := kindWith(t, blocks.Kite, true)
	ring, ringRoles := kindWith(t, blocks.RingCorner, false)
	plain, plainRole := kindWith(t, blocks.Square, true)
	column, columnRole := "", ""
	for _, k := range blocks.Kinds() {
		if k.Column {
			column, columnRole = k.Name, k.Roles[0].Name
		}
	}
	fabrics := "fabric a #111 on-hand %s\nfabric b #888 on-hand %s\nfabric c #eee on-hand %s\n"
	ways := map[string]int{}
	for n, c := range []struct{ size, rest string }{
		{"strip ", "block A " + web + " " + webRoles + "\ngrid\n A A A A\n A A A A\n A A A A\nborder {0} b\nborder {1} a\nbinding 2 1/2 a\n"},
		{"strip ", "block A " + ring + " " + ringRoles + "\ngrid\n A A A A\n A A A A\n A A A A\nsash 1 a posts b around\nborder {0} b corners a\nborder {1} a corners b\nbacking c\n"},
		{"side ", "block A " + ring + " " + ringRoles + "\ngrid\n A A A\n A A A\n A A A\nsash 1 1/2 a\nborder {0} b lengthwise\nborder {1} a\n"},
		{"side ", "block A " + plain + " " + plainRole + "\ngrid\n A A A A A A\nrepeat down 8\nborder {0} a\nborder {1} b corners a\nbinding 2 1/4 b\n"},
		{"side ", "block A " + column + " " + columnRole + " a b about 3\ngrid\n A A A A A A\nrepeat down 8\nborder {0} a\nborder {1} c\n"},
	} {
		for _, have := range judges.Some([]string{"1/2 yd", "1 yd", "1 1/2 yd", "2 yd"}, 3) {
			head := fmt.Sprintf(fabrics, have, have, have)
			text := func(size measure.NM, borders [2]measure.NM) string {
				rest := strings.NewReplacer("{0}", measure.Number(borders[0], measure.Inches), "{1}", measure.Number(borders[1], measure.Inches)).Replace(c.rest)
				return c.size + measure.Number(size, measure.Inches) + "\n" + head + rest
			}
			size, borders := 5*measure.Inch, [2]measure.NM{2 * measure.Inch, 5 * measure.Inch}
			p := Build(nil, lay.Top(t, text(size, borders)), Options{})
			for _, f := range p.Fabrics {
				for _, w := range f.OnHand.WaysToFit {
					changed, sizes, what := size, borders, "border"
					switch {
					case w.Border >= 0:
						sizes[w.Border] = w.WidthFinished
					case w.StripCut > 0:
						changed, what = w.StripCut, "strip"
					default:
						changed, what = w.SideFinished, "side"
					}
					q := Build(nil, lay.Top(t, text(changed, sizes)), Options{})
					for _, g := range q.Fabrics {
						if off := g.Purchase.Need - g.Purchase.Spare - w.NeedCut; g.Index == f.Index && (off > 50 || off < -50 || !g.OnHand.Enough) { // sides are rounded to even nanometres
							t.Errorf("layout %d, %s, %s on hand: with %+v it is said to need %s, and needs %s", n, f.Name, have, w, p.text(w.NeedCut), p.text(g.Purchase.Need))
						}
					}
					ways[what]++
				}
			}
		}
	}
	if ways["border"] < 3 || ways["strip"] < 3 || ways["side"] < 3 {
		t.Errorf("ways that were tried: %v", ways)
	}
}
