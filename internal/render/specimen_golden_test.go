package render

import (
	"archive/zip"
	"bytes"
	"eighthturn/internal/diagram"
	"eighthturn/internal/quilttest/readpdf"
	"fmt"
	"image"
	"image/png"
	"io"
	"path/filepath"
	"regexp"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/golden"
)

// What somebody has looked at: how large letters are, how far things stand apart and what stands where. The numbers are a matter of looks,
// and have no other reason; laws hold the rest.

// markLine is a mark in words, its place from the page's upper left corner, in points.
func markLine(s spot) string {
	r := s.extent()
	at := fmt.Sprintf("%.2f %.2f", s.x+r.x, s.y+r.y)
	switch m := s.mark.(type) {
	case text:
		line := fmt.Sprintf("%s text %.2f wide %.2f base %.2f", at, m.size, m.width, s.y+m.base)
		for _, more := range []struct {
			is   bool
			said string
		}{{m.bold, " bold"}, {m.tall > 0, fmt.Sprint(" tall ", m.tall)}, {m.more, " more"}, {m.meant != "", " meant " + m.meant}, {m.to != "", " to " + m.to}} {
			if more.is {
				line += more.said
			}
		}
		kind := "-"
		if m.of != nil {
			kind = m.of.Kind
		}
		return fmt.Sprintf("%s %s %s %q", line, m.ink.Hex(), kind, m.shown)
	case panel:
		fill := "none"
		if m.fill != nil {
			fill = m.fill.Hex()
		}
		return fmt.Sprintf("%s panel %.2f by %.2f fill %s line %.2f %s", at, r.w, r.h, fill, m.line, m.ink.Hex())
	case art:
		return fmt.Sprintf("%s art %.2f by %.2f zoom %.3f name %q", at, r.w, r.h, m.zoom, m.name)
	case outline:
		return fmt.Sprintf("%s outline %d %q", at, m.level, m.text)
	}
	return at + " ?"
}

// pagesText is pages mark by mark.
func pagesText(t *testing.T, d document.Document, o Options) []byte {
	t.Helper()
	d = d.Print()
	b := newBuilder(o.look())
	pages, err := b.pages(d, o)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	decorated := b.decorated(d, pages)
	for i, sheet := range decorated {
		fmt.Fprintf(&out, "page %d, chapter %d\n", i+1, pages[i].part)
		for _, s := range sheet {
			fmt.Fprintln(&out, markLine(s))
		}
	}
	for _, w := range append(append(b.warnings, b.missingSigns()...), append(overflows(decorated, b.look), shortPages(pages, b.look)...)...) {
		fmt.Fprintf(&out, "warning %d, page %d: %s\n", w.Kind, w.Page, w.Message)
	}
	return out.Bytes()
}

// TestSpecimenEdges: how it is set where there is less room than usual, or more, or little to be set.
func TestSpecimenEdges(t *testing.T) {
	square := Options{Paper: Paper{"square", 6 * measure.Inch, 6 * measure.Inch, measure.Inch / 2, false}}
	var out bytes.Buffer
	for _, d := range edges() {
		out.Write(pagesText(t, d, square))
	}
	golden.Text(t, filepath.Join("testdata", "specimen", "edges.pages"), out.Bytes())
}

// heldText is how strongly the parts of a document are held together before they are put on pages.
func heldText(d document.Document) []byte {
	b := newBuilder(Options{}.look())
	var out bytes.Buffer
	for _, s := range b.document(d.Print()) {
		fmt.Fprintf(&out, "%d: chapter %d, %.2f high, %.2f above, tie %d, row %d, %d frames, %d heads, new page %v, opens %v, fills %v", s.order, s.part, s.height, s.above, s.tie, s.row, len(s.frames), len(s.heads), s.newPage, s.opens, s.fill != nil)
		if s.flex != nil {
			fmt.Fprintf(&out, ", at least %.2f, %.2f of words", s.flex.least, s.flex.words)
		}
		fmt.Fprintf(&out, " %q\n", shownOn(s))
	}
	return out.Bytes()
}

// TestSpecimenPages: how a specimen is set on paper.
func TestSpecimenPages(t *testing.T) {
	for name, o := range map[string]Options{"letter": {}, "half-letter": {Paper: HalfLetter()}, "large": {Paper: A4(), Large: true}} {
		golden.Text(t, filepath.Join("testdata", "specimen", name+".pages"), pagesText(t, specimen(), o))
	}
	golden.Text(t, filepath.Join("testdata", "specimen", "held.txt"), append(heldText(specimen()), heldText(edges()[len(edges())-1])...))
	golden.Text(t, filepath.Join("testdata", "specimen", "plain.pages"), pagesText(t, plainSpecimen(), Options{Paper: Paper{"square", 6 * measure.Inch, 6 * measure.Inch, measure.Inch / 2, false}}))
}

var drawing = regexp.MustCompile(`(?s)(<svg [^>]*>.*?)(<rect|<path|<text|<circle|<g|<svg|<defs).*?</svg>\n(</svg>\n)?`) // but for its name and description

// TestSpecimenTexts: how it is written in every form of text.
func TestSpecimenTexts(t *testing.T) {
	for name, d := range map[string]document.Document{"specimen": specimen(), "plain": plainSpecimen()} {
		made := map[string][]byte{name + ".txt": []byte(Text(d)), name + ".csv": []byte(CSV(d))}
		page, err := HTML(d)
		made[name+".html"] = drawing.ReplaceAll(bytes.Replace(page, []byte(stylesheet+darkStylesheet), nil, 1), []byte("$1</svg>\n"))
		if err != nil {
			t.Fatal(err)
		}
		files, err := Markdown(d, name, Options{})
		if err != nil {
			t.Fatal(err)
		}
		made[name+".md"] = files[name+".md"]
		alone, err := markdownAlone(d, Locale{})
		if err != nil {
			t.Fatal(err)
		}
		made[name+"-alone.md"] = []byte(alone)
		made[name+".xlsx.xml"] = workbookText(t, d)
		for file, text := range made {
			golden.Text(t, filepath.Join("testdata", "specimen", file), text)
		}
	}
}

// workbookText is a workbook's parts, one under the other.
func workbookText(t *testing.T, d document.Document) []byte {
	t.Helper()
	made, err := XLSX(d)
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(made), int64(len(made)))
	if err != nil {
		t.Fatal(err)
	}
	var all bytes.Buffer
	for _, f := range z.File {
		part, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&all, "%s %d %s\n", f.Name, f.Method, f.Modified.UTC().Format("2006-01-02"))
		if _, err := io.Copy(&all, part); err != nil {
			t.Fatal(err)
		}
		all.WriteByte('\n')
	}
	return bytes.ReplaceAll(all.Bytes(), []byte("><"), []byte(">\n<"))
}

// pageOfAll is a page with one of everything that is painted.
func pageOfAll() document.Document {
	picture := specimenFigures()[3].(document.Picture)
	picture.Of.Ground, picture.Width = pngOfOne(), measure.Inch
	cloth := diagram.NewPrint(image.NewRGBA(image.Rect(0, 0, 2, 2)), measure.Inch, measure.Inch, 0)
	red := rgb("#c01020")
	drawn := document.Figure{Width: 2 * measure.Inch, Caption: document.Plain("Figure 1. All"), Of: diagram.Figure{Description: "all", Max: measure.Point{X: 2 * measure.Inch, Y: 2 * measure.Inch}, Marks: []diagram.Mark{
		{Area: &diagram.Area{Outline: []measure.Point{{}, {X: measure.Inch}, {Y: measure.Inch}}, Fill: red, Edge: diagram.Thin, Print: cloth}},
		{Line: &diagram.Line{Points: []measure.Point{{}, {X: measure.Inch, Y: 2 * measure.Inch}}, Stroke: diagram.Sew, Start: diagram.Dot, End: diagram.Arrow}},
		{Words: &diagram.Words{Text: "up 赤", At: measure.Point{X: measure.Inch, Y: measure.Inch}, Points: 9, Quarters: 3, Halo: true, Bold: true}},
	}}}
	table := document.Table{Named: true, Caption: document.Plain("Table"), Columns: []document.Column{{Title: "a"}, {Title: "b", Kind: document.Counts}}, Rows: []document.Row{{Cells: cells("across")}, {Cells: cells("x", "1 1/2 in")}}}
	return document.Document{Title: "All", Sections: []document.Section{{Title: "One", Blocks: []document.Block{
		document.Paragraph{Text: document.Plain("See Figure 1 赤 here")}, drawn, picture, document.Gallery{Pictures: []document.Illustration{document.Figure{Of: diagram.Figure{Max: measure.Point{X: measure.Inch, Y: measure.Inch}}, Caption: document.Plain("Nameless"), Width: measure.Inch}, document.Picture{Of: document.Drawing{Max: measure.Point{X: measure.Inch, Y: measure.Inch}}, Width: measure.Inch, Alternative: "the other"}}}, table, document.List{Marker: document.Numbered, Items: []document.Item{{Text: document.Plain("step")}}}, document.List{Marker: document.Tick, Items: []document.Item{{Text: document.Plain("tick")}}}, document.List{Items: []document.Item{{Text: document.Plain("bullet")}}},
	}}}}
}

// pngOfOne is a PNG file of one pixel.
func pngOfOne() []byte {
	var file bytes.Buffer
	_ = png.Encode(&file, image.NewGray(image.Rect(0, 0, 1, 1))) // writing to memory cannot fail
	return file.Bytes()
}

// TestSpecimenPaint: how it is painted, operator by operator, on pages of each sort, and as a picture of its own.
func TestSpecimenPaint(t *testing.T) {
	for name, o := range map[string]Options{"usual": {}, "cut": {Paper: A4(), CropMarks: true}, "imposed": {Paper: A5(), Imposed: true}} {
		printed, err := PDF(pageOfAll(), o)
		if err != nil {
			t.Fatal(err)
		}
		text, err := readpdf.Text(printed.File)
		if err != nil {
			t.Fatal(err)
		}
		golden.Text(t, filepath.Join("testdata", "specimen", name+".pdf.txt"), []byte(text))
	}
	s := shapeOf(pageOfAll().Sections[0].Blocks[2].(document.Picture))
	for name, inline := range map[string]bool{"inline": true, "file": false} {
		file, err := s.svg(inline)
		if err != nil {
			t.Fatal(err)
		}
		golden.Text(t, filepath.Join("testdata", "specimen", name+".svg"), file)
	}
}
