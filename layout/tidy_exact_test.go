package layout_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/layout"
)

// TestTidyLines: layouts in their tidy form, letter by letter: a column is as wide as the widest word in it, with two blanks behind, or one
// in rows; words of one column have one blank between them; comments of a paragraph stand below each other.
func TestTidyLines(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"columns", `STRIP 4   # cut
fabric cream #f4ead7 "linen   weave" on-hand 2 yd # from stash
 fabric midnight   navy  usable-width   108
fabric  sky #bcd	# a
strip-set  glow sky 2 cream   1 1/2   cut midnight rest
strip-set shore midnight equal sky equal cream 1 in
block W web wedges reversed  glow kites cream
block Wide web   wedges shore   kites midnight sky
block P like W   kites sky


# the quilt
grid   # as it looks
W Wide   W:se P
  # between
  W  .  W W

   #  last
border  4  cream corners   sky
border 10 1/2 cut midnight  lengthwise
binding 2 1/2 sky
`, `strip      4                                                 # cut
fabric     cream     #f4ead7  "linen   weave"  on-hand 2 yd  # from stash
fabric     midnight  navy     usable-width 108
fabric     sky       #bcd                                    # a
strip-set  glow   sky 2           cream 1 1/2 cut  midnight rest
strip-set  shore  midnight equal  sky equal        cream 1 in
block      W     web     wedges reversed glow  kites cream
block      Wide  web     wedges shore          kites midnight sky
block      P     like W  kites sky

# the quilt
grid  # as it looks
  W    Wide W:se P
  # between
  W    .    W    W

#  last
border   4           cream     corners sky
border   10 1/2 cut  midnight  lengthwise
binding  2 1/2       sky
`},
		{"two tables", `side 6
fabric a #123
fabric blue #124
webs
 a .
   blue # one
block W web wedges a kites a
grid
 W W W W
 W W W W
 W W W W
sash 1 a posts a around
border 12 a
`, `side    6
fabric  a     #123
fabric  blue  #124
webs
  a    .
  blue  # one
block  W  web  wedges a  kites a
grid
  W W W W
  W W W W
  W W W W
sash    1   a  posts a  around
border  12  a
`},
		{"carriage returns", "side 6\r\n\r\n\r\nfabric a #123\r\nblock P plain piece a\r\ngrid\r\n P\r\n\r\n", "side  6\r\n\r\nfabric  a  #123\r\nblock   P  plain  piece a\r\ngrid\r\n  P\r\n"},
		{"a comment alone", "# a\n\n\n\n#b \t\nside 6\nfabric a #123\nblock P plain piece a\ngrid\n#among\n P\n#\n P\n", "# a\n\n#b\nside    6\nfabric  a  #123\nblock   P  plain  piece a\ngrid\n#among\n  P\n  #\n  P\n"},
		{"wide letters", "side 6\nfabric 赤い #123 # 1\nfabric b #456 # 2\nblock 赤 plain piece 赤い\nblock b plain piece b\ngrid\n 赤 b\n b 赤\n", "side    6\nfabric  赤い  #123  # 1\nfabric  b     #456  # 2\nblock   赤  plain  piece 赤い\nblock   b   plain  piece b\ngrid\n  赤 b\n  b  赤\n"},
	} {
		if got, list := layout.Tidy(c.text); got != c.want {
			t.Errorf("%s: %v\n%s", c.name, list, got)
		}
	}
	const old = "strip 4\nfabric a #123\nfabric b #456\nstrip-set s a 2 b rest\nblock F floating wedges turned s ground b\ncolourway dusk a #789 b #abc\ngrid\n  F F\n  F F\n"
	const today = "strip      4\nfabric     a  #123\nfabric     b  #456\nstrip-set  s  a 2  b rest\nblock      F  floating  wedges reversed s  background b\ncolorway   dusk  a #789  b #abc\ngrid\n  F F\n  F F\n"
	if got, list := layout.Modernize(old); got != today {
		t.Errorf("in today's words: %v\n%s", list, got)
	}
	kept := strings.NewReplacer("wedges reversed s  background b", "wedges turned s  ground b", "colorway   dusk", "colourway  dusk").Replace(today)
	if got, list := layout.Tidy(old); got != kept {
		t.Errorf("in its own words: %v\n%s", list, got)
	}
}

// tidied is a layout with every statement and every option, in its tidy form.
const tidied = `title            "A"  # t
designer         "B"
level            "C"
copyright        "D"
pattern-number   "E"
pattern-version  "F"
pattern-date     "G"
note             "any"
note             W        "of W"
note             cutting  "of cutting"
units            inches
seam             1/4 in
side             7
usable-width     42
palette          tidewater
fabric           cream  #f4ead7  "linen"             on-hand 2 yd  usable-width 44         from 3 fat-quarters
fabric           navy   #1f3350  from 12 squares 10
fabric           rose   swatch   "a.png"             across 6      repeat across 3 down 2  one-way  "print"
fabric           deck   stripes  navy 3/4 white 1/2  crosswise
motif            bud  rose  across 1  down 1 1/2  pointing 30
scraps           darks   navy cream dune  by set  deal 3  from 10  to 90
scraps           lights  rope lagoon      by block
strip-set        glow   navy 2       cream rest
strip-set        drift  darks 1 1/2  darks rest       sets 2
strip-set        even   foam equal   slate 1 1/4 cut  kelp equal
webs             reversed glow / drift
top-left         web
block            W  web       kites deck lengthwise from 1/4
block            V  like W    kites bud
block            T  tumblers  pieces cream shoal  about 3
block            P  plain     piece lights
repeat           across 2  down 1
grid
  W V W P T
  W V W V T
sash       1 cut       navy  posts bud      around
border     2           navy  corners cream  lengthwise
border     3 finished  navy
binding    2 1/2       navy
backing    navy
batting
square-up  2
spare      none
on-hand    kites   deck           3
on-hand    wedges  reversed glow  3  strip 5 1/16
contrast   10  25
colorway   dusk  cream #d9c7b0
size       lap    across 10  down 2
size       big    side 8     border 2 4 cut
size       small  side 15    units cm  border none
swap       row 1  column 4  with  row 1  column 9
`

// TestTidyOfEveryStatement: with single blanks between its words, each of its lines gets the columns that it has.
func TestTidyOfEveryStatement(t *testing.T) {
	loose := regexp.MustCompile("(?m) +(.)").ReplaceAllString(tidied, " $1")
	for _, text := range []string{loose, tidied} {
		if got, list := layout.Tidy(text); got != tidied {
			t.Errorf("%v\n%s", list, got)
		}
	}
	words := strings.Fields(tidied)
	for _, s := range layout.Statements() {
		if !slices.Contains(words, s.Word) {
			t.Errorf("the statement %s is not in it", s.Word)
		}
		for _, o := range s.Options {
			if !slices.Contains(words, o.Word) && o.Word != "piece" && o.Word != "inches" && o.Word != "line" && o.Word != "mirrored" {
				t.Errorf("the option %s of %s is not in it", o.Word, s.Word)
			}
		}
	}
}
