package templates

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/samples"
)

// wrongAllowance says what is wrong with a cut outline: every corner of the piece lies an
// allowance within every cut side or further, and every cut side lies an allowance beyond a
// side of the piece, or as far beyond a tip.
func wrongAllowance(finished, cut []xy, seam float64) string {
	touching := 0
	for i, a := range cut {
		d := unitOf(a, cut[(i+1)%len(cut)])
		least := math.Inf(1)
		for _, p := range finished {
			least = min(least, float64(d.x*(p.y-a.y))-float64(d.y*(p.x-a.x)))
		}
		if math.Abs(least-seam) > 4 {
			return fmt.Sprintf("cut side %d is %.1f nm from the piece, the allowance is %.1f", i, least, seam)
		}
		for n, p := range finished {
			q := finished[(n+1)%len(finished)]
			if e := unitOf(p, q); math.Abs(e.x*d.y-e.y*d.x) < 1e-5 && e.x*d.x+e.y*d.y > 0 {
				touching++
			}
		}
	}
	if touching != len(finished) {
		return fmt.Sprintf("%d cut sides run along a side of the piece, which has %d", touching, len(finished))
	}
	return ""
}

// TestAllowance: on every sample and invented layout the cut line lies the seam allowance
// beyond the seam line, all round, and sharp tips are blunt.
func TestAllowance(t *testing.T) {
	list := inventedTops(t, 300)
	for _, top := range tops(t) {
		list = append(list, top)
	}
	shapes := map[blocks.Shape]int{}
	for n, top := range list {
		for _, p := range usual(top) {
			shapes[p.Shape]++
			if wrong := wrongAllowance(points(p.Finished), points(p.Cut), float64(top.Seam)); wrong != "" {
				t.Fatalf("layout %d, %s %s: %s", n, p.Name(), p.Shape, wrong)
			}
			for i := range p.Cut {
				before, at, after := p.Cut[(i+len(p.Cut)-1)%len(p.Cut)], p.Cut[i], p.Cut[(i+1)%len(p.Cut)]
				if in, out := unitOf(points([]measure.Point{before})[0], points([]measure.Point{at})[0]), unitOf(points([]measure.Point{at})[0], points([]measure.Point{after})[0]); in.x*out.x+in.y*out.y < -0.5 {
					t.Fatalf("layout %d, %s: a corner sharper than 60 degrees is left", n, p.Name())
				}
			}
		}
	}
	for shape := blocks.Wedge; shape < blocks.Strip; shape++ {
		if shapes[shape] == 0 {
			t.Errorf("no %s was looked at", shape)
		}
	}
}

func TestWrongAllowanceIsNoticed(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	p := usual(top)[0]
	cut := points(p.Cut)
	cut[1].x += 100
	if wrongAllowance(points(p.Finished), cut, float64(top.Seam)) == "" || wrongAllowance(points(p.Finished), points(p.Cut), float64(top.Seam)*1.01) == "" {
		t.Error("a wrong cut line was not noticed")
	}
}
