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
