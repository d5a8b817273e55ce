package report

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/lay"
)

// The smallest scrap for a wedge is as wide as its strip and as long as its wide end is cut: 0.82843 times the height of the uncut
// triangle, which is half the block and 0.9033 (the geometry of eight-wedge blocks, worked out from first principles; the strip
// is half the block and 1/2).
func TestSmallestScraps(t *testing.T) {
	for strip, base := range map[string]float64{"2 1/2": 2.405, "3 1/2": 3.234, "4 1/2": 4.062, "5 1/2": 4.890, "6 1/2": 5.719} {
		top := lay.Top(t, "strip "+strip+"\nfabric a #111\nfabric b #eee\nscraps p a b\nblock R ring wedges p corners b\ngrid\n R R\n R R\n")
		c := newCuts(&Plans{Top: top})
		sizes := c.scrapSizes()
		if len(sizes) != 1 || sizes[0].pieces != 32 || sizes[0].gives != 1 || math.Abs(float64(sizes[0].along)/float64(measure.Inch)-base) > 0.0006 {
			t.Errorf("strip %s: %+v, want wedges %.3f long", strip, sizes, base)
		}
	}
}

// Every piece that is dealt is counted once, among scraps that each give as many pieces as the plan cuts from one unit.
func TestScrapsCountWhatIsDealt(t *testing.T) {
	seen := 0
	for _, n := range lay.Samples() {
		c := newCuts(&Plans{Top: n.Top})
		dealt, sets := map[int32]bool{}, 0
		for _, p := range n.CutFacts.Pooled {
			patch := n.Faces[p.Face].Patch
			if c.Lines[c.LineOf[patch]].Set >= 0 {
				sets++
				continue
			}
			dealt[patch] = true
		}
		pieces := 0
		for _, z := range c.scrapSizes() {
			pieces += z.pieces
			for _, patch := range z.patches {
				line := &c.Lines[c.LineOf[patch]]
				if line.Piece.AcrossCut != z.across || line.Piece.Method != cutting.Nested && line.Piece.AlongCut != z.along {
					t.Errorf("%s: patch %d is not of its scrap's size", n.Name, patch)
				}
			}
		}
		if pieces != len(dealt) {
			t.Errorf("%s: %d pieces from scraps, %d are dealt", n.Name, pieces, len(dealt))
		}
		seen += pieces
	}
	if seen < 300 {
		t.Errorf("only %d pieces are dealt", seen)
	}
}
