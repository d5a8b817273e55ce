package leftovers

import (
	"cmp"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Item is what a proposal is, by its finished size.
type Item uint8

const (
	Mat Item = iota // anything small
	Pillow
	Placemat
	Runner
	Hanging // for a wall
	Throw
)

// String is the item's name for other programs.
func (i Item) String() string {
	return [...]string{"mat", "pillow", "placemat", "runner", "wall-hanging", "throw"}[i]
}

// MarshalText writes the item for other programs.
func (i Item) MarshalText() ([]byte, error) { return []byte(i.String()), nil }

// inCircle is how many wedges make a ring, a web or the surroundings of a star.
const inCircle = 8

// The largest grid that is proposed, and the most copies.
const (
	mostAcross = 30
	mostBlocks = 300
	mostCopies = 12
)

// candidate is a grid of whole circles of wedges.
type candidate struct {
	item         Item
	main, frame  *blocks.Kind // frame is nil where all blocks are of the main kind
	across, down int
	side, border measure.NM
	circles      []int // the stock of each, row by row
	copies       int
	stripCut     measure.NM
	ground       int   // fabric of the top that kites, corners and background are cut from
	edge         int   // fabric of the border, the binding and the points of floating stars
	extra        []int // stocks of pieces of the ground
}

// stocks are the stocks that a candidate uses, each once.
func (c *candidate) stocks() []int {
	list := slices.Clone(c.circles)
	slices.Sort(list)
	return append(slices.Compact(list), c.extra...)
}

// candidates are the grids that use most of the pieces, of each kind of block the best for each item; those that use most first.
func (w *work) candidates() []candidate {
	var list []candidate
	for _, strip := range w.strips() {
		for _, k := range blocks.Kinds() {
			if frame, ok := framed(k); ok {
				list = append(list, w.ofKind(k, frame, strip)...)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(b.copies*len(b.circles), a.copies*len(a.circles)), cmp.Compare(a.copies, b.copies), cmp.Compare(which(a.main.Turning.InLattice()), which(b.main.Turning.InLattice())))
	})
	return list
}

func which(second bool) int {
	if second {
		return 1
	}
	return 0
}

// strips are the widths of the strips that wedges are left from.
func (w *work) strips() (list []measure.NM) {
	for _, s := range w.Stocks {
		if s.wedges && s.Pieces >= inCircle && !slices.Contains(list, s.StripCut) {
			list = append(list, s.StripCut)
		}
	}
	return list
}

// framed says whether whole circles can be made of a kind of block, and of which kind a frame around its blocks is; nil for none.
func framed(k *blocks.Kind) (frame *blocks.Kind, ok bool) {
	switch {
	case k.Column || !slices.ContainsFunc(k.Roles, func(r blocks.Role) bool { return r.Banded }):
		return nil, false
	case k.Turning == blocks.OnWebCentres:
		for _, f := range blocks.Kinds() {
			if f.Turning == blocks.ToWebCentre {
				return f, true
			}
		}
		return nil, false
	}
	return nil, k.Turning == blocks.Fixed || k.Turning == blocks.ToStarCentre
}

// grid is a number of blocks across and down, with how many circles they make.
type grid struct{ across, down, circles int }

// grids are those of a kind that take no more than so many circles, no higher than wide.
func grids(k *blocks.Kind, most int) (list []grid) {
	step := 1
	if k.Turning.InLattice() { // circles lie where four blocks meet
		step = 2
	}
	for down := step; down <= mostAcross; down += step {
		for across := down; across <= mostAcross && across*down <= mostBlocks; across += step {
			n := across * down / (step * step)
			if k.Turning == blocks.OnWebCentres {
				n += (across/2 - 1) * (down/2 - 1)
			}
			if n <= most {
				list = append(list, grid{across, down, n})
			}
		}
	}
	return list
}

// ofKind are the best grids of a kind for each item.
func (w *work) ofKind(k, frame *blocks.Kind, strip measure.NM) []candidate {
	side := k.Height.Side(measure.Of(strip - 2*w.top.Seam))
	border := w.borderFor(side)
	most, left := 0, w.circlesLeft(k, strip)
	for _, n := range left {
		most += n
	}
	best := map[Item]candidate{}
	for _, g := range grids(k, most) {
		c := candidate{main: k, frame: frame, across: g.across, down: g.down, side: side, border: border, stripCut: strip, copies: 1}
		item, ok := w.itemOf(&c)
		if !ok {
			continue
		}
		c.item = item
		if item == Pillow || item == Placemat {
			c.copies = copiesOf(left, g.circles)
		}
		c.circles = make([]int, g.circles)
		if b, has := best[item]; !has || c.better(&b) {
			best[item] = c
		}
	}
	list := make([]candidate, 0, len(best))
	for item := Mat; item <= Throw; item++ {
		if c, has := best[item]; has {
			w.deal(&c)
			w.choose(&c)
			list = append(list, c)
		}
	}
	return list
}

// better says whether a candidate uses more pieces than another for the same item, or as many in fewer and larger things.
func (c *candidate) better(b *candidate) bool {
	return cmp.Or(cmp.Compare(c.copies*len(c.circles), b.copies*len(b.circles)), cmp.Compare(b.copies, c.copies), cmp.Compare(b.across-b.down, c.across-c.down)) > 0
}

// circlesLeft is how many circles of wedges of one stock there are for a kind, by stock. Of floating stars all are of one stock: webs
// come about between them, and would be mixed.
func (w *work) circlesLeft(k *blocks.Kind, strip measure.NM) map[int]int {
	left, largest := map[int]int{}, 0
	for i, s := range w.Stocks {
		if s.wedges && s.StripCut == strip && s.Pieces >= inCircle {
			left[i] = s.Pieces / inCircle
			if left[i] > left[largest] {
				largest = i
			}
		}
	}
	if k.Turning == blocks.ToStarCentre {
		return map[int]int{largest: left[largest]}
	}
	return left
}

// copiesOf is how many things of so many circles can be made alike of what is left of each stock, of which there is enough for one.
func copiesOf(left map[int]int, circles int) int {
	enough := func(copies int) bool {
		n := 0
		for _, of := range left {
			n += of / copies
		}
		return n >= circles
	}
	copies := 1
	for copies < mostCopies && enough(copies+1) {
		copies++
	}
	return copies
}

// shares is how many circles of a candidate come from each stock, as many of each as there can be.
func (w *work) shares(c *candidate) []int {
	left := w.circlesLeft(c.main, c.stripCut)
	shares, sum := make([]int, len(w.Stocks)), 0
	for i := range shares {
		shares[i] = left[i] / c.copies
		sum += shares[i]
	}
	for ; sum > len(c.circles); sum-- {
		shares[slices.Index(shares, slices.Max(shares))]--
	}
	return shares
}

// deal gives each circle a stock, spread evenly, if possible another one than its neighbors to the left and above have.
func (w *work) deal(c *candidate) {
	shares, all := w.shares(c), len(c.circles)
	dealt := make([]int, len(shares))
	across := c.across
	if c.main.Turning.InLattice() {
		across /= 2
	}
	for n := range c.circles {
		due := func(i int) int { return shares[i]*(n+1) - dealt[i]*all } // how far behind its share a stock is
		best, apart := -1, -1
		for i := range shares {
			if dealt[i] == shares[i] {
				continue
			}
			if best < 0 || due(i) > due(best) {
				best = i
			}
			beside := n%across > 0 && c.circles[n-1] == i || n >= across && c.circles[n-across] == i
			if !beside && (apart < 0 || due(i) > due(apart)) {
				apart = i
			}
		}
		if apart >= 0 && due(apart) > -all {
			best = apart
		}
		c.circles[n] = best
		dealt[best]++
	}
}

// borderFor is a border's finished width: about a quarter of a block, on a mark that rulers have. Common practice, no source.
func (w *work) borderFor(side measure.NM) measure.NM {
	step := w.Units.Usual(measure.Inch/2, measure.Centimetre/2)
	return min(max(measure.Nearest(side/4, step), 2*step), w.Units.Usual(3*measure.Inch, 75*measure.Millimetre))
}

// itemOf is what a grid is good for by its size with the border, false for nothing. The sizes are common practice, from memory:
// placemats about 14 by 18 in, runners 12 to 16 in wide, pillows 12 to 20 in square.
func (w *work) itemOf(c *candidate) (Item, bool) {
	in := func(n measure.NM) measure.NM { return n * measure.Inch }
	long, wide := measure.NM(c.across)*c.side, measure.NM(c.down)*c.side
	mat := func() bool {
		return wide >= in(11) && wide <= in(16) && long >= in(15) && long <= in(22) && long > wide
	}
	if mat() {
		c.border = 0
		return Placemat, true
	}
	long, wide = long+2*c.border, wide+2*c.border
	switch {
	case long == wide && wide >= in(10) && wide <= in(21):
		return Pillow, true
	case mat():
		return Placemat, true
	case wide <= in(22) && long >= in(28) && long <= in(96) && 5*long >= 11*wide:
		return Runner, true
	case 5*long > 8*wide:
		return 0, false
	case long < in(24):
		return Mat, true
	case long <= in(48):
		return Hanging, true
	}
	return Throw, long <= in(110)
}
