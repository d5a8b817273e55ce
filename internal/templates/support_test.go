package templates

import (
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
)

// inventedTops are tops of layouts made up by number.
func inventedTops(t testing.TB, most int) []*quilt.Top {
	t.Helper()
	var list []*quilt.Top
	for seed := range uint64(most) {
		if d, _, _ := layout.Read(invent.Layout(seed)); d != nil {
			list = append(list, quilt.Lay(d))
		}
	}
	if len(list) < most/2 {
		t.Fatalf("only %d layouts of %d were laid", len(list), most)
	}
	return list
}

func points(outline []measure.Point) []xy {
	list := make([]xy, len(outline))
	for i, p := range outline {
		list[i] = xy{float64(p.X), float64(p.Y)}
	}
	return list
}
