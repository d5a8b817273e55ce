package supplies

import (
	"cmp"
	"math/bits"
	"slices"

	"eighthturn/internal/measure"
)

// StripOptions say what long pieces, such as borders, are cut from.
type StripOptions struct {
	Units       measure.System // of the messages
	StripCut    measure.NM     // cut width of the pieces
	UsableWidth measure.NM     // of the cloth
	Join        Join
	Seam        measure.NM // allowance of straight joins
}

func (o *StripOptions) check(lengthsCut []measure.NM) error {
	list := []bound{
		{"the cut width of the strips", o.StripCut, 1, MaxExtra},
		{"the usable width", o.UsableWidth, measure.Inch, maxCloth},
		{"the seam allowance", o.Seam, 1, maxSeam},
	}
	for _, length := range lengthsCut {
		list = append(list, bound{"the cut length of a piece", length, 1, maxTop + MaxExtra})
	}
	return within(o.Units, list...)
}

// Crosswise puts pieces of several cut lengths, by their place among those, into groups: the strips of a group, cut across
// the width of the cloth, are sewn to one and its pieces cut from that. No other way of piecing takes fewer strips, since
// strips and pieces that hang together are joined at least once less often than there are strips. Up to maxTried pieces
// every grouping is tried, for the fewest strips and then the fewest joins; of more, those that keep the order of length,
// the longest first. The error says which length is out of bounds.
func Crosswise(o StripOptions, lengthsCut ...measure.NM) ([][]int, error) {
	if err := o.check(lengthsCut); err != nil {
		return nil, err
	}
	loss := o.Join.loss(o.StripCut, o.Seam)
	if err := usedUp(o.Units, o.UsableWidth, loss); err != nil {
		return nil, err
	}
	g := grouping{lengths: lengthsCut, width: o.UsableWidth, loss: loss}
	if len(lengthsCut) > maxTried {
		return g.inOrder(), nil
	}
	return g.every(), nil
}

// maxTried is up to how many pieces Crosswise tries every grouping.
const maxTried = 10

// grouping puts pieces into groups that are each cut from one long strip.
type grouping struct {
	lengths     []measure.NM
	width, loss measure.NM
}

// strips is how many strips a group takes.
func (g *grouping) strips(group []int) int {
	var total measure.NM
	for _, i := range group {
		total += g.lengths[i]
	}
	return perPiece(total, g.width, g.loss)
}

// grouped is the best way to do the first pieces, or a set of them.
type grouped struct {
	strips, groups int
	last           int // where the last group begins, or which pieces it has
}

func (a grouped) better(b grouped) bool {
	return a.strips < b.strips || a.strips == b.strips && a.groups > b.groups
}

// inOrder is the best of the groupings of the pieces in the order of their length, the longest first.
func (g *grouping) inOrder() [][]int {
	order := make([]int, len(g.lengths))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(g.lengths[b], g.lengths[a]) })
	best := make([]grouped, len(order)+1)
	for end := 1; end <= len(order); end++ {
		for start := range end {
			before := best[start]
			try := grouped{before.strips + g.strips(order[start:end]), before.groups + 1, start}
			if start == 0 || try.better(best[end]) {
				best[end] = try
			}
		}
	}
	var groups [][]int
	for end := len(order); end > 0; end = best[end].last {
		groups = append(groups, order[best[end].last:end])
	}
	slices.Reverse(groups)
	return groups
}

// every is the best grouping of all. Sets of pieces are bits.
func (g *grouping) every() [][]int {
	all := 1<<len(g.lengths) - 1
	alone := make([]int, all+1)
	for set := 1; set <= all; set++ {
		alone[set] = g.strips(members(set))
	}
	best := make([]grouped, all+1)
	for set := 1; set <= all; set++ {
		first := set & -set // stands in the last group
		best[set] = grouped{alone[set], 1, set}
		for part := (set - 1) & set; part > 0; part = (part - 1) & set {
			if part&first == 0 {
				continue
			}
			before := best[set&^part]
			if try := (grouped{before.strips + alone[part], before.groups + 1, part}); try.better(best[set]) {
				best[set] = try
			}
		}
	}
	var groups [][]int
	for set := all; set > 0; set &^= best[set].last {
		groups = append(groups, members(best[set].last))
	}
	return groups
}

func members(set int) []int {
	var list []int
	for ; set > 0; set &= set - 1 {
		list = append(list, bits.TrailingZeros(uint(set)))
	}
	return list
}
