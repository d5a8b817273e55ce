package report

import (
	"fmt"
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// The law of maps: pieces lie inside the cloth and do not overlap, as an independent library of geometry sees it
// (github.com/peterstace/simplefeatures). What it is shown is read off the map that people see.

// polygonOf is an outline in inches for the library.
func polygonOf(o []measure.Point) geom.Geometry {
	ring := make([]float64, 0, 2*len(o)+2)
	for i := range len(o) + 1 {
		p := o[i%len(o)]
		ring = append(ring, float64(p.X)/float64(measure.Inch), float64(p.Y)/float64(measure.Inch))
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(ring, geom.DimXY))}).AsGeometry()
}

// touching is how much of an inch pieces may share: what a nanometre along their longest side comes to.
const touching = 1e-5 // square inches

// isUnused says whether a mark is a stripe of cloth on which pieces lie: it stands for no line of the plan and has no edge.
func isUnused(m *diagram.Mark) bool {
	return m.Area != nil && m.Lit == nil && m.Area.Edge == diagram.NoStroke
}

// badMap says what is wrong with a map.
func badMap(f *diagram.Figure) error {
	type placed struct {
		shape geom.Geometry
		box   geom.Envelope
	}
	cloth := polygonOf([]measure.Point{f.Min, {X: f.Max.X, Y: f.Min.Y}, f.Max, {X: f.Min.X, Y: f.Max.Y}})
	var list []placed
	for _, m := range f.Marks {
		if m.Area == nil || m.Area.Clear || isUnused(&m) {
			continue
		}
		shape := polygonOf(m.Area.Outline)
		if err := shape.Validate(); err != nil {
			return fmt.Errorf("an outline that is none: %w", err)
		}
		inside, err := geom.Intersection(shape, cloth)
		if err != nil {
			return err
		}
		if math.Abs(inside.Area()-shape.Area()) > touching {
			return fmt.Errorf("%s lies beyond the cloth", shape.AsText())
		}
		box := shape.Envelope()
		for _, other := range list {
			if !box.Intersects(other.box) {
				continue
			}
			if both, err := geom.Intersection(shape, other.shape); err != nil || both.Area() > touching {
				return fmt.Errorf("%s overlaps %s: %v", shape.AsText(), other.shape.AsText(), err)
			}
		}
		list = append(list, placed{shape, box})
	}
	if len(list) == 0 {
		return fmt.Errorf("nothing lies on it")
	}
	return nil
}

func TestMaps(t *testing.T) {
	maps := 0
	for _, n := range usualPlans() {
		for _, m := range CuttingMaps(n.Plans) {
			maps++
			if len(m.Figure.Marks) > judges.Of(100, 1500) {
				continue // the library takes long
			}
			if err := badMap(m.Figure); err != nil {
				t.Fatalf("%s, map of %s: %v", n.name, m.Name, err)
			}
		}
	}
	if maps < judges.Of(100, 300) {
		t.Errorf("only %d maps", maps)
	}
}

// TestMapsCatch: a piece moved by a sixteenth of an inch is found, and one beyond the cloth.
func TestMapsCatch(t *testing.T) {
	for _, n := range usualPlans()[:len(samples.All())] {
		for _, m := range CuttingMaps(n.Plans) {
			if m.Set {
				continue
			}
			areas := 0
			for i := range m.Figure.Marks {
				a := m.Figure.Marks[i].Area
				if a == nil || a.Clear || isUnused(&m.Figure.Marks[i]) {
					continue
				}
				if areas++; areas > 3 {
					break
				}
				for j := range a.Outline {
					a.Outline[j].X += measure.Inch / 16
				}
				if last := a.Outline[1].X > m.Figure.Max.X; badMap(m.Figure) == nil && (last || overlapsNext(m.Figure, i)) {
					t.Errorf("%s, %s: a piece was moved and not missed", n.name, m.Name)
				}
				for j := range a.Outline {
					a.Outline[j].X -= measure.Inch / 16
				}
			}
		}
	}
}

// overlapsNext says whether an area was moved over the one drawn after it.
func overlapsNext(f *diagram.Figure, i int) bool {
	if i+1 == len(f.Marks) || f.Marks[i+1].Area == nil || f.Marks[i+1].Area.Clear {
		return false
	}
	a, b := f.Marks[i].Area.Outline, f.Marks[i+1].Area.Outline
	return a[0].Y == b[0].Y && a[1].X > b[0].X && a[2].X > b[3].X
}
