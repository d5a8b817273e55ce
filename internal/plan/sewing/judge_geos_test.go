//go:build judges

package sewing_test

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/internal/blocks"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// These tests ask GEOS, a geometry library in C++, through
// github.com/peterstace/simplefeatures/geos. They need it installed (Debian: libgeos-dev)
// and the build tag judges.

// grownBy is the patches of a part as they are cut, corners sharp, as GEOS sees them.
func grownBy(t *testing.T, top *quilt.Top, patches []int, q float64) geom.Geometry {
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
			top := lay.Top(t, seam+oneBlock(k.Name, "strip 4", map[bool]string{true: "line 6"}[k.Column]))
			p := planOf(top, sewing.Options{})
			at := p.Blocks[0].Variants[0].Cells[0]
			r := newReplay(top, p)
			for _, s := range p.Blocks[0].Steps {
				for _, j := range s.Joins {
					from, to := xyOf(r.onTop(&p.Blocks[0], at, j.From)), xyOf(r.onTop(&p.Blocks[0], at, j.To))
					for part, pieces := range [2][]int{j.A, j.B} {
						g := grownBy(t, top, p.Patches(at.Cell, pieces), inches(top.Seam))
						for e, ends := range [2][2]geom.XY{{to, from}, {from, to}} {
							end := &j.Ends[e]
							what := fmt.Sprintf("%s: %s, join %d, end %d, part %d", k.Name, s.Name, j.Number, e, part)
							flat := end.Blunted[part] || isTip(top, ends[1]) && end.Reach[part] != sewing.Reach(end.Degrees[part], top.Seam)
							want := inches(end.Reach[part])
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
		top := lay.Top(t, oneBlock(k.Name, "strip 4", ""))
		p := planOf(top, sewing.Options{})
		cell := p.Blocks[0].Variants[0].Cells[0].Cell
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
			about(t, k.Name+": "+s.Name+" across", across, inches(s.Unfinished.Across), 1e-6)
			about(t, k.Name+": "+s.Name+" down", down, inches(s.Unfinished.Down), 1e-6)
		}
	}
}

// columnEnd is what a column's seam does at its end that lies higher, or lower: by how much
// the lower piece's cut corner leads the upper one's, inches.
func columnEnd(t *testing.T, top *quilt.Top, upper, lower int, seam [2]geom.XY) float64 {
	t.Helper()
	const degrees = 0 // nothing of a tumbler is cut off flat
	q := inches(top.Seam)
	below := farthestAlong(t, grownBy(t, top, []int{lower}, q), seam, degrees, q, false)
	return below - farthestAlong(t, grownBy(t, top, []int{upper}, q), seam, degrees, q, false)
}

// TestJudgeGeosColumnSeams: at every slanted seam of a column, those of its end pieces too and
// in columns of both hands, GEOS's cut outlines lead each other by what the step says: the
// lower piece's where the seam ends higher up, the upper piece's where it ends lower down.
func TestJudgeGeosColumnSeams(t *testing.T) {
	top := lay.Top(t, "side 5\nfabric a #112233\nfabric b #eeeeee\nblock T tumblers pieces a b about 4\ngrid\n T T\n T T\n T T\n")
	p := planOf(top, sewing.Options{})
	b := &p.Blocks[0]
	end := &b.Steps[0].Joins[0].Ends
	want := math.Abs(inches(end[0].LeadBlunt))
	hands := map[string]bool{}
	for _, c := range b.Variants {
		hands[c.Leans] = true
		list := c.Cells[0].Patches
		for i := 1; i < len(list); i++ {
			upper, lower := top.Patches[list[i-1]].Outline, top.Patches[list[i]].Outline // from the upper left corner, clockwise
			high, low := xyOf(lower[0]), xyOf(lower[1])
			if upper[3] != lower[0] || upper[2] != lower[1] {
				t.Fatalf("pieces %d and %d do not lie on each other", i-1, i)
			}
			if high.Y > low.Y {
				high, low = low, high
			}
			what := fmt.Sprintf("leaning %s, seam %d", c.Leans, i)
			about(t, what+", higher", columnEnd(t, top, int(list[i-1]), int(list[i]), [2]geom.XY{low, high}), want, 1e-6)
			about(t, what+", lower", columnEnd(t, top, int(list[i-1]), int(list[i]), [2]geom.XY{high, low}), -want, 1e-6)
		}
	}
	if len(hands) != 2 || want < 0.1 {
		t.Errorf("hands %v, offset %g", hands, want)
	}
}

// TestJudgeGeosEndPieces: the longer side of each end piece is the one that GEOS finds longer:
// of the piece cut in two down its middle, the half with more cloth.
func TestJudgeGeosEndPieces(t *testing.T) {
	seen := map[string]int{}
	for _, n := range everyPlan() {
		name, top, p := n.name, n.Top, n.plan
		for _, b := range p.Blocks {
			for _, c := range b.Variants {
				if len(c.Longer) == 0 {
					continue
				}
				list := c.Cells[0].Patches
				for i, patch := range []int32{list[0], list[len(list)-1]} {
					o := top.Patches[patch].Outline
					middle := geom.XY{X: (inches(o[0].X) + inches(o[1].X)) / 2, Y: inches(o[0].Y)}
					left, err := geos.Intersection(polygonOf(o), halfPlane(middle, geom.XY{X: -1}))
					if err != nil {
						t.Fatal(err)
					}
					side := map[bool]string{true: "left", false: "right"}[left.Area() > polygonOf(o).Area()/2]
					seen[side]++
					if c.Longer[i] != side {
						t.Fatalf("%s: end piece %d is longer on the %s, not on the %s: %v", name, i, side, c.Longer[i], o)
					}
				}
			}
		}
	}
	if len(seen) != 2 {
		t.Errorf("only one hand was seen: %v", seen)
	}
}
