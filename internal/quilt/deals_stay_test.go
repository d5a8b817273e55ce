package quilt

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// stayed is a small layout with two pools and the deals that are said of them.
func stayed(t *testing.T, first, second string) *Top {
	t.Helper()
	return topOf(t, "side 6\nfabric a #111\nfabric b #444\nfabric c #777\nfabric d #aaa\nfabric l #eee\nfabric n #fff\n"+
		"scraps p a b c d"+first+"\nscraps q l n"+second+"\nblock W web wedges p kites q\nblock P plain piece p\ngrid\n W P W P\n P W P W\n")
}

func topOf(t *testing.T, text string) *Top {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatal(text, faults)
	}
	return Lay(d)
}

// dealtTo is the fabric of each face, a letter each.
func dealtTo(top *Top) string {
	var b strings.Builder
	for i := range top.Faces {
		b.WriteString(top.Fabrics[top.Faces[i].Fabric].Name)
	}
	return b.String()
}

// TestDealsStay: a deal stays what it is, since quilts are cut after it: the same numbers give the same arrangement with every version
// of the program.
func TestDealsStay(t *testing.T) {
	for deals, want := range map[[2]string]string{
		{"", ""}:               "bdcanldbacdlncabdcalnbbadcnl",
		{" deal 2", ""}:        "abcdlnccbadlnbaabdclndcbadln",
		{"", " deal 2"}:        "adcbnlcadcbnlabdabcnlddabcln",
		{" deal 2", " deal 3"}: "acdbnlccdbanlbaacdbnlddcbaln",
		{" deal 3", " deal 2"}: "bacdnlcbacdnladbacdnlbbacdnl",
	} {
		if got := dealtTo(stayed(t, deals[0], deals[1])); got != want {
			t.Errorf("deals%s and%s give %q, wanted %q", deals[0], deals[1], got, want)
		}
	}
}

// TestTurnsOnClothAreExact: pieces made of wedges lie on their cloth at a whole number of sixteenths of a turn, to the last digit, though
// their corners are rounded.
func TestTurnsOnClothAreExact(t *testing.T) {
	top := topOf(t, "side 6\nfabric a #111\nfabric b #eee\nfabric s stripes a 1 b 1\nblock W web wedges s kites s\nblock R ring wedges s corners b\nblock F floating wedges s background s\ngrid\n W R F\n F W R\n")
	turned := map[float64]bool{}
	for i, p := range top.ClothPlaces() {
		if top.Fabrics[top.Faces[i].Fabric].Cloth == nil {
			continue
		}
		turned[p.Turn] = true
		if math.Mod(p.Turn, 22.5) != 0 {
			t.Errorf("piece %d is turned by %v°", i, p.Turn)
		}
	}
	if len(turned) < 8 {
		t.Errorf("only %d turns were seen", len(turned))
	}
}

// TestNarrowClothInDealtSets: whichever fabric of a dealt strip set is narrow, a fabric of its own or one of the pool, its strips are the
// shortest, and as many sets are dealt as for that.
func TestNarrowClothInDealtSets(t *testing.T) {
	sets := func(narrow string) int {
		text := "strip 4\nfabric a #111\nfabric b #444\nfabric c #777\nfabric d #999\nfabric l #eee\nscraps p a b c d by set\nstrip-set s p 1 1/4 l 1 p rest\nblock W web wedges s kites l\ngrid\n" + strings.Repeat(" W W W W W W\n", 4)
		if narrow != "" {
			at := strings.Index(text, "fabric "+narrow)
			end := at + strings.Index(text[at:], "\n")
			text = text[:end] + " usable-width 14" + text[end:]
		}
		n := 0
		top := topOf(t, text)
		for i := range top.Dealt {
			n += len(top.Dealt[i].Sets)
		}
		return n
	}
	all := []int{sets(""), sets("a"), sets("l")}
	if all[1] != all[2] || all[0] >= all[1] {
		t.Errorf("%d sets are dealt of wide cloth, %d where one of the pool is narrow, %d where the other fabric is", all[0], all[1], all[2])
	}
}

// TestRecoloredKeepsItsNames: of a top that only changes colors its colorways and sizes are those of the text as it stands now.
func TestRecoloredKeepsItsNames(t *testing.T) {
	text := "side 6\nfabric a #111\nfabric b #eee\nfabric c #777\ncolorway fall a c\nsize twin across 4 down 4\nblock P plain piece a\nblock Q plain piece b\ngrid\n P Q\n Q P\n"
	top := topOf(t, text)
	now := strings.NewReplacer("#111", "#123456", "colorway fall", "colorway spring", "size twin", "size queen").Replace(text)
	d, _, faults := layout.Read(now)
	if d == nil {
		t.Fatal(faults)
	}
	again, fresh := top.Recolored(d), Lay(d)
	names := func(of *Top) (list []string) {
		for _, c := range of.Colorways {
			list = append(list, c.Name, fmt.Sprint(c.Changed))
		}
		for _, s := range of.Sizes {
			list = append(list, s.Name)
		}
		return list
	}
	if again == nil || !slices.Equal(names(again), names(fresh)) || slices.Equal(names(top), names(fresh)) {
		t.Errorf("recolored it has %q, laid anew %q", names(again), names(fresh))
	}
}

// TestSetsStay: strip sets that are dealt stay what they are, too.
func TestSetsStay(t *testing.T) {
	for deals, want := range map[[2]string]string{
		{"", ""}:               "acb3 bda3 bca4 adb3 bcabcabdabdalladbadbbdabdalladbadbacbacbllbcabcaacbacbllbdabdaacbacbllbdabdabcabcallacbacbbcabcallacbacbadbadbllacbacbadbadbllbcabcaadbadbllbcabcabdabdalladbadbbdabdalladbadbbdabdalladbadbacbacbllbdabdaacbacbllbdabdabcabcall",
		{" deal 2", " deal 3"}: "bda3 acb3 adb4 bca3 adbadbacbacbllbcabcaacbacbllbcabcabdabdalladbadbbdabdallacbacbbdabdallacbacbadbadbllbdabdaadbadbllbdabdabcabcallbdabdabcabcalladbadbbcabcalladbadbacbacbllbcabcaacbacbllbcabcaacbacbllbcabcabdabdallacbacbbdabdallacbacbadbadbll",
		{" deal 3", " deal 2"}: "bda3 acb3 adb4 bca3 adbadbacbacbllbcabcaacbacbllbcabcabdabdalladbadbbdabdallacbacbbdabdallacbacbadbadbllbdabdaadbadbllbdabdabcabcallbdabdabcabcalladbadbbcabcalladbadbacbacbllbcabcaacbacbllbcabcaacbacbllbcabcabdabdallacbacbbdabdallacbacbadbadbll",
	} {
		top := topOf(t, "strip 4\nfabric a #111\nfabric b #444\nfabric c #777\nfabric d #999\nfabric l #eee\nscraps p a b by set"+deals[0]+"\nscraps q c d by set"+deals[1]+
			"\nstrip-set s p 1 1/4 q 1 p rest\nblock W web wedges s kites l\ngrid\n"+strings.Repeat(" W W W W\n", 4))
		var b strings.Builder
		for _, d := range top.Dealt {
			for _, s := range d.Sets {
				for _, f := range s.Fabrics {
					b.WriteString(top.Fabrics[f].Name)
				}
				fmt.Fprint(&b, len(s.Webs), " ")
			}
		}
		if got := b.String() + dealtTo(top); got != want {
			t.Errorf("deals%s and%s give %q, wanted %q", deals[0], deals[1], got, want)
		}
	}
}

// TestLargestOfTheMost: of two sizes of which a quilt has as many wedges, the larger stands for them, every time.
func TestLargestOfTheMost(t *testing.T) {
	top := topOf(t, "side 6\nfabric a #111\nfabric b #eee\nblock W web wedges a kites b\nblock R ring wedges a corners b\ngrid\n W W R\n")
	heights := map[measure.NM]int{}
	for i := range top.Patches {
		if p := &top.Patches[i]; p.Shape == blocks.Wedge {
			f := p.upright()
			heights[nearly(f.lower-f.upper)]++
		}
	}
	if list := slices.Collect(maps.Values(heights)); len(list) != 2 || list[0] != list[1] {
		t.Fatalf("wedges of %v", heights)
	}
	want := slices.Max(slices.Collect(maps.Keys(heights)))
	for range 30 {
		if got := top.WedgeFinished(0); got != want {
			t.Fatalf("of %v it is %d, wanted %d", heights, got, want)
		}
	}
}

// TestDirectionsOfAnyTurn: a turn has the cosine and the sine of its angle, however often it goes round and either way, and those of halves of
// right angles to the last digit.
func TestDirectionsOfAnyTurn(t *testing.T) {
	exact := map[int][2]float64{0: {1, 0}, 1: {math.Sqrt2 / 2, math.Sqrt2 / 2}, 2: {0, 1}, 3: {-math.Sqrt2 / 2, math.Sqrt2 / 2}, 4: {-1, 0}, 5: {-math.Sqrt2 / 2, -math.Sqrt2 / 2}, 6: {0, -1}, 7: {math.Sqrt2 / 2, -math.Sqrt2 / 2}}
	for turn := -720; turn <= 720; turn += 15 {
		place := ClothPlace{Turn: float64(turn)}
		cos, sin := place.Directions()
		if math.Abs(cos-math.Cos(float64(turn)*math.Pi/180)) > 1e-12 || math.Abs(sin-math.Sin(float64(turn)*math.Pi/180)) > 1e-12 {
			t.Errorf("%d° has %v, %v", turn, cos, sin)
		}
		if want := exact[(turn+720)/45%8]; turn%45 == 0 && [2]float64{cos, sin} != want {
			t.Errorf("%d° has %v, %v, not %v", turn, cos, sin, want)
		}
	}
}
