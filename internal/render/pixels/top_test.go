package pixels

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"strings"
	"testing"
)

// webs is a field of web blocks in wedges of three bands, with two borders.
func webs(columns, rows int) string {
	var b strings.Builder
	fmt.Fprintln(&b, "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83")
	fmt.Fprintln(&b, "strip-set shore rust 1 3/4 cream 1 1/2 teal 1 3/4\nwebs shore / reversed shore")
	fmt.Fprintln(&b, "block W web kites cream\ngrid")
	for range rows {
		fmt.Fprintln(&b, " "+strings.Repeat(" W", columns))
	}
	fmt.Fprintln(&b, "border 1 1/2 rust\nborder 4 navy")
	return b.String()
}

func BenchmarkSquintOfKingSize(b *testing.B) {
	top := lay.Top(b, webs(24, 24))
	size, err := SizeOf(top, 1600)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Squinting(top, size, Squint{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSquintOfLapQuilt(b *testing.B) {
	top := lay.Top(b, webs(6, 6))
	size, err := SizeOf(top, 1600)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Squinting(top, size, Squint{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPaintOfKingSize(b *testing.B) {
	top := lay.Top(b, webs(24, 24))
	size, err := SizeOf(top, 1600)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Paint(top, size, own(top))
	}
}
