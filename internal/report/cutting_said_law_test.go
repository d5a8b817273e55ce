package report

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
	"eighthturn/palettes"
)

// Sentences on cloth say the plan, all of it and nothing else.

// wrongChain is what the words of strips that are joined say otherwise than their chain.
func wrongChain(c *cuts, chain *cutting.Chain, said string) error {
	join, cut, ok := strings.Cut(said, "; from the long strip cut")
	if !ok {
		return fmt.Errorf("%q cuts nothing", said)
	}
	cut, _, _ = strings.Cut(cut+" ", ". ")
	cut, times, _ := strings.Cut(cut, "; make ")
	_, join, _ = strings.Cut(join, ": join ")
	join, order, _ := strings.Cut(join, " end to end")
	var strips, pieces []string
	for _, s := range chain.Strips {
		strips = append(strips, measure.Count(s.Count, "strip")+" "+c.Units.Nearest(s.LengthCut)+" long")
	}
	for _, s := range chain.Pieces {
		line := &c.Lines[s.Line]
		length := c.Units.Nearest(line.Piece.AlongCut)
		if line.Border >= 0 && c.Longer > 0 {
			length = "at least " + c.Units.AtLeast(line.Piece.AlongCut+c.Longer)
		}
		pieces = append(pieces, fmt.Sprintf("%d of %s", s.Count, length))
	}
	cut, ordered := strings.CutPrefix(cut, ", in this order, ")
	switch {
	case join != strings.Join(strips, " and ") || (order != "") != (len(strips) > 1):
		return fmt.Errorf("%q joins %q, wanted %q", said, join, strips)
	case strings.TrimSpace(cut) != strings.Join(pieces, " and ") || ordered != (len(pieces) > 1):
		return fmt.Errorf("%q cuts %q, wanted %q", said, cut, pieces)
	case (times == fmt.Sprintf("%d long strips like this", chain.Times)) != (chain.Times > 1):
		return fmt.Errorf("%q, made %d times", said, chain.Times)
	}
	return nil
}

// wrongBacking is what is said of a backing otherwise than the plan has it.
func wrongBacking(c *cuts, said string) error {
	b := c.Backing
	way, other := &b.Ways[b.Less], &b.Ways[1-b.Less]
	want := []string{"at least " + c.Units.ByAtLeast(b.WidthCut, b.HeightCut), c.Units.AtLeast(way.PanelCut)}
	if way.Panels > 1 {
		want = append(want, measure.Count(way.Panels, "panel")+" at least ", c.Units.AtLeast(way.LengthCut))
		if way.Panels != other.Panels || way.PanelCut != other.PanelCut {
			run := func(d supplies.Direction, n int) string {
				return measure.Count(n-1, map[bool]string{true: "vertical", false: "horizontal"}[d == supplies.UpAndDown]+" seam")
			}
			want = append(want, run(b.Less, way.Panels)+": ", c.Units.AtLeast(other.LengthCut))
			if other.Panels > 1 {
				want = append(want, "with "+run(1-b.Less, other.Panels)+": ")
			} else {
				want = append(want, "with no seam: ")
			}
		}
	} else {
		want = append(want, "no seam")
	}
	if c.BackingOf < 0 {
		want = append(want, "your choice, "+c.Units.Shop(c.BackingBuy.Buy))
	}
	if c.Copies > 1 {
		want = append(want, fmt.Sprintf("For all %d quilts: %s, total length at least %s", c.Copies, measure.Count(way.Panels*c.Copies, "panel"), c.Units.AtLeast(way.LengthCut*measure.NM(c.Copies))))
	}
	for _, part := range want {
		if !strings.Contains(said, part) {
			return fmt.Errorf("%q is not in %q", part, said)
		}
	}
	if strings.Contains(said, "you need another panel") != way.Cliff.Costs || strings.Contains(said, "For all") != (c.Copies > 1) {
		return fmt.Errorf("a warning too many or too few in %q", said)
	}
	return nil
}

// wrongChoices is which line's other size is not said, or is where there is none.
func wrongChoices(c *cuts, said string) error {
	for i := range c.Lines {
		p := &c.Lines[i].Piece
		if rule := fmt.Sprintf("Line %d: the rule of thumb gives ", i+1); strings.Contains(said, rule) != (p.RuleCut > 0) {
			return fmt.Errorf("line %d by the rule of thumb is %d: %q", i+1, p.RuleCut, said)
		}
		if kites := fmt.Sprintf("Line %d: corners are usually cut ", i+1); strings.Contains(said, kites) != (p.KitesCut > 0 && p.KitesCut != p.AlongCut) {
			return fmt.Errorf("line %d by the kites' square is %d: %q", i+1, p.KitesCut, said)
		}
	}
	if n := strings.Count(said, "each wedge takes"); n != len(c.Wedges) {
		return fmt.Errorf("%d strips for wedges are explained of %d", n, len(c.Wedges))
	}
	return nil
}

// TestClothIsSaid: strips that are joined, backings and what is left are said as the plan has them.
func TestClothIsSaid(t *testing.T) {
	chains, backings, cutOff := 0, 0, 0
	for _, n := range everyPlan() {
		c := newCuts(n.Plans)
		for i := range c.Fabrics {
			f := &c.Fabrics[i]
			for k := range f.Chains {
				chains++
				chain := f.Chains[k]
				if err := wrongChain(c, &chain, c.chainWords(&chain)); err != nil {
					t.Errorf("%s: %v", n.name, err)
				}
				said := c.chainWords(&chain)
				chain.Pieces = append(slices.Clone(chain.Pieces), chain.Pieces[0])
				if wrongChain(c, &chain, said) == nil {
					t.Errorf("%s: a piece that is not named is not noticed", n.name)
				}
			}
			left := c.leftOf(f)
			want := len(f.LeftOver)
			if f.Index == c.BackingOf && c.Backing != nil && c.Backing.Ways[c.Backing.Less].Left.Width >= 4*measure.Inch {
				cutOff++
				want++
			}
			if f.Purchase.Left >= c.Units.CutMark() {
				want++
			}
			if len(left) != want {
				t.Errorf("%s, %s: %d things are left, said are %q", n.name, f.Name, want, left)
			}
		}
		if err := wrongChoices(c, strings.Join(c.choices(), "\n")); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		for i := range c.Lines {
			l := &c.Lines[i]
			if name := c.plans.edgingName(l); (name == "sashes") != (l.Border < 0) || l.Border >= 0 && len(c.plans.Top.CutFacts.Borders) > 1 && name != fmt.Sprintf("border %d", l.Border+1) {
				t.Errorf("%s: line %d of border %d is called %q", n.name, i+1, l.Border, name)
			}
		}
		if c.Backing != nil {
			backings++
			if err := wrongBacking(c, c.backingTakes(c.Backing)); err != nil {
				t.Errorf("%s: %v", n.name, err)
			}
		}
	}
	if chains < 20 || backings < 20 || cutOff < 2 {
		t.Errorf("only %d chains, %d backings, %d cut off", chains, backings, cutOff)
	}
}

// TestKitsAndTheRest: what a quilt needs is in the kit or is said not to be, never both: binding and backing as well.
func TestKitsAndTheRest(t *testing.T) {
	in, out := 0, 0
	for _, n := range everyPlan() {
		c := &classroom{newCuts(n.Plans), newCuts(n.Plans.as(n.Plans.One()))}
		kit := ""
		table := c.kitTable()
		if len(table.Rows) >= maxKitRows {
			continue // what is beyond is said to be left out
		}
		for _, r := range table.Rows {
			kit += plainCell(r.Cells[1]) + "\n"
		}
		rest := c.notInKit()
		for what, row := range map[string]string{"binding": "strips for the binding", "backing": "fabric for the backing"} {
			held := strings.Contains(kit, row)
			if held == slices.Contains(rest, what) || strings.Contains(c.kitHolds(), what) != held {
				t.Errorf("%s: %s is in the kit: %v, not in it: %q, it holds %s", n.name, what, held, rest, c.kitHolds())
			}
			if held {
				in++
			} else {
				out++
			}
		}
		if !slices.Contains(rest, "batting") || !slices.Contains(rest, "thread") || !slices.Contains(rest, "tools") {
			t.Errorf("%s: without %q", n.name, rest)
		}
	}
	if in == 0 || out == 0 {
		t.Errorf("%d things are in kits, %d are not", in, out)
	}
}

// TestLabelsHoldTheirWords: a label has its set's name, its strips from the wide end with their colors, and all words within its lines, one below
// the other.
func TestLabelsHoldTheirWords(t *testing.T) {
	labels := 0
	for _, n := range usualPlans() {
		c := newCuts(n.Plans)
		for i := range c.Dealt {
			for k := range c.Dealt[i].Sets {
				set := &c.Dealt[i].Sets[k]
				f := c.setLabel(set)
				labels++
				var colors, want []palettes.Colour
				lowest := measure.NM(0)
				for _, m := range f.Marks {
					if m.Area != nil {
						low, high := extent(m.Area.Outline)
						if low.X < 0 || low.Y < 0 || high.X > f.Max.X || high.Y > f.Max.Y {
							t.Errorf("%s: something goes from %v to %v on a label of %v", n.name, low, high, f.Max)
						}
						if !m.Area.Clear {
							colors = append(colors, m.Area.Fill)
						}
					}
					if w := m.Words; w != nil {
						if w.At.X+w.Room != f.Max.X-labelMargin || w.At.X < labelMargin || w.At.Y < lowest+labelLine && lowest > 0 || w.At.Y > f.Max.Y-labelLine/2 {
							t.Errorf("%s: %q stands at %v with room for %d, behind %d", n.name, w.Text, w.At, w.Room, lowest)
						}
						lowest = w.At.Y
					}
				}
				for _, fabric := range set.Fabrics {
					want = append(want, c.Fabrics[fabric].Colour)
				}
				if !slices.Equal(colors, want) || f.Marks[1].Words.Text != c.SetName(set.Set) || !f.Marks[1].Words.Bold {
					t.Errorf("%s: the label of %s shows %v, wanted %v", n.name, c.SetName(set.Set), colors, want)
				}
			}
		}
	}
	if labels < 5 {
		t.Errorf("only %d labels", labels)
	}
}

// TestListingsAreThePlans: a listing has every size with its numbers, every fabric that is bought, and every colorway with all of its fabrics.
func TestListingsAreThePlans(t *testing.T) {
	colorways, chosen := 0, 0
	for _, n := range usualPlans() {
		l := ListingData(n.Plans, 12)
		if len(l.Sizes) != max(1, len(n.Top.Sizes)) && len(n.Top.Sizes) > 0 && n.Top.Sizes[0].Own || l.Pages != 12 {
			t.Errorf("%s: %d sizes of %d", n.name, len(l.Sizes), len(n.Top.Sizes))
		}
		s, c := &l.Sizes[0], n.Cuts()
		want := len(c.Fabrics)
		if c.BackingBuy.Buy > 0 {
			want++
			chosen++
		}
		if len(s.Buy) != want || s.Across != n.Top.Columns || s.Down != n.Top.Rows || (s.Batting != nil) != (c.Batting != nil) {
			t.Errorf("%s: %+v", n.name, s)
		}
		for i := range c.Fabrics {
			if s.Buy[i].Fabric != c.Fabrics[i].Name || s.Buy[i].Length.NM != int64(c.Fabrics[i].Purchase.Buy) {
				t.Errorf("%s: %+v is bought of %s", n.name, s.Buy[i], c.Fabrics[i].Name)
			}
		}
		if len(l.Colorways) != len(n.Top.Colorways) {
			t.Errorf("%s: %d colorways of %d", n.name, len(l.Colorways), len(n.Top.Colorways))
		}
		for i, way := range l.Colorways {
			colorways++
			for f := range n.Top.Fabrics {
				of := &n.Top.Colorways[i]
				if len(way.Fabrics) != len(n.Top.Fabrics) || way.Fabrics[f] != (FabricShown{n.Top.Fabrics[f].Name, of.Fabrics[f].Name, of.Fabrics[f].Colour.Hex()}) {
					t.Errorf("%s, %s: %+v", n.name, way.Name, way.Fabrics)
				}
			}
		}
	}
	if colorways == 0 || chosen == 0 {
		t.Errorf("%d colorways, %d backings of a fabric of your choice", colorways, chosen)
	}
}

// TestSheetsOfPrecuts: on a map each precut is drawn once with its strips within it, and is said to be as many as the plan takes.
func TestSheetsOfPrecuts(t *testing.T) {
	sheets := 0
	for _, n := range everyPlan() {
		c := newCuts(n.Plans)
		for i := range c.Fabrics {
			f := &c.Fabrics[i]
			if f.From == nil || len(f.From.Sheets) == 0 {
				continue
			}
			figure := c.fabricMap(i)
			var frames [][2]measure.Point
			for _, m := range figure.Marks {
				if m.Area != nil && m.Area.Clear {
					low, high := extent(m.Area.Outline)
					frames = append(frames, [2]measure.Point{low, high})
				}
			}
			for k := range f.From.Sheets {
				s := &f.From.Sheets[k]
				sheets++
				if !slices.ContainsFunc(frames, func(r [2]measure.Point) bool {
					return r[0].X == 0 && r[1].X-r[0].X == s.LengthCut && r[1].Y-r[0].Y == s.WidthCut
				}) {
					t.Errorf("%s, %s: sheet %d is not drawn", n.name, f.Name, k)
				}
			}
		}
	}
	if sheets == 0 {
		t.Error("no precuts")
	}
}
