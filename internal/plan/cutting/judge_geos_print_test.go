//go:build judges

package cutting

import (
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/internal/measure"
)

// apart says, by GEOS, how many square inches of pieces lie on each other, and how many beyond the cloth.
func apart(t *testing.T, f *FromPrint, cloth geom.Geometry) (over, beyond float64) {
	var all []geom.Geometry
	sum := 0.0
	for _, s := range f.Strips {
		for _, q := range s.Pieces {
			piece := polygonOf(f.CutOutline(q))
			all = append(all, piece)
			sum += piece.Area()
		}
	}
	whole, err := geos.UnaryUnion(geom.NewGeometryCollection(all).AsGeometry())
	if err != nil {
		t.Fatal(err)
	}
	out, err := geos.Difference(whole, cloth)
	if err != nil {
		t.Fatal(err)
	}
	return sum - whole.Area(), out.Area()
}

// TestJudgeGeosPrints: as GEOS reckons, pieces cut from places of a print neither overlap nor leave the cloth that is reckoned for
// them; and where one is moved on to its neighbor, that is found.
func TestJudgeGeosPrints(t *testing.T) {
	judged := 0
	for _, n := range tops().prints {
		p := planned(n.Top, Options{})
		for i := range p.Fabrics {
			f := &p.Fabrics[i]
			for k := range f.FromPrint {
				c := &f.FromPrint[k]
				if len(c.Strips) == 0 {
					continue
				}
				cloth := polygonOf(rectangle(0, c.Strips[0].Min.Y, f.UsableWidth, c.FittedCut))
				if over, beyond := apart(t, c, cloth); over > 1e-5 || beyond > 1e-5 {
					t.Fatalf("%s: %.6f square inches lie on each other, %.6f beyond the cloth", n.name, over, beyond)
				}
				judged++
				if first := c.Strips[0]; len(first.Pieces) > 1 {
					moved := *c
					moved.Strips = append([]FussyStrip{{first.Min, first.Max, first.WidthCut, append([]FussyPiece{first.Pieces[1]}, first.Pieces[1:]...)}}, c.Strips[1:]...)
					if over, _ := apart(t, &moved, cloth); over < 0.1 {
						t.Errorf("%s: a piece twice is not noticed", n.name)
					}
				}
			}
		}
	}
	if judged < 50 {
		t.Errorf("only %d were judged", judged)
	}
}

// fussyByGeos holds the cut outline of a piece from a place of a print to what GEOS grows its patch to: with round corners it holds that,
// with sharp ones it lies within it, and of no more than two tips of 45 degrees something is cut off.
func fussyByGeos(t *testing.T, n named, p *Plan, line *Line) {
	t.Helper()
	place, _ := n.Top.PlaceSaid(line.Patches[0])
	var on []measure.Point
	for _, c := range n.Top.Patches[line.Patches[0]].Outline {
		x, y := place.OnCloth(float64(c.X), float64(c.Y))
		on = append(on, measure.Point{X: measure.NM(x), Y: measure.NM(y)})
	}
	var cut geom.Geometry
	for i := range p.Fabrics[line.Fabric].FromPrint {
		if f := &p.Fabrics[line.Fabric].FromPrint[i]; slices.Contains(f.Lines, line.Number) {
			cut = polygonOf(f.Outline(line.Number))
		}
	}
	round, err := geos.Buffer(polygonOf(on), inches(p.Seam), geos.BufferJoinStyleRound())
	if err != nil {
		t.Fatal(err)
	}
	sharp, err := geos.Buffer(polygonOf(on), inches(p.Seam), geos.BufferJoinStyleMitre(10))
	if err != nil {
		t.Fatal(err)
	}
	lacks, err := geos.Difference(round, cut)
	if err != nil {
		t.Fatal(err)
	}
	beyond, err := geos.Difference(cut, sharp)
	if err != nil {
		t.Fatal(err)
	}
	if lacks.Area() > 1e-4 || beyond.Area() > 1e-4 || sharp.Area()-cut.Area() > inches(p.Seam)*inches(p.Seam)*2.2 {
		t.Fatalf("%s, line %d: of a %s %.6f square inches are lacking, %.6f too many, %.6f cut off", n.name, line.Number, line.Piece.Shape, lacks.Area(), beyond.Area(), sharp.Area()-cut.Area())
	}
}
