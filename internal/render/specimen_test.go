package render

import (
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// A specimen is a document that has every kind of block in every way in which it is set, in few pages. Its words are invented.

// mixedText is a text of many lines, with what is not plain in it.
func mixedText() document.Text {
	return document.Text{
		{Text: "Cut the strips 3 1/2 in wide and 5/16 in longer than the block, as Figure 1 shows; sew them with a seam of 1/4 in. "},
		{Text: "Press every seam", Bold: true}, {Text: " toward the darker fabric, and lay the pairs out before any are joined, since Figure 2 and Figure 9 look alike; "},
		{Text: "a ruler of 6 by 24 in is long enough for all of them, 赤い ones too. ", Small: true},
		{Text: "The third line and the fourth stand here to see how a paragraph ends.", Bold: true, Small: true},
	}
}

// panels is a figure of three steps.
func panels() diagram.Figure {
	f := diagram.Figure{Title: "Figure 3. Three steps", Description: "Three steps beside each other.", Across: 2}
	for i := range 3 {
		square := []measure.Point{{}, {X: 4 * measure.Inch}, {X: 4 * measure.Inch, Y: 4 * measure.Inch}, {Y: 4 * measure.Inch}}
		f.Marks = append(f.Marks, diagram.Mark{Area: &diagram.Area{Outline: square, Fill: cloths()[i].colour, Edge: diagram.Thin}})
		f.Panels = append(f.Panels, diagram.Panel{Caption: "Step " + string(rune('1'+i)), Note: "Press.", First: i, Count: 1, Max: square[2]})
	}
	return f
}

// gauge is a figure of true size, a square of an inch.
func gauge() diagram.Figure {
	f := strip(1)
	f.Marks, f.Max, f.TrueSize, f.Title, f.Description = f.Marks[:1], measure.Point{X: measure.Inch, Y: measure.Inch}, true, "Gauge", "A square of an inch."
	f.Marks[0].Area.Outline = []measure.Point{{}, {X: measure.Inch}, f.Max, {Y: measure.Inch}}
	return f
}

func specimenTexts() []document.Block {
	nested := document.List{Marker: document.Tick, Items: []document.Item{{Text: document.Plain("thread")}, {}, {Text: document.Plain("pins"), Blocks: []document.Block{document.Paragraph{Text: document.Plain("long ones")}}}}}
	return []document.Block{
		document.Paragraph{Text: document.Plain("One line, -1/2 & <more> | *all* of it.")},
		document.Paragraph{Text: mixedText()},
		document.Paragraph{},
		document.Paragraph{Text: document.Plain("Gather what you need:")},
		document.List{Items: []document.Item{{Text: document.Plain("a mat")}, {Text: mixedText()}, {Text: document.Plain("a cutter")}}},
		document.Heading{Level: 3, Text: "A level is never left out"},
		document.List{Marker: document.Numbered, First: 9, Items: []document.Item{{Text: document.Plain("Nine.")}, {Text: document.Plain("Ten."), Blocks: []document.Block{nested, document.Figure{Of: strip(2), Width: 2 * measure.Inch}}}}},
		document.Heading{Text: strings.Repeat("A heading of very many words ", 9)},
		document.Heading{Level: 2, Text: "The layout"},
		document.Heading{Level: 3, Text: "As text"},
		document.Source{Lines: []string{"block ring 8 in", "", "  fabric night \"#1f3350\""}},
	}
}

// weighed is a table with widths that were asked for, and rows that are short.
func weighed() document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Piece", Width: 1}, {Title: "How", Width: 3}, {Title: "Number", Kind: document.Counts, Sum: true}, {Title: "in", Kind: document.Lengths, Factors: []string{"Number"}}}}
	for i, words := range []string{"cut once on the diagonal", "=1+1", strings.Repeat("every other one rotated 180 degrees ", 3)} {
		row := cells("kite "+string(rune('A'+i)), words, "7", "3 5/16 in")
		row[2].Number, row[3].Number = "7", "3.3125"
		t.Rows = append(t.Rows, document.Row{Cells: row[:4-i%2]})
	}
	t.Rows[0].Under = []document.Text{document.Plain("blunt the tip")}
	t.More = document.Plain("more stands on the page")
	return t
}

// crowded is a table whose words have too little room beside each other in the usual type, and in any where it is wide.
func crowded(columns int) document.Table {
	t := document.Table{}
	for i := range columns {
		t.Columns = append(t.Columns, document.Column{Title: strings.Repeat("w", 3+i%4), Kind: document.Kind(i % 3)})
	}
	t.Columns[0].Title, t.Columns[5%columns].Title = "", ""
	t.Rows = []document.Row{{Cells: cells("all of these go across")}, {}, {Total: true}}
	for i := range columns {
		cell := document.Cell{Text: document.Plain(strings.Repeat("m", 4+i%5))}
		if i%4 == 1 {
			cell.Swatches = []document.Swatch{{Letter: "A", Colour: cloths()[0].colour}, {Letter: "XYZ", Colour: cloths()[3].colour}}
		}
		if i%4 == 3 {
			cell.Swatches = []document.Swatch{{Letter: "B", Colour: cloths()[1].colour}}
		}
		if i == 5 {
			cell.Text = nil
		}
		if i%5 != 2 {
			t.Rows[1].Cells = append(t.Rows[1].Cells, cell)
		} else {
			t.Rows[1].Cells = append(t.Rows[1].Cells, document.Cell{})
		}
		t.Rows[2].Cells = append(t.Rows[2].Cells, document.Cell{Text: document.Plain("7 in")})
	}
	return t
}

func specimenTables() []document.Block {
	bare := document.Table{Columns: make([]document.Column, 2), Rows: []document.Row{{Cells: cells("WOF", "width of fabric")}, {Cells: []document.Cell{{Swatches: []document.Swatch{{Colour: cloths()[4].colour}}, Text: document.Plain("moss")}, {Text: mixedText()}}}}}
	short := cuts()
	short.Rows = short.Rows[4:9]
	uneven := document.Table{Columns: []document.Column{{Title: "From"}, {Title: "Cut"}, {Title: "Number", Kind: document.Counts}, {Title: "Then"}}}
	for i := range 3 {
		uneven.Rows = append(uneven.Rows, document.Row{Cells: cells("night pond", strings.Repeat("squares of 7 in ", 3+i), "12", strings.Repeat("cut each once on the diagonal ", 2+i))})
	}
	return []document.Block{needs(), short, weighed(), bare, uneven, crowded(9), crowded(24)}
}

func specimenFigures() []document.Block {
	marked := document.Figure{Of: strip(6), Caption: document.Plain("Figure 1. Wedges from a strip")}
	small := document.Figure{Of: strip(4), Width: 2 * measure.Inch, Least: measure.Inch, Caption: mixedText()}
	lines := top(2, 2, false)
	lines.Layers = append(lines.Layers, document.Layer{Name: "open", Open: true, Line: 1, Ink: rgb("#c01020"), Paths: [][]measure.Point{{{}, {X: measure.Inch, Y: measure.Inch}}}}, document.Layer{Name: "none", Fill: &palettes.Colour{}})
	lines.Marks = labelled().Marks[:2]
	return []document.Block{
		marked, document.Figure{Of: panels(), Width: 6 * measure.Inch}, small,
		document.Picture{Of: lines, Width: 3 * measure.Inch, Caption: document.Plain("Figure 2. The top in lines"), Alternative: strings.Repeat("Two blocks across and two down. ", 14)},
		document.Gallery{Across: 3, Pictures: []document.Illustration{
			shown(top(1, 1, true), "One", "A block."), shown(top(1, 2, true), "Two blocks, one above the other, with a caption of many words", "Two blocks."), shown(top(2, 1, true), "", "Two beside each other."), document.Figure{Of: strip(1), Width: measure.Inch}}},
		document.Gallery{Pictures: []document.Illustration{document.Figure{Of: gauge()}, shown(top(1, 1, true), "Beside it", "A block.")}},
		document.Box{Blocks: []document.Block{document.Paragraph{Text: mixedText()}, document.Box{Caution: true, Word: "Hot iron", Blocks: []document.Block{document.List{Items: []document.Item{{Text: document.Plain("unplug it")}, {Text: document.Plain("let it cool")}}}}}, document.Figure{Of: strip(3)}}},
		document.Together{Blocks: []document.Block{document.Heading{Level: 2, Text: "Held"}, document.Paragraph{Text: document.Plain("together")}, document.PageBreak{}}},
	}
}

// specimen is all of it, with a cover, chapters of each sort and a back cover.
func specimen() document.Document {
	d := document.Document{
		Title: "Quiet \"Harbor\" & Tide", Maker: "Designed by Ida Brandt", Author: "Ida Brandt", Subject: "A <wall> quilt", Keywords: "quilt, wedges", Copyright: "© 2027 Ida Brandt. All rights reserved.",
		Cover: &document.Cover{Subtitle: "A quilt of wedges", Picture: &document.Picture{Of: top(3, 4, true), Caption: document.Plain("The quilt"), Alternative: "The quilt top."},
			Lines: []document.Text{document.Bold("Finished size 24 x 32 in"), {{Text: "For confident beginners.", Small: true}}}},
		Sections: []document.Section{
			{ID: "texts", Title: "Before you begin", Blocks: specimenTexts()},
			{ID: "tables", Title: "Cutting", NewPage: true, Blocks: specimenTables()},
			{ID: "figures", Title: "Blocks", Blocks: append(specimenFigures(), document.Section{Title: "Inner", Blocks: []document.Block{weighed()}})},
			{Title: "Coloring page", Alone: true, Blocks: []document.Block{document.PageBreak{}, document.Paragraph{Text: document.Plain("Copy it.")}, shown(top(3, 4, false), "", "The top in lines.")}},
			{Blocks: []document.Block{document.Paragraph{Text: document.Plain("No title.")}, document.Heading{Level: 1, Text: "A heading"}, document.Ruled{}}},
			{Title: "Quilt pattern", Back: true, Blocks: []document.Block{document.Heading{Text: "Quiet \"Harbor\" & Tide"}, document.Paragraph{Text: document.Plain("24 by 32 in")}, shown(top(3, 4, true), "", "The quilt top.")}},
		},
	}
	return d
}

// plainSpecimen is a document without a cover, and without most of what may be said of it.
func plainSpecimen() document.Document {
	return document.Document{Title: strings.Repeat("Harbor ", 20), Language: "de-CH", Maker: "Made by Ida", Sections: []document.Section{
		{Title: "Only one", Blocks: []document.Block{document.Paragraph{Text: document.Plain("Text.")}, document.List{Marker: document.Numbered, Items: []document.Item{{Text: document.Plain("One.")}}}, document.Figure{Of: strip(2)}}},
	}}
}
