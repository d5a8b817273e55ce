package render

import (
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// edges are documents in which something has less room than usual, or more, or is left out.
func edges() []document.Document {
	return append(edgeCovers(), document.Document{Title: strings.Repeat("Tide and harbor, ", 8), Copyright: "© " + strings.Repeat("Ida Brandt; ", 20), Sections: []document.Section{
		{Alone: true, Blocks: []document.Block{document.Source{Lines: []string{"one"}}}},
		{Blocks: []document.Block{document.Paragraph{Text: document.Plain("a")}}},
		{Title: "Source", Blocks: []document.Block{document.Source{Lines: []string{"two"}}, document.Heading{Text: "H", Level: 9}, document.Heading{Level: 1, Text: strings.Repeat("Three lines of words ", 9)}}},
		{Title: "A chapter of a name that is as long as the line between the margins", Blocks: edgeTables()},
		{Title: "Lists", Blocks: edgeLists()},
		{Title: "Figures", Blocks: edgeFigures()},
	}})
}

func edgeCovers() []document.Document {
	lines := func(n int) (list []document.Text) {
		for range n {
			list = append(list, document.Plain("a line of the cover"))
		}
		return list
	}
	small := shown(top(1, 1, true), "", "one block")
	small.Width = 2 * measure.Inch
	captioned := shown(top(2, 1, true), strings.Repeat("Words beneath it. ", 12), "two blocks")
	return []document.Document{
		{Title: "Bare", Cover: &document.Cover{}, Sections: []document.Section{{Blocks: []document.Block{document.Paragraph{Text: document.Plain("a")}}}}},
		{Title: "Lines", Cover: &document.Cover{Lines: lines(2)}},
		{Title: "Small", Cover: &document.Cover{Picture: &small, Lines: lines(1)}},
		{Title: "Full", Maker: "Ida", Copyright: "Ida", Cover: &document.Cover{Subtitle: "Wedges", Picture: &captioned, Lines: lines(18)}},
		{Title: "Nothing"},
		{Title: "Bare", Sections: []document.Section{{Blocks: []document.Block{document.Paragraph{Text: document.Plain("a")}}}}},
		{Title: "Back", Sections: []document.Section{{Back: true, Blocks: []document.Block{document.Paragraph{Text: document.Plain("a")}}}}},
	}
}

// rowsOf is a table of so many rows.
func rowsOf(n int) document.Table {
	t := document.Table{Columns: []document.Column{{Title: "Row"}, {Title: "Cut", Kind: document.Lengths}}}
	for range n {
		t.Rows = append(t.Rows, document.Row{Cells: cells("strip", "3 1/2 in")})
	}
	return t
}

func edgeTables() []document.Block {
	long, sentence := strings.Repeat("background", 6), strings.Repeat("cut them in two on the diagonal ", 4)
	night := []document.Swatch{{Letter: "A", Colour: cloths()[0].colour}, {Letter: "BBB", Colour: cloths()[1].colour}}
	tall := document.Table{Columns: []document.Column{{Title: "From"}, {Title: "How"}}}
	for _, n := range []int{5, 11, 13} { // lines of a row
		tall.Rows = append(tall.Rows, document.Row{Cells: cells("strip", strings.Repeat("rotate it by 180 degrees; ", n))})
	}
	beside := document.Table{Columns: []document.Column{{Title: "Fabric"}, {Title: "Cut"}}, Rows: []document.Row{{Cells: []document.Cell{{Swatches: night, Text: document.Plain(long)}, {Text: document.Plain("7 in")}}}}}
	empty := document.Table{Columns: make([]document.Column, 30), Rows: []document.Row{{Cells: cells("from the strips")}, {Cells: []document.Cell{{Swatches: night}, {Text: document.Plain("x")}}}}}
	for i := range empty.Columns {
		empty.Columns[i].Title = "wide"
	}
	onlyAcross := document.Table{Columns: empty.Columns, Rows: empty.Rows[:1]}
	one := document.Table{Columns: []document.Column{{Title: "Note"}}, Rows: []document.Row{{Cells: cells(long)}, {Cells: cells("short")}}}
	return []document.Block{
		one, document.Table{Columns: []document.Column{{Title: "a"}, {Title: "b"}}, Rows: []document.Row{{Cells: cells(long, "x")}, {Cells: cells("Background pieces", "y")}}},
		document.Table{Columns: make([]document.Column, 2), Rows: []document.Row{{Cells: cells("Backgrounds")}, {Cells: cells("1", "2")}}},
		document.List{Items: []document.Item{{Text: document.Plain("item"), Blocks: []document.Block{rowsOf(shortTable), document.Table{Columns: make([]document.Column, 2), Rows: []document.Row{{Cells: cells("Background")}, {Cells: cells("1", "2")}}}}}}},
		rowsOf(shortTable + 1), document.Paragraph{Text: document.Plain("behind a table")}, document.Table{Columns: []document.Column{{Title: "word"}, {Title: "Number of strips to cut before the others", Kind: document.Counts}}, Rows: []document.Row{{Cells: cells(long, sentence)}, {Cells: []document.Cell{{Swatches: night, Text: document.Plain(long)}, {Text: document.Plain(sentence)}}}}},
		document.Table{Columns: []document.Column{{Title: "n", Kind: document.Counts}, {Title: "b"}}, Rows: []document.Row{{Cells: cells("across the page")}, {Cells: cells("1", "words that are longer")}}}, document.Table{Columns: make([]document.Column, 1), Rows: []document.Row{{Cells: cells(long + long)}}}, tall, beside, document.Table{Columns: []document.Column{{Title: "Fabric"}, {Title: "Cut", Kind: document.Counts}}, Rows: []document.Row{{Cells: []document.Cell{{Text: document.Plain("night")}, {Swatches: night, Text: document.Plain("7")}}}, {}, {Cells: cells("day", "seventeen")}}}, empty, document.Paragraph{Text: document.Plain("below it")}, onlyAcross, document.Table{Caption: document.Plain("No rows"), Columns: []document.Column{{Title: "a"}}},
	}
}

func edgeLists() []document.Block {
	item := func(words string) document.Item { return document.Item{Text: document.Plain(words)} }
	return []document.Block{
		document.List{Marker: document.Numbered, Items: []document.Item{item("one")}}, document.List{Marker: document.Numbered, First: 9, Items: []document.Item{item("nine")}},
		document.List{Marker: document.Numbered, First: 99, Items: []document.Item{item("ninety-nine"), item("a hundred")}}, document.List{Marker: document.Numbered, Items: slices.Repeat([]document.Item{item("nine of them")}, 9)}, document.Heading{}, document.Paragraph{Text: document.Plain("behind a heading without words")},
		document.Heading{Level: 1, Text: "One"}, document.Heading{Level: 2, Text: "Two"}, document.Heading{Level: 3, Text: "Three"}, document.Heading{Level: 9, Text: "Nine"},
		document.Heading{Text: "before a new page"}, document.PageBreak{}, document.Paragraph{Text: document.Plain("stays with it")}, document.PageBreak{}, document.Paragraph{Text: document.Plain("on a new page:")}, document.PageBreak{},
		document.Together{Blocks: []document.Block{document.Paragraph{Text: document.Plain("first")}, document.Together{Blocks: []document.Block{document.Paragraph{Text: document.Plain("second")}}}, document.Paragraph{Text: document.Plain("third")}}},
		document.Paragraph{Text: document.Text{{Text: "Figure 1. here, Figure 2 and Figure 22"}, {Text: " Figure 2."}}}, document.Ruled{},
	}
}

func edgeFigures() []document.Block {
	one := panels()
	one.Panels, one.Marks = one.Panels[:1], one.Marks[:1]
	nameless := diagram.Figure{Max: measure.Point{X: measure.Inch, Y: measure.Inch}, Marks: gauge().Marks}
	large := document.Figure{Of: strip(3), Width: 2 * measure.Inch, Least: 3 * measure.Inch, Caption: document.Plain("Figure 2. Wedges")}
	high := shown(top(1, 9, false), "", "nine blocks")
	high.Width, high.Least = 2*measure.Inch, measure.Inch
	gallery := document.Gallery{Across: 12}
	for range 5 {
		gallery.Pictures = append(gallery.Pictures, shown(top(1, 1, false), "Figure 1. One", "a block"))
	}
	return []document.Block{
		document.Figure{Of: one}, document.Figure{Of: nameless, Width: measure.Inch, Caption: document.Plain("A square")}, large, high, document.Figure{Of: strip(2), Caption: document.Plain(strings.Repeat("It has very many words beneath it. ", 60))}, document.Paragraph{Text: document.Plain("above a gallery")}, gallery, document.Paragraph{Text: document.Plain("below it")},
		document.Gallery{Pictures: []document.Illustration{shown(top(1, 1, false), strings.Repeat("six lines ", 28), "a"), shown(top(1, 1, false), "few", "b")}},
		document.Gallery{Across: 3, Pictures: []document.Illustration{shown(top(1, 1, false), strings.Repeat("many words ", 60), "a"), shown(top(1, 1, false), "few", "b")}},
		document.Box{Word: "Boxed", Blocks: []document.Block{document.Box{Blocks: []document.Block{high}}}},
	}
}
