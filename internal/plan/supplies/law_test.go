package supplies

import (
	"math/rand/v2"
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
	l.law(p.Buy%b.Step() == 0, "shops cut by whole steps")
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

func piecedBreaks(o BackingOptions, p Pieced) []string {
	var l lawful
	seam := 2 * o.Seam
	n := measure.NM(p.Panels)
	l.law(n*o.UsableWidth-(n-1)*seam >= p.AcrossCut, "panels less seams cover the need")
	l.law(n == 1 || (n-1)*o.UsableWidth-(n-2)*seam < p.AcrossCut, "a panel fewer does not")
	l.law(p.LengthCut == n*p.PanelCut, "the cloth is the panels' lengths")
	var sum measure.NM
	for _, w := range p.Equal {
		sum += w
		l.law(w <= o.UsableWidth, "a panel is no wider than the cloth")
	}
	l.law(len(p.Equal) == p.Panels && sum-(n-1)*seam >= p.AcrossCut, "equal panels cover the need")
	if p.Split != nil {
		sum = 0
		for _, w := range p.Split {
			sum += w
		}
		l.law(p.Panels%2 == 0 && len(p.Split) == p.Panels+1, "one panel of an even number is split")
		l.law(sum <= n*o.UsableWidth && sum-n*seam >= p.AcrossCut, "split panels cover the need and come from as many")
		l.law(p.Split[0] == p.Split[len(p.Split)-1], "the halves lie outside")
	}
	l.law(p.Cliff.Wider <= p.Panels && (p.Cliff.Narrower == 0 || p.Cliff.Narrower >= p.Panels), "wider cloth never takes more panels")
	l.law(p.Cliff.Costs == (p.Cliff.Narrower != p.Panels) && p.Cliff.Saves == (p.Cliff.Wider != p.Panels), "the warning is about the panels")
	return l.list
}

func TestBackingLaws(t *testing.T) {
	s := sizes{rand.New(rand.NewPCG(3, 4))}
	for range rounds {
		o := BackingOptions{
			Units: measure.System(s.IntN(2)), WidthFinished: s.between(1, 130*measure.Inch), HeightFinished: s.between(1, 130*measure.Inch),
			UsableWidth: s.between(10*measure.Inch, 120*measure.Inch), NoOverhang: s.IntN(3) == 0, Overhang: s.between(0, 6*measure.Inch),
		}
		b, err := MakeBacking(o)
		if err != nil {
			t.Fatal(err)
		}
		for _, way := range b.Ways {
			for _, broken := range piecedBreaks(b.BackingOptions, way) {
				t.Errorf("%+v: %s", o, broken)
			}
		}
		if least := min(b.Ways[0].LengthCut, b.Ways[1].LengthCut); b.Ways[b.Less].LengthCut != least {
			t.Errorf("%+v: the other way takes less", o)
		}
		wider := o
		wider.UsableWidth += s.between(1, 20*measure.Inch)
		w := backing(t, wider)
		for i := range w.Ways {
			if w.Ways[i].LengthCut > b.Ways[i].LengthCut {
				t.Errorf("%+v: wider cloth takes more of it", o)
			}
		}
		stepped := b.BackingOptions
		stepped.NoOverhang = stepped.Overhang == 0
		stepped.UsableWidth += b.Ways[0].Cliff.Step
		if got := backing(t, stepped).Ways[0].Panels; got != b.Ways[0].Cliff.Wider {
			t.Errorf("%+v: wider cloth takes %d panels, the cliff says %d", o, got, b.Ways[0].Cliff.Wider)
		}
	}
}

func TestBackingLawsCatch(t *testing.T) {
	b := backing(t, BackingOptions{WidthFinished: in(72, 0), HeightFinished: in(90, 0), UsableWidth: in(42, 0)})
	for name, spoil := range map[string]func(p *Pieced){
		"seams forgotten":      func(p *Pieced) { p.AcrossCut = 2 * in(42, 0) },
		"a panel too many":     func(p *Pieced) { p.Panels++; p.LengthCut += p.PanelCut; p.Equal = append(p.Equal, p.Equal[0]) },
		"length of one panel":  func(p *Pieced) { p.LengthCut = p.PanelCut },
		"narrow equal panels":  func(p *Pieced) { p.Equal = []measure.NM{in(40, 0), in(40, 0)} },
		"a wide panel":         func(p *Pieced) { p.Equal = []measure.NM{in(43, 0), in(43, 0)} },
		"a seam in the middle": func(p *Pieced) { p.Split = p.Split[:2] },
		"unlike halves":        func(p *Pieced) { p.Split = []measure.NM{in(22, 0), in(42, 0), in(20, 0)} },
		"a false warning":      func(p *Pieced) { p.Cliff.Costs = true },
		"wider takes more":     func(p *Pieced) { p.Cliff.Wider = 3 },
	} {
		p := b.Ways[UpAndDown]
		spoil(&p)
		if len(piecedBreaks(b.BackingOptions, p)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

func bindingBreaks(b *Binding) []string {
	var l lawful
	loss := b.Join.loss(b.StripCut, b.Seam)
	n := measure.NM(b.Strips)
	l.law(b.Need == 2*(b.WidthFinished+b.HeightFinished)+b.Allowance, "the need is the perimeter with the allowance")
	l.law(b.Comes == n*b.UsableWidth-(n-1)*loss && b.Lost == (n-1)*loss, "each join loses what the rule says")
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
			b.Lost -= b.StripCut
			b.Comes -= b.UsableWidth - b.StripCut
			b.LengthCut -= b.StripCut
		},
		"a strip too many": func(b *Binding) {
			b.Strips++
			b.Lost += b.StripCut
			b.Comes += b.UsableWidth - b.StripCut
			b.LengthCut += b.StripCut
		},
		"joins cost nothing": func(b *Binding) { b.Comes += b.Lost; b.Lost = 0 },
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

func crosswiseBreaks(p *LongPieces, lengths []measure.NM) []string {
	var l lawful
	loss := p.Join.loss(p.StripCut, p.Seam)
	seen := make([]int, len(lengths))
	strips := 0
	for _, group := range p.Groups {
		var total measure.NM
		for _, i := range group {
			seen[i]++
			total += lengths[i]
		}
		n := 1
		for measure.NM(n)*p.UsableWidth-measure.NM(n-1)*loss < total {
			n++
		}
		strips += n
	}
	for _, n := range seen {
		l.law(n == 1, "each piece is cut once")
	}
	l.law(strips == p.Strips, "the strips less joins give their pieces, and one fewer does not")
	l.law(p.Joins == p.Strips-len(p.Groups), "each group is sewn to one")
	l.law(p.LengthCut == measure.NM(p.Strips)*p.StripCut, "the cloth is the strips' widths")
	l.law(measure.NM(p.Strips)*p.UsableWidth >= p.Total, "the strips are at least as long as the pieces")
	return l.list
}

func TestCrosswiseLaws(t *testing.T) {
	s := sizes{rand.New(rand.NewPCG(9, 10))}
	for range rounds / 20 {
		o := StripOptions{StripCut: s.between(measure.Inch, 6*measure.Inch), UsableWidth: s.between(20*measure.Inch, 60*measure.Inch), Join: Join(s.IntN(3))}
		var lengths []measure.NM
		for range 1 + s.IntN(13) {
			lengths = append(lengths, s.between(1, 120*measure.Inch))
			if s.IntN(2) == 0 {
				lengths = append(lengths, lengths[0])
			}
		}
		p, err := Crosswise(o, lengths...)
		if err != nil {
			t.Fatal(err)
		}
		for _, broken := range crosswiseBreaks(p, lengths) {
			t.Errorf("%+v %v: %s", o, lengths, broken)
		}
		wider := o
		wider.UsableWidth += s.between(1, 20*measure.Inch)
		if w, err := Crosswise(wider, lengths...); err != nil || w.Strips > p.Strips {
			t.Errorf("%+v %v: wider cloth takes more strips, %v", o, lengths, err)
		}
		if fewer, err := Crosswise(o, lengths[1:]...); err != nil || fewer.Strips > p.Strips {
			t.Errorf("%+v %v: fewer pieces take more strips, %v", o, lengths, err)
		}
	}
}

func TestCrosswiseLawsCatch(t *testing.T) {
	lengths := []measure.NM{in(70, 0), in(70, 0), in(50, 0), in(30, 0)}
	for name, spoil := range map[string]func(p *LongPieces){
		"a strip short":      func(p *LongPieces) { p.Strips-- },
		"a piece twice":      func(p *LongPieces) { p.Groups = append(p.Groups, []int{0}) },
		"a piece forgotten":  func(p *LongPieces) { p.Groups[0] = p.Groups[0][1:] },
		"a join forgotten":   func(p *LongPieces) { p.Joins-- },
		"cloth of one strip": func(p *LongPieces) { p.LengthCut = p.StripCut },
		"short":              func(p *LongPieces) { p.Total *= 2 },
	} {
		p, err := Crosswise(StripOptions{StripCut: in(4, 0)}, lengths...)
		if err != nil {
			t.Fatal(err)
		}
		spoil(p)
		if len(crosswiseBreaks(p, lengths)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

// Pieces that fill their strips by themselves are not sewn together first, and two short ones share a strip.
func TestCrosswiseGroups(t *testing.T) {
	for _, c := range []struct {
		lengths       []measure.NM
		strips, joins int
	}{
		{[]measure.NM{in(40, 0), in(40, 0), in(40, 0), in(40, 0)}, 4, 0},
		{[]measure.NM{in(30, 0), in(25, 0), in(15, 0), in(10, 0)}, 2, 0},
		{[]measure.NM{in(60, 0), in(60, 0)}, 4, 2}, // three strips joined twice come to 119 in
		{[]measure.NM{in(59, 0), in(60, 0)}, 3, 2},
	} {
		p, err := Crosswise(StripOptions{StripCut: in(4, 0), Join: Straight}, c.lengths...)
		if err != nil {
			t.Fatal(err)
		}
		count(t, "strips", p.Strips, c.strips)
		count(t, "joins", p.Joins, c.joins)
	}
}

func TestOutOfBounds(t *testing.T) {
	huge := measure.NM(1) << 60
	for _, nm := range []measure.NM{-1, 0, 1, huge, -huge} {
		for _, err := range []error{
			second(MakeBacking(BackingOptions{WidthFinished: nm, HeightFinished: nm, UsableWidth: nm, Overhang: nm, Seam: nm})),
			second(MakeBatting(BattingOptions{WidthFinished: nm, HeightFinished: nm, Overhang: nm})),
			second(MakeBinding(BindingOptions{WidthFinished: nm, HeightFinished: nm, StripCut: nm, UsableWidth: nm, Allowance: nm, Seam: nm})),
			second(Crosswise(StripOptions{StripCut: nm, UsableWidth: nm}, nm)),
		} {
			if err == nil && nm != 1 {
				t.Errorf("%d nm is let through", nm)
			}
		}
	}
}

func second[T any](_ T, err error) error { return err }
