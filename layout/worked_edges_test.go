package layout

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/golden"
)

// TestWorkedEdges: what else small layouts come to, whole: warnings of blocks that are turned, one by one, and branches that few layouts
// take. What is said was looked at line by line; what it counts was counted on the grid.
func TestWorkedEdges(t *testing.T) {
	var b strings.Builder
	worksOutChanged(t, &b, workedEdge, workedTurns())
	b.WriteString("\n")
	worksOutChanged(t, &b, worked, workedEdges())
	golden.Text(t, "testdata/edges.txt", []byte(b.String()))
}

const workedEdge = `side 6
fabric cream #f4ead7
fabric navy #1f3350
fabric rust #b5532a
block W web wedges navy kites cream
block S floating-star kites navy wedges cream background rust
block F floating wedges navy background cream
block P plain piece rust
grid
  W P
`

// workedTurns are grids of blocks that turn.
func workedTurns() [][]string {
	grid := func(more, rows string) []string { return []string{"W P", rows, "grid", more + "grid"} }
	return [][]string{
		grid("", "S"),
		grid("top-left web\n", "S S\n  S S"),
		grid("top-left web\n", "S S S\n  S S S"),
		grid("top-left web\n", "S S\n  S S\n  S S"),
		grid("top-left star\n", "S S S\n  S S S\n  S S S"),
		grid("top-left star\n", "S S\n  S S\n  S S"),
		grid("top-left star\n", "S S S\n  S S S"),
		grid("top-left star\n", "S:nw S\n  S S:nw"),
		grid("", "W:nw W:nw"),
		grid("top-left star\n", "F F\n  F F"),
		grid("top-left web\n", "F F F\n  F F F\n  F F F"),
		grid("top-left star\n", "W W\n  W W"),
		grid("", "W:nw W\n  W W"),
		grid("", "W:nw W:nw W\n  W W W"),
		grid("sash 1 cream\n", "S S\n  P P"),
		grid("sash 1 cream\n", "P S\n  P P"),
		grid("sash 1 cream\n", "S S S\n  P S P"),
		grid("sash 1 cream\n", "W W W\n  W P W"),
		grid("sash 1 cream\n", "F F\n  P P"),
		grid("sash 1 cream\n", "F F\n  F P"),
		grid("sash 1 cream\nsize lap across 4\n", "W W\n  W W"),
		grid("size more across 3\n", "S S\n  S S"),
		grid("size more across 5\nsize most down 5\n", "S S S\n  S S S\n  S S S"),
		grid("size more across 5\n", "S S S\n  S P S\n  S S S"),
	}
}

// workedEdges are more changes of the worked layout.
func workedEdges() [][]string {
	sizes := func(lines string) []string { return []string{"grid", lines + "\ngrid"} }
	return append([][]string{
		sizes("size 60 wibble 4"),
		sizes("size 60 x 80 ="),
		sizes("size lap! across 4"),
		sizes("motif bud! cream across 1 down 1"),
		sizes("motif bud cream across x wibble 1"),
		sizes("size 5"),
		sizes("size lap across 6 6 wibble"),
		sizes("size lap units feet wibble"),
		sizes("size lap units cm strip 10 units inches"),
		sizes("size lap side 4 strip 4"),
		sizes("border 2 navy\nborder 3 navy\nsize lap border 500 600"),
		sizes("border 2 navy\nborder 3 navy\nsize lap border none\nsize some border 4 cut"),
		sizes("border 2 navy\nsize lap border 4 5 6"),
		sizes("border 2 navy\nsize lap border 2 cut"),
		sizes("on-hand kites cream 3\nsize wide across 6\nsize big strip 5"),
		sizes("strp 4\nsize lap across 4"),
		sizes("palette tidewatr\nsize lap across 4"),
		sizes("size lap across 300 down 300"),
		sizes("size a across 6 down 4\nsize b across 9"),
		{"strip 4", "strip 4#wide"},
		{"strip 4", "strip 4in# wide"},
		{"strip 4", "strip 4 1/64", "grid", "size big side 6\ngrid"},
		{"strip 4", "side 6 1/64", "grid", "size big strip 4\ngrid"},
		{"strip 4", "side 6 1/64", "grid", "size big strip 4 units cm\ngrid"},
		{"W W P\n  W W W", "W W P\n  WW\n  W W W"},
		{"W W P\n  W W W", "W W P\n  WWP\n  W W W"},
		{"W W P\n  W W W", "W\n  WW\n  P"},
		{"W W P\n  W W W", "WW\n  PP"},
		{"W W P\n  W W W", "WWQ\n  PP"},
		{"W W P\n  W W W", "W :nw P"},
		{"W W P\n  W W W", "W W:n P\n  W W Q:se"},
		{"block W web wedges navy kites cream", "block W web wedges nvy kites cream\nblock V like W\nblock U like V", "W W P", "W V U"},
		{"block W web wedges navy kites cream", "block W web kites cream\nblock V like W\nblock U like V corners rust", "W W P", "W V U"},
		{"block W web wedges navy kites cream", "block W web wedges navy rust cream\nblock V like W wedges navy", "W W P", "W V P"},
		{"block W web wedges navy kites cream", "block W web wedges navy, kites cream\nblock V web wedges navy, kites cream"},
		{"block W web wedges navy kites cream", "block W web wedges nvay kites cream\nblock V web wedges nvay kites nvay", "piece rust", "piece nvay"},
		{"grid", "fabric\ngrid", "wedges navy", "wedges teal2", "piece rust", "piece rouge"},
		{"grid", "block plain piece navy\ngrid", "W W P\n  W W W", "Q W P\n  R R Q"},
		{"block W web wedges navy kites cream", "block Wab web wedges navy kites cream", "W W P\n  W W W", "Wob Wab P\n  Wab:n Wub P\n  Wub Wab P"},
		{"grid", "block Z ring wedgs navy cornrs cream\ngrid"},
		{"grid", "block Z ring cornrs navy wedges cream\ngrid"},
		{"grid", "block Z ring outer cream wedges navy\ngrid"},
		{"grid", "block Z ring outer cream wedges navy corners rust\ngrid"},
		{"grid", "block Z web wedges kites cream\ngrid"},
		{"grid", "block Z web kites cream wedges\ngrid"},
		{"grid", "block Z web kites cream points navy\ngrid"},
		{"grid", "block Z web kites cream points navy\nwebs rust\ngrid"},
		{"grid", "block Z web kites cream points\ngrid"},
		{"grid", "block Z web kites cream points plum\ngrid"},
		{"grid", "block Z web kites cream wegdes navy\ngrid"},
		{"grid", "block Z web wedges navy wedges rust\ngrid"},
		{"kites cream", "kites reversed cream navy rust"},
		{"grid", "motif bud\ngrid", "kites cream", "kites bud"},
		{"grid", "motif bud\nmotif knob cream across 1 down 1\ngrid", "kites cream", "kites bud"},
		{"strip 4", "strip 1 2 3"},
		{"grid", "border 1 3 4 navy\nsash 1 2 2 navy posts rust\nbinding 2 5 7 rust\nstrip-set glow navy 1 2 3 cream rest\nscraps darks navy rust deal 1 2 3\nrepeat across 2 3 4\ngrid"},
		{"grid", "on-hand kites 3 cream 4\non-hand kites strip 3\non-hand wedges navy 4 strip x 5\non-hand points navy 5\ngrid"},
		{"grid", "strip-set glow navy 1 5/8 cream 1 1/2 rust 1 7/8\nsize a strip 3\nsize b strip 3 5/8\nsize c strip 4 1/2\nsize d strip 5 1/2\nsize e strip 6\nsize f strip 7 1/4\ngrid", "wedges navy", "wedges glow"},
		{"grid", "strip-set glow navy 1 3/8 cream 1 3/8 rust 1 1/4 navy 1 1/2\nsize a strip 4 3/8\nsize b strip 5 1/8\nsize c strip 3 3/4\ngrid", "wedges navy", "wedges glow"},
		{"grid", "block \"R ring wedges navy corners cream\ngrid"},
		{"grid", "block \"R\" ring wedges navy corners cream\ngrid"},
		{"grid", "fabric \"deep sea\" #123456\ngrid"},
		{"grid", "fabric «sea #123456\ngrid"},
		{"grid", "colorway dusk” navy rust\ngrid"},
		{"#1f3350", "#1f3350 from 1001 squares 10"},
		{"#1f3350", "#1f3350 from 0 fat-eighths"},
		{"#1f3350", "#1f3350 from 3 jars"},
		{"#1f3350", "#1f3350 from 3 square"},
		{"#1f3350", "#1f3350 from 3 strip 2 1/2 cut"},
		{"#1f3350", "#1f3350 from x strips"},
		{"#1f3350", "#1f3350 from 2 strips 1/4"},
		{"#f4ead7", "stripes navy 3/4", "grid", "motif bud cream across 0 down 1/8 mirrored\ngrid", "kites cream", "kites bud"},
		{"#f4ead7", "swatch \"a.png\" across 6", "grid", "motif bud cream across 1 down 1 mirrored\ngrid", "kites cream", "kites bud"},
		{"#f4ead7", "swatch \"a.png\" across 6 repeat across 3 down 2", "grid", "motif bud cream across 1 down 1   mirrored\ngrid", "kites cream", "kites bud"},
		{"grid", "motif bud cream across 1 down 1 mirrored\ngrid", "kites cream", "kites bud"},
		{"grid", "backing 77\ngrid"},
		{"grid", "backing x!yzzy\ngrid"},
		{"grid", "fabric a #111\nfabric b #222\nfabric c #333\nfabric d #444\nfabric e #555\nfabric f #666\nfabric g #777\nfabric h #888\nfabric i #999\nfabric j #aaa\nbacking x!yzzy\ngrid"},
		{"grid", "backing #123456\nbinding 2 teal\nborder 3 cut rest\ngrid"},
		{"fabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\n", "", "block W web wedges navy kites cream\nblock P plain piece rust\n", "block P plain piece x!yzzy\n", "W W P\n  W W W", "P"},
		{"grid", "scraps darks navy rust navy\nscraps darks cream from 30 to 30\ngrid", "wedges navy", "wedges darks"},
		{"grid", "scraps darks navy rust from 20 to 60\nscraps darks cream to 90\nscraps navy cream\nscraps pool darks navy\ngrid", "wedges navy", "wedges darks"},
		{"grid", "webs reversed nothing / navy\ngrid"},
		{"grid", "fabric kites #123\nfabric my-web #123\nfabric web #123\ngrid"},
		{"kites cream", "kites reversed cream"},
		{"kites cream", "kites cream lengthwise from 2"},
		{"grid", "scraps darks navy rust\ngrid", "kites cream", "kites darks lengthwise"},
		{"grid", "strip-set glow navy 2 cream rest\ngrid", "kites cream", "kites glow", "piece rust", "piece reversed glow"},
		{"grid", "border 2 in # note, \"x\nborder 2 1/2\" navy\nborder 3 1/2in navy\nborder 2 -- navy\ngrid"},
	}, repeated()...)
}

// repeated are changes that say the same often.
func repeated() [][]string {
	return [][]string{
		{"grid", strings.Repeat("border 1 teal\n", 5) + "grid"},
		{"grid", strings.Repeat("block Z like Q\n", 3) + "grid", "W W P", "Q Q Z"},
		{"W W P\n  W W W", "Q W Q\n  Q R W"},
		{"W W P\n  W W W", "WWP\n  WWW\n  PPP"},
		{"W W P\n  W W W", "W W\n  WWW\n  W W"},
		{"block W web wedges navy kites cream", "block Web web wedges navy kites cream", "W W P\n  W W W", "Wob Web P\n  Web Wob:nw Wob"},
		{"block W web wedges navy kites cream", "block Web web wedges navy kites cream", "W W P\n  W W W", "Wob Wxyz P\n  Wxyz Wob Wuz"},
		{"block P plain piece rust", plains(11), "W W P", "W W Q"},
		{"block P plain piece rust", plains(12), "W W P", "W W Q"},
	}
}

// plains are so many plain blocks.
func plains(count int) string {
	lines := make([]string, count)
	for i := range lines {
		lines[i] = fmt.Sprint("block P", i, " plain piece rust")
	}
	return strings.Join(lines, "\n")
}
