package cutting

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
)

// Laws of sizes and sums.

// wrongSums says where something is rounded below its need, or a sum is wrong.
func wrongSums(p *Plan) error {
	for i := range p.Lines {
		c := &p.Lines[i].Piece
		if c.AcrossCut < c.AcrossExact || c.AlongCut < c.AlongExact || c.RuleCut != 0 && c.RuleCut < c.AlongExact || c.KitesCut != 0 && c.KitesCut < c.AlongExact {
			return fmt.Errorf("line %d is cut below its need", i)
		}
		for _, r := range c.OnRuler {
			if r.BelowCut > r.ExactCut || r.AboveCut < r.ExactCut-1 || r.AboveCut-r.BelowCut > p.Steps.Mark {
				return fmt.Errorf("line %d: %v are no marks beside a size", i, r)
			}
		}
	}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		var cloth measure.NM
		count := 0
		for _, s := range f.Strips {
			if s.OnSheet >= 0 || s.OnEnd >= 0 { // of cloth that is cut already
				continue
			}
			count += s.Times
			if s.OfYardage() {
				cloth += measure.NM(s.Times) * s.WidthCut
			}
		}
		for _, b := range f.Blocks {
			cloth += measure.NM(b.Times) * b.LengthCut
		}
		for n := range f.FromPrint {
			cloth += f.FromPrint[n].LengthCut
		}
		b := f.Purchase
		switch {
		case cloth != f.LengthCut || count != f.StripCount:
			return fmt.Errorf("%s: the strips come to %d in %d", f.Name, cloth, count)
		case f.BackingCut > 0 && len(f.Precuts) > 0:
			return fmt.Errorf("%s: precuts would do, they say, and the back is made of it", f.Name)
		case f.LengthBound > f.LengthCut || f.StripBound > f.StripRows:
			return fmt.Errorf("%s: a bound above the plan", f.Name)
		case b.ExactCut != f.LengthCut+f.BackingCut || b.Need < b.ExactCut || b.Buy < b.Need || b.Buy%b.Step != 0 || b.Buy-b.Need >= b.Step:
			return fmt.Errorf("%s: bought is %v", f.Name, b)
		}
	}
	return nil
}

func TestSums(t *testing.T) {
	backed := 0
	for _, n := range everyTop(150) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if err := wrongSums(p); err != nil {
				t.Fatalf("%s: %v", n.name, err)
			}
			for _, f := range p.Fabrics {
				if f.BackingCut > 0 && len(f.Blocks) == 0 && f.StripCount > 0 {
					backed++
				}
			}
		}
	}
	if backed == 0 {
		t.Error("no fabric is on both sides of a quilt")
	}
}

func TestSumsCatch(t *testing.T) {
	for name, harm := range map[string]func(p *Plan){
		"a size rounded down":    func(p *Plan) { p.Lines[3].Piece.AlongCut = p.Lines[3].Piece.AlongExact - 1 },
		"cloth bought too short": func(p *Plan) { p.Fabrics[0].Purchase.Buy -= p.Fabrics[0].Purchase.Step },
		"cloth rounded twice":    func(p *Plan) { p.Fabrics[0].Purchase.Buy += p.Fabrics[0].Purchase.Step },
		"a strip forgotten":      func(p *Plan) { p.Fabrics[0].Strips = p.Fabrics[0].Strips[1:] },
		"precuts for a backing": func(p *Plan) {
			p.Fabrics[0].BackingCut, p.Fabrics[0].Precuts = 1, make([]Precut, 1)
			p.Fabrics[0].Purchase.ExactCut++
		},
		"a bound too high": func(p *Plan) { p.Fabrics[0].LengthBound = p.Fabrics[0].LengthCut + 1 },
	} {
		p := Build(nil, sampleTops()[0].Top, Options{})
		harm(p)
		if wrongSums(p) == nil {
			t.Errorf("%s was not noticed", name)
		}
	}
}

// less says which fabric a plan for more quilts needs less of.
func less(few, many *Plan) error {
	for i := range few.Fabrics {
		a, b := &few.Fabrics[i], &many.Fabrics[i]
		if b.Purchase.Need < a.Purchase.Need || b.LengthCut < a.LengthCut || b.Purchase.Buy < a.Purchase.Buy {
			return fmt.Errorf("%s: %d for %d quilts, %d for %d", a.Name, a.LengthCut, few.Copies, b.LengthCut, many.Copies)
		}
	}
	return nil
}

// TestCopies: more quilts never need less of a fabric.
func TestCopies(t *testing.T) {
	dearer := 0.0
	for _, n := range slices.Concat(sampleTops(), judges.Some(tops().hundred[len(tops().hundred)/5:len(tops().hundred)*3/5], 5)) {
		one := usual(n)
		if len(one.Faults) > 0 {
			continue
		}
		few := one
		for _, copies := range []int{2, 12} {
			many := Build(nil, n.Top, Options{Copies: copies})
			if err := less(few, many); err != nil {
				t.Errorf("%s: %v", n.name, err)
			}
			for i := range many.Fabrics {
				dearer = max(dearer, float64(many.Fabrics[i].LengthCut)/float64(max(1, measure.NM(copies)*one.Fabrics[i].LengthCut)))
			}
			few = many
		}
	}
	// More pieces can only be laid better, but for a hair where the search ends early.
	if dearer == 0 || dearer > 1.001 {
		t.Errorf("cloth for several quilts is up to %.2f %% of as many single ones', expected 100.1 %% at the most", 100*dearer)
	}
}

func TestCopiesCatch(t *testing.T) {
	one, two := Build(nil, sampleTops()[0].Top, Options{}), Build(nil, sampleTops()[0].Top, Options{Copies: 2})
	if less(two, one) == nil {
		t.Error("one quilt takes less than two, and that was not noticed")
	}
}

// seamless is a top whose seam allowance is next to nothing.
func seamless(top *quilt.Top) *quilt.Top {
	t := copied(top)
	const seam = 1
	for h, cut := range t.CutFacts.StripsCut {
		if cut > 0 {
			t.CutFacts.StripsCut[h] = cut - 2*top.Seam + 2*seam
		}
	}
	for i := range t.CutFacts.Sets {
		bands := append([]measure.NM(nil), t.CutFacts.Sets[i].BandsCut...)
		for b := range bands {
			bands[b] += 2*seam - 2*top.Seam
		}
		t.CutFacts.Sets[i].BandsCut = bands
	}
	t.Seam = seam
	return t
}

// unlikeFinished says which exact cut size is not the finished one where seams take nothing.
func unlikeFinished(p *Plan) error {
	for i := range p.Lines {
		c := &p.Lines[i].Piece
		across, along := c.SideFinished, c.SideFinished
		switch c.Shape {
		case blocks.Wedge, blocks.Tumbler:
			along = c.AlongExact // its base, below
			mean := c.LengthFinished
			if c.Shape == blocks.Wedge {
				mean = times(c.SideFinished, tan22)
			}
			if off := c.PitchCut() - mean; off > 20 || off < -20 {
				return fmt.Errorf("line %d: pieces are %d nanometres wide on average, not %d", i, c.PitchCut(), mean)
			}
		case blocks.Kite:
			across, along = c.SideFinished/2, c.SideFinished/2
		case blocks.HalfTumbler:
			along = 2 * c.LengthFinished
		case blocks.Strip:
			along = c.LengthFinished
		}
		if d, e := c.AcrossExact-across, c.AlongExact-along; d > 20 || d < -20 || e > 20 || e < -20 {
			return fmt.Errorf("line %d, a %s: %d by %d for %d by %d", i, c.Shape, c.AcrossExact, c.AlongExact, across, along)
		}
	}
	return nil
}

func TestNoSeam(t *testing.T) {
	for _, n := range judges.Some(everyTop(150), 30) {
		if err := unlikeFinished(Build(nil, seamless(n.Top), Options{})); err != nil {
			t.Fatalf("%s: %v", n.name, err)
		}
		if n.Seam > inch(0.01) && unlikeFinished(usual(n)) == nil {
			t.Fatalf("%s: cut sizes with seams pass for finished ones", n.name)
		}
	}
}
