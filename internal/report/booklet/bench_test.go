package booklet

import (
	"eighthturn/internal/quilttest/lay"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
)

// The whole pattern of a lap quilt: studies, document, pages.
func BenchmarkLapQuilt(b *testing.B) {
	top := lay.Top(b, sampleText(b, "lanterns"))
	for b.Loop() {
		r := Study(top, cutting.Options{})
		if _, err := render.PDF(Pattern(r, Options{}), render.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// The same without the studies.
func BenchmarkDocument(b *testing.B) {
	r := Study(lay.Top(b, sampleText(b, "lanterns")), cutting.Options{})
	for b.Loop() {
		Pattern(r, Options{})
	}
}
