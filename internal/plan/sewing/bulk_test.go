package sewing_test

import (
	"eighthturn/internal/quilttest/lay"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// webs is a layout of two by two webs, with a web centre in the middle and one at each corner.
func webs(more string) string {
	return "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock A web kites b wedges a\ngrid\n A A\n A A\n" + more
}

// TestPointsAtTheEdge: of two by two webs 16 wedges point at web centres; 8 of them meet in
// the middle, the others in the quilt's four corners, which a border takes inside (derived).
func TestPointsAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		more         string
		keep, atEdge int
		near         int
		distance     measure.NM
	}{
		{"", 8, 8, 4, 0},
		{"border 1/8 a\n", 8, 0, 4, measure.Inch / 8},
		{"border 1/4 a\n", 16, 0, 0, 0},
		{"border 2 a\n", 16, 0, 0, 0},
	} {
		b := planOf(lay.Top(t, webs(c.more)), sewing.Options{}).Bulk
		if w := b.Points[0]; w.Count != 16 || w.Keep != c.keep || w.AtEdge != c.atEdge {
			t.Errorf("%q: of %d tips %d keep their allowance and %d lie on the edge, want 16, %d, %d", c.more, w.Count, w.Keep, w.AtEdge, c.keep, c.atEdge)
		}
		if k := b.Points[1]; k.Count != 8 || k.Keep != 8 {
			t.Errorf("%q: kites %+v", c.more, k)
		}
		if c.near == 0 && len(b.Blunted) != 0 || c.near > 0 && (len(b.Blunted) != 1 || b.Blunted[0].Count != c.near || b.Blunted[0].Distance != c.distance) {
			t.Errorf("%q: near the edge %+v", c.more, b.Blunted)
		}
	}
}

// TestPointsBesideHoles: a place with nothing in it is outside too.
func TestPointsBesideHoles(t *testing.T) {
	text := "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock A web kites b wedges a\ngrid\n A A\n A .\nborder 2 a\n"
	b := planOf(lay.Top(t, text), sewing.Options{}).Bulk
	if w := b.Points[0]; w.Count != 12 || w.AtEdge != 6 || w.Keep != 6 {
		t.Errorf("%+v, want 12 tips, 6 of them at the corners of the hole where the border keeps the others", w)
	}
}

// TestThickPoints: the web centre in the middle of two by two webs has eight tips and is
// thick; a star centre of four kites is not; nor is anything in plain squares.
func TestThickPoints(t *testing.T) {
	p := planOf(lay.Top(t, webs("border 2 a\n")), sewing.Options{})
	if n := p.Bulk.Thick; len(n) == 0 || n[0].Pieces != 8 || n[0].Count != 1 || n[0].Inside {
		t.Errorf("%+v", n)
	}
	for _, thick := range p.Bulk.Thick {
		if thick.Layers <= p.Bulk.Limit || len(thick.At) == 0 {
			t.Errorf("%+v is not thick", thick)
		}
	}
	plain := "side 6\nfabric a #112233\nblock P plain piece a\ngrid\n P P\n P P\n"
	if b := planOf(lay.Top(t, plain), sewing.Options{}).Bulk; len(b.Thick) != 0 || b.Most < 4 || b.Most > 8 {
		t.Errorf("plain squares: %+v", b)
	}
}

// TestCellOf: a point at the corner of four cells lies in the first, one of the border in none.
func TestCellOf(t *testing.T) {
	top := lay.Top(t, webs("border 2 a\n"))
	p := planOf(top, sewing.Options{})
	at := p.Bulk.Thick[0].At[0]
	if cell := p.CellOf(at); cell != 0 {
		t.Errorf("%v lies in cell %d", at, cell)
	}
	if p.CellOf(top.Outer.Min) != -1 {
		t.Error("the border is no cell")
	}
}
