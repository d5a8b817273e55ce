package render

import (
	"eighthturn/internal/document"
	"fmt"
	"testing"
)

// long is a document of about thirty pages with forty figures.
func long() document.Document {
	d := sample()
	for i := range 36 {
		blocks := []document.Block{document.Heading{Level: 1, Text: fmt.Sprintf("Block %d", i+1)}, document.Figure{Of: strip(10 + i%5)}, document.Paragraph{Text: document.Plain("Cut the strips first.")}, document.List{Marker: document.Numbered, Items: steps().Items[2:]}}
		if i%12 == 0 {
			blocks = append(append(blocks, cuts()), beginning()...)
		}
		d.Sections = append(d.Sections, document.Section{Title: fmt.Sprintf("Part %d", i+1), Blocks: blocks})
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
		if _, err := Markdown(d, "long", Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
