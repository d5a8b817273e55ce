package quilt_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/laws"
)

// polygon is an outline for the geometry library, in nanometres, y downwards.
func polygon(outline []measure.Point) geom.Geometry {
	ring := make([]float64, 0, 2*len(outline)+2)
	for _, p := range append(outline[:len(outline):len(outline)], outline[0]) {
		ring = append(ring, float64(p.X), float64(p.Y))
	}
	line := geom.NewLineString(geom.NewSequence(ring, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{line}).AsGeometry()
}

// TestJudgeUnion holds the patches of samples and of some invented layouts against a
// geometry library, github.com/peterstace/simplefeatures: each outline is a valid polygon,
// the union of all has the area of the top less its empty cells, the areas add up to it, and no
// two polygons overlap.
func TestJudgeUnion(t *testing.T) {
	for name, top := range judged(t) {
		if err := union(top); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// judged is the tops that the library is asked about: those that it can do in a moment.
func judged(t *testing.T) map[string]*quilt.Top {
	tops := map[string]*quilt.Top{}
	files, _ := filepath.Glob("../../samples/*.quilt")
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if top := lay(t, string(text)); len(top.Patches) < 600 {
			tops[file] = top
		}
	}
	for seed := uint64(0); len(tops) < len(files)+judges.Of(3, 8); seed++ {
		if top := lay(t, invent.Layout(seed)); len(top.Patches) > 40 && len(top.Patches) < 600 {
			tops[fmt.Sprintf("seed %d", seed)] = top
		}
	}
	return tops
}

func union(top *quilt.Top) error {
	list := make([]geom.Geometry, len(top.Patches))
	sum := 0.0
	for i := range top.Patches {
		list[i] = polygon(top.Patches[i].Outline)
		if err := list[i].Validate(); err != nil {
			return fmt.Errorf("patch %d: %w", i, err)
		}
		sum += list[i].Area()
	}
	all, err := geom.UnionMany(list)
	if err != nil {
		return err
	}
	want := float64(top.Outer.Width()) * float64(top.Outer.Height())
	for i := range top.Cells {
		if top.Cells[i].Label == "" {
			r := laws.CellRect(top, i)
			want -= float64(r.Width()) * float64(r.Height())
		}
	}
	if math.Abs(all.Area()/want-1) > 1e-12 || math.Abs(sum/want-1) > 1e-12 {
		return fmt.Errorf("the union covers %v, the patches %v, the top has %v", all.Area(), sum, want)
	}
	return overlaps(top, list)
}

// overlaps asks the library about all pairs whose rectangles meet.
func overlaps(top *quilt.Top, list []geom.Geometry) error {
	for i := range list {
		for j := range i {
			if !list[i].Envelope().Intersects(list[j].Envelope()) {
				continue
			}
			pattern, err := geom.Relate(list[i], list[j])
			if err != nil {
				return err
			}
			if pattern[0] != 'F' { // interiors meet
				return fmt.Errorf("patches %d and %d overlap: %v, %v", j, i, top.Patches[j].Outline, top.Patches[i].Outline)
			}
		}
	}
	return nil
}

// TestJudgeUnionNotices: the library sees a corner that is moved by a thousandth of an inch,
// inwards and outwards, and a patch less.
func TestJudgeUnionNotices(t *testing.T) {
	text := "side 6\nfabric a #123\nblock R ring wedges a corners a\nblock W web wedges a kites a\ngrid\n R W\n W R\n"
	for _, by := range []measure.NM{-measure.Inch / 1000, measure.Inch / 1000} {
		top := lay(t, text)
		top.Patches[0].Outline[1].X += by
		if union(top) == nil {
			t.Errorf("nobody noticed a corner moved by %d nm", by)
		}
	}
	top := lay(t, text)
	top.Patches = top.Patches[1:]
	if union(top) == nil {
		t.Error("nobody noticed a patch less")
	}
}
