package fit

import (
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// warned is what reading a layout warns of, and what laying it does.
func warned(t *testing.T, text string) (read, laid []string) {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatalf("%v in\n%s", faults, text)
	}
	return messages(faults), messages(quilt.Lay(d).Warnings)
}

// TestWarningsOfSuggestions: of those that are laid out, a suggestion tells what it is warned of when it is read and laid, and the layout is not:
// when it is read, without its borders where those are left out.
func TestWarningsOfSuggestions(t *testing.T) {
	few := "side 3\nfabric a navy\nscraps s a by piece\nblock P plain piece s\ngrid\n  P\n" // blocks side by side are alike
	odd := "strip 4\nfabric a navy\nfabric b white\nblock F floating wedges a background b\ngrid\n  F F F\n  F F F\n  F F F\n"
	told := 0
	for _, text := range []string{few, odd, few + "border 1 finished a\n", odd + "border 1 finished b\n"} {
		bare, _, _ := strings.Cut(text, "border")
		for _, wanted := range []Wanted{inches(7, 30), inches(24, 30), inches(5, 16)} {
			r, err := Fit(text, Options{Wanted: wanted})
			if err != nil {
				t.Fatal(err)
			}
			for i := range r.Suggestions[:r.LaidOut] {
				s := &r.Suggestions[i]
				now, laid := warned(t, text)
				if s.Borders == LeftOut {
					now, _ = warned(t, bare)
				}
				now = append(now, laid...)
				list, more := warned(t, s.Text)
				list = append(list, more...)
				var added []string
				for _, w := range list {
					if !slices.Contains(now, w) {
						added = append(added, w)
					}
				}
				if told += len(added); !slices.Equal(s.Warnings, added) || s.MoreWarnings != len(list)-len(now) {
					t.Errorf("%d by %d of\n%s\nwarns of %q, %d more; said are %q, %d", s.Columns, s.Rows, text, added, len(list)-len(now), s.Warnings, s.MoreWarnings)
				}
			}
		}
	}
	r, err := Fit(few, Options{Wanted: inches(24, 30), Size: "big"}) // of a size it is the size that is laid
	if err != nil || len(r.Suggestions) == 0 || r.Suggestions[0].MoreWarnings != 1 {
		t.Errorf("in a size of 8 by 10 blocks of one fabric: %+v, %v", r, err)
	}
	if told == 0 {
		t.Error("nothing new is warned of")
	}
}

// TestSuggestionsHoldTheLaws: suggestions for layouts that have swaps, sizes, strip sets, pieces on hand or a table.
func TestSuggestionsHoldTheLaws(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		o    Options
	}{
		"a swap":                   {"side 3\nfabric a navy\nfabric b white\nscraps s a b by piece\nblock P plain piece s\ngrid\n  P P P P\n  P P P P\nswap row 2 column 4 with row 1 column 1\n", Options{Wanted: inches(6, 3)}},
		"sizes with two borders":   {"strip 4\n" + ringRest + "size two border 2 4\nsize tall down 9\n", Options{Wanted: inches(30, 40)}},
		"one of them":              {"strip 4\n" + ringRest + "size two border 2 4\nsize tall down 9\n", Options{Wanted: inches(30, 40), Size: "TALL"}},
		"a new one":                {"strip 4\n" + ringRest + "size two border 2 4\n", Options{Wanted: inches(30, 40), Size: "other"}},
		"a size alone":             {"strip 4\n" + ringRest + "size two border 2 4\n", Options{Wanted: inches(30, 40)}},
		"a strip set":              {"strip 4\nfabric a navy\nfabric b white\nstrip-set s a 2 1/4 b 2 1/4\nblock R ring wedges s corners b\ngrid\n  R R\nborder 2 finished a\n", Options{Wanted: inches(40, 50), From: 5 * measure.Inch, To: 6 * measure.Inch}},
		"tumblers":                 {"side 6\nfabric a navy\nfabric b white\nblock T tumblers pieces a b about 4\ngrid\n  T T\n  T T\n", Options{Wanted: inches(40, 50), From: 7 * measure.Inch, To: 9 * measure.Inch}},
		"pieces on hand":           {"strip 4\n" + ringRest + "on-hand wedges a 24\n", Options{Wanted: inches(40, 50)}},
		"more blocks than it must": {"side 6\nfabric a navy\nfabric b white\nblock P plain piece a\nblock Q plain piece b\ngrid\n  P P P P\n  P Q Q P\n  P P P P\n", Options{Wanted: inches(9, 9)}},
	} {
		r, err := Fit(c.text, c.o)
		if err != nil || len(r.Suggestions) == 0 {
			t.Errorf("%s: %v, %+v", name, err, r)
			continue
		}
		for _, b := range reportBreaks(r) {
			t.Errorf("%s: %s", name, b)
		}
	}
}

// TestSwapsAreForTheirGrid: a grid of other blocks is laid without the swaps, whose places are those of the grid as it was.
func TestSwapsAreForTheirGrid(t *testing.T) {
	text := "side 3\nfabric a navy\nfabric b white\nscraps s a b by piece\nblock P plain piece s\ngrid\n  P P P P\n  P P P P\nswap row 2 column 4 with row 1 column 1\n"
	f := fittingOf(t, text, Options{})
	if got := f.rewritten(f.gridEdits([2]int{5, 2})); strings.Contains(got, "swap") {
		t.Errorf("the swap stays in\n%s", got)
	}
	if got := f.rewritten(f.gridEdits([2]int{4, 2})); got != text {
		t.Errorf("the same grid is written as\n%s", got)
	}
}

// TestAsManyBlocksAsMayBe: a grid of as many blocks as are tried at the most is one of those.
func TestAsManyBlocksAsMayBe(t *testing.T) {
	f := fittingOf(t, "side 4\nfabric a navy\nblock P plain piece a\ngrid\n  P\n", Options{Wanted: inches(400, 800)})
	list := f.candidates(4*measure.Inch, AsWritten)
	if len(list) == 0 || list[0].Columns != 100 || list[0].Rows != 200 || list[0].cost != 0 {
		t.Errorf("100 by 200 blocks are not the nearest: %+v", list)
	}
	for _, c := range list {
		if c.Columns*c.Rows > maxBlocks {
			t.Errorf("%d by %d blocks are tried", c.Columns, c.Rows)
		}
	}
	if n := f.warningsOf([2]int{100, 200}); n != 0 {
		t.Errorf("100 by 200 blocks bring %d warnings", n)
	}
	if n := f.warningsOf([2]int{100, 201}); n != noWay {
		t.Errorf("100 by 201 blocks bring %d warnings", n)
	}
	const rings = layout.MaxPatches / 12 // of eight wedges and four corners
	ring := fittingOf(t, "strip 4\nfabric a navy\nfabric b white\nblock R ring wedges a corners b\ngrid\n  R\n", Options{})
	if n := ring.warningsOf([2]int{rings / 100, 100}); n != 0 {
		t.Errorf("%d rings bring %d warnings", rings, n)
	}
	if n := ring.warningsOf([2]int{rings/100 + 1, 100}); n != noWay {
		t.Errorf("rings of more pieces than a quilt may have bring %d warnings", n)
	}
}

// TestWarningsOfGrids: a grid as it is warns of as much as the layout does, its borders with it.
func TestWarningsOfGrids(t *testing.T) {
	for _, text := range []string{"side 4\nfabric c #123\n" + plainRest + "border 2 finished c\n", "side 4\nfabric c #123\n" + plainRest, "side 4\nfabric c #123\nfabric d #234\n" + plainRest + "border 2 finished c\n"} {
		f := fittingOf(t, text, Options{})
		bare, _, _ := strings.Cut(text, "border")
		with, _ := warned(t, text)
		without, _ := warned(t, bare)
		if n := f.warningsOf(f.grows.Counts()); n != len(with) || n != len(f.warnedNow(AsWritten)) || n != len(f.warnedNow(Scaled)) {
			t.Errorf("it warns of %d: %q\n%s", n, f.warned, text)
		}
		if n := len(f.warnedNow(LeftOut)); n != len(without) && bare != text {
			t.Errorf("without borders it warns of %d: %q\n%s", n, f.warned, text)
		}
	}
}

// TestPiecesOnHandAreForTheirStrip: pieces that are cut already stay with a size that keeps its strip and its units, and with no other.
func TestPiecesOnHandAreForTheirStrip(t *testing.T) {
	for _, base := range []string{"strip 4\n" + ringRest + "on-hand wedges a 24\n"} {
		for line, stays := range map[string]bool{"across 5": true, "border none": true, "strip 5": false, "strip 10 units cm": false} {
			if out := WrittenOut(base+"size named "+line+"\n", "named", nil); strings.Contains(out, "on-hand") != stays {
				t.Errorf("size %s: the pieces on hand stay: %v\n%s", line, !stays, out)
			}
		}
	}
}
