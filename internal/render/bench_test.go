package render

import (
	"fmt"
	"testing"
)

// long is a document of about thirty pages with forty figures.
func long() Document {
	d := sample()
	for i := range 36 {
		blocks := []Block{Heading{1, fmt.Sprintf("Block %d", i+1)}, Figure{Of: strip(10 + i%5)}, Paragraph{Plain("Cut the strips first.")}, List{Marker: Number, Items: steps().Items[2:]}}
		if i%12 == 0 {
			blocks = append(append(blocks, cuts()), beginning()...)
		}
		d.Parts = append(d.Parts, Part{Title: fmt.Sprintf("Part %d", i+1), Blocks: blocks})
	}
	return d
}

func BenchmarkPDF(b *testing.B) {
	d := long()
	var pages int
	for b.Loop() {
		printed, err := PDF(d, Options{})
		if err != nil {
			b.Fatal(err)
		}
		pages = printed.Pages
	}
	b.ReportMetric(float64(pages), "pages")
}

func BenchmarkHTML(b *testing.B) {
	d := long()
	for b.Loop() {
		if _, err := HTML(d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMarkdown(b *testing.B) {
	d := long()
	for b.Loop() {
		if _, err := Markdown(d, "long"); err != nil {
			b.Fatal(err)
		}
	}
}
