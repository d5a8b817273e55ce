//go:build unix

package quilt_test

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"slices"
	"syscall"
	"testing"
	"time"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// BenchmarkPatch lays fields of growing size in turn, so that they meet the same machine: each once as in a program that has
// just begun (no memory is there yet: what is written first must be got first), and again with the memory at hand, the small
// ones as often as gives as many patches as the largest, and no garbage collected between them. It reports the median processor
// time of a patch for each, and how much of it a patch of the largest takes beside one of the smallest: it is to cost no more.
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
					for _, state := range []string{"first", "again"} {
						times[state+fmt.Sprint(sizes[i])] = append(times[state+fmt.Sprint(sizes[i])], patchTime(d, state, most*most/sizes[i]/sizes[i]))
					}
				}
			}
			for _, state := range []string{"first", "again"} {
				for _, n := range sizes {
					b.ReportMetric(median(times[state+fmt.Sprint(n)]), fmt.Sprintf("ns/patch-%dx%d-%s", n, n, state))
				}
				b.ReportMetric(median(times[state+fmt.Sprint(most)])/median(times[state+"24"]), "times-"+state)
			}
		})
	}
}

// patchTime is the processor time, in nanoseconds, that a patch of a design takes.
func patchTime(d *layout.Design, state string, again int) float64 {
	if state == "first" {
		debug.FreeOSMemory()
		again = 1
	} else {
		defer debug.SetGCPercent(debug.SetGCPercent(-1))
		for range again { // which gets as much memory
			quilt.Lay(d)
		}
		runtime.GC()
	}
	began, patches := processorTime(), 0
	for range again {
		patches += len(quilt.Lay(d).Patches)
	}
	return float64((processorTime() - began).Nanoseconds()) / float64(patches)
}

// processorTime is what the program has taken of all processors.
func processorTime() time.Duration {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return 0
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

func median(list []float64) float64 {
	slices.Sort(list)
	return list[len(list)/2]
}
