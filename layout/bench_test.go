package layout_test

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/layout"
)

// harbor is a quilt of so many blocks across and down: a field of webs cut from a strip set
// within a frame of floating blocks, and two borders.
func harbor(side int) string {
	var b strings.Builder
	b.WriteString(`title "Harbor lanterns"
strip 4
fabric cream #f4ead7 "cream crackle"
fabric navy #1f3350
fabric rust #b5532a
fabric teal #2f7d83 on-hand 1 1/2 yd
strip-set shore rust 1 3/4 cream 1 1/2 teal 1 3/4
webs shore / reversed shore
block W web kites cream
block F floating background cream
grid
`)
	edge := "  " + strings.Repeat("F ", side) + "\n"
	b.WriteString(edge)
	for range side - 2 {
		b.WriteString("  F " + strings.Repeat("W ", side-2) + "F\n")
	}
	b.WriteString(edge)
	b.WriteString("border 1 1/2 rust\nborder 4 cream\nbinding 2 1/2 cut navy\n")
	return b.String()
}

// draughtboard is a quilt of webs by two kinds of block set in turn, with a fabric for each
// end, which asks most of the search for mixed webs.
func draughtboard(side int) string {
	var b strings.Builder
	b.WriteString("side 6\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\n" +
		"block A web wedges navy rust kites cream\nblock B web wedges rust navy kites cream navy\nblock C plain piece cream\ngrid\n")
	for y := range side {
		for x := range side {
			b.WriteString(" " + string("ABC"[(x+y)%2+(x*y%7)/6]))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

var sides = []int{8, 24, 72, 150}

// BenchmarkRead measures reading by the number of blocks; the nanoseconds of a block must
// not grow with it. Those of work are the thread's own, whatever else the machine does.
func BenchmarkRead(b *testing.B) {
	for name, make := range map[string]func(int) string{"webs": harbor, "mixed": draughtboard} {
		for _, side := range sides {
			b.Run(fmt.Sprintf("%s/%dx%d", name, side, side), func(b *testing.B) {
				text := make(side)
				b.ReportAllocs()
				work := worked(func() {
					for b.Loop() {
						if design, source, list := layout.Read(text); design == nil {
							b.Fatal(layout.Report(b.Output(), "a.quilt", source, list))
						}
					}
				})
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(side*side), "ns/block")
				b.ReportMetric(float64(work)/float64(b.N)/float64(side*side), "work-ns/block")
			})
		}
	}
}

// BenchmarkTidy measures tidying by the number of blocks.
func BenchmarkTidy(b *testing.B) {
	for _, side := range sides {
		b.Run(fmt.Sprintf("%dx%d", side, side), func(b *testing.B) {
			text := harbor(side)
			b.ReportAllocs()
			for b.Loop() {
				layout.Tidy(text)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(side*side), "ns/block")
		})
	}
}

// BenchmarkReadSmall measures what every read costs however small the layout is.
func BenchmarkReadSmall(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		layout.Read(small)
	}
}
