package summary

import (
	"eighthturn/internal/blocks"
	"eighthturn/layout"
)

// About is what a hint is about.
type About string

const (
	// OddMatchesCorners: two blocks that stand by themselves take turns all over the grid, and its corners are not
	// alike; with odd numbers across and down they are.
	OddMatchesCorners About = "odd-matches-corners"
	// EvenClosesEdges: blocks that point inwards stand on the quilt's edge; those in its corners close too if the
	// numbers across and down are even.
	EvenClosesEdges About = "even-closes-edges"
)

// Hint is advice on the numbers of blocks across and down.
type Hint struct {
	About  About    `json:"about"`
	Kind   string   `json:"kind"`   // the kind's name
	Labels []string `json:"labels"` // of the blocks it is about
}

// hints are the hints that apply, in the order of About.
func hints(d *layout.Design) []Hint {
	var list []Hint
	for _, k := range kindsUsed(d) {
		if labels := cornersDiffer(d, k); labels != nil {
			list = append(list, Hint{OddMatchesCorners, k.Name, labels})
		}
	}
	for _, k := range kindsUsed(d) {
		if labels := cornersStayOpen(d, k); labels != nil {
			list = append(list, Hint{EvenClosesEdges, k.Name, labels})
		}
	}
	return list
}

// cornersDiffer gives the labels of the two blocks of a kind that share the whole grid like the squares of a draughtboard,
// where not all four corners are the same one; nil where it is not so. Only kinds that are whole by themselves count.
func cornersDiffer(d *layout.Design, k *blocks.Kind) []string {
	if k.Height != blocks.ToMiddle || d.Columns < 2 || d.Rows < 2 || d.Columns%2 == 1 && d.Rows%2 == 1 {
		return nil
	}
	pair := [2]int{d.Cells[0].Block, d.Cells[1].Block}
	for i, c := range d.Cells {
		x, y := i%d.Columns, i/d.Columns
		if c.Block < 0 || c.Block != pair[(x+y)%2] {
			return nil
		}
	}
	a, b := &d.Blocks[pair[0]], &d.Blocks[pair[1]]
	if pair[0] == pair[1] || a.Kind.Name != k.Name || b.Kind.Name != k.Name {
		return nil
	}
	return []string{a.Label, b.Label}
}

// cornersStayOpen gives the labels of the blocks of a kind that point inwards from the quilt's edge, where even numbers
// would let those in the corners close and the numbers are not even; nil where it is not so. Even numbers help a kind
// whose centres include the grid's upper left corner.
func cornersStayOpen(d *layout.Design, k *blocks.Kind) []string {
	even := d.Columns%2 == 0 && d.Rows%2 == 0
	if !k.Turning.Towards() || even || d.Columns < 2 || d.Rows < 2 || k.Turning.OnStar() != d.StarFirst {
		return nil
	}
	found := make([]bool, len(d.Blocks))
	for i, c := range d.Cells {
		x, y := i%d.Columns, i/d.Columns
		onEdge := x == 0 || y == 0 || x == d.Columns-1 || y == d.Rows-1
		if c.Block >= 0 && onEdge && d.Blocks[c.Block].Kind.Name == k.Name {
			found[c.Block] = true
		}
	}
	var labels []string
	for i, yes := range found {
		if yes {
			labels = append(labels, d.Blocks[i].Label)
		}
	}
	return labels
}
