package scraps

import (
	"cmp"
	"slices"

	"eighthturn/internal/stop"
)

// StripSet is a strip set that is dealt as several sets, no two of the same fabrics in the same order.
type StripSet struct {
	Strips []int   // from the wide end: which of the pools each strip comes from, -1 where all sets have one fabric
	Pools  [][]int // the fabrics of each, each once; no two pools share one
	// Turns says that a set turned end for end is one that could be dealt too.
	Turns bool
	// Alike says that a set is the same from both ends, so that its reversed wedges are like the others.
	Alike  bool
	Webs   []Web
	PerSet int // wedges that one sewn set gives, reversed ones by turns with others; 0 if not known
	Sets   int // to deal; 0 for the fewest that keep every web whole
	Most   int // sets that may be dealt, 1 at least
}

// Web is wedges that belong together.
type Web struct {
	Wedges [2]int // how many, and how many reversed
	Beside []Near
	Next   []int32 // webs that come next in its row or column, which had better be unlike
	Barred []Met
	Lines  Lines
}

// Near is a web beside another, or two strips of such webs that meet along a seam.
type Near struct {
	Web          int32
	Mine, Theirs int16 // strips; -1 for the webs as wholes
}

// Met is a fabric that a strip of a web meets along a seam.
type Met struct {
	Strip  int16
	Fabric int
}

// Part is the wedges of a web that come from one set.
type Part struct {
	Set    int
	Wedges [2]int
}

// Dealt is a strip set once it is dealt.
type Dealt struct {
	Sets    [][]int  // by set: the fabric of each strip, -1 where all sets have one
	From    [][]Part // by web
	Sewn    int      // how often each set is sewn, at the most
	Beside  int      // neighboring webs that share a set
	Mixed   int      // webs cut from more than one set
	Whole   int      // sets that would keep every web whole; 0 if none were mixed
	Touches int      // seams along which neighboring webs have one fabric, or a web has the fabric that it meets
}

// DealSets deals a strip set: no set holds a fabric twice, and each place has every fabric of its pool as often as any other, or
// once more. The same strip set and number give the same deal. Webs get their wedges from one set each where there are enough,
// neighbors from different ones.
func DealSets(sign *stop.Sign, s *StripSet, number int) Dealt {
	most, base := max(1, min(s.Most, len(s.Webs))), s.base()
	whole, fewest := s.pack(sign, base)
	sets := compose(sign, s, min(cmp.Or(s.Sets, fewest), most), number)
	sewn, want := base, len(sets)
	var d Dealt
	if s.Sets > 0 && want < fewest {
		sewn = s.enough(want)
		if whole, fewest = s.pack(sign, sewn); fewest > want {
			whole = nil
		}
		d.take(allot(sign, s, sets, sewn, whole))
		if d.Mixed > 0 {
			_, d.Whole = s.pack(sign, base)
		}
		return d
	}
	for n := fewest; n > want; {
		sewn++
		whole, n = s.pack(sign, sewn)
	}
	d.take(allot(sign, s, sets, sewn, whole))
	for n := want + 1; n <= min(most, want+spareSets) && s.Sets == 0 && d.Beside > 0; n++ { // with few sets neighbors may have to share one
		if sets = compose(sign, s, n, number); len(sets) < n {
			break
		}
		if a := allot(sign, s, sets, sewn, whole); a.all().beside < d.Beside {
			d.take(a)
		}
	}
	return d
}

// spareSets is how many sets more than the fewest are dealt at most, where neighboring webs had to share one.
const spareSets = 3

// take makes an allotment the deal's.
func (d *Dealt) take(a *allotment) {
	d.Sets, d.Sewn = a.sets, a.most()
	d.From, d.Beside, d.Mixed, d.Touches = a.parts(), a.all().beside, a.mixed, a.all().touches
}

// base is how often a set is sewn so that it gives all wedges of the largest web.
func (s *StripSet) base() int {
	sewn := 1
	for i := range s.Webs {
		for !s.holds(s.Webs[i].Wedges, sewn) {
			sewn++
		}
	}
	return sewn
}

// enough is how often so many sets are sewn so that their wedges are enough in all, though webs may be mixed.
func (s *StripSet) enough(sets int) int {
	var all [2]int
	for i := range s.Webs {
		all = sum(all, s.Webs[i].Wedges)
	}
	sewn := 1
	for !s.holds(all, sets*sewn) {
		sewn++
	}
	return sewn
}

// holds says whether so many sewn sets give some wedges.
func (s *StripSet) holds(wedges [2]int, sewn int) bool {
	if s.PerSet == 0 {
		return true
	}
	if s.Alike {
		return wedges[0]+wedges[1] <= sewn*s.PerSet
	}
	each, odd := sewn*(s.PerSet/2), sewn*(s.PerSet%2)
	return max(0, wedges[0]-each)+max(0, wedges[1]-each) <= odd
}

func sum(a, b [2]int) [2]int { return [2]int{a[0] + b[0], a[1] + b[1]} }

// largestFirst is the webs by how many wedges they have.
func (s *StripSet) largestFirst() []int {
	order := make([]int, len(s.Webs))
	for i := range order {
		order[i] = i
	}
	size := func(w int) int { return s.Webs[w].Wedges[0] + s.Webs[w].Wedges[1] }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(size(b), size(a)) })
	return order
}
