package quilt

import (
	"cmp"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
)

// besides is what lies beside a place of a deal: other places, and fabrics that are there already.
type besides struct{ places, fabrics map[int]bool }

// acrossSeams is what lies beside each of some places, read off the seams: of is the place of each face, -1 for none.
func acrossSeams(t *Top, of []int32, seams []Seam, list map[int]*besides) {
	at := func(place int32) *besides {
		b := list[int(place)]
		if b == nil {
			b = &besides{map[int]bool{}, map[int]bool{}}
			list[int(place)] = b
		}
		return b
	}
	for _, s := range seams {
		for _, way := range [2][2]int32{{s.A, s.B}, {s.B, s.A}} {
			mine, other := of[way[0]], of[way[1]]
			switch {
			case mine < 0 || mine == other:
			case other >= 0:
				at(mine).places[int(other)] = true
			default:
				at(mine).fabrics[int(t.Faces[way[1]].Fabric)] = true
			}
		}
	}
}

// sorted are the numbers of a set in order.
func sorted(set map[int]bool) []int { return slices.Sorted(maps.Keys(set)) }

// TestPlacesOfDeals: what is dealt its fabric from a pool knows what lies beside it along every seam, the column that it is a part of, and
// the middle of its block or the center that it lies around.
func TestPlacesOfDeals(t *testing.T) {
	places := 0
	texts := []string{"side 6\nfabric a #111\nfabric b #444\nfabric c #777\nfabric l #eee\nscraps s a b c by web\nscraps q b l\nblock W web wedges s kites l\nblock F floating wedges s background l\nblock P plain piece q\ngrid\n F P\n W W\n"} // a web that begins before what lies above it
	for seed := range uint64(60) {
		texts = append(texts, invent.Layout(seed))
	}
	for seed, text := range texts {
		d, _, _ := layout.Read(text)
		if d == nil || len(d.Pools) == 0 {
			continue
		}
		l := newBuilder(nil, d)
		l.lay()
		dealt := l.newDealer()
		beside := map[int]*besides{}
		acrossSeams(l.Top, dealt.of, l.Seams, beside)
		acrossSeams(l.Top, dealt.of, l.StripSeams, beside)
		faces := map[int]int32{} // the first of each place
		for _, p := range slices.Backward(l.pools) {
			faces[int(dealt.of[p.face])] = p.face
		}
		for i := range dealt.places {
			p, b := &dealt.places[i], beside[i]
			places++
			var neighbors []int
			for _, n := range p.Neighbours {
				neighbors = append(neighbors, int(n))
			}
			slices.Sort(neighbors)
			if b != nil && (!slices.Equal(neighbors, sorted(b.places)) || !slices.Equal(slices.Sorted(slices.Values(p.Barred)), sorted(b.fabrics))) || b == nil && len(neighbors)+len(p.Barred) > 0 {
				t.Errorf("layout %d: beside place %d lie %v, it knows %v and %v", seed, i, b, neighbors, p.Barred)
			}
			if line, lines := linesAt(l, faces[i], p.Pool); p.Line != line || [4]int32(p.Lines[:4]) != [4]int32(lines[:4]) || (p.Lines[4] > 0) != (line == 0 && l.design.Pools[p.Pool].By == layout.ByPiece) {
				t.Errorf("layout %d: place %d lies in line %d and lines %v, it knows %d and %v", seed, i, line, lines, p.Line, p.Lines)
			}
		}
	}
	if places < 500 {
		t.Errorf("only %d places", places)
	}
}

// linesAt are the line and the lines of a face.
func linesAt(l *builder, face int32, pool int) (int, scraps.Lines) {
	p := &l.Patches[l.Faces[face].Patch]
	switch {
	case l.design.Cells[p.Cell].Run >= 0:
		return l.design.Cells[p.Cell].Run + 1, scraps.Lines{}
	case l.design.Pools[pool].By == layout.ByWeb && p.Shape.Description().Gathers != blocks.NoCentre:
		return 0, l.lines(l.halves(p.Outline[0]))
	}
	x, y := int(p.Cell)%l.Columns, int(p.Cell)/l.Columns
	return 0, l.lines(int32(2*x+1), int32(2*y+1))
}

// dealtTexts are layouts of strip sets that are dealt by set.
func dealtTexts() []string {
	const head = "strip 4\nfabric a #111\nfabric b #222\nfabric c #333\nfabric d #444\nfabric l #fff\nscraps s a b c d by set\nscraps p a b l\n" +
		"strip-set t s 1 3/4 s rest\nstrip-set v s 1 3/4 l 1 1/2 s rest\n"
	const grid = "grid\n W W W W W\n W W X W W\n W X W W W\n W W W W W\n"
	return []string{
		head + "block W web wedges t kites a\nblock X web wedges v kites p\n" + grid,
		head + "webs t / reversed v\nblock W web kites l\nblock X web kites a\n" + grid,
		head + "webs t / reversed t\nblock W web kites p\nblock X floating background b\n" + grid,
		head + "block W ring wedges t reversed v corners a\nblock X ring wedges v corners p\n" + grid,
	}
}

// TestWebsOfDeals: the webs of a strip set that is dealt by set know which others have wedges in a block with them or meet them along a
// seam, with which strips; which come next in their row and column; and which fabrics their strips meet.
func TestWebsOfDeals(t *testing.T) {
	met, strips, next, barred := 0, 0, 0, 0
	for n, text := range dealtTexts() {
		d, _, faults := layout.Read(text)
		if d == nil {
			t.Fatal(faults, text)
		}
		l := newBuilder(nil, d)
		l.lay()
		for _, p := range l.CutFacts.Pooled { // which are not dealt yet when webs are
			l.Faces[p.Face].Fabric = -1
		}
		dealer := l.newSetDealer()
		want := websAnew(dealer)
		for i := range dealer.groups {
			for w, got := range dealer.groups[i].Webs {
				expected := want[[2]int{i, w}]
				met, next, barred = met+len(got.Beside), next+len(got.Next), barred+len(got.Barred)
				for _, n := range got.Beside {
					if n.Mine >= 0 {
						strips++
					}
				}
				slices.SortFunc(got.Beside, byWeb)
				slices.Sort(got.Next)
				slices.SortFunc(got.Barred, byStrip)
				if !reflect.DeepEqual(got.Beside, expected.Beside) || !slices.Equal(got.Next, expected.Next) || !slices.Equal(got.Barred, expected.Barred) || got.Wedges != expected.Wedges || got.Lines != expected.Lines {
					t.Errorf("layout %d: web %d of group %d is %+v, want %+v", n, w, i, got, expected)
				}
			}
		}
	}
	if met < 100 || strips < 20 || next < 100 || barred < 30 {
		t.Errorf("webs meet in only %d ways, with strips in %d, %d come next, %d fabrics are barred", met, strips, next, barred)
	}
}

func byWeb(a, b scraps.Near) int {
	return cmp.Or(cmp.Compare(a.Web, b.Web), cmp.Compare(a.Mine, b.Mine), cmp.Compare(a.Theirs, b.Theirs))
}

func byStrip(a, b scraps.Met) int {
	return cmp.Or(cmp.Compare(a.Strip, b.Strip), cmp.Compare(a.Fabric, b.Fabric))
}

// websAnew are the webs of all groups, by group and number, as wedges and seams show them.
func websAnew(d *setDealer) map[[2]int]*scraps.Web {
	type center struct {
		group int
		at    measure.Point
	}
	webs, of, at := map[[2]int]*scraps.Web{}, map[int32][2]int{}, map[center][2]int{}
	counts := make([]int32, len(d.groups))
	for i := range d.Patches {
		p := &d.Patches[i]
		g := slices.IndexFunc(d.groups, func(g setGroup) bool { return g.set == int(p.Set) })
		if g < 0 {
			continue
		}
		key, known := at[center{g, p.Outline[0]}]
		if !known {
			key = [2]int{g, int(counts[g])}
			at[center{g, p.Outline[0]}] = key
			webs[key] = &scraps.Web{Lines: d.lines(d.halves(p.Outline[0]))}
			counts[g]++
		}
		of[int32(i)] = key
		if p.Reversed {
			webs[key].Wedges[1]++
		} else {
			webs[key].Wedges[0]++
		}
	}
	near := func(w, v [2]int, mine, theirs int16) {
		if w == v || w[0] != v[0] {
			return
		}
		for _, add := range []struct {
			to [2]int
			n  scraps.Near
		}{{w, scraps.Near{Web: int32(v[1]), Mine: mine, Theirs: theirs}}, {v, scraps.Near{Web: int32(w[1]), Mine: theirs, Theirs: mine}}} {
			if web := webs[add.to]; !slices.Contains(web.Beside, add.n) {
				web.Beside = append(web.Beside, add.n)
			}
		}
	}
	for _, c := range d.Cells {
		for a := c.First; a < c.First+c.Count; a++ {
			for b := c.First; b < a; b++ {
				w, inA := of[int32(a)]
				v, inB := of[int32(b)]
				if inA && inB {
					near(w, v, -1, -1)
				}
			}
		}
	}
	for _, s := range d.Seams {
		w, inA := of[d.Faces[s.A].Patch]
		v, inB := of[d.Faces[s.B].Patch]
		switch {
		case inA && inB:
			near(w, v, -1, -1)
			near(w, v, stripOf(d.Top, s.A), stripOf(d.Top, s.B))
		case inA:
			barAnew(d.Top, webs[w], s.A, s.B)
		case inB:
			barAnew(d.Top, webs[v], s.B, s.A)
		}
	}
	for one, w := range at {
		for other, v := range at {
			x, y := d.halves(one.at)
			otherX, otherY := d.halves(other.at)
			if away := max(x-otherX, otherX-x) + max(y-otherY, otherY-y); one.group == other.group && away == 4 && (x == otherX || y == otherY) { // two blocks
				webs[w].Next = append(webs[w].Next, int32(v[1]))
			}
		}
	}
	for _, w := range webs {
		slices.SortFunc(w.Beside, byWeb)
		slices.Sort(w.Next)
		slices.SortFunc(w.Barred, byStrip)
	}
	return webs
}

// stripOf is which strip of its set, from the wide end of wedges that are not reversed, a face is cut from.
func stripOf(t *Top, face int32) int16 {
	p := &t.Patches[t.Faces[face].Patch]
	if p.Reversed {
		return int16(p.First + p.Count - 1 - face)
	}
	return int16(face - p.First)
}

func barAnew(t *Top, web *scraps.Web, face, beside int32) {
	m := scraps.Met{Strip: stripOf(t, face), Fabric: int(t.Faces[beside].Fabric)}
	if m.Fabric >= 0 && !slices.Contains(web.Barred, m) {
		web.Barred = append(web.Barred, m)
	}
}

// TestStripSetsOfDeals: of a strip set that is dealt by set the deal knows which strips come from one pool, whether a set turned end for
// end is one that could be dealt too or even the same, and a number that tells the deals of its pools apart.
func TestStripSetsOfDeals(t *testing.T) {
	const head = "strip 4\nfabric a #111\nfabric b #222\nfabric c #333\nfabric d #444\nfabric e #555\nfabric l #fff\n"
	numbers := map[int]string{}
	for _, c := range []struct {
		deals, bands string
		turns, alike bool
	}{
		{"", "s 1 3/4 s rest s 1 3/4", true, false}, {"", "s 1 3/4 s 1 1/4 s rest", false, false}, {"", "s 1 3/4 r rest s 1 3/4", true, false}, {"", "s 1 3/4 l rest r 1 3/4", false, false},
		{"", "l 1 3/4 s rest l 1 3/4", true, true}, {"", "l 1 3/4 s rest e 1 3/4", false, false}, {"", "s 1 3/4 l rest s 1 3/4", true, false}, {"", "l 1 3/4 s rest s 1 3/4", false, false},
		{"1 0", "s 1 3/4 r rest", false, false}, {"0 1", "s 1 3/4 r rest", false, false}, {"2 1", "s 1 3/4 r rest", false, false}, {"1 2", "s 1 3/4 r rest", false, false},
	} {
		one, other, _ := strings.Cut(c.deals+" 0 0", " ")
		if c.deals == "" {
			one, other = "0", "0"
		}
		text := head + "scraps s a b c by set deal " + one + "\nscraps r d e by set deal " + strings.Fields(other)[0] + "\nstrip-set t " + c.bands + "\nblock W web wedges t kites l\ngrid\n W W\n W W\n"
		text = strings.ReplaceAll(text, " deal 0", "")
		d, _, faults := layout.Read(text)
		if d == nil {
			t.Fatal(faults, text)
		}
		l := newBuilder(nil, d)
		l.lay()
		dealer := l.newSetDealer()
		g := &dealer.groups[0]
		number := dealer.pools(g)
		dealer.ends(g)
		if first, second := 0, 0; c.deals != "" { // whoever has cut by a deal finds it again
			if _, err := fmt.Sscan(c.deals, &first, &second); err != nil {
				t.Fatal(err)
			}
			if number != 31*first+second {
				t.Errorf("the deals %q have the number %d", c.deals, number)
			}
		}
		if g.Turns != c.turns || g.Alike != c.alike {
			t.Errorf("%s: turned end for end it is one too %v, the same %v", c.bands, g.Turns, g.Alike)
		}
		for i, b := range g.of.Bands {
			if b.Pool < 0 != (g.Strips[i] < 0) || b.Pool >= 0 && !slices.Equal(g.Pools[g.Strips[i]], d.Pools[b.Pool].Fabrics) {
				t.Errorf("%s: strip %d comes from pool %d of %v", c.bands, i, g.Strips[i], g.Pools)
			}
			for n, other := range g.of.Bands {
				if (g.Strips[i] == g.Strips[n]) != (b.Pool == other.Pool) {
					t.Errorf("%s: strips %d and %d come from pools %d and %d", c.bands, i, n, g.Strips[i], g.Strips[n])
				}
			}
		}
		if before, known := numbers[number]; known && before != c.deals {
			t.Errorf("the deals %q and %q have one number", before, c.deals)
		}
		numbers[number] = c.deals
	}
}
