//go:build judges

package report

import (
	"math"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/palettes"
	"eighthturn/samples"
)

// TestJudgeGeosMaps: GEOS finds as little wrong with maps as the other library.
func TestJudgeGeosMaps(t *testing.T) {
	for _, n := range usualPlans()[:len(samples.All())] {
		striped := map[string][]palettes.Colour{} // pale
		for _, f := range n.Plans.Top.Fabrics {
			if f.Cloth != nil && f.Cloth.Stripes != nil {
				for _, s := range f.Cloth.Stripes.List {
					striped[f.Name] = append(striped[f.Name], pale(s.Colour))
				}
			}
		}
		for _, m := range CuttingMaps(n.Plans) {
			if m.Set {
				continue
			}
			var list []geom.Geometry
			sum := 0.0
			for _, k := range m.Figure.Marks {
				if k.Area != nil && k.Lit == nil && slices.Contains(striped[m.Name], k.Area.Fill) {
					continue // the cloth that is not used, on which pieces lie
				}
				if k.Area != nil && !k.Area.Clear {
					list = append(list, polygonOf(k.Area.Outline))
					sum += list[len(list)-1].Area()
				}
			}
			union, err := geos.UnaryUnion(geom.NewGeometryCollection(list).AsGeometry())
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(union.Area()-sum) > 1e-3 {
				t.Errorf("%s, %s: pieces of %.4f square inches cover %.4f", n.name, m.Name, sum, union.Area())
			}
		}
	}
}
