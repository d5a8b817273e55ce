package layout

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// TestWhatIsHidden: of all characters those are written as numbers that show nothing or change how their neighbors show: controls,
// marks and overrides of direction (Unicode Standard Annex 9, table 4), joiners and blanks without width, specials and what is no character.
func TestWhatIsHidden(t *testing.T) {
	want := map[rune]bool{}
	for _, part := range [][2]rune{{0, 8}, {0xa, 0x1f}, {0x7f, 0x9f}, {0xad, 0xad}, {0x61c, 0x61c}, {0x180e, 0x180e}, {0x200b, 0x200f}, {0x202a, 0x202e}, {0x2060, 0x2060},
		{0x2066, 0x2069}, {0xfeff, 0xfeff}, {0xfff0, 0xfffb}, {0xfffe, 0xffff}} {
		for r := part[0]; r <= part[1]; r++ {
			want[r] = true
		}
	}
	for plane := rune(1); plane <= 16; plane++ {
		want[plane<<16|0xfffe], want[plane<<16|0xffff] = true, true
	}
	for r := rune(0); r <= 0x10ffff; r++ {
		if hidden(r) != want[r] {
			t.Errorf("U+%04X is hidden: %v", r, hidden(r))
		}
	}
}

// TestUTF16IsTold: a text of four bytes or more of which more than a quarter are noughts; one that has a single nought among many is none.
func TestUTF16IsTold(t *testing.T) {
	for text, want := range map[string]bool{"a\x00b\x00": true, "\x00a\x00b": true, "a\x00\n": false, "a\x00bc": false, "": false, strings.Repeat("a\x00", 300): true, strings.Repeat("a", 399) + "\x00": false} {
		if got := looksLikeUTF16(text); got != want {
			t.Errorf("%.9q looks like UTF-16: %v", text, got)
		}
	}
}

// TestPositionsCountWhatIsRead: a column is one more than the characters before it, as a reader sees them, also where bytes are no text.
func TestPositionsCountWhatIsRead(t *testing.T) {
	for text, want := range map[string][2]int{"ab|c": {1, 3}, "a\n\nb|": {3, 2}, "e\u0301|x": {1, 2}, "\ufeffa|": {1, 2}, "\xff\xfe|": {1, 2}, "a\xff|b": {1, 3}, "👩‍👩‍👧|": {1, 2}, "|": {1, 1}} {
		at := strings.Index(text, "|")
		line, column := NewSource(strings.Replace(text, "|", "", 1)).Position(at)
		if [2]int{line, column} != want {
			t.Errorf("%q stands at %d:%d, expected %d:%d", text, line, column, want[0], want[1])
		}
	}
}

// TestStripesFollowTheirFabrics: stripes named after fabrics take these fabrics' colors, the first fabric's too; others keep their own.
func TestStripesFollowTheirFabrics(t *testing.T) {
	own := palettes.Colour{R: 1}
	s := &Stripes{List: []Stripe{{own, measure.Inch, 0}, {own, measure.Inch, 2}, {own, measure.Inch, -1}}}
	got := s.Recolored(func(f int) palettes.Colour { return palettes.Colour{G: uint8(10 + f)} })
	if want := []Stripe{{palettes.Colour{G: 10}, measure.Inch, 0}, {palettes.Colour{G: 12}, measure.Inch, 2}, {own, measure.Inch, -1}}; !slices.Equal(got.List, want) {
		t.Errorf("%v, expected %v", got.List, want)
	}
	if s.Recolored(func(int) palettes.Colour { return own }) != s || s.Repeat() != 3*measure.Inch {
		t.Error("stripes in the colors that they have are others")
	}
}

// TestSameSorts: lists of fills are alike where each holds what the other holds, however often.
func TestSameSorts(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 43))
	some := func() (list []Fill, has map[int]bool) {
		has = map[int]bool{}
		for range rng.IntN(4) {
			f := rng.IntN(3)
			list, has[f] = append(list, Fill{Fabric: f, Set: -1, Pool: -1}), true
		}
		return list, has
	}
	for range 300 {
		a, inA := some()
		b, inB := some()
		if got, want := sameSorts(a, b), fmt.Sprint(inA) == fmt.Sprint(inB); got != want {
			t.Errorf("%v and %v are alike: %v", a, b, got)
		}
	}
}

// TestFabricsOfAPalette are those without a line of their own.
func TestFabricsOfAPalette(t *testing.T) {
	r := Inspect("palette tidewater\nside 6\nfabric rust #b5532a\nfabric dune #ded1b1\nblock P plain piece rust\ngrid\n P\n", nil)
	own := map[string]bool{"rust": true, "dune": true}
	for i, f := range r.Design.Fabrics {
		if r.OfPalette(i) == own[f.Name] {
			t.Errorf("%s is of the palette: %v", f.Name, r.OfPalette(i))
		}
	}
	if len(r.Design.Fabrics) < 9 {
		t.Errorf("%d fabrics", len(r.Design.Fabrics))
	}
}

// TestRepeatedGridsGrowByWhatIsRepeated: a grid that the layout repeats grows by whole rows and columns as they are written; where it
// is repeated one way alone the other grows by itself.
func TestRepeatedGridsGrowByWhatIsRepeated(t *testing.T) {
	const text = "side 6\nfabric a #102030\nfabric b #f0e0d0\nblock P plain piece a\nblock Q plain piece b\ngrid\n P Q Q\n P P P\n"
	for repeat, want := range map[string][2]Way{
		"repeat across 2 down 1\n": {{0, 6, 3}, {0, 2, 2}}, "repeat across 2\n": {{0, 6, 3}, {0, 2, 2}}, "repeat down 3\n": {{0, 3, 3}, {0, 6, 2}},
	} {
		r := Inspect(text+repeat, nil)
		g := r.Tree.Growth(r.Design, func(*Growth, [2]int) int { return 0 })
		for which, said := range [2]bool{strings.Contains(repeat, "across"), strings.Contains(repeat, "down")} {
			if a := g.Axes[which]; a.Repeats != said || said && a.Way != want[which] {
				t.Errorf("%q, axis %d: repeats %v, grows by %+v, expected %+v", repeat, which, a.Repeats, a.Way, want[which])
			}
		}
	}
}

// TestFillsThatAreNamed: all values of a layout are gone through, of blocks, of the webs and of their table.
func TestFillsThatAreNamed(t *testing.T) {
	names := func(text string) (list []string) {
		_, source, _ := Read(text)
		tree, _ := Parse(source)
		for _, v := range tree.values() {
			list = append(list, v.Name.Text)
		}
		return list
	}
	const begin = "strip 4\nfabric a #102030\nfabric b #f0e0d0\nblock W web kites b\ngrid\n W W W\n W W W\n W W W\n"
	if got := names(begin + "webs a / b\n"); fmt.Sprint(got) != "[b a b]" {
		t.Errorf("values are %v", got)
	}
	if got := names(begin + "webs\n a b\n b a\n"); len(got) != 5 {
		t.Errorf("values are %v", got)
	}
}

// TestStripesOfWrongColors: a color in digits that is none is told at its place, with what a color is.
func TestStripesOfWrongColors(t *testing.T) {
	_, source, faults := Read("side 6\nfabric x stripes #12 1\nblock P plain piece x\ngrid\n P\n")
	if len(faults) != 1 || source.Text[faults[0].Span.Start:faults[0].Span.End] != "#12" || !strings.Contains(faults[0].Message, "2 digits after #") {
		t.Errorf("%v", faults)
	}
}
