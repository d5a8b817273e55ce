package render

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

func TestFaults(t *testing.T) {
	with := func(b ...document.Block) document.Document {
		return document.Document{Title: "t", Sections: []document.Section{{Blocks: b}}}
	}
	deep := document.Block(document.Paragraph{Text: document.Plain("a")})
	for range mostDepth + 1 {
		deep = document.Together{Blocks: []document.Block{deep}}
	}
	for want, d := range map[string]document.Document{
		"no title":                       {Title: " \n"},
		`language is "no such"`:          {Title: "t", Language: "no such"},
		`language is "x"`:                {Title: "t", Language: "x"},
		`language is "en-"`:              {Title: "t", Language: "en-"},
		`language is "englishes-us"`:     {Title: "t", Language: "englishes-us"},
		"but 1000 is the most":           {Title: strings.Repeat("a", 1001)},
		"0 columns":                      with(document.Table{}),
		"2 cells in a table of 1 column": with(document.Table{Columns: make([]document.Column, 1), Rows: []document.Row{{Cells: make([]document.Cell, 2)}}}),
		"no alternative text":            with(document.Picture{}),
		`a swatch has the letter ""`:     with(document.Table{Columns: make([]document.Column, 1), Rows: []document.Row{{Cells: []document.Cell{{Swatches: []document.Swatch{{}}}}}}}),
		"which is none":                  with(nil),
		"deep":                           with(deep),
		"-1 in wide":                     with(document.Picture{Alternative: "a", Width: -measure.Inch}),
		"is no PNG file":                 with(document.Picture{Alternative: "a", Of: document.Drawing{Ground: []byte("GIF89a")}}),
		"bytes of text":                  with(document.Paragraph{Text: document.Plain(strings.Repeat("a", mostBytes))}),
	} {
		_, err := PDF(d, Options{})
		_, web := HTML(d)
		_, marked := Markdown(d, "t", Options{})
		for _, err := range []error{err, web, marked} {
			if err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("the fault is %v, want %q", err, want)
			}
		}
	}
	for _, name := range []string{"", "..", "a/b", `a\b`, "c:"} {
		if _, err := Markdown(sample(), name, Options{}); err == nil {
			t.Errorf("files named %q are written", name)
		}
	}
	for _, p := range []Paper{{Width: measure.Inch / 2, Height: 9 * measure.Inch}, {Width: 1000 * measure.Inch, Height: 9 * measure.Inch}, {Width: 9 * measure.Inch, Height: 9 * measure.Inch, Margin: -measure.Inch}} {
		if _, err := PDF(sample(), Options{Paper: p}); err == nil {
			t.Errorf("pages of %v are printed", p)
		}
	}
}

func TestSmallIllustrationsAreTold(t *testing.T) {
	p := shown(top(1, 20, true), "high", "a high picture")
	p.Width, p.Least = 3*measure.Inch, 3*measure.Inch
	printed, err := PDF(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{p}}}}, Options{})
	if err != nil || len(printed.Warnings) == 0 || printed.Warnings[0].Kind != TooSmall {
		t.Errorf("warnings are %v, %v", printed.Warnings, err)
	}
}

// small are the pieces of text that are smaller than a size.
func small(pages []sheetOfPaper, size float64) []string {
	var list []string
	for _, p := range pages {
		for _, m := range p {
			if said, ok := m.mark.(text); ok && said.size < size {
				list = append(list, fmt.Sprintf("%q of %.1f pt", said.shown, said.size))
			}
		}
	}
	return list
}

func TestLargePrint(t *testing.T) {
	for _, paper := range Papers() {
		d := sample()
		b, pages := laid(t, d, Options{Paper: paper, Large: true})
		if list := small(b.decorated(d, pages), 18); list != nil {
			t.Errorf("%s: smaller than 18 pt are %v", paper.Name, list)
		}
		b, pages = laid(t, d, Options{Paper: paper})
		if small(b.decorated(d, pages), 18) == nil {
			t.Errorf("%s: usual print is not told from large print", paper.Name)
		}
	}
}

// The heads of a table stand above its rows on every page that it comes to.
func TestHeadsAreRepeated(t *testing.T) {
	d := sample()
	long := cuts()
	for range 4 {
		long.Rows = append(long.Rows, long.Rows...)
	}
	d.Sections = []document.Section{{Blocks: []document.Block{long}}}
	_, pages := laid(t, d, Options{})
	with := 0
	for _, p := range pages {
		if len(p.placed) > 1 && len(p.placed[1].heads) > 0 {
			with++
			if !p.placed[0].again && p.placed[0].heads != nil {
				t.Error("a page begins with a row without heads")
			}
		}
	}
	if with < 10 {
		t.Errorf("the table comes to %d pages, want at least 10", with)
	}
}
