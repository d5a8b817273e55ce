package cutting

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
)

// Laws of cloth that suffices: what is bought holds what is cut and the allowances; the strips of a border are whole ones and
// cover every side with something over; what is said to be left over is there.

// tooLittle says which fabric is bought with less than what is cut from it, what squares it up, and a strip more: of the
// widest strip, up to a quarter of a yard.
func tooLittle(p *Plan, squareUp, most measure.NM) error {
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		var cut, widest measure.NM
		for _, s := range f.Strips {
			widest = max(widest, s.WidthCut)
			if s.OfYardage() {
				cut += measure.NM(s.Times) * s.WidthCut
			}
		}
		for _, b := range f.Blocks {
			cut += measure.NM(b.Times) * b.LengthCut
			for _, c := range b.Columns {
				widest = max(widest, c.WidthCut)
			}
		}
		for i := range f.FromPrint {
			print := &f.FromPrint[i]
			first, last := print.Strips[0].Min.Y, print.Strips[0].Max.Y
			for _, s := range print.Strips {
				last, widest = max(last, s.Max.Y), max(widest, s.WidthCut)
			}
			cut += max(last-first, print.FittedCut) + print.AlongCut // wherever the repeat begins
		}
		if p.Backing != nil && p.BackingOf == f.Index {
			cut += p.Backing.Ways[p.Backing.Less].LengthCut * measure.NM(p.Copies)
		}
		if cut == 0 { // all is on hand, and nothing is bought
			if f.Purchase.Buy != 0 {
				return fmt.Errorf("%s: %s bought, and nothing is cut", f.Name, measure.Text(f.Purchase.Buy, p.Units))
			}
			continue
		}
		if wants := cut + squareUp + min(widest, most); f.Purchase.Buy < wants {
			return fmt.Errorf("%s: %s bought, %s wanted", f.Name, measure.Text(f.Purchase.Buy, p.Units), measure.Text(wants, p.Units))
		}
	}
	if p.Backing == nil || p.Batting == nil {
		return fmt.Errorf("no backing, or no batting")
	}
	if p.BackingOf < 0 && p.BackingBuy.Buy < p.Backing.Ways[p.Backing.Less].LengthCut*measure.NM(p.Copies)+squareUp {
		return fmt.Errorf("%s bought for the backing", measure.Text(p.BackingBuy.Buy, p.Units))
	}
	return nil
}

// uncovered says which side of a border its strips do not cover with so much over, and which strip to be joined is not whole.
func uncovered(p *Plan, over measure.NM) error {
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		for _, s := range f.Strips {
			for _, c := range s.Cuts {
				switch {
				case (c.Use == ForJoining || c.Use == ForBinding) && c.AlongCut != f.UsableWidth:
					return fmt.Errorf("%s: a strip %s long is joined", f.Name, measure.Text(c.AlongCut, p.Units))
				case c.Use == ForPieces && short(p, c.Lines[0], c.AlongCut, over):
					return fmt.Errorf("line %d: cut %s", c.Lines[0]+1, measure.Text(c.AlongCut, p.Units))
				}
			}
		}
		for _, b := range f.Blocks {
			for _, c := range b.Columns {
				if short(p, c.Line, c.LengthCut, over) {
					return fmt.Errorf("line %d: cut %s lengthwise", c.Line+1, measure.Text(c.LengthCut, p.Units))
				}
			}
		}
		for _, c := range f.Chains {
			var long, wanted measure.NM
			strips := 0
			for _, s := range c.Strips {
				long, strips = long+measure.NM(s.Count)*s.LengthCut, strips+s.Count
			}
			for _, s := range c.Pieces {
				wanted += measure.NM(s.Count) * (p.Lines[s.Line].Piece.AlongCut + over)
			}
			across := p.Lines[c.Pieces[0].Line].Piece.AcrossCut
			if across > f.UsableWidth/2 {
				across = 2 * p.Seam
			}
			if long-measure.NM(strips-1)*max(across, 2*p.Seam) < wanted { // joined with diagonal seams
				return fmt.Errorf("%s: joined strips come to %s and %s is wanted", f.Name, measure.Text(long, p.Units), measure.Text(wanted, p.Units))
			}
		}
	}
	return nil
}

// short says whether a piece of a border is cut less than so much longer than reckoned.
func short(p *Plan, line int, cut, over measure.NM) bool {
	l := &p.Lines[line]
	return l.Border >= 0 && l.edging() && cut < l.Piece.AlongCut+over
}

// usualRules are the usual allowances of a plan's units, written down anew.
func usualRules(u measure.System) (squareUp, most, over measure.NM) {
	if u == measure.Centimetres {
		return 5 * measure.Centimetre, 25 * measure.Centimetre, 5 * measure.Centimetre
	}
	return 2 * measure.Inch, 9 * measure.Inch, 2 * measure.Inch
}

func TestClothSuffices(t *testing.T) {
	joined, lengthwise := 0, 0
	for _, n := range everyTop(100) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if len(p.Faults) > 0 || o.LeastCloth {
				continue
			}
			squareUp, most, over := usualRules(p.Units)
			if said := n.CutFacts.Extra; said.SquareUp != nil {
				squareUp, most = *said.SquareUp, *said.Spare
			}
			if o.SquareUp > 0 {
				squareUp, most = o.SquareUp, 0
			}
			if err := tooLittle(p, squareUp, most); err != nil {
				t.Errorf("%s: %v", n.name, err)
			}
			if err := uncovered(p, over); err != nil {
				t.Errorf("%s: %v", n.name, err)
			}
			for _, f := range p.Fabrics {
				joined, lengthwise = joined+len(f.Chains), lengthwise+len(f.Blocks)
			}
		}
	}
	if joined == 0 || lengthwise == 0 {
		t.Errorf("%d joined borders, %d lengthwise: too few to say anything", joined, lengthwise)
	}
}

func TestClothSufficesCatches(t *testing.T) {
	for name, harm := range map[string]func(p *Plan){
		"no strip more":         func(p *Plan) { p.Fabrics[0].Purchase.Buy = p.Fabrics[0].LengthCut },
		"no backing bought":     func(p *Plan) { p.BackingBuy.Buy = 0 },
		"no batting":            func(p *Plan) { p.Batting = nil },
		"a strip not whole":     func(p *Plan) { eachJoined(p, func(c *Cut) { c.AlongCut-- }) },
		"a border with nothing": func(p *Plan) { eachPiece(p, func(l *Line) { l.Piece.AlongCut += 20 * measure.Inch }) },
		"a chain too short": func(p *Plan) {
			for i := range p.Fabrics {
				for c := range p.Fabrics[i].Chains {
					p.Fabrics[i].Chains[c].Strips[0].Count--
				}
			}
		},
	} {
		p := Build(nil, topNamed("lanterns"), Options{})
		squareUp, most, over := usualRules(p.Units)
		harm(p)
		if tooLittle(p, squareUp, most) == nil && uncovered(p, over) == nil {
			t.Errorf("%s was not noticed", name)
		}
	}
	for name, o := range map[string]Options{"strips cut short": {LeastCloth: true}, "nothing for squaring up": {NoSquareUp: true, NoSpare: true}} {
		caught := 0
		for _, n := range sampleTops() {
			p := planned(n.Top, o)
			squareUp, most, over := usualRules(p.Units)
			if tooLittle(p, squareUp, most) != nil || uncovered(p, over) != nil {
				caught++
			}
		}
		if caught == 0 {
			t.Errorf("%s was not noticed", name)
		}
	}
}

func eachJoined(p *Plan, harm func(*Cut)) {
	for i := range p.Fabrics {
		for s := range p.Fabrics[i].Strips {
			for c := range p.Fabrics[i].Strips[s].Cuts {
				if k := &p.Fabrics[i].Strips[s].Cuts[c]; k.Use == ForJoining || k.Use == ForBinding {
					harm(k)
				}
			}
		}
	}
}

func eachPiece(p *Plan, harm func(*Line)) {
	for i := range p.Lines {
		if p.Lines[i].edging() {
			harm(&p.Lines[i])
		}
	}
}

func topNamed(name string) *quilt.Top {
	all := sampleTops()
	return all[slices.IndexFunc(all, func(n named) bool { return n.name == name })].Top
}

// unaccounted says which fabric's pieces and leftovers come to more than its cloth.
func unaccounted(p *Plan) error {
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		cloth := area(f.LengthCut, f.UsableWidth)
		used := 0.0
		for _, s := range f.Strips {
			for _, c := range s.Cuts {
				if c.Use == ForEnd { // its strips are counted
					continue
				}
				across := measure.NM(min(c.Rows, c.Units)) * c.AcrossCut
				if c.Units%max(c.Rows, 1) == 0 || c.Nests {
					used += float64(s.Times) * area(across, c.Length())
				} else {
					used += float64(s.Times*c.Units) * area(c.AcrossCut, c.AlongCut)
				}
			}
		}
		for _, b := range f.Blocks {
			for _, c := range b.Columns {
				used += float64(b.Times) * area(c.WidthCut, c.LengthCut)
			}
		}
		for _, l := range f.LeftOver {
			used += float64(l.Times) * area(l.AcrossCut, l.AlongCut)
		}
		for _, c := range f.Chains { // what is left of them lies in strips that are counted already
			across := p.Lines[c.Pieces[0].Line].Piece.AcrossCut
			used -= float64(c.Times) * area(across, max(0, c.SpareCut))
		}
		if used > cloth*(1+1e-9) {
			return fmt.Errorf("%s: %.1f square inches of %.1f are used or left", f.Name, used, cloth)
		}
	}
	return nil
}

func area(across, along measure.NM) float64 { return inches(across) * inches(along) }

// TestLeftOver: what is left over is no more than there is; a large end of a lengthwise border's cloth is among it.
func TestLeftOver(t *testing.T) {
	for _, n := range everyTop(100) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if err := unaccounted(p); err != nil && len(p.Faults) == 0 {
				t.Errorf("%s: %v", n.name, err)
			}
		}
	}
	p := Build(nil, topNamed("lanterns"), Options{})
	p.Fabrics[0].LeftOver = append(p.Fabrics[0].LeftOver, LeftOver{Times: 4, AcrossCut: 20 * measure.Inch, AlongCut: 40 * measure.Inch})
	if unaccounted(p) == nil {
		t.Error("more is left over than there is, and that was not noticed")
	}
	wide := Build(nil, lay.Top(t, "side 6\nfabric a #111\nfabric b #888\nblock A plain piece a\ngrid\n A\nrepeat across 8 down 10\nborder 5 b lengthwise\n"), Options{})
	if f := &wide.Fabrics[1]; !slices.ContainsFunc(f.LeftOver, func(l LeftOver) bool { return l.AcrossCut > 50*measure.Inch && l.AlongCut > 15*measure.Inch }) {
		t.Errorf("beside 4 strips of 5 1/2 in there are 18 in of cloth left, and of it nothing is said: %v", f.LeftOver)
	}
}

// TestWhatWholeStripsAdd: on the hundred layouts, whole strips and the usual allowances add what is said of them.
func TestWhatWholeStripsAdd(t *testing.T) {
	var cloth, bought []float64
	for _, n := range judges.Some(tops().hundred, 25) {
		few, whole := planned(n.Top, Options{LeastCloth: true, NoSquareUp: true, NoSpare: true}), usual(n)
		if len(few.Faults) > 0 {
			continue
		}
		var a, b, buyA, buyB measure.NM
		for i := range few.Fabrics {
			a, b = a+few.Fabrics[i].LengthCut, b+whole.Fabrics[i].LengthCut
			buyA, buyB = buyA+few.Fabrics[i].Purchase.Buy, buyB+whole.Fabrics[i].Purchase.Buy
		}
		cloth, bought = append(cloth, 100*(float64(b)/float64(a)-1)), append(bought, 100*(float64(buyB)/float64(buyA)-1))
	}
	for name, list := range map[string][]float64{"cloth cut": cloth, "cloth bought": bought} {
		slices.Sort(list)
		t.Logf("%s: whole strips and allowances add %.1f %% in the middle, %.1f %% at the most, %.1f %% at the least", name, list[len(list)/2], list[len(list)-1], list[0])
		if list[0] < -0.001 || list[len(list)/2] > 40 {
			t.Errorf("%s: %v", name, list)
		}
	}
}
