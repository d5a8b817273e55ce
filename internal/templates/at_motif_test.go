package templates

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// TestPiecesCutAtAMotif: whatever way a motif points, its pieces lie upright round their centers of gravity, each sort once with its number,
// and their cut outlines hold a seam allowance outside every side: of a wedge 4 in high that is 4 1/2 in from strip edge to strip edge.
func TestPiecesCutAtAMotif(t *testing.T) {
	for _, pointing := range []string{"", " pointing 45", " pointing 17", " pointing 200"} {
		top := lay.Top(t, "strip 4 1/2\nfabric awning stripes navy 3/4 white 1/2\nfabric sand #e8d9b0\nmotif mill awning across 1 down 3"+pointing+
			"\nblock R ring wedges mill corners sand\nblock S ring wedges sand corners mill\ngrid\n  R S\n")
		list := CutAt(top, "mill")
		if len(list) != 2 || list[0].Count != 8 || list[1].Count != 4 {
			t.Fatalf("%s: %d sorts", pointing, len(list))
		}
		wedge, corner := list[0], list[1]
		if wedge.Round != 8 || corner.Round != 4 {
			t.Errorf("%s: %d wedges and %d corners go round", pointing, wedge.Round, corner.Round)
		}
		const height = 4 * measure.Inch
		half := measure.NM(math.Round(float64(height) * math.Tan(math.Pi/8)))
		want := []measure.Point{{Y: -height * 2 / 3}, {X: half, Y: height / 3}, {X: -half, Y: height / 3}}
		for i, p := range wedge.Finished {
			if off := math.Hypot(float64(p.X-want[i].X), float64(p.Y-want[i].Y)); off > 5 {
				t.Errorf("%s: corner %d of a wedge lies at %v, not at %v", pointing, i, p, want[i])
			}
		}
		low, high := bounds(wedge.Cut)
		if deep := high.Y - low.Y; deep < 9*measure.Inch/2-5 || deep > 9*measure.Inch/2+5 {
			t.Errorf("%s: the wedge is cut %d nm high, not 4 1/2 in", pointing, deep)
		}
	}
	mostFirst := lay.Top(t, "strip 4 1/2\nfabric awning stripes navy 3/4 white 1/2\nfabric sand #e8d9b0\nmotif mill awning across 1 down 3\nblock R ring wedges mill corners sand\nblock S ring wedges sand corners mill\ngrid\n  S R\n")
	if list := CutAt(mostFirst, "mill"); len(list) != 2 || list[0].Count != 8 || list[1].Count != 4 {
		t.Errorf("the corners come first: %v", list)
	}
	if list := CutAt(lay.Top(t, "strip 4\nfabric a #123456\nblock R ring wedges a corners a\ngrid\n R\n"), ""); list != nil {
		t.Errorf("pieces of no motif: %v", list)
	}
	eight := lay.Top(t, "strip 4 1/2\nfabric a stripes navy 3/4 white 1/2\nblock R ring wedges a corners a\ngrid\n R\n").EightOf(0, measure.Inch, quilt.Cut{Motif: "m"})
	if list := CutAt(eight, "m"); len(list) != 1 || list[0].Count != 8 {
		t.Errorf("eight wedges are %v", list)
	}
}

// TestPiecesRound: pieces with a corner of an eighth, a quarter or a third of a turn fill it; those with another corner leave a gap.
func TestPiecesRound(t *testing.T) {
	for degrees, want := range map[float64]int{45: 8, 90: 4, 120: 3, 73: 1, 44.9: 1, 100: 1} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		if got := roundOf([]xy{{5, 5}, {15, 5}, {5 + 20*cos, 5 + 20*sin}}); got != want {
			t.Errorf("%g degrees: %d go round, expected %d", degrees, got, want)
		}
	}
}
