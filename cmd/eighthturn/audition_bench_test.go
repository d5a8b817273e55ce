package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// BenchmarkAuditions has nine auditions of a king-size quilt drawn, and in turn nine pictures with nine studies, by the program as it
// is released, and says what part of the processor's time the first takes of the second. The aim is a third at most.
func BenchmarkAuditions(b *testing.B) {
	folder := b.TempDir()
	row := func(sides, middle string) string {
		return " " + sides + strings.Repeat(" "+middle, 16) + " " + sides + "\n"
	}
	layout := filepath.Join(folder, "king.quilt")
	text := "strip 4\nfabric chalk #f4ecdc\nfabric plum #452a40\nfabric honey #e3b060\nfabric rose #ac4a5e\n" +
		"strip-set glow plum 1 3/4 honey 1 1/4 rose 2\nwebs glow / reversed glow\nblock W web kites chalk\nblock F floating background chalk\ngrid\n" +
		row("F", "F") + strings.Repeat(row("F", "W"), 16) + row("F", "F") + "border 1 rose\nborder 3 plum\n"
	if err := os.WriteFile(layout, []byte(text), 0o600); err != nil {
		b.Fatal(err)
	}
	program := released(b, ".", filepath.Join(folder, "eighthturn"))
	colors := []string{"#111122", "#332211", "#556677", "#778899", "#99aabb", "#bbaacc", "#ddeeff", "#7a2f16", "#3f5a4c"}
	for _, ending := range []string{pixelsEnding, pictureEnding} {
		b.Run(ending[1:], func(b *testing.B) {
			var sheet, nine float64
			for b.Loop() {
				sheet += float64(processorTime(b, program, append(append([]string{"audition", layout, "honey"}, colors...), "--force", "-o", filepath.Join(folder, "sheet"+ending))...))
				for _, color := range colors {
					nine += float64(processorTime(b, program, "draw", layout, "--try", "honey="+color, "--force", "-o", filepath.Join(folder, "one"+ending)))
					nine += float64(processorTime(b, program, "values", layout, "--try", "honey="+color))
				}
			}
			b.ReportMetric(sheet/nine, "of-nine-runs")
		})
	}
}
