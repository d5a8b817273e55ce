package quilt_test

import (
	"fmt"
	"runtime/debug"
	"slices"
	"testing"
	"time"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// BenchmarkPatch lays fields of growing size in turn, so that they meet the same machine, each once as in a program that has
// just begun (no memory is there yet: what is written first must be got first) and once more with the memory at hand. It
// reports the median time of a patch for each: a patch of a large top is to cost no more than one of a small.
func BenchmarkPatch(b *testing.B) {
	for block, most := range map[string]int{"web wedges a b kites b": 158, "ring wedges a b corners b": 111, "web wedges s kites b\nstrip-set s a 1 3/4 b 1 1/2 a 1 3/4": 100} {
		b.Run(block, func(b *testing.B) {
			sizes := []int{24, 72, most}
			designs := make([]*layout.Design, len(sizes))
			for i, n := range sizes {
				text := fmt.Sprintf("strip 4\nfabric a #123\nfabric b #dde\nblock A %s\ngrid\n A\nrepeat across %d down %d\n", block, n, n)
				if designs[i], _, _ = layout.Read(text); designs[i] == nil {
					b.Fatal(text)
				}
			}
			times := map[string][]float64{}
			for b.Loop() {
				for i, d := range designs {
					debug.FreeOSMemory()
					for _, state := range []string{"first", "again"} {
						began := time.Now()
						top := quilt.Lay(d)
						key := fmt.Sprintf("ns/patch-%dx%d-%s", sizes[i], sizes[i], state)
						times[key] = append(times[key], float64(time.Since(began).Nanoseconds())/float64(len(top.Patches)))
					}
				}
			}
			for key, list := range times {
				slices.Sort(list)
				b.ReportMetric(list[len(list)/2], key)
			}
		})
	}
}
