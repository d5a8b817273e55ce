package quilt_test

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// workedTops are small layouts that together have all that a top can have: each is told in full in testdata/worked.txt.
var workedTops = []struct {
	name, text string
	parts      []string // labels and figures of parts that are told, too
}{
	{"webs that end before two borders, from a strip set both ways round", `title "Small harbor"
strip 4
fabric cream #f4ead7 on-hand 1 yd
fabric navy #1f3350 "night sky"
fabric rust #b5532a usable-width 42
fabric old #888
strip-set shore rust 2 cream 1 1/2 navy rest
webs shore / reversed shore
block W web kites cream
block F floating background cream edge-top rust
grid
  F F F
  W W F
border 1 1/2 rust
border 2 cream corners navy
on-hand wedges reversed shore 3
on-hand kites rust 2
colorway dusk cream navy navy cream
colorway same old #333
size twin across 4 down 4
`, []string{"W", "web"}},
	{"sashes with posts around blocks and places with nothing", `units cm
side 15
fabric a #123456
fabric b #eeeeee
fabric c #aa3311
block R ring wedges a b corners c
block H halves pieces a b edge c
block P plain piece b
grid
  R . H:se
  P R .
sash 2 c posts b around
border 3 a
`, []string{"R", "H"}},
	{"sashes in one strip between rows, with a backing and a binding", `side 6
fabric back #445566
fabric a #123456
fabric b #eeeeee
fabric edging #665544
backing back
binding 2 1/2 cut edging
block Q floating-star kites a wedges b background b
block P plain piece b
grid
  Q P
  P Q
sash 1 a
`, nil},
	{"columns", `side 5
fabric a #123456
fabric b #eeeeee
fabric c #aa3311
block T tumblers pieces a b about 4 edge-top c
block P plain piece c
block Q plain piece b
grid
  T T Q
  T T T
  P T T
border 2 c corners a
border 1 b
`, []string{"T", "P", "Q"}},
	{"one column", `side 5
fabric a #123456
fabric b #eeeeee
block T tumblers pieces a b about 4
grid
  T
  T
`, []string{"T"}},
	{"every sort of piece of a motif on stripes", `side 8
fabric cloth stripes navy 3/4 #c9503c 1/2 white 1/4 one-way
fabric sand #e8d9b0
motif rose cloth across 3/8 down 1 pointing 20 mirrored
motif bud cloth across 1/8 down 0
block R ring wedges rose corners rose
block W web wedges rose kites rose
block F floating wedges rose background rose
block H halves pieces rose
block T tumblers pieces rose about 5
block C ring wedges cloth corners cloth
block P plain piece bud
block G floating wedges sand background cloth
grid
  F W W F
  F W W F
  R H:nw H:ne P
  C T T P
  G G G G
  G G G G
`, []string{"W", "web", "R"}},
	{"stripes along, across and alike, in borders and posts", `side 6
fabric awning stripes navy 3/4 #c9503c 1/2 white 1/4
fabric deck stripes #445566 1 #99aabb 1/3 crosswise one-way
fabric sand #e8d9b0
motif knot deck across 1 down 1
strip-set mix awning 1 3/4 deck rest
block A ring wedges awning lengthwise corners deck crosswise
block B ring wedges awning crosswise from 1/4 corners deck
block D web wedges mix reversed mix kites deck
block E halves pieces deck awning
grid
  B A E:sw
  D D E:ne
  D D E:nw
sash 1 deck posts awning
border 2 awning lengthwise
border 3 deck
on-hand wedges mix 4 strip 3 1/2
on-hand corners deck 2
on-hand corners knot 2
`, []string{"D"}},
	{"stripes off narrow fabric: several lengths, strips that are joined, few squares to a strip", `side 6
fabric awning stripes navy 3/4 #c9503c 1/2 white 1/4 usable-width 9
fabric deck stripes #445566 1 #99aabb 1/3 usable-width 12 1/4
fabric hall stripes #665544 1/2 #aabb99 1/4 usable-width 16 9/16
fabric sand #e8d9b0 usable-width 13 1/2
fabric path stripes #556644 1/2 #bbaa99 1/3 usable-width 13 1/2
fabric slim stripes #223344 1/2 #bbaacc 1/3 usable-width 5
block A halves pieces awning lengthwise
block B plain piece awning lengthwise
block C halves pieces path
block D plain piece slim lengthwise
grid
  A B C
  B D C
border 2 deck
border 1 hall
border 2 awning lengthwise
`, nil},
	{"sashes as wide as the blocks", `side 3
fabric awning stripes navy 3/4 #c9503c 1/2 white 1/4
fabric sand #e8d9b0
block P plain piece sand
grid
  P P
sash 3 awning
`, nil},
	{"photos with and without a repeat", `side 8
fabric print swatch "a.png" across 12 repeat across 12 down 8 one-way
fabric photo swatch "b.png" across 9
fabric sand #e8d9b0
motif rose print across 3 down 2 pointing 30 mirrored
motif near photo across 1 down 1
motif far photo across 4 down 3
block R ring wedges rose corners photo
block S ring wedges far near corners print
block P plain piece photo
grid
  R P
  S R
border 2 print
`, []string{"S"}},
	{"pools of scraps by piece, by block and by web, with swaps", `side 6
fabric a #111
fabric b #333
fabric c #555
fabric d #777
fabric l #ddd
fabric k #eee
fabric n #fff
scraps darks a b c d by web deal 2
scraps lights l k n by block deal 1
scraps mixed a d k n by piece
strip-set s lights 2 mixed rest
block W web wedges darks kites lights
block S web wedges s reversed s kites mixed
block P plain piece mixed
block T tumblers pieces mixed about 4
grid
  W W S P
  W W S S
  P W T P
  S P T W
swap row 1 column 1 with row 2 column 2
swap row 1 column 4 with row 4 column 2
swap row 1 column 3 with row 2 column 4
border 2 a
`, []string{"P", "web"}},
	{"one piece from a pool, beside its fabric", `side 6
fabric a #111
scraps one a
block P plain piece one
block Q plain piece a
grid
  Q P
`, nil},
	{"wedges of which both strips are one fabric", `strip 4
fabric a #111
fabric b #999
scraps one a
strip-set s one 2 one rest
block R ring wedges s corners b
grid
  R
`, nil},
	{"two pieces of one fabric", `side 6
fabric a #111
scraps one a
block P plain piece one
grid
  P P
`, nil},
	{"a swap that brings two pieces together", `side 6
fabric a #111
fabric b #333
scraps two a b
block P plain piece two
block Q plain piece a
grid
  P P Q
swap row 1 column 1 with row 1 column 2
`, nil},
	{"too few scraps", `side 6
fabric a #111
fabric b #333
scraps one a
scraps two a b
block P plain piece one
block Q plain piece two
block R ring wedges two corners one
grid
  P P Q
  Q R Q
  Q Q R
swap row 1 column 3 with row 2 column 1
border 1 a
`, nil},
	{"strip sets dealt set by set", `side 7
fabric a #111
fabric b #222
fabric c #333
fabric d #444
fabric e #555 usable-width 22
fabric f #666
fabric g #777
fabric l #fff
scraps s a b c d by set deal 2
scraps q e f g by set deal 3
strip-set t s 2 q 1 1/2 s rest sets 5
strip-set u q 2 l rest
webs t / reversed t
block W web kites l
block R ring wedges u corners a
block V ring wedges t corners a
block P plain piece a
grid
  P P V P
  W W W W
  W W W R
  W W R R
`, []string{"R"}},
	{"a strip set with a narrow fabric of its own, dealt as the fewest sets", `strip 4
fabric l #fff usable-width 18
fabric a #111
fabric b #222
fabric c #333
scraps s a b c by set
scraps one a
block P plain piece one
strip-set t s 2 l rest
block W web wedges t kites l
block F floating wedges t background a
grid
  P W W F
  W W W F
  F F F F
border 1 a
`, nil},
	{"a ring beneath a fabric that it may have", strips("", "s 2 b rest", "P Q", "R R"), nil},
	{"sets that are the same from both ends", strips(" sets 2", "s 1 1/2 b rest s 1 1/2", "R R"), nil},
	{"sets that are the same at their ends alone", strips(" sets 2", "s 1 1/4 b 1 l 1 s rest", "R R"), nil},
	{"as many sets as webs", strips(" sets 2", "s 2 b rest", "R R"), nil},
	{"more sets than webs", strips(" sets 3", "s 2 b rest", "R R"), nil},
	{"more sets than the pool makes", strips(" sets 3", "s 2 b rest", "R R R R"), nil},
	{"webs of several sets", strips(" sets 2", "s 2 b rest", "R R R", "R . .", "R R R"), nil},
}

// strips is a layout with a strip set of two scraps, dealt as is said, and with blocks row by row.
func strips(words, set string, rows ...string) string {
	return "strip 4\nfabric x #111\nfabric y #333\nfabric b #888\nfabric l #fff\nscraps s x y by set\nstrip-set u " + set + words +
		"\nblock R ring wedges u corners l\nblock P plain piece x\nblock Q plain piece l\ngrid\n  " + strings.Join(rows, "\n  ") + "\n"
}

// told is a top in words.
type told struct {
	b     *bytes.Buffer
	text  string
	top   *quilt.Top
	exact []any // what is told shorter than it is
}

// at is a place to a hundredth of a millimeter.
func at(p measure.Point) string { return fmt.Sprintf("%d,%d", hundredth(p.X), hundredth(p.Y)) }

func hundredth(nm measure.NM) measure.NM { return (nm + 5_000) / 10_000 }

func places(list []measure.Point) string {
	var b strings.Builder
	for _, p := range list {
		b.WriteString(" " + at(p))
	}
	return b.String()
}

// said are the words of the layout at a place of it.
func (w *told) said(s layout.Span) string { return fmt.Sprintf("%q", w.text[s.Start:s.End]) }

func (w *told) line(format string, args ...any) { fmt.Fprintf(w.b, format+"\n", args...) }

// whole tells a top with its patches, its seams and where its cloth lies.
func (w *told) whole(name string) {
	t := w.top
	w.exact = append(w.exact, t.Outer, t.Field, t.FirstCell, t.StepFinished, t.SideFinished)
	w.line("%s %q %q %q: %s to %s, field %s to %s, first cell %s, step %d, %d by %d", name, t.Title, t.Colorway, t.Size, at(t.Outer.Min), at(t.Outer.Max), at(t.Field.Min), at(t.Field.Max), at(t.FirstCell), hundredth(t.StepFinished), t.Columns, t.Rows)
	for _, f := range t.Warnings {
		w.line("warning at %s: %s; %s", w.said(f.Span), f.Message, f.Hint)
	}
	cloth := t.ClothPlaces()
	for i := range t.Patches {
		w.patch(i, cloth)
	}
	w.seams("seams", t.Seams)
	w.seams("strip seams", t.StripSeams)
	w.line("alike %v, shares %.4f", t.Alike, t.Share())
	w.line("cuts %+v", t.Cuts)
	w.facts()
	sum := fnv.New32a()
	fmt.Fprint(sum, w.exact...)
	w.line("exactly %08x", sum.Sum32())
	w.exact = nil
}

func (w *told) patch(i int, cloth []quilt.ClothPlace) {
	t, p := w.top, &w.top.Patches[i]
	r := t.Roles[p.Role]
	line := fmt.Sprintf("%d %s %s %s", i, p.Shape, r.Name, r.Letter)
	if p.Cell >= 0 {
		line += fmt.Sprintf(" cell %d %s%d", p.Cell, t.Cells[p.Cell].Label, t.Cells[p.Cell].Turns)
	}
	if p.Border >= 0 {
		line += fmt.Sprint(" border ", p.Border)
	}
	if p.Set >= 0 {
		line += fmt.Sprint(" set ", p.Set, map[bool]string{true: " reversed"}[p.Reversed])
	}
	line += fmt.Sprintf(" no. %d:%s", p.Number, places(p.Outline))
	if c := t.CutOfPatch(i); c != nil {
		line += fmt.Sprint(" cut ", t.CutOf[i])
	}
	if span := p.Place.Span(); !span.Empty() {
		line += " from " + w.said(span)
	}
	for n := range p.Count {
		face := &t.Faces[p.First+n]
		line += " | " + t.Fabrics[face.Fabric].Name
		if p.Count > 1 {
			line += places(face.Outline)
		}
		if cloth != nil && t.Fabrics[face.Fabric].Cloth != nil {
			at := cloth[p.First+n]
			line += fmt.Sprintf(" %d,%d %.3f°", hundredth(at.Cloth.X), hundredth(at.Cloth.Y), at.Turn)
			w.exact = append(w.exact, at.Top, at.Cloth)
		}
		w.exact = append(w.exact, face.Outline, face.Patch)
	}
	w.exact = append(w.exact, p.Outline)
	w.line("%s", line)
}

func (w *told) seams(name string, list []quilt.Seam) {
	for some := range slices.Chunk(list, 8) {
		line := name
		for _, s := range some {
			line += fmt.Sprintf(" %d-%d %s>%s;", s.A, s.B, at(s.From), at(s.To))
			w.exact = append(w.exact, s)
		}
		w.line("%s", line)
	}
}

// facts tells what only the cutting plan needs, and what was dealt.
func (w *told) facts() {
	c := &w.top.CutFacts
	for i := range w.top.Fabrics {
		if f := &w.top.Fabrics[i]; f.Cloth != nil {
			w.line("cloth of %s: %d by %d, repeats %v", f.Name, hundredth(f.Cloth.Across), hundredth(f.Cloth.Down), f.Cloth.Repeats)
		}
	}
	w.line("%d cells, backing %d, fabrics %v, sets %+v, columns %+v, unused %v, dealt from pools %v", len(w.top.Cells), c.Backing, c.Fabrics, c.Sets, c.Columns, c.Unused, c.Pooled)
	for _, o := range c.OnHand {
		w.line("on hand %d %s of %s, reversed %v, fit patch %d, show %v, strips %v, cut %v", o.Count, o.Role, o.Cloth, o.Reversed, o.Patch, o.Fabrics, o.BandsCut, o.Cut)
	}
	for _, d := range w.top.Dealt {
		w.line("dealt set %d, sewn %d, beside %d, mixed %d, whole %d", d.Set, d.Sewn, d.Beside, d.Mixed, d.Whole)
		for _, s := range d.Sets {
			w.line("  %d of %v: %v", s.Number, s.Fabrics, s.Webs)
		}
	}
	for _, c := range w.top.Colorways {
		line := fmt.Sprintf("colorway %s changes %v:", c.Name, c.Changed)
		for i, f := range c.Fabrics {
			line += fmt.Sprintf(" %s %s %v;", f.Name, f.Colour.Hex(), c.Stock[i])
		}
		w.line("%s", line)
	}
}

// TestWorkedTops: small layouts laid out, with all that their tops have: where each patch lies, what it is cut from and where on its cloth,
// the seams, what is warned of, what is dealt; and parts of them, colorways and sizes. Lengths are in hundredths of a millimeter; what is left out by
// that stands in a sum. The laws hold for them, too; somebody has looked at them.
func TestWorkedTops(t *testing.T) {
	var b bytes.Buffer
	sample := palettes.PhotoSample{Colour: palettes.Colour{R: 128, G: 100, B: 90}, Width: 120, Height: 80, Tile: foldedPrint(0.3, false).Tile}
	for _, c := range workedTops {
		design, _, faults := layout.ReadWith(c.text, func(string) (palettes.PhotoSample, error) { return sample, nil })
		if design == nil {
			t.Errorf("%s: %v", c.name, faults)
			continue
		}
		w := told{b: &b, text: c.text}
		steps := stop.Count(func(sign *stop.Sign) { w.top = quilt.LayUntil(sign, design) })
		whole := w.top
		w.line("\n== %s, in %d steps", c.name, steps)
		w.whole("top")
		for _, part := range c.parts {
			of := whole.Block
			if slices.Contains(layout.Centers(), part) {
				of = whole.Center
			}
			top, err := of(part)
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
				continue
			}
			w.top = top
			w.whole("part " + part)
		}
		if len(whole.Cuts) > 1 {
			w.top = whole.EightOf(0, whole.WedgeFinished(0), whole.Cuts[:2]...)
			w.whole("eight of fabric 0")
		}
		for i := range whole.Colorways {
			w.top = whole.In(i)
			w.line("in %q %q", w.top.Title, w.top.Colorway)
			w.facts()
			for n := range w.top.Sizes {
				sized := w.top.Sizes[n].Top(nil)
				w.line("in size %q %q, %d by %d, fabrics %v", sized.Title, sized.Size, sized.Columns, sized.Rows, sized.Fabrics[0].Name)
			}
		}
	}
	golden.Text(t, "testdata/worked.txt", b.Bytes())
}
