package scraps_test

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilt/scraps"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/stop"
)

// dealt is a deal as a line says it: a letter a fabric, or their sum where there are many; and the steps that it took, with those that count
// against the budgets of searching, evening out and spreading, since what is left when one is spent stands.
func dealt(places []scraps.Place, number int) string {
	var d scraps.Assignment
	steps := stop.Count(func(sign *stop.Sign) { d = scraps.Deal(sign, places, number) })
	var b strings.Builder
	for _, f := range d.Fabrics {
		b.WriteRune(rune('a' + f))
	}
	text := b.String()
	if len(text) > 120 {
		sum := fnv.New32a()
		sum.Write([]byte(text))
		text = fmt.Sprintf("%d places, %08x", len(places), sum.Sum32())
	}
	if !d.Proven {
		text += ", not proven"
	}
	searched, evened, spread := scraps.Spent(places, number)
	return fmt.Sprintf("%s, %d steps, spent %d %d %d", text, steps, searched, evened, spread)
}

// dealtSets is the same of a strip set: the fabrics of each set, and the sets of each web.
func dealtSets(s *scraps.StripSet, number int) string {
	var d scraps.Dealt
	steps := stop.Count(func(sign *stop.Sign) { d = scraps.DealSets(sign, s, number) })
	return fmt.Sprintf("%v from %v, sewn %d, beside %d, mixed %d, whole %d, touching %d, %d steps", d.Sets, d.From, d.Sewn, d.Beside, d.Mixed, d.Whole, d.Touches, steps)
}

// meeting is a strip set whose webs lie in rows and columns, strips meet along seams, and some lie beside fabrics that are there already.
func meeting(seed uint64) scraps.StripSet {
	s := dealable(seed)
	last := int16(len(s.Strips) - 1)
	for w := range s.Webs {
		web := &s.Webs[w]
		for _, v := range []int{w - 1, w - 4} {
			if v < 0 || v == w-1 && w%4 == 0 {
				continue
			}
			web.Next, s.Webs[v].Next = append(web.Next, int32(v)), append(s.Webs[v].Next, int32(w))
			web.Beside = append(web.Beside, scraps.Near{Web: int32(v), Mine: 0, Theirs: last})
			s.Webs[v].Beside = append(s.Webs[v].Beside, scraps.Near{Web: int32(w), Mine: last, Theirs: 0})
		}
		if w%3 == 0 {
			web.Barred = append(web.Barred, scraps.Met{Strip: 0, Fabric: w % 4})
		}
	}
	return s
}

// manyWebs is a strip set of more webs than all ways are looked through for, which are whole only where each goes into the emptiest set.
func manyWebs() scraps.StripSet {
	s := scraps.StripSet{Strips: []int{0, 0}, Pools: [][]int{count(9)}, Alike: true, PerSet: 10, Most: 100, Sets: 37}
	for i := range 41 {
		s.Webs = append(s.Webs, scraps.Web{Wedges: [2]int{append([]int{4, 4, 3, 3, 3, 3}, slices.Repeat([]int{10}, 35)...)[i], 0}})
		if i > 0 {
			s.Webs[i].Next, s.Webs[i-1].Next = append(s.Webs[i].Next, int32(i-1)), append(s.Webs[i-1].Next, int32(i))
		}
	}
	return s
}

// TestDealsStay: a number always gives the same arrangement, as the language's reference promises: whoever has cut by a deal finds it
// again. A line that changes is a change for them, and has to stand among the changes.
func TestDealsStay(t *testing.T) {
	var b bytes.Buffer
	deals := func(name string, make func(uint64) []scraps.Place, number func(uint64) int, seeds ...uint64) {
		for _, seed := range seeds {
			fmt.Fprintf(&b, "%s %d: %s\n", name, seed, dealt(make(seed), number(seed)))
		}
	}
	first := func(uint64) int { return 0 }
	deals("patches", patches, func(seed uint64) int { return int(seed % 5) }, seeds(60)...)
	deals("patches", patches, first, 2686, 6236, 13522)
	deals("lopsided", lopsided, first, append(seeds(40), 7148, 12724, 19055)...)
	deals("grid", laidOut, func(seed uint64) int { return int(seed) }, seeds(24)...)
	deals("columns", columns, func(seed uint64) int { return int(seed) }, seeds(16)...)
	deals("touching", func(n uint64) []scraps.Place { return pigeons(int(n)) }, first, 6, 11)
	deals("uneasy", func(n uint64) []scraps.Place { return scraps.Uneasy(int(n), 7) }, first, 20, 33, 47, 90, 150, 240)
	deals("uneasy, in no lines", func(n uint64) []scraps.Place { return scraps.Uneasy(int(n), 0) }, first, 26, 64, 150)
	deals("king", func(n uint64) []scraps.Place { return grid(int(n), int(n), 1, 40) }, first, 24)
	many := manyWebs()
	fmt.Fprintf(&b, "strip set of many webs: %s\n", dealtSets(&many, 0))
	for seed := range uint64(60) {
		apart, met := dealable(seed), meeting(seed)
		fmt.Fprintf(&b, "strip set %d: %s\n", seed, dealtSets(&apart, int(seed%3)))
		fmt.Fprintf(&b, "strip set that meets %d: %s\n", seed, dealtSets(&met, int(seed%3)))
	}
	golden.Text(t, "testdata/deals.txt", b.Bytes())
}

// seeds are so many from 0.
func seeds(n int) []uint64 {
	list := make([]uint64, n)
	for i := range list {
		list[i] = uint64(i)
	}
	return list
}
