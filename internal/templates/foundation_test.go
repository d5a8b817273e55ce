package templates

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/samples"
)

// wrongFoundation says what is wrong with a foundation: its pieces fill it, and each but the
// first is sewn to those before it.
func wrongFoundation(f *Foundation) string {
	sum := 0.0
	for i := range f.Pieces {
		area := areaOf(points(f.Pieces[i].Finished))
		if area <= 0 {
			return fmt.Sprintf("piece %d goes the wrong way round", i+1)
		}
		sum += area
		if i > 0 && len(f.seamsOf(i)) == 0 {
			return fmt.Sprintf("piece %d is sewn to nothing", i+1)
		}
	}
	if whole := areaOf(points(f.Finished)); math.Abs(sum-whole) > whole/1e6 {
		return fmt.Sprintf("the pieces fill %.6f of it", sum/whole)
	}
	return ""
}

// TestFoundations: each is filled by its pieces, in an order that can be sewn, and every
// half with a seam in it is counted.
func TestFoundations(t *testing.T) {
	for n, top := range append(inventedTops(t, 150), lay.Top(t, samples.All()[0].Text)) {
		counted, want := 0, 0
		for _, f := range Foundations(top) {
			counted += f.Count
			if wrong := wrongFoundation(&f); wrong != "" {
				t.Fatalf("layout %d, foundation %d: %s", n, f.Number, wrong)
			}
			if wrong := wrongAllowance(points(f.Finished), points(f.Cut), float64(top.Seam)); wrong != "" {
				t.Fatalf("layout %d, foundation %d: %s", n, f.Number, wrong)
			}
		}
		for i := range top.Cells {
			wedges := 0
			kind, ok := blocks.Find(blocks.Kinds(), top.Cells[i].Kind)
			for k := top.Cells[i].First; k < top.Cells[i].First+top.Cells[i].Count; k++ {
				wedges += bit(top.Patches[k].Shape == blocks.Wedge)
			}
			if ok && kind.Turning.InLattice() { // a half has one wedge or two
				want += map[int]int{0: 0, 1: 1, 2: 2, 4: 2}[wedges]
				if len(kind.Pieces) == 4 && wedges == 2 && hasKite(kind) {
					want-- // one half has both
				}
			}
		}
		if counted != want {
			t.Fatalf("layout %d: %d halves are counted, there are %d with a seam", n, counted, want)
		}
	}
}

func hasKite(k *blocks.Kind) bool {
	for _, p := range k.Pieces {
		if p.Shape == blocks.Kite {
			return true
		}
	}
	return false
}

func TestWrongFoundationIsNoticed(t *testing.T) {
	f := Foundations(lay.Top(t, hugeLayout))[0]
	pieces := f.Pieces
	f.Pieces = pieces[1:]
	if wrongFoundation(&f) == "" {
		t.Error("a missing piece was not noticed")
	}
}
