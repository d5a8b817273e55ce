package cutting

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// Laws of a plan's lists: fabrics, lines, strip sets and tables stand in their order, each thing once, with what the top says of it.

// place is where a line stands among the others.
func placeAmong(l *Line) []int {
	return []int{which(l.Set >= 0), l.Fabric, l.Set, which(l.Reversed), l.Patches[0]}
}

// unlisted says what of a plan's lists is out of place, twice, or not as its top has it.
func unlisted(top *quilt.Top, p *Plan) error {
	seen := map[string]int{}
	lines := make([][]int, len(p.Fabrics))
	ofSets := make([][2]int, len(p.Sets))
	for i := range ofSets {
		ofSets[i] = [2]int{-1, -1}
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		if i > 0 && slices.Compare(placeAmong(&p.Lines[i-1]), placeAmong(l)) >= 0 {
			return fmt.Errorf("line %d stands before its turn", i)
		}
		left, right := 0, 0
		for _, n := range l.Patches {
			hand := Either
			if of := top.Patches[n].Shape.Description().Hand; of != nil {
				var at []blocks.Place
				for _, c := range top.Patches[n].Outline {
					at = append(at, blocks.Place{X: c.X, Y: c.Y})
				}
				hand = of(at)
			}
			left, right = left+p.Copies*boolInt(hand == Left), right+p.Copies*boolInt(hand == Right)
			if p.HandOf[n] != hand || int(top.Patches[n].Border) != l.Border {
				return fmt.Errorf("patch %d: hand %v, border %d; its line %+v", n, hand, top.Patches[n].Border, *l)
			}
		}
		if left != l.Left || right != l.Right || !slices.IsSorted(l.Patches) {
			return fmt.Errorf("line %d: %d left and %d right, said are %d and %d", i, left, right, l.Left, l.Right)
		}
		first := &top.Patches[l.Patches[0]]
		if l.Place != (Place{int(first.Place.Start), int(first.Place.End)}) || l.Piece.Role != top.Roles[first.Role].Name || !p.Cuts(l.Piece.Shape) {
			return fmt.Errorf("line %d: %+v", i, *l)
		}
		role := ""
		if first.Cell < 0 {
			role = l.Piece.Role
		}
		c := l.Piece.CutSize
		key := fmt.Sprint(l.Fabric, l.Set, l.Reversed, l.Piece.Shape, l.Piece.Hand, role, l.Border, l.PrintPlace, l.AlongSelvage, c.SideFinished, c.LengthFinished, c.AcrossCut, c.AlongCut)
		if before, ok := seen[key]; ok && c.AcrossCut > 0 {
			return fmt.Errorf("lines %d and %d are alike", before, i)
		}
		seen[key] = i
		if l.Fabric >= 0 {
			lines[l.Fabric] = append(lines[l.Fabric], i)
		} else {
			ofSets[l.Set][which(l.Reversed)] = i
		}
		if err := unedged(l, first); err != nil {
			return fmt.Errorf("line %d: %v", i, err)
		}
	}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		of := &top.Fabrics[f.Index]
		if i > 0 && p.Fabrics[i-1].Index >= f.Index || f.Name != of.Name || f.Print != of.Print || f.Colour != of.Colour || f.UsableWidth != top.CutFacts.Fabrics[f.Index].UsableWidth || !slices.Equal(lines[i], f.Lines) {
			return fmt.Errorf("fabric %d: %s, lines %v, %v cut from it", i, f.Name, f.Lines, lines[i])
		}
	}
	for i := range p.Sets {
		if p.Sets[i].Lines != ofSets[i] {
			return fmt.Errorf("set %d: lines %v, said are %v", i, ofSets[i], p.Sets[i].Lines)
		}
	}
	return nil
}

// unedged says which of the edges that a shape is known by is not that of its patch, the longest first.
func unedged(l *Line, patch *quilt.Patch) error {
	var want []measure.NM
	for _, side := range l.Piece.Shape.Description().Edges {
		a, b := patch.Outline[side], patch.Outline[(side+1)%len(patch.Outline)]
		want = append(want, measure.NM(math.Round(math.Sqrt(math.Pow(float64(a.X-b.X), 2)+math.Pow(float64(a.Y-b.Y), 2)))))
	}
	slices.SortFunc(want, func(a, b measure.NM) int { return -cmp.Compare(a, b) })
	for i := range max(len(want), len(l.Piece.EdgesFinished)) {
		if len(want) != len(l.Piece.EdgesFinished) || want[i]-l.Piece.EdgesFinished[i] > 1 || l.Piece.EdgesFinished[i]-want[i] > 1 {
			return fmt.Errorf("edges of %v, said are %v", want, l.Piece.EdgesFinished)
		}
	}
	return nil
}

// fitting is how many wedges or tumblers of a piece lie side by side in a strip, laid one after the other.
func fitting(c *Piece, length measure.NM) int {
	n, end := 0, c.WideCut
	for ; end <= length; end += (c.WideCut + c.NarrowCut) / 2 {
		n++
	}
	return n
}

// ofAnotherSet says what of a strip set is not as its bands and its wedges have it.
func ofAnotherSet(p *Plan, s *StripSet) error {
	sum, alike := measure.NM(0), true
	for i, b := range s.Bands {
		sum += b.WidthCut
		if i > 0 {
			sum -= 2 * p.Seam
		}
		other := &s.Bands[len(s.Bands)-1-i]
		alike = alike && b.Fabric == other.Fabric && b.WidthCut == other.WidthCut
		if b.WidthFinished != b.WidthCut-2*p.Seam || b.OnRuler.ExactCut != b.WidthCut {
			return fmt.Errorf("strip %d: %+v", i, b)
		}
		if s.LengthCut > p.Fabrics[b.Fabric].UsableWidth {
			return fmt.Errorf("a set %d long of cloth %d wide", s.LengthCut, p.Fabrics[b.Fabric].UsableWidth)
		}
	}
	if sum != s.WidthCut || alike != s.Alike {
		return fmt.Errorf("it comes to %d, said is %d; alike %v, said is %v", sum, s.WidthCut, alike, s.Alike)
	}
	var piece *Piece
	for way, n := range s.Lines {
		wanted, onHand := 0, 0
		if n >= 0 {
			piece, wanted, onHand = &p.Lines[n].Piece, p.Lines[n].Pieces, p.Lines[n].OnHand
			if p.Lines[n].Units != s.Given[way] && wanted > onHand || p.Lines[n].Spare != s.LeftOver[way] && wanted > onHand {
				return fmt.Errorf("line %d says %d wedges and %d over, its set %v and %v", n, p.Lines[n].Units, p.Lines[n].Spare, s.Given, s.LeftOver)
			}
		}
		if s.Wanted[way] != wanted || s.OnHand[way] != onHand || s.LeftOver[way] != s.Given[way]-(wanted-onHand) {
			return fmt.Errorf("%v wanted, %v on hand, %v given, %v left", s.Wanted, s.OnHand, s.Given, s.LeftOver)
		}
	}
	if n := fitting(piece, s.LengthCut); s.PerSet != n || len(s.Runs) > 0 && (s.FirstOfSet != (n+1)/2 || s.SecondOfSet != n/2) {
		return fmt.Errorf("%d wedges from a set, %d and %d; said are %d", n, s.FirstOfSet, s.SecondOfSet, s.PerSet)
	}
	for i, r := range s.Runs {
		if least := measure.RoundUp(piece.WideCut+measure.NM(r.Wedges-1)*piece.PitchCut(), p.Steps.Trimmed); r.Sets < 1 || r.FirstReversed > r.Sets || r.Wedges%2 == 0 && r.FirstReversed > 0 ||
			i < len(s.Runs)-1 && (r.LengthCut != s.LengthCut || r.Wedges != s.PerSet) || r.LengthCut != s.LengthCut && r.LengthCut != least || r.LengthCut == s.LengthCut && r.Wedges != s.PerSet {
			return fmt.Errorf("run %d of %+v", i, *s)
		}
	}
	return nil
}

// mistabled says what strips of wedges and tumblers are told to give that they do not.
func mistabled(p *Plan) error {
	var wedges []Wedge
	var tumblers []Tumbler
	slims := 0
	for i := range p.Lines {
		l := &p.Lines[i]
		c := &l.Piece
		if c.Method != Nested {
			continue
		}
		usable := measure.NM(0)
		switch {
		case l.Set >= 0:
			usable = p.Sets[l.Set].LengthCut
		case l.AlongSelvage:
			for _, b := range p.Fabrics[l.Fabric].Blocks {
				for _, column := range b.Columns {
					if column.Line == i {
						usable = max(usable, column.LengthCut)
					}
				}
			}
		default:
			usable = p.Fabrics[l.Fabric].UsableWidth
		}
		if c.Shape == blocks.Tumbler {
			narrow := float64(c.LengthFinished) - float64(c.SideFinished)*math.Tan(math.Pi/8)
			t := Tumbler{StripCut: c.AcrossCut, LineCut: c.OnRuler[1].ExactCut, OnRuler: c.OnRuler[1], WideCut: c.WideCut, NarrowCut: c.NarrowCut, Slim: narrow < float64(2*p.Seam)}
			if !slices.Contains(tumblers, t) {
				tumblers = append(tumblers, t)
				slims += boolInt(t.Slim)
			}
			continue
		}
		w := Wedge{StripCut: c.AcrossCut, OnRuler: c.OnRuler[0], BaseCut: c.WideCut, TipCut: c.NarrowCut, PitchCut: c.PitchCut(), UsableWidth: usable, PerStrip: fitting(c, usable)}
		if w.PerStrip > 0 {
			w.WasteCut = usable - measure.NM(w.PerStrip)*c.PitchCut()
		}
		if !slices.Contains(wedges, w) {
			wedges = append(wedges, w)
		}
	}
	said := 0
	for _, w := range p.Warnings {
		said += boolInt(len(w.Message) > 30 && w.Message[:30] == "the narrow edge of these tumbl")
	}
	if !slices.Equal(wedges, p.Wedges) || said != slims {
		return fmt.Errorf("wedges %+v, said are %+v; %d slim, said %d", wedges, p.Wedges, slims, said)
	}
	for _, t := range p.Tumblers {
		if !slices.Contains(tumblers, t) {
			return fmt.Errorf("tumblers %+v, said are %+v", tumblers, p.Tumblers)
		}
	}
	if len(tumblers) > len(p.Tumblers) {
		return fmt.Errorf("tumblers %+v, said are %+v", tumblers, p.Tumblers)
	}
	return nil
}

// misbound says what of binding, backing and batting is not as the options and the top have it.
func misbound(top *quilt.Top, p *Plan, o *Options) error {
	usual := func(given, inches, centimetres measure.NM) measure.NM {
		switch {
		case given > 0:
			return given
		case p.Units == measure.Centimetres:
			return centimetres
		}
		return inches
	}
	width, height := top.Outer.Width(), top.Outer.Height()
	if b := p.Batting; b != nil {
		if over := usual(o.BattingOverhang, 3*measure.Inch, 75*measure.Millimetre); b.WidthCut != width+2*over || b.HeightCut != height+2*over {
			return fmt.Errorf("a batting of %d by %d", b.WidthCut, b.HeightCut)
		}
	}
	if b := p.Backing; b != nil {
		if over := usual(o.BackingOverhang, 4*measure.Inch, 10*measure.Centimetre); b.WidthCut != width+2*over || b.HeightCut != height+2*over {
			return fmt.Errorf("a backing of %d by %d", b.WidthCut, b.HeightCut)
		}
	}
	given := top.CutFacts.Binding
	if given == nil || p.Binding == nil {
		if given != nil || p.Binding != nil {
			return fmt.Errorf("a binding of %v for %v", p.Binding, given)
		}
		return nil
	}
	need := 2*(width+height) + usual(o.BindingAllowance, 10*measure.Inch, 25*measure.Centimetre)
	n := slices.IndexFunc(p.Fabrics, func(f Fabric) bool { return f.Index == given.Fabric })
	f, long, strips := &p.Fabrics[n], measure.NM(0), 0
	for i := range p.Fabrics {
		for _, s := range p.Fabrics[i].Strips {
			for _, c := range s.Cuts {
				if c.Use == ForBinding {
					if i != n || c.AcrossCut != given.Width {
						return fmt.Errorf("a strip of %d for the binding from %s", c.AcrossCut, p.Fabrics[i].Name)
					}
					strips += s.Times * c.Units
					long += measure.NM(s.Times*c.Units) * (c.AlongCut - given.Width)
				}
			}
		}
	}
	if p.Binding.Need != need || p.Binding.StripCut != given.Width || strips%p.Copies != 0 {
		return fmt.Errorf("the binding: %+v, %d strips", *p.Binding, strips)
	}
	most := f.UsableWidth - given.Width // whole strips
	if o.LeastCloth {
		most = max(p.Steps.Trimmed, given.Width, f.UsableWidth/4)
	}
	if over := long/measure.NM(p.Copies) + given.Width - need; over < 0 || over >= most && strips > p.Copies {
		return fmt.Errorf("binding strips come to %d more than the %d that it needs", over, need)
	}
	return nil
}

func TestLists(t *testing.T) {
	sets, wedges, tumblers, bindings := 0, 0, 0, 0
	for _, n := range everyTop(60) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if err := unlisted(n.Top, p); err != nil {
				t.Fatalf("%s: %v", n.name, err)
			}
			if len(p.Faults) > 0 {
				continue
			}
			for i := range p.Sets {
				if err := ofAnotherSet(p, &p.Sets[i]); err != nil {
					t.Fatalf("%s, set %d: %v", n.name, i, err)
				}
			}
			if err := cmp.Or(mistabled(p), misbound(n.Top, p, &o)); err != nil {
				t.Fatalf("%s, %+v: %v", n.name, o, err)
			}
			sets, wedges, tumblers, bindings = sets+len(p.Sets), wedges+len(p.Wedges), tumblers+len(p.Tumblers), bindings+boolInt(p.Binding != nil)
		}
	}
	if sets < 30 || wedges < 100 || tumblers < 10 || bindings < 50 {
		t.Errorf("%d sets, %d sorts of wedges and %d of tumblers, %d bindings", sets, wedges, tumblers, bindings)
	}
	for _, o := range []Options{{BindingAllowance: 3 * measure.Inch, BackingOverhang: 5 * measure.Inch, BattingOverhang: measure.Inch}, {BindingAllowance: 20 * measure.Inch, LeastCloth: true, Copies: 2}} {
		top := topNamed("lanterns")
		if err := misbound(top, Build(nil, top, o), &o); err != nil {
			t.Errorf("%+v: %v", o, err)
		}
	}
}

// TestRuler: a size within a nanometre of a mark is on it; another lies between two marks, and the sides are those that put it there.
func TestRuler(t *testing.T) {
	p := &planning{Plan: &Plan{Steps: blocks.Steps{Mark: 16}}}
	side := func(cut measure.NM) measure.NM { return 2*cut - 40 }
	for _, c := range []struct {
		cut  measure.NM
		side func(measure.NM) measure.NM
		want Ruler
	}{
		{160, side, Ruler{OnMark: true, BelowCut: 160, AboveCut: 160}},
		{161, side, Ruler{OnMark: true, BelowCut: 161, AboveCut: 161}},
		{159, nil, Ruler{OnMark: true, BelowCut: 159, AboveCut: 159}},
		{162, side, Ruler{BelowCut: 160, AboveCut: 176, BelowSideFinished: 280, AboveSideFinished: 312}},
		{158, side, Ruler{BelowCut: 144, AboveCut: 160, BelowSideFinished: 248, AboveSideFinished: 280}},
		{169, nil, Ruler{BelowCut: 160, AboveCut: 176}},
		{19, side, Ruler{BelowCut: 16, AboveCut: 32, AboveSideFinished: 24}},
		{5, side, Ruler{BelowCut: 0, AboveCut: 16}},
	} {
		c.want.What, c.want.ExactCut = "the strip", c.cut
		if got := p.ruler(blocks.Exact{What: "the strip", Cut: c.cut, SideOf: c.side}); got != c.want {
			t.Errorf("%d: %+v, want %+v", c.cut, got, c.want)
		}
	}
}

// TestSidesOnMarks: the side that is said to put a strip on the next mark of a ruler does, and the side below as well.
func TestSidesOnMarks(t *testing.T) {
	tried := 0
	for _, text := range []string{"block A ring wedges a corners b\ngrid\n A A\n", "block A web wedges a kites b\ngrid\n A A\n A A\n", "block A star points a squares b\ngrid\n A A\n"} {
		text = "fabric a #111\nfabric b #888\n" + text
		top, err := lay.Read("side 6.13\n" + text)
		if err != nil {
			continue
		}
		for _, l := range Build(nil, top, Options{}).Lines {
			for _, r := range l.Piece.OnRuler {
				for mark, side := range map[measure.NM]measure.NM{r.BelowCut: r.BelowSideFinished, r.AboveCut: r.AboveSideFinished} {
					if r.OnMark || side == 0 {
						continue
					}
					tried++
					other := Build(nil, resized(top, side), Options{})
					if !slices.ContainsFunc(other.Lines, func(m Line) bool {
						return m.Piece.Shape == l.Piece.Shape && slices.ContainsFunc(m.Piece.OnRuler, func(s Ruler) bool {
							return s.What == r.What && s.OnMark && s.ExactCut-mark <= 1 && mark-s.ExactCut <= 1
						})
					}) {
						t.Errorf("%s: a side of %d does not put %s on %d", text, side, r.What, mark)
					}
				}
			}
		}
	}
	if tried < 4 {
		t.Errorf("only %d sides", tried)
	}
}

// TestPostsAreNoBlocks: posts of sashes and corners of borders are lines of their own, though a block's squares of the same fabric are of one size.
func TestPostsAreNoBlocks(t *testing.T) {
	top := lay.Top(t, "side 6\nfabric rust #b5532a\nfabric navy #1f3350\nblock P plain piece rust\ngrid\n P P\n P P\nsash 6 navy posts rust\nborder 6 navy corners rust\n")
	counts := map[string]int{}
	lines := planned(top, Options{}).Lines
	for i := range lines {
		if l := &lines[i]; l.Piece.Shape == blocks.Square && top.Fabrics[l.Fabric].Name == "rust" {
			counts[l.Piece.Role] += len(l.Patches)
		}
	}
	if want := map[string]int{"piece": 4, "posts": 1, "corner squares": 4}; !maps.Equal(counts, want) {
		t.Errorf("%v, expected %v", counts, want)
	}
}
