package quilt

import (
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/layout"
)

// Dealing is a strip set that was dealt set by set.
type Dealing struct {
	Set    int // of the cut facts' sets, by index
	Sets   []DealtSet
	Sewn   int // how often each set is sewn, at the most
	Beside int // neighboring webs that share a set
	Mixed  int // webs that are cut from more than one set
	Whole  int // sets that would keep every web whole, where some are mixed
}

// DealtSet is one of the sets.
type DealtSet struct {
	Number  int   // from 1, among all sets of its name
	Fabrics []int // of each strip, by index, from the wide end
	Webs    []DealtWeb
}

// DealtWeb is a web, or what of it is cut from one set.
type DealtWeb struct {
	Cells   []int  // whose blocks have its wedges
	Patches []int  // those that are cut from the set
	Wedges  [2]int // how many that is, and how many reversed
	Mixed   bool   // other wedges of it come from other sets
}

// dealtWeb is the wedges of one strip set round one center.
type dealtWeb struct {
	at      measure.Point
	group   int
	number  int32 // among the webs of its group
	patches []int
}

// setGroup is one strip set that is dealt to its webs.
type setGroup struct {
	scraps.StripSet
	set    int // of the cut facts' sets
	height blocks.WedgeHeight
	of     *layout.StripSet
	webs   []int // of all webs, by index
}

// setDealer deals strip sets set by set.
type setDealer struct {
	*builder
	groups []setGroup
	webs   []dealtWeb
	web    []int32 // by patch, -1 for others
}

// dealSets gives the faces of strip sets that are dealt by set their fabrics. They are dealt before all other pools.
func (l *builder) dealSets() {
	d := l.newSetDealer()
	if len(d.groups) == 0 {
		return
	}
	for i := range d.groups {
		d.deal(&d.groups[i])
	}
	l.pools = slices.DeleteFunc(l.pools, func(p pooledFace) bool { return l.design.Pools[p.pool].By == layout.BySet })
	d.findAlike()
}

// newSetDealer is the strip sets that are dealt by set, their webs and what lies beside those.
func (l *builder) newSetDealer() *setDealer {
	d := &setDealer{builder: l}
	keys := make([]setKey, len(l.sets))
	for key, at := range l.sets {
		keys[at] = key
	}
	for n, key := range keys {
		if of := &l.design.StripSets[key.set]; of.Dealt {
			d.groups = append(d.groups, setGroup{set: n, height: key.height, of: of})
		}
	}
	if len(d.groups) > 0 {
		d.findWebs()
		d.next()
		d.besides()
		d.meet()
	}
	return d
}

// findWebs finds the webs of all groups, in the order of their first wedges.
func (d *setDealer) findWebs() {
	type center struct {
		group int
		at    measure.Point
	}
	known, groups := map[center]int32{}, map[int]int{}
	for i := range d.groups {
		groups[d.groups[i].set] = i
	}
	d.web = make([]int32, len(d.Patches))
	for i := range d.Patches {
		d.web[i] = -1
		p := &d.Patches[i]
		n, dealt := groups[int(p.Set)]
		if !dealt {
			continue
		}
		d.sign.Step(1)
		w, ok := known[center{n, p.Outline[0]}]
		if !ok {
			w = d.newWeb(n, p.Outline[0])
			known[center{n, p.Outline[0]}] = w
		}
		web := &d.groups[n].Webs[d.webs[w].number]
		if p.Reversed {
			web.Wedges[1]++
		} else {
			web.Wedges[0]++
		}
		d.web[i] = w
		d.webs[w].patches = append(d.webs[w].patches, i)
	}
}

// newWeb begins a web of a group round a center, with the lines that it lies in.
func (d *setDealer) newWeb(group int, at measure.Point) int32 {
	g := &d.groups[group]
	w := len(d.webs)
	d.webs = append(d.webs, dealtWeb{at: at, group: group, number: int32(len(g.Webs))})
	g.webs = append(g.webs, w)
	g.Webs = append(g.Webs, scraps.Web{Lines: d.lines(d.halves(at))})
	return int32(w)
}

// maxDealt and maxDealtStrips are how many sets, and how many strips in them, are dealt in one layout.
const (
	maxDealt       = layout.MaxDealt
	maxDealtStrips = layout.MaxSetStrips
)

// deal deals a group.
func (d *setDealer) deal(g *setGroup) {
	g.Sets = g.of.Sets
	g.Most = max(1, min(maxDealt/len(d.groups), maxDealtStrips/len(d.groups)/len(g.of.Bands)))
	number := d.pools(g)
	wide, tip := blocks.WedgeCut(d.CutFacts.StripsCut[g.height], d.Seam)
	g.PerSet = blocks.NestedIn(d.usable(g), wide, tip)
	d.ends(g)
	dealt := scraps.DealSets(d.sign, &g.StripSet, number)
	d.give(g, &dealt)
	d.warnOf(g, &dealt)
}

// pools fills in which pools the strips come from, and says the number of their deal.
func (d *setDealer) pools(g *setGroup) int {
	index, number := map[int]int{}, 0
	for _, b := range g.of.Bands {
		at := -1
		if b.Pool >= 0 {
			var ok bool
			if at, ok = index[b.Pool]; !ok {
				at = len(g.Pools)
				index[b.Pool] = at
				g.Pools = append(g.Pools, d.design.Pools[b.Pool].Fabrics)
				number = number*31 + d.design.Pools[b.Pool].Deal
			}
		}
		g.Strips = append(g.Strips, at)
	}
	return number
}

// usable is the usable width of the narrowest fabric that a set may hold.
func (d *setDealer) usable(g *setGroup) measure.NM {
	var fabrics []int
	for _, b := range g.of.Bands {
		if b.Fabric >= 0 {
			fabrics = append(fabrics, b.Fabric)
		}
	}
	for _, pool := range g.Pools {
		fabrics = append(fabrics, pool...)
	}
	width := measure.NM(math.MaxInt64)
	for _, f := range fabrics {
		width = min(width, d.CutFacts.Fabrics[f].UsableWidth)
	}
	return width
}

// ends finds whether a set turned end for end is like one that is dealt, and whether it is the same set.
func (d *setDealer) ends(g *setGroup) {
	cut := d.CutFacts.Sets[g.set].BandsCut
	g.Turns, g.Alike = true, true
	for i, n := 0, len(cut)-1; i < n; i, n = i+1, n-1 {
		one, other := &g.of.Bands[i], &g.of.Bands[n]
		g.Turns = g.Turns && one.Pool == other.Pool && one.Fabric == other.Fabric && cut[i] == cut[n]
		g.Alike = g.Alike && g.Turns && one.Pool < 0
	}
}

// next finds the webs that come next to each other in a row or a column.
func (d *setDealer) next() {
	type place struct {
		group int
		x, y  int32
	}
	known := map[place]int32{}
	for i := range d.webs {
		w := &d.webs[i]
		x, y := d.halves(w.at)
		for _, before := range []place{{w.group, x - webStep, y}, {w.group, x, y - webStep}} {
			if v, ok := known[before]; ok {
				webs := d.groups[w.group].Webs
				webs[w.number].Next, webs[v].Next = append(webs[w.number].Next, v), append(webs[v].Next, w.number)
			}
		}
		known[place{w.group, x, y}] = w.number
	}
}

// webStep is from a web center to the next in its row, in halves of blocks.
const webStep = 4

// besides makes webs neighbors that have wedges in one block.
func (d *setDealer) besides() {
	for i := range d.Cells {
		var here []int32
		c := &d.Cells[i]
		for p := c.First; p < c.First+c.Count; p++ {
			if w := d.web[p]; w >= 0 && !slices.Contains(here, w) {
				here = append(here, w)
			}
		}
		for n, w := range here {
			for _, v := range here[:n] {
				d.beside(w, v, -1, -1)
			}
		}
	}
}

// beside makes two webs of one group neighbors, or notes which of their strips meet.
func (d *setDealer) beside(w, v int32, mine, theirs int16) {
	one, other := &d.webs[w], &d.webs[v]
	if one.group != other.group {
		return
	}
	g := &d.groups[one.group]
	a, b := &g.Webs[one.number], &g.Webs[other.number]
	if n := (scraps.Near{Web: other.number, Mine: mine, Theirs: theirs}); !slices.Contains(a.Beside, n) {
		a.Beside = append(a.Beside, n)
		b.Beside = append(b.Beside, scraps.Near{Web: one.number, Mine: theirs, Theirs: mine})
	}
}

// meet notes which strips of webs meet those of others along a seam, and which meet other fabrics.
func (d *setDealer) meet() {
	for i := range d.Seams {
		a, b := d.Seams[i].A, d.Seams[i].B
		w, v := d.web[d.Faces[a].Patch], d.web[d.Faces[b].Patch]
		switch {
		case w >= 0 && v >= 0 && w != v:
			d.beside(w, v, -1, -1)
			d.beside(w, v, d.strip(a), d.strip(b))
		case w >= 0 && v < 0:
			d.bar(w, a, b)
		case v >= 0 && w < 0:
			d.bar(v, b, a)
		}
	}
}

// strip is which strip of its set a face is cut from, from the wide end.
func (d *setDealer) strip(face int32) int16 {
	p := &d.Patches[d.Faces[face].Patch]
	n := face - p.First
	if p.Reversed {
		n = p.Count - 1 - n
	}
	return int16(n)
}

// bar notes that a strip of a web meets a fabric that lies there already.
func (d *setDealer) bar(w, face, beside int32) {
	met := scraps.Met{Strip: d.strip(face), Fabric: int(d.Faces[beside].Fabric)}
	web := &d.groups[d.webs[w].group].Webs[d.webs[w].number]
	if met.Fabric >= 0 && !slices.Contains(web.Barred, met) {
		web.Barred = append(web.Barred, met)
	}
}

// give gives the faces of all webs the fabrics of their sets, and keeps which set makes which.
func (d *setDealer) give(g *setGroup, dealt *scraps.Dealt) {
	made := Dealing{Set: g.set, Sewn: dealt.Sewn, Beside: dealt.Beside, Mixed: dealt.Mixed, Whole: dealt.Whole}
	before := 0
	for i := range d.Dealt {
		if d.CutFacts.Sets[d.Dealt[i].Set].Name == g.of.Name {
			before += len(d.Dealt[i].Sets)
		}
	}
	for n, fabrics := range dealt.Sets {
		for i, b := range g.of.Bands {
			if b.Pool < 0 {
				fabrics[i] = b.Fabric
			}
		}
		made.Sets = append(made.Sets, DealtSet{Number: before + n + 1, Fabrics: fabrics})
	}
	for w, n := range g.webs {
		left := d.webs[n].patches
		for _, part := range dealt.From[w] {
			set := &made.Sets[part.Set]
			web := DealtWeb{Wedges: part.Wedges, Mixed: len(dealt.From[w]) > 1, Cells: d.cellsOf(d.webs[n].patches)}
			web.Patches, left = d.wedges(left, part.Wedges)
			for _, p := range web.Patches {
				d.color(p, set.Fabrics)
			}
			set.Webs = append(set.Webs, web)
		}
	}
	d.Dealt = append(d.Dealt, made)
}

// wedges is the first of some patches, so many of either kind, and the rest.
func (d *setDealer) wedges(list []int, count [2]int) (some, rest []int) {
	for _, p := range list {
		way := 0
		if d.Patches[p].Reversed {
			way = 1
		}
		if count[way] > 0 {
			count[way]--
			some = append(some, p)
		} else {
			rest = append(rest, p)
		}
	}
	return some, rest
}

// cellsOf is the cells that patches, in their order, lie in, each once.
func (d *setDealer) cellsOf(patches []int) []int {
	var cells []int
	for _, p := range patches {
		cells = append(cells, int(d.Patches[p].Cell))
	}
	return slices.Compact(cells)
}

// color gives the bands of a wedge their fabrics.
func (d *setDealer) color(patch int, fabrics []int) {
	p := &d.Patches[patch]
	for face := p.First; face < p.First+p.Count; face++ {
		d.Faces[face].Fabric = int32(fabrics[d.strip(face)])
	}
}
