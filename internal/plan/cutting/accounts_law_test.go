package cutting

import (
	"fmt"
	"maps"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// Laws of accounts: what a plan says of a fabric beside its cuts is added up anew, to the last nanometre.

// scrap is a size of cloth that is left.
type scrap struct{ across, along measure.NM }

// scraps is the cloth that is left, by size; what is below 2 in one way or the other is for the bin.
type scraps map[scrap]int

func (s scraps) add(across, along measure.NM, times int) {
	if across >= 2*measure.Inch && along >= 2*measure.Inch && times > 0 {
		s[scrap{across, along}] += times
	}
}

// ofStrip adds what is left of a strip: above its cuts, stretches of one height together; in the last length of rows; and its end.
func (s scraps) ofStrip(t *Strip) {
	end := t.LengthCut
	above, from, at := measure.NM(0), measure.NM(0), measure.NM(0)
	for _, c := range t.Cuts {
		lengths := (c.Units + c.Rows - 1) / c.Rows
		long := measure.NM(lengths) * c.AlongCut
		if c.Nests {
			long = c.AlongCut
		}
		if free := t.WidthCut - measure.NM(c.Rows)*c.AcrossCut; free != above {
			s.add(above, at-from, t.Times)
			above, from = free, at
		}
		s.add(measure.NM(lengths*c.Rows-c.Units)*c.AcrossCut, c.AlongCut, t.Times)
		at, end = at+long, end-long
	}
	s.add(above, at-from, t.Times)
	s.add(t.WidthCut, end, t.Times)
}

// ofPrint adds what lies beside strips along the selvages, and what no piece of a strip reaches from edge to edge of it.
func (s scraps) ofPrint(c *FromPrint, usable measure.NM) {
	rows, ends := map[measure.NM]measure.NM{}, map[measure.NM]measure.NM{} // by where a row of strips begins: its end, and how far across it reaches
	var begins []measure.NM
	for _, t := range c.Strips {
		if _, ok := rows[t.Min.Y]; !ok {
			begins = append(begins, t.Min.Y)
		}
		rows[t.Min.Y], ends[t.Min.Y] = max(rows[t.Min.Y], t.Max.Y), 0
	}
	for _, t := range c.Strips {
		from, to := t.Min.X, t.Max.X
		if c.Lengthwise {
			s.add(t.Min.X-ends[t.Min.Y], rows[t.Min.Y]-t.Min.Y, c.Times)
			ends[t.Min.Y] = t.Max.X
			from, to = t.Min.Y, t.Max.Y
		}
		for at := from; at < to; { // to the next piece that begins behind a place which no piece covers
			next, covered := to, false
			for _, q := range t.Pieces {
				low, high := to, from
				for _, p := range c.CutOutline(q) {
					v := p.X
					if c.Lengthwise {
						v = p.Y
					}
					low, high = min(low, v), max(high, v)
				}
				switch {
				case low <= at && high > at:
					at, covered = high, true
				case low > at:
					next = min(next, low)
				}
			}
			if !covered {
				s.add(t.WidthCut, next-at, c.Times)
				at = next
			}
		}
	}
	for i, begin := range begins {
		if !c.Lengthwise {
			break
		}
		s.add(usable-ends[begin], rows[begin]-begin, c.Times)
		if i+1 < len(begins) {
			s.add(usable, begins[i+1]-rows[begin], c.Times)
		}
	}
}

// leftAnew is the cloth that is left of a fabric.
func leftAnew(p *Plan, f *Fabric) scraps {
	left := scraps{}
	beside := make([]measure.NM, len(f.Blocks)) // how much of each block strips take
	for i := range f.Strips {
		t := &f.Strips[i]
		left.ofStrip(t)
		if t.InBlock >= 0 {
			beside[t.InBlock] += measure.NM(t.Times) * t.WidthCut
		}
	}
	for n, b := range f.Blocks {
		width := f.UsableWidth
		for _, c := range b.Columns {
			width -= c.WidthCut
			left.add(b.LengthCut-c.LengthCut, c.WidthCut, b.Times)
		}
		left.add(b.LengthCut-beside[n], width, b.Times)
	}
	for _, g := range f.gapsLeft { // badGaps has them come to what strips leave of the gaps
		left.add(g.widthCut, f.UsableWidth, g.times)
	}
	for n := range f.FromPrint {
		left.ofPrint(&f.FromPrint[n], f.UsableWidth)
	}
	sheets, ends := map[int]measure.NM{}, map[int]measure.NM{}
	for _, t := range f.Strips {
		if t.OnSheet >= 0 {
			sheets[t.OnSheet] += t.WidthCut * measure.NM(t.Times) / measure.NM(f.From.Sheets[t.OnSheet].Times)
		}
		if t.OnEnd >= 0 {
			ends[t.OnEnd] += t.WidthCut * measure.NM(t.Times) / measure.NM(f.Ends[t.OnEnd].Times)
		}
	}
	if f.From != nil {
		for n, s := range f.From.Sheets {
			left.add(s.WidthCut-sheets[n], s.LengthCut, s.Times)
		}
	}
	for n, e := range f.Ends {
		left.add(e.WidthCut-ends[n], e.LengthCut, e.Times)
	}
	for _, c := range f.Chains {
		over := -c.LossCut * measure.NM(joinsOf(&c))
		for _, s := range c.Strips {
			over += measure.NM(s.Count) * s.LengthCut
		}
		for _, s := range c.Pieces {
			over -= measure.NM(s.Count) * (p.Lines[s.Line].Piece.AlongCut + p.Longer)
		}
		left.add(p.Lines[c.Pieces[0].Line].Piece.AcrossCut, over, c.Times)
	}
	return left
}

// joinsOf is how many joins a chain has.
func joinsOf(c *Chain) int {
	n := -1
	for _, s := range c.Strips {
		n += s.Count
	}
	return n
}

// widestCut is the widest cut off yardage.
func widestCut(f *Fabric) (widest measure.NM) {
	for _, s := range f.Strips {
		if s.OnSheet < 0 {
			widest = max(widest, s.WidthCut)
		}
	}
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			widest = max(widest, c.WidthCut)
		}
	}
	for _, print := range f.FromPrint {
		for _, s := range print.Strips {
			widest = max(widest, s.WidthCut)
		}
	}
	return widest
}

// extras is what is added to a fabric for squaring up and for slips, by the options, else the layout, else the usual rule.
func extras(top *quilt.Top, o *Options, f *Fabric) (squareUp, spare measure.NM) {
	squareUp, most, _ := usualRules(top.Units)
	spare = min(widestCut(f), most)
	if said := top.CutFacts.Extra.SquareUp; said != nil {
		squareUp = *said
	}
	if said := top.CutFacts.Extra.Spare; said != nil {
		spare = *said
	}
	if o.SquareUp > 0 || o.NoSquareUp {
		squareUp = o.SquareUp
	}
	if o.Spare > 0 || o.NoSpare {
		spare = o.Spare
	}
	return squareUp, spare
}

// misreckoned says what of a fabric's accounts is not what its cuts come to.
func misreckoned(top *quilt.Top, p *Plan, o *Options) error {
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		if left := leftAnew(p, f); !maps.Equal(left, listed(f)) {
			return fmt.Errorf("%s: left over are %v, said are %v", f.Name, left, f.LeftOver)
		}
		backing := measure.NM(0)
		if p.Backing != nil && top.CutFacts.Backing == f.Index {
			backing = measure.NM(p.Copies) * p.Backing.Ways[p.Backing.Less].LengthCut
		}
		need := f.LengthCut + backing
		squareUp, spare := extras(top, o, f)
		if need > 0 {
			need += squareUp + spare
		} else {
			spare = 0
		}
		if f.BackingCut != backing || f.Purchase.Need != need {
			return fmt.Errorf("%s: %d are needed, %d for the backing; said are %d, %d", f.Name, need, backing, f.Purchase.Need, f.BackingCut)
		}
		if err := comparedWrongly(f, top.CutFacts.Fabrics[f.Index].OnHand, need, spare); err != nil {
			return err
		}
		if tight := isTightAnew(p, f); f.Tight != tight {
			return fmt.Errorf("%s: it is tight %v, said is %v", f.Name, tight, f.Tight)
		}
	}
	if top.CutFacts.Backing != p.BackingOf && p.Backing != nil {
		return fmt.Errorf("the backing is of fabric %d, said is %d", top.CutFacts.Backing, p.BackingOf)
	}
	if p.BackingOf < 0 && p.Backing != nil {
		squareUp, _ := extras(top, o, &Fabric{})
		spare := measure.NM(0)
		if said := top.CutFacts.Extra.Spare; said != nil {
			spare = *said
		}
		if o.Spare > 0 || o.NoSpare {
			spare = o.Spare
		}
		if need := measure.NM(p.Copies)*p.Backing.Ways[p.Backing.Less].LengthCut + squareUp + spare; p.BackingBuy.Need != need {
			return fmt.Errorf("%d are needed for the backing, said are %d", need, p.BackingBuy.Need)
		}
	}
	return nil
}

// listed is what a fabric lists as left over.
func listed(f *Fabric) scraps {
	list := scraps{}
	for _, l := range f.LeftOver {
		list[scrap{l.AcrossCut, l.AlongCut}] += l.Times
	}
	return list
}

// comparedWrongly says where cloth on hand is not compared with what is needed as it should.
func comparedWrongly(f *Fabric, have, need, spare measure.NM) error {
	h := f.OnHand
	if have == 0 || h == nil {
		if have != 0 || h != nil {
			return fmt.Errorf("%s: of %d on hand it says %v", f.Name, have, h)
		}
		return nil
	}
	if want := (OnHand{HaveCut: have, NeedCut: need - spare, Enough: need-spare <= have, NoSpare: need-spare <= have && have < need, ShortCut: max(0, need-spare-have)}); h.HaveCut != want.HaveCut ||
		h.NeedCut != want.NeedCut || h.Enough != want.Enough || h.NoSpare != want.NoSpare || h.ShortCut != want.ShortCut || want.Enough && (h.ByLeast || h.WaysToFit != nil) {
		return fmt.Errorf("%s: with %d on hand and %d needed, %d of it for slips, it says %+v", f.Name, have, need, spare, *h)
	}
	return nil
}

// isTightAnew says whether less than 3 in, 8 cm, is left at the end of every strip of yardage that pieces or strip sets come from.
func isTightAnew(p *Plan, f *Fabric) bool {
	rule, strips := 3*measure.Inch, 0
	if p.Units == measure.Centimetres {
		rule = 8 * measure.Centimetre
	}
	for _, s := range f.Strips {
		for _, c := range s.Cuts {
			if (c.Use == ForPieces || c.Use == ForSet) && s.OnSheet < 0 {
				if strips++; s.EndLeftCut >= rule {
					return false
				}
			}
		}
	}
	return strips > 0
}

// TestAccounts: what is left over, what is needed with squaring up and for slips, how cloth on hand compares, and whether a fabric is
// tight, follows from the cuts.
func TestAccounts(t *testing.T) {
	left, onHand, tight, ends := 0, 0, 0, 0
	first := named{"all of the first fabric", variants(), lay.Top(t, "side 6\nfabric a #111 on-hand 5 yd\nblock A plain piece a\ngrid\n A\nrepeat across 8 down 8\nbacking a\nbinding 2 1/2 a\n")}
	for _, n := range append(everyTop(150), first) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if err := misreckoned(n.Top, p, &o); err != nil {
				t.Errorf("%s, %+v: %v", n.name, o, err)
			}
			for i := range p.Fabrics {
				f := &p.Fabrics[i]
				left, ends = left+len(f.LeftOver), ends+len(f.Ends)
				if f.OnHand != nil {
					onHand++
				}
				if f.Tight {
					tight++
				}
			}
		}
	}
	if left < 100 || onHand < 5 || tight < 20 || ends < 5 {
		t.Errorf("only %d sizes are left, %d fabrics are on hand, %d are tight, %d ends are cut", left, onHand, tight, ends)
	}
}
