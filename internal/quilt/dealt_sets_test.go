package quilt_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// checkDealings holds what a dealt top promises: every wedge of a dealt strip set shows the fabrics of one of its sets, in its order;
// webs that are not mixed have all their wedges from one set; and no set holds a fabric twice.
func checkDealings(top *quilt.Top) error {
	for _, d := range top.Dealt {
		of, mixed := map[int]int{}, map[int]bool{}
		for n, s := range d.Sets {
			for i, f := range s.Fabrics {
				own := !slices.ContainsFunc(d.Sets, func(o quilt.DealtSet) bool { return o.Fabrics[i] != f }) // the same in all sets
				if !own && slices.Contains(s.Fabrics[:i], f) {
					return fmt.Errorf("set %d holds %s twice", s.Number, top.Fabrics[f].Name)
				}
			}
			for _, w := range s.Webs {
				for _, p := range w.Patches {
					of[p], mixed[p] = n, w.Mixed
				}
			}
		}
		webs := map[[2]int64]int{}
		for i := range top.Patches {
			p := &top.Patches[i]
			if int(p.Set) != d.Set {
				continue
			}
			n, dealt := of[i]
			if !dealt {
				return fmt.Errorf("wedge %d is of no set", i)
			}
			fabrics := slices.Clone(d.Sets[n].Fabrics)
			if p.Reversed {
				slices.Reverse(fabrics)
			}
			for band, f := range fabrics {
				if int(top.Faces[int(p.First)+band].Fabric) != f {
					return fmt.Errorf("wedge %d of set %d shows another fabric", i, d.Sets[n].Number)
				}
			}
			at := [2]int64{int64(p.Outline[0].X), int64(p.Outline[0].Y)}
			if first, known := webs[at]; known && first != n && !mixed[i] {
				return fmt.Errorf("a web is cut from sets %d and %d", first, n)
			}
			webs[at] = n
		}
	}
	return nil
}

// webOf is a web as it is seen: the strip set, in the strip for wedges of one height, and the center.
type webOf struct {
	set int
	at  measure.Point
}

// websOf is the wedges of all webs of dealt strip sets, and the web of each.
func websOf(top *quilt.Top) (wedges map[webOf][]int, of map[int]webOf) {
	wedges, of = map[webOf][]int{}, map[int]webOf{}
	for i := range top.Patches {
		p := &top.Patches[i]
		if w := (webOf{int(p.Set), p.Outline[0]}); slices.ContainsFunc(top.Dealt, func(d quilt.Dealing) bool { return d.Set == w.set }) {
			wedges[w], of[i] = append(wedges[w], i), w
		}
	}
	return wedges, of
}

// neighborWebs are the pairs of webs of one strip set that have wedges in one block or meet along a seam.
func neighborWebs(top *quilt.Top, of map[int]webOf) map[[2]webOf]bool {
	pairs := map[[2]webOf]bool{}
	meet := func(a, b int) {
		w, dealtA := of[a]
		v, dealtB := of[b]
		if dealtA && dealtB && w != v && w.set == v.set && !pairs[[2]webOf{v, w}] {
			pairs[[2]webOf{w, v}] = true
		}
	}
	for _, c := range top.Cells {
		for a := range c.Count {
			for b := range a {
				meet(c.First+a, c.First+b)
			}
		}
	}
	for _, s := range top.Seams {
		meet(int(top.Faces[s.A].Patch), int(top.Faces[s.B].Patch))
	}
	return pairs
}

// checkCounts counts anew what a top says of a dealing: the blocks and wedges of each web, how many webs are mixed, how many neighbors
// share a set, how often each set is sewn.
func checkCounts(top *quilt.Top, d *quilt.Dealing, before int) error {
	wedges, of := websOf(top)
	sets, mixed, beside := map[webOf]map[int]bool{}, 0, 0
	for n, s := range d.Sets {
		if s.Number != before+n+1 {
			return fmt.Errorf("set %d has number %d", n, s.Number)
		}
		for _, w := range s.Webs {
			web := of[w.Patches[0]]
			if sets[web] == nil {
				sets[web] = map[int]bool{}
			}
			sets[web][n] = true
		}
	}
	for web, from := range sets {
		if len(from) > 1 {
			mixed++
		}
		for n, s := range d.Sets {
			for _, w := range s.Webs {
				if of[w.Patches[0]] == web {
					if err := checkWeb(top, &w, wedges[web], len(from) > 1); err != nil {
						return fmt.Errorf("a web of set %d: %w", n, err)
					}
				}
			}
		}
	}
	for pair := range neighborWebs(top, of) {
		for n := range sets[pair[0]] {
			if pair[0].set == d.Set && sets[pair[1]][n] {
				beside++
			}
		}
	}
	if mixed != d.Mixed || beside != d.Beside || mixed > 0 != (d.Whole > 0) {
		return fmt.Errorf("%d webs are mixed and %d neighbors share a set; said are %d and %d, and %d sets for whole webs", mixed, beside, d.Mixed, d.Beside, d.Whole)
	}
	return nil
}

// checkWeb holds a web to its wedges.
func checkWeb(top *quilt.Top, w *quilt.DealtWeb, wedges []int, mixed bool) error {
	var cells []int
	for _, i := range wedges {
		cells = append(cells, int(top.Patches[i].Cell))
	}
	slices.Sort(cells)
	var count [2]int
	for _, i := range w.Patches {
		if top.Patches[i].Reversed {
			count[1]++
		} else {
			count[0]++
		}
	}
	if !slices.Equal(w.Cells, slices.Compact(cells)) || w.Wedges != count || w.Mixed != mixed {
		return fmt.Errorf("it says blocks %v, wedges %v, mixed %v; there are %v, %v, %v", w.Cells, w.Wedges, w.Mixed, cells, count, mixed)
	}
	return nil
}

// checkSewn: a dealing's sets are sewn as often as the one that gives most needs, from strips as long as the narrowest of its fabrics is wide.
func checkSewn(top *quilt.Top, of *layout.Design, d *quilt.Dealing) error {
	set := &top.CutFacts.Sets[d.Set]
	wide, tip := blocks.WedgeCut(top.CutFacts.StripsCut[set.Height], top.Seam)
	width := measure.NM(math.MaxInt64)
	for i := range of.StripSets {
		if of.StripSets[i].Name != set.Name {
			continue
		}
		for _, b := range of.StripSets[i].Bands {
			fabrics := []int{b.Fabric}
			if b.Pool >= 0 {
				fabrics = of.Pools[b.Pool].Fabrics
			}
			for _, f := range fabrics {
				width = min(width, top.CutFacts.Fabrics[f].UsableWidth)
			}
		}
	}
	per, sewn := blocks.NestedIn(width, wide, tip), 1
	if per == 0 {
		return nil
	}
	alike := len(set.BandsCut) == 1
	for _, s := range d.Sets {
		var load [2]int
		for _, w := range s.Webs {
			load[0], load[1] = load[0]+w.Wedges[0], load[1]+w.Wedges[1]
		}
		for !enough(sewn, per, load) && !(alike && sewn*per >= load[0]+load[1]) {
			sewn++
		}
	}
	if sewn != d.Sewn {
		return fmt.Errorf("sets of %d wedges are sewn %d times, %d is said", per, sewn, d.Sewn)
	}
	return nil
}

// enough says whether sets that give wedges by turns give so many of both kinds, each beginning with either.
func enough(sewn, per int, load [2]int) bool {
	for first := range sewn + 1 {
		upright := first*((per+1)/2) + (sewn-first)*(per/2)
		if upright >= load[0] && sewn*per-upright >= load[1] {
			return true
		}
	}
	return false
}

// TestDeals holds the laws on invented layouts and on samples; and a top lists the seams between like scraps that need not be alike, all
// of them, in order and each once.
func TestDeals(t *testing.T) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(judges.Of(150, 1500)) {
		texts = append(texts, invent.Layout(seed))
	}
	texts = append(texts, stackTexts()...)
	dealt, alike := 0, 0
	for i, text := range texts {
		d, _, faults := layout.Read(text)
		if d == nil {
			t.Fatalf("layout %d: %v\n%s", i, faults, text)
		}
		if len(d.Pools) == 0 {
			continue
		}
		top := quilt.Lay(d)
		dealt += len(top.Dealt)
		if err := checkDealings(top); err != nil {
			t.Errorf("layout %d: %v\n%s", i, err, text)
		}
		before := map[string]int{}
		for n := range top.Dealt {
			made, name := &top.Dealt[n], top.CutFacts.Sets[top.Dealt[n].Set].Name
			if err := errors.Join(checkCounts(top, made, before[name]), checkSewn(top, d, made)); err != nil {
				t.Errorf("layout %d: %v\n%s", i, err, text)
			}
			before[name] += len(made.Sets)
		}
		want := alikeSeams(top)
		if len(want) > 0 {
			alike++
		}
		if want, got := toldOfAlike(top), spokenOfAlike(top); !slices.Equal(got, want) && len(d.Swaps) == 0 {
			t.Errorf("layout %d: warned is of %q, wanted %q\n%s", i, got, want, text)
		}
		if !slices.Equal(top.Alike, want) {
			t.Errorf("layout %d: seams between like scraps are %v, said are %v\n%s", i, want, top.Alike, text)
		}
	}
	if dealt < judges.Of(30, 70) || alike < 10 {
		t.Errorf("only %d strip sets were dealt, and %d layouts have like scraps side by side", dealt, alike)
	}
}

// dealtText is six fabrics dealt to sets of three, in a field of webs, with other words behind the strip set.
const dealtText = `strip 4
fabric a #111
fabric b #222
fabric c #333
fabric d #444
fabric e #555
fabric f #666
fabric l #fff
scraps s a b c d e f by set
strip-set t s 1 3/4 s 1 1/2 s 1 3/4%s
webs t / reversed t
block W web kites l
grid
 W W W W W W
 W W W W W W
 W W W W W W
 W W W W W W
 W W W W W W
 W W W W W W
`

// stackTexts are layouts of strip sets that are dealt in all ways: too few sets, neighbors that meet their own fabric, narrow cloth, rings
// beside webs, two strip sets of which one holds a fabric by its name, sashes.
func stackTexts() (list []string) {
	for _, words := range []string{"", " sets 4", " sets 8", " sets 100"} {
		list = append(list, fmt.Sprintf(dealtText, words))
	}
	of := func(changes ...string) {
		text := strings.NewReplacer(changes...).Replace(fmt.Sprintf(dealtText, ""))
		list = append(list, text, text+"sash 2 a\n")
	}
	of("kites l", "kites a")
	of("fabric c #333", "fabric c #333 usable-width 22", "strip 4", "strip 4\nusable-width 50")
	of("strip 4", "side 7", "1 3/4", "2", "1 1/2", "rest", "webs t / reversed t\nblock W web kites l", "webs t\nblock W web kites l\nblock R ring wedges t corners b", " W W W W W W\n W W W W W W\n", " R W W R W R\n R R W R W R\n")
	of("scraps s a b c d e f by set", "scraps s a b c by set\nscraps r d e f by set", "webs t / reversed t", "strip-set u r 1 3/4 l 1 1/2 r rest\nwebs t / reversed u")
	return list
}

// TestDealingsNotice: a wedge in a fabric of another set is found.
func TestDealingsNotice(t *testing.T) {
	top := lay(t, fmt.Sprintf(dealtText, ""))
	if err := checkDealings(top); err != nil {
		t.Fatal(err)
	}
	web := top.Dealt[0].Sets[0].Webs[0].Patches
	first := top.Patches[web[0]].First
	kept := top.Faces[first].Fabric
	top.Faces[first].Fabric = int32(top.Dealt[0].Sets[0].Fabrics[1])
	if checkDealings(top) == nil {
		t.Error("a wedge of no set passes")
	}
	top.Faces[first].Fabric = kept
	top.Dealt[0].Sets[0].Fabrics[2] = top.Dealt[0].Sets[0].Fabrics[0]
	if checkDealings(top) == nil {
		t.Error("a set with a fabric twice passes")
	}
}

// TestDealtWarnings: what cannot be as it should is said, with how far it is off and what to write.
func TestDealtWarnings(t *testing.T) {
	for words, want := range map[string]string{
		"":          "",
		" sets 12":  "",
		" sets 8":   `wedges of one web come from more than one set in 1 place of "t", since it is dealt as 8 sets; write sets 9.neighboring webs of "t" come from the same set in 1 place, since it is dealt as 8 sets; add a fabric to its pools, or write a larger number of sets.`,
		" sets 100": `"t" is dealt as 25 sets, not 100, since that is one for every web; write sets 25.`,
	} {
		got := ""
		for _, w := range lay(t, fmt.Sprintf(dealtText, words)).Warnings {
			got += w.Message + "; " + w.Hint + "."
		}
		if got != want {
			t.Errorf("%q: %q, want %q", words, got, want)
		}
	}
}
