package render

import (
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// FuzzText prints any text in any place: nothing panics, nothing reaches beyond the margins,
// and the page in HTML holds the text as text.
func FuzzText(f *testing.F) {
	for _, s := range []string{"a 3 1/2 in", "<script>", "]]>", "é赤い👩‍🎨", "a\x00\xff", strings.Repeat("w", 300), "| - *", "a\nb\u2028c", "\u0301", "\u202e x", "(\\)\r"} {
		f.Add(s, uint8(3))
	}
	f.Fuzz(func(t *testing.T, s string, n uint8) {
		if len(s) > 300 || line(s) == "" {
			t.Skip()
		}
		d := fuzzed(s, 1+int(n%8))
		printed, err := PDF(d, Options{Large: n%2 == 0, Paper: Paper{"", measure.Inch * measure.NM(3+n%5), 4 * measure.Inch, measure.Inch / 4, n%3 == 0}})
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range printed.Warnings {
			if w.Kind == Overflow {
				t.Error(w)
			}
		}
		page, err := HTML(d)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := blanks.ReplaceAllString(webText(page), ""), blanks.ReplaceAllString(line(s), ""); strings.Count(got, want) < 5 {
			t.Errorf("the page holds %q fewer than 5 times", want)
		}
		if _, err := Markdown(d, "fuzz", Options{}); err != nil {
			t.Fatal(err)
		}
	})
}

func fuzzed(s string, columns int) document.Document {
	t := document.Table{Caption: document.Plain(s), Columns: make([]document.Column, columns), Rows: []document.Row{{Cells: cells(s)}, {Cells: make([]document.Cell, columns)}}}
	t.Columns[0].Title = s
	p := shown(top(1, 1, true), s, s)
	return document.Document{Title: s, Maker: s, Author: s, Copyright: s, Subject: s, Keywords: s, Cover: &document.Cover{Subtitle: s, Lines: []document.Text{document.Plain(s)}}, Sections: []document.Section{
		{Title: s, Blocks: []document.Block{document.Heading{Level: 2, Text: s}, document.Paragraph{Text: document.Text{{Text: s}, {Text: s, Bold: true}}}, t, document.List{Items: []document.Item{{Text: document.Plain(s), Blocks: []document.Block{p}}}}, document.Box{Word: s, Blocks: []document.Block{document.Gallery{Pictures: []document.Illustration{p, p}}}}}},
	}}
}
