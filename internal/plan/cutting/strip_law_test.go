package cutting

import (
	"fmt"
	"testing"

	"eighthturn/internal/measure"
)

// badStrips says where strips are cut into more than they hold, or beside a block into more than it leaves.
func badStrips(f *Fabric) error {
	beside := make([]measure.NM, len(f.Blocks))
	for _, s := range f.Strips {
		used := s.EndLeftCut
		for _, c := range s.Cuts {
			used += c.Length()
			if c.AcrossCut > s.WidthCut {
				return fmt.Errorf("something is wider than its strip")
			}
		}
		if used != s.LengthCut || s.EndLeftCut < 0 || s.LengthCut > f.UsableWidth || s.Times < 1 {
			return fmt.Errorf("a strip of %d is cut into %d", s.LengthCut, used)
		}
		if s.InBlock >= 0 {
			beside[s.InBlock] += measure.NM(s.Times) * s.WidthCut
			if s.LengthCut != f.Blocks[s.InBlock].LeftWidthCut {
				return fmt.Errorf("a strip beside a block is not as long as what the block leaves")
			}
		}
	}
	for i, b := range f.Blocks {
		if beside[i] > b.LengthCut {
			return fmt.Errorf("more strips lie beside a block than it is long")
		}
	}
	return nil
}

// TestStrips: strips are cut into what they hold.
func TestStrips(t *testing.T) {
	for _, n := range everyTop(60) {
		p := usual(n)
		for i := range p.Fabrics {
			if err := badStrips(&p.Fabrics[i]); err != nil {
				t.Fatalf("%s, %s: %v", n.name, p.Fabrics[i].Name, err)
			}
		}
	}
	p := Build(nil, sampleTops()[0].Top, Options{})
	f := &p.Fabrics[0]
	f.Strips[0].Cuts[0].Units++
	if badStrips(f) == nil {
		t.Error("a piece too many in a strip was not noticed")
	}
}
