package leftovers

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// TestHowManyAreProposed: candidates are tried in their order, twelve at the most, until there are six, no more than two of one item, which are not
// tried again.
func TestHowManyAreProposed(t *testing.T) {
	list := func(items ...Item) (c []candidate) {
		for n, item := range items {
			c = append(c, candidate{item: item, across: n})
		}
		return c
	}
	many := slices.Repeat([]Item{Mat, Pillow, Placemat, Runner}, 5)
	for name, c := range map[string]struct {
		items       []Item
		fit         func(n int) bool
		tried, made []int
	}{
		"all":         {many, func(int) bool { return true }, []int{0, 1, 2, 3, 4, 5}, []int{0, 1, 2, 3, 4, 5}},
		"none":        {many, func(int) bool { return false }, []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, nil},
		"one sort":    {slices.Repeat([]Item{Mat}, 9), func(n int) bool { return n > 0 }, []int{0, 1, 2}, []int{1, 2}},
		"mats, a few": {append(slices.Repeat([]Item{Mat}, 13), Throw), func(int) bool { return true }, []int{0, 1, 13}, []int{0, 1, 13}},
		"late ones":   {many, func(n int) bool { return n > 10 }, []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, []int{11}},
	} {
		var tried, made []int
		for _, p := range proposed(list(c.items...), func(c2 candidate) (Proposal, bool) {
			tried = append(tried, c2.across)
			return Proposal{Across: c2.across}, c.fit(c2.across)
		}) {
			made = append(made, p.Across)
		}
		if !slices.Equal(tried, c.tried) || !slices.Equal(made, c.made) {
			t.Errorf("%s: %v are tried and %v made, not %v and %v", name, tried, made, c.tried, c.made)
		}
	}
}

// TestCopiesAlike: as many things are made alike as each stock has circles for, up to twelve.
func TestCopiesAlike(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 8))
	for range 500 {
		left, all := map[int]int{}, 0
		for i := range 1 + r.IntN(3) {
			left[i] = r.IntN(40)
			all += left[i]
		}
		if all == 0 {
			continue
		}
		circles, want := 1+r.IntN(all), 0
		for copies := 12; want == 0; copies-- { // laid out: each thing takes one circle of a stock, and all others the same
			have := 0
			for _, n := range left {
				for ; n >= copies; n -= copies {
					have++
				}
			}
			if have >= circles {
				want = copies
			}
		}
		if got := copiesOf(left, circles); got != want {
			t.Fatalf("of %v %d things of %d circles are made, not %d", left, got, circles, want)
		}
	}
}

// TestDealsAreEven: circle by circle the stock comes next that is farthest behind its share, the first of several, or where its neighbor on the left
// or above is of that, the farthest of the others, unless that is a whole circle ahead. Shares are as even as the stocks allow.
func TestDealsAreEven(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	kinds := map[bool]*blocks.Kind{}
	for _, k := range blocks.Kinds() {
		if _, ok := framed(k); ok && k.Turning != blocks.ToStarCentre {
			kinds[k.Turning.InLattice()] = k
		}
	}
	for range 400 {
		w := &work{Plan: &Plan{}}
		have := 0
		copies := 1 + r.IntN(2)
		for range 1 + r.IntN(4) {
			w.Stocks = append(w.Stocks, Stock{wedges: true, Pieces: 8*r.IntN(14) + r.IntN(8), StripCut: 7})
			have += w.Stocks[len(w.Stocks)-1].Pieces / 8 / copies
		}
		lattice := r.IntN(2) == 0
		across, down := 1+r.IntN(5), 1+r.IntN(4)
		c := candidate{main: kinds[lattice], across: across, down: down, copies: copies, stripCut: 7, circles: make([]int, across*down)}
		if have < across*down {
			continue
		}
		if lattice {
			c.across, c.down = 2*across, 2*down
		}
		shares := make([]int, len(w.Stocks))
		for i := range shares {
			shares[i] = w.Stocks[i].Pieces / 8 / copies
		}
		for ; have > across*down; have-- {
			most := 0
			for i := range shares {
				if shares[i] > shares[most] {
					most = i
				}
			}
			shares[most]--
		}
		if got := w.shares(&c); !slices.Equal(got, shares) {
			t.Fatalf("%v in %d by %d: the shares are %v, not %v", w.Stocks, across, down, got, shares)
		}
		w.deal(&c)
		if want := dealtPlainly(shares, across, down); !slices.Equal(c.circles, want) {
			t.Fatalf("shares of %v in %d by %d are dealt %v, not %v", shares, across, down, c.circles, want)
		}
	}
}

// dealtPlainly is what TestDealsAreEven says.
func dealtPlainly(shares []int, across, down int) []int {
	var dealt []int
	for row := range down {
		for column := range across {
			n := len(dealt)
			var order []int // stocks that have circles left, the farthest behind first
			behind := func(i int) int {
				count := 0
				for _, d := range dealt {
					if d == i {
						count++
					}
				}
				return shares[i]*(n+1) - count*across*down
			}
			for i := range shares {
				if behind(i) > shares[i]*(n+1-across*down) {
					order = append(order, i)
				}
			}
			slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(behind(b), behind(a)) })
			next := order[0]
			for _, i := range order {
				if column > 0 && dealt[n-1] == i || row > 0 && dealt[n-across] == i {
					continue
				}
				if behind(i) > -across*down {
					next = i
				}
				break
			}
			dealt = append(dealt, next)
		}
	}
	return dealt
}

// TestFabricsStandApart: of the quilt's fabrics that are not ruled out the one farthest in value from some, in the mean, is taken, the first of
// several; one that the quilt uses so counts for 15 more. Where all are ruled out all may be taken.
func TestFabricsStandApart(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 42))
	tied := 0
	for range 600 {
		w := &work{top: &quilt.Top{}, plan: &cutting.Plan{}}
		grays := []uint8{20, 20, 90, 150, 150, 240}
		for f := range 6 {
			g := grays[r.IntN(6)]
			w.top.Fabrics = append(w.top.Fabrics, quilt.Fabric{Colour: palettes.Colour{R: g, G: g, B: g}})
			if r.IntN(4) > 0 {
				w.plan.Fabrics = append(w.plan.Fabrics, cutting.Fabric{Index: f})
			}
		}
		r.Shuffle(len(w.plan.Fabrics), func(a, b int) {
			w.plan.Fabrics[a].Index, w.plan.Fabrics[b].Index = w.plan.Fabrics[b].Index, w.plan.Fabrics[a].Index
		})
		var from, not, used []int
		for f := range 6 {
			for _, list := range []*[]int{&from, &not, &used} {
				if r.IntN(3) == 0 {
					*list = append(*list, f)
				}
			}
		}
		if r.IntN(5) == 0 {
			not = []int{0, 1, 2, 3, 4, 5}
		}
		if len(from) == 0 || len(w.plan.Fabrics) == 0 {
			continue
		}
		light := func(f int) float64 { return w.top.Fabrics[f].Colour.Lightness() }
		mean := 0.0
		for _, f := range from {
			mean += light(f)
		}
		mean /= float64(len(from))
		worth := func(f int) float64 {
			if slices.Contains(used, f) {
				return math.Abs(light(f)-mean) + 15
			}
			return math.Abs(light(f) - mean)
		}
		var may, all []int
		for _, f := range w.plan.Fabrics {
			if all = append(all, f.Index); !slices.Contains(not, f.Index) {
				may = append(may, f.Index)
			}
		}
		if len(may) == 0 {
			may = all
		}
		want := may[0]
		for _, f := range may[1:] {
			if worth(f) == worth(want) {
				tied++
			} else if worth(f) > worth(want)+1e-9 {
				want = f
			}
		}
		if got := w.contrasting(from, not, func(f int) bool { return slices.Contains(used, f) }); got != want && math.Abs(worth(got)-worth(want)) > 1e-9 || got != want && light(got) == light(want) && slices.Contains(used, got) == slices.Contains(used, want) {
			t.Fatalf("%v, from %v, not %v, used %v: %d is taken, not %d", w.plan.Fabrics, from, not, used, got, want)
		}
	}
	if tied < 20 {
		t.Errorf("only %d fabrics are worth as much as others", tied)
	}
}

// TestUsedSoInTheQuilt: a fabric is ground that lies beside wedges in blocks, be it in the first of the grid, plain squares not, and makes a border that lies round the quilt.
func TestUsedSoInTheQuilt(t *testing.T) {
	top := lay.Top(t, "strip 4\nfabric navy #111111\nfabric rust #552211\nfabric cream #eeeeee\nfabric sand #ddccaa\nfabric moss #224411\nfabric teal #116677\nfabric idle #777777\nstrip-set two moss 2 rust rest\nblock R ring wedges navy two corners cream\nblock P plain piece sand\ngrid\n  R P\nsash 1 teal\nborder 1 rust\nborder 2 moss corners navy\nbinding 2 1/2 idle\n")
	w := &work{top: top, plan: cutting.Build(nil, top, cutting.Options{})}
	for f := range top.Fabrics {
		name := top.Fabrics[f].Name
		if got := w.groundNow(f); got != (name == "cream") {
			t.Errorf("that %s is ground is %v", name, got)
		}
		if got := w.borderNow(f); got != (name == "rust" || name == "moss" || name == "navy") {
			t.Errorf("that %s makes a border is %v", name, got)
		}
	}
	first := lay.Top(t, "strip 4\nfabric cream #eeeeee\nfabric navy #111111\nblock R ring wedges navy corners cream\ngrid\n  R\nborder 1 cream\n")
	w = &work{top: first, plan: cutting.Build(nil, first, cutting.Options{})}
	if !w.groundNow(0) || w.groundNow(1) || !w.borderNow(0) || w.borderNow(1) {
		t.Error("the only block's corners are no ground, its wedges are, or the border is another")
	}
}

// TestFabricsOfRoles: pieces beside wedges are of the ground, but for the points of stars that float, which are of the edge's fabric; kinds that a
// grid has not have no such pieces.
func TestFabricsOfRoles(t *testing.T) {
	w := &work{}
	for _, k := range blocks.Kinds() {
		frame, ok := framed(k)
		if !ok {
			continue
		}
		for _, down := range []int{2, 4} {
			c := &candidate{main: k, frame: frame, down: down, ground: 5, edge: 7}
			in := []*blocks.Kind{k}
			if frame != nil && down == 2 {
				in = []*blocks.Kind{frame}
			} else if frame != nil {
				in = []*blocks.Kind{k, frame}
			}
			if !slices.Equal(c.kinds(), in) {
				t.Errorf("%s, %d down: %d kinds", k.Name, down, len(c.kinds()))
			}
			for _, role := range []string{"kites", "corners", "background", "pieces", ""} {
				want := -1
				for _, kind := range in {
					if kind.Role(role) >= 0 {
						want = map[bool]int{true: 7, false: 5}[kind.Turning == blocks.ToStarCentre && role == "kites"]
					}
				}
				if got := w.fabricFor(c, role); got != want {
					t.Errorf("%s, %d down: %s are of fabric %d, not %d", k.Name, down, role, got, want)
				}
			}
		}
	}
}

// TestLabelsOfTheGrid: each place of the grid has the label of its circle's stock: a ring's own, of stars the one that four blocks share; of webs
// the blocks of the edge are the frame's.
func TestLabelsOfTheGrid(t *testing.T) {
	for _, k := range blocks.Kinds() {
		if _, ok := framed(k); !ok {
			continue
		}
		c := &candidate{main: k, across: 8, down: 6}
		labels := map[int]string{}
		for n := range 48 {
			c.circles = append(c.circles, 50+n)
			labels[50+n] = fmt.Sprint("L", n)
		}
		for row := range 6 {
			for column := range 8 {
				want := fmt.Sprint("L", 8*row+column)
				switch {
				case k.Turning == blocks.OnWebCentres && row%5*(column%7) == 0:
					want = "F"
				case k.Turning == blocks.OnWebCentres:
					want = "W"
				case k.Turning.InLattice():
					want = fmt.Sprint("L", 4*(row>>1)+column>>1)
				}
				if got := c.label(row, column, labels); got != want {
					t.Errorf("%s: row %d, column %d has the label %s, not %s", k.Name, row, column, got, want)
				}
			}
		}
	}
}

// TestSetsAreWrittenOnce: a strip set is written with the widths of its strips; where these were rounded, and do not come to the strip, the last one
// is what the others leave.
func TestSetsAreWrittenOnce(t *testing.T) {
	in := func(quarters measure.NM) measure.NM { return quarters * measure.Inch / 4 }
	w := &work{Plan: &Plan{}, top: &quilt.Top{Fabrics: []quilt.Fabric{{Name: "navy"}, {Name: "rust"}, {Name: "moss"}}}, plan: &cutting.Plan{Fabrics: []cutting.Fabric{{Index: 2}, {Index: 0}, {Index: 1}}}}
	bands := []cutting.Band{{Fabric: 1, WidthCut: in(6)}, {Fabric: 2, WidthCut: in(7)}, {Fabric: 0, WidthCut: in(5)}}
	w.plan.Sets = []cutting.StripSet{{Bands: bands, WidthCut: in(14), StripCut: in(14)}, {Bands: bands, WidthCut: in(14), StripCut: in(14) + 1}}
	w.Stocks = []Stock{{Cloth: "even", set: 0}, {Cloth: "off", set: 1}, {Cloth: "even", set: 0, Reversed: true}, {Cloth: "navy", set: -1}}
	var got []string
	c := &candidate{circles: []int{0, 1, 2, 3, 2, 0}}
	w.setLines(c, func(format string, a ...any) { got = append(got, fmt.Sprintf(format, a...)) })
	want := "strip-set even navy 1 1/2 in rust 1 3/4 in moss 1 1/4 in|strip-set off navy 1 1/2 in rust 1 3/4 in moss rest"
	if strings.Join(got, "|") != want {
		t.Errorf("written is %q, not %q", strings.Join(got, "|"), want)
	}
	for set, reversed := range map[int]string{0: "[0 1 2]", 2: "[2 1 0]", 3: "[0]"} {
		if of := fmt.Sprint(w.fabricsOf(&w.Stocks[set])); of != reversed {
			t.Errorf("stock %d is of %s, not %s", set, of, reversed)
		}
	}
}

// TestStocksOfOneSort: what is left of one sort of pieces stands together, wherever a plan tells of it; names of strip sets that a fabric has are numbered.
func TestStocksOfOneSort(t *testing.T) {
	top := lay.Top(t, worked()[0].text)
	plan := cutting.Build(nil, top, cutting.Options{})
	once := stocks(top, plan)
	plan.OnHand = append(plan.OnHand, plan.OnHand...)
	twice := stocks(top, plan)
	if len(once) != len(twice) || len(once) < 2 {
		t.Fatalf("%d stocks are %d, told twice", len(once), len(twice))
	}
	for i := range once {
		want := once[i]
		want.Pieces *= 2
		if twice[i] != want {
			t.Errorf("told twice %+v is %+v", once[i], twice[i])
		}
	}
	taken := map[string]bool{"glow": true, "glow-2": true, "dusk": true}
	for name, want := range map[string]string{"glow": "glow-3", "dusk": "dusk-2", "moss": "moss"} {
		if got := freeName(name, taken); got != want {
			t.Errorf("%s is called %s, not %s", name, got, want)
		}
	}
}

// TestManyLabels: blocks have a letter each, and after Z the letters again with an x.
func TestManyLabels(t *testing.T) {
	w := &work{Plan: &Plan{}, top: &quilt.Top{Fabrics: []quilt.Fabric{{Name: "navy"}}}}
	var ring *blocks.Kind
	for _, k := range blocks.Kinds() {
		if _, ok := framed(k); ok && k.Turning == blocks.Fixed {
			ring = k
		}
	}
	c := &candidate{main: ring, across: 54, down: 1}
	for n := range 54 {
		w.Stocks = append(w.Stocks, Stock{wedges: true, set: -1, Cloth: "navy"})
		c.circles = append(c.circles, n)
	}
	var lines []string
	w.blockLines(c, func(format string, a ...any) { lines = append(lines, fmt.Sprintf(format, a...)) })
	got := strings.Fields(lines[len(lines)-1])
	if len(got) != 54 {
		t.Fatalf("%d blocks across", len(got))
	}
	for n, label := range got {
		if want := string("ABCDEFGHIJKLMNOPQRSTUVWXYZ"[n%26]) + strings.Repeat("x", n/26); label != want || !strings.HasPrefix(lines[n], "block "+want+" ") {
			t.Errorf("block %d is %s, not %s: %s", n, label, want, lines[n])
		}
	}
}
