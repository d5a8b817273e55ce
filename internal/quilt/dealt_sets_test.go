package quilt_test

import (
	"fmt"
	"slices"
	"testing"

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

// TestDealings holds the laws on invented layouts and on samples.
func TestDealings(t *testing.T) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(judges.Of(150, 1500)) {
		texts = append(texts, invent.Layout(seed))
	}
	dealt := 0
	for i, text := range texts {
		d, _, _ := layout.Read(text)
		if d == nil || !slices.ContainsFunc(d.StripSets, func(s layout.StripSet) bool { return s.Dealt }) {
			continue
		}
		top := quilt.Lay(d)
		dealt += len(top.Dealt)
		if err := checkDealings(top); err != nil {
			t.Errorf("layout %d: %v\n%s", i, err, text)
		}
	}
	if dealt < judges.Of(4, 40) {
		t.Errorf("only %d strip sets were dealt", dealt)
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
