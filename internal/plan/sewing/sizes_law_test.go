package sewing_test

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// Sizes once: what stands out before trimming is what the cutting plan leaves to trim, however pieces are cut.

// cutWays are cutting options that change what pieces are cut from.
func cutWays() map[string]cutting.Options {
	coarse := cutting.Options{}
	coarse.Steps.Trimmed, coarse.Steps.Exact = measure.Inch, measure.Inch/2
	return map[string]cutting.Options{"usual": {}, "coarse": coarse, "by custom": {CornersByCustom: true}, "long edges straight": {LongEdgesStraight: true}}
}

// sizeBreaks are the steps that say otherwise than a cutting plan by how much a block's pieces stand out.
func sizeBreaks(p *sewing.Plan, cuts *cutting.Plan) []string {
	var list []string
	for i := range p.Blocks {
		b := &p.Blocks[i]
		most, said := measure.NM(0), measure.NM(0)
		for _, patch := range b.Variants[0].Cells[0].Patches {
			most = max(most, cuts.Lines[cuts.LineOf[patch]].Piece.StandsOut)
		}
		for _, s := range b.Steps {
			said = max(said, s.StandsOut)
		}
		if said != most {
			list = append(list, fmt.Sprintf("block %s: %d nm stand out, the pieces are cut larger by %d", b.Label, said, most))
		}
	}
	return list
}

func TestSizesOnce(t *testing.T) {
	changed := map[string]bool{}
	for name, top := range sizedTops(t) {
		usual := cutting.Pieces(top, cutting.Options{})
		for way, o := range cutWays() {
			cuts := cutting.Pieces(top, o)
			p := sewing.Build(nil, top, cuts, sewing.Options{})
			for _, broken := range sizeBreaks(p, cuts) {
				t.Errorf("%s, %s: %s", name, way, broken)
			}
			if len(sizeBreaks(p, usual)) > 0 {
				changed[way] = true // a plan that is sewn by other sizes is caught
			}
		}
	}
	for way := range cutWays() {
		if changed[way] != (way != "usual") {
			t.Errorf("%s: other sizes are seen: %v", way, changed[way])
		}
	}
}

// sizedTops are tops of one block of each kind that has pieces to trim.
func sizedTops(t *testing.T) map[string]*quilt.Top {
	t.Helper()
	list := map[string]*quilt.Top{}
	for _, block := range []string{"web wedges a kites b", "ring wedges a corners b", "halves pieces a b", "floating wedges a background b", "floating-star kites a wedges b background a"} {
		for _, size := range []string{"strip 4", "strip 3 1/4", "strip 11 cm"} {
			if block[:6] == "halves" {
				size = "side " + size[len("strip "):]
			}
			list[block+", "+size] = lay.Top(t, size+"\nfabric a #112233\nfabric b #eeeeee\nblock A "+block+"\ngrid\n A A\n A A\n")
		}
	}
	return list
}

// Kites of a block of 7 in: cut from squares of whole inches they have 0.788 in to trim, usually 0.288 (5 and 4 1/2 less the
// exact 4.212 in, q + side/2 + q / (sqrt 2 sin 22.5), worked out from the outline).
func TestTrimStepHoldsForSewing(t *testing.T) {
	top := lay.Top(t, "side 7\nfabric a #112233\nfabric b #eeeeee\nblock A web wedges a kites b\ngrid\n A A\n A A\n")
	for step, want := range map[measure.NM]float64{0: 0.288, measure.Inch: 0.788} {
		o := cutting.Options{}
		o.Steps.Trimmed = step
		said := sewing.Build(nil, top, cutting.Pieces(top, o), sewing.Options{}).Blocks[0].Steps[1].StandsOut
		if got := float64(said) / float64(measure.Inch); got < want-0.0005 || got > want+0.0005 {
			t.Errorf("step %d: %.4f in stand out, want %g", step, got, want)
		}
	}
}
