package preview

import (
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// BenchmarkParts measures what a save costs inside the program, part by part.
func BenchmarkParts(b *testing.B) {
	text := quiltOf(58, 58, false)
	design, source, _ := layout.Read(text)
	top := quilt.Lay(design)
	numbers := newNumbering(1)
	base := newPicture(top, source, numbers)
	b.Run("read", func(b *testing.B) {
		for b.Loop() {
			layout.Read(text)
		}
	})
	b.Run("lay", func(b *testing.B) {
		for b.Loop() {
			quilt.Lay(design)
		}
	})
	b.Run("picture", func(b *testing.B) {
		for b.Loop() {
			newPicture(top, source, numbers)
		}
	})
	b.Run("message-whole", func(b *testing.B) {
		for b.Loop() {
			m := message{}
			base.fill(&m, nil)
			b.SetBytes(int64(len(encoded(&m))))
		}
	})
	b.Run("alike", func(b *testing.B) {
		again := quilt.Lay(design)
		for b.Loop() {
			alike(top, again)
		}
	})
	b.Run("page-numbers", func(b *testing.B) {
		for b.Loop() {
			base.pageNumbers(nil)
		}
	})
	b.Run("reports", func(b *testing.B) {
		for b.Loop() {
			b.ReportMetric(float64(len(newStudy(base, &studies{}).tab(nil, 0).sent)), "sent-bytes")
		}
	})
	b.Run("squint", func(b *testing.B) {
		for b.Loop() {
			png, err := base.squint(nil)
			must(b, err)
			b.ReportMetric(float64(len(png)), "sent-bytes")
		}
	})
	b.Run("message-colour", func(b *testing.B) {
		next := newPicture(top, source, numbers)
		next.fabrics = encoded("other")
		for b.Loop() {
			m := message{}
			next.fill(&m, base)
			b.SetBytes(int64(len(encoded(&m))))
		}
	})
}
