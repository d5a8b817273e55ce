package cutting

import (
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/lay"
)

// saidOf is what a plan faults or warns of: the words of the layout that it is about, the sentence, and what to do.
func saidOf(text string, list []Fault) (said []string) {
	for _, f := range list {
		said = append(said, text[f.Place.Start:f.Place.End]+" | "+f.Message+" | "+f.Hint)
	}
	return said
}

// TestFaultsAndWarnings: every sentence about what cannot be cut, or should be known before, once, with its place and what would be
// right. Sizes are worked out by hand: a square takes half an inch more than it finishes, a half-square triangle's 7/8 in.
func TestFaultsAndWarnings(t *testing.T) {
	const ab = "fabric a #111\nfabric b #888\n"
	const large, shorter = "a tumbler of this size is larger than charts go, 120 in", "make the blocks smaller, or the pieces of the column shorter"
	for _, c := range []struct {
		text             string
		options          Options
		faults, warnings []string
	}{
		{"side 119 9/16\nusable-width 300\n" + ab + "block A tumblers pieces a b about 60\ngrid\n A\n A\n", Options{}, []string{"b | " + large + " | " + shorter, "a | " + large + " | " + shorter}, nil},
		{"side 6\nusable-width 300\n" + ab + "block A tumblers pieces a b about 100\ngrid\n A\nrepeat down 66\n", Options{}, []string{"b | " + large + " | " + shorter, "a | " + large + " | " + shorter}, nil},
		{"side 12\nusable-width 8\n" + ab + "block A plain piece a\ngrid\n A A\n", Options{}, []string{"a | a square is cut 12 1/2 in long, but a is 8 in between its selvages | a block's side of 7 1/2 in would fit"}, nil},
		{"side 12\nusable-width 8\n" + ab + "block A halves pieces a\ngrid\n A A\n", Options{}, []string{"a | a half-square triangle is cut from a square of 12 7/8 in, but a is 8 in between its selvages | a block's side of 7 1/8 in would fit"}, nil},
		{"side 12\nusable-width 8\n" + ab + "block A halves pieces a\ngrid\n A A\n", Options{LongEdgesStraight: true}, []string{"a | a half-square triangle is cut from a square of 18 1/4 in, but a is 8 in between its selvages | a block's side of 4 3/4 in would fit"}, nil},
		{"side 12\nusable-width 4\n" + ab + "block A ring wedges a corners b\ngrid\n A\n", Options{}, []string{
			"a | a wedge from a strip of 6 1/2 in cut takes about 5 3/4 in of the strip, but a is 4 in between its selvages | a block's side of 7 13/16 in would fit",
			"b | a corner triangle is cut from a square of 4 3/8 in, but b is 4 in between its selvages | a block's side of 10 11/16 in would fit"}, nil},
		{"strip 6\nusable-width 3\n" + ab + "strip-set s a rest b 1\nblock A web wedges s kites a\ngrid\n A A\n", Options{}, []string{
			"a | a kite is cut 5 in long, but a is 3 in between its selvages | write strip 3 3/8, which makes the block's side about 4 3/8 in",
			"s | a wedge from a strip of 6 in cut takes about 5 5/16 in of the strip, but the strip set is 3 in between its selvages | write strip 3 3/16, which makes the block's side about 4 1/8 in"}, nil},
		{"side 40\nusable-width 30\n" + ab + "block A tumblers pieces a about 24\ngrid\n A\n A\n", Options{}, []string{
			"a | a tumbler from a strip of 40 1/2 in cut takes about 44 in of the strip, but a is 30 in between its selvages | a block's side of 27 1/16 in would fit"}, nil},
		{"side 1\nusable-width 1\nseam 1/2\n" + ab + "block A plain piece a\ngrid\n A A\n", Options{}, []string{"a | a square is cut 2 in long, but a is 1 in between its selvages | use wider fabric"}, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A\nborder 41 b corners a\n", Options{}, []string{"border 41 b corners a | a square is cut 41 1/2 in long, but a is 40 in between its selvages | the longest that it gives is 39 1/2 in finished"}, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A\nborder 41 b lengthwise\n", Options{}, []string{"border 41 b lengthwise | a border of 41 in finished is cut 41 1/2 in, but b is 40 in between its selvages | the widest border that b gives is 39 1/2 in finished"}, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A\nborder 39 1/2 b lengthwise\n", Options{}, nil, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A A\nborder 40 b\n", Options{}, nil, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A A\nborder 39 1/2 b\n", Options{DiagonalBorders: true}, []string{"border 39 1/2 b | strips 40 in wide, joined, would lose all their length | give it another width"}, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A A\nborder 39 1/2 b\n", Options{DiagonalBorders: true, LeastCloth: true}, []string{"border 39 1/2 b | strips 40 in wide, joined, would lose all their length | give it another width"}, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A A\nborder 39 b\n", Options{DiagonalBorders: true, LeastCloth: true}, nil, nil},
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A A\nborder 14 b lengthwise\nborder 12 b\n", Options{DiagonalBorders: true, LeastCloth: true}, nil, nil}, // beside 11 in, where a join takes 12 1/2
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A A\nborder 14 b lengthwise\nbinding 12 b\n", Options{LeastCloth: true}, nil, nil},
		{"side 1/4\nusable-width 5\n" + ab + "block A plain piece a\ngrid\n A A\nbinding 5 b\n", Options{}, []string{"binding 5 b | the binding cannot be planned: fabric of 5 in is used up by the joins, which take 5 in each | give the binding another width"}, nil},
		{"side 1/4\nusable-width 5\n" + ab + "block A plain piece a\ngrid\n A A\nbinding 5 b\n", Options{LeastCloth: true}, []string{"binding 5 b | the binding cannot be planned: fabric of 5 in is used up by the joins, which take 5 in each | give the binding another width"}, nil},
		{"side 1/4\nusable-width 1\n" + ab + "block A plain piece a\ngrid\n A A\nbacking b\n", Options{}, nil, []string{"fabric b #888 | the backing cannot be planned: fabric of 1 in leaves nothing between two seam allowances of 1/2 in | "}},
		{"side 1/4\nusable-width 1\n" + ab + "block A plain piece a\ngrid\n A A\n", Options{}, nil, nil},                // a backing of one's choice may be of other cloth
		{"side 20\n" + ab + "block A plain piece a\ngrid\n A A A\nborder 100 b\n", Options{LeastCloth: true}, nil, nil}, // wider than the best groups are looked for
		{"side 41\n" + ab + "fabric w stripes a 1 b 1\nblock A plain piece w lengthwise\ngrid\n A A A\n", Options{}, []string{"w lengthwise | a square is cut from a lengthwise strip of 41 1/2 in, but the fabric is 40 in between its selvages | make the blocks smaller, or use wider fabric"}, nil},
		{"side 39 1/2\n" + ab + "fabric w stripes a 1 b 1\nblock A plain piece w lengthwise\ngrid\n A A A\n", Options{}, nil, nil},
		{"side 10\n" + ab + "block A tumblers pieces a b about 4 1/2\ngrid\n A\n A\n A\n", Options{}, nil, []string{
			"a | the narrow edge of these tumblers finishes about 1/8 in, less than two seam allowances, and their seams will lie on top of each other | write line 11 1/8, or more, or a greater length"}},
		{"side 4\nfabric a #111 from 3 squares 4\nfabric b #888 from 2 squares 8\nblock A plain piece a\nblock B plain piece b\ngrid\n A B\n", Options{}, nil, []string{
			"from 3 squares 4 | nothing of a can be cut from a 4 in square | leave from out, or write larger precuts: the smallest piece takes 4 1/2 by 4 1/2 in"}},
		{"side 8\nfabric a #111\nfabric b #888 from 2 squares 8\nblock A plain piece a\nblock B halves pieces b a\ngrid\n A B\nborder 1 b\n", Options{}, nil, []string{
			"from 2 squares 8 | nothing of b can be cut from an 8 in square | leave from out, or write larger precuts: the smallest piece takes 1 1/2 by 10 1/2 in"}},
		{"side 8\nfabric a #111 from 3 squares 3\nfabric b #888\nblock A ring wedges a corners b\nblock B plain piece a\ngrid\n A B\n", Options{}, nil, []string{ // a wedge 4 1/2 in high is 4 1/16 in wide
			"from 3 squares 3 | nothing of a can be cut from a 3 in square | leave from out, or write larger precuts: the smallest piece takes about 4 1/2 by 4 1/16 in"}},
		{"side 8\nfabric a #111\nfabric b #888 from 2 squares 8\nblock A plain piece a\nblock B ring wedges a corners b\ngrid\n A B\nborder 1 b\n", Options{}, nil, nil},
	} {
		top := lay.Top(t, c.text)
		p := Build(nil, top, c.options)
		if err := unsupplied(top, p); err != nil && c.faults == nil {
			t.Errorf("%s: no fault, but %v", c.text, err)
		}
		if bound := p.Binding != nil; bound != (top.CutFacts.Binding != nil) && c.faults == nil {
			t.Errorf("%s: no fault, but a binding %v", c.text, bound)
		}
		for _, l := range p.Lines { // whether it can be cut or not
			if shape := l.Piece.Shape.Description(); l.Piece.AcrossCut == 0 && l.Piece.Grain != shape.Grain {
				t.Errorf("%s: the grain of a %s is %v, not %v", c.text, l.Piece.Shape, l.Piece.Grain, shape.Grain)
			}
		}
		if got := saidOf(c.text, p.Faults); !slices.Equal(got, c.faults) {
			t.Errorf("%s\nfaults\n%s\nwant\n%s", c.text, strings.Join(got, "\n"), strings.Join(c.faults, "\n"))
		}
		if got := saidOf(c.text, p.Warnings); !slices.Equal(got, c.warnings) {
			t.Errorf("%s\nwarnings\n%s\nwant\n%s", c.text, strings.Join(got, "\n"), strings.Join(c.warnings, "\n"))
		}
	}
}

// TestLargestThatFits: the side, or the strip, that is said to fit does, and one mark of a ruler more does not.
func TestLargestThatFits(t *testing.T) {
	tried := 0
	for _, block := range []string{"block A plain piece a\n", "block A halves pieces a b\n", "block A ring wedges a corners b\n", "block A web wedges a kites b\n", "block A floating wedges a background b\n", "strip-set s a rest b 3/4\nblock A web wedges s kites b\n"} {
		for _, width := range []string{"4", "5 7/16", "8"} {
			for _, head := range []string{"side ", "strip "} {
				text := func(size string) string {
					return head + size + "\nusable-width " + width + "\nfabric a #111\nfabric b #888\n" + block + "grid\n A A\n A A\n"
				}
				top, err := lay.Read(text("11"))
				if err != nil { // a plain block has no strip
					continue
				}
				for _, f := range Build(nil, top, Options{}).Faults {
					_, hint, _ := strings.Cut(f.Hint, head)
					hint, _, _ = strings.Cut(strings.TrimPrefix(hint, "of "), map[string]string{"side ": " in would", "strip ": ", which"}[head])
					if head == "side " {
						_, hint, _ = strings.Cut(f.Hint, "side of ")
						hint = strings.TrimSuffix(hint, " in would fit")
					}
					r, err := measure.Read(hint)
					if err != nil {
						t.Fatalf("%q: %v", f.Hint, err)
					}
					length := r.In(measure.Inches)
					fits := length.NM()
					for more, want := range map[measure.NM]bool{0: true, measure.Inch / 16: false} {
						other := Build(nil, lay.Top(t, text(measure.Number(fits+more, measure.Inches))), Options{})
						piece, _, _ := strings.Cut(f.Message, " is ")
						piece, _, _ = strings.Cut(piece, " from ")
						if got := !slices.ContainsFunc(other.Faults, func(g Fault) bool { return strings.HasPrefix(g.Message, piece) }); got != want {
							t.Errorf("%s%s, %s, fabric %s wide: %v with %d nm more: fits %v", head, block, f.Hint, width, piece, more, got)
						}
					}
					tried++
				}
			}
		}
	}
	if tried < 20 {
		t.Errorf("only %d hints", tried)
	}
}
