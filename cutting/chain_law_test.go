package cutting

import (
	"fmt"
	"maps"
	"testing"

	"eighthturn/measure"
)

// Law of strips sewn end to end: the strips of a chain, less a seam at every join, are as long as the pieces cut from it;
// the chains take up the very strips that are cut to be joined, and give every long piece.

func wrongChains(p *Plan, loss func(across measure.NM) measure.NM) error {
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
			if long -= measure.NM(joins) * loss(across); long < wanted {
				return fmt.Errorf("%s: a chain comes to %d, its pieces take %d", f.Name, long, wanted)
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

func straight(p *Plan) func(measure.NM) measure.NM {
	return func(measure.NM) measure.NM { return 2 * p.Seam }
}

func TestChains(t *testing.T) {
	chains := 0
	for _, n := range everyTop(t, 100) {
		for _, copies := range []int{1, 3} {
			p := Of(n.Top, Options{Copies: copies})
			for _, f := range p.Fabrics {
				chains += len(f.Chains)
			}
			if err := wrongChains(p, straight(p)); err != nil {
				t.Fatalf("%s, %d copies: %v", n.name, copies, err)
			}
		}
		p := Of(n.Top, Options{DiagonalBorders: true})
		if err := wrongChains(p, func(across measure.NM) measure.NM { return across }); err != nil {
			t.Fatalf("%s, on the slant: %v", n.name, err)
		}
	}
	if chains == 0 {
		t.Error("nothing is sewn end to end")
	}
}

// All strips of a border sewn into one, where the plan means two, fall short.
func TestChainsCatch(t *testing.T) {
	for _, n := range everyTop(t, 0) {
		p := Of(n.Top, Options{})
		for i := range p.Fabrics {
			f := &p.Fabrics[i]
			if len(f.Chains) != 2 {
				continue
			}
			if err := wrongChains(p, straight(p)); err != nil {
				t.Fatal(err)
			}
			f.Chains[0].Strips = append(f.Chains[0].Strips, f.Chains[1].Strips...)
			f.Chains[0].Pieces = append(f.Chains[0].Pieces, f.Chains[1].Pieces...)
			f.Chains = f.Chains[:1]
			if wrongChains(p, straight(p)) == nil {
				t.Errorf("%s, %s: one chain in place of two is not caught", n.name, f.Name)
			}
			return
		}
	}
	t.Error("no fabric with two chains")
}
