package quilt_test

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	layouts "eighthturn/internal/quilttest/lay"
)

// TestEightOf: eight wedges of a height close round one point, each beside the next, and all are an octagon: 8 times the square of
// the height times the tangent of 22.5 degrees, geometry.
func TestEightOf(t *testing.T) {
	top := layouts.Top(t, "strip 4 1/2\nfabric cloth stripes navy 3/4 white 1/2\nfabric sand #e8d9b0\nblock R ring wedges cloth corners sand\ngrid\n  R\n")
	height := top.WedgeFinished(0)
	if height != 4*measure.Inch {
		t.Fatalf("wedges from 4 1/2 in strips are %d nm high", height)
	}
	eight := top.EightOf(0, height, quilt.Cut{Motif: "here", Place: measure.Point{X: measure.Inch / 2}, Pointing: 15})
	area, inches := 0.0, float64(height)/1e6
	tips := map[measure.Point]int{}
	for i := range eight.Faces {
		a := quilt.Area(eight.Faces[i].Outline)
		if want := inches * inches * math.Tan(math.Pi/8); math.Abs(a-want) > 1e-3 {
			t.Errorf("wedge %d covers %.3f square millimeters, not %.3f", i, a, want)
		}
		area += a
		tips[eight.Faces[i].Outline[0]]++
		if c := eight.CutOfPatch(i); c == nil || c.Motif != "here" || c.Pointing != 15 {
			t.Errorf("wedge %d is cut from %v", i, c)
		}
	}
	for i := range eight.Patches {
		if p := &eight.Patches[i]; p.Cell >= 0 || p.Set >= 0 || p.Border >= 0 || p.Number != int32(i+1) || p.First != int32(i) || p.Count != 1 {
			t.Errorf("wedge %d says %+v", i, *p)
		}
	}
	if want := 8 * inches * inches * math.Tan(math.Pi/8); math.Abs(area-want) > 1e-2 || len(tips) != 1 {
		t.Errorf("%d tips, and %.2f square millimeters instead of %.2f", len(tips), area, want)
	}
	if len(eight.Seams) != 8 {
		t.Fatalf("%d seams", len(eight.Seams))
	}
	for _, s := range eight.Seams {
		if !onBoth(eight, s, s.From) || !onBoth(eight, s, s.To) {
			t.Errorf("the seam %v is no side of both its wedges", s)
		}
	}
}

// onBoth says whether a place is a corner of both faces of a seam.
func onBoth(t *quilt.Top, s quilt.Seam, p measure.Point) bool {
	found := 0
	for _, f := range []int32{s.A, s.B} {
		for _, q := range t.Faces[f].Outline {
			if p == q {
				found++
			}
		}
	}
	return found == 2
}

// TestWedgeFinished: the wedges that show the fabric say how high, in blocks of one side where rings and webs have wedges of two heights;
// most of all wedges where none shows it; nothing where there are none.
func TestWedgeFinished(t *testing.T) {
	const fabrics = "side 8\nfabric a #203040\nfabric b #e0d0c0\nfabric c #c05030\nblock R ring wedges a corners c\nblock W web wedges b kites c\nblock P plain piece c\ngrid\n"
	inch := func(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }
	web := 8 * math.Sqrt2 / 2 // a wedge of a web is half the block's diagonal long on its slanted side
	web *= math.Cos(math.Pi / 8)
	for grid, want := range map[string][3]float64{
		"  R W W\n  P W W\n": {4, web, web},
		"  R R R\n  R P P\n": {4, 4, 4},
		"  R W W\n":          {4, web, web}, // as many of both: the higher ones
		"  P P\n":            {},
	} {
		top := layouts.Top(t, fabrics+grid)
		for f, w := range want {
			if got := inch(top.WedgeFinished(f)); math.Abs(got-w) > 1e-3 {
				t.Errorf("%q: wedges of fabric %d are %.4f in high, not %.4f", grid, f, got, w)
			}
		}
	}
}
