package booklet

import (
	"fmt"
	"testing"

	"eighthturn/internal/quilt"
)

// A pattern of many pieces or of many blocks is long; that of a large quilt for a bed is not.
func TestCost(t *testing.T) {
	top := func(pieces, labels int) *quilt.Top {
		top := &quilt.Top{Faces: make([]quilt.Face, pieces), Cells: make([]quilt.Cell, 1+2*labels)}
		for i := range 2 * labels {
			top.Cells[i].Label = fmt.Sprint(i / 2)
		}
		return top
	}
	for _, c := range []struct {
		pieces, labels int
		long           bool
		seconds        int
	}{{6_000, 12, false, 0}, {79_000, 5, false, 1}, {150_000, 1, true, 3}, {20_000, 490, true, 4}, {120_000, 490, true, 7}} {
		got := CostOf(top(c.pieces, c.labels))
		if got.Long() != c.long || got.Seconds != c.seconds || got.Blocks != c.labels {
			t.Errorf("%d pieces in %d blocks: %+v", c.pieces, c.labels, got)
		}
	}
}
