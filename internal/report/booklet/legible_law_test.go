package booklet

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/palettes"
)

// Least sizes of letters on a page, points.
const (
	leastLetters = 8
	largeLetters = 18
)

// illegible are the words of a document's figures that cannot be read on paper of a size.
func illegible(d document.Document, p render.Paper, large bool) []string {
	zoom, least := 1.0, float64(leastLetters)
	if large {
		zoom, least = float64(largeLetters)/leastLetters, largeLetters
	}
	width := measure.NM(float64(p.Width-2*p.Margin) / zoom)
	high := measure.NM(float64(p.Height-2*p.Margin-measure.Inch) / zoom)
	var wrong []string
	for _, f := range figuresIn(d.Print().Sections) {
		if f.Of.TrueSize { // as large as it is, but for the words of its test squares
			for _, m := range f.Of.Marks {
				if w := m.Words; w != nil && (strings.HasSuffix(w.Text, " inch") || strings.HasPrefix(w.Text, "3 c")) && w.Points < least {
					wrong = append(wrong, fmt.Sprintf("%s: %q is set in %.1f points", f.Of.Title, w.Text, w.Points))
				}
			}
			continue
		}
		o := diagram.Options{Width: width, Height: high, NoLegend: f.Alternative == pictureDrawn}
		if f.Width > 0 && len(f.Of.Panels) == 0 {
			o.Width = min(width, measure.NM(float64(f.Width)/zoom))
		}
		parts := []*diagram.Figure{&f.Of}
		if len(f.Of.Panels) > 0 {
			parts = diagram.Rows(&f.Of, o)
		}
		for _, part := range parts {
			sheet := diagram.Place(part, o)
			if limit := float64(high) * diagram.TrueScale; sheet.Height > limit {
				wrong = append(wrong, f.Of.Title+": is higher than the page")
			}
			for _, text := range sheet.Illegible(zoom, least) {
				wrong = append(wrong, f.Of.Title+": "+text)
			}
		}
	}
	return wrong
}

// figuresIn are the figures of sections.
func figuresIn(list []document.Section) []document.Figure {
	var found []document.Figure
	var look func(blocks []document.Block)
	look = func(blocks []document.Block) {
		for _, b := range blocks {
			switch v := b.(type) {
			case document.Figure:
				found = append(found, v)
			case document.Picture:
				found = append(found, drawnAs(v))
			case document.Section:
				look(v.Blocks)
			case document.Box:
				look(v.Blocks)
			case document.Together:
				look(v.Blocks)
			case document.List:
				for _, i := range v.Items {
					look(i.Blocks)
				}
			case document.Gallery:
				for _, i := range v.Pictures {
					look([]document.Block{i})
				}
			}
		}
	}
	for _, s := range list {
		look(s.Blocks)
	}
	return found
}

// drawnAs is a picture as a figure: its layers are what lies beneath its words.
func drawnAs(p document.Picture) document.Figure {
	f := diagram.Figure{Title: p.Caption.String(), Min: p.Of.Min, Max: p.Of.Max}
	for _, l := range p.Of.Layers {
		for _, path := range l.Paths {
			path = within(path, p.Of.Min, p.Of.Max)
			switch {
			case len(p.Of.Marks) == 0 || len(path) == 0:
			case l.Open:
				f.Marks = append(f.Marks, diagram.Mark{Line: &diagram.Line{Points: path, Stroke: diagram.Thin}})
			default:
				area := diagram.Area{Outline: path, Clear: l.Fill == nil}
				if l.Fill != nil {
					area.Fill = *l.Fill
				}
				if l.Line > 0 {
					area.Edge = diagram.Thin
				}
				f.Marks = append(f.Marks, diagram.Mark{Area: &area})
			}
		}
	}
	f.Marks = append(f.Marks, p.Of.Marks...)
	return document.Figure{Of: f, Width: p.Width, Alternative: pictureDrawn}
}

// pictureDrawn marks a figure that is a picture, which has no legend.
const pictureDrawn = "a picture"

// within is an outline moved into a frame: what lies outside is cut off.
func within(path []measure.Point, low, high measure.Point) []measure.Point {
	list := make([]measure.Point, len(path))
	for i, p := range path {
		list[i] = measure.Point{X: min(max(p.X, low.X), high.X), Y: min(max(p.Y, low.Y), high.Y)}
	}
	return list
}

// layoutNames holds that the layout, whole or in parts, has a label for each block where any has one; 1 where it is in parts.
func layoutNames(t *testing.T, what string, b *patternBuilder) (divided int) {
	parts := b.layoutParts()
	if divided = min(len(parts), 1); len(parts) == 0 {
		parts = []report.Window{b.wholeGrid()}
	}
	if wrong := unnamed(b, parts); wrong > 0 && b.labelled() {
		t.Errorf("%s: %d blocks have no label, or two", what, wrong)
	}
	if len(parts) > 1 && !b.grid().SomeColumns() && unnamed(b, parts[1:]) == 0 {
		t.Errorf("%s: a part that is left out is not missed", what)
	}
	return divided
}

// unnamed counts the cells that begin a block, or column, and have not one label in the parts.
func unnamed(b *patternBuilder, parts []report.Window) int {
	wrong := 0
	for i := range b.Sewing.Blocks {
		for _, c := range b.Sewing.Blocks[i].Variants {
			for n := range c.Cells {
				seen := 0
				for _, w := range parts {
					if _, ok := b.shownAt(&c.Cells[n], w); ok {
						seen++
					}
				}
				if seen == 0 || seen > 1 && c.Cells[n].Cells == 1 {
					wrong++
				}
			}
		}
	}
	return wrong
}

// TestWordsOfFiguresCatches: each thing that the law is about is noticed.
func TestWordsOfFiguresCatches(t *testing.T) {
	inch := measure.Inch
	square := func(fill palettes.Colour) diagram.Mark {
		return diagram.Mark{Area: &diagram.Area{Outline: []measure.Point{{}, {X: inch}, {X: inch, Y: inch}, {Y: inch}}, Fill: fill}}
	}
	words := func(w diagram.Words) diagram.Mark {
		w.Text, w.At = "words", measure.Point{X: inch / 2, Y: inch / 2}
		return diagram.Mark{Words: &w}
	}
	line := diagram.Mark{Line: &diagram.Line{Points: []measure.Point{{Y: inch / 2}, {X: inch, Y: inch / 2}}, Stroke: diagram.Cut}}
	pale, dark := palettes.Colour{R: 250, G: 250, B: 250}, palettes.Colour{R: 20, G: 20, B: 60}
	plated := words(diagram.Words{Points: 9, Backing: &dark, Plate: true})
	for want, marks := range map[string][]diagram.Mark{
		"is set in 5.0 points": {square(pale), words(diagram.Words{Points: 5})},
		"is set in 4":          {square(pale), words(diagram.Words{Points: 9, Room: inch / 6})},
		"stands over":          {square(pale), words(diagram.Words{Points: 9}), words(diagram.Words{Points: 12})},
		"has a contrast of 1":  {square(dark), words(diagram.Words{Points: 9})},
		"is struck through":    {square(pale), words(diagram.Words{Points: 9}), line},
		"is struck ":           {square(pale), line, words(diagram.Words{Points: 9})},
		"is str":               {square(dark), line, words(diagram.Words{Points: 9, Backing: &dark, Halo: true})},
		"is s":                 {square(dark), plated, line},
		"":                     {square(dark), line, plated},
	} {
		f := document.Figure{Of: diagram.Figure{Max: measure.Point{X: inch, Y: inch}, Marks: marks}, Width: inch}
		list := illegible(document.Document{Sections: []document.Section{{Blocks: []document.Block{f}}}}, render.Letter(), false)
		if (want == "") != (len(list) == 0) || want != "" && !strings.Contains(strings.Join(list, "; "), want) {
			t.Errorf("expected %q, found %q", want, list)
		}
	}
	cut := diagram.Place(&diagram.Figure{Max: measure.Point{X: inch, Y: inch}, Marks: []diagram.Mark{words(diagram.Words{})}}, diagram.Options{})
	for i := range cut.Items {
		cut.Items[i].Label.At.X -= cut.Width
	}
	if list := cut.Illegible(1, 8); len(list) != 1 || !strings.Contains(list[0], "cut off") {
		t.Errorf("words beyond the sheet are told as %q", list)
	}
}
