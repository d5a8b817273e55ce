package scraps_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilt/scraps"
)

// topOf makes up a layout of up to five by five blocks with two pools in pieces of all
// kinds, dealt in one of the three ways each, alone or in strip sets.
func topOf(seed uint64) string {
	rng := rand.New(rand.NewPCG(seed, 83))
	var b strings.Builder
	b.WriteString("side 7\n")
	for i := range 8 {
		fmt.Fprintf(&b, "fabric f%d #%02x4060\n", i, 30*i)
	}
	for _, name := range []string{"one", "two"} {
		fmt.Fprintf(&b, "scraps %s", name)
		for _, f := range rng.Perm(8)[:2+rng.IntN(5)] {
			fmt.Fprintf(&b, " f%d", f)
		}
		fmt.Fprintf(&b, " by %s deal %d\n", []string{"piece", "block", "web"}[rng.IntN(3)], rng.IntN(4))
	}
	b.WriteString("strip-set s one 1 1/2 two rest\n")
	cloth := func() string { return []string{"one", "two", "one", "two", "f0"}[rng.IntN(5)] }
	wedge := func() string { return []string{"s", "turned s", cloth(), cloth(), cloth()}[rng.IntN(5)] }
	labels := []string{"W", "S", "F", "T", "R", "U", "P", "H"}
	fmt.Fprintf(&b, "block W web wedges %s kites %s\nblock S star wedges %s kites %s\nblock F floating wedges %s background %s\n", wedge(), cloth(), wedge(), cloth(), wedge(), cloth())
	fmt.Fprintf(&b, "block T floating-star wedges %s kites %s background %s\nblock R ring wedges %s %s corners %s edge %s\n", wedge(), cloth(), cloth(), wedge(), wedge(), cloth(), wedge())
	fmt.Fprintf(&b, "block U tumblers pieces %s %s about 4\nblock P plain piece %s\nblock H halves pieces %s %s\n", cloth(), cloth(), cloth(), cloth(), cloth())
	b.WriteString("grid\n")
	few := 1 + rng.IntN(len(labels))
	columns := 1 + rng.IntN(5)
	for range 1 + rng.IntN(5) {
		for range columns {
			b.WriteString(" " + labels[(few+rng.IntN(few))%len(labels)])
		}
		b.WriteString("\n")
	}
	if rng.IntN(2) == 0 {
		b.WriteString("border 2 f1\n")
	}
	return b.String()
}

// given is the fabric of every place of a table as its top shows it; an error where faces
// that share a place do not share a fabric.
func (tb table) given() ([]int, error) {
	fabrics := make([]int, len(tb.places))
	for i := range fabrics {
		fabrics[i] = -1
	}
	for face, place := range tb.of {
		f := tb.top.Faces[face].Fabric
		if place >= 0 && fabrics[place] >= 0 && fabrics[place] != int(f) {
			return nil, fmt.Errorf("face %d of place %d has fabric %d, another has %d", face, place, f, fabrics[place])
		}
		if place >= 0 {
			fabrics[place] = int(f)
		}
	}
	return fabrics, nil
}

// checkTop holds the laws on a laid-out top: every place has one fabric of its pool, none
// that lies beside it already if another can be had, and none like its neighbour's if the
// search through all deals of its group finds one without.
func checkTop(tb table) (best map[verdict]int, err error) {
	fabrics, err := tb.given()
	if err != nil {
		return nil, err
	}
	best = map[verdict]int{}
	for _, group := range tb.groups() {
		places, mine := tb.cut(group), make([]int, len(group))
		for i, p := range group {
			mine[i] = fabrics[p]
			if domain(places[i])&(1<<mine[i]) == 0 {
				return best, fmt.Errorf("place %d has fabric %d, of %v without %v", p, mine[i], places[i].Choices, places[i].Barred)
			}
		}
		found := exists(places, nil, 50_000)
		best[found]++
		pairs := alike(places, mine)
		if found == some && len(pairs) > 0 || found == none && len(pairs) == 0 {
			return best, fmt.Errorf("%d places have %d pairs alike; the search through all deals says %d", len(group), len(pairs), found)
		}
	}
	return best, nil
}

// TestTops holds the laws on invented tops of up to five by five blocks.
func TestTops(t *testing.T) {
	count := map[verdict]int{}
	for seed := range uint64(500) {
		text := topOf(seed)
		best, err := checkTop(tableOf(t, read(t, text)))
		if err != nil {
			t.Errorf("seed %d: %v in\n%s", seed, err, text)
		}
		for v, n := range best {
			count[v] += n
		}
	}
	t.Logf("groups without neighbours alike: %d, with: %d, too many to look through: %d", count[some], count[none], count[unknown])
	if count[some] < 500 || count[none] < 30 || count[unknown]*50 > count[some] {
		t.Errorf("%d groups can be dealt, %d cannot, %d are not known", count[some], count[none], count[unknown])
	}
}

// TestTopsNotice: a piece that was given another fabric of its pool, or one of none, is
// found.
func TestTopsNotice(t *testing.T) {
	const text = "strip 4\nfabric a #100\nfabric b #200\nfabric c #300\nfabric d #fff\nscraps s a b c by %s\nblock W web wedges s kites d\ngrid\n W W W\n W W W\n W W W\n"
	spoil := func(by string, change func(top *quilt.Top)) error {
		tb := tableOf(t, read(t, fmt.Sprintf(text, by)))
		if _, err := checkTop(tb); err != nil {
			t.Fatal(err)
		}
		change(tb.top)
		_, err := checkTop(tb)
		return err
	}
	next := func(top *quilt.Top) {
		for _, s := range top.Seams {
			if a, b := &top.Faces[s.A], &top.Faces[s.B]; a.Fabric != b.Fabric && a.Fabric < 3 && b.Fabric < 3 {
				a.Fabric = b.Fabric
				return
			}
		}
	}
	barred := func(top *quilt.Top) {
		for i := range top.Faces {
			top.Faces[i].Fabric = 3
		}
	}
	parted := func(top *quilt.Top) { // one face of a place alone
		for i := range top.Faces {
			if f := &top.Faces[i]; f.Fabric < 3 {
				f.Fabric = (f.Fabric + 1) % 3
				return
			}
		}
	}
	for what, err := range map[string]error{
		"alike by piece": spoil("piece", next), "alike by block": spoil("block", next),
		"parted by block": spoil("block", parted), "parted by web": spoil("web", parted),
		"barred by piece": spoil("piece", barred), "barred by block": spoil("block", barred), "barred by web": spoil("web", barred),
	} {
		if err == nil {
			t.Errorf("%s: the spoilt top passes", what)
		}
	}
}

// groups is the places that touch, a list for each group.
func (tb table) groups() [][]int {
	seen := make([]bool, len(tb.places))
	var groups [][]int
	for i := range tb.places {
		if seen[i] {
			continue
		}
		seen[i] = true
		group := []int{i}
		for at := 0; at < len(group); at++ {
			for _, n := range tb.places[group[at]].Neighbours {
				if !seen[n] {
					seen[n] = true
					group = append(group, int(n))
				}
			}
		}
		groups = append(groups, group)
	}
	return groups
}

// TestByWeb: all eight wedges round a web centre have one fabric, and next to it stands
// another; TestTops says so for every top, this one in plain words.
func TestByWeb(t *testing.T) {
	top := quilt.Lay(read(t, king("web")))
	round := map[measure.Point]map[int]int{}
	for _, p := range top.Patches {
		if p.Shape == blocks.Wedge {
			at := p.Outline[0]
			if round[at] == nil {
				round[at] = map[int]int{}
			}
			round[at][int(top.Faces[p.First].Fabric)]++
		}
	}
	whole := 0
	for at, fabrics := range round {
		if len(fabrics) != 1 {
			t.Errorf("the web at %v has fabrics %v", at, fabrics)
		}
		for _, n := range fabrics {
			if n == 8 {
				whole++
			}
		}
	}
	if want := (23*23 + 1) / 2; whole != want { // every other corner inside, beginning with one
		t.Errorf("%d whole webs, want %d", whole, want)
	}
	if len(top.Alike) > 0 {
		t.Errorf("%d seams between pieces alike", len(top.Alike))
	}
}

// TestByBlockAndPiece: by block the wedges of a block are alike, by piece no neighbours are.
func TestByBlockAndPiece(t *testing.T) {
	for by, want := range map[string]bool{"block": true, "piece": false} {
		top := quilt.Lay(read(t, king(by)))
		for cell := range top.Cells {
			seen := map[int]bool{}
			for _, p := range top.Patches[top.Cells[cell].First:][:top.Cells[cell].Count] {
				if p.Shape == blocks.Wedge {
					seen[int(top.Faces[p.First].Fabric)] = true
				}
			}
			if alike := len(seen) == 1; alike != want {
				t.Fatalf("by %s: the wedges of cell %d are of %d fabrics", by, cell, len(seen))
			}
		}
	}
}

// TestTopsAgain: a layout gives the same deal a hundred times, and another deal number
// another one, in the same shapes.
func TestTopsAgain(t *testing.T) {
	fabrics := func(text string) string {
		var b strings.Builder
		for _, f := range quilt.Lay(read(t, text)).Faces {
			fmt.Fprintln(&b, f.Fabric)
		}
		return b.String()
	}
	const text = "strip 4\nfabric a #100\nfabric b #200\nfabric c #300\nfabric d #fff\nscraps s a b c deal %d\nblock W web wedges s kites d\ngrid\n W W W\n W W W\n W W W\n"
	first := fabrics(fmt.Sprintf(text, 1))
	for range 100 {
		if fabrics(fmt.Sprintf(text, 1)) != first {
			t.Fatal("one layout is dealt in two ways")
		}
	}
	seen := map[string]bool{}
	for number := range 20 {
		seen[fabrics(fmt.Sprintf(text, number))] = true
	}
	if len(seen) != 20 {
		t.Errorf("twenty numbers give %d deals", len(seen))
	}
}

// cut is the places of a group by themselves, their neighbours numbered anew.
func (tb table) cut(group []int) []scraps.Place {
	number := map[int32]int32{}
	for i, p := range group {
		number[int32(p)] = int32(i)
	}
	places := make([]scraps.Place, len(group))
	for i, p := range group {
		places[i] = tb.places[p]
		places[i].Neighbours = nil
		for _, n := range tb.places[p].Neighbours {
			places[i].Neighbours = append(places[i].Neighbours, number[n])
		}
	}
	return places
}

// TestRoundWebs: dealt piece by piece from 40 fabrics, hardly a web of a king has one of them twice among its eight wedges. By chance
// one wedge in twelve would be of a fabric that its web has already: eight draws of 40 give 7.33 different ones.
func TestRoundWebs(t *testing.T) {
	top := quilt.Lay(read(t, king("piece")))
	twice, seen := 0, map[measure.Point]map[int32]bool{}
	for _, p := range top.Patches {
		if p.Shape != blocks.Wedge {
			continue
		}
		at, f := p.Outline[0], top.Faces[p.First].Fabric
		if seen[at] == nil {
			seen[at] = map[int32]bool{}
		}
		if seen[at][f] {
			twice++
		}
		seen[at][f] = true
	}
	if twice > 10 {
		t.Errorf("%d wedges are of a fabric that their web has already", twice)
	}
}
