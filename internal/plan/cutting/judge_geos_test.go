//go:build judges

package cutting

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// These tests ask GEOS, a geometry library in C++, through github.com/peterstace/simplefeatures/geos. They need it installed
// (Debian: libgeos-dev) and the build tag judges.

func toLibrary(o []xy) geom.Geometry {
	var list []measure.Point
	for _, p := range o {
		list = append(list, measure.Point{X: inch(p.x / 25_400_000), Y: inch(p.y / 25_400_000)})
	}
	return polygonOf(list)
}

// polygonOf is an outline in inches for the library.
func polygonOf(o []measure.Point) geom.Geometry {
	ring := make([]float64, 0, 2*len(o)+2)
	for i := range len(o) + 1 {
		p := o[i%len(o)]
		ring = append(ring, inches(p.X), inches(p.Y))
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(ring, geom.DimXY))}).AsGeometry()
}

// TestJudgeGeosCutPieces: finished outlines, grown by the seam by GEOS with sharp corners, lie on what is cut; and what must
// be exact is nothing larger. Sharp tips that a strip's edge cuts off are cut off first, and those of kites and background pieces
// lie within their squares.
func TestJudgeGeosCutPieces(t *testing.T) {
	judged := map[blocks.Shape]int{}
	for _, n := range everyTop(120) {
		p := Build(nil, n.Top, Options{})
		q := inches(p.Seam)
		for i := range p.Lines {
			line := &p.Lines[i]
			patch := &n.Top.Patches[line.Patches[0]]
			if line.Piece.AlongCut == 0 || judged[patch.Shape] > 300 {
				continue
			}
			if line.Piece.Method == FussyCut {
				fussyByGeos(t, n, p, line)
				continue
			}
			on, outline := onCut(patch, &line.Piece, float64(p.Seam))
			cut := toLibrary(outline)
			grown, err := geos.Buffer(toLibrary(on), q, geos.BufferJoinStyleMitre(10))
			if err != nil {
				t.Fatal(err)
			}
			if patch.Shape == blocks.Wedge {
				strip := polygonOf(rectangle(-inch(100), 0, inch(600), line.Piece.AcrossCut))
				if grown, err = geos.Intersection(grown, strip); err != nil {
					t.Fatal(err)
				}
			}
			judged[patch.Shape]++
			beyond, err := geos.Difference(grown, cut)
			if err != nil {
				t.Fatal(err)
			}
			if beyond.Area() > 1e-4 {
				t.Fatalf("%s, line %d: %.6f square inches of a %s lie beyond what is cut", n.name, i, beyond.Area(), patch.Shape)
			}
			if line.Piece.TrimCut == 0 && math.Abs(grown.Area()-cut.Area()) > 1e-4 {
				t.Fatalf("%s, line %d: a %s of %.6f square inches is cut %.6f", n.name, i, patch.Shape, grown.Area(), cut.Area())
			}
		}
	}
	for s := blocks.Wedge; s <= blocks.Strip; s++ {
		if judged[s] < 5 {
			t.Errorf("%ss: only %d were judged", s, judged[s])
		}
	}
}

// TestJudgeGeosCatches: a wedge cut a thirty-second narrower is found.
func TestJudgeGeosCatches(t *testing.T) {
	top := sampleTops()[1].Top
	p := Build(nil, top, Options{})
	for i := range p.Lines {
		line := &p.Lines[i]
		if line.Piece.Shape != blocks.Wedge {
			continue
		}
		line.Piece.WideCut -= inch(1. / 32)
		on, outline := onCut(&top.Patches[line.Patches[0]], &line.Piece, float64(p.Seam))
		grown, err := geos.Buffer(toLibrary(on), inches(p.Seam), geos.BufferJoinStyleMitre(10))
		if err != nil {
			t.Fatal(err)
		}
		if out, err := geos.Difference(grown, toLibrary(outline)); err != nil || out.Area() < 1e-3 {
			t.Errorf("it was not noticed: %v", err)
		}
	}
}

// TestJudgeGeosEndPieces: both halves of a rectangle that is cut between its marks, and by the ruler's line, hold an end piece
// as GEOS grows it by the seam; and of a rectangle 4 in long the marks are those that were worked out.
func TestJudgeGeosEndPieces(t *testing.T) {
	judged := 0
	for _, n := range everyTop(120) {
		p := planned(n.Top, Options{})
		for i := range p.Lines {
			line := &p.Lines[i]
			piece := &line.Piece
			if piece.Slanted == nil || len(p.Faults) > 0 {
				continue
			}
			judged++
			grown, err := geos.Buffer(polygonOf(n.Patches[line.Patches[0]].Outline), inches(p.Seam), geos.BufferJoinStyleMitre(10))
			if err != nil {
				t.Fatal(err)
			}
			wide, narrow := parallelEdges(grown)
			if off := wide - inches(piece.WideCut-piece.TrimCut); math.Abs(off) > 1e-5 {
				t.Errorf("%s: the longer edge needs %.4f in, the plan reckons with %.4f", n.name, wide, wide-off)
			}
			mark, other := inches(piece.Slanted.WideMark), inches(piece.Slanted.NarrowMark)
			along, high := inches(piece.AlongCut), inches(piece.AcrossCut)
			fromPoint := inches(piece.Slanted.RulerLine) - inches(p.Seam) + inches(p.Seam)/math.Sin(math.Pi/8) // from where the ruler's sides would meet
			for name, cut := range map[string][2]float64{"marks": {mark, other}, "ruler": {fromPoint * math.Tan(math.Pi/8), (fromPoint - high) * math.Tan(math.Pi/8)}} {
				for half, edges := range [2][2]float64{cut, {along - cut[1], along - cut[0]}} {
					if edges[0] < wide-1e-5 || edges[1] < narrow-1e-5 {
						t.Errorf("%s, %s, half %d: cut %.4f and %.4f, needs %.4f and %.4f", n.name, name, half, edges[0], edges[1], wide, narrow)
					}
				}
			}
			if n.name == "jetty" {
				for what, c := range map[string][2]float64{"needs, wide": {wide, 3.007}, "needs, narrow": {narrow, 0.936}, "split, wide": {inches(piece.WideCut), 3.036}, "split, narrow": {inches(piece.NarrowCut), 0.964}, "first mark": {mark, 3.03125}, "second mark": {other, 0.96875}} {
					near(t, "jetty, "+what, c[0], c[1], 3)
				}
			}
		}
	}
	if judged == 0 {
		t.Error("no end pieces")
	}
}

// parallelEdges are the longer and the shorter edge of a half tumbler between its square end and its slanted side.
func parallelEdges(g geom.Geometry) (wide, narrow float64) {
	seq := g.MustAsPolygon().ExteriorRing().Coordinates()
	narrow = math.Inf(1)
	for i := range seq.Length() - 1 {
		d := seq.GetXY(i + 1).Sub(seq.GetXY(i))
		if upright := math.Abs(d.X) < 1e-6; upright { // columns run down, so do the parallel edges
			wide, narrow = math.Max(wide, math.Abs(d.Y)), math.Min(narrow, math.Abs(d.Y))
		}
	}
	return wide, narrow
}
