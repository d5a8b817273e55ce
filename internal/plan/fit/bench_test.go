package fit

import (
	"fmt"
	"strings"
	"testing"
)

// lanterns of a size: floating blocks round webs, every row written.
func lanterns(columns, rows int) string {
	var b strings.Builder
	b.WriteString("strip 2\nfabric chalk #f4ecdc\nfabric plum #452a40\nfabric honey #e3b060\nstrip-set glow plum 1 1/4 honey 1 1/4\nwebs glow / reversed glow\nblock W web kites chalk\nblock F floating background chalk\ngrid\n")
	for y := range rows {
		for x := range columns {
			label := " W"
			if x == 0 || y == 0 || x == columns-1 || y == rows-1 {
				label = " F"
			}
			b.WriteString(label)
		}
		b.WriteByte('\n')
	}
	b.WriteString("border 1 plum\nborder 4 honey\n")
	return b.String()
}

// Growth by the number of blocks, for a top of the same size as the layout.
func BenchmarkFit(b *testing.B) {
	for _, n := range []int{10, 20, 40, 80, 120} {
		text := lanterns(n, n)
		side := int64(float64(n)*2.2961 + 10) // a strip of 2 in makes blocks of 2.2961 in
		b.Run(fmt.Sprintf("blocks=%d", n*n), func(b *testing.B) {
			for b.Loop() {
				r, err := Fit(text, Options{Wanted: inches(side, side)})
				if err != nil || len(r.Suggestions) == 0 {
					b.Fatal(err)
				}
			}
		})
	}
}
