package quilt_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/laws"
	"eighthturn/layout"
)

// FuzzLay: whatever layout can be read can be laid, and its top holds all laws. The text is
// laid as it is; where there is none, a layout is made up from the seed.
func FuzzLay(f *testing.F) {
	for seed := range uint64(20) {
		f.Add(seed, []byte(nil))
		f.Add(seed, []byte(invent.Layout(seed)))
	}
	for _, text := range invent.Printed() {
		f.Add(uint64(0), []byte(text))
	}
	files, _ := filepath.Glob("../../samples/*.quilt")
	for _, file := range files {
		if text, err := os.ReadFile(file); err == nil {
			f.Add(uint64(0), text)
		}
	}
	f.Fuzz(func(t *testing.T, seed uint64, text []byte) {
		if len(text) == 0 {
			text = []byte(invent.Layout(seed))
		}
		d, _, _ := layout.ReadWith(string(text), invent.Photo)
		if d == nil || d.Columns*d.Rows > 400 {
			return
		}
		if err := laws.Check(quilt.Lay(d)); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	})
}

// BenchmarkLay lays out fields of so many blocks a side whose wedges have three bands each.
func BenchmarkLay(b *testing.B) {
	kind := ""
	for _, k := range blocks.Kinds() {
		if k.Turning == blocks.OnWebCentres {
			kind = k.Name
			break
		}
	}
	for _, n := range []int{8, 24, 72, 100} {
		b.Run(fmt.Sprintf("%dx%d", n, n), func(b *testing.B) {
			row := " " + strings.Repeat(" A", n) + "\n"
			d, _, faults := layout.Read("strip 4\nfabric a #123\nfabric b #dde\nstrip-set s a 1 3/4 b 1 1/2 a 1 3/4\nwebs s / reversed s\nblock A " + kind + " kites b\ngrid\n" + strings.Repeat(row, n) + "border 2 a\n")
			if d == nil {
				b.Fatal(faults)
			}
			b.ReportAllocs()
			patches := 0
			for b.Loop() {
				patches = len(quilt.Lay(d).Patches)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(patches), "ns/patch")
		})
	}
}
