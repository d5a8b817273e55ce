package cutting

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
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

// TestBlocksOfTheLeastSize: no way to fit makes blocks smaller than a layout may have them, however little cloth there is.
func TestBlocksOfTheLeastSize(t *testing.T) {
	offered := 0
	for _, size := range []string{"side 3/8", "side 1/4", "side 5/16", "side 1/2", "side 1", "strip 11/16", "strip 3/4", "strip 5/8", "strip 1"} {
		for _, have := range []string{"1/8 yd", "1/4 yd", "3/8 yd", "1/2 yd"} {
			text := size + "\nfabric a #111 on-hand " + have + "\nfabric b #888\n"
			if strings.HasPrefix(size, "side") {
				text += "block A plain piece a\n"
			} else {
				text += "block A ring wedges a corners b\n"
			}
			text += "grid\n A A A A A A\nrepeat across 6 down 30\n"
			p := Build(nil, lay.Top(t, text), Options{})
			if h := p.Fabrics[0].OnHand; h != nil {
				for _, w := range h.WaysToFit {
					if offered++; w.SideFinished < layout.MinSide {
						t.Errorf("%s, %s on hand: blocks of %s are offered", size, have, p.text(w.SideFinished))
					}
				}
			}
		}
	}
	if offered < 3 {
		t.Errorf("only %d ways", offered)
	}
}

// TestLeastChange: of the borders and sides that are narrower by more and more steps, the first with which a plan made anew has enough is the
// one that is offered, as long as there is one, down to a single step. Each is laid out and planned by itself here.
func TestLeastChange(t *testing.T) {
	const side, border = measure.Inch / 16, measure.Inch / 4 // the steps in which they are made narrower
	offered := map[bool]int{}
	for _, size := range []struct{ sides, borders int }{{24, 2}, {16, 7}, {8, 1}, {9, 2}} {
		need := func(sides, borders int) measure.NM {
			p := Build(nil, lay.Top(t, sizedLayout(measure.NM(sides)*side, measure.NM(borders)*border, measure.Inch)), Options{})
			f := p.Fabrics[0]
			if len(p.Faults) > 0 || p.Steps.Mark != side || p.Steps.Trimmed != border {
				t.Fatalf("side %d, border %d: %v, steps %v", sides, borders, p.Faults, p.Steps)
			}
			return f.Purchase.Need - f.Purchase.Spare
		}
		all := need(size.sides, size.borders)
		for _, about := range []measure.NM{all, need(size.sides, max(1, size.borders-1)), need(size.sides, 1), need(max(2, size.sides-1), size.borders), need((size.sides+1)/2, size.borders)} {
			for _, have := range []measure.NM{about, about - measure.Inch/16} {
				var want []Way
				for borders := size.borders - 1; borders > 0 && all > have; borders-- {
					if n := need(size.sides, borders); n <= have {
						want = append(want, Way{Border: 0, WidthFinished: measure.NM(borders) * border, NeedCut: n})
						break
					}
				}
				for sides := size.sides - 1; 2*sides >= size.sides && all > have; sides-- {
					if n := need(sides, size.borders); n <= have {
						want = append(want, Way{Border: -1, SideFinished: measure.NM(sides) * side, NeedCut: n})
						break
					}
				}
				h := Build(nil, lay.Top(t, sizedLayout(measure.NM(size.sides)*side, measure.NM(size.borders)*border, have)), Options{}).Fabrics[0].OnHand
				if !slices.Equal(h.WaysToFit, want) || h.Enough != (all <= have) || h.NeedCut != all || h.HaveCut != have || h.ShortCut != max(0, all-have) {
					t.Errorf("%d steps of a side, %d of a border, %d on hand of %d: %+v, expected ways %+v", size.sides, size.borders, have, all, h, want)
				}
				for _, w := range want {
					offered[w.Border == 0]++
				}
			}
		}
	}
	if offered[true] < 6 || offered[false] < 6 {
		t.Errorf("%d borders and %d sides were offered", offered[true], offered[false])
	}
}

// sizedLayout is a quilt with a side and a border, of a fabric of which there is some length.
func sizedLayout(side, border, have measure.NM) string {
	text := func(nm measure.NM) string { return measure.Number(nm, measure.Inches) }
	return fmt.Sprintf("side %s\nfabric a #111 on-hand %s\nfabric b #888\nblock A plain piece a\nblock B plain piece b\ngrid\n A B A B A B A B\nrepeat down 20\nborder %s a\n", text(side), text(have), text(border))
}

// TestFabricsOnHandShareSteps: fabrics of which nothing is on hand, and those of which there is enough, take no steps from one that falls
// short: what would help it is looked for to the end beside thirty of them.
func TestFabricsOnHandShareSteps(t *testing.T) {
	var b strings.Builder
	b.WriteString("side 2\nfabric a #111 on-hand 1 yd\nfabric e #666 on-hand 900 yd\n")
	row := " A E"
	for i := range 30 {
		fmt.Fprintf(&b, "fabric f%d #%02x8888\nblock B%d plain piece f%d\n", i, 8*i, i, i)
		row += fmt.Sprintf(" B%d", i)
	}
	b.WriteString("block A plain piece a\nblock E plain piece e\ngrid\n" + row + "\nrepeat down 200\n")
	for i := range 3 {
		fmt.Fprintf(&b, "border %d a\n", 15+i)
	}
	p := Build(nil, lay.Top(t, b.String()), Options{})
	if h := p.Fabrics[0].OnHand; h == nil || h.Enough || h.SearchEnded {
		t.Errorf("of %s there is %+v", p.Fabrics[0].Name, h)
	}
}
