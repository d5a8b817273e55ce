package cutting

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt/lengths"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/stop"
)

// searchedFabric is an invented fabric with what is wanted of its strips: on its own, beside lengthwise pieces, between strips lined up
// on a print, from precuts, with ends that may be cut into narrower strips, each of them also with hardly any steps to plan by.
func searchedFabric(r *rand.Rand, n int) (*Fabric, []demand) {
	half := func(least, most int) measure.NM { return measure.NM(least+r.IntN(most-least+1)) * measure.Inch / 2 }
	f := &Fabric{Name: "fabric", UsableWidth: 40 * measure.Inch, stacks: n%3 == 1, longest: 72 * measure.Inch}
	var list []demand
	for k := range 2 + r.IntN(5) {
		d := demand{item: item{across: half(4, 18), along: half(4, 50), count: 1 + r.IntN(9)}, lines: []int{k}, set: -1}
		switch r.IntN(5) {
		case 0:
			d.along, d.extra, d.nests = half(4, 12), half(1, 5), true
		case 1:
			d.turn = d.across != d.along
		case 2:
			d.across = half(4, 7)
		}
		if len(list) > 0 && r.IntN(4) == 0 { // like another
			d.item = list[0].item
			d.nests = list[0].nests
		}
		d.stacks = !d.nests
		list = append(list, d)
	}
	switch n % 6 {
	case 2: // a strip along the selvages, and wedges
		f.along = []lengths.Want{{Across: half(6, 20), Along: half(60, 120), Count: 1 + r.IntN(4), Whole: true}, {Across: half(6, 12), Along: half(6, 9), Extra: half(1, 4), Count: 1 + r.IntN(30)}}
		f.alongLines = []int{20, 21}
		f.layBlocks(0)
	case 3:
		f.From = &FromPrecuts{Have: 1 + r.IntN(6)}
		f.From.Usable = supplies.Size{Width: half(36, 44), Height: half(18, 36)}
	case 4: // few pieces, of which every way to share them is tried
		f.From = &FromPrecuts{Have: 1 + r.IntN(3)}
		f.From.Usable = supplies.Size{Width: half(20, 44), Height: half(10, 36)}
		list = list[:2]
		for i := range list {
			list[i].count = 1 + r.IntN(4)
		}
	case 5:
		c := FromPrint{AlongCut: half(20, 40), Times: 1 + r.IntN(3)}
		at := measure.NM(0)
		for range 2 + r.IntN(3) {
			c.Strips = append(c.Strips, FussyStrip{Min: measure.Point{Y: at}, Max: measure.Point{X: f.UsableWidth, Y: at + 3*measure.Inch}, WidthCut: 3 * measure.Inch})
			at += 3*measure.Inch + half(2, 16)
		}
		f.FromPrint = []FromPrint{c}
	}
	return f, list
}

// stackedFabric is the next invented fabric of which ends are cut into narrower strips.
func stackedFabric(r *rand.Rand) (*Fabric, []demand) {
	half := func(least, most int) measure.NM { return measure.NM(least+r.IntN(most-least+1)) * measure.Inch / 2 }
	for {
		var list []demand
		for left := 4 + r.IntN(9); left > 0; {
			d := demand{item: item{across: half(4, 20), along: half(10, 60), count: 1 + r.IntN(min(left, 3))}, lines: []int{len(list)}, set: -1}
			d.stacks = r.IntN(2) == 0
			left -= d.count
			list = append(list, d)
		}
		f := Fabric{Name: "fabric", UsableWidth: 40 * measure.Inch, stacks: true}
		try := f
		if try.lay(slices.Clone(list)); len(try.Ends) > 0 {
			return &f, list
		}
	}
}

// TestSearchesStay: what the searches find for invented fabrics, and how many steps they take, as they were when somebody looked at them
// last: a line that takes more cloth, more strips or many more steps than before is a fault, whatever else got better. That the plans are
// sound and how good they are the laws say.
func TestSearchesStay(t *testing.T) {
	var b bytes.Buffer
	r := rand.New(rand.NewPCG(22, 5))
	for n := range 145 {
		f, list := searchedFabric(r, n)
		if n >= 120 {
			f, list = stackedFabric(r)
		}
		given := 400_000
		if n%4 == 3 {
			given = 10 << (n / 4 % 12)
		}
		steps := stop.Count(func(sign *stop.Sign) {
			f.budget = newBudget(given, sign)
			f.cutStrips(list, []joining{{}})
		})
		fmt.Fprintf(&b, "%d, of %d steps %d, ended %v\n%s", n, given, steps, f.SearchEnded, fabricText(f, measure.Inches))
		if f.From != nil {
			fmt.Fprintf(&b, "  %d of %d precuts, %d alone:", f.From.Used, f.From.Have, f.From.Alone)
			for _, s := range f.From.Sheets {
				fmt.Fprintf(&b, " %d x %s by %s, left %s", s.Times, measure.Number(s.LengthCut, measure.Inches), measure.Number(s.WidthCut, measure.Inches), measure.Number(s.LeftWidthCut, measure.Inches))
			}
			b.WriteString("\n")
		}
		for _, g := range f.gapsLeft {
			fmt.Fprintf(&b, "  %d x %s left of a gap\n", g.times, measure.Number(g.widthCut, measure.Inches))
		}
		for _, e := range f.Ends {
			fmt.Fprintf(&b, "  an end of %s by %s, left %s\n", measure.Number(e.LengthCut, measure.Inches), measure.Number(e.WidthCut, measure.Inches), measure.Number(e.LeftWidthCut, measure.Inches))
		}
	}
	golden.Text(t, "testdata/searches.txt", b.Bytes())
}
