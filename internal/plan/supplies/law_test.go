package supplies

import (
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// Laws, for any sizes. Each has a broken plan that it catches.

// lawful collects the laws that something breaks.
type lawful struct{ list []string }

func (l *lawful) law(holds bool, text string) {
	if !holds {
		l.list = append(l.list, text)
	}
}

// sizes makes lengths by seed: whole marks, thirds and odd nanometres.
type sizes struct{ *rand.Rand }

func (s sizes) between(least, most measure.NM) measure.NM {
	nm := least + measure.NM(s.Int64N(int64(most-least)+1))
	step := []measure.NM{1, measure.Inch / 8, measure.Inch, measure.Millimetre, measure.Inch / 3}[s.IntN(5)]
	return max(least, nm/step*step)
}

const rounds = 20_000

func purchaseBreaks(b Buying, p Purchase) []string {
	var l lawful
	l.law(p.Buy >= p.Need && p.Need >= p.ExactCut, "what is bought is never less than the need")
	l.law(p.Buy-p.Need < b.Step(), "no more than a step is added")
	l.law(p.Buy%b.Step() == 0 && p.Step == b.Step(), "shops cut by whole steps")
	if p.ExactCut > 0 {
		l.law(p.SquareUp == b.SquaringUp && p.Spare == b.Spare && p.Need == p.ExactCut+p.SquareUp+p.Spare, "the need is what is cut, what squaring up takes and what is spare")
		l.law(p.Left == p.Buy-p.ExactCut, "what is not cut is left")
	}
	l.law(p.ExactCut%b.Step() != 0 || b.SquaringUp+b.Spare != 0 || p.Buy == p.ExactCut, "a whole number of steps stays")
	l.law((p.ExactCut == 0) == (p.Buy == 0), "nothing is bought for nothing")
	return l.list
}

func TestBuyingLaws(t *testing.T) {
	s := sizes{rand.New(rand.NewPCG(1, 2))}
	for range rounds {
		b := Buying{Units: measure.System(s.IntN(2)), Quarters: s.IntN(2) == 0}
		if s.IntN(2) == 0 {
			b.SquaringUp, b.Spare = s.between(0, 4*measure.Inch), s.between(0, measure.Yard)
		}
		one, two := s.between(0, 20*measure.Yard), s.between(0, 20*measure.Yard)
		if s.IntN(4) == 0 {
			one = b.Step() * measure.NM(s.IntN(100))
		}
		if s.IntN(100) == 0 {
			one = measure.NM(s.IntN(3))
		}
		p := b.Of(one)
		for _, broken := range purchaseBreaks(b, p) {
			t.Errorf("%s by %+v: %s", text(one), b, broken)
		}
		together := b.Of(one, two)
		if together.Buy > p.Buy+b.Of(two).Buy {
			t.Errorf("%s and %s cost more together", text(one), text(two))
		}
		if together.Buy < p.Buy {
			t.Errorf("%s and %s cost less than the first alone", text(one), text(two))
		}
	}
}

func TestBuyingLawsCatch(t *testing.T) {
	good := Buying{}.Of(in(18, 0))
	for name, p := range map[string]Purchase{
		"rounded down":          {ExactCut: good.ExactCut, Need: good.Need, Buy: good.Buy - eighths(1), Step: good.Step},
		"a step too much":       {ExactCut: good.ExactCut, Need: good.Need, Buy: good.Buy + eighths(1), Step: good.Step},
		"between steps":         {ExactCut: good.ExactCut, Need: good.Need, Buy: good.Buy + 1, Step: good.Step},
		"need below exact":      {ExactCut: good.ExactCut, Need: good.ExactCut - 1, Buy: good.Buy, Step: good.Step},
		"something for nothing": {ExactCut: 0, Need: 0, Buy: eighths(1), Step: good.Step},
	} {
		if len(purchaseBreaks(Buying{}, p)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

// laid is how many pieces of cloth reach over a length, and what they come to: one after the other, each join taking some off.
func laid(need, cloth, join measure.NM) (n int, sewn measure.NM) {
	for n, sewn = 1, cloth; sewn < need; n++ {
		sewn += cloth - join
	}
	return n, sewn
}

// piecedBreaks lays a backing out again, panel by panel.
func piecedBreaks(o BackingOptions, p Pieced, across, along measure.NM) []string {
	var l lawful
	seam := 2 * o.Seam
	n, sewn := laid(across, o.UsableWidth, seam)
	l.law(p.Panels == n && p.Comes == sewn, "so many panels cover the need, and one fewer does not")
	l.law(p.AcrossCut == across && p.PanelCut == along && p.LengthCut == measure.NM(n)*along, "the cloth is the panels' lengths")
	left := Size{sewn - across, along}
	if left.Width == 0 {
		left = Size{}
	}
	l.law(p.Left == left, "what is cut off is what the panels come to more than they must")
	half := o.UsableWidth / 2
	split := []measure.NM{half}
	for range n - 1 {
		split = append(split, o.UsableWidth)
	}
	split = append(split, half)
	covers := measure.NM(n-1)*o.UsableWidth + 2*half - measure.NM(n)*seam
	if n%2 != 0 || covers < across {
		split = nil
	}
	l.law(slices.Equal(p.Split, split), "of an even number one panel may stand in halves outside, where that covers the need")
	l.law(p.Split == nil || half > seam, "halves have something beside their seams")
	step := measure.Inch
	if o.Units == measure.Centimetres {
		step = 25 * measure.Millimetre
	}
	l.law(p.Cliff.Step == step, "cloth is measured to an inch, or 2.5 cm")
	costs := true
	if narrow := o.UsableWidth - step; narrow > seam {
		costs = measure.NM(n)*narrow-measure.NM(n-1)*seam < across
	}
	wide := o.UsableWidth + step
	saves := n > 1 && measure.NM(n-1)*wide-measure.NM(n-2)*seam >= across
	l.law(p.Cliff.Costs == costs && p.Cliff.Saves == saves, "the warning is about the panels")
	return l.list
}

// near makes options of a backing whose panels just cover the need, or just do not: of its cloth, or of cloth a step narrower or wider.
func (s sizes) near(o BackingOptions) BackingOptions {
	cloth := o.UsableWidth + []measure.NM{0, 0, -measure.Inch, measure.Inch, -25 * measure.Millimetre, 25 * measure.Millimetre}[s.IntN(6)]
	n := measure.NM(1 + s.IntN(4))
	need := n*cloth - (n-1)*2*o.Seam - 2*o.Seam*measure.NM(s.IntN(2)) + measure.NM(s.IntN(3)-1)
	o.WidthFinished = max(1, need-2*o.Overhang)
	return o
}

func TestBackingLaws(t *testing.T) {
	s := sizes{rand.New(rand.NewPCG(3, 4))}
	for range rounds {
		o := BackingOptions{
			Units: measure.System(s.IntN(2)), WidthFinished: s.between(1, 130*measure.Inch), HeightFinished: s.between(1, 130*measure.Inch),
			UsableWidth: s.between(10*measure.Inch, 120*measure.Inch), Overhang: s.between(1, 6*measure.Inch), Seam: s.between(1, measure.Inch),
		}
		switch s.IntN(4) {
		case 0:
			o = s.near(o)
		case 1: // hardly wider than its seams
			o.UsableWidth = max(measure.Inch, 2*o.Seam+measure.Inch/2, []measure.NM{4*o.Seam + measure.NM(s.IntN(3)-1), s.between(1, 8*measure.Inch)}[s.IntN(2)])
			o.WidthFinished = o.UsableWidth + s.between(1, o.UsableWidth)
		case 2:
			o.HeightFinished = o.WidthFinished
		}
		b := backing(t, o)
		for _, broken := range append(piecedBreaks(o, b.Ways[UpAndDown], b.WidthCut, b.HeightCut), piecedBreaks(o, b.Ways[Across], b.HeightCut, b.WidthCut)...) {
			t.Fatalf("%+v: %s", o, broken)
		}
		if b.WidthCut != o.WidthFinished+2*o.Overhang || b.HeightCut != o.HeightFinished+2*o.Overhang {
			t.Errorf("%+v: it is %s by %s", o, text(b.WidthCut), text(b.HeightCut))
		}
		if less := b.Ways[UpAndDown].LengthCut < b.Ways[Across].LengthCut; less != (b.Less == UpAndDown) { // alike, seams run across, as long-arm quilters like it
			t.Errorf("%+v: the way with less cloth is not named", o)
		}
	}
}

func TestBackingLawsCatch(t *testing.T) {
	b := backing(t, BackingOptions{WidthFinished: in(72, 0), HeightFinished: in(90, 0), UsableWidth: in(42, 0)})
	for name, spoil := range map[string]func(p *Pieced){
		"seams forgotten":      func(p *Pieced) { p.Comes = 2 * in(42, 0) },
		"a panel too many":     func(p *Pieced) { p.Panels++; p.LengthCut += p.PanelCut; p.Comes += in(41, 0) },
		"length of one panel":  func(p *Pieced) { p.LengthCut = p.PanelCut },
		"nothing cut off":      func(p *Pieced) { p.Left = Size{} },
		"a seam in the middle": func(p *Pieced) { p.Split = p.Split[:2] },
		"unlike halves":        func(p *Pieced) { p.Split = []measure.NM{in(22, 0), in(42, 0), in(20, 0)} },
		"a false warning":      func(p *Pieced) { p.Cliff.Costs = true },
		"a false hope":         func(p *Pieced) { p.Cliff.Saves = true },
	} {
		p := b.Ways[UpAndDown]
		spoil(&p)
		if len(piecedBreaks(b.BackingOptions, p, b.WidthCut, b.HeightCut)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

func bindingBreaks(b *Binding) []string {
	var l lawful
	loss := map[Join]measure.NM{Diagonal: b.StripCut, Straight: 2 * b.Seam, InAllowance: 0}[b.Join]
	n := measure.NM(b.Strips)
	l.law(b.Need == 2*(b.WidthFinished+b.HeightFinished)+b.Allowance, "the need is the perimeter with the allowance")
	l.law(b.Comes == n*b.UsableWidth-(n-1)*loss, "each join loses what the rule says")
	l.law(b.Comes >= b.Need, "the strips reach round")
	l.law(n == 1 || (n-1)*b.UsableWidth-(n-2)*loss < b.Need, "one fewer does not")
	l.law(b.LengthCut == n*b.StripCut, "the cloth is the strips' widths")
	return l.list
}

func binding(t *testing.T, o BindingOptions) *Binding {
	t.Helper()
	b, err := MakeBinding(o)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestBindingLaws(t *testing.T) {
	s := sizes{rand.New(rand.NewPCG(5, 6))}
	for range rounds {
		o := BindingOptions{
			Units: measure.System(s.IntN(2)), WidthFinished: s.between(1, 130*measure.Inch), HeightFinished: s.between(1, 130*measure.Inch),
			StripCut: s.between(measure.Inch, 4*measure.Inch), UsableWidth: s.between(10*measure.Inch, 120*measure.Inch), Join: Join(s.IntN(3)),
			NoAllowance: s.IntN(3) == 0,
		}
		b := binding(t, o)
		for _, broken := range bindingBreaks(b) {
			t.Errorf("%+v: %s", o, broken)
		}
		wider, plain := o, o
		wider.UsableWidth += s.between(1, 20*measure.Inch)
		plain.Join = InAllowance
		if binding(t, wider).Strips > b.Strips || binding(t, plain).Strips > b.Strips {
			t.Errorf("%+v: wider cloth or joins that cost nothing take more strips", o)
		}
	}
}

func TestBindingLawsCatch(t *testing.T) {
	for name, spoil := range map[string]func(b *Binding){
		"a strip short": func(b *Binding) {
			b.Strips--
			b.Comes -= b.UsableWidth - b.StripCut
			b.LengthCut -= b.StripCut
		},
		"a strip too many": func(b *Binding) {
			b.Strips++
			b.Comes += b.UsableWidth - b.StripCut
			b.LengthCut += b.StripCut
		},
		"joins cost nothing": func(b *Binding) { b.Comes = measure.NM(b.Strips) * b.UsableWidth },
		"half the perimeter": func(b *Binding) { b.Need /= 2 },
		"cloth of one strip": func(b *Binding) { b.LengthCut = b.StripCut },
	} {
		b := binding(t, BindingOptions{WidthFinished: in(60, 0), HeightFinished: in(80, 0)})
		spoil(b)
		if len(bindingBreaks(b)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

// cost is what a way of cutting long pieces takes.
type cost struct{ strips, joins int }

// costOf lays the strips of each group end to end. It says, too, whether each piece is cut once.
func costOf(o StripOptions, lengths []measure.NM, groups [][]int) (c cost, once bool) {
	loss := map[Join]measure.NM{Diagonal: o.StripCut, Straight: 2 * o.Seam, InAllowance: 0}[o.Join]
	seen := make([]int, len(lengths))
	for _, group := range groups {
		var total measure.NM
		for _, i := range group {
			seen[i]++
			total += lengths[i]
		}
		n, _ := laid(total, o.UsableWidth, loss)
		c.strips, c.joins = c.strips+n, c.joins+n-1
	}
	return c, !slices.ContainsFunc(seen, func(n int) bool { return n != 1 })
}

func (c cost) below(d cost) bool {
	return c.strips < d.strips || c.strips == d.strips && c.joins < d.joins
}

// cheapest tries every way to put pieces into groups: each piece to one that is there, or by itself; where only neighbors go together, to the last one alone.
func cheapest(o StripOptions, lengths []measure.NM, neighbors bool, groups [][]int, next int) cost {
	if next == len(lengths) {
		c, _ := costOf(o, lengths, groups)
		return c
	}
	best := cheapest(o, lengths, neighbors, append(slices.Clone(groups), []int{next}), next+1)
	for i := range groups {
		if neighbors && i < len(groups)-1 {
			continue
		}
		try := slices.Clone(groups)
		try[i] = append(slices.Clone(try[i]), next)
		if c := cheapest(o, lengths, neighbors, try, next+1); c.below(best) {
			best = c
		}
	}
	return best
}

func crosswiseBreaks(o StripOptions, lengths []measure.NM, groups [][]int) []string {
	var l lawful
	c, once := costOf(o, lengths, groups)
	l.law(once, "each piece is cut once")
	sorted, neighbors := lengths, len(lengths) > 10
	if neighbors {
		sorted = slices.Clone(lengths)
		slices.Sort(sorted)
		slices.Reverse(sorted)
		var order []measure.NM
		for _, i := range slices.Concat(groups...) {
			order = append(order, lengths[i])
		}
		l.law(slices.Equal(order, sorted), "of many, the longest are cut first")
	}
	l.law(!cheapest(o, sorted, neighbors, nil, 0).below(c), "no other way takes fewer strips, or as many with fewer joins")
	return l.list
}

func TestCrosswiseLaws(t *testing.T) {
	s := sizes{rand.New(rand.NewPCG(9, 10))}
	for round := range rounds / 40 {
		o := StripOptions{StripCut: s.between(measure.Inch, 6*measure.Inch), UsableWidth: s.between(20*measure.Inch, 60*measure.Inch), Join: Join(s.IntN(3)), Seam: measure.Inch / 4}
		n := 1 + round%6
		if round%30 == 0 {
			n = 11
		}
		lengths := []measure.NM{s.between(1, 90*measure.Inch)}
		for len(lengths) < n {
			lengths = append(lengths, s.between(1, 90*measure.Inch))
			if s.IntN(3) == 0 {
				lengths[len(lengths)-1] = lengths[0]
			}
		}
		groups, err := Crosswise(o, lengths...)
		if err != nil {
			t.Fatal(err)
		}
		for _, broken := range crosswiseBreaks(o, lengths, groups) {
			t.Errorf("%+v %v: %v: %s", o, lengths, groups, broken)
		}
	}
}

func TestCrosswiseLawsCatch(t *testing.T) {
	o := StripOptions{StripCut: in(4, 0), UsableWidth: in(40, 0), Seam: in(0, 16)}
	lengths := []measure.NM{in(36, 0), in(36, 0), in(30, 0), in(10, 0)}
	for name, groups := range map[string][][]int{
		"a piece twice":        {{0}, {1}, {2, 3}, {0}},
		"a piece forgotten":    {{0}, {1}, {2}},
		"a strip too many":     {{0}, {1}, {2}, {3}},
		"a join too many":      {{0, 1, 2, 3}},
		"two in the other one": {{0, 3}, {1, 2}},
	} {
		if len(crosswiseBreaks(o, lengths, groups)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

// Pieces that fill their strips by themselves are not sewn together first, and two short ones share a strip: up to ten in whichever way they fit.
func TestCrosswiseGroups(t *testing.T) {
	for _, c := range []struct {
		inches []int64
		want   cost
	}{
		{[]int64{40, 40, 40, 40}, cost{4, 0}},
		{[]int64{30, 25, 15, 10}, cost{2, 0}},
		{[]int64{30, 30, 30, 25, 25, 15, 15, 10, 10, 10}, cost{5, 0}},
		{[]int64{60, 60}, cost{4, 2}}, // three strips joined twice come to 119 in
		{[]int64{59, 60}, cost{3, 2}},
	} {
		o := StripOptions{StripCut: in(4, 0), UsableWidth: in(40, 0), Join: Straight, Seam: in(0, 16)}
		var lengths []measure.NM
		for _, n := range c.inches {
			lengths = append(lengths, in(n, 0))
		}
		groups, err := Crosswise(o, lengths...)
		if got, once := costOf(o, lengths, groups); err != nil || !once || got != c.want {
			t.Errorf("%v take %+v, want %+v, %v", c.inches, got, c.want, err)
		}
	}
}
