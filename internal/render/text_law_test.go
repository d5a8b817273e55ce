package render

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// TestRunsAreCleaned: a text keeps its letters and their styles, with one blank where there are several, none at its ends, and no run that is empty.
func TestRunsAreCleaned(t *testing.T) {
	v := rand.New(rand.NewPCG(8, 1))
	for range 4000 {
		var text document.Text
		all, styles := "", ""
		for i := range v.IntN(6) {
			words := ""
			for range v.IntN(4) {
				words += []string{"a", "b", " ", "  ", "\t", "é", "\n"}[v.IntN(7)]
			}
			text = append(text, document.Run{Text: words, Bold: i%2 == 0, Small: i%3 == 0})
			all += words
			styles += strings.Repeat(fmt.Sprint(i), len(strings.ReplaceAll(strings.Join(strings.Fields(words), ""), "é", "e")))
		}
		got, letters := runs(text), ""
		for _, r := range got {
			if r.Text == "" {
				t.Fatalf("%q: an empty run in %q", text, got)
			}
			for range strings.ReplaceAll(strings.ReplaceAll(r.Text, " ", ""), "é", "e") {
				at := len(letters)
				if i := int(styles[at] - '0'); r.Bold != (i%2 == 0) || r.Small != (i%3 == 0) {
					t.Fatalf("%q: letter %d of %q has another style", text, at, got)
				}
				letters += "x"
			}
		}
		if want := strings.Join(strings.Fields(all), " "); got.String() != want || len(letters) != len(styles) {
			t.Fatalf("%q becomes %q, expected %q", text, got, want)
		}
	}
}

// TestTextsLeadToTheFiguresThatThereAre: names of figures that the document has are parted from the rest of a text and lead there; nothing of the
// text is lost, a name at the head of a caption leads nowhere, and neither does that of a figure that there is not.
func TestTextsLeadToTheFiguresThatThereAre(t *testing.T) {
	s := &setter{figures: map[string]bool{"Figure 1": true, "Figure 12": true}, pattern: figureName()}
	for text, want := range map[string]string{
		"See Figure 1 and Figure 12": "See |[Figure 1]| and |[Figure 12]", "Figure 1": "[Figure 1]", "Figure 1. Wedges": "Figure 1. Wedges", "Figure 1, here": "[Figure 1]|, here", "Figure 2 and Figure 1.": "Figure 2 and |[Figure 1]|.",
		"in Figure 1. Then": "in |[Figure 1]|. Then", "Figure 2": "Figure 2", "Figure 1Figure 12": "[Figure 1]|[Figure 12]", "": "", "short": "short", "Figure": "Figure", "Figure x": "Figure x",
	} {
		var got []string
		for _, r := range s.linked(document.Text{{Text: text, Bold: true}}) {
			part := r.Text
			if r.to != "" {
				part = "[" + r.to + "]"
			}
			if !r.Bold || r.to != "" && r.to != r.Text {
				t.Errorf("%q: %+v", text, r)
			}
			got = append(got, part)
		}
		if strings.Join(got, "|") != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
	if got := s.linked(document.Text{{Text: "a "}, {Text: "Figure 1. b"}}); len(got) != 3 || got[1].to != "Figure 1" {
		t.Errorf("behind another run: %+v", got)
	}
	for caption, want := range map[string]string{"Figure 1. Wedges": "Figure 1", "Figure 12.": "Figure 12", "Figure 1": "", "Figure 1 b.": "", "a Figure 1. b": "", "Figure 1, b": "", "": ""} {
		if got := s.captioned(document.Plain(caption)); got != want {
			t.Errorf("caption %q: %q, expected %q", caption, got, want)
		}
	}
	wedges := document.Figure{Caption: document.Plain("Figure 1. a")}
	for name, b := range map[string]document.Block{
		"figure": wedges, "picture": document.Picture{Caption: wedges.Caption}, "gallery": document.Gallery{Pictures: []document.Illustration{document.Picture{}, wedges}}, "box": document.Box{Blocks: []document.Block{wedges}},
		"together": document.Together{Blocks: []document.Block{wedges}}, "list": document.List{Items: []document.Item{{}, {Blocks: []document.Block{wedges}}}},
	} {
		b2 := newBuilder(Options{}.look())
		b2.document(document.Document{Title: "t", Sections: []document.Section{{}, {Blocks: []document.Block{b}}}})
		if len(b2.figures) != 1 || !b2.figures["Figure 1"] {
			t.Errorf("in a %s: %v", name, b2.figures)
		}
	}
}

// wrappedPlainly puts as many words on a line as there is room for.
func wrappedPlainly(words []string, indent string, columns int) string {
	out, line := "", ""
	for _, w := range words {
		if line != "" && len(indent)+len(line)+1+len(w) > columns {
			out, line = out+indent+line+"\n", ""
		}
		line = strings.TrimPrefix(line+" "+w, " ")
	}
	return out + indent + line + "\n"
}

// TestTerminalLines: as many words stand on a line as there is room for, with lines that are exactly full; a number and its fraction, and what
// blanks hold together, stay on one.
func TestTerminalLines(t *testing.T) {
	v := rand.New(rand.NewPCG(2, 6))
	full := 0
	for range 1500 {
		var words []string
		for range 1 + v.IntN(12) {
			words = append(words, strings.Repeat("w", 1+v.IntN(25)))
		}
		indent := strings.Repeat(" ", v.IntN(6))
		got, want := Wrapped(strings.Join(words, []string{" ", "  ", "\t"}[v.IntN(3)]), indent), wrappedPlainly(words, indent, 80)
		if got != want {
			t.Fatalf("%q, expected %q", got, want)
		}
		for line := range strings.SplitSeq(got, "\n") {
			if len(line) == 80 {
				full++
			}
		}
	}
	if full < 50 {
		t.Errorf("only %d lines are full", full)
	}
	for text, want := range map[string]string{
		"": "  \n", strings.Repeat("w", 76) + " 3 1/2": "  " + strings.Repeat("w", 76) + "\n  3 1/2\n", strings.Repeat("w", 72) + " 3 1/2": "  " + strings.Repeat("w", 72) + " 3 1/2\n", strings.Repeat("w", 75) + " -o a": "  " + strings.Repeat("w", 75) + "\n  -o a\n",
		strings.Repeat("w", 90) + " a": "  " + strings.Repeat("w", 90) + "\n  a\n", strings.Repeat("w", 72) + " 赤赤赤 b": "  " + strings.Repeat("w", 72) + "\n  赤赤赤 b\n", strings.Repeat("w", 71) + " 赤赤赤": "  " + strings.Repeat("w", 71) + " 赤赤赤\n", strings.Repeat("w", 73) + " a\u00a0bc": "  " + strings.Repeat("w", 73) + " a bc\n",
	} {
		if got := Wrapped(text, "  "); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}

// TestTerminalColumns: cells stand in columns, numbers at the right; labels have their texts in one column.
func TestTerminalColumns(t *testing.T) {
	for _, c := range []struct {
		rows [][]string
		want string
	}{
		{[][]string{{"a", "bb", " 7"}, {"ccc", "", " 12"}, {"d"}}, "  a     bb    7\n  ccc        12\n  d\n"}, {[][]string{{"赤", "x"}, {"abc"}}, "  赤    x\n  abc\n"}, {[][]string{{"", "x"}}, "     x\n"}, {nil, ""}, {[][]string{{"a\tb", "c"}}, "  a\\tb   c\n"},
	} {
		if got := Aligned(c.rows, "  "); got != strings.ReplaceAll(c.want, "\\t", layout.Visible("\t")) {
			t.Errorf("%q: %q, expected %q", c.rows, got, c.want)
		}
	}
	for _, c := range []struct {
		rows [][2]string
		want string
	}{
		{[][2]string{{"a", "text"}, {"label", strings.Repeat("word ", 20)}}, "  a       text\n  label   " + strings.TrimSpace(strings.Repeat("word ", 14)) + "\n          " + strings.TrimSpace(strings.Repeat("word ", 6)) + "\n"},
		{[][2]string{{"", "text"}}, "     text\n"}, {[][2]string{{"a", ""}}, "  a   \n"},
	} {
		if got := Labeled(c.rows, "  "); got != c.want {
			t.Errorf("%q: %q, expected %q", c.rows, got, c.want)
		}
	}
}

// ruledTable is a table of one row: a name, a number, and words.
func ruledTable(name, number, words string, last document.Kind) document.Document {
	t := document.Table{Columns: []document.Column{{}, {Kind: document.Counts}, {Kind: last}}, Rows: []document.Row{{Cells: cells(name, number, words)}}}
	return document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{t}}}}
}

// TestTablesOfATerminal: a row of 80 columns stands on one line; of a longer one the last words go on beneath themselves where they begin in the
// first three quarters, and else the widest column of words gives way, down to twelve columns, until the row has a hundred.
func TestTablesOfATerminal(t *testing.T) {
	w := func(n, each int) string { return strings.TrimSpace(strings.Repeat(strings.Repeat("w", each-1)+" ", n)) }
	for name, c := range map[string]struct {
		d    document.Document
		want string
	}{
		"80":        {ruledTable("a", "7", w(12, 6)+"w", document.Words), "a   7   " + w(12, 6) + "w\n"},
		"81":        {ruledTable("a", "7", w(12, 6)+" x", document.Words), "a   7   " + w(12, 6) + "\n        x\n"},
		"far":       {ruledTable(w(1, 54), "7", w(4, 8), document.Words), w(1, 54) + "   7   " + w(2, 8) + "\n" + strings.Repeat(" ", 60) + w(2, 8) + "\n"},
		"farther":   {ruledTable(w(1, 55), "7", w(4, 8), document.Words), w(1, 55) + "  7  " + w(4, 8) + "\n"},
		"a number":  {ruledTable(w(6, 10), "7", w(2, 10), document.Counts), w(6, 10) + "  7  " + w(2, 10) + "\n"},
		"100":       {ruledTable(w(7, 10), "7", w(2, 14)[:26], document.Counts), w(7, 10) + "  7  " + w(2, 14)[:26] + "\n"},
		"101":       {ruledTable(w(7, 10), "7", w(2, 14), document.Counts), w(6, 10) + "  7  " + w(2, 14) + "\n" + w(1, 10) + "\n"},
		"at twelve": {ruledTable(w(3, 5), "7", strings.Repeat("9", 120), document.Counts), w(2, 5) + "  7  " + strings.Repeat("9", 120) + "\n" + w(1, 5) + "\n"},
	} {
		if got := strings.TrimPrefix(Text(c.d), "t\n"); got != c.want {
			t.Errorf("%s:\n%sexpected\n%s", name, got, c.want)
		}
	}
}
