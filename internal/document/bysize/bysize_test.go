package bysize

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
)

func sizes() *merger {
	return newMerger(Options{
		Names: []string{"lap", "twin", "queen"}, Figures: Keys{"\uE000", "\uE003", "\uE001", "\uE002"},
		Every: func(key string) bool { return key == "layout" }, Only: func(title string, sizes []string) string { return title + " (" + strings.Join(sizes, "+") + ")" },
	})
}

// said is what a list of blocks says, a line for each.
func said(list []document.Block) (lines []string) {
	for _, b := range list {
		switch v := b.(type) {
		case document.Paragraph:
			lines = append(lines, v.Text.String())
		case document.Heading:
			lines = append(lines, "# "+v.Text)
		case document.List:
			for _, it := range v.Items {
				lines = append(lines, "- "+it.Text.String())
			}
		case document.Table:
			for _, c := range v.Columns {
				lines = append(lines, "| "+c.Title)
			}
			for _, r := range v.Rows {
				var cells []string
				for _, c := range r.Cells {
					cells = append(cells, c.Text.String())
				}
				lines = append(lines, strings.Join(cells, " | "))
			}
		case document.Figure:
			lines = append(lines, "figure "+v.Caption.String())
		case document.Together:
			lines = append(lines, said(v.Blocks)...)
		}
	}
	return lines
}

// TestSentences: texts of three sizes, and what one text says of them.
func TestSentences(t *testing.T) {
	for _, c := range [][4]string{
		{"Press it.", "Press it.", "Press it.", "Press it."},
		{"Cut 1 strip.", "Cut 4 strips.", "Cut 6 strips.", "Cut 1 (4, 6) strips."},
		{"Cut 6 strips 4 1/2 in wide.", "Cut 8 strips 4 1/2 in wide.", "Cut 12 strips 5 in wide.", "Cut 6 (8, 12) strips 4 1/2 (4 1/2, 5) in wide."},
		{"It is about 46 3/4 in.", "It is 60 in.", "It is about 85 1/2 in.", "It is about 46 3/4 (60, 85 1/2) in."},
		{"Rows 1, 3 and 5.", "Rows 1, 3, 5 and 7.", "Rows 1 and 3.", "Rows 1, 3 and 5 (1, 3, 5 and 7; 1 and 3)."},
		{"Wedges (9 halo).", "Wedges (8 halo).", "Wedges (7 halo).", "Wedges (9 [8, 7] halo)."},
		{"Buy 1,200 of T1.", "Buy 3 of T1.", "Buy 4 of T1.", "Buy 1,200 (3, 4) of T1."},
		{"See \uE000a\uE002.", "See \uE000b\uE002.", "See \uE000c\uE002.", "See \uE000a\uE002 (\uE003b\uE002, \uE003c\uE002)."},
		{"Use T1.", "Use T2.", "Use T1.", "Lap (queen): Use T1.|Twin: Use T2."},
		{"Cut it. Sew 1 seam across. Press it.", "Cut it. Sew 2 seams down. Press it.", "Cut it. Sew 3 seams across. Press it.", "Cut it.|Lap (queen): Sew 1 (3) seams across.|Twin: Sew 2 seams down.|Press it."},
	} {
		var of [][]document.Block
		for _, text := range c[:3] {
			of = append(of, []document.Block{document.Paragraph{Text: document.Plain(text)}})
		}
		if got := strings.Join(said(sizes().blocks(of)), "|"); got != c[3] {
			t.Errorf("%q: %q", c[:3], got)
		}
	}
}

// TestParts: a part that some sizes have names them, in their order.
func TestParts(t *testing.T) {
	of := func(width string) document.Block {
		return document.Together{Blocks: []document.Block{document.Heading{Text: "Border 2"}, document.Paragraph{Text: document.Plain("It is " + width + " in wide.")}}}
	}
	got := said(sizes().blocks([][]document.Block{{}, {of("4")}, {of("5")}}))
	if want := "# Border 2 (twin+queen)|It is 4 (5) in wide."; strings.Join(got, "|") != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestTables: a column by size is one for each, rows stand together by what names them, and one that some sizes do not have says so.
func TestTables(t *testing.T) {
	of := func(rows ...[]string) []document.Block {
		t := document.Table{Columns: []document.Column{{Title: "Strips", Kind: document.Counts, BySize: true}, {Title: "Wide"}, {Title: "Into"}}}
		for _, r := range rows {
			var cells []document.Cell
			for _, text := range r {
				cells = append(cells, document.Cell{Text: document.Plain(text)})
			}
			t.Rows = append(t.Rows, document.Row{Cells: cells})
		}
		return []document.Block{t}
	}
	got := said(sizes().blocks([][]document.Block{
		of([]string{"4", "7 in", "5 squares of 7 in"}, []string{"1", "3 in", "leave whole"}, []string{"", "", "2 squares of 3 in"}),
		of([]string{"9", "7 in", "5 squares of 7 in"}),
		of([]string{"16", "7 in", "4 squares of 7 in"}, []string{"3", "2 in", "join"}),
	}))
	want := "| Strips, lap|| Strips, twin|| Strips, queen|| Wide|| Into|4 | 9 | 16 | 7 in | 5 (5, 4) squares of 7 in|1 | none | none | 3 in | leave whole| |  |  |  | 2 squares of 3 in|none | none | 3 | 2 in | join"
	if text := strings.Join(got, "|"); strings.ReplaceAll(text, " ", "") != strings.ReplaceAll(want, " ", "") {
		t.Errorf("%s, want %s", text, want)
	}
}

// TestFigures: a figure that is alike is every size's; one that differs is shown in each, or in the first alone.
func TestFigures(t *testing.T) {
	m := sizes()
	of := func(titles ...string) []document.Section {
		var list []document.Block
		for i, key := range []string{"step", "layout", "map"} {
			f := document.Figure{Caption: document.Text{{Text: "\uE001" + key + "\uE002.", Bold: true}, {Text: " See."}}}
			f.Of.Title = titles[i]
			list = append(list, f)
		}
		return []document.Section{{Blocks: list}}
	}
	got := said(m.sections(m.shown([][]document.Section{of("a", "b", "c"), of("a", "x", "y"), of("a", "x", "c")}))[0].Blocks)
	want := "figure \uE001step\uE002. See.|figure \uE001layout\uE002. Lap. See.|figure \uE001layout size 1\uE002. Twin (queen). See.|figure \uE001map\uE002. Lap (queen). See."
	if strings.Join(got, "|") != want {
		t.Errorf("%q", got)
	}
}

// TestAlike: documents that say the same in all sizes are merged to just that, of whatever parts they are made.
func TestAlike(t *testing.T) {
	text := document.Plain
	figure := document.Figure{Caption: text("The map.")}
	list := []document.Block{
		document.Heading{Text: "Cut"}, document.Paragraph{Text: text("Cut 4 strips.")}, document.Source{Lines: []string{"grid", "  W W"}},
		document.List{Marker: document.Numbered, Items: []document.Item{{Text: text("Cut 3.")}, {Text: text("Sew 3.")}}},
		document.Table{Caption: text("Strips"), Columns: []document.Column{{Title: "Wide"}, {Title: "Into"}}, More: text("The rest is in the plan."), Rows: []document.Row{
			{Cells: []document.Cell{{Text: text("7 in")}, {Text: text("5 squares")}}, Under: []document.Text{text("Cut it lengthwise."), text("Keep 2.")}},
			{Cells: []document.Cell{{Text: text("In all")}, {Text: text("9")}}, Total: true},
		}},
		figure, document.Picture{Caption: text("The quilt.")}, document.Gallery{Across: 3, Pictures: []document.Illustration{figure}},
		document.Box{Caution: true, Blocks: []document.Block{document.Paragraph{Text: text("Close the blade.")}}},
		document.PageBreak{}, document.Together{Blocks: []document.Block{document.Heading{Text: "Border 2"}, document.Paragraph{Text: text("It is 4 in wide.")}}},
		document.Ruled{},
	}
	for _, b := range list {
		one := []document.Block{b}
		if got := sizes().blocks([][]document.Block{one, one, one}); !reflect.DeepEqual(got, one) {
			t.Errorf("%#v becomes\n%#v", one, got)
		}
	}
	if got := sizes().blocks([][]document.Block{list, list, list}); !reflect.DeepEqual(got, list) {
		t.Errorf("together they become\n%#v", got)
	}
}

// TestLongLists: lists too long to be compared each with each are merged line by line in their order, and none is lost.
func TestLongLists(t *testing.T) {
	const long = 401
	of := func(number int, other map[int]string, extra ...string) []document.Block {
		var list document.List
		for i := range long {
			line := other[i]
			if line == "" {
				line = fmt.Sprintf("Row %s: cut %d wedges.", strings.Repeat("x", i%9+1), number)
			}
			list.Items = append(list.Items, document.Item{Text: document.Plain(line)})
		}
		for _, line := range extra {
			list.Items = append(list.Items, document.Item{Text: document.Plain(line)})
		}
		return []document.Block{list}
	}
	got := said(sizes().blocks([][]document.Block{of(4, nil), of(6, map[int]string{3: "Wait."}, "Stop."), of(8, nil)}))
	want := said(of(4, nil))
	for i := range want {
		if want[i] = strings.Replace(want[i], "cut 4", "cut 4 (6, 8)", 1); i == 3 {
			want[i] = "- Lap (queen): " + strings.Replace(want[i][2:], "4 (6, 8)", "4 (8)", 1)
		}
	}
	want = append(slices.Insert(want, 4, "- Twin: Wait."), "- Twin: Stop.")
	for i := range max(len(got), len(want)) {
		if i >= len(got) || i >= len(want) || got[i] != want[i] {
			t.Fatalf("of %d lines, not %d, number %d is %q, not %q", len(got), len(want), i, got[min(i, len(got)-1)], want[min(i, len(want)-1)])
		}
	}
}
