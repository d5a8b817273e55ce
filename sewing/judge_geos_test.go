//go:build geos

package sewing_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/blocks"
	"eighthturn/patchwork"
	"eighthturn/sewing"
)

// These tests ask GEOS, a geometry library in C++, through
// github.com/peterstace/simplefeatures/geos. They need it installed (Debian: libgeos-dev)
// and the build tag geos.

// grownBy is the patches of a part as they are cut, corners sharp, as GEOS sees them.
func grownBy(t *testing.T, top *patchwork.Top, patches []int, q float64) geom.Geometry {
	t.Helper()
	_, whole := unionOf(t, top, patches)
	g, err := geos.Buffer(whole, q, geos.BufferJoinStyleMitre(10))
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// TestJudgeGeosOffsets: by how much one part's raw corner leads the other's at each end of
// every seam within blocks, where neither is cut off flat, is what GEOS makes of the two raw
// outlines; and where a sharp corner is to be trimmed, the rest of GEOS's outline reaches as
// far as the plan says.
func TestJudgeGeosOffsets(t *testing.T) {
	for _, k := range blocks.Kinds() {
		for _, seam := range []string{"", "seam 3/8\n"} {
			top := topOf(t, seam+oneBlock(k.Name, "strip 4", map[bool]string{true: "line 6"}[k.Column]))
			p := sewing.Of(top, sewing.Options{})
			at := p.Blocks[0].Colourings[0].Cells[0]
			r := newReplay(top, p)
			for _, s := range p.Blocks[0].Steps {
				for _, j := range s.Joins {
					from, to := xyOf(r.onTop(&p.Blocks[0], at, j.From)), xyOf(r.onTop(&p.Blocks[0], at, j.To))
					for part, pieces := range [2][]int{j.A, j.B} {
						g := grownBy(t, top, p.Patches(at.Cell, pieces), inches(top.Seam))
						for e, ends := range [2][2]geom.XY{{to, from}, {from, to}} {
							end := &j.Ends[e]
							what := fmt.Sprintf("%s: %s, join %d, end %d, part %d", k.Name, s.Name, j.Number, e, part)
							flat := end.Blunted[part] || isTip(top, ends[1]) && end.Reach[part].NM != sewing.Reach(end.Degrees[part], top.Seam)
							want := inches(end.Reach[part].NM)
							if end.Blunted[part] {
								want = inches(sewing.ReachBlunt(end.Degrees[part], top.Seam))
							}
							about(t, what, farthestAlong(t, g, ends, end.Degrees[part], inches(top.Seam), flat), want, 1e-6)
						}
					}
				}
			}
		}
	}
}

// farthestAlong is how far a raw outline stands out beyond the end of a seam, along it, on its
// raw edge beside the seam; cut off flat a seam allowance beyond the corner if so asked.
func farthestAlong(t *testing.T, g geom.Geometry, ends [2]geom.XY, degrees, q float64, flat bool) float64 {
	t.Helper()
	way := ends[1].Sub(ends[0]).Scale(1 / ends[1].Sub(ends[0]).Length())
	best := math.Inf(-1)
	for _, side := range []float64{1, -1} { // the corner's own side is not known: of the two, that where the outline has a raw edge
		aside := geom.XY{X: way.Y, Y: -way.X}.Scale(side)
		cut := g
		if flat {
			half := degrees * math.Pi / 360
			middle := way.Scale(math.Cos(half)).Add(aside.Scale(math.Sin(half)))
			kept, err := geom.Intersection(g, halfPlane(ends[1].Add(middle.Scale(q)), middle.Scale(-1)))
			if err != nil {
				t.Fatal(err)
			}
			cut = kept
		}
		seq := cut.MustAsPolygon().ExteriorRing().Coordinates()
		for i := range seq.Length() {
			d := seq.GetXY(i).Sub(ends[1])
			if math.Abs(d.Dot(aside)-q) < 1e-9 && d.Length() < 1 {
				best = max(best, d.Dot(way))
			}
		}
	}
	return best
}

// halfPlane is a large square on one side of a line through a point.
func halfPlane(at, towards geom.XY) geom.Geometry {
	across := geom.XY{X: -towards.Y, Y: towards.X}
	const far = 100
	var ring []float64
	for _, p := range []geom.XY{
		at.Add(across.Scale(far)), at.Sub(across.Scale(far)), at.Sub(across.Scale(far)).Add(towards.Scale(far)), at.Add(across.Scale(far)).Add(towards.Scale(far)), at.Add(across.Scale(far)),
	} {
		ring = append(ring, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(ring, geom.DimXY))}).AsGeometry()
}

// TestJudgeGeosSizes: the unfinished size of blocks and of units without blunt corners is that
// of GEOS's raw outline.
func TestJudgeGeosSizes(t *testing.T) {
	for _, k := range blocks.Kinds() {
		if k.Column {
			continue
		}
		top := topOf(t, oneBlock(k.Name, "strip 4", ""))
		p := sewing.Of(top, sewing.Options{})
		cell := p.Blocks[0].Colourings[0].Cells[0].Cell
		for _, s := range p.Blocks[0].Steps {
			if s.Name != "block" && s.Name != "octagon" {
				continue
			}
			j := s.Joins[len(s.Joins)-1]
			g := grownBy(t, top, p.Patches(cell, slices.Concat(j.A, j.B)), inches(top.Seam))
			seq := g.MustAsPolygon().ExteriorRing().Coordinates()
			var ring []geom.XY
			for i := range seq.Length() - 1 {
				ring = append(ring, seq.GetXY(i))
			}
			across, down := smallestFit(ring, s.Unfinished)
			about(t, k.Name+": "+s.Name+" across", across, inches(s.Unfinished.Across.NM), 1e-6)
			about(t, k.Name+": "+s.Name+" down", down, inches(s.Unfinished.Down.NM), 1e-6)
		}
	}
}
