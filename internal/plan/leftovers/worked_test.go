package leftovers

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
)

// worked are layouts that leave wedges and other pieces of every sort.
func worked() []struct{ name, text string } {
	return []struct{ name, text string }{
		{"one strip set, wedges on hand of both orders", "strip 4\nfabric navy #1f3350 \"night\"\nfabric rust #b5532a\nfabric cream #f4ead7\nfabric sand #d8c9a7 usable-width 44\nstrip-set shore rust 2 1/8 navy 2 3/8\nblock R ring wedges shore corners cream\ngrid\n  R\nborder 2 sand\nbinding 2 1/4 navy\non-hand wedges shore 70\non-hand wedges reversed shore 41\non-hand corners cream 30\n"},
		{"three fabrics", "strip 3 1/2\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric cream #f4ead7\nblock R ring wedges navy rust corners cream\nblock S ring wedges teal rust corners cream\ngrid\n  R S\non-hand wedges navy 60\non-hand wedges rust 44\non-hand wedges teal 20\non-hand corners cream 9\n"},
		{"centimeters, another seam", "units cm\nseam 1 cm\nstrip 12 cm\nusable-width 110 cm\nfabric glow #d9a441\nfabric plum #452a40\nfabric chalk #f4ecdc\nstrip-set glow-2 glow equal plum equal\nstrip-set dusk plum 5 cm glow rest\nblock R ring wedges glow-2 corners chalk\nblock S ring wedges reversed dusk corners chalk\ngrid\n  R S\non-hand wedges glow-2 50\non-hand wedges reversed dusk 33\n"},
		{"a strip set that is called as a fabric", "strip 5\nfabric glow #d9a441\nfabric plum #452a40\nfabric chalk #f4ecdc\nstrip-set blaze glow 2 plum rest\nwebs blaze\nblock W web kites chalk\ngrid\n  W W\n  W W\nbinding 2 1/2 plum\non-hand wedges blaze 90\non-hand kites chalk 12\n"},
		{"both orders of a set", "strip 4\nfabric navy #1f3350\nfabric rust #b5532a\nfabric cream #f4ead7\nstrip-set shore rust 2 navy rest\nblock R ring wedges shore reversed shore corners cream\ngrid\n  R\non-hand wedges shore 28\non-hand wedges reversed shore 21\n"},
		{"a set at two heights, fabrics alike in value", "side 8\nfabric navy #1f3350\nfabric rust #b5532a\nfabric fog #e8e8e8\nfabric mist #e8e8e8\nstrip-set shore rust 2 navy rest\nblock R ring wedges shore corners fog\nblock W web wedges shore kites mist\ngrid\n  R W W\n  R W W\n"},
		{"a few wedges", "strip 2 1/2\nfabric a #111111\nfabric b #888888\nfabric c #eeeeee\nblock R ring wedges a b corners c\ngrid\n  R\non-hand wedges a 12\non-hand wedges b 36\n"},
	}
}

// TestWorkedLeftovers: what is left and what it makes, in full, of layouts that leave pieces of every sort; somebody has looked at it.
func TestWorkedLeftovers(t *testing.T) {
	var b bytes.Buffer
	for _, c := range worked() {
		top := lay.Top(t, c.text)
		plan := cutting.Build(nil, top, cutting.Options{})
		p := Build(nil, top, plan)
		fmt.Fprintf(&b, "== %s\n", c.name)
		for i, s := range p.Stocks {
			fmt.Fprintf(&b, "left %d: %d %s %s reversed %v, from strips of %s\n", i, s.Pieces, s.Cloth, s.Role, s.Reversed, measure.Text(s.StripCut, p.Units))
		}
		for i := range p.Proposals {
			q := &p.Proposals[i]
			fmt.Fprintf(&b, "-- %d %s of %d by %d blocks %v, field %s by %s, finished %s by %s, border %s, used %v\n%s", q.Copies, q.Item, q.Across, q.Down, q.Kinds,
				measure.Text(q.Field.Length, p.Units), measure.Text(q.Field.Width, p.Units), measure.Text(q.Finished.Length, p.Units), measure.Text(q.Finished.Width, p.Units), measure.Text(q.Border, p.Units), q.Used, q.Layout)
			if err := wrong(p, q); err != nil {
				t.Errorf("%s, proposal %d: %v", c.name, i+1, err)
			}
		}
	}
	golden.Text(t, "testdata/worked.txt", b.Bytes())
}

// TestItemsBySize: what things are called by their size in inches, just at each bound, just below it and just above. Placemats are 11 to 16 by 15
// to 22 in, pillows 10 to 21 in square, runners up to 22 in wide and 28 to 96 in long and at least 2.2 times as long as wide; mats are shorter
// than 24 in, wall hangings up to 48 in, throws up to 110 in, none of them more than 1.6 times as long as wide. Common practice, from memory.
func TestItemsBySize(t *testing.T) {
	w := &work{Plan: &Plan{}}
	const none = Item(99)
	for _, c := range []struct {
		long, wide, border float64
		want               Item
	}{
		{15, 11, 0, Placemat}, {14.9, 11, 0, Mat}, {15, 10.9, 0, Mat}, {22, 16, 0, Placemat}, {22.1, 16, 0, Mat}, {22, 16.1, 0, Mat}, {16, 15.9, 0, Placemat}, {16, 16, 0, Pillow},
		{10, 10, 0, Pillow}, {9.9, 9.9, 0, Mat}, {21, 21, 0, Pillow}, {21.1, 21.1, 0, Mat},
		{13, 9, 1, Placemat}, {12.9, 9, 1, Mat}, {8, 8, 1, Pillow}, {7.9, 7.9, 1, Mat}, {20, 14, 2, Placemat}, {15, 11, 1, Placemat},
		{28, 12, 0, Runner}, {27.9, 12, 0, none}, {48.4, 22, 0, Runner}, {48.3, 22, 0, none}, {48.5, 22.1, 0, none}, {50, 22.1, 0, none}, {50, 22, 0, Runner}, {96, 12, 0, Runner}, {96.1, 12, 0, none}, {26, 10, 1, Runner}, {25.9, 10, 1, none},
		{23.9, 15, 0, Mat}, {24, 15, 0, Hanging}, {24, 14.9, 0, none}, {48, 30, 0, Hanging}, {48.1, 31, 0, Throw}, {110, 90, 0, Throw}, {110.1, 90, 0, none}, {106, 86, 2, Throw}, {106.1, 86, 2, none},
		{32, 20, 0, Hanging}, {32.1, 20, 0, none},
	} {
		in := func(v float64) measure.NM { return measure.NM(v*10) * measure.Inch / 10 }
		cand := candidate{border: in(c.border)}
		long, wide := in(c.long), in(c.wide)
		// Blocks of a tenth of an inch give any size.
		cand.side, cand.across, cand.down = measure.Inch/10, int(long/(measure.Inch/10)), int(wide/(measure.Inch/10))
		item, ok := w.itemOf(&cand)
		if !ok {
			item = none
		}
		if item != c.want {
			t.Errorf("%g by %g in with a border of %g is item %d, expected %d", c.long, c.wide, c.border, item, c.want)
		}
		if plain := c.long >= 15 && c.long <= 22 && c.wide >= 11 && c.wide <= 16 && c.long > c.wide; plain != (cand.border == 0) && c.border > 0 {
			t.Errorf("%g by %g in: the border is %d", c.long, c.wide, cand.border)
		}
	}
}

// TestBordersAndBindings: a border is a quarter of a block, on half inches or half centimeters, from 1 in or 1 cm to 3 in or 7.5 cm; a binding is
// cut as the quilt's, or 2 1/2 in or 6.5 cm, and never less than four seam allowances. Common practice, from memory.
func TestBordersAndBindings(t *testing.T) {
	const half, five = measure.Inch / 2, 5 * measure.Millimetre
	for _, c := range []struct {
		units        measure.System
		side, border measure.NM
	}{{measure.Inches, 12 * half, 3 * half}, {measure.Inches, 2 * half, 2 * half}, {measure.Inches, 24 * half, 6 * half}, {measure.Inches, 40 * half, 6 * half}, {measure.Inches, 14 * half, 4 * half}, {measure.Inches, 22 * half, 6 * half},
		{measure.Centimetres, 20 * five, 5 * five}, {measure.Centimetres, 4 * five, 2 * five}, {measure.Centimetres, 80 * five, 15 * five}} {
		w := &work{Plan: &Plan{Units: c.units}}
		if got := w.borderFor(c.side); got != c.border {
			t.Errorf("blocks of %d have a border of %d, expected %d", c.side, got, c.border)
		}
	}
	for _, c := range []struct {
		units           measure.System
		own, seam, want measure.NM
	}{{measure.Inches, 0, measure.Inch / 4, 5 * half}, {measure.Inches, 4 * half, measure.Inch / 4, 4 * half}, {measure.Inches, 4 * half, measure.Inch, 8 * half}, {measure.Centimetres, 0, 2 * five, 13 * five}, {measure.Centimetres, 0, 4 * five, 16 * five}} {
		w := &work{Plan: &Plan{Units: c.units}, top: &quilt.Top{Seam: c.seam}}
		if c.own > 0 {
			w.top.CutFacts.Binding = &layout.Edging{Width: c.own}
		}
		if got := w.bindingCut(); got != c.want {
			t.Errorf("with a seam allowance of %d a binding is cut %d, expected %d", c.seam, got, c.want)
		}
	}
}

// TestBetterCandidates: of two grids for one item that is better which uses more circles in all, of those with as many the one of fewer things, and
// of those the one nearer to a square.
func TestBetterCandidates(t *testing.T) {
	of := func(copies, circles, across, down int) *candidate {
		return &candidate{copies: copies, circles: make([]int, circles), across: across, down: down}
	}
	for i, pair := range [][2]*candidate{{of(1, 7, 7, 1), of(1, 6, 6, 1)}, {of(3, 3, 3, 1), of(2, 4, 2, 2)}, {of(2, 4, 2, 2), of(4, 2, 2, 1)}, {of(1, 12, 4, 3), of(1, 12, 6, 2)}, {of(1, 12, 6, 2), of(1, 12, 12, 1)}} {
		if !pair[0].better(pair[1]) || pair[1].better(pair[0]) || pair[0].better(pair[0]) {
			t.Errorf("pair %d: the first is better %v, the second %v", i, pair[0].better(pair[1]), pair[1].better(pair[0]))
		}
	}
}

// TestStarsAreOfOneSort: circles are whole eights of what is left from strips of a width; of stars that float all are of the stock that makes most,
// the first of several.
func TestStarsAreOfOneSort(t *testing.T) {
	w := &work{Plan: &Plan{}}
	for _, s := range []Stock{{wedges: true, Pieces: 17, StripCut: 4}, {wedges: true, Pieces: 40, StripCut: 4}, {wedges: true, Pieces: 47, StripCut: 4}, {wedges: true, Pieces: 90, StripCut: 5}, {Pieces: 99, StripCut: 4}, {wedges: true, Pieces: 7, StripCut: 4}, {wedges: true, Pieces: 8, StripCut: 4}, {wedges: true, Pieces: 8, StripCut: 6}, {wedges: true, Pieces: 7, StripCut: 9}} {
		w.Stocks = append(w.Stocks, s)
	}
	for _, k := range blocks.Kinds() {
		want := map[int]int{0: 2, 1: 5, 2: 5, 6: 1}
		if k.Turning == blocks.ToStarCentre {
			want = map[int]int{1: 5}
		}
		if got := w.circlesLeft(k, 4); !maps.Equal(got, want) {
			t.Errorf("%s: circles are left %v, expected %v", k.Name, got, want)
		}
	}
	if got := w.strips(); !slices.Equal(got, []measure.NM{4, 5, 6}) {
		t.Errorf("strips are %v", got)
	}
}

// TestGridsAreAllThere: a kind's grids are all that are no higher than wide, up to 30 blocks across and 300 in all, and make so many circles:
// one a block, or one where four blocks of two by two meet, and of webs also those between these.
func TestGridsAreAllThere(t *testing.T) {
	for _, k := range blocks.Kinds() {
		if _, ok := framed(k); !ok {
			continue
		}
		for _, most := range []int{1, 7, 40, 1000} {
			var want []grid
			for down := 1; down <= 30; down++ {
				for across := down; across <= 30; across++ {
					n := across * down
					if k.Turning.InLattice() {
						if across%2+down%2 > 0 {
							continue
						}
						n /= 4
					}
					if k.Turning == blocks.OnWebCentres {
						for y := 2; y < down; y += 2 { // webs whose four blocks are those beside one another
							for x := 2; x < across; x += 2 {
								n++
							}
						}
					}
					if across*down <= 300 && n <= most {
						want = append(want, grid{across, down, n})
					}
				}
			}
			if got := grids(k, most); !slices.Equal(got, want) {
				t.Errorf("%s, up to %d circles: %d grids, expected %d", k.Name, most, len(got), len(want))
			}
		}
	}
}

// TestCirclesAreDealtApart: each circle is of a stock that has it, as evenly as that goes, and circles beside and above one another are unlike
// wherever two sorts take turns.
func TestCirclesAreDealtApart(t *testing.T) {
	var ring *blocks.Kind
	for _, k := range blocks.Kinds() {
		if _, ok := framed(k); ok && k.Turning == blocks.Fixed {
			ring = k
		}
	}
	for _, c := range []struct {
		stocks       []int // wedges
		across, down int
		want         []int // circles of each
		apart        bool
	}{
		{[]int{32, 32}, 4, 2, []int{4, 4}, true}, {[]int{72, 72}, 6, 3, []int{9, 9}, true}, {[]int{24, 24, 24}, 3, 3, []int{3, 3, 3}, false}, {[]int{40, 8}, 3, 2, []int{5, 1}, false},
		{[]int{16, 0, 33}, 6, 1, []int{2, 0, 4}, false}, {[]int{100, 100}, 3, 1, []int{1, 2}, true}, {[]int{80}, 3, 3, []int{9}, false},
	} {
		w := &work{Plan: &Plan{}}
		for _, n := range c.stocks {
			w.Stocks = append(w.Stocks, Stock{wedges: true, Pieces: n, StripCut: measure.Inch})
		}
		cand := candidate{main: ring, across: c.across, down: c.down, copies: 1, stripCut: measure.Inch, circles: make([]int, c.across*c.down)}
		w.deal(&cand)
		got := make([]int, len(c.stocks))
		for n, i := range cand.circles {
			got[i]++
			beside := n%c.across > 0 && cand.circles[n-1] == i || n >= c.across && cand.circles[n-c.across] == i
			if c.apart && beside {
				t.Errorf("%v in %d by %d: circle %d has a like neighbor: %v", c.stocks, c.across, c.down, n, cand.circles)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v in %d by %d: dealt are %v, expected %v", c.stocks, c.across, c.down, got, c.want)
		}
	}
}
