package cutting

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// Law of strips sewn end to end: the strips of a chain, less a seam at every join, are as long as the pieces cut from it;
// the chains take up the very strips that are cut to be joined, and give every long piece.

func wrongChains(p *Plan, lossOf func(f *Fabric) func(across measure.NM) measure.NM) error {
	pieces := map[int]int{}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		cut, sewn := map[[2]measure.NM]int{}, map[[2]measure.NM]int{}
		for _, s := range f.Strips {
			for _, c := range s.Cuts {
				if c.Use == ForJoining {
					cut[[2]measure.NM{c.AcrossCut, c.AlongCut}] += c.Units * s.Times
				}
			}
		}
		loss := lossOf(f)
		for _, c := range f.Chains {
			across := p.Lines[c.Pieces[0].Line].Piece.AcrossCut
			var long, wanted measure.NM
			joins := -1
			for _, s := range c.Strips {
				long += measure.NM(s.Count) * s.LengthCut
				joins += s.Count
				sewn[[2]measure.NM{across, s.LengthCut}] += s.Count * c.Times
			}
			for _, s := range c.Pieces {
				wanted += measure.NM(s.Count) * p.Lines[s.Line].Piece.AlongCut
				pieces[s.Line] += s.Count * c.Times
			}
			if long -= measure.NM(joins) * loss(across); long < wanted || long-wanted != c.SpareCut || c.LossCut != loss(across) {
				return fmt.Errorf("%s: a chain comes to %d, its pieces take %d, and %d is said to be left", f.Name, long, wanted, c.SpareCut)
			}
			if least := shortestIn(p, &c); least != c.LeastCut || c.Short != (least > 0 && least < minInJoin(p.Units)) || c.Scant != (c.SpareCut < p.Steps.Trimmed) {
				return fmt.Errorf("%s: the shortest piece in a chain is %d, not %d; or it is not said to be short", f.Name, least, c.LeastCut)
			}
		}
		if !maps.Equal(cut, sewn) {
			return fmt.Errorf("%s: cut to be joined %v, joined %v", f.Name, cut, sewn)
		}
	}
	for n := range p.Lines {
		if line := &p.Lines[n]; line.Piece.Method == Joined && len(p.Faults) == 0 && pieces[n] != line.Pieces {
			return fmt.Errorf("line %d: %d of %d pieces come from chains", n, pieces[n], line.Pieces)
		}
	}
	return nil
}

// shortestIn finds the shortest stretch of one strip in those pieces of a chain in which a join lies, every piece held
// against every join.
func shortestIn(p *Plan, c *Chain) measure.NM {
	var ends, cuts []measure.NM
	at := measure.NM(0)
	for _, s := range c.Strips {
		for range s.Count {
			at += s.LengthCut - c.LossCut
			ends = append(ends, at+c.LossCut/2)
		}
	}
	ends = ends[:len(ends)-1]
	at = 0
	for _, s := range c.Pieces {
		for range s.Count {
			at += p.Lines[s.Line].Piece.AlongCut + p.Longer
			cuts = append(cuts, at)
		}
	}
	least, from := measure.NM(0), measure.NM(0)
	for _, to := range cuts {
		marks := []measure.NM{from, to}
		for _, e := range ends {
			if from < e && e < to {
				marks = append(marks, e)
			}
		}
		slices.Sort(marks)
		for i := 1; i < len(marks) && len(marks) > 2; i++ {
			if d := marks[i] - marks[i-1]; least == 0 || d < least {
				least = d
			}
		}
		from = to
	}
	return least
}

func straight(p *Plan) func(measure.NM) measure.NM {
	return func(measure.NM) measure.NM { return 2 * p.Seam }
}

// eitherSeam is what a join of whole strips takes, so that straight and diagonal seams are both possible: the strip's width for
// a diagonal one, where that is no more than half the cloth.
func eitherSeam(p *Plan, usable measure.NM) func(measure.NM) measure.NM {
	return func(across measure.NM) measure.NM {
		if across > usable/2 {
			return 2 * p.Seam
		}
		return max(across, 2*p.Seam)
	}
}

func TestChains(t *testing.T) {
	chains := 0
	for _, n := range everyTop(100) {
		for _, o := range append(n.variants, Options{LeastCloth: true}) {
			p := planned(n.Top, o)
			for _, f := range p.Fabrics {
				chains += len(f.Chains)
			}
			loss := func(f *Fabric) func(measure.NM) measure.NM { return straight(p) }
			switch {
			case !o.LeastCloth:
				loss = func(f *Fabric) func(measure.NM) measure.NM { return eitherSeam(p, f.UsableWidth) }
			case o.DiagonalBorders:
				loss = func(*Fabric) func(measure.NM) measure.NM {
					return func(across measure.NM) measure.NM { return across }
				}
			}
			if err := wrongChains(p, loss); err != nil {
				t.Fatalf("%s, %+v: %v", n.name, o, err)
			}
		}
	}
	if chains == 0 {
		t.Error("nothing is sewn end to end")
	}
}

// TestChainsSpare: chains are tight only where no other division of as many strips of as much cloth is not.
func TestChainsSpare(t *testing.T) {
	chains, scant, short := 0, 0, 0
	for _, n := range everyTop(100) {
		p := least(n)
		for _, f := range p.Fabrics {
			for _, c := range f.Chains {
				chains++
				if c.Scant {
					scant++
				}
				if c.Short {
					short++
				}
				for _, strips := range placings(c.Strips) {
					other := c
					other.Strips = strips
					if better := shortestIn(p, &other); better > c.LeastCut {
						t.Errorf("%s, %s: %v keeps pieces of %d, %v of %d", n.name, f.Name, strips, better, c.Strips, c.LeastCut)
					}
				}
			}
		}
	}
	t.Logf("of %d chains %d leave less than a step of rounding, %d hold a short piece", chains, scant, short)
	if chains == 0 || 5*(scant+short) > 2*chains {
		t.Errorf("%d of %d chains are tight, %d hold a short piece", scant, chains, short)
	}
}

// TestChainsCatch: chains that fall short, or say something else than they are, are found out.
func TestChainsCatch(t *testing.T) {
	for name, harm := range map[string]func(f *Fabric) bool{
		"all strips sewn into one where two are meant": func(f *Fabric) bool {
			if len(f.Chains) != 2 || f.Chains[0].SpareCut+f.Chains[1].SpareCut >= f.Chains[0].LossCut {
				return false
			}
			f.Chains[0].Strips = append(f.Chains[0].Strips, f.Chains[1].Strips...)
			f.Chains[0].Pieces = append(f.Chains[0].Pieces, f.Chains[1].Pieces...)
			f.Chains = f.Chains[:1]
			return true
		},
		"more to spare than there is": func(f *Fabric) bool { f.Chains[0].SpareCut++; return true },
		"a longer least piece":        func(f *Fabric) bool { f.Chains[0].LeastCut++; return true },
		"another order": func(f *Fabric) bool {
			c := &f.Chains[0]
			if len(c.Strips) < 2 || c.LeastCut == 0 {
				return false
			}
			c.Strips[0].LengthCut, c.Strips[1].LengthCut = c.Strips[1].LengthCut, c.Strips[0].LengthCut
			c.Strips[0].Count, c.Strips[1].Count = c.Strips[1].Count, c.Strips[0].Count
			return true
		},
		"tight without a word": func(f *Fabric) bool { c := &f.Chains[0]; c.Scant = !c.Scant; return true },
	} {
		if !chainHarmed(t, name, harm) {
			t.Errorf("%s: no fabric to try it on", name)
		}
	}
}

// withOwnChains is a plan whose chains of one fabric may be changed.
func withOwnChains(shared *Plan, fabric int) *Plan {
	p := *shared
	p.Fabrics = slices.Clone(p.Fabrics)
	f := &p.Fabrics[fabric]
	f.Chains = slices.Clone(f.Chains)
	for i := range f.Chains {
		f.Chains[i].Strips = slices.Clone(f.Chains[i].Strips)
		f.Chains[i].Pieces = slices.Clone(f.Chains[i].Pieces)
	}
	return &p
}

// chainHarmed harms the chains of fabrics, and says whether any could be.
func chainHarmed(t *testing.T, name string, harm func(f *Fabric) bool) bool {
	harmed, caught := 0, 0
	for _, n := range everyTop(0) {
		for i := range least(n).Fabrics {
			p := withOwnChains(least(n), i)
			if f := &p.Fabrics[i]; len(f.Chains) == 0 || !harm(f) {
				continue
			}
			harmed++
			if wrongChains(p, func(*Fabric) func(measure.NM) measure.NM { return straight(p) }) != nil {
				caught++
			}
		}
	}
	if caught < harmed && name != "another order" || harmed > 0 && caught == 0 {
		t.Errorf("%s: caught %d times of %d", name, caught, harmed)
	}
	return harmed > 0
}
