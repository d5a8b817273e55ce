package render

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// wrongCaptions says which picture of a Markdown text is a paragraph by itself, which programs take for a figure with its alternative
// text as a caption, and which stands in for more than a few lines.
func wrongCaptions(text string) string {
	for _, paragraph := range strings.Split(text, "\n\n") {
		if regexp.MustCompile(`^\s*!\[[^\]]*\]\(<[^>]+>\)\s*$`).MatchString(paragraph) {
			return paragraph
		}
	}
	for _, m := range regexp.MustCompile(`!\[((?:[^\]\\]|\\.)*)\]`).FindAllStringSubmatch(text, -1) {
		if len(m[1]) > 2*maxAlternative {
			return m[1]
		}
	}
	return ""
}

// TestOneCaption: no picture is a figure with a caption of its own, in any document; a long description is its first sentence, and the
// others as a list beneath.
func TestOneCaption(t *testing.T) {
	for seed := range uint64(60) {
		d, _ := invent(seed)
		files, err := Markdown(d, "law", Options{})
		if err != nil {
			t.Fatal(err)
		}
		if wrong := wrongCaptions(string(files["law.md"])); wrong != "" {
			t.Errorf("seed %d: %s", seed, wrong)
		}
	}
	if wrongCaptions("a\n\n![b](<c.svg>)\n\nd") == "" || wrongCaptions("!["+strings.Repeat("b", 900)+"](<c.svg>) d") == "" {
		t.Error("a figure is not noticed")
	}
	first, more := inShort(strings.Repeat("Row of blocks. ", 40) + "End.")
	if first != "Row of blocks." || len(more) != 40 || more[39] != "End." {
		t.Errorf("%q, %q", first, more)
	}
	if first, more := inShort("Row 1. Row 2."); first != "Row 1. Row 2." || more != nil {
		t.Errorf("%q, %q", first, more)
	}
}

// drawnIn is what follows a quotation without an empty line, and is drawn into it by programs that read Markdown so.
func drawnIn(text string) string {
	lines := strings.Split(text, "\n")
	for i, l := range lines[1:] {
		if before := strings.TrimSpace(lines[i]); strings.HasPrefix(before, ">") && strings.TrimSpace(l) != "" && !strings.HasPrefix(strings.TrimSpace(l), ">") {
			return l
		}
	}
	return ""
}

// TestQuotationsEnd: a box ends with an empty line, in any document.
func TestQuotationsEnd(t *testing.T) {
	boxes := 0
	for seed := range uint64(60) {
		d, _ := invent(seed)
		files, err := Markdown(d, "law", Options{})
		if err != nil {
			t.Fatal(err)
		}
		text := string(files["law.md"])
		boxes += strings.Count(text, "\n> **")
		if wrong := drawnIn(text); wrong != "" {
			t.Errorf("seed %d: %q is drawn into a quotation", seed, wrong)
		}
	}
	if boxes == 0 || drawnIn("> **a**\n>\n- b") == "" {
		t.Errorf("%d boxes, or one without an end is not noticed", boxes)
	}
}

// TestSwatchesAreShown: swatches of a table are pictures beside their letters, one file for a color; where there is the text alone they
// are said in words.
func TestSwatchesAreShown(t *testing.T) {
	red := document.Swatch{Letter: "A", Colour: palettes.Colour{R: 0xcc}}
	d := document.Document{Title: "t", Sections: []document.Section{{Title: "s", Blocks: []document.Block{document.Table{Columns: []document.Column{{Title: "fabric"}, {Title: "much", Kind: document.Lengths}},
		Rows: []document.Row{{Cells: []document.Cell{{Swatches: []document.Swatch{red, red}, Text: document.Plain("rust")}, {}}}}}}}}}
	files, err := Markdown(d, "law", Options{})
	if err != nil {
		t.Fatal(err)
	}
	text := string(files["law.md"])
	if len(files) != 2 || !strings.Contains(string(files["law-cc0000.svg"]), `fill="#cc0000"`) || strings.Count(text, "**A**\u00a0![\\#cc0000](<law-cc0000.svg>)") != 2 {
		t.Errorf("%d files, %s", len(files), text)
	}
	if alone, err := markdownAlone(d, Locale{}); err != nil || !strings.Contains(alone, "**A**\u00a0(#cc0000)") || strings.Contains(alone, "![") {
		t.Errorf("%s, %v", alone, err)
	}
}

// TestWordsFitTheirColumns: in a document made of the Markdown no column is narrower than its longest word, where a line has room for
// those of all columns; what is left goes to columns with longer cells.
func TestWordsFitTheirColumns(t *testing.T) {
	table := document.Table{Columns: []document.Column{{Title: "Line"}, {Title: "Piece"}, {Title: "Cut"}}, Rows: []document.Row{
		{Cells: []document.Cell{{Text: document.Plain("1")}, {Text: document.Plain("background piece")}, {Text: document.Plain(strings.Repeat("squares of 7 in, ", 9))}}},
		{Cells: []document.Cell{{Text: document.Plain(strings.Repeat("x", 30))}}},
	}}
	narrow := func(shares []int) bool {
		whole := 0
		for _, s := range shares {
			whole += s
		}
		return len(shares) != 3 || shares[0]*madeLine < len("Line")*whole || shares[1]*madeLine < len("background")*whole || shares[2] <= 2*shares[1]
	}
	if shares := columnShares(&table); narrow(shares) {
		t.Errorf("%d", shares)
	}
	short := document.Table{Columns: []document.Column{{Title: "Number"}, {Title: "Shown in"}}}
	if shares := columnShares(&short); shares[0] <= madeMargin+len("Number") {
		t.Errorf("no letter more than the word has: %d", shares)
	}
	if !narrow([]int{11, 20, 170}) || !narrow([]int{10, 40, 20}) {
		t.Error("columns that are too narrow are not noticed")
	}
}

// TestPicturesLeaveRoomOnAPage: a high picture that is a file leaves room on a page for a title, where a width is asked for, for its caption, and on the
// cover for the lines beneath.
func TestPicturesLeaveRoomOnAPage(t *testing.T) {
	high := diagram.Figure{Max: measure.Point{X: 4 * measure.Inch, Y: 12 * measure.Inch}}
	for width, want := range map[measure.NM]string{0: `height="6.5000in"`, 5 * measure.Inch: `height="7.5000in"`} {
		file, err := (&shape{figure: high, width: width}).svg(false)
		if err != nil || !bytes.Contains(file, []byte(want)) {
			t.Errorf("width %v: not %s: %.200s", width, want, file)
		}
	}
	d := document.Document{Title: "t", Cover: &document.Cover{Picture: &document.Picture{Alternative: "the quilt", Of: document.Drawing{Max: high.Max}}}}
	if files, err := Markdown(d, "law", Options{}); err != nil || !bytes.Contains(files["law-1.svg"], []byte(`height="5.5000in"`)) {
		t.Errorf("on the cover: %v, %.200s", err, files["law-1.svg"])
	}
	if page, err := (&shape{figure: high, width: 5 * measure.Inch}).svg(true); err != nil || bytes.Contains(page, []byte(`height="7.5000in"`)) {
		t.Errorf("within a page: %.200s", page)
	}
}

// TestAFabricStaysWithItsSwatch: in a document made of the Markdown a swatch and the short name beside it have one line.
func TestAFabricStaysWithItsSwatch(t *testing.T) {
	table := document.Table{Columns: []document.Column{{Title: "From"}, {Title: "Cut"}}, Rows: []document.Row{{Cells: []document.Cell{
		{Swatches: []document.Swatch{{Letter: "A"}}, Text: document.Plain("night")}, {Text: document.Plain(strings.Repeat("squares of 7 in, ", 9))}}}}}
	if shares := columnShares(&table); shares[0] < madeMargin+madeSwatch+len("night") {
		t.Errorf("%d", shares)
	}
}

// TestNumbersStandApart: no table has a column that ends at the right before one that begins at the left; programs that leave no room
// between columns make 47 in of 4 and 7 in.
func TestNumbersStandApart(t *testing.T) {
	apart := func(table string) bool { return !regexp.MustCompile(`\| -+: \| -+ `).MatchString(table) }
	for _, kinds := range [][]document.Kind{{document.Counts, document.Words}, {document.Words, document.Counts, document.Lengths}, {document.Words}} {
		table := document.Table{Rows: []document.Row{{}}}
		for _, k := range kinds {
			table.Columns = append(table.Columns, document.Column{Title: "head", Kind: k})
			table.Rows[0].Cells = append(table.Rows[0].Cells, document.Cell{Text: document.Plain("7 in")})
		}
		text, err := markdownAlone(document.Document{Title: "t", Sections: []document.Section{{Title: "s", Blocks: []document.Block{table}}}}, Locale{})
		if err != nil || !apart(text) || strings.Contains(text, ":-") != (kinds[0] == document.Counts) {
			t.Errorf("%v: %s, %v", kinds, text, err)
		}
	}
	if apart("| ---: | --- |") {
		t.Error("a number before words is not noticed")
	}
}

// TestMarkdownAloneIsVisible: Markdown that a terminal shows too has no character that would steer it.
func TestMarkdownAloneIsVisible(t *testing.T) {
	d := document.Document{Title: "t", Sections: []document.Section{{Title: "One", Blocks: []document.Block{document.Paragraph{Text: document.Plain("red \u009b31m and \u202eback")}}}}}
	said, err := markdownAlone(d, Locale{})
	if err != nil || strings.ContainsAny(said, "\u009b\u202e\x1b") || !strings.Contains(said, "31m and ") || !strings.Contains(said, "\n") {
		t.Errorf("%q, %v", said, err)
	}
}
