//go:build judges

package quilt_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
)

// These tests ask GEOS, a geometry library in C++, through
// github.com/peterstace/simplefeatures/geos. They need it installed (Debian: libgeos-dev)
// and the build tag judges.

// inchPolygon is an outline in inches for the library.
func inchPolygon(o []place) geom.Geometry {
	ring := make([]float64, 0, 2*len(o)+2)
	for _, p := range append(o[:len(o):len(o)], o[0]) {
		ring = append(ring, p.x, p.y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(ring, geom.DimXY))}).AsGeometry()
}

// cornersOf is the corners of the library's polygon.
func cornersOf(t *testing.T, g geom.Geometry) []place {
	t.Helper()
	if !g.IsPolygon() {
		t.Fatalf("no polygon: %s", g.AsText())
	}
	seq := g.MustAsPolygon().ExteriorRing().Coordinates()
	var list []place
	for i := range seq.Length() - 1 {
		list = append(list, place{seq.GetXY(i).X, seq.GetXY(i).Y})
	}
	return list
}

// buffered is a finished piece as it is cut with sharp corners, as GEOS sees it.
func buffered(t *testing.T, o []place, q float64) geom.Geometry {
	t.Helper()
	g, err := geos.Buffer(inchPolygon(o), q, geos.BufferJoinStyleMitre(10))
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// nearest is the library's corner that lies nearest to a place.
func nearest(list []place, at place) place {
	best := list[0]
	for _, p := range list {
		if apart(p, at) < apart(best, at) {
			best = p
		}
	}
	return best
}

// inOrder is the library's corners in the order of ours.
func inOrder(t *testing.T, g geom.Geometry, ours []place) []place {
	t.Helper()
	theirs := cornersOf(t, g)
	if len(theirs) != len(ours) {
		t.Fatalf("GEOS gives %d corners, not %d: %s", len(theirs), len(ours), g.AsText())
	}
	list := make([]place, len(ours))
	for i, p := range ours {
		list[i] = nearest(theirs, p)
	}
	return list
}

// TestJudgeGeosGrown: what the other tests take for the cut piece is what GEOS makes of it,
// to a thousand millionth of an inch, for every shape of every kind and three allowances.
func TestJudgeGeosGrown(t *testing.T) {
	for _, k := range blocks.Kinds() {
		if len(k.Pieces) == 0 {
			continue
		}
		top := lay(t, plainBlocks("side 5 3/8", k.Name, " A"))
		for i := range top.Patches {
			for _, q := range []float64{0.25, 0.75 / 2.54, 0.125} {
				o := finished(top.Patches[i].Outline)
				ours := grown(o, q)
				for j, p := range inOrder(t, buffered(t, o, q), ours) {
					about(t, k.Name+": "+top.Patches[i].Shape.String(), apart(p, ours[j]), 0, 1e-9)
				}
			}
		}
	}
}

// TestJudgeGeosWedge holds the wedge's formulas against the wedge that GEOS grows and cuts
// off at the strip's raw edges: cut base = 2T(h + q + q/S), cut tip = 2T(q/S - q).
func TestJudgeGeosWedge(t *testing.T) {
	tan, sin := math.Tan(math.Pi/8), math.Sin(math.Pi/8)
	for _, strip := range []string{"strip 1 1/2", "strip 4", "strip 5 1/2", "strip 10"} {
		for _, top := range []*quilt.Top{octagonTop(t, strip), turningTop(t, strip, blocks.OnWebCentres, " A")} {
			const q = 0.25
			o := upright(finished(ofShape(t, top, blocks.Wedge)[0]))
			h := apart(o[0], middle(o[1], o[2]))
			cut := cutWedge(t, o, h, q)
			corners := cornersOf(t, cut)
			if len(corners) != 4 {
				t.Fatalf("a cut wedge has %d corners", len(corners))
			}
			base, tip := widthAt(corners, h+q), widthAt(corners, -q)
			about(t, strip+": base", base, 2*tan*(h+q+q/sin), 1e-6)
			about(t, strip+": tip", tip, 2*tan*(q/sin-q), 1e-6)
			nests(t, cut, h, (base+tip)/2)
		}
	}
}

// upright is a wedge moved and turned so that its tip stands at the origin and points up.
func upright(o []place) []place {
	down := middle(o[1], o[2]).minus(o[0])
	l := down.length()
	list := make([]place, len(o))
	for i, p := range o {
		d := p.minus(o[0])
		list[i] = place{(d.x*down.y - d.y*down.x) / l, (d.x*down.x + d.y*down.y) / l}
	}
	return list
}

// cutWedge is an upright wedge grown by a seam, which brings its base to the one raw edge of
// its strip, and cut off at the other.
func cutWedge(t *testing.T, o []place, h, q float64) geom.Geometry {
	t.Helper()
	strip := inchPolygon([]place{{-100, -q}, {100, -q}, {100, h + 1}, {-100, h + 1}})
	cut, err := geos.Intersection(buffered(t, o, q), strip)
	if err != nil {
		t.Fatal(err)
	}
	return cut
}

// widthAt is how far apart the corners at a height lie.
func widthAt(corners []place, y float64) float64 {
	left, right := math.Inf(1), math.Inf(-1)
	for _, p := range corners {
		if math.Abs(p.y-y) < 1e-6 {
			left, right = min(left, p.x), max(right, p.x)
		}
	}
	return right - left
}

// nests sees that the next wedge, turned by half a turn and moved by the pitch, touches the
// first: two millionths of an inch further they are just apart, a thousandth nearer they
// overlap.
func nests(t *testing.T, cut geom.Geometry, h, pitch float64) {
	t.Helper()
	turned := func(by float64) geom.Geometry {
		return cut.TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: by - p.X, Y: h - p.Y} })
	}
	if gap, _ := geom.Distance(cut, turned(pitch+2e-6)); gap == 0 || gap > 4e-6 {
		t.Errorf("wedges hardly more than %.4f apart leave a gap of %g", pitch, gap)
	}
	overlaps, err := geos.Overlaps(cut, turned(pitch-1e-3))
	if err != nil || !overlaps {
		t.Errorf("wedges less than %.4f apart do not overlap: %v", pitch, err)
	}
}

// TestJudgeGeosCuts holds the formulas of the other pieces against what GEOS grows: kite
// q + s/2 + k q/S, background pieces s + (2 + sqrt 2) q, half-square triangle and ring corner its
// leg + (2 + sqrt 2) q.
func TestJudgeGeosCuts(t *testing.T) {
	const q = 0.25
	k, sin := math.Sqrt2/2, math.Sin(math.Pi/8)
	for _, size := range []string{"side 2", "side 5.3576", "side 7", "side 14 1/2"} {
		top := turningTop(t, size, blocks.OnWebCentres, " A")
		s := inInches(top.SideFinished)
		for _, c := range []struct {
			top  *quilt.Top
			of   blocks.Shape
			need func(raw []place) float64
			want float64
		}{
			{top, blocks.Kite, squareFor, q + s/2 + k*q/sin},
			{turningTop(t, size, blocks.ToWebCentre, " A"), blocks.Background, triangleFor, s + (2+math.Sqrt2)*q},
			{turningTop(t, size, blocks.ToStarCentre, " A"), blocks.HalfSquare, triangleFor, s + (2+math.Sqrt2)*q},
			{octagonTop(t, size), blocks.RingCorner, squareFor, (1-k)*s + (2+math.Sqrt2)*q},
		} {
			for _, outline := range ofShape(t, c.top, c.of) {
				o := finished(outline)
				about(t, size+": "+c.of.String(), c.need(inOrder(t, buffered(t, o, q), grown(o, q))), c.want, 1e-6)
			}
		}
	}
}

// TestJudgeGeosUnion asks GEOS for the union of all patches at once.
func TestJudgeGeosUnion(t *testing.T) {
	for name, top := range judged(t) {
		var list []geom.Geometry
		for i := range top.Patches {
			list = append(list, polygon(top.Patches[i].Outline))
		}
		all, err := geos.UnaryUnion(geom.NewGeometryCollection(list).AsGeometry())
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for i := range list {
			sum += list[i].Area()
		}
		if math.Abs(all.Area()/sum-1) > 1e-12 {
			t.Errorf("%s: the union covers %v, the patches %v", name, all.Area(), sum)
		}
	}
}
