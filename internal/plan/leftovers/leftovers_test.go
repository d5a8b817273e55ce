package leftovers

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// of is what the leftovers of a top make.
func of(top *quilt.Top) *Plan { return Build(nil, top, cutting.Build(nil, top, cutting.Options{})) }

// wrong says what of a proposal does not hold: its layout is accepted without a warning, its plan cuts no wedges and uses no more than
// is left, and it finishes as it says.
func wrong(p *Plan, q *Proposal) error {
	design, _, faults := layout.Read(q.Layout)
	if design == nil || len(faults) > 0 {
		return fmt.Errorf("the layout has faults: %v", faults)
	}
	top := quilt.Lay(design)
	if len(top.Warnings) > 0 {
		return fmt.Errorf("the top warns: %v", top.Warnings)
	}
	plan := cutting.Build(nil, top, cutting.Options{Copies: q.Copies})
	if len(plan.Faults) > 0 {
		return fmt.Errorf("the plan has faults: %v", plan.Faults)
	}
	for _, s := range plan.Sets {
		if len(s.Runs) > 0 {
			return fmt.Errorf("strip set %s is sewn anew", s.Name)
		}
	}
	onHand := map[string]int{}
	for _, h := range plan.OnHand {
		onHand[fmt.Sprint(h.Role, h.Cloth, h.Reversed)] += h.Used
		if h.Used == 0 {
			return fmt.Errorf("%s of %s are on hand for nothing", h.Role, h.Cloth)
		}
	}
	for _, u := range q.Used {
		s := &p.Stocks[u.Stock]
		key := fmt.Sprint(s.Role, s.Cloth, s.Reversed)
		if u.Used != onHand[key] || u.Used > s.Pieces || u.Used == 0 {
			return fmt.Errorf("%d of %d %s are said to be used, the plan uses %d", u.Used, s.Pieces, key, onHand[key])
		}
		delete(onHand, key)
	}
	if len(onHand) > 0 {
		return fmt.Errorf("the plan uses %v, of which nothing is said", onHand)
	}
	if w, h := top.Outer.Width(), top.Outer.Height(); q.Finished != (Size{max(w, h), min(w, h)}) {
		return fmt.Errorf("it finishes %d by %d, and says %v", w, h, q.Finished)
	}
	return nil
}

// TestProposalsHold: of samples and invented layouts every proposal keeps its word, those that use most come first, and all that
// could make a circle of eight is offered somewhere.
func TestProposalsHold(t *testing.T) {
	made, mixed, items := 0, 0, map[Item]bool{}
	for _, n := range slices.Concat(lay.Samples(), lay.Invented(5000, judges.Of(60, 150), 600)) {
		p := of(n.Top)
		most := 0
		for _, s := range p.Stocks {
			if s.wedges {
				most = max(most, s.Pieces)
			}
		}
		plan := cutting.Build(nil, n.Top, cutting.Options{})
		if most >= inCircle && len(p.Proposals) == 0 && len(plan.Faults) == 0 {
			t.Errorf("%s: %d wedges are left, and nothing is made of them", n.Name, most)
		}
		for i := range p.Proposals {
			q := &p.Proposals[i]
			made++
			items[q.Item] = true
			if len(q.Used) > 1 {
				mixed++
			}
			if err := wrong(p, q); err != nil {
				t.Errorf("%s, proposal %d: %v\n%s", n.Name, i+1, err, q.Layout)
			}
			if i > 0 && q.Pieces() > p.Proposals[i-1].Pieces() {
				t.Errorf("%s: proposal %d uses more than the one before", n.Name, i+1)
			}
		}
	}
	if made < 60 || mixed < 10 || len(items) < 4 {
		t.Errorf("%d proposals were made, %d of several sorts of wedges, items %v", made, mixed, items)
	}
}

// TestWrongProposalsAreNoticed: a proposal that claims too much, cuts what was left or finishes otherwise is seen.
func TestWrongProposalsAreNoticed(t *testing.T) {
	for what, harm := range map[string]func(*Proposal){
		"more used than said":   func(q *Proposal) { q.Used[0].Used-- },
		"another size":          func(q *Proposal) { q.Finished.Width++ },
		"a set to be sewn":      func(q *Proposal) { q.Layout = strings.Replace(q.Layout, "glow 48", "glow 47", 1) },
		"a layout with faults":  func(q *Proposal) { q.Layout += "border\n" },
		"a quilt with warnings": func(q *Proposal) { q.Layout += "on-hand kites chalk 4\n" },
	} {
		p := of(sample(t, "lanterns"))
		harm(&p.Proposals[0])
		if wrong(p, &p.Proposals[0]) == nil {
			t.Errorf("%s is not noticed", what)
		}
	}
}

func sample(t *testing.T, name string) *quilt.Top {
	t.Helper()
	list := lay.Samples()
	i := slices.IndexFunc(list, func(n lay.Named) bool { return n.Name == name })
	if i < 0 {
		t.Fatal(name + " is no sample")
	}
	return list[i].Top
}

// TestSixRingsOfSevenInches: 48 wedges from 4 in strips are six rings, of which a runner's blocks are 42 by 7 in. By hand: a wedge
// from a 4 in strip finishes 4 - 2(1/4) = 3 1/2 in, two of them, tip to tip, cross the ring, and 48 / 8 = 6.
func TestSixRingsOfSevenInches(t *testing.T) {
	p := of(sample(t, "lanterns"))
	if len(p.Stocks) != 1 || p.Stocks[0].Pieces != 48 || !p.Stocks[0].Reversed {
		t.Fatalf("left are %v", p.Stocks)
	}
	found := false
	for _, q := range p.Proposals {
		if q.Item == Runner && q.Across == 6 && q.Down == 1 && q.Kinds[0].Blocks == 6 && q.Pieces() == 48 && q.Field == (Size{42 * measure.Inch, 7 * measure.Inch}) {
			found = true
		}
	}
	if !found {
		t.Errorf("no runner of six rings is among %v", p.Proposals)
	}
}

// TestWedgesOfAStrip: a strip set from a 4 in strip that is 40 in long gives 19 wedges, 10 of one order and 9 of the other, and one
// 20 1/2 in long gives 9, as makers count them. By plane geometry: a triangle with 45 degrees at its tip and 3 1/2 in high has a seam
// of 1/4 in around it; across the strip's lower edge that is 2 (3 3/4 tan 22.5 + 1/4 / cos 22.5) in wide, and across its upper edge
// 2 (1/4 / cos 22.5 - 1/4 tan 22.5). Side by side two wedges take the sum of both.
func TestWedgesOfAStrip(t *testing.T) {
	tan, cos := math.Tan(math.Pi/8), math.Cos(math.Pi/8)
	wide, tip := 2*(3.75*tan+0.25/cos), 2*(0.25/cos-0.25*tan)
	for _, c := range []struct {
		width  string
		length float64
		wedges [2]int
	}{{"40", 40, [2]int{10, 9}}, {"20 1/2", 20.5, [2]int{5, 4}}} {
		top := lay.Top(t, "strip 4\nusable-width "+c.width+"\nfabric a #111\nfabric b #888\nfabric c #eee\nstrip-set s a 2 b rest\nblock R ring wedges s s s s s s s reversed s corners c\ngrid\n  R\n")
		set := cutting.Build(nil, top, cutting.Options{}).Sets[0]
		byHand := 1 + int((c.length-wide)/((wide+tip)/2))
		if byHand != c.wedges[0]+c.wedges[1] || set.PerSet != byHand || [2]int{set.FirstOfSet, set.SecondOfSet} != c.wedges {
			t.Errorf("strips of %s in give %d wedges, %d and %d; by hand %d, expected %v", c.width, set.PerSet, set.FirstOfSet, set.SecondOfSet, byHand, c.wedges)
		}
	}
}

// TestNothingLeft: where nothing is left nothing is proposed, and where too little is left neither.
func TestNothingLeft(t *testing.T) {
	plain := of(lay.Top(t, "side 6\nfabric a #111\nfabric b #888\nblock P plain piece a\ngrid\n  P P\n"))
	if len(plain.Stocks)+len(plain.Proposals) > 0 {
		t.Errorf("of plain squares %v is left", plain.Stocks)
	}
	few := of(sample(t, "regatta"))
	if len(few.Stocks) != 2 || len(few.Proposals) > 0 {
		t.Errorf("twice 7 wedges are left, and %v is proposed of %v", few.Proposals, few.Stocks)
	}
}

// TestPiecesOnHandAreLeftToo: what was on hand and is not used is a leftover as well.
func TestPiecesOnHandAreLeftToo(t *testing.T) {
	top := lay.Top(t, "strip 4\nfabric a #111\nfabric b #eee\nblock R ring wedges a corners b\ngrid\n  R\non-hand wedges a 30\non-hand corners b 11\n")
	p := of(top)
	if len(p.Stocks) != 2 || p.Stocks[0].Pieces+p.Stocks[1].Pieces != 22+7 {
		t.Fatalf("left are %v", p.Stocks)
	}
	if len(p.Proposals) == 0 || p.Proposals[0].Pieces() < 16 {
		t.Errorf("of 22 wedges and 7 corners these are made: %v", p.Proposals)
	}
	for i := range p.Proposals {
		if err := wrong(p, &p.Proposals[i]); err != nil {
			t.Error(err)
		}
	}
}

// TestStepsAreFew: what is laid out and planned is bounded, whatever is left.
func TestStepsAreFew(t *testing.T) {
	const most = 4_000_000
	for _, n := range slices.Concat(lay.Samples(), lay.Invented(5000, judges.Of(20, 60), 600)) {
		plan := cutting.Build(nil, n.Top, cutting.Options{Copies: 20})
		steps := stop.Count(func(sign *stop.Sign) { Build(sign, n.Top, plan) })
		if steps > most {
			t.Errorf("%s takes %d steps", n.Name, steps)
		}
	}
}

func BenchmarkLeftovers(b *testing.B) {
	for _, n := range lay.Samples() {
		plan := cutting.Build(nil, n.Top, cutting.Options{})
		b.Run(n.Name, func(b *testing.B) {
			for b.Loop() {
				Build(nil, n.Top, plan)
			}
		})
	}
}

// TestWedgesCutAnewAreSeen: a plan that cuts wedges is told from one whose wedges are all on hand.
func TestWedgesCutAnewAreSeen(t *testing.T) {
	const text = "strip 4\nfabric a #111\nfabric b #eee\nblock R ring wedges a corners b\ngrid\n  R\non-hand wedges a "
	for count, want := range map[string]bool{"7\n": false, "8\n": true} {
		if got := allOnHand(cutting.Build(nil, lay.Top(t, text+count), cutting.Options{})); got != want {
			t.Errorf("of %s of eight wedges on hand it says %v", strings.TrimSpace(count), got)
		}
	}
	plan := cutting.Build(nil, lay.Top(t, text+"8\n"), cutting.Options{})
	if plan.Faults = append(plan.Faults, cutting.Fault{}); allOnHand(plan) {
		t.Error("a plan with what cannot be cut passes")
	}
}

// TestNothingOfPlansWithFaults: of a plan with what cannot be cut, be it one thing, nothing is made.
func TestNothingOfPlansWithFaults(t *testing.T) {
	top := sample(t, "lanterns")
	plan := cutting.Build(nil, top, cutting.Options{})
	plan.Faults = append(plan.Faults, cutting.Fault{})
	if p := Build(nil, top, plan); len(p.Stocks) == 0 || len(p.Proposals) > 0 {
		t.Errorf("of %v %v are made", p.Stocks, p.Proposals)
	}
}
