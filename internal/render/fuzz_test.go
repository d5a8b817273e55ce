package render

import (
	"strings"
	"testing"

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
		printed, err := PDF(d, Options{Large: n%2 == 0, Paper: Paper{"", measure.Inch * measure.NM(3+n%5), 4 * measure.Inch, measure.Inch / 4}})
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
		if _, err := Markdown(d, "fuzz"); err != nil {
			t.Fatal(err)
		}
	})
}

func fuzzed(s string, columns int) Document {
	t := Table{Caption: Plain(s), Columns: make([]Column, columns), Rows: []Row{{Cells: cells(s)}, {Cells: make([]Cell, columns)}}}
	t.Columns[0].Title = s
	p := shown(top(1, 1, true), s, s)
	return Document{Title: s, Maker: s, Author: s, Copyright: s, Subject: s, Keywords: s, Cover: &Cover{Subtitle: s, Lines: []Text{Plain(s)}}, Parts: []Part{
		{Title: s, Blocks: []Block{Heading{2, s}, Paragraph{Text{{Text: s}, {Text: s, Bold: true}}}, t, List{Items: []Item{{Text: Plain(s), Blocks: []Block{p}}}}, Box{Word: s, Blocks: []Block{Gallery{Pictures: []Illustration{p, p}}}}}},
	}}
}
