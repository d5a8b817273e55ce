package supplies

import (
	"math/rand/v2"
	"testing"

	"eighthturn/internal/measure"
)

// Laws of the published lists.

func bedBreaks(beds []Bed) []string {
	var l lawful
	names := map[string]bool{}
	for i := range beds {
		b := &beds[i]
		for _, n := range append([]string{b.Name}, b.Also...) {
			l.law(!names[bedKey(n)], n+" stands twice")
			names[bedKey(n)] = true
		}
		l.law(len(b.Quilts) >= 2, b.Name+" has quilts of two lists or more")
		for _, p := range append(append([]Published{}, b.Quilts...), b.Mattresses...) {
			l.law(p.Source != "" && p.Least.Width > 0 && p.Least.Height > 0 && p.Least.Width <= p.Most.Width && p.Least.Height <= p.Most.Height, b.Name+" has sizes with their source")
		}
		if len(b.Quilts) == 0 {
			continue
		}
		least, most := b.Spread()
		q := b.Quilt()
		l.law(q.Width >= least.Width && q.Width <= most.Width && q.Height >= least.Height && q.Height <= most.Height, b.Name+" lies within what is published")
		m := b.Mattress()
		l.law(m.Width <= q.Width && m.Height <= q.Height, b.Name+": the quilt covers the mattress")
	}
	return l.list
}

func TestBedLaws(t *testing.T) {
	for _, broken := range bedBreaks(Beds()) {
		t.Error(broken)
	}
	queen, _ := FindBed("queen")
	if least, most := queen.Spread(); most.Width-least.Width != in(10, 0) || most.Height-least.Height != in(18, 0) {
		t.Errorf("the lists for queen give %v to %v", least, most)
	}
}

func TestBedLawsCatch(t *testing.T) {
	for name, spoil := range map[string]func(beds []Bed){
		"one list":            func(beds []Bed) { beds[3].Quilts = beds[3].Quilts[:1] },
		"no list":             func(beds []Bed) { beds[3].Quilts = nil },
		"no source":           func(beds []Bed) { beds[3].Quilts[1].Source = "" },
		"twice":               func(beds []Bed) { beds[3].Name = "Queen" },
		"turned ends":         func(beds []Bed) { beds[3].Quilts[0].Least.Width *= 4 },
		"a mattress too wide": func(beds []Bed) { beds[3].Mattresses = beds[7].Mattresses },
	} {
		beds := Beds()
		spoil(beds)
		if len(bedBreaks(beds)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

func TestPackages(t *testing.T) {
	s := sizes{rand.New(rand.NewPCG(11, 12))}
	for range rounds / 10 {
		o := BattingOptions{WidthFinished: s.between(1, 120*measure.Inch), HeightFinished: s.between(1, 120*measure.Inch), Overhang: s.between(1, 6*measure.Inch)}
		b, err := MakeBatting(o)
		if err != nil {
			t.Fatal(err)
		}
		o.WidthFinished, o.HeightFinished = o.HeightFinished, o.WidthFinished
		turned, err := MakeBatting(o)
		if err != nil || len(turned.Packages) != len(b.Packages) {
			t.Errorf("%+v: turned it fits another number of packages, %v", o, err)
		}
		for i := range b.Packages {
			p := &b.Packages[i]
			if min(p.Size.Width, p.Size.Height) < min(b.WidthCut, b.HeightCut) || max(p.Size.Width, p.Size.Height) < max(b.WidthCut, b.HeightCut) {
				t.Errorf("%+v: %v does not hold it", o, p)
			}
			if i > 0 && p.Size.area() < b.Packages[i-1].Size.area() {
				t.Errorf("%+v: the smallest is not first", o)
			}
		}
	}
}
