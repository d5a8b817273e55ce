package cutting

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/stop"
)

// specialPlan is a layout for something that plans rarely do, with the options that bring it out.
type specialPlan struct {
	name, text string
	cloth      *quilt.Cloth // in place of each print's
	options    Options
}

func specialPlans() []specialPlan {
	const abc = "fabric a #111\nfabric b #888\nfabric c #eee\n"
	const webs = "strip-set s a rest b 1 1/2 c 1 1/4\nblock W web wedges s kites c\ngrid\n W W W W W W\nrepeat down 6\n"
	const prints = "fabric navy #1f3350\nfabric cream #f4ead5\nfabric garden stripes navy 1 cream 1\nmotif rose garden across 5 down 5\nmotif bud garden across 2 down 1\n"
	photo := func(across, down float64) *quilt.Cloth {
		return &quilt.Cloth{Across: inch(across), Down: inch(down), Repeats: true}
	}
	return []specialPlan{
		{"sets beside a lengthwise border", "strip 4\n" + abc + webs + "border 5 b lengthwise\nborder 3 a lengthwise\n", nil, Options{}},
		{"sets beside a lengthwise border, three quilts", "strip 4\n" + abc + webs + "border 5 b lengthwise\nborder 3 a lengthwise\n", nil, Options{Copies: 3, LeastCloth: true}},
		{"sets from fat quarters", "strip 3\n" + strings.ReplaceAll(abc, "888", "888 from 9 fat-quarters") + webs + "border 2 a\n", nil, Options{}},
		{"sets from fat quarters, five quilts", "strip 3\n" + strings.ReplaceAll(abc, "888", "888 from 60 fat-quarters") + webs + "border 2 b\n", nil, Options{Copies: 5}},
		{"one set from fat quarters", "strip 3\n" + strings.ReplaceAll(abc, "888", "888 from 9 fat-quarters") + "strip-set s a rest b 1 1/2\nblock W web wedges s kites c\ngrid\n W W\n W W\nborder 2 a\n", nil, Options{}},
		{"one set beside a lengthwise border", "strip 3\n" + abc + "strip-set s a rest b 1 1/2\nblock W web wedges s kites c\ngrid\n W W\n W W\nborder 5 b lengthwise\n", nil, Options{}},
		{"sets from strips", "strip 4\n" + strings.ReplaceAll(abc, "888", "888 from 20 strips 2 1/2") + "strip-set s a rest b 1 1/2\nblock W web wedges s kites c\ngrid\n W W W W\nrepeat down 6\n", nil, Options{}},
		{"sets quilt by quilt", "strip 4\n" + abc + "strip-set s a rest b 1 1/2\nstrip-set r c rest a 2\nblock V web wedges s reversed r kites c\nblock W web wedges reversed s r kites b\ngrid\n V W V\nrepeat down 4\nborder 2 1/2 a\nbinding 2 1/2 b\n", nil, Options{Copies: 4, LeastCloth: true}},
		{"sets of one strip of each order", "strip 4\n" + abc + "strip-set s a 1 1/2 b rest a 1 1/2\nblock W web wedges s reversed s kites c\ngrid\n W W W W\nrepeat down 4\non-hand wedges s 9\n", nil, Options{}},
		{"dealt sets", "strip 4\n" + abc + "fabric d #246\nfabric e #642\nscraps p a b d e by set\nstrip-set s p 1 1/2 p rest\nblock W web wedges s kites c\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\nborder 2 a\n", nil, Options{Copies: 2}},
		{"a print's places", "side 6\n" + prints + "block R ring wedges rose corners bud\nblock Q ring wedges bud corners navy\ngrid\n R Q R Q\n Q R Q R\nborder 2 garden\nbinding 2 1/2 garden\n", photo(9, 13), Options{}},
		{"a print's places, three quilts", "side 6\n" + prints + "block R ring wedges rose corners bud\nblock Q ring wedges bud corners navy\ngrid\n R Q R Q\n Q R Q R\nborder 2 garden\nborder 1 1/2 navy\n", photo(11, 9.5), Options{Copies: 3}},
		{"a print's places and gaps between", "side 7\n" + prints + "block R ring wedges rose corners garden\nblock P plain piece garden\ngrid\n R P R P\n P R P R\nborder 1 garden\n", photo(12, 16), Options{LeastCloth: true}},
		{"a print's places, seventy quilts", "side 6\n" + prints + "block R ring wedges rose corners navy\ngrid\n R R\n R R\nborder 2 garden\non-hand wedges rose 5\n", photo(11, 9.5), Options{Copies: 70}},
		{"stripes' places", "side 6\n" + prints + "block R ring wedges garden lengthwise from 1/4 corners bud\nblock Q ring wedges garden crosswise from 1/8 corners navy\ngrid\n R Q R Q\n Q R Q R\n", nil, Options{Copies: 2}},
		{"wedges of a print as they come", "side 8\n" + prints + "block R ring wedges garden corners navy\nblock W web wedges garden kites cream\nblock T tumblers pieces garden about 4\ngrid\n R W T\n R W T\nmotif x garden across 1 down 1\n", photo(8, 12), Options{Copies: 2}},
		{"one wedge fewer than eight as they come", "side 8\n" + prints + "block W web wedges garden kites cream\ngrid\n W\n", photo(8, 12), Options{}},
		{"strips along the selvages", alongLayout(6, 3, ""), nil, Options{}},
		{"strips along the selvages, many", alongLayout(9, 14, "crosswise"), nil, Options{Copies: 4}},
		{"lengths alike", "side 8\nfabric a #111\nfabric b #888\nfabric w stripes a 1 b 1\nblock A plain piece w lengthwise\nblock B plain piece w\ngrid\n A A A A A A B\nrepeat down 20\nsash 1 b posts w\n", nil, Options{}},
		{"on hand too little", "side 6\nfabric a #111 on-hand 2 yd\nfabric b #888 on-hand 3/4 yd\nfabric c #eee on-hand 1 yd\nblock A web wedges a kites b\nblock B ring wedges c corners b\ngrid\n A B A B A B\nrepeat down 7\nborder 3 b corners a\nborder 2 1/8 a corners b\nborder 4 c\nbinding 2 1/4 a\n", nil, Options{}},
		{"on hand too little, by the strip", "strip 4\nfabric a #111 on-hand 2 yd\nfabric b #888 on-hand 1 yd\nfabric c #eee on-hand 1 yd\nblock B ring wedges a corners b\ngrid\n B B B B B B\nrepeat down 5\nsash 1 c posts b\nborder 3 b corners a\nborder 4 c\nbacking a\n", nil, Options{Quarters: true, Copies: 2}},
		{"on hand too little, with the least cloth", "side 6\nfabric a #111 on-hand 2 yd\nfabric b #888 on-hand 1/2 yd\nblock A plain piece a\nblock B halves pieces a b\ngrid\n A B A B A B\nrepeat down 7\nborder 3 1/16 b lengthwise\nborder 2 1/8 a\n", nil, Options{LeastCloth: true}},
		{"long sashes", "side 8\n" + abc + "block A plain piece a\ngrid\n A A A A A A\nrepeat down 8\nsash 1 1/2 b around\nborder 3 b\nborder 4 c\n", nil, Options{LeastCloth: true}},
		{"long sashes, three quilts", "side 8\n" + abc + "block A plain piece a\ngrid\n A A A A A A\nrepeat down 8\nsash 1 1/2 b around\nborder 3 b\nborder 4 c\nbinding 2 1/2 c\n", nil, Options{LeastCloth: true, DiagonalBorders: true, Copies: 3}},
		{"wide borders", "side 10\n" + abc + "block A plain piece a\ngrid\n A A A A\nrepeat down 6\nborder 19 b\nborder 20 c corners a\nbinding 2 1/2 c\n", nil, Options{}},
		{"wide borders, diagonal seams", "side 10\n" + abc + "block A plain piece a\ngrid\n A A A A\nrepeat down 6\nborder 19 b\nborder 20 c corners a\nbinding 2 1/2 c\n", nil, Options{DiagonalBorders: true, LeastCloth: true}},
		{"more long strips than are grouped", "side 8\n" + abc + "block A plain piece a\ngrid\n A A A A A\nrepeat down 24\nsash 1 b\n", nil, Options{Copies: 1000}},
		{"more long strips than are grouped, with the least cloth", "side 8\n" + abc + "block A plain piece a\ngrid\n A A A A A\nrepeat down 24\nsash 1 b\n", nil, Options{Copies: 1000, LeastCloth: true}},
		{"more long pieces than the best groups are looked for", "side 8\n" + abc + "block A plain piece a\ngrid\n A A A A A\nrepeat down 20\nsash 1 b\nborder 2 1/4 b\n", nil, Options{Copies: 4, LeastCloth: true}},
		{"precuts for a few", "side 4\nfabric a #111 from 1 fat-quarters\nfabric b #888 from 2 squares 10\nblock A plain piece a\nblock B plain piece b\ngrid\n A B A B\n B A B A\nborder 2 a\nbinding 2 1/2 b\n", nil, Options{}},
		{"centimeters", "units cm\nside 15\nfabric a #111 on-hand 90 cm\nfabric b #888\nblock A web wedges a kites b\nblock B ring wedges a corners b\ngrid\n A B A B\nrepeat down 6\nborder 8 a\nborder 6 b lengthwise\nbacking b\nbinding 6.5 a\n", nil, Options{}},
	}
}

// specialTop is its layout laid out.
func specialTop(t *testing.T, c specialPlan) *quilt.Top {
	top := lay.Top(t, c.text)
	for i := range top.Fabrics {
		if top.Fabrics[i].Cloth != nil && c.cloth != nil {
			top.Fabrics[i].Cloth = c.cloth
		}
	}
	return top
}

// TestSpecialPlansStay: plans with what plans rarely have, as they were when somebody looked at them last, and what they cost: a line
// that changes is looked at, and one that takes more cloth or more strips than before is a fault, whatever else got better. That a plan
// supplies its top and adds up the laws say, here as well.
func TestSpecialPlansStay(t *testing.T) {
	var b bytes.Buffer
	for _, c := range specialPlans() {
		top := specialTop(t, c)
		var p *Plan
		steps := stop.Count(func(sign *stop.Sign) { p = Build(sign, top, c.options) })
		if err := unsupplied(top, p); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if err := unlisted(top, p); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		for i := range p.Sets {
			if err := ofAnotherSet(p, &p.Sets[i]); err != nil && len(p.Faults) == 0 {
				t.Errorf("%s, set %d: %v", c.name, i, err)
			}
		}
		if err := misreckoned(top, p, &c.options); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if err := badlyPlaced(top, p); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		fmt.Fprintf(&b, "%s, %d steps\n%s%s", c.name, steps, planText(p), rareText(c.text, p))
	}
	golden.Text(t, "testdata/special_plans.txt", b.Bytes())
}

// rareText is what few plans say: what is on hand, what comes from prints, what is left in pieces, what should be known.
func rareText(text string, p *Plan) string {
	var b strings.Builder
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		if f.OnHand != nil {
			fmt.Fprintf(&b, "  %s on hand: %+v\n", f.Name, *f.OnHand)
		}
		if f.From != nil {
			fmt.Fprintf(&b, "  %s from precuts: %d of %d, %d alone, %+v\n", f.Name, f.From.Used, f.From.Have, f.From.Alone, f.From.Sheets)
		}
		for _, e := range f.EightAlike {
			fmt.Fprintf(&b, "  %s eight alike: %+v\n", f.Name, e)
		}
		for _, c := range f.FromPrint {
			fmt.Fprintf(&b, "  %s from its print: lines %v, %d times %d strips on %d, %d repeats, %d; a stack of %d in %d strips, %d each\n",
				f.Name, c.Lines, c.Times, len(c.Strips), c.FittedCut, c.Repeats, c.LengthCut, c.StackCut, c.StackStrips, c.LayerCut)
		}
		for _, block := range f.Blocks {
			fmt.Fprintf(&b, "  %s: %d lengths %+v\n", f.Name, block.Times, block.Columns)
		}
		if f.SearchEnded || f.Tight {
			fmt.Fprintf(&b, "  %s: search ended %v, tight %v\n", f.Name, f.SearchEnded, f.Tight)
		}
	}
	for i, s := range p.Sets {
		fmt.Fprintf(&b, "  %s: %d from each, %v wanted, %v on hand, %v left\n", p.SetName(i), s.PerSet, s.Wanted, s.OnHand, s.LeftOver)
	}
	for _, d := range p.Dealt {
		fmt.Fprintf(&b, "  dealt %s: %d mixed, %d for whole webs, %d neighbors, %d sets, the first %+v\n", d.Name, d.Mixed, d.Whole, d.Neighbors, len(d.Sets), d.Sets[0])
	}
	for _, said := range append(saidOf(text, p.Faults), saidOf(text, p.Warnings)...) {
		fmt.Fprintf(&b, "  %s\n", said)
	}
	return b.String()
}
