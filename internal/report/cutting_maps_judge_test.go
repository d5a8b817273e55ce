//go:build judges

package report

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/samples"
)

// TestJudgeGeosMaps: GEOS finds as little wrong with maps as the other library.
func TestJudgeGeosMaps(t *testing.T) {
	for _, n := range usualPlans()[:len(samples.All())] {
		for _, m := range CuttingMaps(n.Plans) {
			if m.Set {
				continue
			}
			var list []geom.Geometry
			sum := 0.0
			for _, k := range m.Figure.Marks {
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
