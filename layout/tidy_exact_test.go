package layout_test

import (
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
