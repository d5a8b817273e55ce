package sewing_test

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// gridText is a layout of one block, so many across and down, with a border.
func gridText(block string, across, down int) string {
	return "strip 4\nfabric a #112233\nfabric b #eeeeee\nfabric c #a04030\nstrip-set s a 2 c rest\n" + block +
		"\ngrid\n  A\nrepeat across " + fmt.Sprint(across) + " down " + fmt.Sprint(down) + "\nborder 2 a\n"
}

// BenchmarkPlan plans fields of one block. 18 by 20 is a king-size quilt of 5 1/2 inch blocks.
func BenchmarkPlan(b *testing.B) {
	for _, block := range []string{"block A web kites b wedges s", "block A ring wedges s b corners c", "block A floating-star kites b wedges s background c"} {
		kind := strings.Fields(block)[2]
		for _, size := range [][2]int{{18, 20}, {50, 50}, {100, 100}, {150, 150}} {
			b.Run(fmt.Sprintf("%s/%dx%d", kind, size[0], size[1]), func(b *testing.B) {
				top := lay.Top(b, gridText(block, size[0], size[1]))
				for b.Loop() {
					planOf(top, sewing.Options{})
				}
			})
		}
	}
}

// planOf is how a top is sewn that is cut in the usual way.
func planOf(top *quilt.Top, o sewing.Options) *sewing.Plan {
	return sewing.Build(nil, top, cutting.Pieces(top, cutting.Options{}), o)
}
