package booklet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// Small cases worked out by hand.

// TestWordsOfAllPictures: whatever stands in a picture is found, wherever the picture stands: what is abbreviated there is explained.
func TestWordsOfAllPictures(t *testing.T) {
	said := func(text string) []diagram.Mark { return []diagram.Mark{{Words: &diagram.Words{Text: text}}} }
	figure := func(text string) document.Figure { return document.Figure{Of: diagram.Figure{Marks: said(text)}} }
	picture := func(text string) document.Picture { return document.Picture{Of: document.Drawing{Marks: said(text)}} }
	list := []document.Block{
		figure("a"), paragraph("no picture"), picture("b"),
		document.Gallery{Pictures: []document.Illustration{picture("c"), figure("d")}},
		document.Box{Blocks: []document.Block{figure("e"), picture("f")}},
		document.Together{Blocks: []document.Block{document.Box{Blocks: []document.Block{figure("g")}}, picture("h")}},
		document.List{Items: []document.Item{{Blocks: []document.Block{figure("i")}}, {}, {Blocks: []document.Block{document.Gallery{Pictures: []document.Illustration{picture("j")}}}}}},
	}
	var got strings.Builder
	for _, m := range marksOf(list) {
		got.WriteString(m.Words.Text)
	}
	if got.String() != "abcdefghij" {
		t.Errorf("found are %q", got.String())
	}
	d := document.Document{Cover: &document.Cover{Subtitle: "sub", Lines: []document.Text{document.Plain("line")}}, Sections: []document.Section{{Blocks: list}, {Blocks: []document.Block{figure("k"), document.Figure{Of: diagram.Figure{Marks: []diagram.Mark{{}}}}}}}}
	if texts := textsOf(d); !slices.Equal(texts[:2], []string{"sub", "line"}) || !slices.Contains(texts, "no picture") || !slices.Equal(texts[len(texts)-11:], strings.Split("abcdefghijk", "")) {
		t.Errorf("said is %q", texts)
	}
}

// TestWithoutAColumn: a table lacks the one column that is not wanted, wherever it stands, and stays as it is where it has none such; what it
// was made of is not touched.
func TestWithoutAColumn(t *testing.T) {
	made := func(titles string) document.Table {
		var table document.Table
		for row := range 3 {
			var cells []document.Cell
			for _, c := range titles {
				if row == 0 {
					table.Columns = append(table.Columns, document.Column{Title: string(c)})
				}
				cells = append(cells, cell(fmt.Sprintf("%c%d", c, row)))
			}
			table.Rows = append(table.Rows, document.Row{Cells: cells})
		}
		return table
	}
	for title, want := range map[string]string{"a": "bcd", "b": "acd", "d": "abc", "e": "abcd"} {
		table := made("abcd")
		if got := without(table, title); fmt.Sprint(got) != fmt.Sprint(made(want)) || fmt.Sprint(table) != fmt.Sprint(made("abcd")) {
			t.Errorf("without %s: %v", title, got)
		}
	}
}

// TestLeastWidths: how narrow a map of cloth and a picture may become: words do not get smaller with it. On a page of 7.1 in between its
// margins a wide map takes seven eighths of that, a high one of plain cloth 3/2 in and more the less high it is, and one of a print three
// quarters of the width that it has as high as a page, a third at the least.
func TestLeastWidths(t *testing.T) {
	b := &patternBuilder{}
	whole := 71 * measure.Inch / 10
	print := []diagram.Mark{{Area: &diagram.Area{Print: &diagram.Print{}}}}
	plain := []diagram.Mark{{Area: &diagram.Area{}}, {}}
	for _, c := range []struct {
		x, y  measure.NM
		marks []diagram.Mark
		want  measure.NM
	}{
		{40, 18, plain, whole * 7 / 8}, {40, 40, print, whole * 7 / 8}, {40, 18, print, whole * 7 / 8},
		{40, 41, plain, 3 * measure.Inch / 2 * 975 / 1000}, {40, 80, plain, 3 * measure.Inch / 2 * 500 / 1000}, {40, 400, plain, 3 * measure.Inch / 2 * 100 / 1000}, {40, 41_000, plain, 3 * measure.Inch / 2 / 1000},
		{40, 41, print, whole / 1000 * 731}, {40, 80, print, whole / 1000 * 375}, {40, 90, print, whole / 1000 * 333}, {40, 91, print, whole / 1000 * 333},
	} {
		f := &diagram.Figure{Max: measure.Point{X: c.x * measure.Inch, Y: c.y * measure.Inch}, Marks: c.marks}
		if got := b.leastMap(f); got != c.want {
			t.Errorf("a map of %d by %d: %d, expected %d", c.x, c.y, got, c.want)
		}
	}
	if got := minOf(5, 5); got != 3*measure.Inch {
		t.Errorf("a square is %d wide at the least", got)
	}
}

// TestPicturesOfBorders: the pictures of the rows are as wide as the page, those of the borders behind them three fifths of it, on folded
// pages three quarters, and no less than that where they are no more than half as high again as wide.
func TestPicturesOfBorders(t *testing.T) {
	figure := func(x, y, wide, high measure.NM) document.Figure {
		return document.Figure{Of: diagram.Figure{Title: "a border", Min: measure.Point{X: x, Y: y}, Max: measure.Point{X: x + wide, Y: y + high}}}
	}
	for _, c := range []struct {
		paper render.Paper
		large bool
		parts int
		at    int
		of    document.Figure
		width int // of a thousand
		least bool
	}{
		{render.Letter(), false, 0, 0, figure(0, 0, 10, 10), 1000, false},
		{render.Letter(), false, 0, 1, figure(0, 0, 10, 10), 600, false},
		{render.Letter(), true, 0, 1, figure(0, 0, 10, 10), 1000, false},
		{render.Letter(), false, 2, 1, figure(0, 0, 10, 10), 1000, false},
		{render.Letter(), false, 2, 2, figure(0, 0, 10, 10), 600, false},
		{render.HalfLetter(), false, 0, 1, figure(0, 0, 10, 10), 750, true},
		{render.HalfLetter(), false, 0, 1, figure(7, 3, 10, 15), 750, true},
		{render.HalfLetter(), false, 0, 1, figure(7, 3, 10, 16), 750, false},
		{render.HalfLetter(), false, 0, 1, figure(-7, -9, 10, 15), 750, true},
		{render.HalfLetter(), false, 0, 1, figure(-7, -9, 10, 16), 750, false},
		{render.HalfLetter(), true, 0, 1, figure(0, 0, 10, 10), 1000, false},
	} {
		b := &patternBuilder{Options: Options{Paper: c.paper, Large: c.large}, parts: []document.Section{{}}}
		list := []document.Figure{{}, {}, {}}
		list[c.at] = c.of
		b.assemblyPictures(&assemblyFigures{list, c.parts}, []int{c.at})
		got, width := b.parts[0].Blocks[0].(document.Figure), b.wholeWidth()*measure.NM(c.width)/1000
		least := measure.NM(0)
		if c.least {
			least = width
		}
		if got.Width != width || got.Least != least || got.Caption.String() != caption(topKey(c.at), "A border.").String() {
			t.Errorf("picture %d on %s: %d wide, %d at the least, %q; expected %d and %d", c.at, c.paper.Name, got.Width, got.Least, got.Caption, width, least)
		}
	}
}

// TestManyPlacements: of up to twelve placements of a block's fabrics each is shown; of thirteen they are called a scrap block alone.
func TestManyPlacements(t *testing.T) {
	var text strings.Builder
	text.WriteString("side 6\n" + sixFabrics + "scraps s navy rust teal plum moss cream by piece\nblock H halves pieces s s\ngrid\n H H H H\n H H H H\n")
	b := newBook(Study(lay.Top(t, text.String()), cutting.Options{}), Options{})
	said := report.WithoutPlaces(b.sewn(report.SewingBlock(0, "fabrics"))).Blocks
	pictures := len(figures(said))
	k := &b.Sewing.Blocks[0]
	if len(k.Variants) < 2 || pictures == 0 || len(figures(said[:1])) > 0 {
		t.Fatalf("%d placements, %d pictures of them", len(k.Variants), pictures)
	}
	first := k.Variants[0]
	for n, want := range map[int]int{report.MaxPlacements: pictures, report.MaxPlacements + 1: 0} {
		k.Variants = slices.Repeat(k.Variants[:1:1], n)
		k.Variants[0] = first
		b.parts = []document.Section{{}}
		b.oneBlock(0)
		shown := 0
		for _, block := range b.parts[0].Blocks {
			if f, ok := block.(document.Figure); ok && strings.Contains(f.Caption.String(), "placements") {
				shown++
			}
		}
		if shown != want {
			t.Errorf("%d placements: %d pictures of them, expected %d", n, shown, want)
		}
	}
}

// TestFabricsCutAlike: two fabrics are put together where their lists say the same in texts, items and rows; the numbers of lines and pictures
// may differ.
func TestFabricsCutAlike(t *testing.T) {
	made := func(text, first, second, size, line string) []document.Block {
		return []document.Block{
			paragraph(text), document.List{Items: []document.Item{item(document.Plain(first)), item(document.Plain(second))}},
			document.Table{Columns: []document.Column{{Title: "Size"}, {Title: report.LinesHead}, {Title: "Cut"}}, Rows: []document.Row{{Cells: []document.Cell{cell(size), cell(line), cell("4")}}, {Cells: []document.Cell{cell("2"), cell("9"), cell("5")}}}},
		}
	}
	whole := unnumbered(made("text", "one", "two", "3", "7"))
	if !slices.Equal([]bool{whole == "", strings.Contains(whole, "7"), strings.Contains(whole, "9")}, []bool{false, false, false}) || unnumbered(made("text", "one", "two", "3", "8")) != whole {
		t.Errorf("lines alone tell fabrics apart: %q", whole)
	}
	if unnumbered(append(made("text", "one", "two", "3", "7"), document.Figure{})) != whole {
		t.Error("a picture alone tells fabrics apart")
	}
	for i, other := range [][]document.Block{made("other", "one", "two", "3", "7"), made("text", "other", "two", "3", "7"), made("text", "one", "other", "3", "7"), made("text", "one", "two", "4", "7"), made("text", "one", "two", "", "7")} {
		if unnumbered(other) == whole {
			t.Errorf("change %d does not tell fabrics apart", i)
		}
	}
}

// TestFewerColumns: what the designer has is not in a pattern, and in large print of more than five columns the length used is not either; the
// report that it comes from keeps all.
func TestFewerColumns(t *testing.T) {
	for _, c := range []struct {
		large        bool
		titles, want string
	}{
		{false, "Fabric|Buy|" + report.LengthUsedHead + "|" + report.OnHandHead + "|d|e|f", "Fabric|Buy|" + report.LengthUsedHead + "|d|e|f"},
		{true, "Fabric|Buy|" + report.LengthUsedHead + "|" + report.OnHandHead + "|d|e|f", "Fabric|Buy|d|e|f"},
		{true, "Fabric|Buy|" + report.LengthUsedHead + "|" + report.OnHandHead + "|d|e", "Fabric|Buy|" + report.LengthUsedHead + "|d|e"},
		{true, "Fabric|Buy|" + report.LengthUsedHead + "|c|d|e", "Fabric|Buy|c|d|e"},
	} {
		var table document.Table
		for title := range strings.SplitSeq(c.titles, "|") {
			table.Columns = append(table.Columns, document.Column{Title: title})
		}
		given := []document.Block{paragraph("text"), table}
		got := (&patternBuilder{Options: Options{Large: c.large}}).fewerColumns(given)
		var titles []string
		for _, column := range got[1].(document.Table).Columns {
			titles = append(titles, column.Title)
		}
		if strings.Join(titles, "|") != c.want || len(given[1].(document.Table).Columns) != len(table.Columns) {
			t.Errorf("of %s there are %q", c.titles, titles)
		}
	}
}

// TestPiecesUnderTheirCloth: where there is little room what pieces are cut from is a heading above them, once for those that follow each
// other; tables without it stay as they are.
func TestPiecesUnderTheirCloth(t *testing.T) {
	row := func(list ...string) (r document.Row) {
		for _, text := range list {
			r.Cells = append(r.Cells, cell(text))
		}
		return r
	}
	column := func(titles ...string) (list []document.Column) {
		for _, title := range titles {
			list = append(list, document.Column{Title: title})
		}
		return list
	}
	given := []document.Block{
		paragraph("text"),
		document.Table{Columns: column("a", report.ClothHead, "b"), Rows: []document.Row{row("1", "navy", "2"), row("3", "navy", "4"), row("5", "rust", "6"), row("7", "navy", "8")}},
		document.Table{Columns: column("a", "b"), Rows: []document.Row{row("1", "navy")}},
		document.Table{Columns: column(report.ClothHead, "b"), Rows: []document.Row{row("rust", "9")}},
	}
	before := fmt.Sprint(given)
	want := []document.Block{
		given[0],
		document.Table{Columns: column("a", "b"), Rows: []document.Row{row("navy"), row("1", "2"), row("3", "4"), row("rust"), row("5", "6"), row("navy"), row("7", "8")}},
		given[2],
		document.Table{Columns: column("b"), Rows: []document.Row{row("rust"), row("9")}},
	}
	if got := byCloth(given); fmt.Sprint(got) != fmt.Sprint(want) || fmt.Sprint(given) != before {
		t.Errorf("under their cloth: %v, expected %v", got, want)
	}
}

// TestFiguresAreNumbered: figures have numbers in the order of their captions, wherever a text refers to them, and one key has one number.
func TestFiguresAreNumbered(t *testing.T) {
	d := document.Document{Sections: []document.Section{
		{Blocks: []document.Block{paragraph("first " + see("b") + ", then " + see("a") + " and " + bare + "b" + closes), document.Paragraph{Text: caption("a", "One.")}}},
		{Blocks: []document.Block{document.Paragraph{Text: caption("b", "Two.")}, document.Paragraph{Text: caption("a", "Again.")}, document.Paragraph{Text: caption("c", "Three.")}, paragraph(defines + "d" + closes + defines + "e" + closes)}},
	}}
	var got []string
	for _, s := range numbered(d).Sections {
		for _, p := range paragraphs(s.Blocks) {
			got = append(got, p.String())
		}
	}
	want := []string{"first Figure 2, then Figure 1 and 2", "Figure 1. One.", "Figure 2. Two.", "Figure 1. Again.", "Figure 3. Three.", "Figure 4Figure 5"}
	if !slices.Equal(got, want) {
		t.Errorf("numbered: %q, expected %q", got, want)
	}
}

// TestShortListsAreHeldTogether: a list of up to eight rows of strips is on one page with its heading and its map's reference; a longer one
// may go over several.
func TestShortListsAreHeldTogether(t *testing.T) {
	b := newBook(Study(lay.Top(t, "side 6\n"+sixFabrics+"block A plain piece navy\ngrid\n A A A\n"), cutting.Options{}), Options{})
	text := paragraph("before")
	for _, c := range []struct {
		rows, together int
		sized          bool
	}{{1, 4, false}, {8, 4, false}, {9, 3, false}, {30, 3, false}, {30, 4, true}} {
		table := document.Table{Columns: []document.Column{{Title: "A"}}}
		for range c.rows {
			table.Rows = append(table.Rows, document.Row{Cells: []document.Cell{cell("x")}})
		}
		d := document.Document{Sections: []document.Section{{ID: report.FabricID + "1", Title: "navy", Blocks: []document.Block{text, table, paragraph("behind")}}}}
		b.cut, b.sized, b.parts = d.Index(), c.sized, []document.Section{{}}
		b.fabricCutting([]int{0})
		blocks := b.parts[0].Blocks
		whole := blocks[0].(document.Together).Blocks
		if len(whole) != c.together || len(blocks) != 1+1+4-c.together {
			t.Errorf("%d rows: %d blocks are held together, %d behind them; expected %d", c.rows, len(whole), len(blocks)-1, c.together)
		}
	}
}

// TestMinutesOfActivities: what the teacher gives counts, down to a single minute; the rest is a guess.
func TestMinutesOfActivities(t *testing.T) {
	want := map[string]int{"welcome": 15, "cutting": 30, "strip-set": 25, "show": 10, "unit": 5, "layout": 20}
	if len(Activities()) != len(want) {
		t.Errorf("%d activities", len(Activities()))
	}
	for _, activity := range Activities() {
		for _, own := range []int{0, 1, 2, MaxMinutes} {
			s := Schedule{Times: map[string]int{activity: own}}
			minutes, guess := s.takes(activity)
			if guess != (own == 0) || !guess && minutes != own || guess && minutes != want[activity] {
				t.Errorf("%s of %d minutes takes %d, a guess: %v", activity, own, minutes, guess)
			}
		}
	}
}

// TestCostsByHand: a second for 40,000 pieces and for 100 labels, 80 bytes a piece and 20,000 a label; empty places have none.
func TestCostsByHand(t *testing.T) {
	for _, c := range []struct {
		pieces, labels int
		want           Cost
	}{
		{0, 0, Cost{}}, {39_999, 99, Cost{0, 5, 99}}, {40_000, 1, Cost{1, 3, 1}}, {12_499, 0, Cost{0, 0, 0}}, {12_500, 0, Cost{0, 1, 0}}, {80_000, 100, Cost{3, 8, 100}}, {100, 50, Cost{0, 1, 50}}, {100, 49, Cost{0, 0, 49}},
	} {
		top := &quilt.Top{Faces: make([]quilt.Face, c.pieces), Cells: make([]quilt.Cell, 2*c.labels+3)}
		for i := range 2 * c.labels {
			top.Cells[i] = quilt.Cell{Label: fmt.Sprint(i / 2), Count: 1}
		}
		if got := CostOf(top); got != c.want {
			t.Errorf("%d pieces with %d labels cost %+v, expected %+v", c.pieces, c.labels, got, c.want)
		}
	}
}

// TestReportsAreLeft: whatever a pattern makes of the reports, they are afterwards as they were: what a part says twice would otherwise be said
// otherwise the second time.
func TestReportsAreLeft(t *testing.T) {
	for _, c := range printedPatterns() {
		if c.name == "sizes" || c.name == "huge" {
			continue
		}
		reports := Of(&report.Plans{Top: lay.Top(t, c.text), Cutting: c.cutting})
		names := fmt.Sprint(reports.Templates)
		b := newBook(reports, c.Options)
		cut, sewn := fmt.Sprint(b.cut), fmt.Sprint(b.sewing)
		b.body()
		if fmt.Sprint(b.cut) != cut {
			t.Errorf("%s: what is cut is another", c.name)
		}
		if fmt.Sprint(b.sewing) != sewn {
			t.Errorf("%s: what is sewn is another", c.name)
		}
		if fmt.Sprint(reports.Templates) != names {
			t.Errorf("%s: templates have other names", c.name)
		}
	}
}
