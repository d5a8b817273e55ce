package layout

import (
	"fmt"
	"strings"
	"testing"
)

// told is what is said of a text, whole: places by line, column and words, notes, and what a hint says to type.
func told(text string) string {
	r := Inspect(text, nil)
	var b strings.Builder
	for _, f := range r.Faults {
		line, column := r.Source.Position(f.Span.Start)
		fmt.Fprintf(&b, "%d:%d %q %v: %s | %s", line, column, text[f.Span.Start:max(f.Span.Start, f.Span.End)], f.Severity, f.Message, f.Hint)
		for _, n := range f.Notes {
			fmt.Fprintf(&b, " | %q %s", text[n.Span.Start:n.Span.End], n.Message)
		}
		for _, e := range f.Edits {
			fmt.Fprintf(&b, " | type %q for %q", e.Text, text[e.Span.Start:e.Span.End])
		}
		b.WriteString("\n")
	}
	return b.String()
}

// TestEdgesAreTold: what is said just at a limit and just beyond it, whole. Beyond it that is one message, at the first that is too much.
func TestEdgesAreTold(t *testing.T) {
	const cloths = "side 6\nfabric navy #1f3350\nfabric cream #f4ead7\n"
	const squares = cloths + "block A halves pieces navy cream\ngrid\n A A\n A A\n"
	webs := func(grid, rest string) string {
		return cloths + "block W web wedges navy kites cream\nblock P plain piece navy\ngrid\n" + grid + rest
	}
	onHand := func(n int) string { return webs(" W W\n W P\n", strings.Repeat("on-hand wedges navy 1\n", n)) }
	labels := func(n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "block B%d plain piece navy\n", i)
		}
		return cloths + "block A halves pieces navy cream\n" + b.String() + "grid\n" + " A Q\n"
	}
	tumblers := func(length string, cells int) string {
		return strings.Replace(cloths, "side 6", "side 12", 1) + "block T tumblers pieces navy cream " + length + "\ngrid\n" + strings.Repeat(" T\n", cells)
	}
	pools := func(count int) string {
		var b strings.Builder
		fabrics := ""
		for i := range 20 {
			fmt.Fprintf(&b, "fabric f%d #%06x\n", i, i)
			fabrics += fmt.Sprint(" f", i)
		}
		for i := range count {
			fmt.Fprintf(&b, "scraps p%d%s\n", i, fabrics)
		}
		return cloths + b.String() + "block A halves pieces navy cream\ngrid\n A\nsize\n" // with an error it is not told what is not used
	}
	for name, c := range map[string]struct{ text, says string }{
		"lines, all": {squares + strings.Repeat("\n", MaxLines-7), ""},
		"lines, one more": {squares + strings.Repeat("\n", MaxLines-7) + "x", `100001:1 "x" error: a layout may have at most 100000 lines | 
`},
		"bytes, all": {squares + "#" + strings.Repeat(" ", MaxLineBytes-1), ""},
		"bytes, one more": {squares + "#" + strings.Repeat(" ", MaxLineBytes), `8:1 "#" error: this line has 65537 bytes; the limit is 65536 | 
`},
		"on hand, all":      {onHand(MaxOnHand), ""},
		"on hand, two more": {onHand(MaxOnHand + 2), "109:1 \"on-hand wedges navy 1\" error: a layout may have at most 100 lines of pieces on hand | \n"},
		"labels, all": {labels(MaxBlocks - 1), `505:4 "Q" error: no block is called "Q" | define it: block Q and its kind
`},
		"labels, two more": {labels(MaxBlocks + 1), `504:7 "B499" error: a layout may define at most 500 blocks | 
`},
		"precuts, all": {strings.Replace(squares, "350\n", "350 from 1000 squares 10\n", 1), ""},
		"precuts, one more": {strings.Replace(squares, "350\n", "350 from 1001 squares 10\n", 1), `2:26 "1001" error: a fabric may be cut from at most 1000 precuts, found 1001 | write a smaller number
`},
		"pieces of a column, all": {tumblers("about 7", 233), ""},
		"pieces of a column, one more": {tumblers("about 6", 200), `4:42 "6" error: this column has 401 pieces; the limit is 400 | let the pieces be longer, or give the lower blocks another label
`},
		"as short as can be cut": {tumblers("about "+inMillimetres(MinFinished), 1), "4:42 \"" + inMillimetres(MinFinished) + `" error: in columns 12 in wide such pieces have no narrow side left: their mean length must be more than 4.9706 in | line 13 1/8 or more, or about 5 1/2 or more
`},
		"shorter than can be cut": {tumblers("about 1/2 cut", 1), `4:42 "1/2 cut" error: pieces of 0 in cannot be cut | write a longer length
`},
		"pooled, all": {pools(MaxPooled / 20), "277:5 \"\" error: expected a size's name, found the end of the line | for example size queen across 14 down 16\n"},
		"pooled, more": {pools(MaxPooled/20 + 2), `274:1 "scraps p250 f0 f1 f2 f3 f4 f5 f6 f7 f8 f9 f10 f11 f12 f13 f14 f15 f16 f17 f18 f19" error: the pools of a layout may have at most 5000 fabrics in all | 
279:5 "" error: expected a size's name, found the end of the line | for example size queen across 14 down 16
`},
		"more pieces in a size": {strings.Replace(webs(" W W\n W W\n", ""), "block P plain piece navy\n", "", 1) + "size big across 160 down 160\n", `8:6 "big" error: in the size "big", this quilt has up to 153600 pieces; the limit is 150000 |  | "W W" this place
`},
		"one kite by a sash": {webs(" P W\n P P\n", "sash 1 cream\n"), ""},
		"two kites by a sash": {webs(" W W\n P P\n", "sash 1 cream\n"), `9:1 "sash 1 cream" warning: sashes separate every web: its pieces no longer meet | leave the sashes out where webs should close
`},
		"labels in the grid": {cloths + "block A halves pieces navy cream\ngrid\n AA\n", `6:2 "AA" error: these labels have no blanks between them | put blanks between the labels: A A | type "A A" for "AA"
`},
		"labels behind grid": {cloths + "block A halves pieces navy cream\ngrid A A A\n A A\n", "5:6 \"A\" error: expected the rows on lines of their own below, found \"A\" | put the labels on the lines below, with blanks before them | type \"\\n  \" for \" \"\n"},
		"lengths behind grid": {cloths + "block A halves pieces navy cream\ngrid 2 x 1\n A A\n", `5:6 "2" error: expected the rows on lines of their own below, found "2" | leave out 2 x 1 | type "" for " 2 x 1"
`},
		"a word before": {strings.Replace(squares, "fabric navy #", "fabric deep navy #", 1), `2:8 "deep navy" error: a fabric's name is one word, found "deep navy" before the color #1f3350 | leave out deep | type "" for "deep "
`},
	} {
		if got := told(c.text); got != c.says {
			t.Errorf("%s:\n%s", name, got)
		}
	}
}

// TestHintsAreTriedBehindMany: what is typed by a hint is tried, and taken back where it does not help, also behind many messages that say
// nothing to type.
func TestHintsAreTriedBehindMany(t *testing.T) {
	text := strings.Repeat("wibble 4\n", 60) + "side 6\nsize 60 x 80 =\n"
	list := Inspect(text, nil).Faults
	last := list[len(list)-1]
	if want := "a size has a name and numbers of blocks: size lap across 8 down 10; the quilt is as large as its grid makes it"; last.Hint != want || last.Edits != nil {
		t.Errorf("%s: %s, to be typed %v", last.Message, last.Hint, last.Edits)
	}
}
