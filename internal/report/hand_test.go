package report

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// Small cases worked out by hand.

// TestFileNames: every letter and digit of ASCII is itself in a file's name, and what stands beside them in the code table is not.
func TestFileNames(t *testing.T) {
	for label, want := range map[string]string{
		"azAZ09": "azAZ09", "`{": "u60u7b", "@[": "u40u5b", "/:": "u2fu3a", "é": "ue9", "A b": "Au20b", "": "", "Ω12": "u3a912",
	} {
		if got := fileName(label); got != want {
			t.Errorf("%q is %q, expected %q", label, got, want)
		}
	}
}

// TestArrowsAreExplained: which blocks are turned, and which need no turning, is said where there are such blocks, down to those of a single
// step; of blocks that are a single piece nothing is said, nor of columns.
func TestArrowsAreExplained(t *testing.T) {
	const without, none = "Blocks without an arrow look the same", "These blocks need no turning"
	top := lay.Top(t, "side 6\nfabric a #111\nfabric b #888\nblock A plain piece a\ngrid\n A A\n")
	steps := func(n int) []sewing.Step { return make([]sewing.Step, n) }
	turned := sewing.Block{Steps: steps(2), Variants: make([]sewing.FabricVariant, 1)}
	if !HasArrow(&turned) {
		t.Fatal("a block that is turned has no arrow")
	}
	for _, c := range []struct {
		blocks []sewing.Block
		want   string
	}{
		{[]sewing.Block{turned}, ""},
		{[]sewing.Block{turned, {Unturned: true}}, ""},
		{[]sewing.Block{turned, {Unturned: true, Steps: steps(1)}}, without},
		{[]sewing.Block{turned, {Unturned: true, Steps: steps(3)}}, without},
		{[]sewing.Block{turned, {Unturned: true, Column: true, Steps: steps(3)}}, ""},
		{[]sewing.Block{turned, turned}, ""},
		{[]sewing.Block{{Unturned: true, Steps: steps(1)}}, none},
		{[]sewing.Block{{Unturned: true, Steps: steps(2)}}, none},
		{[]sewing.Block{{Unturned: true, Column: true, Steps: steps(2)}}, ""},
		{[]sewing.Block{{Unturned: true}}, ""},
	} {
		text := Grid{Top: top, Plan: &sewing.Plan{Blocks: c.blocks}}.LayoutShown("Figure 1", nil)
		for _, sentence := range []string{without, none} {
			if strings.Contains(text, sentence) != (sentence == c.want) {
				t.Errorf("of %d blocks is said %q, expected %q", len(c.blocks), text, c.want)
			}
		}
	}
}

// TestSizesAreNamed: the size that is written comes first among the sizes, also where there is one other alone; where a size is the layout's
// own, none does.
func TestSizesAreNamed(t *testing.T) {
	const head = "side 6\nfabric a #111\nblock A plain piece a\ngrid\n A A\n A A\n"
	for text, want := range map[string]string{
		head:                         "",
		head + "size lap across 3\n": strings.ToLower(AsWritten) + ", lap",
		head + "size lap across 3\nsize twin across 4 down 5\n":      strings.ToLower(AsWritten) + ", lap, twin",
		head + "size small\nsize twin across 4 down 5\n":             "small, twin",
		head + "size small\n":                                        "small",
		head + "size lap across 3\nsize small\nsize twin across 4\n": "small, lap, twin",
	} {
		p := &Plans{Top: lay.Top(t, text)}
		if got := strings.Join(p.SizeNames(), ", "); got != want {
			t.Errorf("%s: the sizes are %q, expected %q", text, got, want)
		}
	}
}

// TestNumbersAtTheEdges: of more rows or columns than have room at an edge every tenth, twentieth, fiftieth and so on is numbered: the first of
// these with six numbers or fewer.
func TestNumbersAtTheEdges(t *testing.T) {
	steps := []int{10, 20, 50, 100, 200, 500, 1000}
	for lines := 1; lines <= 3001; lines++ {
		n := 0
		for (lines-1)/steps[n]*steps[n]+steps[n] > 6*steps[n] { // rounded up to whole steps
			n++
		}
		if got := Every(lines); got != steps[n] {
			t.Fatalf("of %d lines every %d is numbered, expected %d", lines, got, steps[n])
		}
	}
}

// TestPlacementsHaveNumbers: two to twelve placements of a block's fabrics are told apart by numbers; one needs none, and thirteen are too many.
// A picture has room for the labels of up to twenty blocks across and down.
func TestPlacementsHaveNumbers(t *testing.T) {
	for n, want := range map[int]bool{1: false, 2: true, 3: true, 11: true, 12: true, 13: false} {
		if got := HasNumber(&sewing.Block{Variants: make([]sewing.FabricVariant, n)}); got != want {
			t.Errorf("%d placements have numbers: %v", n, got)
		}
	}
	for _, c := range []struct {
		across, down int
		want         bool
	}{{20, 20, true}, {21, 20, false}, {20, 21, false}, {1, 1, true}} {
		if got := (Grid{Top: &quilt.Top{Columns: c.across, Rows: c.down}}).Labeled(); got != c.want {
			t.Errorf("%d by %d blocks have labels: %v", c.across, c.down, got)
		}
	}
}

// TestRepeatsAreDrawn: a map of a print has a line wherever a repeat ends and the next begins, inside the fabric alone; across or along a fabric
// without a repeat there is none.
func TestRepeatsAreDrawn(t *testing.T) {
	c := cutsOf(t, "side 6\nfabric a #111\nfabric b #888\nblock A plain piece a\nblock B plain piece b\ngrid\n A B\n", cutting.Options{})
	f := &c.Fabrics[0]
	f.UsableWidth = 40 * measure.Inch
	c.plans.Top.Fabrics[f.Index].Cloth = &quilt.Cloth{}
	for _, n := range []struct{ across, along, upright, level int }{
		{0, 0, 0, 0}, {10, 0, 3, 0}, {0, 8, 0, 2}, {0, 9, 0, 2}, {13, 24, 3, 0}, {40, 23, 0, 1}, {39, 25, 1, 0}, {41, 1, 0, 23},
	} {
		p := &cutting.FromPrint{AcrossCut: measure.NM(n.across) * measure.Inch, AlongCut: measure.NM(n.along) * measure.Inch}
		d := &clothMap{cuts: c, figure: &diagram.Figure{}}
		const from, to, down = 3 * measure.Inch, 27 * measure.Inch, 5 * measure.Inch
		d.onCloth(f, p, from, to, down)
		upright, level := 0, 0
		for _, m := range d.figure.Marks {
			if m.Line == nil {
				continue
			}
			a, b := m.Line.Points[0], m.Line.Points[1]
			switch {
			case a.X == b.X && a.Y == from+down && b.Y == to+down:
				if upright++; a.X != measure.NM(upright*n.across)*measure.Inch {
					t.Errorf("%v: the %d. line is at %d", n, upright, a.X)
				}
			case a.Y == b.Y && a.X == 0 && b.X == f.UsableWidth:
				if level++; a.Y != from+down+measure.NM(level*n.along)*measure.Inch {
					t.Errorf("%v: the %d. line is at %d", n, level, a.Y)
				}
			default:
				t.Errorf("%v: a line from %v to %v", n, a, b)
			}
			if m.Line.Stroke != diagram.Repeat {
				t.Errorf("%v: a line is no repeat's", n)
			}
		}
		if upright != n.upright || level != n.level {
			t.Errorf("%v: %d lines down and %d across", n, upright, level)
		}
	}
}

// TestColumnsByTheirEnds: the first tumbler of a column is narrow where the end piece above it is long, whatever the one at the bottom is.
func TestColumnsByTheirEnds(t *testing.T) {
	for _, c := range []struct {
		cloths        int
		longer, hands [2]string
		want          string
	}{
		{2, [2]string{"left", "left"}, [2]string{"left", "right"}, "at the top a left end piece, its longer edge on the left; at the bottom a right end piece, its longer edge on the left"},
		{3, [2]string{"left", "right"}, [2]string{"left", "left"}, "at the top a left end piece, its longer edge on the left; 1 tumbler with its wide side on the right; at the bottom a left end piece, its longer edge on the right"},
		{3, [2]string{"right", "left"}, [2]string{"right", "right"}, "at the top a right end piece, its longer edge on the right; 1 tumbler with its wide side on the left; at the bottom a right end piece, its longer edge on the left"},
		{5, [2]string{"right", "left"}, [2]string{"right", "right"}, "at the top a right end piece, its longer edge on the right; 3 tumblers, the first with its wide side on the left; at the bottom a right end piece, its longer edge on the left"},
	} {
		v := &sewing.FabricVariant{Cloths: make([]int, c.cloths), Longer: c.longer[:], Hands: c.hands[:]}
		if got := columnPieces(v); got != c.want {
			t.Errorf("%d pieces: %s", c.cloths, got)
		}
	}
}

// TestPoolsThatOverlap: pools overlap where one has scraps as light as a scrap of the other that is not its darkest, and not where all of one are
// darker than all of the other.
func TestPoolsThatOverlap(t *testing.T) {
	for grays, want := range map[[4]int]bool{{0x20, 0x40, 0x80, 0xc0}: false, {0x80, 0xc0, 0x20, 0x40}: false, {0x20, 0x90, 0x80, 0xc0}: true, {0x80, 0xc0, 0x20, 0x90}: true, {0x20, 0xc0, 0x60, 0x80}: true} {
		text := "strip 4\n"
		for i, g := range grays {
			text += fmt.Sprintf("fabric f%d #%02x%02x%02x\n", i, g, g, g)
		}
		top := lay.Top(t, text+"scraps one f0 f1\nscraps two f2 f3\nblock W web wedges one kites two\ngrid\n W W\n W W\n")
		if got := newValues(&Plans{Top: top}).poolsOverlap(); got != want {
			t.Errorf("%x overlap: %v", grays, got)
		}
	}
}

// TestPoolOfThreeReachesFromItsDarkest: wherever in a pool its darkest fabric stands, the pool reaches down to it.
func TestPoolOfThreeReachesFromItsDarkest(t *testing.T) {
	for _, one := range []string{"a b c", "b a c", "b c a", "c a b"} {
		top := lay.Top(t, "strip 4\nfabric a #202020\nfabric b #606060\nfabric c #404040\nfabric d #282828\nfabric e #303030\nscraps one "+one+"\nscraps two d e\nblock W web wedges one kites two\ngrid\n W W\n W W\n")
		if !newValues(&Plans{Top: top}).poolsOverlap() {
			t.Errorf("%s: the pools do not overlap", one)
		}
	}
}

// TestBackingOfTheFirstFabric: a backing is in the kit whichever of the layout's fabrics it is of.
func TestBackingOfTheFirstFabric(t *testing.T) {
	text := "strip 4\nfabric a #204060\nfabric b #e0c0a0\nblock W web wedges a kites b\ngrid\n W W\n W W\n"
	for backing, want := range map[string]bool{"": true, "backing a\n": false, "backing b\n": false} {
		p := &Plans{Top: lay.Top(t, text+backing)}
		p.Cutting.Copies = 3
		c := &classroom{newCuts(p), newCuts(p.as(p.One()))}
		if got := slices.Contains(c.notInKit(), "backing"); got != want {
			t.Errorf("%q: the backing is not in the kit: %v", backing, got)
		}
	}
}
