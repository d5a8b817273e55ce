package report

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
)

// said is all that is told of a layout.
func said(t *testing.T, text string, with func(*Plans)) string {
	t.Helper()
	design, _, faults := layout.ReadWith(text, invent.Photo)
	if errors, _ := layout.Count(faults); errors > 0 {
		t.Fatalf("%v", faults)
	}
	c := spelledOut{text: text, with: with}
	p := c.laidOut(quilt.Lay(design))
	all := ""
	for _, r := range Reports() {
		all += allText(r.Make(p))
	}
	for _, d := range []document.Document{Beginning(p), Class(p)} {
		all += allText(d)
	}
	return all + strings.Join(Tools(p), "\n") + "\n"
}

// TestSeldomSaid: what few layouts are told, each by one that brings it about.
func TestSeldomSaid(t *testing.T) {
	photo := "fabric lotus swatch \"lotus.png\" across 12 repeat across 6 down 4\n"
	for _, c := range []struct {
		what, text, says string
		with             func(*Plans)
	}{
		{"every fabric is wider than the backing, which is chosen in the shop",
			"strip 4\nfabric navy #1f3350 usable-width 44\nfabric cream #f4ead7 usable-width 44\nblock W web wedges navy kites cream\ngrid\n W W\n W W\n",
			"Usable width: 44 in for every fabric, selvages removed; for the backing 40 in.\n", nil},
		{"wedges of a print could make a figure round each center",
			"strip 4\n" + sixFabrics + photo + "block W web wedges lotus kites cream\ngrid\n W W\n W W\n",
			"For a different figure around every center, cut 8 alike: cut 8 lengths of 4 in (1 repeat), lay them on each other right side up with the print lined up, and pin. Cut the stack into 1 strip 4 in wide and these into wedges: each cut gives 8 alike, 2 sets in all. This takes 36 in instead.\n", nil},
		{"more fabrics are saved than a sentence names",
			"strip 4\n" + sixFabrics + "block W web wedges navy kites cream\ngrid\n" + strings.Repeat(" W W W W W W W W W W W W\n", 12) + "border 4 1/2 navy\nborder 4 1/2 rust\nborder 4 1/2 teal\nborder 4 1/2 plum\nborder 4 1/2 moss\nborder 4 1/2 cream\n",
			"buy 4 3/4 yd of navy instead of 5 yd, 1 3/8 yd of rust instead of 1 5/8 yd, 1 1/2 yd of teal instead of 1 3/4 yd, 1 5/8 yd of plum instead of 1 7/8 yd and less of 2 other fabrics: borders", nil},
		{"handed pieces of a motif",
			"strip 4\n" + sixFabrics + photo + "motif bud lotus across 2 down 2\nblock F floating wedges navy background bud\ngrid\n F F\n F F\n",
			"\nleft bud background piece\n", nil},
		{"blocks that lie in more places than a sentence names",
			"side 3\n" + sixFabrics + "block P plain piece plum\nblock N plain piece navy\ngrid\n" + scattered(30, 12), "; row 24, columns 4 to 6, 8, 9 and 12; and 37 places more.\n", nil},
		{"a backing that only a larger size has too many panels for",
			tiny + "backing slip\n", "Huge: the backing cannot be planned: the backing takes 36700 panels; the limit is 1000.\n", nil},
		{"a binding that only a larger size has too many strips for",
			tiny + "binding 1 slip\n", "Huge: the binding cannot be planned: 144900 strips are wanted; the limit is 100000.\n", nil},
		{"columns of one height in pieces of several lengths",
			"side 6\n" + sixFabrics + "block T tumblers pieces navy rust line 8\nblock U tumblers pieces teal cream line 11\ngrid\n T U\n T U\n T U\n",
			"The quilt is 2 columns of 2 to 4 tumblers, with an end piece at each end. ", nil},
		{"a kit of more lines than its table has",
			"side 3\n" + manyBlocks(160), "\nand 10 more lines in the cutting plan\n", func(p *Plans) { p.Cutting.Copies = 3 }},
		{"scraps that fall out of their pool",
			"strip 4\nfabric navy #1f3350\nfabric plum #2b1430\nfabric ink #101020\nfabric coal #202020\nfabric pine #10301c\nfabric cocoa #33201a\nfabric cream #f4ead7\nfabric ivory #f0ecdd\nfabric chalk #f8f8f0\nfabric paper #fbf6ea\n" +
				"scraps darks navy plum ink coal pine cocoa ivory chalk paper\nblock W web wedges darks kites cream\ngrid\n" + strings.Repeat(" W W W W W W\n", 4),
			"the scrap ivory is as light as cream and makes holes in darks at 11 pieces (so are 2 other scraps).\nTake ivory, chalk and paper out of darks.", nil},
		{"squares that are trimmed and none that is cut once on the diagonal",
			"side 6\n" + sixFabrics + "block R ring wedges navy rust corners cream\ngrid\n R R\n", "\nsquare ruler\n", func(p *Plans) { p.Cutting.LongEdgesStraight = true }},
	} {
		if all := said(t, c.text, c.with); !strings.Contains(all, c.says) {
			t.Errorf("%s: it does not say %q: %s", c.what, c.says, all)
		}
	}
}

const tiny = "side 6\nfabric a #204060\nfabric b #e0c0a0\nfabric slip #808080 usable-width 1.01\nblock P plain piece a\nblock Q plain piece b\ngrid\n P Q\n Q P\nrepeat across 1 down 1\nsize small\nsize huge across 60 down 60\n"

// manyBlocks is a row of plain blocks, each of a fabric of its own.
func manyBlocks(n int) string {
	fabrics, labels, grid := "", "", "grid\n"
	for i := range n {
		fabrics += fmt.Sprintf("fabric f%d #%06x\n", i, 0x101010+i*0x010307)
		labels += fmt.Sprintf("block B%d plain piece f%d\n", i, i)
		grid += fmt.Sprintf(" B%d", i)
	}
	return fabrics + labels + grid + "\n"
}

// scattered is a grid of two labels without any order.
func scattered(down, across int) string {
	text, r := "", rand.New(rand.NewPCG(1, 2))
	for range down {
		for range across {
			text += " " + string("PN"[r.IntN(2)])
		}
		text += "\n"
	}
	return text
}
